"""The words of the trade on a page of their own, linked from where a lesson uses each first.

`python -m shop_calc.lesson.glossary workbooks` writes `glossary.ipynb` from `data/glossary.csv` and sets the links:
in the prose of the lesson where a term is first used, its first mention becomes a link. A term that is linked already
stays as it is; the refresher sets the links of a lesson too. `--check` writes nothing, lists what is missing and ends
with 1.
"""

import argparse
import json
import sys
from pathlib import Path

import nbformat
from nbformat.v4 import new_markdown_cell, new_notebook

from shop_calc.lesson.glossary_links import LINK, PAGE, link_lesson
from shop_calc.lesson.outline import source
from shop_calc.lesson.stored_form import tidy
from shop_calc.lesson.terms import terms

_OPENING = """# Words of the trade

The lesson that uses a word first links it; the others stand in tables, plans and sheets. Behind each stands how we
know: *read* in the source named, from *memory* of it, common *practice*, *derived*, our own *judgement*."""


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
