"""Absolute volume: arithmetic that must close, limits, directions, and what is refused.

Numbers printed elsewhere are rows of data/published/absolute_volume.csv; here stand identities.
"""

import iapws
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shop_calc.science import absolute_volume as av
from shop_calc.science import bulk, portions

MASS = st.floats(0.01, 1000.0)
DENSITY = st.floats(0.9, 7.0)
AIR = st.floats(0.0, 0.15)


def test_water_as_the_trade_counts_it_is_within_a_tenth_of_a_percent_of_water():
    steam_tables = iapws.IAPWS97(T=288.15, P=0.101325).rho  # IAPWS-IF97 at 15 °C
    assert pytest.approx(999.552, abs=5e-4) == av.WATER_DENSITY_KG_M3
    assert pytest.approx(steam_tables, rel=1e-3) == av.WATER_DENSITY_KG_M3


@given(MASS, DENSITY)
def test_mass_comes_back_from_volume(mass_kg, relative_density):
    volume = av.solid_volume_m3(mass_kg, relative_density)
    assert volume * relative_density * av.WATER_DENSITY_KG_M3 == pytest.approx(mass_kg, rel=1e-12)


@given(st.lists(st.tuples(MASS, DENSITY), min_size=1, max_size=6), AIR, MASS, DENSITY)
def test_the_ingredient_found_by_difference_fills_the_mix_exactly(known, air, last_kg, last_density):
    mass, density = (list(column) for column in zip(*known, strict=True))
    total = av.mix_volume_m3([*mass, last_kg], [*density, last_density], air)
    found = av.mass_by_difference_kg(total, mass, density, air, last_density)
    assert float(found) == pytest.approx(last_kg, rel=1e-7, abs=1e-7)


@given(st.lists(st.tuples(MASS, DENSITY), min_size=1, max_size=6), AIR)
def test_solids_and_air_add_up_to_the_mix(known, air):
    mass, density = (list(column) for column in zip(*known, strict=True))
    total = float(av.mix_volume_m3(mass, density, air))
    solids = sum(av.solid_volume_m3(m, d) for m, d in known)
    assert solids + av.air_volume_m3(total, air) == pytest.approx(total, rel=1e-12)


def test_more_air_makes_more_mix_and_nothing_else_changes():
    volumes = [float(av.mix_volume_m3([80.0, 33.0], [3.15, 1.0], air)) for air in (0.0, 0.02, 0.05, 0.10)]
    assert volumes == sorted(volumes) and len(set(volumes)) == 4
    assert volumes[0] / volumes[3] == pytest.approx(0.9, rel=1e-12)


def test_the_order_of_ingredients_does_not_matter():
    one = av.mix_volume_m3([80.0, 100.0, 33.0], [3.15, 2.65, 1.0], 0.04)
    other = av.mix_volume_m3([33.0, 80.0, 100.0], [1.0, 3.15, 2.65], 0.04)
    assert float(one) == pytest.approx(float(other), rel=1e-14)


def test_many_mixes_at_once_are_the_same_as_one_by_one():
    mass = np.array([[80.0, 100.0, 33.0], [90.0, 100.0, 30.0]])
    density, air = [3.15, 2.65, 1.0], np.array([0.02, 0.06])
    together = av.mix_volume_m3(mass, density, air)
    singly = [float(av.mix_volume_m3(row, density, a)) for row, a in zip(mass, air, strict=True)]
    assert together == pytest.approx(singly, rel=1e-12)


@given(st.floats(0.001, 10.0), st.lists(st.tuples(MASS, DENSITY), min_size=1, max_size=4))
def test_the_mortar_share_times_the_extended_volume_is_the_mortar(mortar, added):
    mass, density = (list(column) for column in zip(*added, strict=True))
    phi = float(av.mortar_fraction(mortar, mass, density))
    assert 0 < phi < 1
    assert phi * float(av.extended_volume_m3(mortar, mass, density)) == pytest.approx(mortar, rel=1e-12)


def test_nothing_added_leaves_a_mortar_share_of_one():
    assert float(av.mortar_fraction(0.05, [0.0, 0.0], [2.65, 2.65])) == 1.0
    assert float(av.mortar_fraction(0.05, [], [])) == 1.0


def test_more_stone_leaves_a_smaller_mortar_share():
    shares = [float(av.mortar_fraction(0.05, [m], [2.65])) for m in (0.0, 20.0, 60.0, 200.0)]
    assert shares == sorted(shares, reverse=True) and len(set(shares)) == 4


def test_stretching_is_the_same_as_mixing_all_at_once_without_new_air():
    mortar = float(av.mix_volume_m3([80.0, 33.0], [3.15, 1.0], 0.0))
    stretched = float(av.extended_volume_m3(mortar, [120.0], [2.65]))
    assert stretched == pytest.approx(
        float(av.mix_volume_m3([80.0, 33.0, 120.0], [3.15, 1.0, 2.65])), rel=1e-12
    )


def test_voids_and_grains_fill_the_measure():
    voids = bulk.void_fraction(1600.0, 2.65)
    assert av.solid_volume_m3(1600.0, 2.65) + voids == pytest.approx(1.0, rel=1e-12)


def test_bulk_as_dense_as_its_grains_has_no_voids():
    assert bulk.void_fraction(2.65 * av.WATER_DENSITY_KG_M3, 2.65) == pytest.approx(0.0, abs=1e-12)


def test_stone_by_bulk_volume_fills_that_share_with_stone_and_voids():
    mass = bulk.coarse_mass_from_bulk_kg(0.63, 1633.9, 1.0)
    voids = bulk.void_fraction(1633.9, 2.60) * 0.63
    assert av.solid_volume_m3(mass, 2.60) + voids == pytest.approx(0.63, rel=1e-12)


def test_bulked_sand_is_short_by_less_than_it_swells():
    swelling = bulk.bulking_fraction(np.array([0.20, 0.18, 0.16]), 0.16)
    short = bulk.volume_shortfall_fraction(swelling)
    assert short == pytest.approx(1 - 0.16 / np.array([0.20, 0.18, 0.16]), abs=1e-12)
    assert np.all(short[:2] < swelling[:2]) and short[2] == pytest.approx(0, abs=1e-12)


@given(st.integers(1, 200), st.sampled_from([0.1, 0.3, 0.45, 0.6, 0.7]))
def test_an_exact_number_of_bags_buys_no_extra_bag(count, bag):
    assert portions.whole_units_count(count * bag, bag) == count


def test_a_little_more_than_a_bag_is_two_bags():
    assert portions.whole_units_count(0.6 * 1.001, 0.6) == 2.0
    assert list(portions.whole_units_count(np.array([0.0, 0.59, 0.61]), 0.6)) == [0, 1, 2]


def test_bags_by_label_mass_over_wet_density_buy_nine_percent_too_many():
    # the wrong way of a printed answer: 74.61 ft3 at 145 lb/ft3 in bags of 40 lb gave 271
    wrong, right = 271, portions.whole_units_count(74.61, 0.30)
    assert right == 249 and wrong / right == pytest.approx(1.09, abs=0.005)


def test_the_vessel_needed_holds_the_batch():
    assert portions.usable_volume_m3(portions.rated_volume_m3(0.07, 0.58), 0.58) == pytest.approx(
        0.07, rel=1e-12
    )


def test_spread_twice_as_thick_it_covers_half():
    assert portions.coverage_m2(0.017, 0.02) == pytest.approx(
        2 * portions.coverage_m2(0.017, 0.04), rel=1e-12
    )


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: av.solid_volume_m3(-1.0, 3.15), "mass: -1 kg given; it must be at least 0 kg"),
        (lambda: av.solid_volume_m3(1.0, 2650.0), "relative density: 2650 given; it must be at least 0.01"),
        (lambda: av.solid_volume_m3(1.0, 0.0), "relative density: 0 given"),
        (lambda: av.solid_volume_m3(float("nan"), 1.0), "mass: nan"),
        (lambda: av.solid_volume_m3(1.0, 1.0, 62.4), "density of water: 62.4 kg/m3 given"),
        (lambda: av.mix_volume_m3([1.0], [1.0], 5), "air: 5 given; it must be at least 0 and less than 1"),
        (lambda: av.mix_volume_m3([1.0, 2.0, 3.0], [1.0, 2.0]), "relative densities: 2 given for 3 masses"),
        (lambda: av.mix_volume_m3(1.0, [1.0, 2.0]), "relative densities: 2 given for 1 masses"),
        (lambda: av.mass_by_difference_kg(0.1, [500.0], [2.65], 0.0, 2.65), "fill 88.76 L more"),
        (lambda: av.mortar_fraction(0.0, [1.0], [2.65]), "volume of mortar: 0 m3 given"),
        (lambda: bulk.void_fraction(2700.0, 2.65), "at most 2648.81 kg/m3, the density of the grains"),
        (lambda: bulk.bulking_fraction(0.15, 0.16), "height of the damp sand: 0.15 m given"),
        (lambda: portions.usable_volume_m3(0.1, 1.2), "usable share of the vessel: 1.2 given"),
        (lambda: portions.whole_units_count(1.0, 0.0), "yield of one unit: 0 m3 given"),
        (lambda: portions.coverage_m2(1.0, 0.0), "thickness: 0 m given"),
    ],
)
def test_impossible_input_is_refused_in_words(call, words):
    with pytest.raises(ValueError) as caught:
        call()
    assert words in str(caught.value)
