"""The one form in which a notebook is stored: what differs from run to run, or from editor to editor, is left out."""

import hashlib
import re

import nbformat

from shop_calc.lesson.page import bound

_WIDGET = "application/vnd.jupyter.widget-view+json"
_KEPT = ("tags", "jp-MarkdownHeadingCollapsed", "jupyter")  # what an author sets on a cell by hand
_METADATA = {
    "kernelspec": {"display_name": "Python 3 (ipykernel)", "language": "python", "name": "python3"},
    "language_info": {"name": "python"},  # the version differs from machine to machine
}

_CODE = re.compile(r"(```.*?```|`[^`\n]*`|\]\([^)]*\))", re.DOTALL)  # code and addresses keep their plain spaces


def bound_prose(text):
    """Bind each number of a lesson's prose to its unit, code and addresses left alone.

    Parameters
    ----------
    text : str
        Source of a markdown cell [-].

    Returns
    -------
    str
        The same with a no-break space before each unit [-].

    Examples
    --------
    >>> bound_prose("At 60 °F, `parse('60 F')` and `3 L`.").replace(chr(160), "_")
    "At 60_°F, `parse('60 F')` and `3 L`."

    References
    ----------
    Common practice, no source.
    """
    return "".join(part if number % 2 else bound(part) for number, part in enumerate(_CODE.split(text)))


def _one_stream(outputs):
    """Join pieces of one stream: where they are cut depends on the machine."""
    joined = []
    for output in outputs:
        last = joined[-1] if joined else None
        streams = last is not None and output.output_type == last.output_type == "stream"
        if streams and output.name == last.name:
            last.text += output.text
        else:
            joined.append(output)
    return joined


def _tidy_outputs(cell):
    for output in cell.outputs:
        if "data" in output:
            output.data.pop(_WIDGET, None)
            output.metadata = {}
    cell.outputs = _one_stream([out for out in cell.outputs if "data" not in out or out.data])


def tidy(notebook):
    """Bring a notebook to the one form in which it is stored.

    Parameters
    ----------
    notebook : NotebookNode
        Run or not; changed in place [-].

    Returns
    -------
    str
        The file's text [-].

    Examples
    --------
    >>> from nbformat.v4 import new_markdown_cell, new_notebook
    >>> "widgets" in tidy(new_notebook(cells=[new_markdown_cell("x", id="a")]))
    False

    References
    ----------
    Common practice, no source.
    """
    notebook.nbformat, notebook.nbformat_minor = 4, 5
    notebook.metadata = nbformat.from_dict(_METADATA)
    seen = set()
    for place, cell in enumerate(notebook.cells):
        if not cell.get("id") or cell["id"] in seen:
            cell["id"] = hashlib.sha256(f"{place}|{cell.source}".encode()).hexdigest()[:8]
        seen.add(cell["id"])
        cell.metadata = nbformat.from_dict({key: cell.metadata[key] for key in _KEPT if key in cell.metadata})
        cell.source = cell.source.rstrip()
        if cell.cell_type == "markdown":
            cell.source = bound_prose(cell.source)
        if cell.cell_type == "code":
            _tidy_outputs(cell)
    nbformat.validate(notebook)
    return nbformat.writes(notebook) + "\n"
