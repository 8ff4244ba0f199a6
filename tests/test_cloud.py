"""The 500 days: the stored points are scipy's, the spreads are those of the table, quantiles are honest."""

import csv

import numpy as np
import pytest
from scipy.stats.qmc import Sobol

from shop_calc import defaults
from shop_calc.trade.timeline.cloud import SAMPLED, day_cloud, field_names, middle_day, spread
from shop_calc.trade.timeline.weighted_days import quantile, weighted


def test_stored_points_are_the_sobol_sequence_of_scipy():
    with open(defaults.data_folder() / "day_cloud.csv", newline="") as file:
        stored = np.array([[float(cell) for cell in row[1:]] for row in list(csv.reader(file))[1:]])
    assert np.array_equal(stored, Sobol(10, scramble=False).random(512)[1:501])


@pytest.mark.parametrize("field", field_names())
def test_spreads_are_the_bands_of_the_table(field):
    low, middle, high = defaults.si_band(SAMPLED[field][0])
    values = getattr(day_cloud(), field)
    width = high - low
    for share, end in ((0.05, low), (0.5, middle), (0.95, high)):
        assert np.quantile(values, share) == pytest.approx(end, abs=0.04 * width)


def test_quantities_that_cannot_be_negative_never_are():
    for field, (_, ratio) in SAMPLED.items():
        if ratio:
            assert getattr(day_cloud(), field).min() > 0, field


def test_days_are_independent_of_each_other():
    columns = np.array([np.argsort(np.argsort(getattr(day_cloud(), field))) for field in field_names()])
    correlation = np.corrcoef(columns) - np.eye(len(columns))
    assert np.abs(correlation).max() < 0.05


def test_a_lopsided_band_keeps_its_median():
    assert spread(1.0, 2.0, 10.0, 0.0) == 2.0
    assert spread(-1.0, 2.0, 10.0, 0.0, ratio=False) == 2.0


def test_a_log_can_replace_a_band():
    days = day_cloud({"set_time_initial": (2.9, 3.0, 3.1)})
    assert np.median(days.initial_set_h) == pytest.approx(3.0, abs=0.005)
    assert np.array_equal(days.exponent, day_cloud().exponent)


def test_middle_day_is_the_defaults():
    assert middle_day().exponent[0] == defaults.si("set_exponent")


def test_equal_weights_give_hazens_quantiles():
    values = np.random.default_rng(1).normal(size=500)
    weight = np.full(500, 1 / 500)
    for share in (0.05, 0.37, 0.5, 0.95):
        assert quantile(values, weight, share) == pytest.approx(np.quantile(values, share, method="hazen"), abs=1e-12)


def test_quantile_works_on_many_rows_as_on_one():
    rng = np.random.default_rng(2)
    values, weight = rng.normal(size=(3, 4, 200)), rng.random(200)
    weight /= weight.sum()
    together = quantile(values, weight, 0.3)
    for index in np.ndindex(3, 4):
        assert together[index] == pytest.approx(quantile(values[index], weight, 0.3), abs=1e-12)


def test_a_day_without_an_answer_counts_as_late():
    values = np.array([1.0, 2.0, np.nan, np.nan])
    assert quantile(values, np.full(4, 0.25), 0.25) == pytest.approx(1.5)
    assert np.isnan(quantile(values, np.full(4, 0.25), 0.9))


def test_one_day_with_all_the_weight_is_the_answer():
    days = weighted(day_cloud(), np.arange(500) == 7)
    assert quantile(days.initial_set_h, days.weight, 0.5) == pytest.approx(days.initial_set_h[7])


def test_looks_that_no_day_fits_are_named():
    with pytest.raises(ValueError, match="none of the 500 days fits"):
        weighted(day_cloud(), np.zeros(500))
