"""What is wrong with a line that is no TOML, in words for people who never heard of it."""

import re

LONGEST_LINE = 60  # characters of a line that are repeated
_PLACE = re.compile(r"\(at line (\d+), column \d+\)")
_CURLY = re.compile("[“”„‟″«»]")
_DATE = re.compile(r"=\s*\d{1,4}[-/.]\d{1,2}[-/.]\d")
_INCH_MARK = re.compile(r"""=.*"[^"=]*\d"{2}|=\s*"[^"]*\d"\s*[^\s,\]}#]""")
_BARE = re.compile(r"=\s*[\d.]+\s*[\w'/-]")


def toml_words(error, text):
    """Say which line of a job file cannot be read, and what people usually meant.

    Parameters
    ----------
    error : Exception
        What the reader of TOML said [-].
    text : str
        The whole file [-].

    Returns
    -------
    str
        One line: the place, what stands there, and a hint [-].

    Examples
    --------
    >>> import tomllib
    >>> try:
    ...     tomllib.loads("length = 5 ft")
    ... except ValueError as slip:
    ...     print(toml_words(slip, "length = 5 ft"))
    job file, line 1: length = 5 ft; sizes stand between quotes, as in length = "5 ft"

    References
    ----------
    TOML 1.0.
    """
    said, lines = str(error), text.splitlines()
    place = _PLACE.search(said)
    number = min(int(place.group(1)) if place else len(lines), max(len(lines), 1))
    line = lines[number - 1].strip() if lines else ""
    shown = "".join(sign if sign.isprintable() else "?" for sign in line)
    shown = shown if len(shown) <= LONGEST_LINE else shown[: LONGEST_LINE - 3] + "..."
    where = f"job file, line {number}: {shown or 'nothing'}"
    return f"{where}; {_hint(said, line)}"


def _hint(said, line):
    if "verwrite" in said or "twice" in said:
        return "that stands twice in the file; keep one of them"
    if _CURLY.search(line):
        return 'the quotes must be straight, as in length = "5 ft"'
    if _DATE.search(line):
        return "no such date or time; write year, month, day and the clock, as in 2026-05-04T08:00:00"
    if _INCH_MARK.search(line):
        return 'an inch mark between quotes takes a backslash, as in "10\'6\\"", or write "10 ft 6 in"'
    if "nclosed array" in said:
        return 'a list above this line lacks its bracket, as in exposed = ["front", "left"]'
    if "\\" in line and "nescaped" in said:
        return "a backslash stands only before an inch mark"
    if line.startswith("["):
        return "a part is named between brackets, as in [piece], rows as in [[room]]"
    if "=" not in line and line:
        return 'a line is an entry, as in length = "5 ft", or the name of a part, as in [piece]'
    if _BARE.search(line) or line.count('"') % 2 == 0:
        return 'sizes stand between quotes, as in length = "5 ft"'
    return 'a quote is missing; sizes stand between two of them, as in length = "5 ft"'
