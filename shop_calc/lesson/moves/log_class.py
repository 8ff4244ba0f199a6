"""Lesson 10: how few readings are too few, a class's logs together, a cup in the kitchen, a log of one's own."""

from dataclasses import replace

import numpy as np

from shop_calc.lesson.moves.waits import penetration_record
from shop_calc.lesson.said import Said
from shop_calc.lesson.table import table
from shop_calc.science.set_records import fit_penetration
from shop_calc.science.setting import FINAL_SET_PA, INITIAL_SET_PA
from shop_calc.trade.logbook.calibrate import calibrate
from shop_calc.trade.logbook.shop_log import read_log
from shop_calc.units import convert

# A spoon handle in plaster of Paris, first print that stays: minutes after the water. Judgement, ours.
CUP_LIKELY_MIN, CUP_SCATTER = 13.0, 0.45  # before any cup: any bag, any water
NEXT_SCATTER = 0.10  # one cup beside the next, same bag, same water
_PARTS = (
    ("1 to 3", 1, 3), ("2 to 4", 2, 4), ("3 to 5", 3, 5), ("1 to 5", 1, 5), ("2 to 6", 2, 6), ("1 to 8", 1, 8),
)  # fmt: skip
_EDGE = 1.645  # deviations of a normal scatter that hold nine of ten


def forecast_table():
    """Forecast the end of a measured record from its first readings.

    Returns
    -------
    Table
        Readings used, the stiffest of them, and how far the forecast misses the hour at which the record itself passed
        500 and 4000 psi [min].

    Examples
    --------
    >>> forecast_table().rows[0][2:]
    ('-7 min', '-4 min')

    References
    ----------
    Laboratory report after ASTM C403-08, Higher Institute of Technological Studies, Sfax; data/open.
    """
    hours, resistance_pa = penetration_record()
    reached_h = np.interp(np.log([INITIAL_SET_PA, FINAL_SET_PA]), np.log(resistance_pa), hours)
    rows = []
    for name, first, last in _PARTS:
        part = slice(first - 1, last)
        line = fit_penetration(hours[part], resistance_pa[part])
        misses = 60 * (np.array([line.initial_set_h, line.final_set_h]) - reached_h)
        stiffest = f"{convert(resistance_pa[part].max(), 'Pa', 'psi'):.0f} psi"
        rows.append((name, stiffest, *(f"{miss:+.0f} min" for miss in misses)))
    return table(("readings used", "stiffest of them", "500 psi missed by", "4,000 psi missed by"), rows)


def pooled(logs, recipe, layer="face"):
    """Fit the logs of a class one by one, and all together.

    Parameters
    ----------
    logs : dict of str to ShopLog
        Logs by the names of their benches [as its fields].
    recipe : str
        Recipe, the same on all benches [-].
    layer : str
        "face" or "base" [-].

    Returns
    -------
    Table
        For each bench and for all: pours, looks, and the age of initial set with its band [-].

    Examples
    --------
    >>> from shop_calc import defaults
    >>> log = read_log(defaults.data_folder() / "logs" / "first_pour.csv")
    >>> pooled({"a": log, "b": log}, "demo mortar").rows[-1][1]
    '2'

    Notes
    -----
    The band is that of the recipe itself; the next pour scatters about it.

    References
    ----------
    As shop_calc.trade.logbook.calibrate.
    """
    everybody = pool(logs)
    fits = [(name, calibrate(log, recipe, layer)) for name, log in logs.items()]
    fits.append(("all together", calibrate(everybody, recipe, layer)))
    rows = [
        (name, str(fit.pour_count), str(fit.look_count), f"{likely:.2f} h", f"{low:.2f} to {high:.2f} h")
        for name, fit in fits
        for low, likely, high in (fit.known["set_time_initial"],)
    ]
    return table(("bench", "pours", "looks", "initial set, age at 70 °F", "nine in ten"), rows, fits[-1][1].trust)


def pool(logs):
    """Put the pours of several logs together, each named by its bench.

    Parameters
    ----------
    logs : dict of str to ShopLog
        Logs by the names of their benches [as its fields].

    Returns
    -------
    tuple of Pour
        All pours [as its fields].

    Examples
    --------
    >>> from shop_calc import defaults
    >>> log = read_log(defaults.data_folder() / "logs" / "first_pour.csv")
    >>> [pour.pour_id for pour in pool({"a": log, "b": log})]
    ['a: bench 1', 'b: bench 1']

    References
    ----------
    Common practice, no source.
    """
    return tuple(
        replace(pour, pour_id=f"{name}: {pour.pour_id}") for name, log in logs.items() for pour in log.pours
    )


def to_mend(log, fit):
    """List what a log's reader and its fit want looked at.

    Parameters
    ----------
    log : ShopLog
        A log [as its fields].
    fit : Calibration
        Its fit [as its fields].

    Returns
    -------
    Said
        A line each [-].

    Examples
    --------
    >>> from shop_calc import defaults
    >>> log = read_log(defaults.data_folder() / "logs" / "first_pour.csv")
    >>> to_mend(log, calibrate(log, "demo mortar"))
    Nothing to mend.

    References
    ----------
    Common practice, no source.
    """
    return Said("\n".join(map(str, (*log.problems, *fit.misfits))) or "Nothing to mend.")


def your_log(path, recipe):
    """Read a log of one's own and say what it gives; a blank is no fault.

    Parameters
    ----------
    path : str or path-like
        The file, or the three dots of a blank [-].
    recipe : str
        Recipe [-].

    Returns
    -------
    Said
        Rows to mend and the sentence on trust [-].

    Examples
    --------
    >>> your_log(..., "demo mortar")
    No log named: the plan stands exactly on its defaults.

    References
    ----------
    As shop_calc.trade.logbook.calibrate.
    """
    if path is None or path is Ellipsis or not str(path).strip(" ."):
        return Said("No log named: the plan stands exactly on its defaults.")
    try:
        log = read_log(path)
        fit = calibrate(log, recipe)
    except ValueError as error:
        return Said(f"This cannot be read: {error}")
    return Said("\n".join([fit.trust, to_mend(log, fit).text]))


def cup_band_h(first_min=...):
    """Foresee when a spoon handle leaves a print that stays in a cup of plaster.

    Parameters
    ----------
    first_min : float
        Minutes at which it did in a first cup of the same bag and water; the three dots of a blank [min].

    Returns
    -------
    (float, float, float)
        Low, likely, high [h].

    Raises
    ------
    ValueError
        When the minutes are no number, or not from 1 to 180.

    Examples
    --------
    >>> [round(60 * value, 3) for value in cup_band_h(20)]
    [15.574, 19.599, 24.664]

    Notes
    -----
    The first cup counts as one pour does: a normal scatter in the logarithm, ours before it, the cup's about it.

    References
    ----------
    Bayes' rule; scatters are judgement.
    """
    middle, spread = np.log(CUP_LIKELY_MIN), CUP_SCATTER
    if first_min is not Ellipsis and first_min is not None:
        middle, spread = _after(float(_minutes_of(first_min)), middle)
    return tuple(float(value) / 60.0 for value in np.exp(middle + _EDGE * spread * np.array([-1.0, 0.0, 1.0])))


def _minutes_of(first_min):
    from shop_calc.lesson.bench import typed

    minutes = 60.0 * typed(first_min, "duration", "min")
    if not 1.0 <= minutes <= 180.0:
        raise ValueError(f"first cup: {minutes:g} min given; must be between 1 and 180 min")
    return minutes


def _after(minutes, middle):
    """Middle and spread of the next cup, once a first one was seen."""
    weight = CUP_SCATTER**2 / (CUP_SCATTER**2 + NEXT_SCATTER**2)
    left = CUP_SCATTER * np.sqrt(1.0 - weight)
    return middle + weight * (np.log(minutes) - middle), np.hypot(left, NEXT_SCATTER)


def second_cup(first, second):
    """Lay the second cup over the band that the first one left; nothing that is typed stops the lesson.

    Parameters
    ----------
    first, second : float or str
        Minutes of either cup, or the three dots of a blank [min].

    Returns
    -------
    Still or Said
        Shown by the notebook [-].

    Examples
    --------
    >>> second_cup("soon", ...).text[:20]
    'This cannot be read:'

    References
    ----------
    As `cup_band_h`.
    """
    from shop_calc.lesson.bench import over_band

    try:
        band = cup_band_h(first)
    except ValueError as error:
        return Said(f"This cannot be read: {error}")
    if first is Ellipsis:
        known, caption = "before any cup", "Wide, for a bag that nobody has met: the first cup will draw it together."
    else:
        known, caption = "after the first cup", "Outside the band? Was it the same water, the same spoon, a fresh place?"
    return over_band(
        second, band, "duration", "min", (0.0, 0.75), f"A print that stays, {known}", caption,
    )  # fmt: skip
