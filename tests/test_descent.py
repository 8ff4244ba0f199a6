"""The way down to the lowest place: against scipy, known bottoms and ground that is not kind."""

import numpy as np
import pytest
from made_logs import made_log
from scipy.optimize import minimize, rosen, rosen_der
from test_calibrate import RECIPE, made

from shop_calc import defaults
from shop_calc.science.descent import lowest
from shop_calc.trade.logbook.log_ages import pour_facts
from shop_calc.trade.logbook.set_posterior import Posterior
from shop_calc.trade.logbook.shop_log import gather_pours


@pytest.mark.parametrize("start", [(-1.2, 1.0), (2.0, 2.0), (0.0, -3.0)])
def test_the_bent_valley_is_followed_to_its_end(start):
    """Rosenbrock's function, its lowest place at (1, 1)."""
    assert lowest(lambda at: (rosen(at), rosen_der(at)), np.array(start), 1e-8) == pytest.approx([1.0, 1.0], abs=1e-6)


@pytest.mark.parametrize("seed", range(8))
def test_the_lowest_place_of_a_log_is_the_one_scipy_finds(seed):
    """scipy.optimize.minimize (BFGS) from the same start; the posteriors of made-up logs."""
    rng = np.random.default_rng(seed)
    rows = made_log(rng, made(rng), 1 + seed, recipe=RECIPE, rods=seed % 4, mix_c=(10, 26), air_c=(8, 30))
    facts, _ = pour_facts(gather_pours(rows), "face", defaults.si("slab_thickness"))
    posterior = Posterior(facts)
    theirs = minimize(posterior.with_slope, np.zeros(3), method="BFGS", jac=True, options={"gtol": 1e-5})
    ours = lowest(posterior.with_slope, np.zeros(3), 1e-5)
    assert posterior(ours) <= theirs.fun + 1e-8
    assert ours == pytest.approx(theirs.x, abs=1e-3)


BEND = np.array([[3.0, 1.0], [1.0, 2.0]])


def bowl(at):
    return 0.5 * at @ BEND @ at, BEND @ at


def test_a_good_guess_of_the_bend_saves_steps():
    tried = []

    def counted(at):
        tried.append(at)
        return bowl(at)

    for about, most in ((np.linalg.inv(BEND), 2), (None, 12)):
        tried.clear()
        assert lowest(counted, np.array([5.0, -7.0]), 1e-8, about) == pytest.approx([0.0, 0.0], abs=1e-7)
        assert len(tried) <= most


def test_a_guess_that_points_uphill_is_given_up():
    assert lowest(bowl, np.array([5.0, -7.0]), 1e-8, about=-np.linalg.inv(BEND)) == pytest.approx([0.0, 0.0], abs=1e-7)


def test_who_stands_at_the_bottom_stays_there():
    tried = []
    assert lowest(lambda at: tried.append(at) or bowl(at), np.zeros(2), 1e-6).tolist() == [0.0, 0.0]
    assert len(tried) == 1


def test_nothing_to_move_is_no_error():
    assert lowest(lambda at: (0.0, np.zeros(0)), np.zeros(0), 1e-6).shape == (0,)


def test_a_wall_that_is_no_number_is_turned_away_from():
    """x - log x has its bottom at 1 and no height below 0, where a long step lands."""

    def walled(at):
        with np.errstate(invalid="ignore"):
            return at[0] - np.log(at[0]), 1.0 - 1.0 / at

    assert lowest(walled, np.array([30.0]), 1e-8, about=np.array([[900.0]])) == pytest.approx([1.0], abs=1e-6)


def test_a_kink_ends_the_way_near_its_bottom():
    """|x| + x^2/10: the slope jumps at the bottom, no step can flatten it; the way ends instead of going on for ever."""
    found = lowest(lambda at: (abs(at[0]) + 0.1 * at[0] ** 2, np.sign(at) + 0.2 * at), np.array([3.3]), 1e-6)
    assert abs(found[0]) < 1e-3


def test_the_start_is_left_as_it_was():
    start = np.array([5.0, -7.0])
    lowest(bowl, start, 1e-6)
    assert start.tolist() == [5.0, -7.0]
