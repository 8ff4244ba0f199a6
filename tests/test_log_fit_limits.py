"""The fit of a log by hand: likelihood of one look, what the next pour scatters, which rows are named."""

import math
from datetime import datetime, timedelta
from types import SimpleNamespace

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.stats import norm

from shop_calc import defaults
from shop_calc.trade.logbook.calibrate import _far_from_default, calibrate
from shop_calc.trade.logbook.log_ages import PourFacts
from shop_calc.trade.logbook.misfits import _Shifted
from shop_calc.trade.logbook.set_fit import SetFit, _curvature, fit_set
from shop_calc.trade.logbook.set_posterior import Posterior
from shop_calc.trade.logbook.shop_log import Event, gather_pours
from shop_calc.trade.timeline.look_fit import Between, Reading

PSI = 6894.757293168361
LOG_500 = math.log(500 * PSI)
# rows of data/defaults.csv: initial set 2.7, 3.4, 4.3 h, exponent 7, both judged; a pour scatters by 5 %; 2 looks of 100
# are wrong
INITIAL_H, EXPONENT, POUR, WRONG = 3.4, 7.0, 0.05, 0.02


def pour(between=(), readings=()):
    """A pour at 21 °C, the reference of the clock: every hour is an hour of age."""
    rows = tuple(SimpleNamespace(line=number + 2) for number in range(4))
    hours = np.linspace(0.0, 12.0, 145)
    return PourFacts(SimpleNamespace(pour_id="p"), between, readings, rows, (), frozenset(), hours, np.full(145, 21.0))


def by_hand(likely):
    """Log of the likelihood of a look, summed over what the pour's own initial set scatters."""

    def at(deviation):
        return norm.pdf(deviation) * likely(
            lambda hour: LOG_500 + EXPONENT * math.log(hour / INITIAL_H / math.exp(POUR * deviation))
        )

    return math.log(quad(at, -6, 6, epsabs=1e-12)[0])


def likelihood(facts):
    """What the look adds to the prior, at the middle of all bands."""
    return Posterior(())(np.zeros(3)) - Posterior((facts,))(np.zeros(3))


def test_the_numbers_by_hand_are_those_of_the_table():
    assert defaults.si_band("set_time_initial") == (2.7, INITIAL_H, 4.3) and defaults.si("set_exponent") == EXPONENT
    assert (defaults.si("pour_scatter"), defaults.si("wrong_look_share")) == (POUR, WRONG)


@pytest.mark.parametrize(("after", "before"), [(1.8, 2.2), (2.2, None), (None, 1.7), (2.9, 3.1), (0.3, 0.5)])
def test_a_cue_is_as_likely_as_its_two_looks_make_it(after, before):
    # 10 psi by eye, 0.4 in the logarithm; one look in fifty is a coin
    goal = math.log(10 * PSI)

    def likely(log_resistance):
        low = 0.0 if after is None else norm.cdf((log_resistance(after) - goal) / 0.4)
        high = 1.0 if before is None else norm.cdf((log_resistance(before) - goal) / 0.4)
        return 0.98 * (high - low) + 0.01

    item = Between("strip", "face", goal, 0.4, after, before, (0, 1))
    assert likelihood(pour((item,))) == pytest.approx(by_hand(likely), abs=2e-3)


@pytest.mark.parametrize("psi", [5, 20, 60, 400, 5000, 1e5])
def test_a_reading_is_right_or_now_and_then_simply_wrong(psi):
    # at 2.5 h the model says 500 (2.5/3.4)^7 = 58 psi; right scatters by 0.2, wrong by 1.5, both as shares of one height
    def likely(log_resistance):
        away = math.log(psi * PSI) - log_resistance(2.5)
        return 0.98 * math.exp(-0.5 * (away / 0.2) ** 2) + 0.02 * 0.2 / 1.5 * math.exp(-0.5 * (away / 1.5) ** 2)

    reading = Reading("face", 2.5, math.log(psi * PSI), 0.2, True, 0)
    assert likelihood(pour((), (reading,))) == pytest.approx(by_hand(likely), abs=2e-3)


def test_a_reading_that_nothing_explains_leaves_the_fit_finite():
    absurd = Reading("face", 2.5, 500.0, 0.2, True, 0)
    height, slope = Posterior((pour((), (absurd,)),)).with_slope(np.zeros(3))
    assert np.isfinite(height) and np.isfinite(slope).all()


def test_the_next_pour_scatters_by_the_mean_and_its_own_and_hangs_together_no_more_than_the_mean():
    deviation, linked = np.array([0.4, 0.7, 0.9]), np.array([[1.0, 0.5, -0.3], [0.5, 1.0, 0.2], [-0.3, 0.2, 1.0]])
    fit = SetFit(np.zeros(3), linked * np.outer(deviation, deviation), True)
    # the band of initial set is ln(4.3/2.7) = 2 x 1.6449 deviations wide; 0.05 of each is the pour's own, the rest the mean's
    whole = math.log(4.3 / 2.7) / (2 * norm.ppf(0.95))
    mean = math.sqrt(whole**2 - POUR**2)
    following = math.sqrt((0.4 * mean) ** 2 + POUR**2)
    low, middle, high = fit.next_band("set_time_initial")
    assert middle == pytest.approx(3.4, rel=1e-12)
    assert high == pytest.approx(3.4 * (4.3 / 3.4) ** (following / whole), rel=1e-9)
    assert low == pytest.approx(3.4 * (2.7 / 3.4) ** (following / whole), rel=1e-9)
    root = fit.next_root()
    own = 0.4 * mean / following  # the share of the next pour's deviation that it has in common with the recipe
    expected = np.array([[1, 0.5 * own, -0.3 * own], [0.5 * own, 1, 0.2], [-0.3 * own, 0.2, 1]])
    assert root @ root.T == pytest.approx(expected, abs=1e-9)


def test_a_fit_never_claims_to_know_less_than_nine_tenths_of_the_prior():
    # far out the prior of initial set is almost flat (odd_mix_width); the curvature kept there is 0.9, a judgement
    flat = _curvature(Posterior(()), np.array([5.0, 0.0, 0.0]))
    assert np.linalg.eigvalsh(flat) == pytest.approx([0.9, 1.0, 1.0], abs=1e-3)


def test_only_what_lies_more_than_two_deviations_out_is_called_the_edge():
    for place, far in ((1.99, False), (2.01, True), (-2.01, True)):
        for number in (0, 1):
            places = np.zeros(3)
            places[number] = place
            assert _far_from_default(SetFit(places, np.eye(3), True)) is far
    assert not _far_from_default(SetFit(np.array([0.0, 0.0, 3.0]), np.eye(3), True))  # activation energy is hardly seen


def test_two_pours_are_left_out_in_turn_and_one_is_not():
    start, rows = datetime(2026, 5, 4, 8), []
    for number, (from_h, to_h) in enumerate(((2.0, 2.3), (2.3, 2.6))):
        name, at = f"p{number}", start + timedelta(days=number)
        rows += [Event(name, at, "water_in", recipe="m", mix_temp_c=21.0), Event(name, at, "room", air_temp_c=21.0)]
        rows += [Event(name, at + timedelta(hours=hour), "check", "face", cue=f"strip {there}")
                 for hour, there in ((from_h, "not yet"), (to_h, "seen"))]  # fmt: skip
    assert calibrate(gather_pours(rows[:4]), "m").miss_left_out_h is None
    both = calibrate(gather_pours(rows), "m")
    assert both.pour_count == 2 and both.miss_left_out_h >= both.miss_fitted_h


def test_the_fit_says_at_which_hour_a_cue_belongs():
    # 10 psi on a clock of 3.4 h and 7: 3.4 (10/500)^(1/7) = 1.944 h; a pour two deviations slow: 10.5 % later
    shifted = _Shifted(pour(), np.zeros(3), 0.0)
    assert shifted.hour(math.log(10 * PSI)) == pytest.approx(3.4 * 0.02 ** (1 / 7), rel=1e-6)
    assert shifted.hour(LOG_500) == pytest.approx(3.4, rel=1e-6)
    slow = _Shifted(pour(), np.zeros(3), 2.0)
    assert slow.hour(LOG_500) == pytest.approx(3.4 * math.exp(0.1), rel=1e-6)


def hour_at(deviations, scatter=0.4):
    """Hour at which the mortar is so many scatters of a cue past 10 psi."""
    return 3.4 * math.exp((math.log(10 / 500) + deviations * scatter) / 7)


@pytest.mark.parametrize(
    ("after", "before", "named"),
    [
        (hour_at(2.05), None, []),  # 2.02 % see nothing so late
        (hour_at(2.06), None, ["not yet"]),  # 1.97 %
        (None, hour_at(-2.05), []),
        (None, hour_at(-2.06), ["seen"]),
        (hour_at(-0.5), hour_at(0.5), []),
    ],
)
def test_a_cue_that_fewer_than_one_in_fifty_would_see_is_named(after, before, named):
    # two in a hundred lie 2.054 deviations out; the limit is a judgement
    item = Between("strip", "face", math.log(10 * PSI), 0.4, after, before, (0, 1))
    words = [words for _, words in _Shifted(pour((item,)), np.zeros(3), 0.0).poor()]
    assert [word for one in words for word in ("not yet", "seen") if f"strip {word}" in one] == named
    assert all("the fit puts it at 1.94 h after the water" in one for one in words)


@pytest.mark.parametrize(("deviations", "named"), [(2.95, False), (3.05, True), (-2.95, False), (-3.05, True)])
def test_a_reading_more_than_three_of_its_scatters_off_is_named(deviations, named):
    log_resistance = LOG_500 + 7 * math.log(2.5 / 3.4) + 0.2 * deviations
    facts = pour((), (Reading("face", 2.5, log_resistance, 0.2, True, 0),))
    words = [words for _, words in _Shifted(facts, np.zeros(3), 0.0).poor()]
    assert bool(words) is named
    if deviations > 3:
        # the fit says 3447.4 (2.5/3.4)^7 = 400.6 kPa, the rod e^0.61 = 1.840 times that
        assert words == ["rod says 737 kPa, the fit 401 kPa"]


def test_a_fit_of_nothing_is_the_prior_in_both_ways():
    for free in (True, False):
        assert (fit_set((), free).place == 0).all()


@pytest.mark.parametrize(("warm_c", "fitted"), [(28.5, False), (29.5, True)])
def test_activation_energy_is_fitted_from_eight_degrees_between_pours_on(warm_c, fitted):
    # row calibration_temp_span: 8 K; rooms as warm as their mixes and as damp as can be keep their temperature
    start, rows = datetime(2026, 5, 4, 8), []
    for number, temp_c in enumerate((21.0, warm_c)):
        name, at = f"p{number}", start + timedelta(days=number)
        rows += [Event(name, at, "water_in", recipe="m", mix_temp_c=temp_c),
                 Event(name, at, "room", air_temp_c=temp_c, rh_fraction=1.0, wind_m_s=0.0),
                 Event(name, at + timedelta(hours=2), "check", "face", cue="strip seen")]  # fmt: skip
    assert calibrate(gather_pours(rows), "m").energy_fitted is fitted
