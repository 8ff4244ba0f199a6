"""Cut a typed text into numbers and unit words, one sign at a time, so that no text can make it slow."""

import unicodedata

from shop_calc.units.numerals import Unreadable

_PLAIN = {}
for _plain_sign, _signs in {
    "'": "′’‘ʹ´`‵",
    '"': "″”“„ʺ‶〃",
    "-": "−–—‐‑",
    "/": "⁄∕",
    "°": "º˚",
    "·": "⋅∙•",
    "*": "×",
    " ": "\u00a0\u2009\u202f\u2007\u2002\u2003\t",
}.items():
    _PLAIN.update({ord(sign): _plain_sign for sign in _signs})
_DIGITS = frozenset("0123456789")


def plain(text):
    """Replace curly quotes, primes, dashes and one-sign fractions by what a plain keyboard has.

    Parameters
    ----------
    text : str
        What was typed [-].

    Returns
    -------
    str
        The same in plain signs [-].

    Examples
    --------
    >>> plain("1½″")
    '1 1/2 "'

    References
    ----------
    Common practice, no source.
    """
    out = []
    for sign in text.translate(_PLAIN):
        if unicodedata.name(sign, "").startswith("VULGAR FRACTION"):
            written = unicodedata.normalize("NFKD", sign).replace("⁄", "/")
            gap = " " if out and out[-1][-1] in _DIGITS else ""  # 1½ is not 11/2
            out.append(f"{gap}{written} ")
        else:
            out.append(sign)
    return "".join(out).replace("''", '"').strip()


def _in_unit(text, at, start):
    """Tell whether the digit at `at` belongs to the unit begun at `start` (ft2, lb/ft2/h)."""
    before = text[at - 1]
    if text[at] not in "23" or not (before.isalpha() or before == "^"):
        return False
    after = text[at + 1 : at + 2]
    if after == "/":
        return text[at + 2 :].lstrip()[:1] not in _DIGITS
    return not after or after in " ,;)·*-" or (after.isalpha() and "/" in text[start:at])


def _end_of_number(text, at):
    while at < len(text) and (text[at] in _DIGITS or text[at] in ".,"):
        at += 1
    while text[at - 1] in ".,":  # a stop after a number is not part of it
        at -= 1
    return at


def _end_of_unit(text, start):
    at = start + 1
    while at < len(text) and text[at] not in "'\",;:":
        if text[at] in _DIGITS and not _in_unit(text, at, start):
            if text[at - 1] == ".":  # "5 ft.5 in": a stop of the word, or a decimal point?
                raise Unreadable(f"the point before {text[at]} has two readings; leave a gap or write a zero")
            return at
        if text[at] == "." and text[at - 1] == " " and text[at + 1 : at + 2] in _DIGITS:
            return at  # "5 ft .5 in"
        if text[at] in "-+" and text[at + 1 :].lstrip()[:1] in _DIGITS:
            return at
        at += 1
    return at


def items(text):
    """Cut a plain text into numbers, unit phrases and single signs.

    Parameters
    ----------
    text : str
        What `plain` gave [-].

    Returns
    -------
    list of tuple
        ("number" or "unit" or the sign, the text, whether a gap stands before it) [-].

    Raises
    ------
    Unreadable
        When a point has two readings.

    Examples
    --------
    >>> items("4 in2")
    [('number', '4', False), ('unit', 'in2', True)]

    References
    ----------
    Common practice, no source.
    """
    found, at = [], 0
    while at < len(text):
        gap = text[at] == " "
        if gap:
            at += len(text[at:]) - len(text[at:].lstrip(" "))
        start, sign = at, text[at]
        if sign in _DIGITS or (sign in ".," and text[at + 1 : at + 2] in _DIGITS):
            at = _end_of_number(text, at)
            found.append(("number", text[start:at], gap))
            at += text[at : at + 1] == "."  # "5. in"
            continue
        if sign in "'\"":
            what, at = "unit", at + 1
        elif sign in "-+,;:" or (sign == "/" and found and found[-1][0] == "number"):
            what, at = sign, at + 1
        else:
            what, at = "unit", _end_of_unit(text, at)
        found.append((what, text[start:at].rstrip(), gap))
    return found
