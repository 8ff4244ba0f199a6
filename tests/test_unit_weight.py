"""Unit weight and yield: the loop from masses to a filled measure and back must close.

Numbers printed elsewhere are rows of data/published/yield.csv.
"""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shop_calc.science import absolute_volume as av
from shop_calc.science import unit_weight as uw


@given(
    st.lists(st.tuples(st.floats(0.5, 500.0), st.floats(0.9, 5.0)), min_size=1, max_size=6),
    st.floats(0.0, 0.15),
)
def test_air_comes_back_from_the_densities(ingredients, air):
    mass, density = (list(column) for column in zip(*ingredients, strict=True))
    free = sum(mass) / float(av.mix_volume_m3(mass, density))
    real = sum(mass) / float(av.mix_volume_m3(mass, density, air))
    assert uw.gravimetric_air_fraction(free, min(real, free)) == pytest.approx(air, abs=1e-12)


@given(st.floats(1000.0, 2600.0), st.floats(0.0, 2.0), st.floats(2e-4, 0.02))
def test_a_full_cup_tells_the_density_again(density, empty, volume):
    full = uw.cup_mass_kg(density, volume, empty)
    assert uw.density_kg_m3(full, empty, volume) == pytest.approx(density, rel=1e-9)


@given(st.floats(1.0, 2000.0), st.floats(1000.0, 2600.0))
def test_yield_times_density_is_the_mass(mass, density):
    assert uw.yield_volume_m3(mass, density) * density == pytest.approx(mass, rel=1e-12)


def test_a_batch_that_yields_what_was_designed_has_relative_yield_one():
    assert uw.relative_yield_ratio(0.05, 0.05) == 1.0


def test_a_us_quart_is_a_quarter_of_231_cubic_inches():
    assert pytest.approx(231 / 4 * 0.0254**3, rel=1e-15) == uw.US_QUART_M3


def test_lighter_mix_means_more_air():
    air = uw.gravimetric_air_fraction(2208.0, np.array([2208.0, 2150.0, 2100.0, 2000.0]))
    assert air[0] == 0 and np.all(np.diff(air) > 0)


def test_a_light_cup_of_one_percent_is_one_percent_of_yield():
    normal = uw.yield_volume_m3(100.0, uw.density_kg_m3(2.0, 0.0, 1e-3))
    light = uw.yield_volume_m3(100.0, uw.density_kg_m3(1.98, 0.0, 1e-3))
    assert light / normal == pytest.approx(1 / 0.99, rel=1e-12)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: uw.density_kg_m3(1.0, 2.0, 0.001), "full measure: 1 kg given; it must be at least 2 kg"),
        (lambda: uw.density_kg_m3(2.0, 1.0, 0.0), "volume of the measure: 0 m3 given"),
        (lambda: uw.gravimetric_air_fraction(2200.0, 2300.0), "at most 2200 kg/m3, the density without air"),
        (lambda: uw.yield_volume_m3(10.0, 0.0), "density of the mix: 0 kg/m3 given"),
        (lambda: uw.relative_yield_ratio(0.1, 0.0), "designed volume: 0 m3 given"),
        (lambda: uw.cup_mass_kg(2000.0, -1.0), "volume of the cup: -1 m3 given"),
    ],
)
def test_impossible_input_is_refused_in_words(call, words):
    with pytest.raises(ValueError) as caught:
        call()
    assert words in str(caught.value)
