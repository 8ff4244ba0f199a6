"""Moisture: grains, pores and free water must add up, and signs must be right.

Numbers printed elsewhere are rows of data/published/moisture.csv.
"""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shop_calc.science import absolute_volume as av
from shop_calc.science import moisture, ssd_basis, water_ratio

MASS = st.floats(0.1, 2000.0)
WET = st.floats(0.0, 0.15)
PORES = st.floats(0.0, 0.06)
AGGREGATES = st.lists(st.tuples(MASS, WET, PORES), min_size=1, max_size=4)


def columns(rows):
    return (np.array(column) for column in zip(*rows, strict=True))


@given(AGGREGATES, st.floats(0.0, 500.0))
def test_the_whole_batch_grows_by_exactly_the_absorbed_water(aggregates, design_water):
    dry, wet, pores = columns(aggregates)
    recipe = dry.sum() + design_water
    weighed = moisture.batch_mass_kg(dry, wet).sum()
    weighed += design_water + moisture.water_correction_kg(dry, wet, pores).sum()
    absorbed = moisture.absorbed_water_kg(dry, pores).sum()
    assert weighed - recipe == pytest.approx(absorbed, abs=1e-9 * recipe)


@given(AGGREGATES, st.floats(0.0, 500.0))
def test_the_free_water_of_the_mix_stays_as_designed(aggregates, design_water):
    dry, wet, pores = columns(aggregates)
    added = design_water + moisture.water_correction_kg(dry, wet, pores).sum()
    free = moisture.free_water_kg(dry, wet, pores).sum()
    assert added + free == pytest.approx(design_water, abs=1e-9)


@given(MASS, WET, PORES)
def test_oven_dry_and_saturated_basis_put_the_same_on_the_scale(dry, wet, pores):
    ssd = ssd_basis.ssd_from_oven_dry_kg(dry, pores)
    free = ssd_basis.free_moisture_on_ssd_fraction(wet, pores)
    assert ssd_basis.ssd_batch_mass_kg(ssd, free) == pytest.approx(
        moisture.batch_mass_kg(dry, wet), rel=1e-12
    )
    correction = ssd_basis.ssd_water_correction_kg(ssd, free)
    assert correction == pytest.approx(moisture.water_correction_kg(dry, wet, pores), abs=1e-9)


@given(MASS, WET, PORES)
def test_scale_and_oven_lead_back_to_the_grains(dry, wet, pores):
    on_the_scale = moisture.batch_mass_kg(dry, wet)
    assert moisture.oven_dry_from_batch_kg(on_the_scale, wet) == pytest.approx(dry, rel=1e-12)
    assert moisture.moisture_fraction(max(on_the_scale, dry), dry) == pytest.approx(wet, abs=1e-12)
    saturated = ssd_basis.ssd_from_oven_dry_kg(dry, pores)
    assert ssd_basis.oven_dry_from_ssd_kg(saturated, pores) == pytest.approx(dry, rel=1e-12)


@given(MASS, PORES)
def test_the_grains_take_the_same_room_oven_dry_and_saturated(dry, pores):
    # absorbed water adds mass and no volume: the saturated relative density is larger by the same share
    saturated = ssd_basis.ssd_from_oven_dry_kg(dry, pores)
    same = av.solid_volume_m3(saturated, 2.65 * (1 + pores))
    assert same == pytest.approx(av.solid_volume_m3(dry, 2.65), rel=1e-12)


def test_wet_sand_is_weighed_heavier_and_water_left_out():
    # a printed answer weighs out 980 kg for 1000 kg of saturated sand with 2 % free moisture
    heavier = ssd_basis.ssd_batch_mass_kg(1000.0, 0.02)
    assert heavier == pytest.approx(1020.0, abs=1e-9) and heavier != pytest.approx(980.0, abs=1.0)
    assert ssd_basis.ssd_water_correction_kg(1000.0, 0.02) == pytest.approx(-20.0, abs=1e-9)


def test_dry_sand_is_weighed_lighter_and_water_added():
    # the same answer adds aggregate and cuts water
    free = ssd_basis.free_moisture_on_ssd_fraction(0.0, 0.02)
    assert ssd_basis.ssd_batch_mass_kg(1000.0, free) < 1000.0
    assert ssd_basis.ssd_water_correction_kg(1000.0, free) > 0


def test_absorption_is_not_counted_twice():
    # a printed lecture weighs out 1246.96 lb for 1195 lb of saturated sand
    dry = ssd_basis.oven_dry_from_ssd_kg(1195.0, 0.013)
    right = moisture.batch_mass_kg(dry, 0.043)
    assert right == pytest.approx(1230.39, abs=0.005)
    assert right != pytest.approx(1246.96, abs=10.0)


def test_wetter_sand_means_less_added_water():
    correction = moisture.water_correction_kg(100.0, np.array([0.0, 0.01, 0.02, 0.05]), 0.02)
    assert np.all(np.diff(correction) < 0)
    assert correction[0] > 0 and correction[2] == pytest.approx(0, abs=1e-12) and correction[3] < 0


def test_saturated_sand_needs_no_correction():
    assert moisture.water_correction_kg(100.0, 0.013, 0.013) == 0
    assert ssd_basis.free_moisture_on_ssd_fraction(0.013, 0.013) == 0


@given(MASS, st.floats(0.1, 1.0))
def test_water_and_binder_for_a_ratio_are_inverse(binder, ratio):
    water = water_ratio.water_for_ratio_kg(binder, ratio)
    assert water_ratio.water_cementitious_ratio(binder, water) == pytest.approx(ratio, rel=1e-12)
    assert water_ratio.cementitious_for_ratio_kg(water, ratio) == pytest.approx(binder, rel=1e-12)


def test_absorbed_water_never_counts_for_the_ratio():
    dry, pores, binder, design = np.array([60.0, 120.0]), np.array([0.005, 0.010]), 100.0, 33.0
    ratios = []
    for wet in (0.0, 0.004, 0.03):
        added = design + moisture.water_correction_kg(dry, wet, pores).sum()
        free = moisture.free_water_kg(dry, wet, pores).sum()
        ratios.append(water_ratio.water_cementitious_ratio(binder, added, free))
    assert ratios == pytest.approx([0.33, 0.33, 0.33], rel=1e-12)


def test_water_inside_liquids_counts():
    liquid = water_ratio.water_in_liquid_kg(np.array([10.0, 0.6]), np.array([0.5, 0.4]))
    assert liquid == pytest.approx([5.0, 0.36], rel=1e-12)
    with_it = water_ratio.water_cementitious_ratio(100.0, 27.64, liquid_water_kg=liquid.sum())
    assert with_it - water_ratio.water_cementitious_ratio(100.0, 27.64) == pytest.approx(0.0536, rel=1e-9)


def test_pure_water_and_pure_solids_are_the_ends_of_a_liquid():
    assert water_ratio.water_in_liquid_kg(3.0, 0.0) == 3.0
    assert water_ratio.water_in_liquid_kg(3.0, 1.0) == 0.0


def test_many_at_once_are_the_same_as_one_by_one():
    dry, wet, pores = np.array([10.0, 20.0]), np.array([0.01, 0.06]), np.array([0.012, 0.005])
    for function in (moisture.free_water_kg, moisture.water_correction_kg):
        singly = [function(*row) for row in zip(dry, wet, pores, strict=True)]
        assert function(dry, wet, pores) == pytest.approx(singly, rel=1e-12)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: moisture.batch_mass_kg(10.0, 6), "moisture: 6 given; it must be at least 0 and less than 1"),
        (lambda: moisture.batch_mass_kg(-1.0, 0.06), "oven-dry mass: -1 kg given"),
        (lambda: moisture.absorbed_water_kg(1.0, -0.1), "absorption: -0.1 given"),
        (lambda: moisture.moisture_fraction(0.9, 1.0), "damp mass: 0.9 kg given; it must be at least 1 kg"),
        (lambda: ssd_basis.ssd_batch_mass_kg(1.0, 2.0), "free moisture: 2 given"),
        (
            lambda: water_ratio.water_in_liquid_kg(1.0, 50),
            "solids: 50 given; it must be at least 0 and at most 1",
        ),
        (lambda: water_ratio.water_cementitious_ratio(0.0, 1.0), "cementitious mass: 0 kg given"),
        (lambda: water_ratio.water_cementitious_ratio(10.0, 1.0, -2.0), "free water: -2 kg given"),
        (lambda: water_ratio.cementitious_for_ratio_kg(1.0, 0.0), "w/cm: 0 given; it must be more than 0"),
    ],
)
def test_impossible_input_is_refused_in_words(call, words):
    with pytest.raises(ValueError) as caught:
        call()
    assert words in str(caught.value)
