"""Questions to reason about: one slip planted in one line is the one that is asked for; orders; signs."""

import re

import pytest

from shop_calc.lesson import slips
from shop_calc.lesson.check import Kind, check
from shop_calc.lesson.draw import draw
from shop_calc.lesson.formula import evaluate, faulty_lines
from shop_calc.lesson.practice import hint, solution, worked
from shop_calc.lesson.question import Number
from shop_calc.lesson.reasoning import choose_cue, find_wrong_line, order_steps, plant
from shop_calc.lesson.reasoning.wrong_line import APART, BELOW, CARRIES, HOLDS
from shop_calc.lesson.wording import shown, typed
from shop_calc.trade.jobs.job import demo_job, read_job
from shop_calc.trade.plan import make_plan
from shop_calc.trade.timeline.stages import ORDER, STAGES
from shop_calc.trade.working import Step

CABINET = pytest.mark.parametrize("mistake", slips.CABINET, ids=lambda each: each.name)


def around(example):
    """A right working of three lines: one before the example, the example, and one that uses both."""
    before = Step("spare", "S", "2 * k", (("k", 3.0, "-"),), 6.0, "-", "derived", "arithmetic")
    inputs = ((example.symbol, example.value, example.unit), ("S", 6.0, "-"))
    after = Step("total", "Z", f"{example.symbol} * S", inputs, example.value * 6.0, "-", "derived", "arithmetic")
    return before, example, after


def test_the_cabinet_holds_every_maker_once_and_by_its_name():
    names = [each.name for each in slips.CABINET]
    assert len(names) == len(set(names)) and names == list(slips.NAMES)
    tools = {"CABINET", "NAMES", "Mistake", "mistake", "Slip", "by", "times", "with_number", "word"}
    beside = "a slip stands in `cabinet.py` and, by the same name, in slips/__init__.py: import and __all__"
    assert set(slips.__all__) - tools == set(names), beside
    assert all(getattr(slips, each.name) is each.make for each in slips.CABINET)
    with pytest.raises(ValueError, match="waste_forgotten"):
        slips.mistake("no_such")


@CABINET
def test_the_right_lines_of_the_cabinet_hold(mistake):
    assert faulty_lines(around(mistake.example)) == []


@CABINET
def test_every_planted_slip_is_found_in_its_line_and_only_there(mistake):
    right = around(mistake.example)
    sheet = plant(right, mistake.example.symbol, mistake.slip)
    wrong = [place for place, (one, other) in enumerate(zip(sheet, right, strict=True)) if one.value != other.value]
    assert wrong == [1, 2]  # carried on below, nothing touched above
    # a slip with numbers of its own shows a number that was handed on otherwise; any other does not come out
    bad, last = sheet[1], sheet[2]
    changed = bad.inputs != mistake.example.inputs
    assert changed or abs(evaluate(bad.formula, bad.inputs) - bad.value) > 0.05 * abs(mistake.example.value)
    assert evaluate(last.formula, last.inputs) == pytest.approx(last.value, rel=1e-12)


@CABINET
def test_a_sheet_with_each_slip_of_the_cabinet_makes_a_question_that_is_answered(mistake):
    question = find_wrong_line(
        "sheet", "Which line is wrong?", lambda: around(mistake.example), [(mistake.example.symbol, mistake.slip)]
    )
    assert solution(question) == "b" and check(question, "line b").kind is Kind.RIGHT
    assert check(question, "c").kind is Kind.SLIP and "it was given" in check(question, "c").text
    assert check(question, "a").kind is Kind.SLIP and "is right" in check(question, "a").text
    assert mistake.slip.name in str(worked(question)) and mistake.slip.hint in str(worked(question))


def net(length_m, width_m, thickness_m, allowance_fraction):
    area = length_m * width_m
    volume = area * thickness_m
    return (
        Step("area_m2", "A", "l * w", (("l", length_m, "m"), ("w", width_m, "m")), area, "m2", "derived", "geometry"),
        Step("volume_m3", "V", "A * t", (("A", area, "m2"), ("t", thickness_m, "m")), volume, "m3", "derived",
             "geometry"),
        Step("mixed_m3", "V_m", "V * (1 + a)", (("V", volume, "m3"), ("a", allowance_fraction, "-")),
             volume * (1 + allowance_fraction), "m3", "derived", "geometry"),
        Step("mass_kg", "M", "V_m * D", (("V_m", volume * (1 + allowance_fraction), "m3"), ("D", 2300.0, "kg/m3")),
             2300.0 * volume * (1 + allowance_fraction), "kg", "derived", "geometry"),
    )  # fmt: skip


SHEET = find_wrong_line(
    "sheet",
    "A top {length_m} by {width_m}, {thickness_m} thick, with {allowance_fraction} more. Which line goes wrong first?",
    net,
    [("A", slips.inch_for_foot()), ("V", slips.left_out("t", "How thick?", value=1.0)),
     ("V_m", slips.waste_taken_off("a"))],
    (Number("length_m", "in", 60, 48, 96, 6), Number("width_m", "in", 15, 12, 30, 1),
     Number("thickness_m", "in", 1.5, 1.25, 2, 0.25), Number("allowance_fraction", "%", 10, 0, 25, 1)),
)  # fmt: skip


def test_the_sheet_without_a_code_by_hand():
    lines = shown(SHEET).splitlines()
    assert lines[0].startswith("A top 60 in by 15 in, 1.5 in thick, with 10 % more")
    # 60 x 15 in is 900 in2; twelve times that is 10800 in2
    assert lines[1:4] == [
        "  a  area m2: A = l × w",
        "       with l = 60 in, w = 15 in",
        "       A = 60 × 15 = 10800 in² (6.97 m²)",
    ]
    assert solution(SHEET) == "a" and "It should be 900 in² (0.581 m²)." in str(worked(SHEET))


def test_codes_draw_other_numbers_and_another_line():
    seen = {(solution(SHEET, f"c{k}"), draw(SHEET, f"c{k}").printed["length_m"]) for k in range(60)}
    assert {letter for letter, _ in seen} == {"a", "b", "c"} and len(seen) > 12


@pytest.mark.parametrize("code", [f"c{k}" for k in range(40)])
def test_the_planted_line_is_the_only_one_whose_number_was_not_handed_to_it(code):
    drawn = draw(SHEET, code)
    given = dict(drawn.given)
    planted = int(given.pop("plant_number"))
    right = net(**given)
    sheet = plant(right, *[("A", slips.inch_for_foot()), ("V", slips.left_out("t", "", value=1.0)),
                           ("V_m", slips.waste_taken_off("a"))][planted])  # fmt: skip
    place = "abcd".index(typed(SHEET, drawn, drawn.right))
    assert place == planted
    for k, (one, other) in enumerate(zip(sheet, right, strict=True)):
        assert (abs(one.value / other.value - 1) > 0.05) is (k >= place)  # nobody is asked to see less


def test_numbers_with_which_nobody_would_see_the_slip_are_drawn_anew():
    for k in range(200):
        drawn = draw(SHEET, f"c{k}")
        if drawn.right == "line c":  # (1 - a) / (1 + a) must differ from 1 by more than 5 %
            assert drawn.printed["allowance_fraction"] >= 3


def test_hints_show_the_right_lines_one_by_one_and_never_the_letter():
    texts = [str(hint(SHEET, n)) for n in range(1, 6)]
    assert "900 in²" in texts[2] and "10800" not in "".join(texts)
    assert not any(re.search(r"line [a-d]\b", text) for text in texts)


@pytest.mark.parametrize(
    ("plants", "part"),
    [
        ([("M", slips.inch_for_foot())], "last line"),
        ([("Q", slips.inch_for_foot())], "there are A, V, V_m, M"),
        ([("V", slips.times(1.01, "near", "Look."))], "nobody would see it"),
    ],
)
def test_a_slip_that_cannot_be_planted_is_refused(plants, part):
    with pytest.raises(ValueError, match=part):
        find_wrong_line("sheet", "", net, plants, SHEET.numbers[:-1])


def test_a_procedure_is_no_place_for_a_slip():
    cut_up = Step("a", "A", "by cutting it up", (), 1.0, "m2", "derived", "geometry")
    steps = (cut_up, *around(slips.CABINET[0].example))
    with pytest.raises(ValueError, match="plain arithmetic"):
        plant(steps, "A", slips.inch_for_foot())
    uses = Step("b", "B", "by weighing", (("S", 6.0, "-"),), 1.0, "kg", "derived", "geometry")
    with pytest.raises(ValueError, match="no plain arithmetic"):
        plant((*around(slips.CABINET[0].example), uses), "S", slips.times(2, "twice", "Look."))


def test_every_wrong_guess_at_a_line_is_answered_in_words_that_are_true_of_it():
    # areas of a bench and of a wall; the second line takes nothing from the first, the last takes both
    def areas(l_m, w_m):
        one, other = l_m * w_m, 2 * l_m
        return (
            Step("a", "A", "l * w", (("l", l_m, "m"), ("w", w_m, "m")), one, "m2", "derived", "geometry"),
            Step("b", "B", "2 * l", (("l", l_m, "m"),), other, "m", "derived", "geometry"),
            Step("c", "C", "3 * A", (("A", one, "m2"),), 3 * one, "m2", "derived", "geometry"),
            Step("d", "D", "B / l", (("B", other, "m"), ("l", l_m, "m")), 2.0, "-", "derived", "geometry"),
            Step("e", "E", "C * D", (("C", 3 * one, "m2"), ("D", 2.0, "-")), 6 * one, "m2", "derived", "geometry"),
        )

    sizes = (Number("l_m", "m", 5, 4, 9), Number("w_m", "m", 3, 3, 3))
    first = find_wrong_line("sheet", "", areas, [("A", slips.times(2, "twice", "How many?"))], sizes)
    said = {letter: check(first, letter) for letter in "abcde"}
    assert said["a"].kind is Kind.RIGHT and "twice. How many? It should be 15 m²" in said["a"].text
    assert said["b"].text.endswith(BELOW) and said["d"].text.endswith(APART)
    assert said["c"].text.endswith(CARRIES) and said["e"].text.endswith(CARRIES)
    third = find_wrong_line("sheet", "", areas, [("C", slips.times(2, "twice", "How many?"))], sizes)
    assert [check(third, letter).text.endswith(HOLDS) for letter in "abc"] == [True, True, False]


def test_a_slip_can_be_planted_in_the_working_of_a_plan():
    layers = make_plan(read_job(demo_job("garden_bench_top"))).layers
    # 60 x 15 x 1.5 in with a face of 1/4 in all round: base 59.5 x 14.5 x 1.25 in
    assert layers.working[7].value == pytest.approx(59.5 * 14.5 * 1.25 * 0.0254**3)
    sheet = plant(layers.working, "A_core", slips.sign_flipped())
    assert faulty_lines(layers.working) == [] and [step.symbol for step in faulty_lines(sheet)] == ["A_core"]
    assert sheet[8].value == pytest.approx(sheet[6].value - sheet[7].value) and sheet[8].value > sheet[6].value


STEPS = ("screed", "float", "strip", "steel", "cover")
DAY = order_steps(
    "day", "In order?", STEPS,
    [("steel", "float", "What would steel close in?"), ("cover", "strip", "What lies on a soft face?")],
    ("What is soft is worked soft.", "The hard tool comes late."),
)  # fmt: skip


@pytest.mark.parametrize("code", [None, *(f"c{k}" for k in range(20))])
def test_steps_are_never_printed_in_their_right_order(code):
    drawn = draw(DAY, code)
    assert drawn.choices != STEPS and sorted(drawn.choices) == sorted(STEPS)
    assert check(DAY, solution(DAY, code), code).kind is Kind.RIGHT
    for slip, value in drawn.slips:
        outcome = check(DAY, typed(DAY, drawn, value), code)
        assert outcome.kind is Kind.SLIP and slip.hint in outcome.text


@pytest.mark.parametrize(
    ("steps", "early", "part"),
    [
        (("a", "b"), [], "at least three"),
        (("a", "b", "a"), [], "each once"),
        (("a", "b", "c"), [("a", "c", "Look.")], "no slip"),
        (("a", "b", "c"), [("d", "c", "Look.")], "no slip"),
    ],
)
def test_an_order_that_makes_no_question_is_refused(steps, early, part):
    with pytest.raises(ValueError, match=part):
        order_steps("q", "", steps, early, ("x", "y"))


CUES = choose_cue(
    "sign", ["strip", "first_steel", "last_steel"], ["look", "strip", "first_steel", "last_steel", "stop"],
    also=[("four hours have passed since the water", "Whose hours are those?")],
)  # fmt: skip


def test_each_stage_is_asked_with_its_own_sign_and_its_neighbours_are_slips():
    asked = set()
    for k in range(40):
        code = f"c{k}"
        drawn = draw(CUES, code)
        key = ("strip", "first_steel", "last_steel")[int(drawn.given["stage_number"])]
        asked.add(key)
        assert drawn.right == STAGES[key].cue and STAGES[key].tool in shown(CUES, code)
        place = ORDER.index(key)
        soon, late, belief = (value for _, value in drawn.slips)
        assert (soon, late) == (STAGES[ORDER[place - 1]].cue, STAGES[ORDER[place + 1]].cue)
        for value, part in ((soon, "soft"), (late, "long be done"), (belief, "Whose hours")):
            assert part in check(CUES, typed(CUES, drawn, value), code).text
    assert asked == {"strip", "first_steel", "last_steel"}


@pytest.mark.parametrize(
    ("asked", "among"), [(["stop"], list(ORDER)), (["base"], list(ORDER)), ([], list(ORDER)), (["strip"], ["strip"])]
)
def test_a_stage_without_a_neighbour_is_refused(asked, among):
    with pytest.raises(ValueError, match="one before and one after"):
        choose_cue("q", asked, among)


def test_a_stage_that_does_not_exist_is_refused():
    with pytest.raises(ValueError, match="first_steel"):
        choose_cue("q", ["strip"], ["look", "strip", "lunch"])
