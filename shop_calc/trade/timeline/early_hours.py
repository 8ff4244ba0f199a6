"""The early clock and the work of the hands: when the base is still, the face on and floated, an edge stands."""

from dataclasses import dataclass

import numpy as np

from shop_calc import defaults
from shop_calc.science import build_up
from shop_calc.trade.timeline import hands as work


@dataclass(frozen=True)
class EarlyHours:
    """The early clock and the work of the hands on every day.

    Parameters
    ----------
    face_on_h, float_open_h, float_close_h : ndarray of shape (days,)
        When the face goes on, when it is on, when it is floated [h].

    Examples
    --------
    >>> EarlyHours(0.6, 0.8, 0.9).float_close_h
    0.9

    References
    ----------
    As `early_hours`.
    """

    face_on_h: np.ndarray
    float_open_h: np.ndarray
    float_close_h: np.ndarray


def base_done_at_h(inputs):
    """Say when the last load of the base is in the form.

    Parameters
    ----------
    inputs : DayInputs
        What the day depends on [as its fields].

    Returns
    -------
    float
        Hours after the first water [h].

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> base_done_at_h(SimpleNamespace(base_loads_h=(0.0, 0.5), minutes_per_load=30.0))
    1.0

    References
    ----------
    Common practice, no source.
    """
    return inputs.base_loads_h[-1] + inputs.minutes_per_load / 60.0


def early_hours(inputs, days):
    """Say when the base is still, and when the face is on and floated.

    Parameters
    ----------
    inputs : DayInputs
        What the day depends on [as its fields].
    days : Cloud
        The days [as its fields].

    Returns
    -------
    EarlyHours
        Hours after the first water [h].

    Examples
    --------
    >>> from datetime import datetime
    >>> from shop_calc.trade.timeline.cloud import day_cloud
    >>> from shop_calc.trade.timeline.day import DayInputs
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> hours = early_hours(inputs, day_cloud())
    >>> bool((hours.float_close_h > hours.face_on_h).all())
    True

    References
    ----------
    shop_calc.science.build_up; minutes of the hands in data/defaults.csv.
    """
    base_open_h = base_done_at_h(inputs) + np.maximum(
        defaults.get("base_ready_earliest").value / 60.0, _edge_h(days, inputs.standing_m)
    )
    face_h = work.step_h(inputs.area_m2, defaults.get("face_minutes_per_area").value, inputs.hands)
    float_h = work.step_h(inputs.area_m2, defaults.get("float_minutes_per_area").value, inputs.hands)
    face_on_h = np.maximum(base_open_h, inputs.face_load_h + inputs.minutes_per_load / 60.0)
    return EarlyHours(face_on_h, face_on_h + face_h, face_on_h + face_h + float_h)


def _edge_h(days, height_m):
    """Hours of rest until an edge of this height stands alone, on each day."""
    demand_pa = build_up.edge_demand_pa(
        height_m, defaults.si("slab_density"), safety_factor=defaults.get("edge_safety_factor").value
    )
    return build_up.rest_to_stress_linear_s(demand_pa, days.yield_start_pa, days.build_up_pa_s) / 3600.0
