"""Write the outputs of notebooks: `python -m shop_calc.lesson.refresh workbooks`.

Every notebook is run in a fresh kernel in its own folder. What differs from run to run is left out, so that
a second run changes no byte. A lesson's first mention of a word of the trade becomes a link to its page.
`--check` writes nothing, lists the notebooks that are stale and ends with 1.
"""

import argparse
import os
import re
import sys
import tempfile
from pathlib import Path

import nbformat

from shop_calc.lesson.glossary_links import link_lesson
from shop_calc.lesson.stored_form import tidy

_CELL_TIMEOUT_S = 120
_PICTURE = re.compile(r"data:image/png;base64,[A-Za-z0-9+/=]*")
_ADDRESS = re.compile(r"\b0x[0-9a-fA-F]{6,}")


def notebooks(paths):
    """Find the notebooks in files and folders, checkpoints left out.

    Parameters
    ----------
    paths : sequence of str or Path
        Notebooks, or folders to look through [-].

    Returns
    -------
    list of Path
        In order of their names [-].

    Raises
    ------
    ValueError
        When a path does not exist or is no notebook.

    Examples
    --------
    >>> notebooks([])
    []

    References
    ----------
    Common practice, no source.
    """
    found = []
    for path in map(Path, paths):
        if path.is_dir():
            inside = sorted(path.rglob("*.ipynb"))
            found += [each for each in inside if ".ipynb_checkpoints" not in each.parts]
        elif path.is_file() and path.suffix == ".ipynb":
            found.append(path)
        else:
            raise ValueError(f"{path}: no notebook and no folder")
    return found


def run(path):
    """Run a notebook in a fresh kernel and give the text to store.

    Parameters
    ----------
    path : Path
        The notebook; it is not written [-].

    Returns
    -------
    str
        The file's text with its outputs [-].

    Raises
    ------
    nbclient.exceptions.CellExecutionError
        When a cell fails.

    Examples
    --------
    >>> run(Path("nowhere.ipynb"))
    Traceback (most recent call last):
    FileNotFoundError: [Errno 2] No such file or directory: 'nowhere.ipynb'

    References
    ----------
    Common practice, no source.
    """
    notebook = nbformat.read(path, as_version=4)
    from nbclient import NotebookClient  # only here: a learner does not need it

    link_lesson(notebook.cells, path.stem)

    with tempfile.TemporaryDirectory() as empty:
        client = NotebookClient(
            notebook,
            timeout=_CELL_TIMEOUT_S,
            kernel_name="python3",
            resources={"metadata": {"path": str(path.parent)}},
            record_timing=False,
            store_widget_state=False,
        )
        # no lesson depends on what a learner has kept
        client.execute(env={**os.environ, "SHOP_CALC_WORK": empty})
    return tidy(notebook)


def faults(path):
    """Say where a stored notebook is not as this command would write it, without running it.

    Parameters
    ----------
    path : Path
        The notebook [-].

    Returns
    -------
    list of str
        One line a fault [-].

    Examples
    --------
    >>> faults(Path("nowhere.ipynb"))
    Traceback (most recent call last):
    FileNotFoundError: [Errno 2] No such file or directory: 'nowhere.ipynb'

    References
    ----------
    Common practice, no source.
    """
    text = path.read_text(encoding="utf-8")
    notebook = nbformat.reads(text, as_version=4)
    found, count = [], 0
    for place, cell in enumerate(notebook.cells):
        if cell.cell_type != "code":
            continue
        if not cell.source.strip():
            found.append(f"cell {place}: an empty code cell")
            continue
        count += 1
        if cell.execution_count != count:
            found.append(
                f"cell {place}: run as [{cell.execution_count}], expected [{count}]; never run afresh?"
            )
        for output in cell.outputs:
            if output.output_type == "error":
                found.append(f"cell {place}: a stored error, {output.ename}")
            if output.get("name") == "stderr":
                found.append(f"cell {place}: a stored warning or message on stderr")
            if _ADDRESS.search(_without_pictures(str(output.get("data", output.get("text", ""))))):
                found.append(f"cell {place}: a memory address in its output")
            if any(kind.startswith("image/") for kind in output.get("data", {})):
                found.append(f"cell {place}: a bare picture without alt text; use show_still")
    if "widgets" in notebook.metadata:
        found.append("widget state is stored")
    if tidy(notebook) != text:
        found.append("saved otherwise: ids, timings, metadata or layout differ from what the command writes")
    return found


def _without_pictures(text):
    """What another machine must agree on: a picture's pixels change with the drawing library."""
    return _PICTURE.sub("data:image/png;base64,", text)


def main(arguments=None):
    """Run the command.

    Parameters
    ----------
    arguments : sequence of str, optional
        Command line without the program's name [-].

    Returns
    -------
    int
        0; with --check 1 when something is stale; 2 when a notebook fails [-].

    Examples
    --------
    >>> main(["--check"])
    0

    References
    ----------
    Common practice, no source.
    """
    parser = argparse.ArgumentParser(
        prog="python -m shop_calc.lesson.refresh", description=__doc__.split("\n")[0]
    )
    parser.add_argument("paths", nargs="*", help="notebooks, or folders of notebooks")
    parser.add_argument("--check", action="store_true", help="write nothing; list what is stale")
    options = parser.parse_args(arguments)
    from nbclient.exceptions import CellExecutionError

    status = 0
    for path in notebooks(options.paths):
        stored = path.read_text(encoding="utf-8")
        try:
            fresh = run(path)
        except CellExecutionError as error:
            print(f"{path}: a cell fails, nothing written\n{error}", file=sys.stderr)
            status = 2
            continue
        if options.check:
            if _without_pictures(fresh) != _without_pictures(stored):
                print(f"{path}: stale")
                status = status or 1
        elif fresh != stored:
            path.write_text(fresh, encoding="utf-8", newline="\n")
            print(f"{path}: written")
    return status


if __name__ == "__main__":
    sys.exit(main())
