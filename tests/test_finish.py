"""Polishing and sealing: grits, depth and fibre, ages, moisture, amounts, and the caution at every step."""

import copy
from itertools import pairwise

import pytest
from demo_plans import BENCH, NAMES, bench, demo_plan, demo_plans
from working_eval import check_working

from shop_calc import defaults
from shop_calc.trade.after import finish_words, polish_seal
from shop_calc.trade.after.finish import FinishChoice, faced_area_m2
from shop_calc.trade.jobs.job import check_job
from shop_calc.trade.jobs.job_fields import SEALERS as SEALER_ENTRIES
from shop_calc.trade.plan import make_plan
from shop_calc.trade.report import report
from shop_calc.trade.shape.outline import place, rectangle
from shop_calc.trade.shape.piece import Cutout, DropEdge, build_piece

IN, FT, GAL = 0.0254, 0.3048, 231 * 0.0254**3


@pytest.fixture(params=NAMES)
def plan(request):
    return demo_plan(request.param)


@pytest.mark.parametrize(("first", "last", "count"), [(50, 3000, 7), (200, 800, 3), (400, 400, 1), (60, 1500, 6)])
def test_grits_roughly_double(first, last, count):
    grits = polish_seal.grit_steps(first, last)
    assert len(grits) == count
    assert all(1.8 <= fine / coarse <= 2.05 for coarse, fine in pairwise(grits))


def test_grits_the_wrong_way_round_are_refused():
    with pytest.raises(ValueError, match="last grit"):
        polish_seal.grit_steps(800, 200)
    with pytest.raises(ValueError, match="30"):
        polish_seal.grit_steps(5, 200)
    with pytest.raises(ValueError, match="last grit"):
        bench(finish__first_grit=800, finish__last_grit=100)


@pytest.mark.parametrize(
    ("depth_in", "shows"),
    [(0, "safe"), (1 / 128, "safe"), (1 / 64, "safe"), (1 / 50, "some"), (1 / 32, "some"), (1 / 24, "worst"),
     (1 / 16, "worst"), (1 / 10, "hidden")],
)  # fmt: skip
def test_fibre_shows_most_between_a_thirty_second_and_a_sixteenth(depth_in, shows):
    # Common practice: under 1/64 in safe, 1/32-1/16 in worst, deeper hides it.
    assert polish_seal.fibre_showing(depth_in * IN) == shows
    assert polish_seal.fibre_showing(depth_in * IN, has_fibre=False) == "none"


def test_depth_against_fibre_is_warned_of_only_where_there_is_fibre():
    fuzzy = bench(finish__polish_depth="3/64 in").finish
    assert fuzzy.fibre == "worst"
    warned = [line for line in fuzzy.advice if line.where == "polish"]
    assert any("PVA" in line.text and line.level == "act" for line in warned)
    assert not [line for line in demo_plan("garden_bench_top").finish.advice if line.where == "polish"]
    bare = bench(mix__recipe={"w_cm": 0.35, "air": "3 %", "parts": {"portland cement": 100,
                 "fine silica sand": {"amount": 120, "state": "oven-dry"}}},
                 finish__polish_depth="3/64 in").finish  # fmt: skip
    assert bare.fibre == "none"
    assert not [line for line in bare.advice if "PVA" in line.text]


def test_grinding_through_the_face_is_said():
    through = bench(finish__polish_depth="1/4 in").finish
    assert any("goes through the face" in line.text for line in through.advice)
    half = bench(finish__polish_depth="3/16 in").finish
    assert any("thin spots" in line.text for line in half.advice)
    with pytest.raises(ValueError, match="polish_depth"):
        bench(finish__polish_depth="1 in")


def test_polishing_waits_for_its_strength_and_for_the_morning(plan):
    finish, handling = plan.finish, plan.handling
    needed = finish.polish_strength_pa / handling.strength.likely_pa
    assert finish.polish_from_h >= plan.cure.until_h
    assert handling.hardening.ratio_at(finish.polish_from_h + 0.01) >= needed * (1 - 2e-3)
    if finish.polish_from_h > plan.cure.until_h + 0.5:
        assert handling.hardening.ratio_at(finish.polish_from_h - 0.5) < needed


def test_coarse_grinding_comes_later_than_fine_pads_and_a_cold_night_later_still():
    fine, coarse = bench(), bench(finish__first_grit=50)
    assert coarse.finish.grits[0] == 50 and coarse.finish.polish_strength_pa > fine.finish.polish_strength_pa
    assert coarse.finish.polish_from_h > fine.finish.polish_from_h
    entries = copy.deepcopy(BENCH)
    entries["room"][1]["air"] = "45 F"
    assert make_plan(check_job(entries)).finish.polish_from_h > fine.finish.polish_from_h


def test_nothing_to_polish_has_no_grits_and_no_time():
    plain = bench(finish__polish_depth="0 in").finish
    assert plain.grits == () and plain.polish_from_h is None
    assert [step.key for step in plain.steps] == ["move", "dry", "check", "seal"]


@pytest.mark.parametrize("kind", SEALER_ENTRIES)
def test_each_kind_of_sealer_has_its_age_and_its_words(kind):
    assert finish_words.SEALER_CHOICES == SEALER_ENTRIES
    plan = bench(finish__sealer=kind)
    finish = plan.finish
    if kind == "none":
        assert finish.seal_from_h is None and finish.sealer_m3 == 0 and finish.coverage_m2_m3 is None
        assert all(step.key not in ("seal", "check") for step in finish.steps)
        return
    low, usual, high = defaults.si_band(finish_words.SEALERS[kind].row)
    assert (finish.seal_low_h, finish.seal_from_h, finish.seal_high_h) == (low, usual, high)
    assert finish.steps[-1].key == "seal" and finish.steps[-1].from_h >= finish.seal_from_h
    assert finish.steps[-1].safety
    assert any(f"{low / 24:.0f} to {high / 24:.0f} days" in line.text for line in finish.advice)


def test_film_names_both_ages_and_damp_names_haze():
    # 2-4 d quoted for tops of low water content, 28 d for film on slabs.
    film = bench(finish__sealer="film").finish
    said = " ".join(line.text + " " + line.reason for line in film.advice)
    assert "4 to 28 days" in said and "28 days is no law" in said and "dry to the touch is not dry" in said
    assert "White haze" in said


def test_the_taped_sheet_goes_on_its_hours_before_sealing():
    # ASTM D4263: 4 mil, about 18 in square, at least 16 h.
    finish = demo_plan("garden_bench_top").finish
    steps = {step.key: step for step in finish.steps}
    assert finish.sheet_h == 16
    assert steps["check"].from_h == pytest.approx(steps["seal"].from_h - 16)
    assert "4 mil" in steps["check"].work and "18 in" in steps["check"].work
    assert any("as wide as the piece" in line.text for line in finish.advice)  # the bench is 15 in wide
    wide = demo_plan("sink_top_hot_day").finish
    assert not any("as wide as the piece" in line.text for line in wide.advice)


def test_constant_mass():
    assert polish_seal.dry_enough(50.0, 49.96, 24.0)
    assert not polish_seal.dry_enough(50.0, 49.90, 24.0)
    assert polish_seal.dry_enough(50.0, 49.91, 48.0)
    assert polish_seal.dry_enough(50.0, 50.1, 24.0)  # it drank: the room is damper than the piece
    with pytest.raises(ValueError, match="between the weighings"):
        polish_seal.dry_enough(50.0, 49.9, 2.0)


def test_coverage_of_a_film_in_us_units():
    # 1604.17 * solids / mil: 25 % and 1.5 mil give 267 ft2 a gallon.
    plan = bench(finish__sealer="film", finish__solids="25 %", finish__film="1.5 mil", finish__coats=2)
    assert plan.finish.coverage_m2_m3 / (FT**2 / GAL) == pytest.approx(1604.17 * 0.25 / 1.5, rel=1e-4)
    label = bench(finish__sealer="film", finish__coverage="200 ft2/gal").finish
    assert label.coverage_m2_m3 / (FT**2 / GAL) == pytest.approx(200)


def test_amount_of_sealer_by_hand():
    plan = bench(finish__coverage="160 ft2/gal", finish__coats=2)
    # 5 ft x 15 in top, 150 in of 1.5 in edge: 6.25 + 1.5625 ft2; underside 6.25 ft2 more; 10 % waste.
    gallons = (6.25 + 1.5625) / 160 * 2 * 1.1
    assert plan.finish.area_m2 / FT**2 == pytest.approx(7.8125)
    assert plan.finish.sealer_m3 / GAL == pytest.approx(gallons)
    assert plan.finish.sealer_both_m3 / GAL == pytest.approx(gallons * 14.0625 / 7.8125)


def test_faced_area_counts_openings_and_dropped_edges():
    sink = Cutout(place(rectangle(0.5, 0.3), (0.6, 0.3)), True, "sink")
    piece = build_piece(rectangle(2.0, 0.6), 0.04, {"front", "left"}, [sink], DropEdge("front", 0.08, 0.05))
    expected = 2.0 * 0.6 - 0.5 * 0.3 + 2.0 * 0.08 + 0.6 * 0.04 + 1.6 * 0.04
    expected += 0.05 * 0.04  # the left end of the return is seen too
    assert faced_area_m2(piece) == pytest.approx(expected)


def test_every_dangerous_step_has_its_caution(plan):
    steps = {step.key: step for step in plan.finish.steps}
    polish = steps["polish"].safety
    assert "50 µg/m³" in polish and "25" in polish and "respirator" in polish  # 29 CFR 1926.1153
    assert "GFCI" in polish and "hearing" in polish
    assert "caustic" in polish and "burns come late" in polish
    assert "leaning" in steps["move"].safety
    assert "fumes" in steps["seal"].safety
    assert all(step.cue for step in plan.finish.steps)


def test_caustic_words_stand_at_mixing_stripping_and_wet_polishing():
    # A burn came from wet grinding the day after stripping; another from gloves.
    day = demo_plan("garden_bench_top").day
    assert "burns skin" in day.stage("base").words.safety and "burns skin" in day.stage("strip").words.safety
    assert finish_words.SLURRY in demo_plan("garden_bench_top").finish.steps[1].safety


def test_oil_rags_and_dry_dust_have_their_own_words():
    assert "Rags" in bench(finish__sealer="oil").finish.steps[-1].safety
    dry = bench(finish__polish="dry").finish
    assert any("35 to 55" in line.reason and "Better polish wet" in line.text for line in dry.advice)
    assert "caustic" not in next(step for step in dry.steps if step.key == "polish").safety


def test_etching_is_told_from_staining(plan):
    assert any("400 and then 800" in line.text for line in plan.finish.advice)


def test_times_of_the_steps_never_run_backwards_but_for_the_sheet():
    for plan in demo_plans():
        hours = [step.from_h for step in plan.finish.steps if step.key != "check"]
        assert hours == sorted(hours)


def test_what_cannot_be_is_refused():
    with pytest.raises(ValueError, match="sealer"):
        FinishChoice(sealer="varnish")
    with pytest.raises(ValueError, match=r"finish\.sealer"):
        bench(finish__sealer="varnish")
    with pytest.raises(ValueError, match=r"finish\.coats"):
        bench(finish__coats=50)


def test_the_working_gives_its_own_values(plan):
    assert check_working(plan.finish.working) >= 2
    assert report(plan)
