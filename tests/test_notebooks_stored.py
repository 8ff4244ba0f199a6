"""Stored notebooks are as the refresher writes them; the refresher changes no byte the second time."""

import json
from pathlib import Path

import nbformat
import pytest
from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook, new_output

from shop_calc.lesson import refresh
from shop_calc.lesson.stored_form import tidy

WORKBOOKS = Path(__file__).parents[1] / "workbooks"
NOTEBOOKS = refresh.notebooks([WORKBOOKS]) if WORKBOOKS.is_dir() else []


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_stored_notebook_is_as_the_refresher_writes_it(path):
    assert refresh.faults(path) == [], f"run `python -m shop_calc.lesson.refresh {path}`"


SLIDER = """from shop_calc.lesson.blocks import Block, slider
from shop_calc.lesson.pictures.base import new_figure, show_still"""
BLOCK = """row = slider("a_m", label="Side", value=1, low=0, high=2, unit="m")
Block(lambda a_m: a_m**2, lambda result, system: f"{result:.2f} m2", [row], title="Area")"""


@pytest.fixture
def small(tmp_path):
    cells = [
        new_markdown_cell("# How large?"),
        new_code_cell(SLIDER),
        new_code_cell(BLOCK),
        new_code_cell(
            "import os, sys\nprint('one')\nsys.stdout.flush()\nprint(os.path.basename(os.getcwd()))"
        ),
        new_code_cell("show_still(new_figure()[0], 'An empty chart.', 'Nothing yet.')"),
    ]
    path = tmp_path / "lessons" / "05_small.ipynb"
    path.parent.mkdir()
    notebook = new_notebook(cells=cells)
    text = json.loads(nbformat.writes(notebook))
    for cell in text["cells"]:
        del cell["id"]  # as an older editor leaves it
    text["nbformat_minor"] = 4
    path.write_text(json.dumps(text), encoding="utf-8")
    return path


def test_a_second_run_changes_no_byte_and_a_changed_lesson_is_stale(small, capsys):
    assert refresh.main([str(small.parent)]) == 0
    once = small.read_bytes()
    assert refresh.main([str(small)]) == 0  # a second run
    assert small.read_bytes() == once and refresh.faults(small) == []

    text = once.decode()
    cells = json.loads(text)["cells"]
    assert "".join(cells[3]["outputs"][0]["text"]) == "one\nlessons\n"  # joined, and run in its own folder
    assert list(cells[2]["outputs"][0]["data"]) == ["text/plain"]  # the block in words
    assert "An empty chart." in "".join(cells[4]["outputs"][0]["data"]["text/html"])

    small.write_text(text.replace("1.00 m2", "1.02 m2"), encoding="utf-8")
    assert refresh.main([str(small.parent), "--check"]) == 1 and "stale" in capsys.readouterr().out


def test_a_failing_lesson_is_named_and_not_written(tmp_path, capsys):
    path = tmp_path / "06_broken.ipynb"
    nbformat.write(new_notebook(cells=[new_code_cell("1 / 0")]), path)
    before = path.read_bytes()
    assert refresh.main([str(path)]) == 2
    assert "ZeroDivisionError" in capsys.readouterr().err and path.read_bytes() == before


def stored(tmp_path, cell, **metadata):
    notebook = new_notebook(cells=[cell])
    text = tidy(notebook)
    if metadata:
        notebook.metadata.update(metadata)
        text = nbformat.writes(notebook) + "\n"
    path = tmp_path / "07_x.ipynb"
    path.write_text(text, encoding="utf-8")
    return refresh.faults(path)


def result(**data):
    return new_output("execute_result", data=data, execution_count=1)


@pytest.mark.parametrize(
    ("cell", "part"),
    [
        (new_code_cell("1"), "expected [1]"),
        (new_code_cell("", execution_count=1), "empty code cell"),
        (new_code_cell("1", execution_count=1, outputs=[new_output("error", ename="KeyError")]), "KeyError"),
        (
            new_code_cell("1", execution_count=1, outputs=[new_output("stream", name="stderr", text="x")]),
            "stderr",
        ),
        (
            new_code_cell("f", execution_count=1, outputs=[result(**{"text/plain": "<f at 0x7f00aa11>"})]),
            "address",
        ),
        (new_code_cell("f", execution_count=1, outputs=[result(**{"image/png": "aGk="})]), "bare picture"),
    ],
)
def test_each_fault_of_a_stored_notebook_is_found(tmp_path, cell, part):
    assert any(part in fault for fault in stored(tmp_path, cell))


def test_a_picture_s_data_is_no_memory_address(tmp_path):
    page = '<img alt="A line." src="data:image/png;base64,iVBOR/0xabcdef01+0xABCDEF=">'
    assert stored(tmp_path, new_code_cell("f", execution_count=1, outputs=[result(**{"text/html": page})])) == []


def test_widget_state_timings_and_foreign_metadata_are_found(tmp_path):
    assert stored(tmp_path, new_code_cell("1", execution_count=1)) == []
    assert "widget state is stored" in stored(
        tmp_path, new_code_cell("1", execution_count=1), widgets={"x": {}}
    )
    path = tmp_path / "07_x.ipynb"
    notebook = json.loads(tidy(new_notebook(cells=[new_code_cell("1", execution_count=1)])))
    notebook["cells"][0]["metadata"]["execution"] = {"iopub.execute_input": "2020-01-01T00:00:00Z"}
    path.write_text(json.dumps(notebook, indent=1) + "\n", encoding="utf-8")
    assert any("saved otherwise" in fault for fault in refresh.faults(path))


def test_checkpoints_are_left_out_and_a_wrong_path_is_refused(tmp_path):
    hidden = tmp_path / ".ipynb_checkpoints"
    hidden.mkdir()
    (hidden / "a.ipynb").write_text("{}", encoding="utf-8")
    (tmp_path / "b.ipynb").write_text("{}", encoding="utf-8")
    assert refresh.notebooks([tmp_path]) == [tmp_path / "b.ipynb"]
    with pytest.raises(ValueError, match="no notebook"):
        refresh.notebooks([tmp_path / "c.ipynb"])
