"""A few lines of text for the page."""

import re
from dataclasses import dataclass

from shop_calc.lesson.page import escaped

_LOOK = "white-space:pre-wrap;line-height:1.5;max-width:46em;padding:4px 0"

_WORKING = "   "
_STEP = re.compile(r"\d+\. ")
_HANGS = re.compile(r"\d+\. |• |Answer: |Not [a-z]: |\d\d:\d\d |line \d+, ")  # starts an entry of its own
_ENTRY = re.compile(rf"  |{_HANGS.pattern}")


def _hanging(line, working):
    """One line of a list or a working: indented as it is, its second line a little further in."""
    text = line.lstrip(" ")
    opens = _STEP.match(text) or re.match(r"[a-z]  |Answer", text)
    gap = "margin-top:0.4em" if working and opens else ""
    whole = text
    if text.startswith("with "):  # a symbol, its value and the other unit stay together
        whole = ", ".join(amount.replace(" ", "\u00a0") for amount in text.split(", "))
    page = escaped(whole) or "\u00a0"
    if text == line and not _HANGS.match(text):
        return f'<div style="{gap}">{page}</div>'
    left = 0.4 * (len(line) - len(text)) + 1.2
    return f'<div style="padding-left:{left:g}em;text-indent:-1.2em;{gap}">{page}</div>'


@dataclass(frozen=True)
class Said:
    """A text for the page, escaped, line by line.

    Parameters
    ----------
    text : str
        What is said [-].
    typed : str
        The part of it that only says how to type an answer; the view without code, where nothing can be typed, leaves
        it out [-].

    Examples
    --------
    >>> Said("Look again.")
    Look again.
    >>> Said("In ft, as a number.", ", as a number")._repr_mimebundle_()["text/html"].split(">", 1)[1]
    'In ft<span class="shop-typed">, as a number</span>.</div>'

    References
    ----------
    Common practice, no source.
    """

    text: str
    typed: str = ""

    def __repr__(self):
        return self.text

    def _repr_mimebundle_(self, include=None, exclude=None):
        lines = self.text.split("\n")
        if any(map(_ENTRY.match, lines)):  # a long line goes on under its own start
            working = any(line.startswith(_WORKING) for line in lines)
            page = f'<div style="{_LOOK}">{"".join(_hanging(line, working) for line in lines)}</div>'
        else:
            page = f'<div style="{_LOOK}">{escaped(self.text)}</div>'
        if self.typed:
            before, part, behind = page.rpartition(escaped(self.typed))
            page = f'{before}<span class="shop-typed">{part}</span>{behind}'
        return {"text/html": page, "text/plain": self.text}
