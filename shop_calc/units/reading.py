"""Read what a person typed: sizes, masses, volumes, temperatures, in either system."""

import math
import re

from shop_calc.units.factors import line
from shop_calc.units.kinds import KINDS_OF_UNIT, kind_of
from shop_calc.units.numbers import Unreadable, decimal, fraction, mixed
from shop_calc.units.scan import items, plain
from shop_calc.units.words import canonical, is_us, unclear

LONGEST = 80  # characters; the longest size a person writes has about 20
_BASIS = {"binder", "cement", "cementitious", "powder", "mortar", "mix", "total", "water", "sand", "stone"}
_POWER_OF_TEN = re.compile(r"[0-9][.]?[eE][+-]?[0-9]")
_OUNCES = {
    "mass": "a fluid ounce is a volume (2 Tbsp, 29.6 mL); a mass is written oz",
    "volume": "an ounce is a mass (28.3 g); a volume is written fl oz",
}


def _shown(text):
    """The text as a message may print it: short, and no hidden signs."""
    text = text if len(text) <= 40 else text[:37] + "..."
    return "'" + "".join(sign if sign.isprintable() else "?" for sign in text) + "'"


def _refuse(entry, given, why, kind):
    examples = ", ".join(kind.examples)
    raise ValueError(f"{entry}: {given} given; {why}. Write a {kind.title} like {examples}")


def basis(text):
    """Return what a ratio or percentage is reckoned on: "5 % of cement" -> "cement".

    Parameters
    ----------
    text : str
        The entry as typed [-].

    Returns
    -------
    str
        The word, or an empty text when none is named [-].

    Examples
    --------
    >>> basis("1.2 kg per kg binder")
    'binder'

    References
    ----------
    Common practice, no source.
    """
    words = str(text).lower().split()
    return words[-1] if words and words[-1] in _BASIS else ""


def _without_basis(phrase):
    words = phrase.split()
    if words and words[-1].lower() in _BASIS:
        words.pop()
        if words and words[-1].lower() == "of":
            words.pop()
    return " ".join(words)


def _unit(phrase, kind):
    """Turn a unit phrase into our name of it, or raise Unreadable with the reason in shop words."""
    if kind.name in ("mass_ratio", "fraction"):
        phrase = _without_basis(phrase)
        if kind.plain and phrase.lower() in ("", "by mass"):
            return "-"
    name = canonical(phrase)
    if name in kind.words:
        return name
    if kind.name == "mass" and name == "floz":
        raise Unreadable(_OUNCES["mass"])
    if kind.name in ("volume", "liquid") and name == "oz":
        raise Unreadable(_OUNCES["volume"])
    if name == "deg" and kind.name.startswith("temperature"):
        raise Unreadable("degrees of which scale? F or C is missing")
    hint = unclear(phrase)
    if hint:
        raise Unreadable(hint)
    if name in KINDS_OF_UNIT:
        raise Unreadable(f"{_shown(phrase)} is a unit of {KINDS_OF_UNIT[name][0]}")
    raise Unreadable(f"{_shown(phrase)} is not a unit this entry knows")


def _number(found, at):
    """Find the number at `at`: (function of the unit's system giving its value, whole?, next position)."""
    what, run, _ = found[at]
    if what != "number":
        raise Unreadable("a number is missing" if what == "unit" else f"{_shown(run)} cannot stand there")
    kinds = [item[0] for item in found[at : at + 5]]
    tight = at + 2 < len(found) and not found[at + 1][2] and not found[at + 2][2]
    if kinds[1:3] == ["/", "number"]:
        value = fraction(run, found[at + 2][1])
        return (lambda us: value), False, at + 3
    if kinds[1:4] == ["number", "/", "number"]:
        value = mixed(run, found[at + 1][1], found[at + 3][1])
        return (lambda us: value), False, at + 4
    if kinds[1:5] == ["-", "number", "/", "number"] and tight:
        value = mixed(run, found[at + 2][1], found[at + 4][1])
        return (lambda us: value), False, at + 5
    if kinds[1:2] == ["number"]:
        raise Unreadable(f"{run} and {found[at + 1][1]} stand side by side; write one number")
    return (lambda us: decimal(run, us)), run.isdigit(), at + 1


def _tidy(found):
    """Drop the "and" and the commas that only join two parts."""
    out = []
    for item in found:
        what, text, gap = item
        if what == "," or (what == "unit" and text.lower() == "and"):
            if not out or out[-1][0] not in ("unit", "number") or item is found[-1]:
                raise Unreadable(f"{_shown(text)} cannot stand there")
            continue
        if what == "unit" and text.lower().endswith(" and"):
            text = text[:-4].rstrip()
        out.append((what, text, gap))
    return out


def _parts(found, kind):
    """Return [(value, unit, whole?)] for the numbers and units of an entry, signs left out."""
    parts, at = [], 0
    while at < len(found):
        if parts and found[at][0] == "-" and parts[-1][1] == "ft":
            at += 1  # 10'-6"
            if at == len(found):
                raise Unreadable("something is missing after the dash")
        value, whole, at = _number(found, at)
        if at < len(found) and found[at][0] == "unit":
            unit = _unit(found[at][1], kind)
            at += 1
        elif at < len(found):
            raise Unreadable(f"{_shown(found[at][1])} cannot stand there")
        elif parts and parts[-1][1] == "ft" and value(True) < 12:
            unit = "in"  # 10'6
        elif kind.plain and not parts:
            unit = "-"
        elif parts:
            raise Unreadable("the last number has no unit")
        else:
            value(True)
            raise Unreadable("it has no unit")
        parts.append((value(is_us(unit)), unit, whole))
    return parts


def _total(parts, kind, sign):
    """Add the parts up in SI."""
    if len(parts) > 1:
        if not kind.parts:
            raise Unreadable("only one number with its unit is understood here")
        if not all(whole for _, _, whole in parts[:-1]):
            raise Unreadable("only the last part may have a fraction")
        sizes = [line(unit, kind.si_unit)[0] for _, unit, _ in parts]
        if len({unit for _, unit, _ in parts}) < len(parts):
            raise Unreadable("the same unit stands twice")
        if any(small >= large for large, small in zip(sizes, sizes[1:], strict=False)):
            raise Unreadable("the larger unit must stand first")
    total = 0.0
    for value, unit, _ in parts:
        factor, offset = line(unit, kind.si_unit)
        total += sign * value * factor + offset
    return float(f"{total:.15g}") + 0.0  # 3/4 in is 0.01905 m and not 0.019049999999999997


def parse(text, kind, entry="value"):
    """Read a quantity as a person types it.

    Not for data files of the project, which use `parse_quantity`. A bare number is refused where a unit is needed.
    A point is the decimal point. A comma before exactly three digits groups thousands with US units ("1,440 in2") and
    is refused with metric ones ("1,500 mm" has two readings); any other single comma is a decimal comma ("38,5 mm").
    A number below 12 that ends a size in feet is inches (10'6).

    Parameters
    ----------
    text : str
        What was typed, at most 80 characters; a plain number only for kinds without unit [-].
    kind : str
        One of KINDS: "length", "mass", "temperature" [-].
    entry : str
        The entry in shop words, as the message will call it [-].

    Returns
    -------
    float
        The quantity [SI unit of the kind].

    Raises
    ------
    ValueError
        When the text cannot be read, has two readings, has a unit of another kind, or is below the least value.

    Notes
    -----
    Only the unit words of the table in this package are understood and nothing that was typed is run.

    Examples
    --------
    >>> parse("5' 3/4\\"", "length")
    1.54305
    >>> parse("2 lb 3 oz", "mass")
    0.99223330...

    References
    ----------
    Common practice, no source.
    """
    kind = kind_of(kind)
    if isinstance(text, (int, float)) and not isinstance(text, bool):
        if not kind.plain:
            _refuse(entry, str(text)[:40], "it has no unit", kind)
        text = format(float(text), "f") if math.isfinite(text) and abs(text) < 1e15 else str(text)
        text = text.rstrip("0").rstrip(".") if "." in text else text
    if not isinstance(text, str):
        _refuse(entry, type(text).__name__, "it must be a text with a unit", kind)
    given = _shown(text)
    try:
        if not text.strip():
            raise Unreadable("nothing is written there")
        if len(text) > LONGEST:
            raise Unreadable(f"it is longer than {LONGEST} characters")
        if _POWER_OF_TEN.search(text):
            raise Unreadable("powers of ten are not understood; write the number out")
        found = items(plain(text))
        sign = -1.0 if found and found[0][0] == "-" else 1.0
        if found and found[0][0] in "-+":
            found = found[1:]
        if not found or found[0][0] != "number":
            raise Unreadable("it does not begin with a number")
        parts = _parts(_tidy(found), kind)
        total = _total(parts, kind, sign)
        if not math.isfinite(total):
            raise Unreadable("it is not a number of a possible size")
        if kind.floor is not None and total < kind.floor - 1e-9:
            raise Unreadable("it is below absolute zero" if kind.floor else "it cannot be negative")
        return total
    except Unreadable as problem:
        why = str(problem)
    _refuse(entry, given, why, kind)
