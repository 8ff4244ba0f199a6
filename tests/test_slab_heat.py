"""The slab against scipy's solver, the exact exponential, psychrolib's wet bulb and the reference day."""

import numpy as np
import psychrolib
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp

from shop_calc.science.evaporation import menzel_rate_kg_m2_h
from shop_calc.science.moist_air import LATENT_HEAT_J_KG, wet_bulb_c
from shop_calc.science.setting import age_at_resistance_h, rate_factor
from shop_calc.science.slab_heat import (
    THIN_BIOT_NUMBER,
    biot_number,
    convection_w_m2_k,
    crossing_time_h,
    slab_history,
)

psychrolib.SetUnitSystem(psychrolib.SI)
PSI_PA = 6894.757
E_J_MOL = 36000.0
STORAGE = 2250.0 * 1000.0  # J/m3/K, the defaults of slab_history
FIXED = 4.0 + 5.7  # W/m2/K, board and radiation
STILL_21 = {"air_temp_c": 21.0, "rh_fraction": 0.5, "wind_m_s": 0.0}
HOT_DRY_WINDY = {"air_temp_c": 35.0, "rh_fraction": 0.2, "wind_m_s": 16 / 3.6}


def history(start_c, thickness_m, room, hours=8, step_s=300, **more):
    more = {"activation_energy_j_mol": E_J_MOL, "step_count": round(hours * 3600 / step_s)} | more
    return slab_history(start_c, thickness_m, **room, step_s=step_s, **more)


def reference(start_c, thickness_m, rooms, free_kg_m2, step_s=300):
    """The heat balance as written, by scipy, one stretch after the other: temperature, water lost, te."""

    def slopes(_, state, air_c, rh, wind):
        temp_c, lost, _ = state
        share = 1.0 if lost < free_kg_m2 else np.exp(-(lost - free_kg_m2) / free_kg_m2)
        loss = share * menzel_rate_kg_m2_h(temp_c, air_c, rh, wind) / 3600
        exchange = convection_w_m2_k(wind) + FIXED
        heat = exchange * (air_c - temp_c) - LATENT_HEAT_J_KG * loss
        return [heat / (STORAGE * thickness_m), loss, rate_factor(temp_c, E_J_MOL) / 3600]

    states, state = [np.array([start_c, 0.0, 0.0])], [start_c, 0.0, 0.0]
    for steps, air_c, rh, wind in rooms:
        at = np.arange(1, steps + 1) * step_s
        solved = solve_ivp(
            slopes, (0, at[-1]), state, t_eval=at, args=(air_c, rh, wind), rtol=1e-8, atol=1e-9, max_step=60
        )
        states.extend(solved.y.T)
        state = solved.y[:, -1]
    return np.array(states).T


@pytest.mark.parametrize("free_kg_m2", [0.1, 0.25, 9.0])
@pytest.mark.parametrize(
    "start_c, thickness_m, rooms",
    [
        (16.0, 0.0381, [(96, 21.0, 0.5, 0.0)]),
        (16.0, 0.0381, [(96, 35.0, 0.2, 16 / 3.6)]),
        (30.0, 0.1016, [(96, 35.0, 0.2, 2.24)]),
        (10.0, 0.019, [(96, 35.0, 0.2, 16 / 3.6)]),
        (30.0, 0.019, [(96, 10.0, 0.3, 5.0)]),
        (5.0, 0.0254, [(96, 30.0, 0.95, 1.0)]),  # dew at first
        (
            16.0,
            0.0381,
            [(12, 15.0, 0.6, 0.0), (24, 24.0, 0.4, 2.0), (36, 33.0, 0.25, 4.0), (24, 18.0, 0.7, 0.5)],
        ),
    ],
)
def test_steps_of_five_minutes_agree_with_scipy(start_c, thickness_m, rooms, free_kg_m2):
    room = {
        name: np.repeat([stretch[column] for stretch in rooms], [stretch[0] for stretch in rooms])
        for column, name in enumerate(("air_temp_c", "rh_fraction", "wind_m_s"), start=1)
    }
    ours = history(start_c, thickness_m, room, step_count=None, free_water_kg_m2=free_kg_m2)
    temp_c, lost, age_h = reference(start_c, thickness_m, rooms, free_kg_m2)
    assert ours.temp_c == pytest.approx(temp_c, abs=0.02)
    assert ours.equivalent_age_h == pytest.approx(age_h, abs=0.002)
    assert ours.water_lost_kg_m2 == pytest.approx(lost, abs=0.002)


@pytest.mark.parametrize("room", [STILL_21, HOT_DRY_WINDY])
def test_without_evaporation_a_constant_room_gives_the_exact_exponential(room):
    ours = history(16.0, 0.0381, room, evaporating=False)
    exchange = convection_w_m2_k(room["wind_m_s"]) + FIXED

    def exact(hours):
        gone = np.exp(-exchange * hours * 3600 / (STORAGE * 0.0381))
        return room["air_temp_c"] + (16.0 - room["air_temp_c"]) * gone

    assert ours.temp_c == pytest.approx(exact(ours.time_h), abs=1e-9)
    age_h, _ = quad(lambda h: rate_factor(exact(h), E_J_MOL), 0, 8)
    assert ours.equivalent_age_h[-1] == pytest.approx(age_h, abs=5e-4)
    assert np.all(ours.water_lost_kg_m2 == 0)


@pytest.mark.parametrize("air_c", [10.0, 20.0, 30.0, 40.0])
@pytest.mark.parametrize("rh", [0.3, 0.6, 0.9])
@pytest.mark.parametrize("wind", [0.0, 1.0, 6.0])
def test_a_wet_slab_without_radiation_and_board_settles_at_the_wet_bulb(air_c, rh, wind):
    settled = history(
        air_c, 0.01, {"air_temp_c": air_c, "rh_fraction": rh, "wind_m_s": wind}, hours=24,
        h_bottom_w_m2_k=0.0, h_radiation_w_m2_k=0.0, free_water_kg_m2=1e6,
    )  # fmt: skip
    assert settled.temp_c[-1] == pytest.approx(wet_bulb_c(air_c, rh), abs=1e-6)
    bulb_c = psychrolib.GetTWetBulbFromRelHum(air_c, rh, 101325.0)
    assert settled.temp_c[-1] == pytest.approx(bulb_c, abs=0.15)


def test_heat_gained_is_heat_from_the_room_less_heat_of_the_water_that_left():
    day = history(16.0, 0.0381, HOT_DRY_WINDY, hours=4, step_s=60)
    exchange = convection_w_m2_k(HOT_DRY_WINDY["wind_m_s"]) + FIXED
    received = np.trapezoid(exchange * (35.0 - day.temp_c), day.time_h * 3600)
    spent = LATENT_HEAT_J_KG * day.water_lost_kg_m2[-1]
    assert STORAGE * 0.0381 * (day.temp_c[-1] - 16.0) == pytest.approx(received - spent, rel=1e-3)


# Shop stages on a 1.5 in piece mixed at 16 °C, initial set 3.4 h, exponent 7; hours after water.
REFERENCE_DAYS = [
    (STILL_21, True, 2.38, 2.89, 3.06),
    (STILL_21, False, 2.24, 2.70, 2.85),
    (HOT_DRY_WINDY, True, 1.86, 2.17, 2.28),
    (HOT_DRY_WINDY, False, 1.50, 1.75, 1.83),
]


@pytest.mark.parametrize("room, evaporating, strip_from, strip_to, steel", REFERENCE_DAYS)
def test_the_reference_days_come_out(room, evaporating, strip_from, strip_to, steel):
    day = history(16.0, 0.0381, room, evaporating=evaporating)
    ages = age_at_resistance_h(np.array([10, 40, 60]) * PSI_PA, 3.4, 7.0)
    hours = [crossing_time_h(day.time_h, day.equivalent_age_h, age) for age in ages]
    assert hours == pytest.approx([strip_from, strip_to, steel], abs=0.02)


def test_the_practice_of_stripping_at_two_and_a_half_hours_lies_inside_the_reference_window():
    assert REFERENCE_DAYS[0][2] < 2.5 < REFERENCE_DAYS[0][3]


def test_a_walk_poured_hot_is_past_the_trowel_when_the_crew_said_so():
    # 4 in, poured at 86 °F, 95 °F air, 20 %, 5 mph; trade case: unworkable at 1.75 h
    day = history(30.0, 0.1016, {"air_temp_c": 35.0, "rh_fraction": 0.2, "wind_m_s": 2.235})
    ages = age_at_resistance_h(np.array([60, 500]) * PSI_PA, 3.4, 7.0)
    from_h, to_h = (crossing_time_h(day.time_h, day.equivalent_age_h, age) for age in ages)
    assert (from_h, to_h) == pytest.approx((1.8, 2.45), abs=0.02)
    assert 1.6 < from_h < to_h < 2.5


@given(
    st.floats(5, 32),
    st.floats(0.012, 0.1),
    st.floats(5, 38),
    st.floats(0.05, 1),
    st.floats(0, 8),
    st.floats(0.05, 1),
)
def test_a_covered_slab_is_never_colder_nor_later(start_c, thickness_m, air_c, rh, wind, free):
    room = {"air_temp_c": air_c, "rh_fraction": rh, "wind_m_s": wind}
    open_, covered = (
        history(start_c, thickness_m, room, evaporating=flag, free_water_kg_m2=free) for flag in (True, False)
    )
    assert np.all(covered.temp_c >= open_.temp_c - 1e-9)
    assert np.all(covered.equivalent_age_h >= open_.equivalent_age_h - 1e-9)


def test_many_slabs_at_once_give_what_each_gives_alone():
    rng = np.random.default_rng(7)
    count, steps = 25, 60
    own = {
        "activation_energy_j_mol": rng.uniform(28e3, 47e3, count),
        "h_bottom_w_m2_k": rng.uniform(2, 8, count),
        "free_water_kg_m2": rng.uniform(0.1, 0.4, count),
        "evaporation_factor": rng.uniform(0, 1.4, count),
    }
    start, thickness = rng.uniform(5, 30, count), rng.uniform(0.012, 0.1, count)
    day_c = np.repeat([12.0, 25.0, 33.0], steps // 3)
    room = {
        "air_temp_c": day_c[:, None] + rng.uniform(-1.5, 1.5, count),
        "rh_fraction": np.repeat([0.7, 0.4, 0.2], steps // 3),
        "wind_m_s": np.repeat(rng.uniform(0, 6, (3, count)), steps // 3, axis=0),
        "evaporating": np.repeat([1, 0, 1], steps // 3),
    }
    together = slab_history(start, thickness, step_s=300, **room, **own)
    assert together.temp_c.shape == (steps + 1, count)
    for i in range(count):
        alone = slab_history(
            start[i], thickness[i], room["air_temp_c"][:, i], room["rh_fraction"], room["wind_m_s"][:, i],
            step_s=300, evaporating=room["evaporating"], **{name: value[i] for name, value in own.items()},
        )  # fmt: skip
        for name in ("temp_c", "equivalent_age_h", "water_lost_kg_m2", "demand_kg_m2"):
            assert getattr(together, name)[:, i] == pytest.approx(getattr(alone, name), abs=1e-9)


def test_days_and_pieces_can_be_crossed():
    crossed = history(np.full((6, 1), 16.0), np.array([0.025, 0.0381, 0.05]), STILL_21)
    assert crossed.temp_c.shape == (97, 6, 3)
    assert crossed.temp_c[:, 4, 1] == pytest.approx(history(16.0, 0.0381, STILL_21).temp_c, abs=1e-9)


def test_water_follows_the_law_of_the_drying_surface():
    day = history(25.0, 0.0381, HOT_DRY_WINDY, free_water_kg_m2=0.2)
    wet = day.demand_kg_m2 <= 0.2
    assert day.water_lost_kg_m2[wet] == pytest.approx(day.demand_kg_m2[wet])
    lost = day.water_lost_kg_m2[~wet]
    share = day.evaporation_kg_m2_h[-1] / day.demand_kg_m2_h[-1]
    assert np.exp(-(lost[-1] - 0.2) / 0.2) == pytest.approx(share, rel=0.02)
    assert np.all(np.diff(day.water_lost_kg_m2) > 0)
    assert np.all(lost < day.demand_kg_m2[~wet])


def test_a_cover_stops_the_loss_and_lets_the_slab_warm():
    steps = 48
    flags = (np.arange(steps) < 12).astype(float)
    day = history(20.0, 0.0381, HOT_DRY_WINDY, step_count=steps, evaporating=flags)
    assert np.all(np.diff(day.water_lost_kg_m2)[12:] == 0)
    uncovered = history(20.0, 0.0381, HOT_DRY_WINDY, step_count=steps)
    assert day.temp_c[:13] == pytest.approx(uncovered.temp_c[:13], abs=1e-9)
    assert np.all(day.temp_c[13:] > uncovered.temp_c[13:])


def test_longer_steps_are_cut_inside():
    quarter, five = (history(16.0, 0.0381, HOT_DRY_WINDY, step_s=s) for s in (900, 300))
    assert quarter.temp_c == pytest.approx(five.temp_c[::3], abs=0.005)
    assert quarter.equivalent_age_h == pytest.approx(five.equivalent_age_h[::3], abs=0.001)


def test_convection_is_that_of_still_air_and_of_a_breeze():
    assert convection_w_m2_k(0.0) == pytest.approx(3.6, abs=0.05)
    assert convection_w_m2_k(16 / 3.6) == pytest.approx(17.3, abs=0.05)


def test_one_temperature_is_fair_for_a_bench_top_and_not_for_a_thick_block_in_wind():
    still, windy = (convection_w_m2_k(v) + 5.7 for v in (0.0, 16 / 3.6))
    assert biot_number(still, 0.0381, 1.8) < THIN_BIOT_NUMBER
    assert biot_number(windy, 0.0381, 1.8) < THIN_BIOT_NUMBER
    assert biot_number(windy, 0.1016, 1.8) > THIN_BIOT_NUMBER


def test_a_crossing_is_found_between_the_steps():
    time_h = np.array([0.0, 1.0, 2.0, 4.0])
    values = np.array([[0.0, 1.0], [1.0, 1.0], [1.0, 3.0], [5.0, 4.0]])
    assert crossing_time_h(time_h, values, np.array([3.0, 2.0])) == pytest.approx([3.0, 1.5])
    assert crossing_time_h(time_h, values, 1.0) == pytest.approx(
        [1.0, 0.0]
    )  # a plateau counts from its start
    assert crossing_time_h(time_h, values[:, 0], 5.0) == 4.0
    assert np.isnan(crossing_time_h(time_h, values, 5.0)[1])
    assert isinstance(float(crossing_time_h(time_h, values[:, 0], 0.5)), float)


def test_a_crossing_agrees_with_interpolation():
    day = history(16.0, 0.0381, STILL_21)
    for age_h in (0.001, 0.7, 2.345, day.equivalent_age_h[-1]):
        expected = np.interp(age_h, day.equivalent_age_h, day.time_h)
        assert crossing_time_h(day.time_h, day.equivalent_age_h, age_h) == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize(
    "change, words",
    [
        ({"thickness_m": 0.0}, "thickness: 0 m"),
        ({"rh_fraction": 50.0}, "relative humidity: 50"),
        ({"wind_m_s": np.array([0.0, -2.0])}, "wind: -2 m/s"),
        ({"start_temp_c": float("nan")}, "mix temperature: nan"),
        ({"step_count": None}, "no steps given"),
        ({"air_temp_c": np.full(7, 21.0)}, r"\[7, 12\] steps given"),
        ({"step_s": 0.0}, "time step: 0 s"),
    ],
)
def test_impossible_entries_are_named(change, words):
    entries = {
        "start_temp_c": 16.0, "thickness_m": 0.0381, "step_s": 300.0, "step_count": 12,
        "activation_energy_j_mol": E_J_MOL,
    } | STILL_21  # fmt: skip
    if np.ndim(change.get("wind_m_s", 0.0)):
        entries["step_count"] = None
    with pytest.raises(ValueError, match=words):
        slab_history(**(entries | change))


def test_entries_of_a_slab_are_taken_up_to_their_limits():
    """From deep frost to boiling water; shares of one; a block of 10 m; steps of an hour."""
    room = {"air_temp_c": 20.0, "rh_fraction": 0.5, "wind_m_s": 0.0}
    for entry, low, high in (("start_temp_c", -50.0, 100.0), ("thickness_m", None, 10.0), ("reference_temp_c", -50.0, 100.0),
                             ("step_s", None, 3600.0), ("air_temp_c", -50.0, 100.0), ("rh_fraction", 0.0, 1.0),
                             ("evaporating", 0.0, 1.0)):  # fmt: skip
        entries = room | {"start_temp_c": 20.0, "thickness_m": 0.04, "step_s": 300, "step_count": 1}
        entries["activation_energy_j_mol"] = E_J_MOL
        for limit, outwards in ((low, -1), (high, 1)):
            if limit is not None:
                slab_history(**entries | {entry: limit})
                with pytest.raises(ValueError, match="must be"):
                    slab_history(**entries | {entry: limit + outwards * (0.005 * abs(limit) or 1e-6)})
