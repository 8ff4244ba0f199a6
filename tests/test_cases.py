"""Seventy problems that people met, and where each is answered: tests/cases.csv is the list, this file holds it to it.

Kinds: T, an exact number; M, a number measured in the field; F, a warning, a cue, a question or a line to print.
"""

import csv
import html
import re
from functools import cache
from pathlib import Path

import case_jobs
import pytest
import test_published

from shop_calc import units
from shop_calc.lesson.banks import bank
from shop_calc.lesson.sheet import sheet_html
from shop_calc.science import absolute_volume, heat_balance, maturity, water_ratio
from shop_calc.trade.jobs.job import check_job, parse_job
from shop_calc.trade.mortar.mix import build_mix
from shop_calc.trade.mortar.recipe_file import recipe_from_table
from shop_calc.trade.plan import make_plan
from shop_calc.trade.problems import Problems
from shop_calc.trade.report import report

TESTS = Path(__file__).parent
COLUMNS = ["case", "kind", "answered_by", "where"]
NUMBERS = {
    "V": (1, 2, 3, 4, 6, 7, 9, 12, 13, 15, 16, 17), "W": (1, 2, 5), "H": (1, 2, 3, 4, 6),
    "M": (1, 5, 6, 7, 10, 11, 12, 14, 15, 17, 18, 19, 20, 22), "T": (1, 2, 3, 4, 6, 7, 11, 13, 14),
    "E": (1, 2, 3, 4, 7, 8), "F": (2, 3, 4, 6, 7, 9, 10, 12, 13), "S": (1, 3, 5, 6, 8, 9, 11, 14, 15, 16), "U": (1, 2),
}  # fmt: skip
ALL = [f"{letter}{number:02d}" for letter, numbers in NUMBERS.items() for number in numbers]
FT3, IN, LB = units.convert(1.0, "ft3", "m3"), 0.0254, units.convert(1.0, "lb", "kg")

with open(TESTS / "cases.csv", encoding="utf-8", newline="") as _file:
    _reader = csv.DictReader(_file)
    _HEAD, ROWS = _reader.fieldnames, list(_reader)
PUBLISHED = {row["id"]: row for row in test_published.ROWS}


@cache
def plan(case):
    return case_jobs.plan_of(case)


@cache
def printed(case):
    return re.sub(r"\s+", " ", report(plan(case)))


@cache
def sheet():
    text = re.sub(r"(?s)<(style|svg)\b.*?</\1>|<[^>]+>", " ", sheet_html(plan("plain")))
    return re.sub(r"\s+", " ", html.unescape(text))


def row(where, kind):
    """A row of data/published whose number the package gives; run there, looked up here."""
    assert callable(test_published.function_of(PUBLISHED[where]["function"]))


def function(where, kind):
    file, _, name = where.partition("::")
    assert re.search(rf"^def {name}\(", (TESTS / file).read_text(encoding="utf-8"), re.M)


def question(where, kind):
    """lesson:id, or lesson:id:slip; a slip is a foreseen wrong way or a wrong choice."""
    lesson, name, slip = (part.strip() for part in (*where.split(":", 2), "")[:3])
    asked = {each.id: each for each in bank(lesson)}[name]
    assert len(asked.hints) >= 2
    if slip:
        assert any(each.name.startswith(slip) for each in asked.slips), [each.name for each in asked.slips]


def advice(where, kind):
    case, _, text = where.partition(": ")
    lines = [line for line in plan(case).advice if text in line.text + " " + line.reason]
    assert lines, f"nothing says {text!r}"
    assert all(line.reason and line.source and line.mark for line in lines)
    if case.partition(" ")[0] not in ("plain", "V16") and "right" not in case:
        said = {line.text for line in plan("plain").advice}
        assert kind != "F" or text not in " ".join(said) or case in ("V01", "E08"), "it is said on every job"


def refused(where, kind):
    case, _, text = where.partition(": ")
    with pytest.raises(Problems) as error:
        plan(case)
    assert any(text in line for line in error.value.lines), error.value.lines


def on_sheet(where, kind):
    assert where in sheet()


def in_report(where, kind):
    case, _, text = where.partition(": ")
    assert text in printed(case)


HOLD = {"row": row, "test": function, "question": question, "advice": advice, "refused": refused,
        "sheet": on_sheet, "report": in_report}  # fmt: skip


@pytest.mark.parametrize("line", ROWS, ids=[f"{line['case']} {line['answered_by']} {line['where'][:40]}" for line in ROWS])
def test_the_answer_is_there(line):
    HOLD[line["answered_by"]](line["where"], line["kind"])


def test_every_case_has_an_answer_of_its_kind():
    assert _HEAD == COLUMNS
    assert sorted({line["case"] for line in ROWS}) == sorted(ALL)
    for case in ALL:
        lines = [line for line in ROWS if line["case"] == case]
        assert len({line["kind"] for line in lines}) == 1 and lines[0]["kind"] in "TMF"
        ways = {line["answered_by"] for line in lines}
        if lines[0]["kind"] in "TM":
            assert ways & {"row", "test", "refused"}, f"{case}: a number needs a check"
    assert len({tuple(line.items()) for line in ROWS}) == len(ROWS)


def test_a_case_that_nobody_answers_is_seen():
    with pytest.raises(AssertionError):
        advice("plain: Stand on one leg", "F")
    with pytest.raises(AssertionError):
        on_sheet("Stand on one leg", "F")
    with pytest.raises(AssertionError):
        question("start_here:tile:by guessing", "F")
    with pytest.raises(KeyError):
        row("no such row", "T")


def test_every_job_of_a_case_is_used():
    used = {line["where"].partition(": ")[0] for line in ROWS if line["answered_by"] in ("advice", "refused", "report")}
    inside = Path(__file__).read_text(encoding="utf-8")
    assert [name for name in case_jobs.CHANGES if name not in used and f'plan("{name}")' not in inside] == []


# ---- numbers of whole plans and numbers that no row holds; the source stands beside each


def test_the_counter_with_a_sink_through_a_whole_plan():
    # a trainer's worked example: 4,170 in3 = 2.4 ft3, mixer rated at least twice the batch; exact 2.413 ft3
    counter = plan("V01")
    assert counter.layers.total_m3 / FT3 == pytest.approx(2.413, abs=0.0005)
    assert counter.layers.total_m3 / IN**3 == pytest.approx(4169.4, abs=0.1)
    assert 1.05 * counter.layers.total_m3 / FT3 == pytest.approx(2.53, abs=0.005)
    assert 1.10 * counter.layers.total_m3 / FT3 == pytest.approx(2.65, abs=0.005)
    # of two layers only the base has to fit into the drum: the face share is out of it before the stone goes in
    need = next(line.reason for line in counter.advice if "a drum rated" in line.reason)
    rated_ft3 = float(re.search(r"a drum rated ([\d.]+) ft³", need)[1])
    assert rated_ft3 == pytest.approx(2 * counter.batch.base_m3 / FT3, abs=0.005)
    assert len(counter.batch.loads) == 2  # a drum rated 3 ft3


def test_a_racetrack_table_through_a_whole_plan():
    # 64 x 32 + pi 16^2 = 2,852 in2, 3.30 ft3, 8 % less than the rectangle (arithmetic)
    table = plan("V12")
    assert table.layers.total_m3 / FT3 == pytest.approx(3.301, abs=0.0015)
    assert table.layers.top_area_m2 / IN**2 == pytest.approx(2852.25, abs=1.0)
    assert 96 * 32 * 2 * IN**3 / table.layers.total_m3 == pytest.approx(1.077, abs=0.0006)


def test_a_table_of_600_pounds_says_its_weight_before_the_pour():
    # 4 x 8 ft x 1-1/2 in at 150 lb/ft3 weighs 600 lb (a trowelled table cast in place); our mix is a little lighter
    table = plan("W05")
    fresh = table.layers.total_m3 * table.mix.base_density_kg_m3 / LB
    assert fresh == pytest.approx(600, rel=0.06)
    text = printed("W05")
    assert text.index("fresh mass") < text.index("Weigh sheet")
    assert any("600 lb" in line.reason for line in table.advice if line.where == "place")


def test_half_the_thickness_curls_twice_as_far():
    # 300 millionths over a diagonal of 85 in: 0.36 in at 3/4 in, 0.18 in at 1-1/2 in (arithmetic, k L^2 / 8)
    from shop_calc.science.curl import bow_m, gradient_curvature_per_m

    for thick_in, bow_in in ((0.75, 0.36), (1.5, 0.18)):
        bow = bow_m(gradient_curvature_per_m(300e-6, thick_in * IN), 85 * IN)
        assert float(bow) / IN == pytest.approx(bow_in, abs=0.005)


def test_the_section_left_at_the_sink_is_said():
    reason = next(line.reason for line in plan("V01").advice if "strips" in line.text)
    assert '4 1/4" (108 mm) to the front edge' in reason and '8 1/2" (216 mm) of 2\'-2"' in reason


def test_water_over_cement_of_the_military_text_is_a_half():
    # NAVEDTRA: 305 lb of water on 610 lb of cement; sand by difference 1,152 lb, exact 1,151.7 lb
    assert water_ratio.water_cementitious_ratio(610.0, 305.0) == pytest.approx(0.50)
    sand_lb = absolute_volume.mass_by_difference_kg(
        27 * FT3, [610 * LB, 305 * LB, 1735 * LB], [3.15, 1.0, 2.60], 0.05, 2.65) / LB  # fmt: skip
    assert sand_lb == pytest.approx(1151.7, abs=1.0)


def test_270_pounds_of_water_are_32_4_gallons():
    # question of a licence exam: w/c 0.45, 600 lb of cement; the wrong answers are 27, 36 and 45 gal
    water_lb = water_ratio.water_for_ratio_kg(600 * LB, 0.45) / LB
    assert water_lb == pytest.approx(270.0)
    assert water_lb / 8.345 == pytest.approx(32.4, abs=0.05)


def test_pigment_by_the_yard_needs_the_cement_of_the_yard():
    # "5 lb a yard" is 1 lb per 94 lb at 470 lb of cement; 564 lb want 6 lb (a truck of 15 yd3 took 75 lb: 15 x 5)
    for cement, pigment in ((470, 5), (564, 6)):
        made = build_mix(recipe_from_table({
            "w_cm": 0.45, "parts": {"portland cement": f"{cement} lb"},
            "doses": {case_jobs.YELLOW: "1 lb per 94 lb of cement"}}))  # fmt: skip
        share = made.mass_kg(case_jobs.YELLOW) / made.mass_kg("portland cement")
        assert share * cement == pytest.approx(pigment)


def test_five_percent_of_the_water_is_0_016_of_the_ratio():
    # a marked jug that is 5 % off, at w/cm 0.32 (arithmetic)
    more = water_ratio.water_cementitious_ratio(100.0, 1.05 * 32.0)
    assert more - water_ratio.water_cementitious_ratio(100.0, 32.0) == pytest.approx(0.016)


def test_mixing_lifts_the_moist_aggregate_to_27_77():
    # heat balance of an engineering text: 628.1 kcal/°C, 23.65 °C, and 2,586 kcal of mixing bring 27.77 °C
    solids = ([330, 700, 350, 780], [60, 10, 10, 26])
    water = ([7, 3.5, 62.4, 80], [10, 10, 26, 25])
    still = float(heat_balance.mix_temp_c(*solids, *water))
    assert still == pytest.approx(23.65, abs=0.01)
    kcal_j, hour_s = 4186.8, 3600.0  # the calorie of the International Table
    rise = float(heat_balance.mixer_heat_rise_k(2586 * kcal_j / hour_s, hour_s, 628.1))
    assert still + rise == pytest.approx(27.77, abs=0.02)


def test_24_hours_at_10_degrees_count_twice_as_much_over_the_other_datum():
    # a page equates 0 °C and 14 °F; 14 °F is -10 °C: 240 against 480 °C·h
    assert units.convert(14.0, "F", "C") == pytest.approx(-10.0)
    counts = [float(maturity.temperature_time_c_h(24.0, 10.0, datum_c=datum)) for datum in (0.0, -10.0)]
    assert counts == pytest.approx([240.0, 480.0])


ONE_SIZE = """
format = 1
name = "One size"
[piece]
outline = "rectangle"
LINES
[mix]
recipe = "demo mortar"
[day]
water_in = 2026-05-04T08:00:00
[[room]]
from = 2026-05-04T08:00:00
air = "70 F"
humidity = 50
wind = "0 mph"
"""


@pytest.mark.parametrize(
    ("place", "text", "inches"),
    [("length", "5' 3/4\"", 60.75), ("length", "4 1/2 in", 4.5), ("length", "10'6\"", 126), ("length", "10'-6\"", 126),
     ("length", "4'2-1/4\"", 50.25), ("thickness", '3/4"', 0.75), ("thickness", '11/16"', 0.6875),
     ("thickness", '¾"', 0.75)],
)  # fmt: skip
def test_entry_strings_that_commonly_break(place, text, inches):
    # what general software commonly makes of them: 0.75, 41/2, 10 or 9.5, 0; and 3 for three quarters
    sizes = {"length": "60 in", "width": "15 in", "thickness": "1 1/2 in", place: text.replace('"', '\\"')}
    job = parse_job(ONE_SIZE.replace("LINES", "\n".join(f'{name} = "{size}"' for name, size in sizes.items())))
    assert job.piece[place] / IN == pytest.approx(inches, rel=1e-12)


def test_what_is_printed_of_a_size_is_what_a_tape_says():
    assert units.parse("60 ft 1 in", "length") / IN == pytest.approx(721)
    assert units.show(50.125 * IN, "length", "us") == "4'-2 1/8\""
    assert units.parse("10 3/8 in", "length") * 1000 == pytest.approx(263.5, abs=0.05)
    with pytest.raises(ValueError, match="2-3/4 or 1-1/4"):
        units.parse("11/4", "length")


def test_a_room_outside_the_charts_of_evaporation_says_so():
    # the charts end at 25 mph (11.2 m/s) and 100 °F (38 °C)
    def said(**room):
        table = case_jobs.entries("plain")
        table["room"][0] |= room
        return [line.reason for line in make_plan(check_job(table)).advice if "outside the charts" in line.text]

    assert said(wind="24.9 mph") == [] == said(air="100 F")
    (windy,) = said(wind="26 mph")
    (hot,) = said(air="102 F")
    assert "wind 26 mph" in windy and "air" in hot and "25" in windy
