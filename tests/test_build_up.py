"""The early clock: yield stress at rest and the stress an edge needs. Single rows: data/published."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shop_calc.science import build_up

start = st.floats(0, 400)
rate = st.floats(0.05, 3)
constant = st.floats(600, 20000)


@given(st.floats(0, 5000), start, rate, constant)
def test_time_and_stress_are_inverse(rest_s, start_pa, rate_pa_s, time_constant_s):
    linear_pa = build_up.yield_stress_linear_pa(rest_s, start_pa, rate_pa_s)
    curved_pa = build_up.yield_stress_exponential_pa(rest_s, start_pa, rate_pa_s, time_constant_s)
    assert build_up.rest_to_stress_linear_s(linear_pa, start_pa, rate_pa_s) == pytest.approx(rest_s, abs=1e-6)
    back_s = build_up.rest_to_stress_exponential_s(curved_pa, start_pa, rate_pa_s, time_constant_s)
    assert back_s == pytest.approx(rest_s, abs=1e-6)


@given(st.floats(1, 5000), start, rate, constant)
def test_exponential_growth_is_never_slower_than_the_straight_line_it_begins_with(rest_s, start_pa, rate_pa_s, tc):
    linear_pa = build_up.yield_stress_linear_pa(rest_s, start_pa, rate_pa_s)
    curved_pa = build_up.yield_stress_exponential_pa(rest_s, start_pa, rate_pa_s, tc)
    assert curved_pa >= linear_pa - 1e-9


def test_after_one_time_constant_the_growth_is_e_times_the_first():
    before, after = (build_up.yield_stress_exponential_pa(t, 150.0, 0.5, 3600.0) for t in (3599.5, 3600.5))
    assert after - before == pytest.approx(0.5 * np.e, rel=1e-6)


def test_a_short_rest_or_a_long_time_constant_is_the_straight_line():
    linear_pa = build_up.yield_stress_linear_pa(600.0, 150.0, 0.5)
    assert build_up.yield_stress_exponential_pa(600.0, 150.0, 0.5, 1e9) == pytest.approx(linear_pa, rel=1e-6)


def test_a_mix_that_is_stiff_enough_from_the_start_needs_no_rest():
    assert build_up.rest_to_stress_linear_s(300.0, 400.0, 0.5) == 0
    assert build_up.rest_to_stress_exponential_s(300.0, 400.0, 0.5, 3600.0) == 0


def test_the_stricter_rule_asks_for_more_and_the_bank_for_less():
    plain, strict, bank = (
        rule(0.0381, 2250.0)
        for rule in (
            build_up.edge_demand_pa,
            build_up.edge_demand_strict_pa,
            build_up.edge_demand_undrained_pa,
        )
    )
    assert bank < plain < strict
    assert strict / plain == pytest.approx(2 / np.sqrt(3))


def test_twice_the_edge_and_half_as_much_again_of_safety():
    once = build_up.edge_demand_pa(0.0381, 2250.0)
    assert build_up.edge_demand_pa(0.0762, 2250.0) == pytest.approx(2 * once)
    assert build_up.edge_demand_pa(0.0381, 2250.0, 1.5) == pytest.approx(1.5 * once)


def test_a_two_inch_edge_stands_after_about_twenty_minutes():
    demand_pa = build_up.edge_demand_pa(0.0508, 2200.0, 1.5)
    straight_min = build_up.rest_to_stress_linear_s(demand_pa, 150.0, 0.5) / 60
    curved_min = build_up.rest_to_stress_exponential_s(demand_pa, 150.0, 0.5, 3600.0) / 60
    assert (straight_min, curved_min) == pytest.approx((22.400, 19.034), abs=0.001)


def test_arrays_give_what_single_numbers_give():
    stress_pa = np.array([200.0, 500.0, 900.0])
    together = build_up.rest_to_stress_exponential_s(stress_pa, 150.0, 0.5, 3600.0)
    single = [build_up.rest_to_stress_exponential_s(pa, 150.0, 0.5, 3600.0) for pa in stress_pa]
    assert together == pytest.approx(single, rel=1e-12)


@pytest.mark.parametrize(
    "call, words",
    [
        (lambda: build_up.yield_stress_linear_pa(-1.0, 150.0, 0.5), "rest: -1 s"),
        (lambda: build_up.rest_to_stress_linear_s(500.0, 150.0, 0.0), "growth of yield stress: 0 Pa/s"),
        (lambda: build_up.yield_stress_exponential_pa(1.0, 150.0, 0.5, 0.0), "time constant: 0 s"),
        (lambda: build_up.edge_demand_pa(0.0, 2200.0), "height of the edge: 0 m"),
        (lambda: build_up.edge_demand_pa(0.05, 2200.0, 0.9), "safety factor: 0.9"),
    ],
)
def test_impossible_entries_are_named(call, words):
    with pytest.raises(ValueError, match=words):
        call()
