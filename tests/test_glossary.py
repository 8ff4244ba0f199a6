"""The words of the trade: each has a meaning and an origin, and a link to one leads somewhere."""

import copy
import csv
import json
from pathlib import Path

import pytest

from shop_calc.lesson import glossary, outline
from shop_calc.lesson.glossary_links import LINK, linked
from shop_calc.lesson.terms import Term, terms
from shop_calc.trade.working import MARKS

ROOT = Path(__file__).parents[1]
WORKBOOKS = ROOT / "workbooks"
NOTEBOOKS = sorted(WORKBOOKS.glob("*.ipynb"))
LESSONS = sorted(WORKBOOKS.glob("[01]*.ipynb"))


def prose(path):
    cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
    return "\n".join(outline.source(cell) for cell in cells if cell["cell_type"] == "markdown")


def test_every_term_has_a_meaning_a_mark_and_a_source_and_stands_once():
    with open(ROOT / "data" / "glossary.csv", newline="", encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    assert list(rows[0]) == ["term", "also", "meaning", "first_used", "mark", "source"]
    names = [row["term"].lower() for row in rows]
    assert names == sorted(set(names)), "each word once, in order of the alphabet"
    for row in rows:
        assert row["meaning"].endswith(".") and len(row["meaning"]) > 20 and row["mark"] in MARKS and row["source"], row
        remembered = "memory" in row["source"].lower()
        assert (row["mark"] == "memory") is remembered, row  # what is recalled is called so


def test_two_terms_never_claim_the_same_word():
    words = [word.lower() for term in terms() for word in (term.term, *term.also)]
    assert len(words) == len(set(words))


def test_the_page_is_as_the_table_has_it():
    assert (WORKBOOKS / "glossary.ipynb").read_text(encoding="utf-8") == glossary.page(WORKBOOKS), (
        "run `python -m shop_calc.lesson.glossary workbooks`"
    )


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_link_to_a_term_leads_to_one(path):
    cells = {cell["id"] for cell in json.loads((WORKBOOKS / "glossary.ipynb").read_text(encoding="utf-8"))["cells"]}
    links = LINK.findall(prose(path))
    assert set(links) <= cells - {"opening"} and len(links) == len(set(links))  # the first mention only
    assert prose(path).count("glossary.ipynb#") == len(links)


@pytest.mark.parametrize("path", LESSONS, ids=lambda path: path.stem)
def test_each_term_is_linked_from_the_lesson_that_uses_it_first(path):
    links = LINK.findall(prose(path))
    bare = [term.term for term in terms() if term.first_used == path.stem and term.anchor not in links]
    assert bare == [], "run `python -m shop_calc.lesson.glossary workbooks`; it names those that the lesson never mentions"


def test_the_lesson_that_uses_a_term_first_is_one_of_the_lessons():
    stems = {path.stem for path in LESSONS}
    numbers = {stem[:2] for stem in stems}
    for term in terms():
        first = term.first_used
        assert not first or first in stems or first[:2] not in numbers, term


FACE = Term("face", (), "The thin layer.", "04_x", "practice", "Common practice, no source.")
RATIO = Term("water over binder", ("w/cm",), "By mass.", "04_x", "practice", "Common practice, no source.")


@pytest.mark.parametrize(
    ("text", "after"),
    [
        ("The face is thin. The face!", "The [face](glossary.ipynb#cell-id=face) is thin. The face!"),
        ("Faces differ.", "[Faces](glossary.ipynb#cell-id=face) differ."),
        ("## The face\nA face.", "## The face\nA [face](glossary.ipynb#cell-id=face)."),
        ("`face` then face", "`face` then [face](glossary.ipynb#cell-id=face)"),
        ("see [the face](x.ipynb), face", "see [the face](x.ipynb), [face](glossary.ipynb#cell-id=face)"),
        ("**On the bench** a face\n\nface", "**On the bench** a face\n\n[face](glossary.ipynb#cell-id=face)"),
        ("**For the shop log** face,\nface, **Next** face", None),
        ("**Sources** a book,\nfaces.\n\nface", "**Sources** a book,\nfaces.\n\n[face](glossary.ipynb#cell-id=face)"),
        ("surface, face-up, faced, interface/face", None),
        ("<b title='face'>x</b> $face$ ```\nface\n```", None),
    ],
)
def test_only_the_first_mention_in_prose_becomes_a_link(text, after):
    cells = [{"cell_type": "code", "source": "face = 1"}, {"cell_type": "markdown", "source": text}]
    before = copy.deepcopy(cells)
    assert linked(cells, FACE) is (after is not None)
    assert cells[1]["source"] == (after or text) and cells[0] == before[0]
    again = copy.deepcopy(cells)
    assert linked(cells, FACE) is (after is not None) and cells == again  # a second time changes nothing


def test_another_spelling_and_a_line_s_end_are_found():
    cells = [{"cell_type": "markdown", "source": ["Its w/cm is low."]}]
    assert linked(cells, RATIO) and cells[0]["source"] == "Its [w/cm](glossary.ipynb#cell-id=water-over-binder) is low."
    cells = [{"cell_type": "markdown", "source": "Count water\nover binder."}]
    assert linked(cells, RATIO) and "[water\nover binder](" in cells[0]["source"]


def test_the_command_links_once_and_keeps_the_lesson_as_the_refresher_writes_it(tmp_path, capsys):
    from shop_calc.lesson import refresh

    lesson = LESSONS[0]
    text = lesson.read_text(encoding="utf-8")
    cells = json.loads(text)["cells"]
    for cell in cells:
        if cell["cell_type"] == "markdown":
            cell["source"] = LINK.sub(lambda link: link.group()[1:].split("]")[0], outline.source(cell))
    bare = tmp_path / lesson.name
    bare.write_text(json.dumps({**json.loads(text), "cells": cells}), encoding="utf-8")
    assert glossary.main([str(tmp_path), "--check"]) == 1 and "is not linked" in capsys.readouterr().out
    assert glossary.main([str(tmp_path)]) == 0
    assert bare.read_text(encoding="utf-8") == text and refresh.faults(bare) == []
    bare.write_text(text.replace("#cell-id=face)", "#cell-id=fce)"), encoding="utf-8")
    assert glossary.main([str(tmp_path), "--check"]) == 1 and "'fce', which is no term" in capsys.readouterr().out
