"""Numbers as people write them: 4 1/2, 2-1/4, 1,440, 38,5 - and which of them have two readings."""

import re

_GROUPED = re.compile(r"[0-9]{1,3}(,[0-9]{3})+")
_GROUPED_POINT = re.compile(r"[0-9]{1,3}(\.[0-9]{3})+")


class Unreadable(ValueError):
    """A number that cannot be read; the text says why, without the name of the entry."""


def decimal(run, us):
    """Read digits with points and commas.

    A point is always the decimal point. One comma is a decimal comma ("38,5") unless exactly three digits follow it:
    with a unit of US shops it then groups thousands ("1,440 in2"), with any other it has two readings and is refused.

    Parameters
    ----------
    run : str
        Digits, points and commas [-].
    us : bool
        True when the unit is used only in US shops [-].

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
    if not commas and points <= 1:
        return float(run)
    if points and commas:
        head, tail = (run.rsplit(".", 1)) if run.rfind(".") > run.rfind(",") else run.rsplit(",", 1)
        grouped = _GROUPED if run.rfind(".") > run.rfind(",") else _GROUPED_POINT
        if not grouped.fullmatch(head) or not tail.isdigit():
            raise Unreadable(f"the points and commas in {run} do not make a number; write it with a point only")
        return float(re.sub("[.,]", "", head) + "." + tail)
    if points:
        raise Unreadable(f"{run} has more than one point")
    if commas > 1:
        if not _GROUPED.fullmatch(run):
            raise Unreadable(f"the commas in {run} do not group thousands; write it without them")
        return float(run.replace(",", ""))
    before, after = run.split(",")
    if len(after) == 3 and 1 <= len(before) <= 3 and before[0] != "0":
        if not us:
            raise Unreadable(
                f"{run} can be {before}{after} or {before}.{after}; write {before}{after} or {before}.{after}"
            )
        return float(before + after)
    return float(f"{before}.{after}")


def _mixed(top, bottom, whole=""):
    """Write a fraction of digits as a whole number and a rest: 11, 4 -> 2-3/4."""
    total, size = int(top), int(bottom)
    whole = str(total // size) if whole == "" else whole
    rest = total % size if total >= size else total
    return f"{whole}-{rest}/{size}" if rest else whole


def fraction(top, bottom):
    """Read a fraction that stands alone, refusing "11/4", which is 2-3/4 or a slip for 1-1/4.

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
    if not (top.isdigit() and bottom.isdigit()):
        raise Unreadable(f"{top}/{bottom} is not a fraction of whole numbers")
    if int(bottom) == 0:
        raise Unreadable(f"{top}/{bottom} divides by zero")
    if int(top) > int(bottom):
        readings = [_mixed(top, bottom)]
        for cut in range(1, len(top)):
            if top[0] != "0" and top[cut] != "0" and int(top[cut:]) < int(bottom):
                readings.append(_mixed(top[cut:], bottom, whole=top[:cut]))
        if len(readings) > 1:
            raise Unreadable(f"{top}/{bottom} can be {' or '.join(readings)}; write the one you mean")
    return int(top) / int(bottom)


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
        When the first is not whole, or the fraction is not less than one.

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
    part = fraction(top, bottom) if top.isdigit() and len(top) == 1 else None
    if part is None:
        if not (top.isdigit() and bottom.isdigit()) or int(bottom) == 0:
            raise Unreadable(f"{top}/{bottom} is not a fraction of whole numbers")
        part = int(top) / int(bottom)
    if part >= 1:
        raise Unreadable(f"the fraction in {whole} {top}/{bottom} is not less than one")
    return int(whole) + part
