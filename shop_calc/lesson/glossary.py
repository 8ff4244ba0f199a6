"""The words of the trade on a page of their own, linked from where a lesson uses each first.

`python -m shop_calc.lesson.glossary workbooks` writes `glossary.ipynb` from `data/glossary.csv` and sets the links:
in the prose of the lesson where a term is first used, its first mention becomes a link. A term that is linked already
stays as it is; the refresher sets the links of a lesson too. `--check` writes nothing, lists what is missing and ends
with 1.
"""

import argparse
import csv
import json
import re
import sys
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import nbformat
from nbformat.v4 import new_markdown_cell, new_notebook

from shop_calc.defaults import data_folder
from shop_calc.lesson.outline import source
from shop_calc.lesson.stored_form import tidy

PAGE = "glossary.ipynb"
# JupyterLab goes to a cell by its id even when the page was not open yet; to a heading it does not.
LINK = re.compile(r"\[[^\]]+\]\(glossary\.ipynb#cell-id=([^)\s]+)\)")
_OPENING = """# Words of the trade

The lesson that uses a word first links it; the others stand in tables, plans and sheets. Behind each stands how we
know: *read* in the source named, from *memory* of it, common *practice*, *derived*, our own *judgement*."""
# What a link must not break: code, links, pictures, tags, formulas.
_KEPT = re.compile(r"```.*?```|`[^`]*`|!?\[[^\]]*\]\([^)]*\)|<[^>]+>|\$[^$]*\$", re.DOTALL)
# Headings, and paragraphs that are read word by word or where a link would be in the way.
_HEADING = re.compile(r"\s*#")
_LEFT = re.compile(r"\*\*(Time|On the bench|You will be able to|Before you start|For the shop log|Next|Sources)")


@dataclass(frozen=True)
class Term:
    """A word of the trade.

    Parameters
    ----------
    term : str
        The word [-].
    also : tuple of str
        Other ways to write it, for the links [-].
    meaning : str
        What it means, in plain words [-].
    first_used : str
        The lesson that uses it first, the name of its file without the ending; empty where none does [-].
    mark, source : str
        How we know [-].

    Examples
    --------
    >>> terms()[0].anchor == terms()[0].term.replace(" ", "-")
    True

    References
    ----------
    Common practice, no source.
    """

    term: str
    also: tuple
    meaning: str
    first_used: str
    mark: str
    source: str

    @property
    def anchor(self):
        """The cell of the page that a link to it leads to."""
        return self.term.replace(" ", "-")


@cache
def terms():
    """Read the words of the trade.

    Returns
    -------
    tuple of Term
        In order of the alphabet [-].

    Examples
    --------
    >>> next(term.mark for term in terms() if term.term == "initial set")
    'read'

    References
    ----------
    Each row of data/glossary.csv names its own.
    """
    with open(data_folder() / "glossary.csv", newline="", encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    for row in rows:
        row["also"] = tuple(part.strip() for part in row["also"].split(";") if part.strip())
    return tuple(Term(**row) for row in sorted(rows, key=lambda row: row["term"]))


def page(folder):
    """Build the page of all terms.

    Parameters
    ----------
    folder : str or Path
        Where the lessons lie; a lesson that is not there is not linked [-].

    Returns
    -------
    str
        Text of the notebook [-].

    Examples
    --------
    >>> "### initial set" in page("/no/such/folder")
    True

    References
    ----------
    Common practice, no source.
    """
    cells = [new_markdown_cell(_OPENING, id="opening")]
    for term in terms():
        text = f"### {term.term}\n\n{term.meaning}\n\n*{_first(term, folder)}{_known(term)}*"
        cells.append(new_markdown_cell(text, id=term.anchor))
    return tidy(new_notebook(cells=cells))


def _known(term):
    """How we know it, said once: a source that names its own mark needs no second one before it."""
    source = term.source.rstrip(".")
    if source == "Ours":
        return f"Our {term.mark}."
    return f"{source}." if source.startswith(("From memory", "Common practice")) else f"{term.mark.capitalize()}: {source}."


def _first(term, folder):
    if not term.first_used:
        return ""
    number, file = term.first_used[:2], f"{term.first_used}.ipynb"
    return f"First in lesson [{number}]({file}). " if (Path(folder) / file).is_file() else f"First in lesson {number}. "


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


def _lesson(path):
    """A lesson with its links set, and the terms it does not mention."""
    notebook = json.loads(path.read_text(encoding="utf-8"))
    return notebook, link_lesson(notebook["cells"], path.stem)


def _text(notebook):
    return tidy(nbformat.from_dict({**notebook, "cells": [_one_text(cell) for cell in notebook["cells"]]}))


def _one_text(cell):
    return {**cell, "source": source(cell)}


def faults(folder):
    """Say what is missing: the page as it should be, links, terms that a lesson does not mention, links to nothing.

    Parameters
    ----------
    folder : str or Path
        Where the lessons lie [-].

    Returns
    -------
    list of str
        One line a fault [-].

    Examples
    --------
    >>> faults("/no/such/folder")[0]
    'glossary.ipynb: not as data/glossary.csv has it'

    References
    ----------
    Common practice, no source.
    """
    folder, found = Path(folder), []
    stored = (folder / PAGE).read_text(encoding="utf-8") if (folder / PAGE).is_file() else ""
    if stored != page(folder):
        found.append(f"{PAGE}: not as data/glossary.csv has it")
    anchors = {term.anchor for term in terms()}
    for path in sorted(folder.glob("[01]*.ipynb")):
        cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
        links = LINK.findall("\n".join(source(cell) for cell in cells if cell["cell_type"] == "markdown"))
        found += [f"{path.name}: a link to {anchor!r}, which is no term" for anchor in links if anchor not in anchors]
        own = [term for term in terms() if term.first_used == path.stem]
        missing = set(_lesson(path)[1])
        for term in own:
            if term.term in missing:
                found.append(f"{path.name}: {term.term!r} is not in its prose; first used elsewhere?")
            elif term.anchor not in links:
                found.append(f"{path.name}: {term.term!r} is not linked")
    return found


def main(arguments=None):
    """Run the command.

    Parameters
    ----------
    arguments : sequence of str, optional
        Command line without the program's name [-].

    Returns
    -------
    int
        0; with --check 1 when something is missing [-].

    Examples
    --------
    >>> main(["/no/such/folder", "--check"])
    glossary.ipynb: not as data/glossary.csv has it
    1

    References
    ----------
    Common practice, no source.
    """
    parser = argparse.ArgumentParser(prog="python -m shop_calc.lesson.glossary", description=__doc__.split("\n")[0])
    parser.add_argument("folder", help="the folder with the lessons")
    parser.add_argument("--check", action="store_true", help="write nothing; list what is missing")
    options = parser.parse_args(arguments)
    folder = Path(options.folder)
    if not options.check:
        _write(folder / PAGE, page(folder))
        for path in sorted(folder.glob("[01]*.ipynb")):
            _write(path, _text(_lesson(path)[0]))
    missing = faults(folder)
    for line in missing:
        print(line)
    return int(bool(missing))


def _write(path, text):
    if not path.is_file() or path.read_text(encoding="utf-8") != text:
        path.write_text(text, encoding="utf-8", newline="\n")
        print(f"{path}: written")


if __name__ == "__main__":
    sys.exit(main())
