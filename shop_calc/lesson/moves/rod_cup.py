"""Lesson 04 at the bench: rod readings from a cup over the band of the model."""

from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np

from shop_calc import defaults, units
from shop_calc.lesson.pictures.set_curve import SetCurve, StiffeningCurve
from shop_calc.lesson.practice import Said
from shop_calc.lesson.table import table
from shop_calc.science.setting import penetration_resistance_pa
from shop_calc.trade.timeline.day import EARLY_SHARE, LATE_SHARE, plan_day
from shop_calc.trade.timeline.rod import rod_resistance_pa, rod_table
from shop_calc.trade.timeline.room import steady_room
from shop_calc.trade.timeline.weighted_days import quantile
from shop_calc.units import show

_WINDOWS = (
    ("sides off, patch", "strip_pr_low", "strip_pr_high"),
    ("first steel", "first_steel_pr_low", "first_steel_pr_high"),
    ("last steel", "last_steel_pr_low", "last_steel_pr_high"),
    ("stop", "stop_pr", "stop_pr"),
)
CAPTION = (
    "Your rod belongs inside the band. A whole row of marks on one side of it is the clock of your own mortar: log it."
)
_COMES = {
    "strip_pr_low": "sides may come off",
    "strip_pr_high": "last patch",
    "first_steel_pr_low": "first steel may start",
    "first_steel_pr_high": "first steel is done",
    "last_steel_pr_low": "last steel may start",
    "last_steel_pr_high": "last steel is done",
}


def clock_time(day, hour):
    """Read a clock time of one day.

    Parameters
    ----------
    day : datetime
        Any moment of that day [-].
    hour : str
        "10:45", on a clock of 24 hours [-].

    Returns
    -------
    datetime
        The moment [-].

    Raises
    ------
    ValueError
        When it is no clock time.

    Examples
    --------
    >>> clock_time(datetime(2026, 5, 4, 8), "10:45")
    datetime.datetime(2026, 5, 4, 10, 45)

    References
    ----------
    Common practice, no source.
    """
    try:
        read = datetime.strptime(str(hour).strip(), "%H:%M")
    except ValueError:
        raise ValueError(f"clock time: {hour!r} given; it must be hours and minutes, like '10:45'") from None
    return day.replace(hour=read.hour, minute=read.minute, second=0, microsecond=0)


def set_curve(day, readings=(), between_h=None):
    """Give the stiffening of the face over a day, with the windows of the tools.

    Parameters
    ----------
    day : Day
        A planned day [h].
    readings : sequence of (float, float, bool)
        Hour after the first water, resistance, and whether the thick rod was used [h, Pa, -].
    between_h : (float, float), optional
        Ends of the clock; the hours of the windows if left out [h].

    Returns
    -------
    SetCurve
        For `StiffeningCurve` [Pa].

    Examples
    --------
    >>> from shop_calc.trade.timeline.day import DayInputs
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> len(set_curve(plan_day(inputs)).windows)
    4

    References
    ----------
    ASTM C403/C403M for the quantity; bands of data/defaults.csv.
    """
    samples, clock = day.samples, day.samples.clock
    age_h = clock.history.equivalent_age_h[:, -2]  # the face, evaporation counted in
    days = np.broadcast_shapes(age_h.shape[1:])
    initial_h, exponent = (_last_row(values, days) for values in (clock.initial_set_h, clock.exponent))
    resistance_pa = penetration_resistance_pa(age_h, initial_h, exponent)
    shares = (EARLY_SHARE, 0.5, LATE_SHARE)
    low, likely, high = (quantile(resistance_pa, day.weight, share) for share in shares)
    from_h, to_h = between_h or (
        np.floor(2 * day.stage("strip").look_from_h) / 2 - 0.5, np.ceil(2 * day.stage("stop").over_by_h) / 2
    )  # fmt: skip
    hours = np.linspace(from_h, to_h, 97)
    own_h = hours - samples.inputs.face_load_h
    curves = (np.interp(own_h, clock.history.time_h, curve) for curve in (low, likely, high))
    windows = tuple((name, defaults.si(opens), defaults.si(closes)) for name, opens, closes in _WINDOWS)
    return SetCurve(hours, *curves, windows, tuple(readings))


def _last_row(values, days):
    """The face's own value of each day: the last row where base and face have their own."""
    values = np.asarray(values, dtype=float)
    return np.broadcast_to(values[-1] if values.ndim > len(days) else values, days)


def rod_cup(day, readings=(), water_in="08:00", mix="60 F", room="70 F", caption=CAPTION):
    """Lay rod readings from a cup over the band of the model; nothing that is typed stops the lesson.

    Parameters
    ----------
    day : Day
        A planned day, for the thickness and the humidity [h].
    readings : sequence of (str, str, str)
        Clock time, what the scale showed with the cup taken off, which rod: ("10:30", "1.1 kg", "1/4 in") [-].
    water_in : str
        Clock time at which water met the cement of the cup [-].
    mix, room : str
        Temperatures of the mortar and of the room [-].
    caption : str
        A sentence on what to see [-].

    Returns
    -------
    Still or Said
        The picture, or what cannot be read [-].

    Examples
    --------
    >>> from shop_calc.trade.timeline.day import DayInputs
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> rod_cup(plan_day(inputs), [("10:30", "a lot", "1/4 in")])
    This cannot be read: scale: 'a lot' given; ...

    References
    ----------
    ASTM C403/C403M for the quantity; a kitchen scale and two rods are common practice, no source.
    """
    try:
        cup = _cup(day, water_in, mix, room)
        points = tuple(_reading(cup.water_in, reading) for reading in readings)
    except (ValueError, TypeError) as error:
        return Said(f"This cannot be read: {error}")
    title = "How stiff the cup gets"
    return StiffeningCurve(set_curve(cup, points), cup.water_in, title=title).still(caption)


def _cup(day, water_in, mix, room):
    inputs = day.samples.inputs
    mix_c, room_c = (units.parse(text, "temperature", entry=name) for text, name in ((mix, "mix"), (room, "room")))
    air = steady_room(room_c, inputs.room.rh_fraction[0], inputs.room.wind_m_s[0])
    start = clock_time(inputs.water_in, water_in)
    return plan_day(replace(inputs, water_in=start, room=air, mix_temp_c=mix_c, base_mix_temp_c=None))


def _reading(water_in, reading):
    try:
        hour, mass, rod = reading
    except (TypeError, ValueError):
        raise ValueError(
            f"reading: {reading!r} given; it must be a clock time, a mass and a rod: ('10:30', '1.1 kg', '1/4 in')"
        ) from None
    at = clock_time(water_in, hour)
    at = at if at >= water_in else at + timedelta(days=1)
    diameter_m = units.parse(rod, "length", entry="rod")
    mass_kg = units.parse(mass, "mass", entry="scale")
    thick = abs(diameter_m - defaults.si("rod_thick")) < abs(diameter_m - defaults.si("rod_thin"))
    return (at - water_in).total_seconds() / 3600.0, float(rod_resistance_pa(mass_kg, diameter_m)), thick


def scale_table():
    """List what the kitchen scale shows where the day changes.

    Returns
    -------
    Table
        What comes there, the resistance, the rod, the scale [-].

    Examples
    --------
    >>> scale_table().rows[0]
    ('sides may come off', '10 psi (68.9 kPa)', '1/4" (6.35 mm)', '7.85 oz (223 g)')

    References
    ----------
    Force over area; resistances of data/defaults.csv.
    """
    rows = [
        (_COMES[row.name], *map(show, (row.resistance_pa, row.diameter_m, row.mass_kg), ("pressure", "length", "mass")))
        for row in rod_table()
        if row.name in _COMES and row.within_scale
    ]
    return table(("what comes there", "resistance", "rod", "the scale shows"), rows)
