"""Write the worked solutions, one notebook a lesson: `python -m shop_calc.lesson.solutions workbooks`.

They go into the folder `solutions` beside the lessons, run and with their outputs stored. `--check` writes nothing,
lists what is stale and ends with 1.
"""

import argparse
import sys
import tempfile
from pathlib import Path

import nbformat
from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook

from shop_calc.lesson import refresh
from shop_calc.lesson.banks import banked_lessons

FOLDER = "solutions"
_OPENING = """# {number}{question} The solutions

[To the lesson](../{file}). Try first; then open one heading at a time. Each question is worked line by line, and its
answer is looked at by the same check as in the lesson.

The numbers are the printed ones. In a class with codes, write yours over `None` below, as `code="..."`, and run all."""
_START = """from shop_calc.lesson.practice import Practice

practice = Practice("{name}", code=None, keep=False)"""


def _title(question):
    words = question.id.replace("_", " ")
    return words[:1].upper() + words[1:]


def build(each):
    """Build the solution notebook of one lesson, not run yet.

    Parameters
    ----------
    each : Banked
        A lesson with its questions [-].

    Returns
    -------
    NotebookNode
        Its cells, always with the same ids [-].

    Examples
    --------
    >>> from shop_calc.lesson.banks import banked_lessons
    >>> [cell.source for cell in build(banked_lessons()[0]).cells[2:4]]
    ['## 1. Tile', 'practice.ask("tile")']

    References
    ----------
    Common practice, no source.
    """
    number = f"{int(each.lesson.number)}. "
    opening = _OPENING.format(number=number, question=each.lesson.question, file=each.lesson.file)
    cells = [
        new_markdown_cell(opening, id="opening"),
        new_code_cell(_START.format(name=each.name), id="start"),
    ]
    for place, question in enumerate(each.questions, 1):
        id = question.id
        heading = new_markdown_cell(f"## {place}. {_title(question)}", id=f"q{place}")
        heading.metadata["jp-MarkdownHeadingCollapsed"] = True
        cells += [
            heading,
            new_code_cell(f'practice.ask("{id}")', id=f"q{place}-ask"),
            new_code_cell(f'practice.worked("{id}")', id=f"q{place}-worked"),
            new_code_cell(f'practice.check("{id}", practice.solution("{id}"))', id=f"q{place}-check"),
        ]
    return new_notebook(cells=cells)


def fresh(each):
    """Build and run the solution notebook of one lesson.

    Parameters
    ----------
    each : Banked
        A lesson with its questions [-].

    Returns
    -------
    str
        The file's text with its outputs [-].

    Raises
    ------
    nbclient.exceptions.CellExecutionError
        When a question cannot be worked.

    Examples
    --------
    >>> fresh(None)
    Traceback (most recent call last):
    AttributeError: 'NoneType' object has no attribute 'lesson'

    References
    ----------
    Common practice, no source.
    """
    notebook = build(each)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / each.lesson.file
        nbformat.write(notebook, path)
        return refresh.run(path)


def main(arguments=None):
    """Run the command.

    Parameters
    ----------
    arguments : sequence of str, optional
        Command line without the program's name [-].

    Returns
    -------
    int
        0; with --check 1 when something is stale; 2 when there are no lessons in the folder [-].

    Examples
    --------
    >>> main(["no_such_folder"])
    2

    References
    ----------
    Common practice, no source.
    """
    parser = argparse.ArgumentParser(
        prog="python -m shop_calc.lesson.solutions", description=__doc__.split("\n")[0]
    )
    parser.add_argument("folder", help="the folder with the lessons")
    parser.add_argument("--check", action="store_true", help="write nothing; list what is stale")
    options = parser.parse_args(arguments)
    lessons, status = banked_lessons(options.folder), 0
    if not lessons:
        print(f"{options.folder}: no lessons with questions there", file=sys.stderr)
        return 2
    for each in lessons:
        path = Path(options.folder) / FOLDER / each.lesson.file
        stored = path.read_text(encoding="utf-8") if path.is_file() else ""
        text = fresh(each)
        if text == stored:
            continue
        if options.check:
            print(f"{path}: stale")
            status = 1
            continue
        path.parent.mkdir(exist_ok=True)
        path.write_text(text, encoding="utf-8", newline="\n")
        print(f"{path}: written")
    return status


if __name__ == "__main__":
    sys.exit(main())
