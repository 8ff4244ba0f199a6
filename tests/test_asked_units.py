"""Workings in the units of the shop: only where the sum comes out in them, and otherwise all of it in SI."""

import re

import pytest

from shop_calc.lesson.asked_units import shop_units, turned
from shop_calc.lesson.banks import bank, bank_names
from shop_calc.lesson.draw import draw
from shop_calc.lesson.formula import evaluate, is_arithmetic
from shop_calc.lesson.practice import Practice, worked
from shop_calc.lesson.working_text import lines_of, steps_of
from shop_calc.trade.working import Step
from shop_calc.units import convert

INCH_M, LB_KG = 0.0254, 0.45359237
# Questions in inches, pounds and °F whose working stays in SI, and why.
METRIC_SUMS = {
    "water_temperature.mixer": "watts and joules",
    "strip_move_support.plank": "a density in feet, a thickness in inches: psi would need a 144",
    "strip_move_support.patio": "the same",
    "strip_move_support.fourteen": "counts °C·h",
}
METRIC = {"m", "mm", "kg", "C", "kg/m2", "kg/m2/h"}


def line(symbol, formula, value, unit, **inputs):
    return Step(symbol.lower(), symbol, formula, tuple((name, *pair) for name, pair in inputs.items()), value, unit, "derived",
                "arithmetic", symbol)  # fmt: skip


def test_a_sum_in_inches_stays_in_inches_and_says_cubic_feet_behind():
    volume = line("V", "L * W * T", 60 * 15 * 1.5 * INCH_M**3, "m3", L=(60 * INCH_M, "m"), W=(15 * INCH_M, "m"),
                  T=(1.5 * INCH_M, "m"))  # fmt: skip
    tape = [(60 * INCH_M, "m", "60 in", "in"), (15 * INCH_M, "m", "15 in", "in"), (1.5 * INCH_M, "m", "1.5 in", "in")]
    assert lines_of([volume], tape, "ft3") == [
        "V: V = L × W × T\n   with L = 60 in, W = 15 in, T = 1.5 in\n   V = 60 × 15 × 1.5 = 1350 in³ (0.7813 ft³)"
    ]


def test_what_must_be_turned_stands_in_both_units():
    assert "T = 1.5 in (0.125 ft)\n   V = 5 × 2 × 0.125 = 1.25 ft³" in str(Practice("two_layer_sizing").worked("foot_or_inch"))
    assert "V_s = 525 in³ (0.3038 ft³)" in str(Practice("mix_and_yield").worked("set_aside"))


def test_one_line_that_does_not_come_out_leaves_the_whole_working_in_si():
    area = line("A", "L * W", 0.5, "m2", L=(1.0, "m"), W=(0.5, "m"))
    joules = line("Q", "A * 3", 1.5, "J", A=(0.5, "m2"))
    drift = line("V", "A * 0.01", 0.005, "m3", A=(0.5, "m2"))  # a length hidden in a number
    assert shop_units([area]) is not None
    assert shop_units([area, joules]) is None and shop_units([area, drift]) is None
    assert lines_of([area, drift])[0].endswith("A = 1 × 0.5 = 0.5 m² (5.38 ft²)")


def test_a_question_with_a_metric_number_is_worked_in_metric_units():
    area = line("A", "L * W", 0.5, "m2", L=(1.0, "m"), W=(0.5, "m"))
    assert shop_units([area], [(1.0, "m", "1000 mm", "mm")]) is None and shop_units([area], asked="mm") is None


def test_degrees_average_in_fahrenheit_because_the_weights_add_up():
    mix = line("T", "(S * T_s + W * T_w) / (S + W)", 20.0, "C", S=(LB_KG, "kg"), T_s=(30.0, "C"), W=(LB_KG, "kg"),
               T_w=(10.0, "C"))  # fmt: skip
    twice = line("T", "2 * T_s", 40.0, "C", T_s=(20.0, "C"))
    assert "T = (1 × 86 + 1 × 50) / (1 + 1) = 68 °F (20 °C)" in lines_of([mix])[0]
    assert shop_units([twice]) is None


def test_the_units_of_a_sheet_with_a_slip_are_those_of_the_right_one():
    right = [line("S", "c * M", 0.22 * LB_KG, "kg", c=(0.22, "-"), M=(LB_KG, "kg")),
             line("H", "S * 2", 0.44 * LB_KG, "kg", S=(0.22 * LB_KG, "kg"))]  # fmt: skip
    wrong = [line("S", "c * M", LB_KG, "kg", c=(0.22, "-"), M=(LB_KG, "kg")),
             line("H", "S * 2", 2 * LB_KG, "kg", S=(LB_KG, "kg"))]  # fmt: skip
    first, second = lines_of(wrong, right=right)
    assert "S = 0.22 × 1 = 1 lb" in first and "H = 1 × 2 = 2 lb" in second


QUESTIONS = [pytest.param(name, q, id=f"{name}.{q.id}") for name in bank_names() for q in bank(name) if q.working]


@pytest.mark.parametrize("name, question", QUESTIONS)
def test_every_shop_line_comes_out_and_no_us_question_is_left_in_kilograms(name, question):
    for code in (None, "mar 7", "lab 3"):
        drawn = draw(question, code)
        steps = steps_of(question, drawn)
        shop = shop_units(steps, [(0.0, "-", "", n.unit) for n in question.numbers], question.unit)
        metric = {question.unit, *(n.unit for n in question.numbers)} & METRIC
        assert (shop is None) == bool(metric or f"{name}.{question.id}" in METRIC_SUMS)
        if shop is None:
            continue
        for step, (_, chosen, unit) in zip(steps, shop, strict=True):
            if is_arithmetic(step):
                there = {s: turned(value, of, its) for (s, value, of), its in zip(step.inputs, chosen, strict=True)}
                assert evaluate(step.formula, there) == pytest.approx(turned(step.value, step.unit, unit), rel=1e-9)
        assert not re.search(r"= [\d.]+ (kg|m³|m²|°C)( |$)", str(worked(question, code)), re.MULTILINE)


def _as_printed(sum_text):
    """A printed sum as arithmetic: what is written in kPa, MPa or kJ counts so many pascals or joules."""
    for written, share in {"kPa": "1e3", "MPa": "1e6", "kJ": "1e3", "Pa": "1", "J": "1"}.items():
        sum_text = re.sub(rf"([\d.]+) {written}\b", rf"(\1*{share})", sum_text)
    return sum_text.replace("×", "*").replace("²", "**2").replace("³", "**3").replace("π", "pi")


@pytest.mark.parametrize("key", ["strip_move_support.patio", "strip_move_support.plank", "water_temperature.mixer"])
def test_many_pascals_are_written_as_kpa_and_mpa_and_the_printed_sum_still_comes_out(key):
    name, id = key.split(".")
    text = str(Practice(name, code="lab 3").worked(id))
    assert not re.search(r"\d{5,} (Pa|J)\b", text) and re.search(r"\d (MPa|kJ)\b", text)
    sums = re.findall(r"^   \w+ = (.+) = ([\d.]+) (\w?Pa|\w?J|°C)\b", text, re.MULTILINE)
    assert sums
    for left, right, unit in sums:
        said = evaluate(_as_printed(f"{right} {unit}".removesuffix(" °C")), {})
        assert evaluate(_as_printed(left), {}) == pytest.approx(said, rel=2e-3)


def test_turning_agrees_with_the_units_of_the_package():
    assert turned(1.0, "kg/m2/h/Pa", "lb/ft2/h/psi") == pytest.approx(
        convert(convert(1.0, "kg/m2/h", "lb/ft2/h"), "psi", "Pa"), rel=1e-12)  # fmt: skip
    assert turned(1.0, "N*m", "lbf*in") == pytest.approx(8.8507458, rel=1e-7)  # NIST SP 811, inverse of 0.1129848
    assert turned(1.0, "1/m", "1/in") == pytest.approx(0.0254) and turned(9.80665, "m/s2", "lbf/lb") == pytest.approx(1.0)
