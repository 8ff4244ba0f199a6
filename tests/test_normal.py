"""The normal law against scipy, the standard library and its own limits."""

from statistics import NormalDist

import numpy as np
import pytest
from scipy.special import log_ndtr, ndtr

from shop_calc.science.normal import log_normal_below, normal_below

PLACES = np.concatenate([np.linspace(-45.0, 12.0, 30_001), [-1000.0, -30.0, -30.0001, -1 / 128, 0.0]])


def test_probabilities_are_those_of_scipy():
    assert normal_below(PLACES) == pytest.approx(ndtr(PLACES), abs=1e-11)
    tail = PLACES[(PLACES < 0) & (PLACES > -37)]  # below, the probability is too small for a number
    assert normal_below(tail) == pytest.approx(ndtr(tail), rel=2e-11, abs=0.0)


def test_logarithms_keep_their_digits_at_both_ends():
    assert log_normal_below(PLACES) == pytest.approx(log_ndtr(PLACES), rel=3e-11, abs=0.0)


@pytest.mark.parametrize("place", [-3.0, -1.645, -0.3, 0.0, 0.3, 1.645, 3.0])
def test_numbers_are_those_of_the_standard_library(place):
    assert float(normal_below(place)) == pytest.approx(NormalDist().cdf(place), abs=1e-11)


def test_the_slope_has_no_kink_where_two_cubics_meet():
    """Steps of 1e-5 on both sides of each value of the table, and of the mean: the density of the law."""
    knots = -np.arange(1, 600) / 64.0
    for side in (-1e-5, 1e-5):
        slope = (log_normal_below(knots + side) - log_normal_below(knots)) / side
        density = np.exp(-0.5 * knots**2) / np.sqrt(2.0 * np.pi) / ndtr(knots)
        assert slope == pytest.approx(density, rel=1e-4)


def test_both_sides_of_the_mean_add_up_to_one():
    places = np.linspace(0.0, 9.0, 500)
    assert normal_below(places) + normal_below(-places) == pytest.approx(np.ones(500), abs=1e-15)


def test_what_is_no_number_stays_none_and_the_ends_are_certain():
    assert np.isnan(normal_below(np.nan)) and np.isnan(log_normal_below(np.nan))
    assert (normal_below(-np.inf), normal_below(np.inf)) == (0.0, 1.0)
    assert (log_normal_below(-np.inf), log_normal_below(np.inf)) == (-np.inf, 0.0)


def test_a_number_and_a_row_give_the_same():
    row = np.array([[-2.0, 0.5], [31.0, -31.0]])
    for law in (normal_below, log_normal_below):
        assert [float(law(place)) for place in row.ravel()] == law(row).ravel().tolist()
        assert law(row).shape == row.shape
