"""Numbers as people write them: 4 1/2, 2-1/4, 1,440, 38,5 - and which of them have two readings."""

import re

_GROUPED_BY = {",": re.compile(r"[0-9]{1,3}(,[0-9]{3})+"), ".": re.compile(r"[0-9]{1,3}(\.[0-9]{3})+")}


class Unreadable(ValueError):
    """A text that cannot be read; it says why, and leaves the name of the entry to the caller."""


def decimal(run, us):
    """Read digits with points and commas.

    Not for fractions. A point is the decimal point. One comma is a decimal comma ("38,5") unless exactly
    three digits follow it: with a unit of US shops it then groups thousands ("1,440 in2"), with any other it
    has two readings and is refused.

    Parameters
    ----------
    run : str
        Digits, points and commas [-].
    us : bool
        True when the unit is one that only US shops use [-].

    Returns
    -------
    float
        The number [-].

    Raises
    ------
    Unreadable
        When there are two readings, or none.

    Examples
    --------
    >>> decimal("1,440.5", True), decimal("38,5", False)
    (1440.5, 38.5)

    References
    ----------
    Common practice, no source.
    """
    points, commas = run.count("."), run.count(",")
    if points and commas:
        mark, group = (".", ",") if run.rfind(".") > run.rfind(",") else (",", ".")
        head, tail = run.rsplit(mark, 1)
        if not _GROUPED_BY[group].fullmatch(head) or not tail:
            raise Unreadable(f"the points and commas of {run} make no number; write it with one point")
        return float(f"{head.replace(group, '')}.{tail}")
    if points > 1:
        raise Unreadable(f"{run} has more than one point")
    if commas > 1:
        if not _GROUPED_BY[","].fullmatch(run):
            raise Unreadable(f"the commas of {run} do not group thousands; write it without them")
        return float(run.replace(",", ""))
    if commas:
        before, after = run.split(",")
        if len(after) == 3 and 1 <= len(before) <= 3 and before[0] != "0":
            if not us:
                readings = f"{before}{after} or {before}.{after}"
                raise Unreadable(f"{run} can be {readings}; write the one you mean")
            return float(before + after)
    return float(run.replace(",", "."))


def _whole_parts(*runs):
    for run in runs:
        if not run.isdigit():
            raise Unreadable(f"{'/'.join(runs[-2:])} is not a fraction of whole numbers")
    if int(runs[-1]) == 0:
        raise Unreadable(f"{'/'.join(runs[-2:])} divides by zero")
    return [int(run) for run in runs]


def _readings(top, bottom):
    """List what "11/4" can mean: 2-3/4 by division, 1-1/4 when a gap was left out."""
    over, under = int(top), int(bottom)
    whole, rest = divmod(over, under)
    found = [f"{whole}-{rest}/{under}" if rest else str(whole)]
    for cut in range(1, len(top)):
        if top[0] != "0" and top[cut] != "0" and int(top[cut:]) < under:
            found.append(f"{top[:cut]}-{top[cut:]}/{under}")
    return found


def fraction(top, bottom):
    """Read a fraction that stands alone, refusing "11/4", which is 2-3/4 or a slip for 1-1/4.

    Not for a whole number with a fraction: that is `mixed`. A fraction above one with a single reading,
    such as 5/4, is taken as it stands.

    Parameters
    ----------
    top, bottom : str
        The digits above and below the line [-].

    Returns
    -------
    float
        Its value [-].

    Raises
    ------
    Unreadable
        When a part is not a whole number, the lower one is 0, or there are two readings.

    Examples
    --------
    >>> fraction("11", "16")
    0.6875

    References
    ----------
    Common practice, no source.
    """
    over, under = _whole_parts(top, bottom)
    readings = _readings(top, bottom) if over > under else ()
    if len(readings) > 1:
        raise Unreadable(f"{top}/{bottom} can be {' or '.join(readings)}; write the one you mean")
    return over / under


def mixed(whole, top, bottom):
    """Read a whole number and a fraction: 4 1/2.

    Parameters
    ----------
    whole, top, bottom : str
        The three groups of digits [-].

    Returns
    -------
    float
        Their value [-].

    Raises
    ------
    Unreadable
        When a part is not a whole number, or the fraction is not less than one.

    Examples
    --------
    >>> mixed("10", "3", "8")
    10.375

    References
    ----------
    Common practice, no source.
    """
    if not whole.isdigit():
        raise Unreadable(f"{whole} {top}/{bottom} mixes a decimal with a fraction")
    over, under = _whole_parts(top, bottom)
    if over >= under:
        raise Unreadable(f"the fraction of {whole} {top}/{bottom} is not less than one")
    return int(whole) + over / under
