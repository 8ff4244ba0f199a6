"""The revised NIOSH equation: limits of use, directions, its metric twin; and the rule for teams."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shop_calc.science import lifting, teams
from shop_calc.science.lifting import frequency_factor, weight_limit

IN, LB = 0.0254, 0.45359237


def limit_lb(reach=10.0, height=30.0, travel=10.0, twist=0.0, lifts=0.2, hours=1.0, grip="good"):
    return float(weight_limit(reach * IN, height * IN, travel * IN, twist, lifts, hours, grip).limit_kg) / LB


def metric_limit_kg(h_cm, v_cm, d_cm, a_deg, fm, cm):
    """The metric form of the same book, written out: 23 kg, 25/H, 0.003, 4.5/D."""
    return (
        23.0 * 25 / h_cm * (1 - 0.003 * abs(v_cm - 75)) * (0.82 + 4.5 / d_cm) * (1 - 0.0032 * a_deg) * fm * cm
    )


def test_the_best_lift_there_is_allows_the_load_constant():
    assert limit_lb() == pytest.approx(51.0, rel=1e-9)


@given(st.floats(26, 62), st.floats(0, 174), st.floats(26, 170), st.floats(0, 135))
def test_the_us_form_is_the_metric_form_within_its_rounding(h_cm, v_cm, d_cm, a_deg):
    ours = weight_limit(h_cm / 100, v_cm / 100, d_cm / 100, a_deg, 1.0, 2.0, "poor").limit_kg
    metric = metric_limit_kg(h_cm, v_cm, d_cm, a_deg, 0.88, 0.90)
    assert metric * 0.999 <= ours <= metric * 1.045  # the metric constants are the lower ones


def test_within_the_ordinary_range_the_two_forms_differ_by_under_three_percent():
    ours = weight_limit(0.30, 0.60, 0.60, 0.0, 0.2, 1.0, "fair").limit_kg
    assert ours == pytest.approx(metric_limit_kg(30, 60, 60, 0, 1.0, 0.95), rel=0.03)


@pytest.mark.parametrize(
    ("inside", "outside"),
    [
        ({"reach": 25.0}, {"reach": 25.01}),
        ({"height": 70.0}, {"height": 70.01}),
        ({"travel": 70.0}, {"travel": 70.01}),
        ({"twist": 135.0}, {"twist": 135.01}),
        ({"lifts": 15.0, "height": 30.0}, {"lifts": 15.01, "height": 30.0}),
        ({"lifts": 12.0, "height": 20.0}, {"lifts": 12.01, "height": 20.0}),
    ],
)
def test_the_limits_of_use_are_sharp(inside, outside):
    assert limit_lb(**inside) > 0
    assert limit_lb(**outside) == 0.0


def test_nearer_than_ten_inches_counts_as_ten():
    assert limit_lb(reach=6.0) == limit_lb(reach=10.0)
    assert limit_lb(travel=2.0) == limit_lb(travel=10.0)


@pytest.mark.parametrize(
    ("easy", "hard"),
    [
        ({"reach": 12.0}, {"reach": 18.0}),
        ({"height": 30.0}, {"height": 6.0}),
        ({"height": 30.0}, {"height": 60.0}),
        ({"travel": 12.0}, {"travel": 40.0}),
        ({"twist": 0.0}, {"twist": 45.0}),
        ({"lifts": 0.2}, {"lifts": 4.0}),
        ({"hours": 1.0}, {"hours": 1.5}),
        ({"hours": 2.0}, {"hours": 8.0}),
        ({"grip": "good"}, {"grip": "poor"}),
        ({"grip": "good", "height": 20.0}, {"grip": "fair", "height": 20.0}),
    ],
)
def test_harder_is_less(easy, hard):
    assert limit_lb(**hard) < limit_lb(**easy)


def test_a_fair_grip_costs_nothing_from_knuckle_height_up():
    assert limit_lb(grip="fair", height=30.0) == limit_lb(grip="good", height=30.0)


def test_the_limit_is_the_product_of_its_factors():
    at = weight_limit(0.4, 0.3, 0.7, 30.0, 3.0, 2.0, "fair")
    product = lifting.LOAD_CONSTANT_KG
    for name in ("horizontal", "vertical", "distance", "asymmetry", "frequency", "coupling"):
        product *= getattr(at, f"{name}_factor")
    assert at.limit_kg == pytest.approx(product, rel=1e-12)


def test_between_two_rows_the_careful_one_counts():
    # NIOSH 94-110 Table 5, up to an hour: 0.91 at 2 and 0.88 at 3 lifts a minute
    assert frequency_factor(2.0, 1.0, 0.8) == pytest.approx(0.91)
    assert frequency_factor(2.1, 1.0, 0.8) == pytest.approx(0.88)
    assert frequency_factor(0.0, 1.0, 0.8) == pytest.approx(1.0)


@given(st.floats(0, 20), st.floats(0, 5), st.sampled_from([0.5, 1.0, 2.0, 8.0]), st.sampled_from([0.2, 0.9]))
def test_more_lifts_a_minute_never_allow_more(lifts, more, hours, height):
    assert frequency_factor(lifts + more, hours, height) <= frequency_factor(lifts, hours, height)


def test_a_sack_of_80_lb_from_the_floor_is_nearly_three_times_too_much():
    allowed = weight_limit(12 * IN, 6 * IN, 30 * IN, 0.0, 0.2, 1.0, "fair").limit_kg
    assert lifting.lifting_index(80 * LB, allowed) == pytest.approx(2.75, abs=0.01)


def test_the_index_is_infinite_where_nothing_may_be_lifted():
    assert lifting.lifting_index(5.0, 0.0) == np.inf
    assert lifting.lifting_index(0.0, 0.0) == np.inf


def test_a_team_lifts_less_than_its_members():
    assert teams.team_limit_kg([25.0]) == 25.0
    assert teams.team_limit_kg([30.0, 15.0]) == pytest.approx(30.0)
    assert teams.team_limit_kg([20.0, 20.0, 20.0]) == pytest.approx(30.0)
    with pytest.raises(ValueError, match="people lifting: 4"):
        teams.team_limit_kg([20.0] * 4)


def test_a_map_equals_single_calls():
    reach, height = np.meshgrid(np.linspace(0.1, 0.7, 100), np.linspace(0, 1.9, 100))
    whole = weight_limit(reach, height, 0.5, 10.0, 2.0, 1.0, "fair").limit_kg
    assert whole.shape == (100, 100)
    for i, j in ((0, 0), (40, 20), (99, 99), (41, 7)):
        one = weight_limit(float(reach[i, j]), float(height[i, j]), 0.5, 10.0, 2.0, 1.0, "fair").limit_kg
        assert whole[i, j] == pytest.approx(one, rel=1e-12)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: weight_limit(-0.1, 0.5, 0.5), "reach"),
        (lambda: weight_limit(0.3, -0.5, 0.5), "height"),
        (lambda: weight_limit(0.3, 0.5, 0.5, 200.0), "twist"),
        (lambda: weight_limit(0.3, 0.5, 0.5, coupling="slippery"), "good, fair or poor"),
        (lambda: weight_limit(0.3, 0.5, 0.5, duration_h=9.0), "duration"),
        (lambda: frequency_factor(-1.0, 1.0, 0.5), "lifts a minute"),
        (lambda: teams.team_limit_kg([-1.0, 5.0]), "each may lift"),
    ],
)
def test_an_impossible_lift_is_named(call, words):
    with pytest.raises(ValueError, match=words):
        call()


def test_every_row_of_the_table_of_frequencies():
    """NIOSH 94-110, Table 5, row by row from memory: lifts a minute; 1, 2 and 8 hours, each from below 30 in and from above."""
    table = """0.2  1.00 1.00  .95 .95  .85 .85
               0.5  .97 .97  .92 .92  .81 .81
               1  .94 .94  .88 .88  .75 .75
               2  .91 .91  .84 .84  .65 .65
               3  .88 .88  .79 .79  .55 .55
               4  .84 .84  .72 .72  .45 .45
               5  .80 .80  .60 .60  .35 .35
               6  .75 .75  .50 .50  .27 .27
               7  .70 .70  .42 .42  .22 .22
               8  .60 .60  .35 .35  .18 .18
               9  .52 .52  .30 .30  0 .15
               10  .45 .45  .26 .26  0 .13
               11  .41 .41  0 .23  0 0
               12  .37 .37  0 .21  0 0
               13  0 .34  0 0  0 0
               14  0 .31  0 0  0 0
               15  0 .28  0 0  0 0
               15.1  0 0  0 0  0 0"""
    rows = [[float(cell) for cell in row.split()] for row in table.splitlines()]
    for (lifts, *factors), (_, *after) in zip(rows, [*rows[1:], rows[-1]], strict=True):
        for column, factor in enumerate(factors):
            hours, height = (1.0, 2.0, 8.0)[column // 2], (29.9, 30.0)[column % 2] * IN
            assert frequency_factor(lifts, hours, height) == factor, (lifts, hours, height)
            assert frequency_factor(lifts - 0.001, hours, height) >= factor, "the row holds up to its lifts"
            assert frequency_factor(lifts + 0.002, hours, height) == after[column], "and not beyond"
        assert frequency_factor(lifts, 1.01, 1.0) == factors[3] and frequency_factor(lifts, 2.01, 1.0) == factors[5]


@pytest.mark.parametrize(("people", "share"), [(1, 1.0), (2, 2 / 3), (3, 0.5), (4, 0.5), (9, 0.5)])
def test_a_team_bears_more_than_heads_say(people, share):
    # HSE L23 as quoted: two lift two thirds of the sum, three half of it; for more there is no rule, half is the most
    assert teams.team_share(people) == pytest.approx(share)
    assert teams.team_index(60.0, 20.0, people) == pytest.approx(60 / people / (share * 20))
    if people <= 3:
        assert teams.team_index(teams.team_limit_kg([20.0] * people), 20.0, people) == pytest.approx(1.0)


def test_so_many_are_needed_and_three_are_the_most():
    # of 20 kg each: 20, 26.7, 30 kg
    wanted = {20.0: 1, 20.1: 2, 26.6: 2, 26.7: 3, 30.0: 3, 30.1: None}
    assert {load: teams.people_needed(load, 20.0) for load in wanted} == wanted


def test_nobody_lifts_nothing():
    for call in (lambda: teams.team_share(0), lambda: teams.team_index(5.0, 20.0, 0)):
        with pytest.raises(ValueError, match="people lifting: 0"):
            call()
    assert teams.team_index(5.0, 0.0, 2) == float("inf")
