"""Curl against laminate theory, a strip solved in slices with contact, geometry and a flatness rule."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shop_calc.science import curl, curl_weight
from shop_calc.science.loads import GRAVITY_M_S2

STRIP = {"thickness_m": 0.025, "modulus_pa": 25e9, "density_kg_m3": 2300.0}


def laminate_curvature_per_m(difference, upper, lower, upper_e, lower_e):
    """Classical laminate theory in one direction: A, B, D, force and moment of the free strains."""
    h = upper + lower
    layers = ((h / 2 - upper, h / 2, upper_e, -difference), (-h / 2, h / 2 - upper, lower_e, 0.0))
    a = sum(e * (top - low) for low, top, e, _ in layers)
    b = sum(e * (top**2 - low**2) / 2 for low, top, e, _ in layers)
    d = sum(e * (top**3 - low**3) / 3 for low, top, e, _ in layers)
    force = sum(e * strain * (top - low) for low, top, e, strain in layers)
    moment = sum(e * strain * (top**2 - low**2) / 2 for low, top, e, strain in layers)
    _, slope = np.linalg.solve([[a, b], [b, d]], [force, moment])
    return -slope  # a shorter upper face makes a dish, positive here


def dished_strip_lift_m(curvature, length, thickness_m, modulus_pa, density_kg_m3, n=3000):
    """Half a strip on a hard bed, in slices: it leaves the bed where first nothing would press into it.

    From there on moments are those of the weight beyond; deflection is summed twice from them.
    """
    half = length / 2
    x = np.linspace(0.0, half, n + 1)
    weight = density_kg_m3 * GRAVITY_M_S2 * thickness_m
    stiffness = modulus_pa * thickness_m**3 / 12
    for k in range(n):
        bent = curvature - weight * (half - x[k:]) ** 2 / 2 / stiffness  # curvature that is left
        if bent[0] >= -1e-15 or k == n - 1:
            # here the strip wants to leave the bed; closer to the middle the weight holds it down
            slope = np.concatenate([[0.0], np.cumsum((bent[1:] + bent[:-1]) / 2 * np.diff(x[k:]))])
            return float(np.sum((slope[1:] + slope[:-1]) / 2 * np.diff(x[k:])))
    raise AssertionError("no contact found")


@given(st.floats(1e-5, 1e-3), *[st.floats(0.003, 0.05)] * 2, *[st.floats(5e9, 50e9)] * 2)
def test_two_layers_are_laminate_theory(difference, upper, lower, upper_e, lower_e):
    ours = curl.two_layer_curvature_per_m(difference, upper, lower, upper_e, lower_e)
    theory = laminate_curvature_per_m(difference, upper, lower, upper_e, lower_e)
    assert ours == pytest.approx(theory, rel=1e-8)


def test_two_equal_layers_are_one_and_a_half_times_a_gradient():
    # Timoshenko 1925: 1.5 d/h
    equal = curl.two_layer_curvature_per_m(400e-6, 0.0125, 0.0125, 20e9, 20e9)
    assert equal == pytest.approx(1.5 * curl.gradient_curvature_per_m(400e-6, 0.025), rel=1e-12)


def test_a_layer_that_shrinks_below_makes_a_dome():
    dish = curl.two_layer_bow_m(400e-6, 0.006, 0.019, 25e9, 25e9, 2.4)
    assert curl.two_layer_bow_m(-400e-6, 0.019, 0.006, 25e9, 25e9, 2.4) == pytest.approx(-dish, rel=1e-12)


def test_a_skin_of_no_thickness_bends_nothing():
    assert curl.two_layer_curvature_per_m(400e-6, 1e-7, 0.025, 25e9, 25e9) == pytest.approx(0.0, abs=1e-6)


def test_the_bow_is_the_rise_of_a_circle():
    for length in (0.6, 1.2, 2.4):
        kappa = 0.012
        exact = (1 - np.cos(kappa * length / 2)) / kappa
        assert curl.bow_m(kappa, length) == pytest.approx(exact, rel=1e-3)


@given(st.floats(1e-5, 1e-3), st.floats(0.01, 0.1), st.floats(0.2, 3))
def test_bow_grows_with_length_squared_and_falls_with_thickness(difference, thickness, length):
    once = curl.drying_bow_m(difference, thickness, length)
    assert curl.drying_bow_m(difference, thickness, 2 * length) == pytest.approx(4 * once, rel=1e-9)
    assert curl.drying_bow_m(difference, 2 * thickness, length) == pytest.approx(once / 2, rel=1e-9)
    assert curl.drying_bow_m(0.0, thickness, length) == 0.0


def test_sag_is_the_double_integral_of_the_moment():
    length, x = 2.4, np.linspace(0, 2.4, 20_001)
    weight = 2300 * GRAVITY_M_S2 * 0.025
    moment = weight * x * (length - x) / 2
    bent = moment / (25e9 * 0.025**3 / 12)
    # middle of a simple span by virtual work: unit load there
    virtual = np.minimum(x, length - x) / 2
    expected = np.trapezoid(bent * virtual, x)
    assert curl_weight.self_weight_sag_m(length, **STRIP) == pytest.approx(expected, rel=1e-6)


def test_a_dome_is_pressed_flat_when_it_is_long_and_thin_enough():
    assert curl_weight.dome_gap_m(0.012, 0.8, **STRIP) > 0
    assert curl_weight.dome_gap_m(0.012, 6.0, **STRIP) == 0.0
    weightless = {**STRIP, "density_kg_m3": 1e-9}
    assert curl_weight.dome_gap_m(0.012, 2.4, **weightless) == pytest.approx(curl.bow_m(0.012, 2.4), rel=1e-9)


@pytest.mark.parametrize("length", [0.5, 1.0, 2.0, 3.0, 5.0, 8.0])
@pytest.mark.parametrize("kappa", [0.002, 0.006, 0.02])
def test_the_lifted_ends_of_a_dish_agree_with_slices(length, kappa):
    expected = dished_strip_lift_m(kappa, length, **STRIP)
    assert curl_weight.dish_lift_m(kappa, length, **STRIP) == pytest.approx(expected, rel=5e-3)


def test_the_two_forms_of_a_dish_meet_without_a_step():
    lengths = np.linspace(0.5, 8.0, 4001)
    lift = curl_weight.dish_lift_m(0.012, lengths, **STRIP)
    steps = np.diff(lift)
    assert (steps >= -1e-15).all() and steps.max() < 5e-5
    assert lift[-1] == pytest.approx(lift[-500], rel=1e-12), "a long strip lifts no more than a long one"


def test_weight_never_lifts_a_dish_and_spares_a_light_one():
    free = curl.bow_m(0.012, 2.4)
    assert curl_weight.dish_lift_m(0.012, 2.4, **STRIP) < free
    light = {**STRIP, "density_kg_m3": 1e-6}
    assert curl_weight.dish_lift_m(0.012, 2.4, **light) == pytest.approx(free, rel=1e-6)
    assert curl_weight.dish_lift_m(0.0, 2.4, **STRIP) == 0.0


def test_the_curl_number_rule_is_a_circle():
    # rule 11d of the same article: contact ends at 2523 (s/C)^0.5 inches
    inch = 0.0254
    edge = 2523 * (0.024 / 50) ** 0.5 * inch
    assert curl.curl_number_lift_m(50.0, edge, 0.024 * inch) == pytest.approx(0.0, abs=0.00002 * inch)
    radius = curl.CURL_NUMBER_RADIUS_M / 50
    place = 127 * inch
    rise = radius - (radius**2 - place**2) ** 0.5
    assert curl.curl_number_lift_m(50.0, place, 0.0) == pytest.approx(rise, rel=1e-6)


def test_arrays_equal_singles():
    lengths, thick = np.meshgrid(np.linspace(0.3, 4, 100), np.linspace(0.012, 0.08, 100))
    calls = (
        lambda a, b: curl.drying_bow_m(300e-6, b, a),
        lambda a, b: curl.two_layer_bow_m(300e-6, 0.2 * b, 0.8 * b, 20e9, 28e9, a),
        lambda a, b: curl_weight.dish_lift_m(300e-6 / b, a, b, 25e9, 2300.0),
        lambda a, b: curl_weight.dome_gap_m(300e-6 / b, a, b, 25e9, 2300.0),
    )
    for call in calls:
        whole = call(lengths, thick)
        for i, j in ((0, 0), (99, 99), (12, 66)):
            one = call(float(lengths[i, j]), float(thick[i, j]))
            assert whole[i, j] == pytest.approx(one, rel=1e-12, abs=1e-15)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: curl.drying_bow_m(300.0, 0.025, 2.4), "difference of strain"),
        (lambda: curl.drying_bow_m(300e-6, 0.0, 2.4), "thickness"),
        (lambda: curl.two_layer_curvature_per_m(4e-4, 0.006, 0.0, 25e9, 25e9), "lower layer"),
        (lambda: curl_weight.dish_lift_m(-0.01, 2.4, **STRIP), "curvature"),
        (lambda: curl_weight.self_weight_sag_m(2.4, 0.025, 0.0, 2300.0), "modulus"),
        (lambda: curl.curl_number_lift_m(50.0, 1e6, 0.0), "distance from the middle"),
        (lambda: curl.curl_number_lift_m(-5.0, 1.0, 0.0), "Curl Number"),
    ],
)
def test_an_impossible_entry_is_named(call, words):
    with pytest.raises(ValueError, match=words):
        call()


def test_a_curled_arc_holds_a_triangle_of_three_four_five():
    # Curl Number 1 is an arc of radius R; where z = 0.6 R the arc has risen R - 0.8 R
    radius = curl.CURL_NUMBER_RADIUS_M / 50.0
    assert curl.curl_number_lift_m(50.0, 0.6 * radius, 0.0) == pytest.approx(0.2 * radius)
