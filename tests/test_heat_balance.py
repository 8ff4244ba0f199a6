"""Mix temperature: heat is conserved, °C and °F agree, the inverses lead back, wrong answers are not ours.

Numbers printed elsewhere are rows of data/published/mix_temperature.csv.
"""

import iapws
import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from iapws._iapws import _Ice

from shop_calc.science import cooling
from shop_calc.science import heat_balance as hb

MASS = st.floats(1.0, 500.0)
WARM = st.floats(0.0, 60.0)
SOLIDS = st.lists(st.tuples(MASS, WARM), min_size=1, max_size=4)
# sand and cement 100 kg each, water 32 kg: 26.05 °C, a mix rich in cement
SOLID_KG, SOLID_C, WATER_KG, WATER_C = [100.0, 100.0], [30.0, 28.0], 32.0, 22.0


def columns(rows):
    return (list(column) for column in zip(*rows, strict=True))


def fahrenheit(temp_c):
    return 1.8 * np.asarray(temp_c) + 32.0


def balance_in_f(solid_kg, solid_f, water_kg, water_f, ice_kg, ice_term):
    """The form for °F as it stands in print: the same line with another ice term."""
    heat = 0.22 * np.dot(solid_kg, solid_f) + np.dot(water_kg, water_f) - ice_term * ice_kg
    return heat / (0.22 * np.sum(solid_kg) + np.sum(water_kg) + ice_kg)


@given(SOLIDS, SOLIDS, st.floats(0.0, 1.0))
def test_celsius_with_80_and_fahrenheit_with_112_give_one_temperature(solids, waters, ice):
    (solid_kg, solid_c), (water_kg, water_c) = columns(solids), columns(waters)
    try:
        celsius = hb.mix_temp_c(solid_kg, solid_c, water_kg, water_c, ice)
    except ValueError:  # too much ice for so cold a mix
        assume(False)
    in_f = balance_in_f(solid_kg, fahrenheit(solid_c), water_kg, fahrenheit(water_c), ice, ice_term=112.0)
    assert in_f == pytest.approx(float(fahrenheit(celsius)), abs=1e-9)


def test_144_would_be_the_wrong_ice_term_in_fahrenheit():
    # the melt enters at 32 °F: 144 - 32 = 112; with 144 the mix seems 2.2 °F colder than it is
    right = float(fahrenheit(hb.mix_temp_c(SOLID_KG, SOLID_C, 27.0, WATER_C, 5.0)))
    both = [balance_in_f(SOLID_KG, fahrenheit(SOLID_C), [27.0], [71.6], 5.0, term) for term in (112.0, 144.0)]
    assert both[0] == pytest.approx(right, abs=1e-9)
    assert right - both[1] == pytest.approx(5 * 32 / 76, rel=1e-9)


def test_latent_heat_of_79_6_belongs_to_111_28_in_fahrenheit():
    celsius = hb.mix_temp_c(SOLID_KG, SOLID_C, 27.0, WATER_C, 5.0, ice_latent_heat_k=79.6)
    in_f = balance_in_f(SOLID_KG, fahrenheit(SOLID_C), [27.0], [71.6], 5.0, 1.8 * 79.6 - 32)
    assert in_f == pytest.approx(float(fahrenheit(celsius)), abs=1e-9)


def test_the_constants_agree_with_the_water_tables():
    # IAPWS-06 ice and IAPWS-IF97 water, package iapws
    ice, water = _Ice(273.15, 0.101325), iapws.IAPWS97(T=273.16, P=0.101325)
    room = iapws.IAPWS97(T=293.15, P=0.101325)
    assert pytest.approx(room.cp * 1000, rel=1e-3) == hb.WATER_SPECIFIC_HEAT_J_KG_K
    assert pytest.approx((water.h - ice["h"]) / room.cp, rel=0.006) == hb.ICE_LATENT_HEAT_K
    assert pytest.approx(ice["cp"] / room.cp, rel=0.01) == hb.ICE_SPECIFIC_HEAT


def test_freezer_ice_cools_as_the_ice_tables_say():
    # enthalpy from -18 °C to melting, IAPWS-06; the mean of 0.50 is 2.6 % high so far below melting
    deeper = _Ice(273.15, 0.101325)["h"] - _Ice(255.15, 0.101325)["h"]
    ours = (hb.ice_cooling_k(-18.0) - hb.ice_cooling_k(0.0)) * 4.184
    assert ours == pytest.approx(deeper, rel=0.04)


@given(SOLIDS, SOLIDS)
def test_what_the_warm_parts_lose_the_cold_parts_gain(solids, waters):
    (solid_kg, solid_c), (water_kg, water_c) = columns(solids), columns(waters)
    mix = float(hb.mix_temp_c(solid_kg, solid_c, water_kg, water_c))
    gain = 0.22 * np.dot(solid_kg, mix - np.array(solid_c)) + np.dot(water_kg, mix - np.array(water_c))
    assert gain == pytest.approx(0.0, abs=1e-8 * float(hb.water_equivalent_kg(solid_kg, water_kg)))
    assert min(solid_c + water_c) - 1e-9 <= mix <= max(solid_c + water_c) + 1e-9


def test_parts_of_one_temperature_stay_there():
    assert float(hb.mix_temp_c([10.0, 20.0], 21.0, [3.0, 4.0], 21.0)) == pytest.approx(21.0, rel=1e-12)


def test_one_ice_lump_in_water_of_80_degrees_melts_to_zero():
    assert float(hb.mix_temp_c(0.0, 20.0, 1.0, 80.0, 1.0)) == pytest.approx(0.0, abs=1e-12)


def test_ice_cools_more_than_water_of_zero_degrees():
    ice = hb.mix_temp_c(SOLID_KG, SOLID_C, 27.0, WATER_C, 5.0)
    cold = hb.mix_temp_c(SOLID_KG, SOLID_C, [27.0, 5.0], [WATER_C, 0.0])
    assert float(cold - ice) == pytest.approx(5 * 80 / 76, rel=1e-12)


def test_every_part_pulls_in_its_own_direction():
    base = float(hb.mix_temp_c(SOLID_KG, SOLID_C, WATER_KG, WATER_C))
    assert float(hb.mix_temp_c(SOLID_KG, [31.0, 28.0], WATER_KG, WATER_C)) > base
    assert float(hb.mix_temp_c(SOLID_KG, SOLID_C, WATER_KG, 23.0)) > base
    assert float(hb.mix_temp_c(SOLID_KG, SOLID_C, 40.0, WATER_C)) < base
    temps = [float(hb.mix_temp_c(SOLID_KG, SOLID_C, WATER_KG - ice, WATER_C, ice)) for ice in (0, 2, 4, 8)]
    assert temps == sorted(temps, reverse=True)
    freezer = hb.mix_temp_c(SOLID_KG, SOLID_C, 28.0, WATER_C, 4.0, ice_temp_c=-18.0)
    assert float(freezer) < temps[2]


@given(SOLIDS, st.floats(5.0, 100.0), st.floats(0.0, 3.0), st.floats(5.0, 35.0), MASS, WARM)
def test_water_of_the_temperature_found_gives_the_mix_wanted(solids, water, ice, wanted, other, other_c):
    solid_kg, solid_c = columns(solids)
    try:
        needed = float(
            cooling.water_temperature_for_c(
                wanted, solid_kg, solid_c, water, [other, 1.0], [other_c, 20.0], ice
            )
        )
    except ValueError:  # all that ice cannot melt even with boiling water
        assume(False)
    assume(0 <= needed <= 100)
    back = hb.mix_temp_c(solid_kg, solid_c, [water, other, 1.0], [needed, other_c, 20.0], ice)
    assert float(back) == pytest.approx(wanted, abs=1e-7)


@given(SOLIDS, st.floats(10.0, 200.0), st.floats(5.0, 30.0), st.floats(1.0, 30.0), st.floats(-25.0, 0.0))
def test_ice_put_back_gives_the_mix_wanted(solids, water, water_c, wanted, ice_c):
    solid_kg, solid_c = columns(solids)
    try:
        ice = float(cooling.ice_for_kg(wanted, solid_kg, solid_c, water, water_c, ice_temp_c=ice_c))
    except ValueError:  # more ice than water, tested below
        assume(False)
    got = float(hb.mix_temp_c(solid_kg, solid_c, water - ice, water_c, ice, ice_temp_c=ice_c))
    assert 0 <= ice <= water
    if ice > 0:
        assert got == pytest.approx(wanted, abs=1e-7)
    else:
        assert got <= wanted + 1e-9


def test_the_ice_reckoned_for_18_degrees_brings_18_degrees():
    ice = cooling.ice_for_kg(18.0, SOLID_KG, SOLID_C, WATER_KG, WATER_C, ice_latent_heat_k=79.6)
    back = hb.mix_temp_c(SOLID_KG, SOLID_C, WATER_KG - ice, WATER_C, ice, ice_latent_heat_k=79.6)
    assert float(back) == pytest.approx(18.0, abs=1e-12)


def test_a_mix_that_is_cold_enough_needs_no_ice():
    assert float(cooling.ice_for_kg(30.0, SOLID_KG, SOLID_C, WATER_KG, WATER_C)) == 0.0


def test_water_that_cannot_be_liquid_is_told_by_its_number():
    assert float(cooling.water_temperature_for_c(10.0, SOLID_KG, SOLID_C, WATER_KG)) < 0
    assert float(cooling.water_temperature_for_c(60.0, SOLID_KG, SOLID_C, WATER_KG)) > 100


def test_sensitivities_are_the_slopes_of_the_balance():
    base = float(hb.mix_temp_c(SOLID_KG, SOLID_C, WATER_KG, WATER_C))
    sand = hb.degrees_for_one_ratio(100.0, hb.SOLID_SPECIFIC_HEAT, SOLID_KG, WATER_KG)
    moved = hb.mix_temp_c(SOLID_KG, [30.0, 28.0 - float(sand)], WATER_KG, WATER_C)
    assert base - float(moved) == pytest.approx(1.0, abs=1e-9)
    water = float(hb.degrees_for_one_ratio(WATER_KG, 1.0, SOLID_KG, WATER_KG))
    assert base - float(hb.mix_temp_c(SOLID_KG, SOLID_C, WATER_KG, WATER_C - water)) == pytest.approx(
        1, abs=1e-9
    )


def test_shares_of_all_parts_add_up_to_one_degree():
    parts = [(100.0, 0.22), (100.0, 0.22), (32.0, 1.0)]
    shares = [1 / float(hb.degrees_for_one_ratio(m, c, SOLID_KG, WATER_KG)) for m, c in parts]
    assert sum(shares) == pytest.approx(1.0, rel=1e-12)


def test_the_rule_8_4_2_fits_a_lean_mix_and_not_a_rich_one():
    rule = hb.RULE_OF_THUMB_RATIO
    lean = ([564.0, 3100.0], 282.0)  # cement, aggregate; water
    rich = ([100.0, 100.0], 32.0)
    for cement, aggregate, water, (solids, all_water), near in (
        (564.0, 3100.0, 282.0, lean, True),
        (100.0, 100.0, 32.0, rich, False),
    ):
        true = {
            "cement": float(hb.degrees_for_one_ratio(cement, 0.22, solids, all_water)),
            "water": float(hb.degrees_for_one_ratio(water, 1.0, solids, all_water)),
            "aggregate": float(hb.degrees_for_one_ratio(aggregate, 0.22, solids, all_water)),
        }
        assert all(abs(true[k] / rule[k] - 1) < 0.25 for k in rule) == near


def test_a_plain_average_by_mass_is_not_our_answer():
    # a printed page gives 16.4 °C for 375 kg of cement at 10 °C and 85 kg of water at 45 °C
    assert float(hb.mix_temp_c(375.0, 10.0, 85.0, 45.0)) == pytest.approx(27.76, abs=0.005)
    plain = float(hb.mix_temp_c(375.0, 10.0, 85.0, 45.0, solid_specific_heat=1.0))
    assert plain == pytest.approx(16.47, abs=0.005)
    # solids of 90 °F with half their binder's mass of water at 40 °F: 84.4 °F would forget the 0.22
    ours = float(fahrenheit(hb.mix_temp_c([1.0, 3.0], (90 - 32) / 1.8, 0.5, (40 - 32) / 1.8)))
    assert ours == pytest.approx(71.88, abs=0.005) and ours != pytest.approx(84.4, abs=5)


def test_moisture_counts_as_water_at_the_temperature_of_its_sand():
    dry = hb.mix_temp_c([330.0, 1000.0], [20.0, 35.0], 150.0, 10.0)
    damp = hb.mix_temp_c([330.0, 1000.0], [20.0, 35.0], [100.0, 50.0], [10.0, 35.0])
    assert float(damp - dry) == pytest.approx(50 * 25 / float(hb.water_equivalent_kg([330.0, 1000.0], 150.0)))


def test_mixer_heat_is_an_upper_bound_that_grows_with_time():
    rise = hb.mixer_heat_rise_k(2000.0, np.array([0.0, 60.0, 180.0]), 17.488)
    assert rise[0] == 0 and rise[2] == pytest.approx(3 * rise[1], rel=1e-12)


def test_many_scenarios_at_once_are_the_same_as_one_by_one():
    temps = np.array([4.0, 12.0, 20.0])
    together = hb.mix_temp_c(SOLID_KG, SOLID_C, WATER_KG, temps[:, None])
    singly = [float(hb.mix_temp_c(SOLID_KG, SOLID_C, WATER_KG, t)) for t in temps]
    assert together == pytest.approx(singly, rel=1e-12)
    wanted = np.array([17.0, 18.0, 19.0])
    together = cooling.water_temperature_for_c(wanted, SOLID_KG, SOLID_C, WATER_KG)
    singly = [float(cooling.water_temperature_for_c(t, SOLID_KG, SOLID_C, WATER_KG)) for t in wanted]
    assert together == pytest.approx(singly, rel=1e-9)
    together = cooling.ice_for_kg(wanted, SOLID_KG, SOLID_C, WATER_KG, np.array([20.0, 22.0, 24.0]))
    pairs = zip(wanted, (20.0, 22.0, 24.0), strict=True)
    singly = [float(cooling.ice_for_kg(w, SOLID_KG, SOLID_C, WATER_KG, t)) for w, t in pairs]
    assert together == pytest.approx(singly, rel=1e-9)


def test_the_limits_of_ice_stand_in_order():
    assert 0 < hb.ICE_SHARE_WARN < hb.ICE_SHARE_UNRELIABLE < hb.ICE_SHARE_MAX < 1


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: hb.mix_temp_c(SOLID_KG, SOLID_C, WATER_KG, -3.0), "temperature of water: -3 °C given"),
        (
            lambda: hb.mix_temp_c(SOLID_KG, [300.0, 20.0], WATER_KG, 20.0),
            "temperature of solids: 300 °C given",
        ),
        (lambda: hb.mix_temp_c(-1.0, 20.0, WATER_KG, 20.0), "mass of solids: -1 kg given"),
        (lambda: hb.mix_temp_c(0.0, 20.0, 0.0, 20.0), "masses: nothing given"),
        (lambda: hb.mix_temp_c(1.0, 20.0, 1.0, 20.0, 5.0), "ice: 5 kg given; it must be so little"),
        (lambda: hb.mix_temp_c(1.0, [20.0, 30.0], 1.0, 20.0), "temperatures of solids: 2 given for 1 masses"),
        (lambda: hb.mix_temp_c([1.0, 2.0], 20.0, 1.0, [20.0, 30.0]), "temperatures of water: 2 given"),
        (lambda: hb.ice_cooling_k(ice_latent_heat_k=112.0), "latent heat of ice: 112 K given"),
        (lambda: hb.ice_cooling_k(4.0), "temperature of ice: 4 °C given"),
        (lambda: cooling.ice_for_kg(2.0, SOLID_KG, SOLID_C, 8.0, WATER_C), "there are 8 kg of water for it"),
        (lambda: cooling.water_temperature_for_c(18.0, SOLID_KG, SOLID_C, 0.0), "added water: 0 kg given"),
        (
            lambda: cooling.water_temperature_for_c(18.0, 1.0, 20.0, 1.0, 1.0, [20.0, 21.0]),
            "temperatures of other water: 2 given for 1 masses",
        ),
        (lambda: hb.mixer_heat_rise_k(100.0, -1.0, 1.0), "mixing time: -1 s given"),
        (lambda: hb.degrees_for_one_ratio(0.0, 1.0, 1.0, 1.0), "mass of the part: 0 kg given"),
    ],
)
def test_impossible_input_is_refused_in_words(call, words):
    with pytest.raises(ValueError) as caught:
        call()
    assert words in str(caught.value)
