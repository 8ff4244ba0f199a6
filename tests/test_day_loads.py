"""Several loads: each sets by its own water, and the sides wait for the slowest of them."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from shop_calc.trade.timeline.cloud import day_cloud, middle_day
from shop_calc.trade.timeline.day import DayInputs, plan_day, sample_day
from shop_calc.trade.timeline.room import Room, steady_room
from shop_calc.trade.timeline.set_clock import run_clock, time_at_resistance_h

PSI = 6894.757293168361
COLD = steady_room(10.0, 0.25, 2.2352)


def hours_to(psi, mix_c, air_c, rh_fraction, wind_m_s, thickness_m):
    """The middle day by scipy: 3.4 h, b 7, 36 kJ/mol, w0 0.25 kg/m2, h 4 below and 5.7 by radiation, 2250 kg/m3, 1000 J/kgK."""
    latent, brisk = 2.45e6, 0.253 + 0.060 * 3.6 * wind_m_s
    exchange = 5.7 + 4.0 + 0.0665 * latent * 0.315 * brisk / 3600.0
    target_h = 3.4 * (psi / 500.0) ** (1.0 / 7.0)

    def vapour_kpa(temp_c):
        return 0.61 * np.exp(17.3 * temp_c / (237.3 + temp_c))

    def slopes(_, state):
        temp_c, _, lost = state
        rate = max(0.315 * (vapour_kpa(temp_c) - rh_fraction * vapour_kpa(air_c)) * brisk, 0.0)
        rate *= np.exp(-max(lost - 0.25, 0.0) / 0.25)
        warming = (exchange * (air_c - temp_c) * 3600.0 - latent * rate) / (2250.0 * 1000.0 * thickness_m)
        return warming, np.exp(-36000.0 / 8.314462618 * (1 / (temp_c + 273.15) - 1 / 294.15)), rate

    def reached(_, state):
        return state[1] - target_h

    reached.terminal = True
    return solve_ivp(slopes, (0.0, 40.0), (mix_c, 0.0, 0.0), events=reached, rtol=1e-9, atol=1e-9).t_events[0][0]


def cold_base(loads_h, mix_c=18.333, base_c=13.393):
    return DayInputs(
        None, COLD, mix_c, 0.0635, 0.0572, 0.9, base_loads_h=loads_h, face_load_h=loads_h[-1] + 0.25, minutes_per_load=15.0,
        hands=3.0, base_mix_temp_c=base_c,
    )  # fmt: skip


def test_the_sides_wait_for_the_last_load_of_a_cold_base():
    """Chilled by its stone, the base is slower than the face; the last of its loads is the slowest."""
    room, thick = (10.0, 0.25, 2.2352), 0.0635
    first, last = (start + hours_to(10.0, 13.393, *room, thick) for start in (0.0, 0.75))
    face = 1.0 + hours_to(10.0, 18.333, *room, thick)
    assert first < face < last  # 3.72, 4.30 and 4.47 h
    day = sample_day(cold_base((0.0, 0.25, 0.5, 0.75)), middle_day())
    assert day.open_h["strip"][0] == pytest.approx(last, abs=0.002)
    assert day.close_h["strip"][0] == pytest.approx(1.0 + hours_to(40.0, 18.333, *room, thick), abs=0.002)


def test_the_first_load_ends_the_time_for_the_face_and_the_face_has_steel():
    """What is read off other layers does not move with the loads between first and last."""
    several, two = (sample_day(cold_base(loads)) for loads in ((0.0, 0.25, 0.5, 0.75), (0.0, 0.75)))
    for hours in ("open_h", "close_h", "early_h", "deadline_h"):
        for key, values in getattr(several, hours).items():
            np.testing.assert_array_equal(values, getattr(two, hours)[key])
    one = sample_day(cold_base((0.75,)))
    for key in ("first_steel", "last_steel", "stop", "strip"):
        assert several.open_h[key] == pytest.approx(one.open_h[key], abs=1e-12), key


def test_a_base_warmer_than_the_face_leaves_the_strip_to_the_face():
    warm = sample_day(cold_base((0.0, 0.25, 0.5), mix_c=16.0, base_c=18.0))
    alone = run_clock(16.0, 0.0635, COLD, start_h=0.75, days=day_cloud())
    assert warm.open_h["strip"] == pytest.approx(
        np.maximum(time_at_resistance_h(alone, 10.0 * PSI) + 0.75, warm.close_h["float"]), abs=1e-9
    )


def test_a_base_with_bands_of_its_own_gives_them_to_all_its_loads():
    bands = {"set_time_initial": (3.6, 4.0, 4.4), "set_exponent": (6.5, 7.0, 7.5), "activation_energy": (30e3, 36e3, 42e3)}
    inputs = cold_base((0.0, 0.5), mix_c=13.0, base_c=13.0)
    own = sample_day(DayInputs(**{**vars(inputs), "base_bands": bands}))
    assert own.clock.initial_set_h.shape == (6, 500)
    assert np.median(own.clock.initial_set_h, axis=1) == pytest.approx([4.0] * 4 + [3.4] * 2, abs=0.02)
    assert np.all(own.open_h["strip"] >= sample_day(inputs).open_h["strip"] - 1e-9)


def test_many_days_in_one_room_from_one_start_are_the_days_one_by_one():
    """The room is one column, the start one number, the days five hundred: every day gets the same air."""
    room = Room((0.0, 1.5, 4.0), (12.0, 24.0, 18.0), (0.4, 0.6, 0.5), (0.0, 2.0, 0.5))
    days = day_cloud()
    together = run_clock(16.0, 0.0381, room, start_h=0.5, days=days)
    listed = run_clock(16.0, 0.0381, room, start_h=np.full(500, 0.5), days=days)
    assert together.history.temp_c.shape == listed.history.temp_c.shape == (*together.history.time_h.shape, 500)
    np.testing.assert_array_equal(together.history.temp_c, listed.history.temp_c)
    steel = time_at_resistance_h(together, 60.0 * PSI)
    fields = [name for name in vars(days) if name != "weight"]
    for number in (0, 7, 499):
        one = type(days)(**{name: getattr(days, name)[number] for name in fields}, weight=np.ones(1))
        alone = run_clock(16.0, 0.0381, room, start_h=0.5, days=one)
        assert float(time_at_resistance_h(alone, 60.0 * PSI)) == pytest.approx(steel[number], abs=1e-9)


def test_a_base_placed_longer_than_any_clock_runs_is_too_stiff_when_it_is_in():
    """1000 psi come long before the last of 33 loads is in: the last good moment is past by then."""
    loads = tuple(0.75 * number for number in range(33))
    day = plan_day(cold_base(loads, mix_c=21.0, base_c=22.0))
    assert day.stage("face").deadline_h == pytest.approx(loads[-1] + 0.25)
