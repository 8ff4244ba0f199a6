"""Lessons 00 and 01: what their blocks say and draw, the cut list, the box, and the list of lessons."""

import json
import math
import re
from pathlib import Path

import pytest
from working_eval import evaluate

from shop_calc import units
from shop_calc.lesson.blocks import Block, choice, slider
from shop_calc.lesson.contents import lesson_table, lessons, read_lesson
from shop_calc.lesson.draw import numbers_for
from shop_calc.lesson.moves import sizing, start
from shop_calc.lesson.moves.box_and_jug import PRINTED, box_band, box_model
from shop_calc.lesson.moves.cut_up import cut_up
from shop_calc.lesson.pictures.weight_bar import WeightBar
from shop_calc.lesson.questions import start_here, two_layer_sizing
from shop_calc.science.lifting import LOAD_CONSTANT_KG
from shop_calc.trade.jobs.job import demo_job, read_job
from shop_calc.trade.plan import make_plan
from shop_calc.trade.shape.form import build_form

WORKBOOKS = Path(__file__).parents[1] / "workbooks"
INCH = 0.0254
BENCH = (60 * INCH, 15 * INCH, 1.5 * INCH, 0.25 * INCH)


def in3(volume_m3):
    return volume_m3 / INCH**3


def test_the_bench_by_hand():
    layers = sizing.two_layers(*BENCH).layers
    # 60 x 15 x 1.5 = 1350; 59.5 x 14.5 x 1.25 = 1078.4375
    assert in3(layers.total_m3) == pytest.approx(1350, rel=1e-12)
    assert in3(layers.core_m3) == pytest.approx(1078.4375, rel=1e-12)
    assert in3(layers.face_m3) == pytest.approx(271.5625, rel=1e-11)


@pytest.mark.parametrize(
    ("edges", "base_in3"),
    [
        ("all four", 59.5 * 14.5 * 1.25),
        ("front and both ends", 59.5 * 14.75 * 1.25),
        ("front and one end", 59.75 * 14.75 * 1.25),
        ("front only", 60 * 14.75 * 1.25),
        ("none", 60 * 15 * 1.25),
    ],
)
def test_each_choice_of_edges_takes_its_own_strips_off_the_base(edges, base_in3):
    assert in3(sizing.two_layers(*BENCH, edges).layers.core_m3) == pytest.approx(base_in3, rel=1e-11)


def test_words_name_top_and_edges_apart_and_an_unseen_edge_costs_nothing():
    top_ft3, edges_ft3 = 900 * 0.25 / 1728, (271.5625 - 225) / 1728
    said = sizing.layer_words(sizing.two_layers(*BENCH), "us")
    assert f"{top_ft3:.2f} ft³" in said and f"{edges_ft3:.4f} ft³" in said and "20.1 %" in said and "12'-6\"" in said
    assert "no edge shows" in sizing.layer_words(sizing.two_layers(*BENCH, "none"))
    assert "16.7 %" in sizing.layer_words(sizing.two_layers(*BENCH, "none"))


def test_words_keep_to_one_system():
    result = sizing.two_layers(*BENCH)
    assert " L" not in sizing.layer_words(result, "us") and "ft³" not in sizing.layer_words(result, "si")
    plank = start.weigh_plank(1.524, 0.0381)
    assert "kg" not in start.plank_words(plank, "us") and "lb" not in start.plank_words(plank, "si")


def test_the_cut_list_says_what_a_saw_needs():
    rows = {row[1]: row for row in sizing.cut_list(build_form(sizing.two_layers(*BENCH).piece)).rows}
    # sides 1-1/2 + 3/4 high; short ones 15 + 2 x 3/4 long
    assert rows["side: front, back"][:4] == ("2", "side: front, back", "5'-0\"", '2 1/4"')
    assert rows["side: right, left"][2:4] == ("1'-4 1/2\"", '2 1/4"')
    assert rows["base board"][2:5] == ("5'-0\"", "1'-3\"", '3/4"')


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("5' 3/4\"", "60.75 in"), ("60 ft 1 in", "721 in"), ("4 1/2 in", "4.5 in"), ("10'6\"", "126 in"),
        ("10'-6\"", "126 in"), ('3/4"', "0.75 in"), ('11/16"', "0.6875 in"), ('¾"', "0.75 in"),
        ("4'2-1/4\"", "50.25 in"),
    ],
)  # fmt: skip
def test_sizes_as_people_write_them(text, inches):
    assert sizing.written_sizes(text).rows[0][1] == inches


@pytest.mark.parametrize(("text", "part"), [("11/4 in", "2-3/4 or 1-1/4"), ("15", "no unit"), ("<b>", "")])
def test_a_size_that_can_mean_two_things_is_refused_with_its_reason(text, part):
    typed, read, why = sizing.written_sizes(text).rows[0]
    assert (typed, read) == (text, "refused") and part in why
    assert "<b>" not in sizing.written_sizes("<b>")._repr_mimebundle_()["text/html"]


def test_the_box_is_its_own_volume_less_the_block():
    low, likely, high = box_band(("8 in", "5 in", "2 in"), ("7 in", "4 in", "1 1/2 in"))
    assert in3(likely) == pytest.approx(80 - 42, rel=1e-12)
    # 1/16 in on each of six sizes and 5 % of the whole, added as squares
    parts = [80 / 16 / size for size in (8, 5, 2)] + [42 / 16 / size for size in (7, 4, 1.5)] + [0.05 * 38]
    spread = math.sqrt(sum(part**2 for part in parts))
    assert in3(high - likely) == pytest.approx(spread, rel=1e-9) == pytest.approx(in3(likely - low), rel=1e-9)


def test_a_block_that_does_not_fit_is_refused_in_words():
    with pytest.raises(ValueError, match=r"block: .* wide given; the box has only"):
        box_band(("8 in", "4 in", "2 in"), ("7 in", "5 in", "1 in"))
    with pytest.raises(ValueError, match="three sizes"):
        box_band("8 in", ("7 in", "4 in", "1 in"))


def layer_block():
    return Block(
        sizing.two_layers, sizing.layer_words,
        [slider("length_m", label="Length", value=60, low=24, high=96, unit="in"),
         slider("width_m", label="Width", value=15, low=8, high=24, unit="in"),
         slider("thickness_m", label="Thickness", value=1.5, low=1, high=2.5, unit="in"),
         slider("face_thickness_m", label="Face", value=0.25, low=0.125, high=0.5, unit="in"),
         choice("edges", "Edges that show", list(sizing.EDGES))],
        picture=sizing.moving_picture(sizing.two_layers(*BENCH), "Plan and cut"),
    )  # fmt: skip


def test_the_layer_block_answers_at_both_ends_of_every_row():
    block = layer_block()
    for key, row in block.rows.items():
        for end in row.ends:
            block.set(**{key: end})
            assert "Not possible" not in block.text and "fault" not in block.text, (key, end)
            faced = [name for name in ("front", "back", "left", "right") if f"{name} " in block.alt]
            assert len(faced) == 4 and "Plan and cut" in block.alt
        block.reset()
    assert in3(block.result.layers.face_m3) == pytest.approx(271.5625, rel=1e-9)


def test_the_weight_bar_is_as_long_as_the_piece_is_heavy():
    picture = WeightBar(180, start.LIMIT_KG, "A top")
    picture.update(start.weigh_plank(60 * INCH, 1.5 * INCH))
    # 60 x 15 x 1.5 in at 150 lb/ft3, as practice has it: 117.2 lb
    assert units.convert(picture.bar.get_width(), "kg", "lb") == pytest.approx(1350 / 1728 * 150, rel=1e-3)
    assert "more than what one person" in picture.alt
    picture.update(start.weigh_plank(24 * INCH, 1 * INCH))
    assert "less than what one person" in picture.alt
    assert pytest.approx(51 * 0.45359237) == LOAD_CONSTANT_KG == picture.limit_kg
    picture.update(start.weigh_plank(96 * INCH, 3 * INCH))
    assert picture.bar.get_width() <= picture.most_kg


def test_the_whole_line_names_every_lesson_once_and_speaks_the_plan_s_numbers():
    plan = make_plan(read_job(demo_job("garden_bench_top")))
    rows = start.whole_line(plan).rows
    assert [row[2] for row in rows] == [f"{k:02d}" for k in range(1, 12)]
    said = "\n".join(row[1] for row in rows)
    for value, kind in (
        (plan.layers.face_m3, "volume"), (plan.batch.set_aside_kg, "mass"),
        (plan.batch.water.water_temp_c, "temperature"),
    ):  # fmt: skip
        assert units.show(value, kind) in said
    assert f"{plan.day.clock(plan.day.stage('strip').likely_from_h):%H:%M}" in said


@pytest.mark.parametrize("question", [*start_here.QUESTIONS, *two_layer_sizing.QUESTIONS], ids=lambda q: q.id)
def test_every_line_of_the_working_of_a_question_can_be_worked_out_again(question):
    for code in (None, "mar 7", "A-113"):
        for step in question.working(**numbers_for(question, code)[1]) if question.working else ():
            assert evaluate(step.formula, step.inputs) == pytest.approx(step.value, rel=1e-9), step.name


def test_answers_of_questions_by_plain_arithmetic():
    answer = {question.id: question for question in two_layer_sizing.QUESTIONS}
    wanted = {  # ft3 or in
        "foot_or_inch": 1.25,
        "racetrack": (48 * 36 + math.pi * 18**2) * 1.5 / 1728,
        "side_height": 2.75,
        "sink": (25 * 90 - 30.5 * 16.5) * 1.5 / 1728,
        "ripped_sides": 36 * 36 * 1.75 / 1728,
        "as_written": 44.75,
    }
    for id, value in wanted.items():
        question = answer[id]
        given = numbers_for(question)[1]
        assert question.asked(question.answer(**given)) == pytest.approx(value, rel=1e-9), id
    # 72 x 22 x 2 in at a wall: 3168 less 71.5 x 21.75 x 1.75
    wall = answer["against_the_wall"]
    assert in3(wall.answer(**numbers_for(wall)[1])) == pytest.approx(3168 - 71.5 * 21.75 * 1.75, rel=1e-9)


def write(folder, name, *cells):
    cells = [{"cell_type": "markdown", "metadata": {}, "source": text} for text in cells]
    (folder / name).write_text(json.dumps({"cells": cells, "nbformat": 4, "nbformat_minor": 5}), encoding="utf-8")


def test_only_lessons_that_are_there_are_listed_and_text_is_escaped(tmp_path):
    opening = "**Before you start** 03. **Time** 45 minutes.\n\n**On the bench** a cup <b>.\n\n"
    opening += "## By hand\n**Time** 9 hours"
    write(tmp_path, "04_stiff.ipynb", "# 4. When & how?\nIt is late.", opening)
    write(tmp_path, "for_instructors.ipynb", "# How do I teach it?")
    write(tmp_path, "04_stiff-Copy1.ipynb", "# Mine?")
    write(tmp_path, "notes.ipynb", "# Mine?")
    (tmp_path / "05_broken.ipynb").write_text("{", encoding="utf-8")
    found = lessons(tmp_path)
    assert [each.file for each in found] == ["04_stiff.ipynb", "for_instructors.ipynb"]
    assert (found[0].question, found[0].time, found[0].bench) == ("When & how?", "45 minutes", "a cup <b>")
    page = lesson_table(tmp_path)._repr_mimebundle_()["text/html"]
    assert '<a href="04_stiff.ipynb">When &amp; how?</a>' in page and "<b>" not in page
    assert [each.number for each in found] == ["04", "–"]


@pytest.mark.parametrize("path", sorted(WORKBOOKS.glob("*.ipynb")), ids=lambda path: path.stem)
def test_links_between_notebooks_lead_somewhere(path):
    cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
    text = "\n".join("".join(cell["source"]) for cell in cells if cell["cell_type"] == "markdown")
    for link in re.findall(r"\]\(([^)#]+\.(?:ipynb|md|csv|toml))\)", text):
        assert (path.parent / link).exists(), link


@pytest.mark.parametrize("path", sorted(WORKBOOKS.glob("[01]*.ipynb")), ids=lambda path: path.stem)
def test_each_lesson_says_its_question_and_its_time(path):
    lesson = read_lesson(path)
    assert lesson.question.endswith("?") and re.search(r"\d+ minutes", lesson.time)


def test_a_top_cut_up_keeps_its_top_and_gains_edge():
    inch = 0.0254
    whole, four, sixteen = cut_up(60 * inch, 15 * inch, 1.5 * inch, 0.25 * inch)
    # by hand: 2 (60 + 15) = 150 in; 4 times 60; 16 times 30
    assert [row.edge_m / inch for row in (whole, four, sixteen)] == pytest.approx([150, 240, 480])
    assert {round(row.top_share, 9) for row in (whole, four, sixteen)} == {round(1 / 6, 9)}
    # face less the top layer, in in3: 271.5625 - 225; 4 (337.5 - 14.5 x 14.5 x 1.25) - 225; 16 (84.375 - 7 x 7 x 1.25) - 225
    by_hand = [46.5625 / 1350, (4 * (337.5 - 262.8125) - 225) / 1350, (16 * (84.375 - 61.25) - 225) / 1350]
    assert [row.edge_share for row in (whole, four, sixteen)] == pytest.approx(by_hand)
    with pytest.raises(ValueError, match="face"):
        cut_up(60 * inch, 15 * inch, 1.5 * inch, 1.6 * inch)


@pytest.mark.parametrize(
    ("box", "words"),
    [(("8", "5", "2"), "has no unit"), ((8, 5, 2), "has no unit"), (("8 in", "5 in"), "three sizes"), (5, "three sizes"),
     (..., "three sizes"), (("5 in", "5 in", "5 in"), "the box has only"), (("wide", "5 in", "2 in"), "number")],
)  # fmt: skip
def test_sizes_of_the_box_that_cannot_be_used_are_answered_in_words(box, words):
    block = ("7 in", "4 in", "1 1/2 in")
    model = box_model(box, block)
    assert words in model.text and "Mend the line" in model.text and "printed lesson" in model.text
    assert model.band == box_band(*PRINTED)
    # by hand: 8 x 5 x 2 - 7 x 4 x 1.5 = 38 in3
    assert box_model(*PRINTED).band[1] == pytest.approx(38 * 0.0254**3)
    assert str(box_model(*PRINTED)) == "Predicted 2.63 cup (623 mL)."
