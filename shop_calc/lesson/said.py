"""A few lines of text for the page."""

import re
from dataclasses import dataclass

from shop_calc.lesson.page import escaped

_LOOK = "white-space:pre-wrap;line-height:1.5;max-width:46em;padding:4px 0"

_WORKING = "   "
_STEP = re.compile(r"\d+\. ")


def _hanging(line):
    """One line of a working: indented as it is, its second line a little further in."""
    text = line.lstrip(" ")
    gap = "margin-top:0.4em" if _STEP.match(text) or re.match(r"[a-z]  |Answer", text) else ""
    if text == line and not _STEP.match(text):
        return f'<div style="{gap}">{escaped(text)}</div>'
    left = 0.4 * (len(line) - len(text)) + 1.2
    return f'<div style="padding-left:{left:g}em;text-indent:-1.2em;{gap}">{escaped(text)}</div>'


@dataclass(frozen=True)
class Said:
    """A text for the page, escaped, line by line.

    Parameters
    ----------
    text : str
        What is said [-].

    Examples
    --------
    >>> Said("Look again.")
    Look again.

    References
    ----------
    Common practice, no source.
    """

    text: str

    def __repr__(self):
        return self.text

    def _repr_mimebundle_(self, include=None, exclude=None):
        lines = self.text.split("\n")
        if any(line.startswith(_WORKING) for line in lines):  # a long line of working goes on under its own start
            page = f'<div style="{_LOOK}">{"".join(map(_hanging, lines))}</div>'
        else:
            page = f'<div style="{_LOOK}">{escaped(self.text)}</div>'
        return {"text/html": page, "text/plain": self.text}
