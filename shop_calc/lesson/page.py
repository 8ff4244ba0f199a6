"""Small pieces of a page: everything that came from a person or a model is escaped here."""

import base64
import html
import re

_DEGREES = {
    "degC": "°C",
    "degF": "°F",
    "C": "°C",
    "F": "°F",
    "delta_C": "°C",
    "delta_F": "°F",
    "delta_K": "°C",
}
_PURE = ("-", "fraction", "")
_UNITS = "°[CF]|%|in|ft|yd|mil|mm|cm|m|lbf?|oz|kg|g|qt|gal|cup|mL|L|[kM]?Pa|psi|k?N|[kM]?J|h|min|s|d|mph|km/h|W"
_PARTED = re.compile(
    rf"(?<=[\d½⅓⅔¼¾⅛⅜⅝⅞])[ \n](?=(?:{_UNITS})(?![^\W_²³]))"  # to Python a raised 3 is a letter of its word
    r"|(?<=\d) (?=\d+/\d)|(?<=\b(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun)) (?=\d\d:\d\d)"
)
_DATE = re.compile(r"\b\d{4}-\d\d-\d\d(?:T[\d:]+)?")


def sign(unit):
    """Write a unit as people read it.

    Parameters
    ----------
    unit : str
        Unit as `units.convert` reads it [-].

    Returns
    -------
    str
        For example "°F" or "lb/ft²·h"; empty for a pure number [-].

    Examples
    --------
    >>> sign("kg/m2/h"), sign("degF"), sign("N*m"), sign("fraction")
    ('kg/m²·h', '°F', 'N·m', '')

    References
    ----------
    Common practice, no source.
    """
    if unit in _PURE:
        return ""
    unit = unit.replace("**0.5", "^½").replace("*", "·")
    first, *below = unit.split("/")
    text = "/".join([first, "·".join(below)]) if below else first
    return _DEGREES.get(unit) or re.sub("[23]", lambda power: "²³"[int(power.group()) - 2], text)


def bound(text):
    """Bind each number to its unit, a whole inch to its fraction and a day to its hour: no line ends between them.

    Parameters
    ----------
    text : str
        Any text, the prose of a lesson as well [-].

    Returns
    -------
    str
        The same with no-break spaces there [-].

    Examples
    --------
    >>> bound("6\\n°F, 4 1/4 in and 1½ in by Tue 08:00").replace(chr(160), "_")
    '6_°F, 4_1/4_in and 1½_in by Tue_08:00'

    References
    ----------
    Common practice, no source.
    """
    return _PARTED.sub("\u00a0", text)


def escaped(text):
    """Escape a text for the page, each number kept on one line with its unit.

    Parameters
    ----------
    text : str
        Any text [-].

    Returns
    -------
    str
        HTML; neither the space before a unit nor a date breaks [-].

    Examples
    --------
    >>> escaped("a < 60 °F (15.6 °C)").replace(chr(160), "_")
    'a &lt; 60_°F (15.6_°C)'

    References
    ----------
    Common practice, no source.
    """
    whole = _DATE.sub(r'<span style="white-space:nowrap">\g<0></span>', html.escape(str(text)))
    return bound(whole)


def img_tag(png, alt, ratio=None):
    """Make an `<img>` that carries its own data and says in words what it shows.

    Not for pictures that lie in a file: those are named in the text.

    Parameters
    ----------
    png : bytes
        A PNG file [-].
    alt : str
        What the picture shows, for who cannot see it; escaped here [-].
    ratio : tuple of int, optional
        Width and height; keeps the place free before the picture has arrived [-].

    Returns
    -------
    str
        HTML [-].

    Examples
    --------
    >>> img_tag(b"x", 'a "b"')[:31]
    '<img alt="a &quot;b&quot;" deco'

    References
    ----------
    Common practice, no source.
    """
    data = base64.b64encode(png).decode("ascii")
    look = "display:block;width:900px;max-width:100%;height:auto;background:#fff;border-radius:6px"
    if ratio:
        look += f";aspect-ratio:{ratio[0]}/{ratio[1]}"
    # decoding="sync": a picture replaced while a slider moves must not blink
    return f'<img alt="{html.escape(alt)}" decoding="sync" style="{look}" src="data:image/png;base64,{data}">'


def lines_html(text, first="", rest=""):
    """Set a text line by line, the first line larger.

    Parameters
    ----------
    text : str
        Lines separated by line breaks; escaped here [-].
    first, rest : str
        Inline style of the first line and of the others [-].

    Returns
    -------
    str
        HTML [-].

    Examples
    --------
    >>> lines_html("a < b\\nc")
    '<div style="">a &lt; b</div><div style="">c</div>'

    References
    ----------
    Common practice, no source.
    """
    lines = [line for line in str(text).splitlines() if line.strip()] or [""]
    return "".join(
        f'<div style="{rest if k else first}">{escaped(line)}</div>' for k, line in enumerate(lines)
    )
