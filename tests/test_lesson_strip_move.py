"""Lesson 06: its sums by hand, its block at both ends of every slider, open data, supports, strands."""

from pathlib import Path

import numpy as np
import pandas as pd
import pytest
from working_eval import evaluate

from shop_calc import units
from shop_calc.lesson.blocks import Block, slider
from shop_calc.lesson.draw import numbers_for
from shop_calc.lesson.moves import another_night, open_mixes, standing, strands, strip_move
from shop_calc.lesson.moves import strip_move_sums as sums
from shop_calc.lesson.pictures.carry_ways import CarryWays
from shop_calc.lesson.pictures.open_mixes import StrengthOfMixes
from shop_calc.lesson.questions import strip_move_support
from shop_calc.lesson.said import Said
from shop_calc.trade.after.carrying import FALL_LINE
from shop_calc.trade.after.handling import plan_handling
from shop_calc.trade.jobs.job import demo_job, read_job
from shop_calc.trade.plan import make_plan

OPEN = Path(__file__).parents[1] / "data" / "open"
PSI = 6894.757293168361
NIGHT_C = units.convert(62.0, "F", "C")


@pytest.fixture(scope="module")
def plan():
    return make_plan(read_job(demo_job("garden_bench_top")))


def test_the_pull_of_the_bench_top_by_hand(plan):
    cubic_inch = units.convert(plan.handling.density_kg_m3, "kg/m3", "lb/ft3") / 1728
    by_hand = {"ends": 0.75 * cubic_inch * 60**2 / 1.5, "fifth": 0.1287 * cubic_inch * 60**2 / 1.5,
               "edge": 0.75 * cubic_inch * 60**2 / 15}  # fmt: skip
    for key, psi in by_hand.items():
        assert plan.handling.carry(key).stress_pa / PSI == pytest.approx(psi, rel=5e-4)
        assert plan.handling.carry(key).needed_strength_pa / PSI == pytest.approx((3 * psi / 7.5) ** 2, rel=1e-3)


def test_the_rule_of_a_quarter_hour_lost_in_ten_degrees_is_near_the_package(plan):
    day, night = (1.8 * strip_move.mean_temp_c(plan, *hours) + 32 for hours in ((0, 12), (12, 24)))
    by_hand = 12 * 0.75 ** ((73.4 - day) / 10) + 12 * 0.75 ** ((73.4 - night) / 10)
    assert by_hand == pytest.approx(plan.handling.morning.aci_age_h, rel=0.02)


def test_the_table_of_ways_never_names_on_edge_without_the_fall_line(plan):
    rows = strip_move.carry_table(plan).rows
    assert [row[-1] for row in rows] == [*["from Tue 08:00"] * 3, "not in 28 days"]
    assert all(FALL_LINE in row[0] for row in rows if "edge" in row[0].lower())


def test_the_first_days_start_at_final_set_and_stop_at_what_is_counted(plan):
    picture = strip_move.first_days(plan, "A top")
    hours, aci = picture.aci.get_data()
    hard = np.isfinite(aci)
    assert hours[hard][0] == pytest.approx(plan.handling.hardening.final_set_h, abs=0.25)
    assert picture.dot.get_ydata()[0] == pytest.approx(plan.handling.morning.low_pa)
    assert np.all(aci[hard] < plan.handling.strength.counted_pa)


# ---- the block


def test_the_block_starts_as_the_plan_has_it(plan):
    counted = plan.handling.strength.counted_pa
    moved = another_night.mover(plan)(60 * 0.0254, 1.5 * 0.0254, NIGHT_C, counted)
    assert moved.aci_age_h == pytest.approx(plan.handling.morning.aci_age_h, rel=1e-9)
    for ours, theirs in zip(moved.carries, plan.handling.carries, strict=True):
        assert ours.stress_pa == pytest.approx(theirs.stress_pa, rel=1e-9)
        assert ours.earliest_h == pytest.approx(theirs.earliest_h) if theirs.earliest_h else ours.earliest_h is None
    assert moved.lift.index_ratio == pytest.approx(plan.handling.lift.index_ratio)


def test_a_tested_strength_frees_the_ends_on_the_day_that_the_plan_says(plan):
    model, tested = another_night.mover(plan), 5000 * PSI
    moved = model(60 * 0.0254, 1.5 * 0.0254, NIGHT_C, tested)
    whole = plan_handling(plan.day, plan.cure, plan.piece, plan.layers, plan.mix, strength_28d_pa=tested)
    assert moved.carries[-1].earliest_h == pytest.approx(whole.carry("ends").earliest_h)
    assert "after 9.7 days" in another_night.moved_words(plan.day)(moved)


def test_half_as_thick_doubles_the_flat_pull_and_leaves_the_edge(plan):
    model = another_night.mover(plan)
    thick, thin = (
        {way.key: way for way in model(1.5, t, NIGHT_C, 24e6).carries} for t in (0.0381, 0.01905)
    )
    for key, factor in (("ends", 2.0), ("fifth", 2.0), ("edge", 1.0)):
        assert thin[key].stress_pa / thick[key].stress_pa == pytest.approx(factor)
        assert thin[key].needed_strength_pa / thick[key].needed_strength_pa == pytest.approx(factor**2)


def test_a_colder_night_leaves_less_and_a_later_move(plan):
    model = another_night.mover(plan)
    cold, mild, warm = (model(96 * 0.0254, 0.0381, night_c, 3500 * PSI) for night_c in (4.5, NIGHT_C, 26.0))
    assert cold.morning_pa < mild.morning_pa < warm.morning_pa
    when = [next(way.earliest_h for way in moved.carries if way.key == "fifth") for moved in (cold, mild, warm)]
    assert when == sorted(when, reverse=True) and when[0] - when[1] > 3.0


def test_the_night_ends_with_the_morning(plan):
    cold = another_night.night_hardening(plan, 5.0)
    morning = plan.cure.until_h
    night = (cold.time_h > 14.0) & (cold.time_h < morning - 1e-6)
    assert cold.temp_c[night].max() < 12.0
    later = np.interp(morning + 24.0, cold.time_h, cold.temp_c)
    assert later == pytest.approx(NIGHT_C, abs=0.1)  # the planned air holds again


def test_the_block_answers_at_both_ends_of_every_slider(plan):
    block = Block(
        another_night.mover(plan), another_night.moved_words(plan.day),
        [slider("length_m", label="Length", value=60, low=24, high=96, unit="in"),
         slider("thickness_m", label="Thickness", value=1.5, low=0.75, high=3, unit="in", step_us=0.125),
         slider("strength_28_pa", label="Strength at 28 days", value=3500, low=2000, high=8000, unit="psi"),
         slider("night_c", label="Air of the first night", value=62, low=40, high=80, unit="F")],
        picture=another_night.moving_ways(plan, "A top"),
    )  # fmt: skip
    for key, row in block.rows.items():
        for end in row.ends:
            block.set(**{key: end})
            assert block.text.startswith("Flat by the ends:") and FALL_LINE in block.alt
        block.reset()
    block.set(length_m=96 * 0.0254, thickness_m=0.75 * 0.0254)
    assert "which no such concrete has" in block.text


def test_words_keep_to_one_system(plan):
    moved = another_night.mover(plan)(1.2, 0.03, 10.0, 24e6)
    us, si = (another_night.moved_words(plan.day)(moved, system) for system in ("us", "si"))
    assert "psi" in us and "MPa" not in us and "°C" not in us and " kg" not in us
    assert "psi" not in si and "°F" not in si and " lb" not in si


# ---- supports


def test_the_seat_by_hand(plan):
    span_in = plan.handling.legs[0].size_m / 0.0254
    person = 1.5 * 500 * span_in / (15 * 1.5**2)
    assert plan.handling.legs[0].people_pa / PSI == pytest.approx(person, rel=1e-6)
    limit = 7.5 * 3500**0.5 / 1.5
    own = 0.75 * units.convert(plan.handling.density_kg_m3, "kg/m3", "lb/ft3") / 1728 * span_in**2 / 1.5
    assert standing.stand_table(plan).rows[0][-1] == f"no: {(person + own) / limit:.2f} times what it may"


def test_no_safe_span_is_ever_given(plan):
    words = repr(standing.stand_table(plan)).lower()
    assert "safe" not in words and "allowed span" not in words


def test_a_counter_is_judged_by_what_carries_its_edges(plan):
    rows = standing.counter_table(plan).rows
    assert [row[-1].split(",")[0] for row in rows] == ["kneel slowly", "nobody sits", "nobody sits"]
    # leaning, kneeling, dropping: 100, 325, 500 lb on the same spot, so that the steps between them are as the loads
    for row in rows:
        lean, kneel, drop = (float(cell.split()[0]) for cell in row[1:4])
        assert (drop - kneel) / (kneel - lean) == pytest.approx((500 - 325) / (325 - 100), rel=0.03)
    # a bar of 10 in by hand: 6 325 8/(10 1.5^2), and 3 rho L^2/t of its own
    own = 3 * units.convert(plan.handling.density_kg_m3, "kg/m3", "lb/ft3") / 1728 * 100 / 1.5
    assert float(rows[2][2].split()[0]) == pytest.approx(6 * 325 * 8 / 22.5 + own, rel=2e-3)


def test_a_strip_by_a_sink_by_hand():
    # 29 1/2 in long, 4 1/4 in wide, 2 1/2 in thick at 150 lb/ft³, 100 lb at the middle
    psi = 0.75 * 150 / 1728 * 29.5**2 / 2.5 + 1.5 * 100 * 29.5 / (4.25 * 2.5**2)
    stress = standing.rail_stress_pa(29.5 * 0.0254, 4.25 * 0.0254, 2.5 * 0.0254, units.convert(150, "lb/ft3", "kg/m3"))
    assert stress / PSI == pytest.approx(psi, rel=1e-6)


# ---- open data


def test_the_ratios_of_the_public_mixes_agree_with_a_table_by_other_means():
    mixes = pd.read_csv(OPEN / "concrete_1030.csv")
    plain = mixes[(mixes.blast_furnace_slag_kg_m3 == 0) & (mixes.fly_ash_kg_m3 == 0)
                  & (mixes.superplasticizer_kg_m3 == 0)]  # fmt: skip
    names = [name for name in mixes.columns if name not in ("age_d", "compressive_strength_mpa")]
    by_age = plain.pivot_table(index=names, columns="age_d", values="compressive_strength_mpa")
    ages, ratios = open_mixes.measured_ratios()
    for age in (3, 7, 14, 90):
        expected = (by_age[age] / by_age[28]).dropna()
        assert np.sort(ratios[ages == age]) == pytest.approx(np.sort(expected), rel=1e-12)


def test_the_picture_of_the_mixes_says_what_the_data_say():
    shown = open_mixes.open_mixes()
    three, seven = (shown.age_d == age for age in (3, 7))
    assert shown.aci_off[three].mean() > 0 > shown.en_off[three].mean()  # the caption of the lesson
    assert shown.aci_off[seven].mean() < 0 and shown.en_off[seven].mean() < 0
    assert np.std(np.log1p(shown.water_off)) == pytest.approx(0.145, abs=0.001)  # scatter of the fit
    assert "79 of them of portland alone" in StrengthOfMixes(shown).alt


def test_the_early_table_holds_the_measured_rows_and_the_prose_beside_it_is_true():
    rows = {row[0]: [float(cell.split()[0]) for cell in row[1:]] for row in open_mixes.early_table().rows}
    series = pd.read_csv(OPEN / "strength_slag_series.csv").set_index(["slag_fraction", "age_d"])
    for slag, name in ((0.0, "no slag: 1 day"), (0.5, "50 % slag: 1 day")):
        one, last = (series.loc[(slag, age)].compressive_strength_mpa for age in (1, 28))
        assert rows[name][0] == round(100 * one / last)
    assert rows["no slag: 1 day"][0] > 2 * min(rows["no slag: 1 day"][1:])
    assert rows["50 % slag: 1 day"][0] < min(rows["50 % slag: 1 day"][1:])
    cold, hot = rows["kept at 12 °C: 3 days"], rows["kept at 40 °C: 3 days"]
    assert cold[0] > max(cold[1:]) and hot[0] < min(hot[1:])


# ---- strands


def test_half_the_gap_carries_twice_the_load():
    # moment of a load at the middle is P L / 4: the same at the same strength
    assert strands.strand_band("8 in", "4 in")[1] == 2.0
    assert strands.strand_band("30 cm", "10 cm")[1] == pytest.approx(3.0)


def test_strands_are_read_in_any_unit_and_their_scatter_is_said():
    shown = strands.strands([70, "80 g", "2.5 oz"], ["0.15 kg", 160])
    assert "inside the band" in shown.alt and shown.caption.startswith("Strongest over weakest: 1.14")
    assert "Nothing measured yet" in strands.strands(caption="Look.").alt
    assert "Nothing measured yet" in strands.strands([70, ...], []).alt
    assert "above the band" in strands.strands([50], [200]).alt


@pytest.mark.parametrize("typed", [["many"], [0], [-5], ["5 psi"], [{"a": 1}], "a lot", 3j])
def test_whatever_is_typed_the_lesson_goes_on(typed):
    assert isinstance(strands.strands([70], typed), Said)


@pytest.mark.parametrize("gaps", [("3 in", "6 in"), ("wide", "3 in"), ("6 in", "0 in")])
def test_gaps_that_cannot_be_are_refused(gaps):
    assert isinstance(strands.strands([70], [150], *gaps), Said)


# ---- questions


def test_answers_of_questions_by_plain_arithmetic():
    density = units.convert(150, "lb/ft3", "kg/m3")
    assert sums.plank_pa(96 * 0.0254, 25 * 0.0254, 0.75 * 0.0254, density) / PSI == pytest.approx(800, rel=1e-6)
    assert sums.patio_pa(60 * 0.0254, 0.75 * 0.0254, density) / PSI == pytest.approx((312.5 * 3 / 7.5) ** 2, rel=1e-6)
    assert sums.degree_days(28 * 24, 15, -11) == 28 * 26
    assert sums.degree_hours(24, 10) == pytest.approx(480)
    assert sums.sitter_pa(1.016, 0.381, 0.0381) / PSI == pytest.approx(6 * 500 * 40 / 4 / (15 * 1.5**2), rel=1e-6)


@pytest.mark.parametrize("question", [q for q in strip_move_support.QUESTIONS if q.working], ids=lambda q: q.id)
def test_every_line_of_the_working_can_be_worked_out_again(question):
    for step in question.working(**numbers_for(question, "lab 3")[1]):
        assert evaluate(step.formula, dict((s, v) for s, v, _ in step.inputs)) == pytest.approx(step.value, rel=1e-9)


def test_a_way_drawn_is_the_way_of_the_plan(plan):
    picture = strip_move.ways_of(plan, "A top")
    assert isinstance(picture, CarryWays)
    assert [parts["own"].get_width() for parts in picture.lanes] == [way.stress_pa for way in plan.handling.carries]
