"""Headings, columns and paragraphs of the printed plan."""

import textwrap

WIDTH = 100


def heading(text):
    """Write a heading with a line under it.

    Parameters
    ----------
    text : str
        The heading [-].

    Returns
    -------
    str
        Two lines, the second of the length of the first [-].

    Examples
    --------
    >>> print(heading("The piece"), end="")
    The piece
    ---------

    References
    ----------
    Common practice, no source.
    """
    return f"{text}\n{'-' * len(text)}\n"


def columns(rows):
    """Line cells up in columns, the last column ragged; what would run over the page goes below its row.

    Parameters
    ----------
    rows : sequence of sequence of str
        Rows of equal length [-].

    Returns
    -------
    str
        One line a row, two blanks between columns [-].

    Examples
    --------
    >>> print(columns([("sand", "15 kg"), ("water", "4 kg")]))
    sand   15 kg
    water  4 kg

    References
    ----------
    Common practice, no source.
    """
    widths = [max(len(row[place]) for row in rows) for place in range(len(rows[0]))]
    lines = []
    for row in rows:
        *cells, last = (cell.ljust(width) for cell, width in zip(row, widths, strict=True))
        start = "  ".join(cells)
        last = last.rstrip()
        if len(start) + 2 + len(last) <= WIDTH or not cells:
            lines.append("  ".join((*cells, last)).rstrip())
            continue
        if len(start) <= 65:  # room enough beside it
            indent = " " * (len(start) + 2)
            lines.append(textwrap.fill(last, WIDTH, initial_indent=f"{start}  ", subsequent_indent=indent))
            continue
        indent = " " * (len(cells[0]) + 2)
        lines.append(start.rstrip())
        lines.append(textwrap.fill(last, WIDTH, initial_indent=indent, subsequent_indent=indent))
    return "\n".join(lines)


def percent(fraction, decimals=0):
    """Write a fraction as percent.

    Parameters
    ----------
    fraction : float
        The fraction [-].
    decimals : int
        Decimals of the percentage [-].

    Returns
    -------
    str
        With a blank before the sign [-].

    Examples
    --------
    >>> percent(0.2556, 1)
    '25.6 %'

    References
    ----------
    SI Brochure, 9th edition, 5.4.7, from memory: a space before the percent sign.
    """
    return f"{100.0 * fraction:.{decimals}f} %"


def wrap(text, indent=0):
    """Break a paragraph into lines of the width of the page.

    Parameters
    ----------
    text : str
        The paragraph [-].
    indent : int
        Blanks before every line [-].

    Returns
    -------
    str
        The lines [-].

    Examples
    --------
    >>> wrap("Weigh everything.")
    'Weigh everything.'

    References
    ----------
    Common practice, no source.
    """
    return textwrap.fill(text, WIDTH, initial_indent=" " * indent, subsequent_indent=" " * indent)
