"""One question, one answer: what stands in the plan, on the sheet, in a working and in a lesson is the same number."""

import html
import re
import tomllib

import pytest
from demo_plans import NAMES, bench, demo_plan

from shop_calc import units
from shop_calc.lesson.moves import mix_and_yield
from shop_calc.lesson.sheet import sheet_html
from shop_calc.trade.explain import explain
from shop_calc.trade.jobs.job import check_job, demo_job
from shop_calc.trade.plan import make_plan
from shop_calc.trade.report import report

WET = {"materials__stone_moisture": "9 %", "materials__coarse_sand_moisture": "8 %"}
LIMIT = "0.55 kg"  # of ASTM C309, in the small print of the sheet
# How people write units on the page -> how `units` reads them.
PAIRS = {
    "lb/ft²·h": ("lb/ft2/h", "kg/m²·h", "kg/m2/h"), "lb/ft²": ("lb/ft2", "kg/m²", "kg/m2"), "lb": ("lb", "kg", "kg"),
    "°F": ("F", "°C", "C"), "ft²": ("ft2", "m²", "m2"), "psi": ("psi", "MPa", "MPa"), "mph": ("mph", "km/h", "km/h"),
}  # fmt: skip


def on_the_sheet(plan):
    text = re.sub(r"<style.*?</style>|<svg.*?</svg>", " ", sheet_html(plan), flags=re.S)
    return re.sub(r"\s+", " ", html.unescape(re.sub(r"<[^>]+>", " ", text))).replace("\u00a0", " ")


def without_prices(name):
    """A demo job whose sheet has no pack on it."""
    entries = tomllib.loads(demo_job(name).read_text(encoding="utf-8"))
    entries.pop("cost", None)
    return make_plan(check_job(entries))


@pytest.mark.parametrize("name", NAMES)
def test_every_mass_temperature_and_hour_on_the_sheet_stands_in_the_plan(name):
    plan = without_prices(name)
    sheet, printed = on_the_sheet(plan), re.sub(r"\s+", " ", report(plan))
    printed += " " + " ".join(re.sub(r"\s+", " ", report(plan, system)) for system in ("us", "si"))
    for mass in set(re.findall(r"\d[\d.,]* (?:lb|oz|kg|g)\b", sheet)) - {LIMIT}:
        assert mass in printed, mass
    stages = sheet.partition("Strip sign seen at")[0].partition("likely window")[2]  # the ruler is a question of its own
    for clock in set(re.findall(r"\b\d\d:\d\d\b", stages)):
        assert clock in printed, clock
    for temp in set(re.findall(r"(?:mortar|base|water to) (-?[\d.]+ °[FC])", sheet)):
        assert temp in printed, temp


@pytest.mark.parametrize("name", NAMES)
def test_both_numbers_of_a_pair_say_the_same(name):
    text = re.sub(r"\s+", " ", report(demo_plan(name)))
    found = 0
    for shown, (ours, other_shown, other) in PAIRS.items():
        for us, si in re.findall(rf"(-?\d[\d.]*) {re.escape(shown)} \((-?\d[\d.]*) {re.escape(other_shown)}\)", text):
            step_us, step_si = (10.0 ** -len(each.partition(".")[2]) if "." in each else 1.0 for each in (us, si))
            low, high = (float(units.convert(float(us) + half, ours, other)) for half in (-0.51 * step_us, 0.51 * step_us))
            assert low - 0.51 * step_si <= float(si) <= high + 0.51 * step_si, f"{us} {shown} ({si} {other_shown})"
            found += 1
    assert found > 30


@pytest.mark.parametrize("wet", [{}, WET], ids=["dry", "wet"])
def test_the_share_to_set_aside_is_what_the_scale_shows_everywhere(wet):
    plan = bench(**wet)
    batch, mass = plan.batch, units.show(plan.batch.on_scale_kg, "mass")
    assert f"set aside for face {mass}, " in re.sub(r" +", " ", report(plan))
    assert f"set aside for the face: {mass}, covered" in report(plan)
    sheet = on_the_sheet(plan)
    assert re.sub(r"[()]", "", mass) in sheet.partition("before any stone goes in")[2][:120]
    assert mix_and_yield.stretch_words((plan.mix, batch)).startswith(f"Set aside {mass} for the face")
    scale = [step for step in plan.working if step.words.startswith("face share on the scale")]
    assert [step.value for step in scale] == [pytest.approx(batch.on_scale_kg, rel=1e-12)]
    assert mass in explain(plan.working, scale[0].name)
    assert (batch.back_to_face_kg > 0.1) is bool(wet)


@pytest.mark.parametrize("name", NAMES)
def test_what_is_weighed_is_what_was_reckoned(name):
    plan = demo_plan(name)
    batch, lines = plan.batch, [line for load in plan.batch.loads for line in load.lines]
    assert sum(line.mass_kg for line in lines) == pytest.approx(sum(each.total_kg for each in batch.ingredients), rel=1e-12)
    brought_kg = max(-plan.mix.stone_water_kg, 0.0)  # by wet stone, held out of the mixing water until it comes
    mortar_kg = sum(line.mass_kg for line in lines if line.stage == "mix") + batch.back_to_face_kg
    assert mortar_kg <= batch.mortar_kg + 1e-9 and (mortar_kg == pytest.approx(batch.mortar_kg, rel=1e-12)) is (brought_kg == 0)
    water = [line.mass_kg for line in lines if line.kind in ("water", "ice") and line.ingredient != "water for the stone"]
    assert sum(water) == pytest.approx(batch.ingredient("water").total_kg, rel=1e-9)
    piece_kg = plan.layers.face_m3 * plan.mix.mortar_density_kg_m3 + plan.layers.core_m3 * plan.mix.base_density_kg_m3
    assert plan.handling.lift.mass_kg == pytest.approx(piece_kg, rel=1e-12)
