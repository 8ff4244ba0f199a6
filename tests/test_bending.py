"""Bending and weight against a numerical beam, field cases and directions."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shop_calc.science import bending, loads

PSI = 6894.757293168361
IN, FT, LB = 0.0254, 0.3048, 0.45359237
PCF_150 = 150 * LB / FT**3

sizes = st.floats(0.1, 5.0)
depths = st.floats(0.01, 0.2)


def numerical_stress_pa(length_m, depth_m, density, left_m, right_m):
    """Largest bending stress of a 1 m wide strip on two supports, by summing the weight of slices."""
    edges = np.linspace(0.0, length_m, 20_001)
    middle = (edges[1:] + edges[:-1]) / 2
    slices = density * loads.GRAVITY_M_S2 * depth_m * np.diff(edges)
    weight = slices.sum()
    reaction_right = (slices @ (middle - left_m)) / (right_m - left_m)
    reaction_left = weight - reaction_right
    at = np.linspace(0.0, length_m, 2001)
    moment = np.array([-(slices * np.maximum(x - middle, 0.0)).sum() for x in at])
    moment += reaction_left * np.maximum(at - left_m, 0.0) + reaction_right * np.maximum(at - right_m, 0.0)
    return np.abs(moment).max() / (depth_m**2 / 6)


@pytest.mark.parametrize("ratio", [0.0, 0.05, 0.1, 0.2071, 0.25, 0.3, 0.4, 0.45])
def test_a_strip_on_two_supports_agrees_with_slices(ratio):
    length, depth = 2.4, 0.038
    expected = numerical_stress_pa(length, depth, 2300.0, ratio * length, (1 - ratio) * length)
    assert bending.carried_stress_pa(length, depth, 2300.0, ratio) == pytest.approx(expected, rel=2e-3)


def test_the_best_supports_are_the_best():
    ratios = np.linspace(0, 0.5, 5001)
    stresses = bending.carried_stress_pa(2.4, 0.038, 2300.0, ratios)
    assert ratios[np.argmin(stresses)] == pytest.approx(bending.BEST_SUPPORT_RATIO, abs=1e-4)
    by_ends = bending.carried_stress_pa(2.4, 0.038, 2300.0)
    at_best = bending.carried_stress_pa(2.4, 0.038, 2300.0, bending.BEST_SUPPORT_RATIO)
    assert at_best / by_ends == pytest.approx(3 - 2 * 2**0.5, rel=1e-9)  # 0.1287 / 0.75


def test_a_five_foot_patio_top_carried_by_opposite_edges():
    # 5 x 5 ft, 3/4 in: 312 psi still, 4 psi on edge; it cracked when it was moved (case H01)
    flat = bending.carried_stress_pa(60 * IN, 0.75 * IN, PCF_150) / PSI
    assert flat == pytest.approx(312.5, abs=0.1)
    assert bending.carried_stress_pa(60 * IN, 60 * IN, PCF_150) / PSI == pytest.approx(3.9, abs=0.1)


def test_carried_by_the_ends_is_the_simple_span():
    carried = bending.carried_stress_pa(1.8, 0.0381, 2350.0)
    assert carried == pytest.approx(bending.simple_span_stress_pa(1.8, 0.6, 0.0381, 2350.0), rel=1e-12)


def test_a_cantilever_with_no_load_is_half_a_balanced_strip():
    # a strip balanced on its middle is two overhangs of half the length
    balanced = bending.carried_stress_pa(2.0, 0.038, 2300.0, 0.5)
    assert bending.cantilever_stress_pa(1.0, 0.5, 0.038, 2300.0) == pytest.approx(balanced, rel=1e-12)


@given(sizes, depths, st.floats(0, 200))
def test_fixed_ends_help_and_never_double(length, depth, load):
    free = bending.simple_span_stress_pa(length, 0.08, depth, 2300.0, load)
    fixed = bending.fixed_rail_stress_pa(length, 0.08, depth, 2300.0, load)
    assert 0.5 * free <= fixed * (1 + 1e-9) and fixed <= free * 2 / 3 * (1 + 1e-9)


@given(sizes, depths)
def test_own_weight_stress_goes_with_length_squared_and_one_over_thickness(length, depth):
    once = bending.carried_stress_pa(length, depth, 2300.0)
    assert bending.carried_stress_pa(2 * length, depth, 2300.0) == pytest.approx(4 * once, rel=1e-9)
    assert bending.carried_stress_pa(length, 2 * depth, 2300.0) == pytest.approx(once / 2, rel=1e-9)


@given(depths)
def test_a_load_bends_a_thin_piece_four_times_as_hard_at_half_the_thickness(depth):
    def of_load(d):
        return bending.cantilever_stress_pa(0.25, 0.6, d, 2300.0, 90.0) - bending.cantilever_stress_pa(
            0.25, 0.6, d, 2300.0
        )

    assert of_load(depth / 2) == pytest.approx(4 * of_load(depth), rel=1e-9)


def test_the_engineer_who_would_not_rely_on_it_unreinforced():
    # case H03: 5 m of 150 mm, 2.94 MPa or 427 psi from its weight alone
    stress = bending.bending_stress_pa(bending.span_moment_n_m(5.0, 360.0), 1.0, 0.150)
    assert stress / PSI == pytest.approx(427, rel=0.01)


def test_weight_of_tops_people_make():
    # cases W01, V03, V13
    assert loads.area_mass_kg_m2(1.5 * IN, PCF_150) * 32 * FT**2 / LB == pytest.approx(600, abs=0.1)
    assert loads.area_mass_kg_m2(1.75 * IN, PCF_150) * 9 * FT**2 / LB == pytest.approx(197, abs=0.2)


def test_impossible_weights_in_print_are_seen():
    # case W02: "3/4 in weighs 10-12 lb/ft2", "2 in weighs 25-30"
    low, high = loads.CEMENT_MIX_DENSITY_KG_M3
    psf = LB / FT**2
    for weight, thick in ((10, 0.75), (12, 0.75), (30, 2.0)):
        assert loads.implied_density_kg_m3(weight * psf, thick * IN) > high
    for weight, thick in ((7.5, 0.75), (8.75, 0.75), (10, 1.0), (25, 2.0)):
        assert low <= loads.implied_density_kg_m3(weight * psf, thick * IN) <= high


def test_the_push_on_a_form_is_the_sum_of_its_pressures():
    depth = np.linspace(0, 0.9, 9001)
    total = np.trapezoid(loads.liquid_head_pa(depth, 2400.0), depth) / loads.GRAVITY_M_S2
    assert loads.liquid_head_push_kg_m(0.9, 2400.0) == pytest.approx(total, rel=1e-6)


def test_spread_rate_fills_its_film():
    rate = loads.spread_rate_m2_m3(0.4, 50e-6)
    assert rate * 50e-6 == pytest.approx(0.4)


def test_a_map_of_ten_thousand_pieces_equals_single_calls():
    length, depth = np.meshgrid(np.linspace(0.5, 3, 100), np.linspace(0.02, 0.08, 100))
    calls = (
        lambda a, b: bending.carried_stress_pa(a, b, 2300.0, 0.1),
        lambda a, b: bending.simple_span_stress_pa(a, 0.3, b, 2300.0, 45.0),
        lambda a, b: bending.fixed_rail_stress_pa(a, 0.3, b, 2300.0, 45.0),
        lambda a, b: bending.cantilever_stress_pa(a, 0.3, b, 2300.0, 45.0),
    )
    for call in calls:
        whole = call(length, depth)
        assert whole.shape == (100, 100)
        for i, j in ((0, 0), (99, 99), (3, 71)):
            assert whole[i, j] == pytest.approx(call(float(length[i, j]), float(depth[i, j])), rel=1e-12)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: bending.carried_stress_pa(0.0, 0.038, 2300.0), "length"),
        (lambda: bending.carried_stress_pa(2.4, 0.0, 2300.0), "depth"),
        (lambda: bending.carried_stress_pa(2.4, 0.038, 2300.0, 0.6), "place of the supports"),
        (lambda: bending.cantilever_stress_pa(0.2, 0.5, 0.038, 2300.0, -5.0), "load"),
        (lambda: bending.simple_span_stress_pa(1.0, -0.1, 0.038, 2300.0), "line load|width"),
        (lambda: bending.section_modulus_m3(0.0, 0.1), "width"),
        (lambda: loads.area_mass_kg_m2(0.038, 0.0), "density"),
        (lambda: loads.liquid_head_pa(-0.1, 2300.0), "depth"),
        (lambda: loads.spread_rate_m2_m3(25.0, 38e-6), "solids"),
    ],
)
def test_an_impossible_piece_is_named(call, words):
    with pytest.raises(ValueError, match=words):
        call()
