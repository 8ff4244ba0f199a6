"""Re-planning from looks at the bench: against many more days, in its directions, and with looks that cannot be."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from shop_calc import defaults
from shop_calc.trade.timeline.cloud import cloud_at, day_cloud, deviations
from shop_calc.trade.timeline.day import DayInputs, plan_day, sample_day
from shop_calc.trade.timeline.look import Look, look_h, look_words
from shop_calc.trade.timeline.look_fit import gather
from shop_calc.trade.timeline.look_likelihood import log_between, log_readings
from shop_calc.trade.timeline.look_weights import weigh_days
from shop_calc.trade.timeline.looks import not_yet, replan, rod_reading, seen, thumb_print
from shop_calc.trade.timeline.rod import (
    print_resistance_pa,
    rod_for_m,
    rod_mass_kg,
    rod_resistance_pa,
    rod_steps,
    rod_table,
)
from shop_calc.trade.timeline.room import steady_room
from shop_calc.trade.timeline.ruler import ruler
from shop_calc.trade.timeline.weighted_days import quantile

PSI = 6894.757293168361
START = datetime(2026, 5, 4, 8)
MILD = DayInputs(START, steady_room(21.0, 0.50, 0.0), 16.0, 0.0381, 0.03175, 0.58)
DAY = plan_day(MILD)
PAIR = (not_yet(2.25, "strip"), seen(2.75, "strip"))


@pytest.fixture(scope="module")
def many():
    """Twenty thousand days drawn at random: what the five hundred stand for."""
    rows = np.random.default_rng(7).normal(size=(10, 20_000))
    return sample_day(MILD, cloud_at(rows))


def windows(result):
    return np.array(
        [
            (stage.look_from_h, stage.likely_from_h, stage.likely_to_h, stage.over_by_h)
            for stage in (result.day.stage(key) for key in ("first_steel", "last_steel"))
        ]
    )


@pytest.mark.parametrize(
    "looks",
    [
        PAIR,
        (rod_reading(2.5, 25 * PSI),),
        (thumb_print(2.5, 0.00635),),
        (*PAIR, rod_reading(2.75, 30 * PSI)),
        (not_yet(3.25, "strip"), seen(3.75, "strip")),
        tuple(rod_reading(hour, 500 * PSI * (hour / 4.2) ** 7) for hour in (2.25, 2.5, 2.75, 3.0, 3.25)),
    ],
)
def test_five_hundred_days_say_what_twenty_thousand_say(many, looks):
    # Same Bayes' rule by brute force. Ends of a band of 500 weighted days wander by some minutes.
    evidence = gather(looks, tuple(look_h(look, START) for look in looks))
    ours, all_days = weigh_days(DAY.samples, evidence), weigh_days(many, evidence)
    assert not all_days.renewed
    far = 4.0 if ours.renewed else 0.0  # days drawn anew have a wider prior, which the twenty thousand have not
    for key in ("first_steel", "last_steel"):
        for share, minutes in ((0.05, 4.0), (0.5, 3.0), (0.95, 5.0)):
            want = quantile(many.open_h[key], all_days.weight[0], share)
            have = quantile(ours.samples.open_h[key], ours.weight[0], share)
            assert have == pytest.approx(want, abs=(minutes + far) / 60)


def test_each_look_narrows_first_steel_on_the_reference_day():
    # What is true of this model, not a target: 91 min before, about 45 after a pair of looks half an hour apart,
    # about 25 after one rod reading, about 20 after both.
    before = replan(DAY, ()).band_h("first_steel") * 60
    pair = replan(DAY, PAIR).band_h("first_steel") * 60
    rod = replan(DAY, (rod_reading(2.5, 25 * PSI),)).band_h("first_steel") * 60
    both = replan(DAY, (*PAIR, rod_reading(2.75, 30 * PSI))).band_h("first_steel") * 60
    assert before == pytest.approx(91, abs=6)
    assert pair == pytest.approx(45, abs=6)
    assert rod == pytest.approx(24, abs=5)
    assert both == pytest.approx(20, abs=5)
    assert before > pair > rod > both


def test_more_rod_readings_never_take_away_the_error_they_share():
    hours = np.linspace(2.25, 3.0, 16)
    many_readings = replan(DAY, [rod_reading(hour, 500 * PSI * (hour / 4.2) ** 7) for hour in hours])
    # Shared 0.15 in ln PR is 0.15/7 of three hours: 4 min, from 5 to 95 % about 13.
    assert many_readings.band_h("first_steel") * 60 > 9


def test_later_windows_follow_the_looks():
    early = replan(DAY, (not_yet(1.75, "strip"), seen(2.0, "strip")))
    late = replan(DAY, (not_yet(2.75, "strip"), seen(3.0, "strip")))
    for key in ("first_steel", "last_steel", "stop"):
        assert early.day.stage(key).likely_from_h < DAY.stage(key).likely_from_h < late.day.stage(key).likely_from_h
    stiffer, softer = (replan(DAY, (rod_reading(2.5, psi * PSI),)) for psi in (60, 15))
    assert (windows(stiffer) < windows(softer)).all()


def test_order_and_kind_of_time_do_not_matter():
    clock = (seen(START + timedelta(hours=2.75), "strip"), not_yet(START + timedelta(hours=2.25), "strip"))
    assert windows(replan(DAY, clock)) == pytest.approx(windows(replan(DAY, PAIR)))
    assert windows(replan(DAY.samples, PAIR)) == pytest.approx(windows(replan(DAY, PAIR)))


def test_all_looks_given_again_on_a_replanned_day_change_little():
    looks = (not_yet(3.75, "strip"), seen(4.25, "strip"))  # so late that new days are drawn
    once = replan(DAY, looks)
    assert windows(replan(once.day, looks)) == pytest.approx(windows(once), abs=0.12)


def test_no_stage_is_looked_for_before_the_look_that_did_not_find_it():
    result = replan(DAY, (not_yet(2.9, "first_steel"),))
    for key in ("first_steel", "last_steel", "stop"):
        assert result.day.stage(key).look_from_h >= 2.9
    assert replan(DAY, (seen(2.5, "strip"),)).day.stage("first_steel").look_from_h >= 2.5
    for stage in result.day.stages:
        assert stage.look_from_h <= stage.likely_from_h <= stage.likely_to_h <= stage.over_by_h


def test_the_early_edge_counts_what_the_looks_show_of_evaporation_only_once():
    # On a dry day the plan keeps its early edge well before the middle, for it leaves evaporation out. A rod reading
    # shows how far the mortar is, evaporation and all: both ways of reckoning must then nearly meet.
    dry = plan_day(replace(MILD, room=steady_room(30.0, 0.15, 4.0)))
    hour = dry.stage("strip").likely_from_h
    result = replan(dry, (rod_reading(hour, 20 * PSI),))
    before, after = dry.stage("first_steel"), result.day.stage("first_steel")
    assert after.likely_from_h - after.look_from_h < 0.5 * (before.likely_from_h - before.look_from_h)


@pytest.mark.parametrize(("hours", "scale"), [((3.75, 4.25), 1.6), ((5.75, 6.25), 2.4), ((11.75, 12.25), 4.8)])
def test_a_mortar_far_slower_than_planned_moves_the_whole_day(hours, scale):
    result = replan(DAY, (not_yet(hours[0], "strip"), seen(hours[1], "strip")))
    assert result.effective_days >= 40
    assert any("far slower" in line.text for line in result.advice)
    # First steel keeps its distance to the strip, in proportion (60 psi over 10 psi, exponent near 7).
    middle = sum(hours) / 2
    assert middle < result.day.stage("first_steel").likely_from_h < 1.45 * middle
    assert result.day.stage("first_steel").likely_from_h > scale * 0.9 * DAY.stage("strip").likely_from_h


def test_a_mortar_far_faster_than_planned_is_said():
    result = replan(DAY, (not_yet(0.75, "strip"), seen(1.25, "strip")))
    assert any("far faster" in line.text for line in result.advice)
    assert result.day.stage("first_steel").likely_from_h < 2.2


@pytest.mark.parametrize(
    ("looks", "pairs"),
    [
        ((seen(2.25, "strip"), not_yet(2.75, "strip")), ((0, 1),)),
        ((not_yet(2.75, "strip"), seen(2.25, "strip")), ((1, 0),)),
        ((seen(2.5, "strip"), not_yet(2.5, "strip")), ((0, 1),)),
        ((seen(2.0, "first_steel"), not_yet(2.5, "strip", "face")), ((0, 1),)),
        ((rod_reading(2.0, 100 * PSI), rod_reading(2.5, 30 * PSI)), ((0, 1),)),
        ((rod_reading(2.0, 200 * PSI), not_yet(2.5, "first_steel")), ((0, 1),)),
        ((thumb_print(2.0, 0.001), thumb_print(2.5, 0.02)), ((0, 1),)),
        ((not_yet(2.25, "strip"), seen(2.75, "strip"), not_yet(3.0, "strip")), ((1, 2),)),
    ],
)
def test_two_looks_that_cannot_both_be_are_named_and_left_out(looks, pairs):
    result = replan(DAY, looks)
    assert result.clashes == tuple((looks[a], looks[b]) for a, b in pairs)
    named = next(line for line in result.advice if "cannot both be" in line.text)
    for number in pairs[0]:
        assert look_words(looks[number], START) in named.text
    assert set(result.left_out) == {look for pair in result.clashes for look in pair}
    rest = [look for look in looks if look not in result.left_out]
    assert windows(result) == pytest.approx(windows(replan(DAY, rest)))


def test_a_look_that_contradicts_several_others_goes_alone():
    wrong = seen(1.5, "last_steel")
    result = replan(DAY, (wrong, *PAIR, not_yet(2.75, "first_steel"), rod_reading(2.8, 30 * PSI)))
    assert len(result.clashes) >= 2
    assert result.left_out == (wrong,)
    assert any("contradicts others, too" in line.reason for line in result.advice)


@pytest.mark.parametrize(
    "looks",
    [
        (rod_reading(2.5, 30 * PSI), rod_reading(2.6, 25 * PSI)),
        (rod_reading(2.5, 60 * PSI, "base"), rod_reading(2.6, 12 * PSI, "face")),
        (not_yet(2.5, "strip"), seen(2.5, "face")),
        (seen(2.5, "strip"), not_yet(2.6, "first_steel")),
    ],
)
def test_scatter_and_other_layers_are_no_contradiction(looks):
    assert replan(DAY, looks).clashes == ()


def test_looks_that_hardly_fit_are_named_and_the_windows_kept_wide():
    looks = (not_yet(2.5, "strip"), seen(2.51, "stop"))
    result = replan(DAY, looks)
    assert any("hardly fits" in line.text for line in result.advice)
    alone = replan(DAY, (seen(2.51, "stop"),))
    assert result.band_h("first_steel") > 0.3 * alone.band_h("first_steel")
    slip = replan(DAY, (*PAIR, rod_reading(2.9, 400 * PSI)))
    assert any("hardly fits" in line.text for line in slip.advice)


def test_soft_readings_only_say_not_yet():
    # The late clock must not be run back into the soft stage: 1 and 5 psi say the same.
    soft = [replan(DAY, (rod_reading(2.25, psi * PSI),)) for psi in (1, 5)]
    assert windows(soft[0]) == pytest.approx(windows(soft[1]))
    deep = [replan(DAY, (thumb_print(2.25, depth),)) for depth in (0.02, 0.035)]
    assert windows(deep[0]) == pytest.approx(windows(deep[1]))
    assert soft[0].day.stage("first_steel").likely_from_h > DAY.stage("first_steel").likely_from_h
    assert replan(DAY, (thumb_print(3.0, 0.0),)).day.stage("first_steel").likely_from_h < 3.0


def test_a_look_at_the_base_moves_the_face_but_not_the_set():
    result = replan(DAY, (not_yet(0.75, "face"), seen(1.0, "face")))
    assert result.day.stage("face").likely_from_h > DAY.stage("face").likely_from_h + 0.1
    before, after = (plan.stage("last_steel").likely_from_h for plan in (DAY, result.day))
    assert after == pytest.approx(before, abs=0.15)


def test_face_from_a_later_load_is_counted_from_its_own_water():
    later = plan_day(replace(MILD, base_loads_h=(0.0, 0.5), face_load_h=0.5))
    face = replan(later, (rod_reading(3.0, 25 * PSI, "face"),)).day.stage("first_steel").likely_from_h
    base = replan(later, (rod_reading(3.0, 25 * PSI, "base"),)).day.stage("first_steel").likely_from_h
    one = replan(DAY, (rod_reading(2.5, 25 * PSI),)).day.stage("first_steel").likely_from_h
    assert face == pytest.approx(one + 0.5, abs=0.05)
    assert base == pytest.approx(face + 0.5, abs=0.15)


def test_bands_of_its_own_for_the_base_give_it_a_clock_of_its_own():
    slow = replace(MILD, base_bands={"set_time_initial": (4.2, 4.6, 5.0), "set_exponent": (6.0, 7.0, 8.0)})
    day = plan_day(slow)
    assert day.stage("strip").likely_from_h > DAY.stage("strip").likely_from_h + 0.6  # the slower of both
    assert day.samples.open_h["first_steel"] == pytest.approx(DAY.samples.open_h["first_steel"], abs=1e-9)
    same = plan_day(replace(MILD, base_bands={"set_time_initial": defaults.si_band("set_time_initial")}))
    assert same.samples.open_h["strip"] == pytest.approx(DAY.samples.open_h["strip"], abs=1e-9)
    tightened = replan(day, (not_yet(3.0, "strip"), seen(3.4, "strip")))
    assert tightened.band_h("strip") < tightened.band_before_h("strip")


def test_places_in_the_bands_and_back():
    days = day_cloud()
    again = cloud_at(deviations(days))
    for name in ("initial_set_h", "exponent", "room_error_k", "free_water_kg_m2"):
        assert getattr(again, name) == pytest.approx(getattr(days, name))
    fixed = {"set_exponent": (7.0, 7.0, 7.0)}
    assert (deviations(day_cloud(fixed), fixed)[1] == 0).all()


def test_the_ruler_runs_forward_and_is_the_replanned_day():
    rows = ruler(DAY)
    assert len(rows) >= 4
    hours = np.array([(row.seen_h, row.look_from_h, row.likely_h, row.over_by_h) for row in rows])
    assert (np.diff(hours, axis=0) > 0).all()
    assert (np.diff(hours, axis=1) >= 0).all()
    at = rows[2].seen_h
    stage = replan(DAY, (not_yet(at - 0.5, "strip"), seen(at, "strip"))).day.stage("first_steel")
    assert rows[2].likely_h == stage.likely_from_h
    with pytest.raises(ValueError, match="must come after"):
        ruler(DAY, "first_steel", "strip")
    with pytest.raises(ValueError, match="must be of"):
        ruler(DAY, "float", "strip")


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (lambda: seen(2.0, "float"), "must be one with a cue"),
        (lambda: seen(-0.1, "strip"), "time of the look"),
        (lambda: seen(float("nan"), "strip"), "time of the look"),
        (lambda: seen(2.0, "strip", "middle"), "layer"),
        (lambda: rod_reading(2.0, None), "rod reading"),
        (lambda: thumb_print(2.0, -0.001), "thumb print"),
        (lambda: Look(2.0, "guess"), "look"),
        (lambda: seen(datetime(2026, 5, 4, 10, tzinfo=UTC), "strip"), "without a time zone"),
        (lambda: replan(DAY, (seen(datetime(2026, 5, 4, 7), "strip"),)), "after the first water"),
    ],
)
def test_impossible_looks_are_refused_in_shop_words(make, words):
    with pytest.raises(ValueError, match=words):
        make()


def test_probability_between_two_looks_holds_in_the_tails():
    from scipy.stats import norm

    for low, high in ((-1.0, 1.0), (-12.0, -11.0), (11.0, 12.0), (-0.5, 30.0)):
        straight = norm.cdf(high) - norm.cdf(low) if high < 5 else norm.sf(low) - norm.sf(high)
        assert log_between(low, high) == pytest.approx(np.log(straight), rel=1e-9)
    assert log_between(None, 1.0) == pytest.approx(norm.logcdf(1.0))
    assert log_between(1.0, None) == pytest.approx(norm.logsf(1.0))


def test_readings_with_a_shared_error_are_a_multivariate_normal():
    from scipy.stats import multivariate_normal

    difference, scatter = np.array([0.3, -0.1, 0.2]), np.array([0.2, 0.25, 0.2])
    covariance = np.diag(scatter**2) + 0.15**2
    both = multivariate_normal(cov=covariance)
    want = both.logpdf(difference) - both.logpdf(np.zeros(3))
    assert log_readings(difference, scatter, 0.15) == pytest.approx(want)


def test_the_rod_on_the_kitchen_scale():
    # Force over area: pi/4 (1/8 in)^2 at 500 psi is 6.136 lbf, 2.783 kg; pi/4 (1/4 in)^2 at 150 psi is 7.363 lbf.
    assert rod_mass_kg(500 * PSI) == pytest.approx(6.1359 * 0.45359237, rel=1e-4)
    assert rod_mass_kg(150 * PSI) == pytest.approx(7.3631 * 0.45359237, rel=1e-4)
    assert rod_for_m(150 * PSI) == 0.00635 and rod_for_m(151 * PSI) == 0.003175
    assert rod_resistance_pa(rod_mass_kg(80 * PSI), rod_for_m(80 * PSI)) == pytest.approx(80 * PSI)
    rows = {row.name: row for row in rod_table()}
    assert rows["last_steel_pr_high"].within_scale and not rows["stop_pr"].within_scale


def test_thumb_prints_agree_with_the_cues():
    # Cues: a 1/4 in print is 10 to 40 psi, "barely marks" 60 to 150 psi.
    assert print_resistance_pa(0.00635) == pytest.approx(np.sqrt(10 * 40) * PSI)
    low, high = print_resistance_pa(np.array([0.00635 / 3, 0.00635 / 7.5])) / PSI
    assert (low, high) == (pytest.approx(60), pytest.approx(150))
    assert defaults.get("print_scatter").value == pytest.approx(np.log(2) / 1.645, abs=0.005)


def test_the_steps_say_what_must_be_said():
    words = " ".join(step.do for step in rod_steps())
    for wanted in ("as deep as the piece", "same board", "no hole twice", "gloves"):
        assert wanted in words
