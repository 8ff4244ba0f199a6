"""Cut a typed text into numbers and unit words, one character at a time, so that no text can make it slow."""

import unicodedata

_PLAIN = str.maketrans({
    "′": "'", "’": "'", "‘": "'", "ʹ": "'", "´": "'", "`": "'", "‵": "'", "″": '"', "”": '"', "“": '"', "„": '"',
    "ʺ": '"', "‶": '"', "〃": '"', "−": "-", "–": "-", "—": "-", "‐": "-", "‑": "-", "⁄": "/", "∕": "/", "º": "°",
    "˚": "°", "⋅": "·", "∙": "·", "•": "·", "×": "*",
    "\u00a0": " ", "\u2009": " ", "\u202f": " ", "\u2007": " ", "\u2002": " ", "\u2003": " ", "\t": " ",
})  # fmt: skip
_DIGITS = "0123456789"


def plain(text):
    """Replace curly quotes, primes, dashes and one-sign fractions by what a plain keyboard has.

    Parameters
    ----------
    text : str
        What was typed [-].

    Returns
    -------
    str
        The same in plain signs; "1½" becomes "1 1/2" [-].

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
            gap = " " if out and out[-1] and out[-1][-1] in _DIGITS else ""
            out.append(f"{gap}{written} ")
        else:
            out.append(sign)
    return "".join(out).replace("''", '"').strip()


def _in_unit(text, at, start):
    """True when the digit at `at` belongs to a unit word begun at `start` (ft2, lb/ft2/h) and not to a number."""
    before = text[at - 1]
    if text[at] not in "23" or not (before.isalpha() or before == "^"):
        return False
    after = text[at + 1 : at + 2]
    if not after or after in " ,;)·*-":
        return True
    if after == "/":
        return not text[at + 2 :].lstrip()[:1].isdigit()
    return after.isalpha() and "/" in text[start:at]


def items(text):
    """Cut a plain text into ("number", run), ("unit", phrase) and single signs.

    Parameters
    ----------
    text : str
        What `plain` gave [-].

    Returns
    -------
    list of tuple
        (what, text, space before it) [-].

    Examples
    --------
    >>> [item[:2] for item in items("4 1/2 sq ft")]
    [('number', '4'), ('/', '/')...

    References
    ----------
    Common practice, no source.
    """
    found, at, end = [], 0, len(text)
    while at < end:
        start = at
        while at < end and text[at] == " ":
            at += 1
        gap, start = at > start, at
        if at == end:
            break
        sign = text[at]
        if sign in _DIGITS or (sign in ".," and text[at + 1 : at + 2] in tuple(_DIGITS)):
            while at < end and text[at] in _DIGITS + ".,":
                at += 1
            while text[at - 1] in ".,":  # "5. in" and "2 lb 3, ..." end a number with a stop
                at -= 1
            found.append(("number", text[start:at], gap))
            if text[at : at + 1] == ".":
                at += 1
        elif sign in "'\"":
            found.append(("unit", sign, gap))
            at += 1
        elif sign in "-+,;:" or (sign == "/" and found and found[-1][0] == "number"):
            found.append((sign, sign, gap))
            at += 1
        else:
            while at < end and text[at] not in "'\",;:":
                if text[at] in _DIGITS and not _in_unit(text, at, start):
                    break
                if text[at] in "-+" and text[at + 1 :].lstrip()[:1] in tuple(_DIGITS):
                    break
                at += 1
            phrase = text[start:at].rstrip()
            if phrase.endswith(".") and at < end and text[at] in _DIGITS and text[at - 1] == ".":
                at -= 1
                phrase = text[start:at].rstrip()
            found.append(("unit", phrase, gap))
    return found
