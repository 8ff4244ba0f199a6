"""A few lines of text for the page."""

import html
from dataclasses import dataclass

_LOOK = "white-space:pre-wrap;line-height:1.5;max-width:46em;padding:4px 0"


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
        page = f'<div style="{_LOOK}">{html.escape(self.text)}</div>'
        return {"text/html": page, "text/plain": self.text}
