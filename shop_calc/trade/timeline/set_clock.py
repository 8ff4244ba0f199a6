"""The late clock: when a mortar in a given room reaches a given penetration resistance."""

from dataclasses import dataclass

import numpy as np

from shop_calc import defaults
from shop_calc.science import crossing, setting, slab_heat
from shop_calc.trade.timeline.room import Room, room_steps

STEP_S = 300.0  # five minutes; a tenth of it moves no stage by more than a few seconds
LONGEST_H = 96.0  # a mortar that is not stiff after four days is reported as not setting
_ROWS = {
    "initial_set_h": "set_time_initial",
    "exponent": "set_exponent",
    "activation_energy_j_mol": "activation_energy",
    "room_error_k": "room_temperature_error",
    "evaporation_factor": "evaporation_factor",
    "free_water_kg_m2": "free_water",
    "h_bottom_w_m2_k": "h_bottom",
}


@dataclass(frozen=True)
class SetClock:
    """Temperature and age of a mortar, counted from its own water.

    Parameters
    ----------
    history : slab_heat.SlabHistory
        Time, temperature, equivalent age and water lost, shapes (steps + 1, ...) [as its fields].
    initial_set_h : float or ndarray of shape (...)
        Initial set at 21 °C [h].
    exponent : float or ndarray of shape (...)
        Exponent of penetration resistance [-].

    Examples
    --------
    >>> clock = run_clock(16.0, 0.0381, steady(21.0, 0.5, 0.0))
    >>> float(clock.history.temp_c[0])
    16.0

    References
    ----------
    ASTM C1074 form for the age, ASTM C403/C403M for the resistance.
    """

    history: slab_heat.SlabHistory
    initial_set_h: np.ndarray
    exponent: np.ndarray


def steady(air_temp_c, rh_fraction, wind_m_s):
    """Give air that does not change, for what-ifs over many rooms at once.

    Parameters
    ----------
    air_temp_c : float or array of shape (...)
        Air temperature [°C].
    rh_fraction : float or array of shape (...)
        Relative humidity [-].
    wind_m_s : float or array of shape (...)
        Air speed [m/s].

    Returns
    -------
    tuple of ndarray
        The three, each with a first axis of one step that stands for all steps [°C, -, m/s].

    Examples
    --------
    >>> steady(21.0, 0.5, 0.0)[0].shape
    (1,)

    References
    ----------
    Common practice, no source.
    """
    return tuple(np.asarray(value, dtype=float)[np.newaxis] for value in (air_temp_c, rh_fraction, wind_m_s))


def _stepped_air(air, start_h, step_s, count, axes):
    """Air of every step, shaped (count, ...) so that it broadcasts against elements with `axes` axes."""
    columns = room_steps(air, start_h, step_s, count) if isinstance(air, Room) else air
    shaped = []
    for column in columns:
        middle = (1,) * (axes - (column.ndim - 1))
        column = column.reshape(column.shape[0], *middle, *column.shape[1:])
        shaped.append(np.broadcast_to(column, (count, *column.shape[1:])))
    return shaped


def run_clock(
    mix_temp_c, thickness_m, air, *, until_pa=None, start_h=0.0, days=None, evaporating=True, least_h=0.0,
    step_s=STEP_S,
):  # fmt: skip
    """Step a mortar through its room until it is too stiff for any tool.

    Parameters
    ----------
    mix_temp_c : float or array of shape (...)
        Temperature after mixing [°C].
    thickness_m : float or array of shape (...)
        Thickness of the piece [m].
    air : Room or tuple of ndarray
        A room over the day, or what `steady` gives [°C, -, m/s].
    until_pa : float, optional
        Resistance up to which the clock must run; the stop resistance of the table if left out [Pa].
    start_h : float or array of shape (...)
        When this mortar met water, hours after the first water [h].
    days : Cloud, optional
        Uncertain quantities with fields of shape (...); the default day if left out [as its fields].
    evaporating : bool or array of shape (...)
        False leaves evaporative cooling out, as the early edge of a window must [-].
    least_h : float
        Hours that the history has to cover at least [h].
    step_s : float
        Length of a step [s].

    Returns
    -------
    SetClock
        The history from this mortar's own water on [as its fields].

    Raises
    ------
    ValueError
        When an entry is impossible; the message says which.

    Examples
    --------
    >>> clock = run_clock(16.0, 0.0381, steady(21.0, 0.5, 0.0))
    >>> f"{float(time_at_resistance_h(clock, 413685.4)):.2f}"
    '3.05'

    Notes
    -----
    Each layer is stepped as if the whole thickness had its temperature: the two are thin and touch. Elements are
    independent of one another, so that one call for many gives what many calls give.

    References
    ----------
    Heat balance and its checks: shop_calc.science.slab_heat.
    """
    values = {
        name: defaults.si(row) if days is None else getattr(days, name) for name, row in _ROWS.items()
    }
    until_pa = defaults.si("stop_pr") if until_pa is None else until_pa
    needed_h = setting.age_at_resistance_h(until_pa, values["initial_set_h"], values["exponent"])
    shape = np.broadcast_shapes(
        np.shape(needed_h), np.shape(mix_temp_c), np.shape(thickness_m), np.shape(start_h), np.shape(evaporating),
        () if isinstance(air, Room) else np.broadcast_shapes(*(np.shape(column)[1:] for column in air)),
    )  # fmt: skip
    coldest_c = np.minimum(mix_temp_c, min(air.air_temp_c) if isinstance(air, Room) else air[0].min(axis=0))
    rate = setting.rate_factor(coldest_c + np.minimum(values["room_error_k"], 0.0), values["activation_energy_j_mol"])
    hours = min(max(float(np.max(needed_h / rate)), least_h, 1.0), LONGEST_H)
    while True:
        count = int(np.ceil(hours * 3600.0 / step_s))
        temp_c, rh_fraction, wind_m_s = _stepped_air(air, start_h, step_s, count, len(shape))
        history = slab_heat.slab_history(
            mix_temp_c,
            thickness_m,
            temp_c + values["room_error_k"],
            rh_fraction,
            wind_m_s,
            step_s=step_s,
            activation_energy_j_mol=values["activation_energy_j_mol"],
            density_kg_m3=defaults.si("slab_density"),
            heat_capacity_j_kg_k=defaults.si("slab_heat_capacity"),
            h_bottom_w_m2_k=values["h_bottom_w_m2_k"],
            h_radiation_w_m2_k=defaults.si("h_radiation"),
            free_water_kg_m2=values["free_water_kg_m2"],
            evaporation_factor=values["evaporation_factor"],
            evaporating=np.broadcast_to(evaporating, (count, *np.shape(evaporating))),
            reference_temp_c=defaults.si("reference_temp"),
        )
        if hours >= LONGEST_H or np.all(history.equivalent_age_h[-1] >= needed_h):
            return SetClock(history, values["initial_set_h"], values["exponent"])
        hours = min(hours * 1.4, LONGEST_H)  # it cooled below its start and below the room: look further


def time_at_age_h(clock, age_h):
    """Say when an equivalent age is reached.

    Parameters
    ----------
    clock : SetClock
        The clock [as its fields].
    age_h : float or array of shape (...)
        Equivalent age at 21 °C [h].

    Returns
    -------
    ndarray of shape (...)
        Hours after this mortar's own water; nan when it is not reached [h].

    Examples
    --------
    >>> clock = run_clock(21.0, 0.0381, steady(21.0, 0.5, 0.0), evaporating=False)
    >>> f"{float(time_at_age_h(clock, 2.0)):.4f}"
    '2.0000'

    References
    ----------
    Linear between steps of five minutes.
    """
    return crossing.crossing_time_h(clock.history.time_h, clock.history.equivalent_age_h, age_h)


def time_at_resistance_h(clock, resistance_pa):
    """Say when a penetration resistance is reached.

    Parameters
    ----------
    clock : SetClock
        The clock [as its fields].
    resistance_pa : float
        Penetration resistance [Pa].

    Returns
    -------
    ndarray of shape (...)
        Hours after this mortar's own water; nan when it is not reached [h].

    Examples
    --------
    >>> clock = run_clock(21.0, 0.0381, steady(21.0, 0.5, 0.0), evaporating=False)
    >>> f"{float(time_at_resistance_h(clock, 500 * 6894.757)):.4f}"
    '3.4000'

    References
    ----------
    ASTM C403/C403M: 500 psi is initial set.
    """
    return time_at_age_h(clock, setting.age_at_resistance_h(resistance_pa, clock.initial_set_h, clock.exponent))


def age_at_h(clock, time_h):
    """Give the equivalent age at one hour.

    Parameters
    ----------
    clock : SetClock
        The clock [as its fields].
    time_h : float
        Hours after this mortar's own water, within the history [h].

    Returns
    -------
    ndarray of shape (...)
        Equivalent age at 21 °C [h].

    Examples
    --------
    >>> clock = run_clock(21.0, 0.0381, steady(21.0, 0.5, 0.0), evaporating=False)
    >>> f"{float(age_at_h(clock, 1.52)):.4f}"
    '1.5200'

    References
    ----------
    ASTM C1074 form.
    """
    return at_h(clock.history.time_h, clock.history.equivalent_age_h, time_h)


def at_h(times_h, values, time_h):
    """Read a history at one hour, linear between its steps.

    Parameters
    ----------
    times_h : ndarray of shape (steps + 1,)
        Even time steps from zero [h].
    values : ndarray of shape (steps + 1, ...)
        The history [any unit].
    time_h : float
        The hour; outside the history its end counts [h].

    Returns
    -------
    ndarray of shape (...)
        The value at that hour [unit of values].

    Examples
    --------
    >>> float(at_h(np.array([0.0, 1.0]), np.array([10.0, 20.0]), 0.25))
    12.5

    References
    ----------
    Derived: linear interpolation.
    """
    place = np.clip(time_h / (times_h[1] - times_h[0]), 0.0, len(times_h) - 1.0)
    low = min(int(place), len(times_h) - 2)
    return values[low] + (place - low) * (values[low + 1] - values[low])


def resistance_at_pa(clock, time_h):
    """Give the penetration resistance at one hour.

    Parameters
    ----------
    clock : SetClock
        The clock [as its fields].
    time_h : float
        Hours after this mortar's own water [h].

    Returns
    -------
    ndarray of shape (...)
        Penetration resistance [Pa].

    Examples
    --------
    >>> clock = run_clock(21.0, 0.0381, steady(21.0, 0.5, 0.0), evaporating=False)
    >>> f"{float(resistance_at_pa(clock, 3.4)) / 6894.757:.3f}"
    '500.000'

    References
    ----------
    ASTM C403/C403M for the 500 psi.
    """
    return setting.penetration_resistance_pa(age_at_h(clock, time_h), clock.initial_set_h, clock.exponent)
