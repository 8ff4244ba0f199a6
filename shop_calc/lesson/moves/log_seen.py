"""Lesson 10: what the plan foresaw beside what the log saw, pour by pour, and by how much it missed."""

from functools import cache

from shop_calc import defaults
from shop_calc.lesson.moves.shop_log import KEYS, SHORT, facts_of, gap_h, minutes, pour_inputs
from shop_calc.lesson.pictures.from_plan import opening_times
from shop_calc.lesson.pictures.predicted_seen import PredictedSeen, SeenRow
from shop_calc.lesson.table import table
from shop_calc.trade.logbook.calibrate import fitted_bands
from shop_calc.trade.logbook.log_ages import pour_facts
from shop_calc.trade.timeline.day import plan_day
from shop_calc.units import convert


def predicted_seen(day, pour, fit=None, keys=KEYS):
    """Lay the looks of a pour over what the plan foresaw.

    Parameters
    ----------
    day : Day
        A planned day, for the piece [h].
    pour : Pour
        A pour of a log [as its fields].
    fit : Calibration, optional
        A fit of a log; a second band shows what it makes of the day [as its fields].
    keys : sequence of str
        Stages [-].

    Returns
    -------
    PredictedSeen
        The picture, on the clock of that pour [h].

    Raises
    ------
    ValueError
        When the pour has no look, no mix or no room.

    Examples
    --------
    >>> from shop_calc.lesson.moves.shop_log import example
    >>> predicted_seen(*example()).alt[:43]
    'Bench 1, pour of Mon 4 May. Sides off: plan'

    References
    ----------
    As shop_calc.trade.timeline.day.
    """
    rows = _rows(day, pour, None if fit is None else fit.bands, keys)
    low = min(row.before_h[0] for row in rows) - 0.4
    high = max(row.before_h[2] for row in rows) + 0.4
    name = pour.pour_id[:1].upper() + pour.pour_id[1:]
    title = f"{name}, pour of {pour.water_in:%a} {pour.water_in.day} {pour.water_in:%b}"
    return PredictedSeen(rows, (low, high), title, pour.water_in)


def _rows(day, pour, bands, keys, name=None):
    facts_of(pour)  # refuses, in words, what can be no day
    before = plan_day(pour_inputs(day, pour))
    after = None if bands is None else plan_day(pour_inputs(day, pour, bands))
    found = []
    for key in keys:
        marks = [None if one is None else opening_times(one, key).marks_h for one in (before, after)]
        found.append(SeenRow(name or SHORT[key], *marks, *gap_h(pour, key)))
    return found


@cache
def _left_out(pours, recipe):
    """For each pour the bands from all the others."""
    return [fitted_bands(pours[:place] + pours[place + 1 :], recipe) for place in range(len(pours))]


def pours_seen(day, log, recipe, key="first_steel", title=""):
    """Lay one sign of every pour over the plan, and over a fit of all the other pours.

    Parameters
    ----------
    day : Day
        A planned day, for the piece [h].
    log : ShopLog
        A log of several pours [as its fields].
    recipe : str
        Recipe [-].
    key : str
        Stage of the sign [-].
    title : str
        One line over the picture [-].

    Returns
    -------
    PredictedSeen
        The picture, coldest mortar on top, in hours after the water; a pour without a look, a mix or a room is
        left out [h].

    Raises
    ------
    ValueError
        When no pour is left.

    Examples
    --------
    >>> from dataclasses import replace
    >>> from shop_calc.lesson.moves.shop_log import example
    >>> day, pour = example()
    >>> pours_seen(day, (pour, replace(pour, pour_id="bench 2")), "demo mortar").count
    2

    References
    ----------
    Leave one out; as shop_calc.trade.logbook.calibrate.
    """
    pours = tuple(getattr(log, "pours", log))
    left_out = {pour_id for pour_id, _ in pour_facts(pours, "face", defaults.si("slab_thickness"))[1]}
    pours = tuple(pour for pour in pours if pour.pour_id not in left_out)
    if not pours:
        raise ValueError("log: no pour to show; one needs a look at its face, the mix temperature and a row for the room")
    pairs = sorted(zip(pours, _left_out(pours, recipe), strict=True), key=lambda pair: pair[0].mix_temp_c("face"))
    rows = []
    for pour, bands in pairs:
        mix_c = pour.mix_temp_c("face")
        name = f"{pour.pour_id}: {convert(mix_c, 'C', 'F'):.0f} °F ({mix_c:.0f} °C)"
        rows += _rows(day, pour, bands, (key,), name)
    ends = [hour for row in rows for hour in (*row.before_h, row.there_h) if hour is not None]
    return PredictedSeen(rows, (min(ends) - 0.4, max(ends) + 0.4), title)


def misses_table(fit):
    """Say how far the looks of a log were missed, three ways.

    Parameters
    ----------
    fit : Calibration
        A fit of several pours [as its fields].

    Returns
    -------
    Table
        Mean misses, and under them the one sentence on trust [-].

    Examples
    --------
    >>> from shop_calc.lesson.moves.shop_log import example
    >>> from shop_calc.trade.logbook.calibrate import calibrate
    >>> day, pour = example()
    >>> misses_table(calibrate((pour,), "demo mortar")).rows[0]
    ('plan without a log', '11 min')

    References
    ----------
    As shop_calc.trade.logbook.calibrate.
    """
    rows = [
        ("plan without a log", minutes(fit.miss_default_h)),
        ("fit, on its own pours", minutes(fit.miss_fitted_h)),
    ]
    if fit.miss_left_out_h is not None:
        rows.append(("fit that never saw the pour", minutes(fit.miss_left_out_h)))
    return table(("who foresees", "a look is missed by"), rows, fit.trust)
