"""Pages on narrow screens and pictures at the ends of their sliders: nothing runs off, nothing is struck out."""

import json
import re
from pathlib import Path

import numpy as np
import pytest
from matplotlib.text import Text

from shop_calc.lesson import view
from shop_calc.lesson.contents import lessons
from shop_calc.lesson.guess import guessed
from shop_calc.lesson.moves import curing, sizing, start
from shop_calc.lesson.moves.mix_and_yield import stretch, stretch_words
from shop_calc.lesson.moves.strip_move import first_days
from shop_calc.lesson.moves.water_temperature import warmth, warmth_picture
from shop_calc.lesson.page import escaped
from shop_calc.lesson.pictures.weight_bar import WeightBar
from shop_calc.lesson.practice import ask
from shop_calc.lesson.question import Question
from shop_calc.lesson.said import Said
from shop_calc.lesson.sheet.build import sheet_body
from shop_calc.lesson.stored_form import bound_prose
from shop_calc.trade.jobs.job import demo_job, read_job
from shop_calc.trade.plan import make_plan

WORKBOOKS = Path(__file__).parents[1] / "workbooks"
NOTEBOOKS = sorted(WORKBOOKS.rglob("*.ipynb"))
TABLET, LAPTOP = 78, 124  # letters of code in a cell on a screen of 800 px; and on one of 1280 px, with room to spare
FIT_A_TABLET = tuple(f"{number:02}_" for number in range(12))


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: f"{path.parent.stem}-{path.stem}")
def test_no_line_of_code_leaves_its_cell(path):
    most = TABLET if path.name.startswith(FIT_A_TABLET) or path.parent.name == "solutions" else LAPTOP
    cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
    code = ["".join(cell["source"]) for cell in cells if cell["cell_type"] == "code"]
    assert [line for text in code for line in text.split("\n") if len(line) > most] == []


def _box(picture, text):
    return text.get_window_extent(picture.figure.canvas.get_renderer())


def test_the_line_of_the_limit_never_strikes_out_the_weight():
    picture = WeightBar(180, start.LIMIT_KG, "A top")
    for mass_kg in np.linspace(5, 175, 60):
        picture.update(start.Plank(float(mass_kg), 90.0))
        line = picture.axes.transData.transform((start.LIMIT_KG, 0.5))[0]
        box = _box(picture, picture._says)
        assert not box.x0 - 2 < line < box.x1 + 2, mass_kg


@pytest.mark.parametrize("wanted_c", [10.0, 16.0, 23.9])
def test_the_numbers_of_the_heat_areas_stay_on_the_sheet_and_off_the_dashed_line(wanted_c):
    picture = warmth_picture(21.1, 15.0, 0.0, 15.6)
    inner = picture.picture if hasattr(picture, "picture") else picture
    for powder_c in (1.7, 12.0, 21.1, 30.0, 37.8):
        for water_c, ice in ((1.1, 0.0), (15.0, 0.0), (15.0, 0.3), (48.9, 0.0), (48.9, 0.3)):
            try:
                result = warmth(powder_c, water_c, ice, wanted_c)
            except ValueError:  # so much ice does not melt
                continue
            picture.update(result)
            inner.figure.canvas.draw()
            sheet, dashed = inner.axes.get_window_extent(), inner.axes.transData.transform((0, wanted_c))[1]
            for shapes in inner._parts:
                number = shapes["number"]
                box = _box(inner, number)
                if number.get_visible():
                    assert box.x1 < sheet.x1 + 3 and box.y0 > sheet.y0 - 3
                    assert not box.y0 + 3 < dashed < box.y1 - 3, (powder_c, water_c, ice)


def test_a_number_keeps_its_unit_on_its_line_and_words_do_not():
    assert escaped("1 1/2\" (38.1 mm), 60 °F, 20 % of 3 minutes") == (
        "1\u00a01/2&quot; (38.1\u00a0mm), 60\u00a0°F, 20\u00a0% of 3 minutes"
    )
    assert escaped("<b> 5 lb/ft²") == "&lt;b&gt; 5\u00a0lb/ft²"


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: f"{path.parent.stem}-{path.stem}")
def test_no_line_of_prose_parts_a_number_from_its_unit(path):
    cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
    prose = " ".join("".join(cell["source"]) for cell in cells if cell["cell_type"] == "markdown")
    assert re.findall(r"[\d½¼¾][ \n](?:°[FC]|%|psi|ft|lb|mm|kg|mph|min|MPa|kPa)(?!\w)", re.sub("`[^`]*`", "", prose)) == []


@pytest.mark.parametrize("name", ["sink_top_hot_day", "counter_worked_example"])
def test_no_line_of_the_shop_sheet_parts_a_number_from_its_unit(name):
    page = sheet_body(make_plan(read_job(demo_job(name))))
    seen = re.sub("<style>.*?</style>|<[^>]*>", "\n", page, flags=re.DOTALL)
    assert re.findall(r"\d (?:mm|°[FC]|psi|lb|kg|MPa)\b", seen) == [] and re.search("\\d\u00a0mm", seen)


def test_a_mixed_number_and_the_hour_of_a_day_stay_whole_in_prose_and_code_is_left_alone():
    assert escaped("4 1/4\", from Tue 08:00") == "4\u00a01/4&quot;, from Tue\u00a008:00"
    assert bound_prose("6\n°F, a 2 in hole, `\"3 L\"`") == "6\u00a0°F, a 2\u00a0in hole, `\"3 L\"`"


def test_cubic_units_mils_and_dates_stay_whole_too():
    assert escaped("0.03287 m³ (2006 in³), 1.5 mil, 565 N·m") == (
        "0.03287\u00a0m³ (2006\u00a0in³), 1.5\u00a0mil, 565\u00a0N·m"
    )
    assert escaped("as in 2026-05-04T08:00") == 'as in <span style="white-space:nowrap">2026-05-04T08:00</span>'


def test_a_long_choice_goes_on_under_its_own_words_and_an_amount_stays_in_one_piece():
    page = Said("What now?\n  a  wait\n  b  go\nAnswer.")._repr_mimebundle_()["text/html"]
    assert page.count("text-indent") == 2 and "margin-top" not in page
    listed = Said("In the morning:\n• A crust.\n  Why: dry.")._repr_mimebundle_()["text/html"]
    assert listed.count("text-indent") == 2
    assert Said("Answer: b, go on\nThat is why.")._repr_mimebundle_()["text/html"].count("text-indent") == 1
    plain = Said("format = 1\n\n[piece]")._repr_mimebundle_()["text/html"]
    assert "text-indent" not in plain
    worked = Said("1. area: A = s × s\n   with s = 12 in (0.3048 m), n = 2")._repr_mimebundle_()["text/html"]
    assert "s\u00a0=\u00a012\u00a0in\u00a0(0.3048\u00a0m), n\u00a0=\u00a02" in worked


def test_no_unit_stands_so_close_under_the_scale_above_that_it_reads_as_its_unit():
    picture = first_days(make_plan(read_job(demo_job("garden_bench_top"))), "A top")
    picture.figure.canvas.draw()
    words = [text for text in picture.figure.findobj(Text) if text.get_visible() and text.get_text()]
    sheet = picture.warm.get_window_extent()
    for unit in ("psi", "MPa"):
        box = _box(picture, next(text for text in words if text.get_text() == unit))
        above = [_box(picture, text) for text in words if text.get_text() in ("50", "10")]
        assert min(other.y0 for other in above if abs(other.y0 - sheet.y0) < 20) > box.y1 + 0.5 * box.height


def test_a_question_that_begins_with_a_number_is_no_step_of_a_working():
    page = Said("70 lb of sand.\n  a  one\n       with S = 1")._repr_mimebundle_()["text/html"]
    assert '<div style="">70\u00a0lb of sand.</div>' in page
    assert "text-indent" in Said("1. one: A = 1\n   A = 1")._repr_mimebundle_()["text/html"].split("one")[0]


def test_who_guesses_quarts_is_not_answered_in_gallons():
    assert str(guessed(..., 0.00445, "liquid", "qt", "The face takes")).startswith("The face takes 4.7 qt (4.45 L).")
    assert str(guessed(..., 0.000526, "liquid", "cup")).startswith("It is 2.22 cup (526 mL).")


@pytest.mark.parametrize(
    ("kind", "unit", "left"),
    [("length", "ft", "Answer in ft."), ("choice", "", "Answer with the letter."),
     ("order", "", "Answer with the letters in order."), ("number", "-", "Answer with a plain number.")],
)  # fmt: skip
def test_where_nothing_can_be_typed_no_line_says_how_to_type(kind, unit, left):
    answer = {"choice": "one", "order": ("one", "two")}.get(kind, 1.0)
    question = Question("q", "How?", lambda: answer, kind, unit, hints=("x", "y"), choices=("one", "two"))
    page = ask(question)._repr_mimebundle_()["text/html"]
    seen = re.sub("<[^>]+>", "\n", re.sub('<span class="shop-typed">.*?</span>', "", page)).split("\n")
    assert [line for line in seen if line.startswith("Answer")] == [left]
    assert ("in quotes" in page or "as a number" in page) == (kind != "number")
    blank = guessed(..., 4.0, "duration", "h")._repr_mimebundle_()["text/html"]
    assert 'It is 4\u00a0h.<span class="shop-typed"> No guess was written down.</span>' in blank
    template = (Path(view.__file__).parent / "voila/templates/shop/index.html.j2").read_text(encoding="utf-8")
    assert ".shop-typed { display: none; }" in template and "write on paper" in template


def test_an_hour_never_takes_more_water_than_a_face_has():
    model = curing.drier(make_plan(read_job(demo_job("garden_bench_top"))))
    words = curing.drying_words(model(0.0, 37.8, 0.1, 10.7), "us")
    assert "no water left after 21 min" in words and "%" not in words
    full = curing.drying_words(model(37.8, 37.8, 1.0, 0.0), "us")
    assert full.startswith("The air takes nothing.") and "settles" not in full


def test_all_four_volumes_of_a_small_piece_stand_in_one_unit():
    words = sizing.layer_words(sizing.two_layers(0.6096, 0.2032, 0.0254, 0.003175), "us")
    assert words.count("in³") == 4 and "ft³" not in words


def test_without_stone_it_is_the_sand_that_drinks():
    assert "The coarse sand drinks" in stretch_words(stretch(0.0, 0.6, 0.0, 0.25), "us")
    assert "The stone drinks" in stretch_words(stretch(1.2, 0.6, 0.0, 0.25), "us")


def test_the_list_of_the_view_without_code_asks_the_questions_of_the_lessons():
    template = (Path(view.__file__).parent / "voila/templates/shop/tree.html").read_text(encoding="utf-8")
    shown = dict(re.findall(r'^ +"(\d\d_\w+\.ipynb)": "(.+)",$', template, re.MULTILINE))
    assert shown == {each.file: each.question for each in lessons(WORKBOOKS) if each.file[0].isdigit()}
