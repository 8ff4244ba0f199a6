"""The page for instructors: its tables say what the plan, the key and the cabinet say; its links lead somewhere."""

import json
import re
from pathlib import Path

import pytest

from shop_calc.lesson.banks import bank
from shop_calc.lesson.check import Kind, check
from shop_calc.lesson.classroom import roster
from shop_calc.lesson.moves.for_instructors import MEANWHILE, apart_min, cabinet, key_of, workshop_day, wrong_sheet
from shop_calc.lesson.outline import source
from shop_calc.lesson.practice import Practice, solution
from shop_calc.lesson.slips import CABINET
from shop_calc.trade.jobs.job import demo_job, read_job
from shop_calc.trade.plan import make_plan
from shop_calc.trade.timeline.stages import ORDER

WORKBOOKS = Path(__file__).parents[1] / "workbooks"
PAGE = WORKBOOKS / "for_instructors.ipynb"


@pytest.fixture(scope="module")
def plan():
    return make_plan(read_job(demo_job("garden_bench_top")))


def prose():
    cells = json.loads(PAGE.read_text(encoding="utf-8"))["cells"]
    return "\n\n".join(source(cell) for cell in cells if cell["cell_type"] == "markdown")


def test_the_workshop_s_day_is_the_plan_s(plan):
    rows = workshop_day(plan).rows
    assert set(MEANWHILE) == set(ORDER) and len(rows) == len(plan.day.stages)
    for row, stage in zip(rows, plan.day.stages, strict=True):
        assert row[0] == stage.title and row[3] == stage.cue
        assert row[1] == f"{plan.day.clock(stage.look_from_h):%H:%M}"


def test_benches_start_as_far_apart_as_the_window_is_wide(plan):
    stage = plan.day.stage("first_steel")
    wide_min = 60 * (stage.likely_to_h - stage.likely_from_h)
    assert wide_min <= apart_min(plan) < wide_min + 5 and apart_min(plan) % 5 == 0
    assert apart_min(plan, "stop") == 0  # a moment, no window


def test_the_key_on_the_page_is_what_the_lesson_accepts():
    students = roster([("bench 1", ""), ("bench 2", "Left")])
    rows = key_of("01", students).rows
    assert len(rows) == len(bank("two_layer_sizing"))
    for student, column in zip(students, (1, 2), strict=True):
        practice = Practice("two_layer_sizing", student.code, keep=False)
        for row in rows:
            answer = row[column]
            assert practice.check(row[0].replace(" ", "_"), answer.replace("³", "3")).kind is Kind.RIGHT
    with pytest.raises(ValueError, match="there are 00"):
        key_of("77", students)


def test_the_cabinet_is_shown_whole():
    rows = cabinet().rows
    assert [row[0] for row in rows] == [each.words for each in CABINET]
    assert [row[3] for row in rows] == [each.slip.hint for each in CABINET]
    by_words = {row[0]: row for row in rows}
    # 0.22*50 + 14 lb of water equivalent: (11*30 + 14*10)/25; by mass alone (50*30 + 14*10)/64
    assert by_words["temperatures averaged by mass alone"][1].endswith("= 18.8 °C")
    assert by_words["temperatures averaged by mass alone"][2] == "25.63 °C"
    assert by_words["a dose taken of the whole bag instead of the cement in it"][2] == "0.02 kg"


def test_a_sheet_can_be_made_of_a_plan_and_its_wrong_line_is_found(plan):
    sheet = wrong_sheet(plan.layers.working[5:10], "V_core", "left_out", "t", "Is the base as thick as the piece?")
    assert solution(sheet) == "c" and check(sheet, "c").kind is Kind.RIGHT and check(sheet, "d").kind is Kind.SLIP
    with pytest.raises(ValueError, match="inch_for_foot"):
        wrong_sheet(plan.layers.working[5:10], "V_core", "no_such")
    with pytest.raises(ValueError, match="A_core, V, V_core"):
        wrong_sheet(plan.layers.working[5:10], "Q", "inch_for_foot")


def test_the_page_has_what_a_workshop_needs():
    text = prose()
    for heading in (
        "What lies on the bench", "Two days", "Six hours", "Alone", "Safety", "Demonstrations", "Questions", "key",
        "wrong answers", "One code", "Logs laid together",
    ):  # fmt: skip
        found = [line for line in text.splitlines() if line.startswith("## ")]
        assert any(heading.lower() in line.lower() for line in found), heading
    for number in range(12):  # something to argue about in every lesson
        assert f"- **{number:02d}** " in text


def test_every_link_leads_to_a_file():
    for link in re.findall(r"\]\(([^)#]+)(?:#[^)]*)?\)", prose()):
        assert (WORKBOOKS / link).is_file(), link
