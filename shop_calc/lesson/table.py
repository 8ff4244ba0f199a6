"""A plain table for a page: words to the left, numbers to the right, the same in text and on the page."""

import html
from dataclasses import dataclass

from shop_calc.lesson.page import escaped

_TABLE = "border-collapse:collapse;margin:0.4em 0"
_CELL = "padding:3px 12px 3px 0;border-bottom:1px solid var(--jp-border-color2,#d5d9de);vertical-align:top"

_WHOLE = {"left": "", "right": ";white-space:nowrap"}  # a size is not broken over two lines


def _side(column, texts):
    """Numbers stand to the right; a column is one of numbers when every cell begins with one."""
    begins = (text.lstrip("+-−").strip()[:1] for text in texts if text.strip(" –"))
    return "right" if column and all(sign.isdigit() for sign in begins) else "left"


@dataclass(frozen=True)
class Table:
    """A small table of texts.

    Parameters
    ----------
    header : tuple of str
        Names of the columns [-].
    rows : tuple of tuple of str
        The cells, as many in a row as there are columns [-].
    caption : str
        What stands under it, line by line; may be empty [-].

    Examples
    --------
    >>> Table(("what", "mass"), (("cement", "26.6 lb"), ("sand", "33.3 lb")))
    what       mass
    cement  26.6 lb
    sand    33.3 lb

    References
    ----------
    Common practice, no source.
    """

    header: tuple
    rows: tuple
    caption: str = ""

    def __post_init__(self):
        if any(len(row) != len(self.header) for row in self.rows):
            raise ValueError(f"rows: each must have {len(self.header)} cells, one for each column")

    @property
    def sides(self):
        """Where each column is ranged: "left" or "right"."""
        return [_side(k, [row[k] for row in self.rows]) for k in range(len(self.header))]

    def cells(self, row):
        """The cells of one row as they stand on the page; a table of links puts its own here."""
        return [escaped(text) for text in self.rows[row]]

    def __repr__(self):
        lines = [self.header, *self.rows]
        widths = [max(len(line[k]) for line in lines) for k in range(len(self.header))]
        put = {"left": str.ljust, "right": str.rjust}
        columns = list(zip(widths, self.sides, strict=True))
        text = [
            "  ".join(put[side](cell, wide) for cell, (wide, side) in zip(line, columns, strict=True)).rstrip()
            for line in lines
        ]
        return "\n".join([*text, *([self.caption] if self.caption else [])])

    def _repr_mimebundle_(self, include=None, exclude=None):
        def line(cells, tag):
            made = (
                f'<{tag} style="{_CELL};text-align:{side}{_WHOLE[side]}">{cell}</{tag}>'
                for cell, side in zip(cells, self.sides, strict=True)
            )
            return f"<tr>{''.join(made)}</tr>"

        under = "".join(f"<div>{escaped(text)}</div>" for text in self.caption.splitlines())
        body = "".join(line(self.cells(k), "td") for k in range(len(self.rows)))
        head = line(map(html.escape, self.header), "th")
        page = (
            f'<div style="overflow-x:auto"><table style="{_TABLE}"><thead>{head}</thead>'
            f'<tbody>{body}</tbody></table></div><div style="max-width:46em">{under}</div>'
        )
        return {"text/html": page, "text/plain": repr(self)}


def table(header, rows, caption=""):
    """Make a table of whatever can be written as text.

    Parameters
    ----------
    header : sequence of str
        Names of the columns [-].
    rows : sequence of sequence
        The cells; escaped when shown [-].
    caption : str
        What stands under it [-].

    Returns
    -------
    Table
        Shown by the notebook [-].

    Raises
    ------
    ValueError
        When a row has too many or too few cells.

    Examples
    --------
    >>> table(["load", "water in"], [[1, "08:00"]]).rows
    (('1', '08:00'),)

    References
    ----------
    Common practice, no source.
    """
    return Table(tuple(map(str, header)), tuple(tuple(map(str, row)) for row in rows), caption)
