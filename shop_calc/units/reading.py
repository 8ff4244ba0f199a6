"""Read what a person typed: sizes, masses, volumes, temperatures, in either system."""

import math
import re
from itertools import pairwise

from shop_calc.units.factors import line
from shop_calc.units.kinds import KIND_OF_UNIT, kind_of
from shop_calc.units.numerals import Unreadable, decimal, fraction, mixed
from shop_calc.units.scan import items, plain
from shop_calc.units.showing import printed
from shop_calc.units.words import canonical, is_us, unclear

LONGEST = 80  # characters; the longest size a person writes has about 20
_BASIS = {"binder", "cement", "cementitious", "powder", "mortar", "mix", "total", "water", "sand",
          "stone", "aggregate", "bag"}  # fmt: skip
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
    examples, article = ", ".join(kind.examples), "an" if kind.title[0] in "aeiou" else "a"
    raise ValueError(f"{entry}: {given} given; {why}. Write {article} {kind.title} like {examples}") from None


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
    """Turn a unit phrase into our name of it, or say in shop words why not."""
    if kind.name in ("mass_ratio", "fraction"):
        phrase = _without_basis(phrase)
        if kind.plain and phrase.lower() in ("", "by mass"):
            return "-"
    name = canonical(phrase)
    if name in kind.words and phrase not in ("-", "1"):
        return name
    if not phrase:
        raise Unreadable("it has no unit")
    if kind.name == "mass" and name == "floz":
        raise Unreadable(_OUNCES["mass"])
    if kind.name in ("volume", "liquid") and name == "oz":
        raise Unreadable(_OUNCES["volume"])
    if name == "deg" and kind.name.startswith("temperature"):
        raise Unreadable("degrees of which scale? F or C is missing")
    if hint := unclear(phrase):
        raise Unreadable(hint)
    if name in KIND_OF_UNIT:
        better = [f"{name}{power}" for power in "23" if f"{name}{power}" in kind.words]
        better = f"; {better[0]} would fit" if better else ""
        raise Unreadable(f"{_shown(phrase)} is a unit of {KIND_OF_UNIT[name]}{better}")
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
    for at, (what, text, gap) in enumerate(found):
        comma, joins = what == ",", what == "unit" and text.lower() == "and"
        if comma or joins:
            before = found[at - 1][0] if at else ""
            if at + 1 == len(found) or before not in (("unit",) if comma else ("unit", "number")):
                raise Unreadable(f"{_shown(text)} cannot stand there")
            continue
        if what == "unit" and text.lower().endswith(" and") and at + 1 < len(found):
            text = text[:-4].rstrip()
        out.append((what, text, gap))
    return out


def _no_unit(run, kind):
    if kind.name == "fraction":
        return f"it has no unit ({run} %? {run} fraction?)"
    if kind.us_unit == kind.si_shown:
        return "it has no unit"
    return f"it has no unit ({run} {printed(kind.us_unit)}? {run} {printed(kind.si_shown)}?)"


def _parts(found, kind):
    """List (value, unit, whole?) for the numbers and units of an entry, its sign left out."""
    parts, at = [], 0
    while at < len(found):
        if parts and found[at][0] == "-" and parts[-1][1] == "ft":
            at += 1  # 10'-6"
            if at == len(found):
                raise Unreadable("something is missing after the dash")
        start = at
        value, whole, at = _number(found, at)
        if at < len(found):
            if found[at][0] != "unit":
                raise Unreadable(f"{_shown(found[at][1])} cannot stand there")
            unit = _unit(found[at][1], kind)
            at += 1
        elif parts and parts[-1][1] == "ft" and value(True) < 12:
            unit = "in"  # 10'6
        elif kind.plain and not parts:
            unit = "-"
        elif parts:
            raise Unreadable("the last number has no unit")
        else:
            value(True)  # "11/4" is refused for its two readings first
            run = "".join(" " * gap + text for _, text, gap in found[start:]).strip()
            raise Unreadable(_no_unit(run, kind))
        parts.append((value(is_us(unit)), unit, whole))
    return parts


def _total(parts, kind, sign):
    """Add the parts up in SI."""
    if len(parts) > 1:
        if not kind.parts:
            raise Unreadable("only one number with its unit is understood here")
        if len({unit for _, unit, _ in parts}) < len(parts):
            raise Unreadable("the same unit stands twice")
        if not all(whole for _, _, whole in parts[:-1]):
            raise Unreadable("only the last part may have a fraction")
        sizes = [line(unit, kind.si_unit)[0] for _, unit, _ in parts]
        if any(small >= large for large, small in pairwise(sizes)):
            raise Unreadable("the larger unit must stand first")
    total = 0.0
    for value, unit, _ in parts:
        factor, offset = line(unit, kind.si_unit)
        total += sign * value * factor + offset
    return float(f"{total:.15g}")  # 3/4 in is 0.01905 m and not 0.019049999999999997


def _within(total, kind):
    """Return the value, or say that it is below what the kind can be."""
    if not math.isfinite(total):
        raise Unreadable("it must be a number that can be measured")
    if kind.floor is None or total >= kind.floor:
        return total + 0.0  # no -0
    if kind.floor:
        raise Unreadable("it is below absolute zero, -459.67 °F or -273.15 °C")
    raise Unreadable("it must be at least 0")


def _read(text, kind):
    """Read a text into SI, or say what is wrong with it."""
    if not text.strip():
        raise Unreadable("nothing is written there")
    if len(text) > LONGEST:
        raise Unreadable(f"it is longer than {LONGEST} characters")
    if _POWER_OF_TEN.search(text):
        raise Unreadable("powers of ten are not understood; write the number out")
    found = items(plain(text))
    sign = -1.0 if found and found[0][0] == "-" else 1.0
    if found and found[0][0] in ("-", "+"):
        found = found[1:]
    if not found or found[0][0] != "number":
        raise Unreadable("it does not begin with a number")
    return _within(_total(_parts(_tidy(found), kind), kind, sign), kind)


def parse(text, kind, entry="value"):
    """Read a quantity as a person types it.

    Not for data files of the project, which use `parse_quantity`. A bare number is refused where a unit is
    needed. A point is the decimal point. A comma before exactly three digits groups thousands with US units
    ("1,440 in2") and is refused with metric ones ("1,500 mm" has two readings); any other single comma is a
    decimal comma ("38,5 mm"). A number below 12 that ends a size in feet is inches (10'6). The word after a
    share ("5 % of cement") is read by `basis`.

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
        When the text cannot be read, has two readings, has a unit of another kind, or is below the least
        possible value.

    Notes
    -----
    Only the unit words of the table in this package are understood, and nothing that was typed is run.
    Gallons, quarts, cups and fluid ounces are US measures.

    Examples
    --------
    >>> parse("5' 3/4\\"", "length")
    1.54305
    >>> round(parse("2 lb 3 oz", "mass"), 6)
    0.992233

    References
    ----------
    Common practice, no source.
    """
    kind = kind_of(kind)
    given = _shown(text) if isinstance(text, str) else _shown(str(text))[1:-1]
    try:
        if isinstance(text, str):
            return _read(text, kind)
        if isinstance(text, bool) or not isinstance(text, (int, float)):
            raise Unreadable("it must be a text with a number and a unit")
        if not kind.plain:
            raise Unreadable(_no_unit(given, kind))
        return _within(float(text), kind)
    except OverflowError:
        why = "it must be a number that can be measured"
    except Unreadable as problem:
        why = str(problem)
    _refuse(entry, given, why, kind)
