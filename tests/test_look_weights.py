"""How days are weighed: by hand on a few days, against the normal law where new days are drawn, and what is called poor."""

from dataclasses import replace
from datetime import datetime
from types import SimpleNamespace

import numpy as np
import pytest
from scipy.stats import norm

from shop_calc.trade.timeline import look_weights
from shop_calc.trade.timeline.cloud import SAMPLED, cloud_at, day_cloud, deviations
from shop_calc.trade.timeline.day import DayInputs, sample_day
from shop_calc.trade.timeline.look_fit import gather
from shop_calc.trade.timeline.look_likelihood import log_between
from shop_calc.trade.timeline.looks import FAR_SHIFT, not_yet, rod_reading, seen
from shop_calc.trade.timeline.room import steady_room

PSI = 6894.757293168361
MILD = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.50, 0.0), 16.0, 0.0381, 0.03175, 0.58)
PLACE = {name: number for number, name in enumerate(SAMPLED)}


@pytest.fixture(scope="module")
def samples():
    return sample_day(MILD)


def evidence_of(*looks):
    return gather(list(looks), [look.at for look in looks])


def test_weights_are_shares_however_small_or_large_their_logarithms():
    for level in (0.0, 900.0, -900.0):  # exp(900) is beyond every number
        assert look_weights._normal(np.log([1.0, 3.0]) + level) == pytest.approx([0.25, 0.75])


def test_effective_days_are_the_equal_days_that_would_be_worth_as_much():
    # one over the sum of squares, by hand
    for weight, days in (([0.25] * 4, 4.0), ([0.5, 0.5, 0.0, 0.0], 2.0), ([0.8, 0.2], 1 / 0.68), ([1.0, 0.0], 1.0)):
        assert look_weights._effective(np.array([weight])) == pytest.approx(days)
    assert look_weights._effective(np.array([[0.5, 0.5], [1.0, 0.0]])) == 1.0  # the worse of the two rows


def test_looks_are_softened_just_so_far_that_the_wanted_days_are_left():
    prior, likelihood = np.log([0.4, 0.3, 0.2, 0.1]), np.array([-9.0, -4.0, 0.0, -1.0])
    def left(power):
        return look_weights._effective(look_weights._normal(prior + power * likelihood))

    assert left(1.0) < 2.0 < left(0.0)
    power = look_weights._power(prior, likelihood, 2.0)
    assert 0.0 < power < 1.0 and left(power) == pytest.approx(2.0, abs=1e-4) and left(power) >= 2.0
    assert look_weights._power(prior, likelihood, 1.1) == 1.0  # enough are left: nothing to soften


def test_new_days_stand_for_the_same_law_as_the_old_ones():
    # One gauge says of the exponent alone 2 ± 0.3 deviations: by the normal law 1.8349 ± 0.2873 are left (1/(1 + 0.09)).
    said, scatter = 2.0, 0.3

    def log_likelihood(days):
        off = (deviations(days)[PLACE["exponent"]] - said) / scatter
        return np.tile(-0.5 * off**2, (2, 1))

    rows = deviations(day_cloud())
    count = rows.shape[1]
    for lead in (np.zeros(count), np.linspace(-0.5, 0.5, count)):  # a lead moves the draws, and never the answer
        ages = SimpleNamespace(
            lead=lead, log_likelihood=log_likelihood,
            normal=np.resize(deviations(day_cloud())[list(look_weights._FREE)], (len(look_weights._FREE), count)),
        )  # fmt: skip
        prior = np.zeros(count)
        new, prior, likelihood = look_weights._draw(rows, prior, log_likelihood(day_cloud()), ages, None)
        weight = look_weights._normal(prior + likelihood)[0]
        assert look_weights._effective(weight[np.newaxis]) > 100  # and not a few of them for all the others
        for name, mean, width in (("exponent", said / 1.09, 0.3 / np.sqrt(1.09)), ("yield_start_pa", 0.0, 1.0)):
            place = new[PLACE[name]]
            found = float((weight * place).sum())
            assert found == pytest.approx(mean, abs=0.12)
            assert float(np.sqrt((weight * (place - found) ** 2).sum())) == pytest.approx(width, rel=0.12)


def test_ordinary_looks_are_taken_as_they_are_and_wild_ones_leave_the_fewest_days(samples):
    mild = look_weights.weigh_days(samples, evidence_of(not_yet(2.25, "strip"), seen(2.75, "strip")))
    assert mild.softened == 1.0 and mild.effective_days > look_weights.FEWEST_DAYS
    wild = look_weights.weigh_days(samples, evidence_of(*(rod_reading(1.0 + 0.05 * n, 4000 * PSI) for n in range(8))))
    assert 0.0 < wild.softened < 1.0
    assert wild.effective_days == pytest.approx(look_weights.FEWEST_DAYS, rel=1e-3)


def test_the_best_that_two_looks_can_say_is_reached_where_the_sign_came_in_their_middle(samples):
    ages = look_weights._Ages(samples, evidence_of(not_yet(2.25, "strip"), seen(2.75, "strip")))
    ((_, part, best),) = ages.parts(samples.days)
    short = part - best
    assert short.max() <= 1e-9 and short.max() > -1e-3  # no day explains them better, some nearly as well
    assert np.percentile(short, 5) < -1.0


def test_two_looks_close_together_are_no_poor_ones_for_that_and_a_look_far_off_is(samples):
    close = evidence_of(not_yet(2.55, "strip"), seen(2.6, "strip"))  # seldom, and as likely as five minutes can be
    assert look_weights.weigh_days(samples, close).poor == ()
    wild = evidence_of(*(rod_reading(1.0 + 0.05 * number, 4000 * PSI) for number in range(8)))
    assert look_weights.weigh_days(samples, wild).poor == tuple(range(8))


def test_rod_readings_that_scatter_as_they_should_are_told_so(samples):
    # mean of exp(-z²/2) over a standard normal z is one over the root of two; for two readings one half
    ages = look_weights._Ages(samples, evidence_of(rod_reading(2.5, 25 * PSI), rod_reading(2.75, 40 * PSI)))
    ((_, _, usual),) = ages.parts(samples.days)
    assert usual == pytest.approx(np.log(0.5))


def test_looks_that_hardly_fit_count_as_twice_as_rough():
    evidence = evidence_of(not_yet(2.25, "strip"), seen(2.75, "strip"), rod_reading(2.5, 25 * PSI))
    wider = look_weights._wider(evidence, look_weights.WIDER)
    for kind in ("between", "readings"):
        for before, after in zip(getattr(evidence, kind), getattr(wider, kind), strict=True):
            assert after == replace(before, scatter=2.0 * before.scatter)


def test_an_age_runs_on_at_its_last_pace_and_is_nothing_before_the_water():
    ages = np.array([0.0, 1.0, 3.0])[:, np.newaxis, np.newaxis]  # at 0, 1 and 2 h: the last hour counts two
    history = SimpleNamespace(time_h=np.array([0.0, 1.0, 2.0]), equivalent_age_h=ages)
    for hour, age in ((-1.0, 0.0), (0.0, 0.0), (0.5, 0.5), (1.5, 2.0), (2.0, 3.0), (3.5, 6.0)):
        assert look_weights._age_h(history, hour) == pytest.approx(age)
    half = SimpleNamespace(time_h=np.array([0.0, 0.5, 1.0]), equivalent_age_h=ages)
    assert look_weights._age_h(half, 2.0) == pytest.approx(7.0)  # 3 h, and 4 an hour


def test_far_from_the_sign_two_looks_keep_their_digits_on_either_side():
    # reference: scipy's normal law, taken from the side where it is small
    for low, high in ((9.0, 10.0), (30.0, 30.5)):
        wanted = norm.logsf(low) + np.log1p(-np.exp(norm.logsf(high) - norm.logsf(low)))
        assert float(log_between(low, high)) == pytest.approx(wanted, rel=1e-12)
        assert float(log_between(-high, -low)) == pytest.approx(wanted, rel=1e-12)


def test_the_judgements_are_those_that_the_pages_name():
    # judgement, as said beside each of them in the module
    limits = look_weights.ENOUGH_DAYS, look_weights.FEWEST_DAYS, look_weights.WIDER, look_weights.POOR_FIT
    assert limits == (100.0, 40.0, 2.0, 0.1)
    assert FAR_SHIFT == 2.0


def test_a_renewed_cloud_is_that_of_its_rows():
    rows = deviations(day_cloud())
    assert deviations(cloud_at(rows)) == pytest.approx(rows, abs=1e-9)
