"""Links from where a lesson uses a word of the trade first to the page that explains it."""

import re

from shop_calc.lesson.outline import source
from shop_calc.lesson.terms import terms

PAGE = "glossary.ipynb"
# JupyterLab goes to a cell by its id even when the page was not open yet; to a heading it does not.
LINK = re.compile(r"\[[^\]]+\]\(glossary\.ipynb#cell-id=([^)\s]+)\)")
# What a link must not break: code, links, pictures, tags, formulas.
_KEPT = re.compile(r"```.*?```|`[^`]*`|!?\[[^\]]*\]\([^)]*\)|<[^>]+>|\$[^$]*\$", re.DOTALL)
# Headings, and paragraphs that are read word by word or where a link would be in the way.
_HEADING = re.compile(r"\s*#")
_LEFT = re.compile(r"\*\*(Time|On the bench|You will be able to|Before you start|For the shop log|Next|Sources)")


def _spelling(term):
    """The term as it may stand in prose: either case of its first letter, over a line's end, as a whole word."""
    ways = (re.escape(word).replace(r"\ ", r"\s+") for word in sorted((term.term, *term.also), key=len, reverse=True))
    return re.compile(rf"(?<![\w/-])(?:{'|'.join(ways)})s?(?![\w/-])", re.IGNORECASE)


def _free(text):
    """Stretches of a cell in which a word may become a link."""
    places, at, left = [], 0, False
    for line in text.splitlines(keepends=True):
        left = bool(line.strip()) and (left or _LEFT.match(line) is not None)  # to the end of its paragraph
        if not left and not _HEADING.match(line):
            places.append((at, at + len(line)))
        at += len(line)
    taken = [found.span() for found in _KEPT.finditer(text)]
    for start, end in _joined(places):
        for from_, to in taken:
            if from_ < end and to > start:
                if from_ > start:
                    yield start, from_
                start = max(start, to)
        if start < end:
            yield start, end


def _joined(places):
    joined = []
    for start, end in places:
        if joined and joined[-1][1] == start:
            joined[-1] = (joined[-1][0], end)
        else:
            joined.append((start, end))
    return joined


def linked(cells, term):
    """Link the first mention of a term in the prose of a lesson.

    Parameters
    ----------
    cells : list of dict
        Cells of the notebook's JSON; changed in place [-].
    term : Term
        The term [-].

    Returns
    -------
    bool
        Whether it is linked now, from before or afresh [-].

    Examples
    --------
    >>> cells = [{"cell_type": "markdown", "source": "# Face?\\n\\nThe face is thin."}]
    >>> face = next(term for term in terms() if term.term == "face")
    >>> linked(cells, face), cells[0]["source"]
    (True, '# Face?\\n\\nThe [face](glossary.ipynb#cell-id=face) is thin.')

    References
    ----------
    Common practice, no source.
    """
    prose = [cell for cell in cells if cell["cell_type"] == "markdown"]
    if any(term.anchor in LINK.findall(source(cell)) for cell in prose):
        return True
    spelling = _spelling(term)
    for cell in prose:
        text = source(cell)
        for start, end in _free(text):
            found = spelling.search(text, start, end)
            if found:
                word = f"[{found.group()}]({PAGE}#cell-id={term.anchor})"
                cell["source"] = text[: found.start()] + word + text[found.end() :]
                return True
    return False


def link_lesson(cells, stem):
    """Link every term that a lesson is the first to use.

    Parameters
    ----------
    cells : list of dict
        Cells of the notebook's JSON; changed in place [-].
    stem : str
        Name of the lesson's file without its ending [-].

    Returns
    -------
    list of str
        Terms that it should mention and does not [-].

    Examples
    --------
    >>> link_lesson([{"cell_type": "markdown", "source": "# Face?"}], "no_lesson")
    []

    References
    ----------
    Common practice, no source.
    """
    own = [term for term in terms() if term.first_used == stem]
    own.sort(key=lambda term: -max(map(len, (term.term, *term.also))))  # "curing compound" before "curing"
    return [term.term for term in own if not linked(cells, term)]
