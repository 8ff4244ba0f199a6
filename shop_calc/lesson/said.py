"""A few lines of text for the page."""

import html
import re
from dataclasses import dataclass

_LOOK = "white-space:pre-wrap;line-height:1.5;max-width:46em;padding:4px 0"

_WORKING = "   "


def _hanging(line):
    """One line of a working: indented as it is, its second line a little further in."""
    text = line.lstrip(" ")
    gap = "margin-top:0.4em" if re.match(r"\d+\. |[a-z]  |Answer", text) else ""
    if text == line and not text[:1].isdigit():
        return f'<div style="{gap}">{html.escape(text)}</div>'
    left = 0.4 * (len(line) - len(text)) + 1.2
    return f'<div style="padding-left:{left:g}em;text-indent:-1.2em;{gap}">{html.escape(text)}</div>'


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
            page = f'<div style="{_LOOK}">{html.escape(self.text)}</div>'
        return {"text/html": page, "text/plain": self.text}
