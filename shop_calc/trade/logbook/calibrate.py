"""What a shop's own log says of its mortar: bands for the next plan, errors before and after, rows that do not fit."""

from dataclasses import dataclass

import numpy as np

from shop_calc import defaults
from shop_calc.science import set_records
from shop_calc.science.setting import INITIAL_SET_PA
from shop_calc.trade.logbook.log_ages import pour_facts
from shop_calc.trade.logbook.log_trust import trust_words
from shop_calc.trade.logbook.misfits import misfits_of
from shop_calc.trade.logbook.set_fit import fit_set, places_without_each
from shop_calc.trade.logbook.set_places import NAMES, values_at
from shop_calc.trade.timeline.cloud import Bands

LAYERS = ("face", "base")


@dataclass(frozen=True)
class RodCurve:
    """The rod readings of one pour on log-log paper, without any default.

    Parameters
    ----------
    pour_id : str
        Which pour [-].
    initial_set_h, final_set_h : float
        Equivalent age at 21 °C at 500 and 4000 psi on the line [h].
    exponent : float
        Slope of the line [-].
    count : int
        Readings [-].
    trusted : bool
        True from five readings on; with fewer the line is shown and not used [-].

    Examples
    --------
    >>> RodCurve("bench", 3.4, 4.6, 6.9, 3, False).trusted
    False

    References
    ----------
    ASTM C403/C403M, log-log fit; at least five by the forecast test on the open record.
    """

    pour_id: str
    initial_set_h: float
    final_set_h: float
    exponent: float
    count: int
    trusted: bool


@dataclass(frozen=True)
class Calibration:
    """What a log says of one layer of one recipe.

    Parameters
    ----------
    recipe : str
        The recipe [-].
    layer : str
        "face" or "base" [-].
    bands : Bands
        5 %, fitted and 95 % value for the next pour, by names of the defaults table; for cloud.day_cloud [SI].
    known : dict of str to (float, float, float)
        The same for the recipe's own mean, pour to pour scatter left out [SI].
    pour_count, look_count, rod_count : int
        What the fit stands on [-].
    temp_span_k : float
        From the coldest mortar to the warmest [K].
    energy_fitted : bool
        Whether activation energy was fitted; it is once pours span 8 °C [-].
    miss_default_h, miss_fitted_h, miss_left_out_h : float or None
        Mean miss of a look's hour by the defaults, by the fit, and by a fit that never saw the pour [h].
    misfits : tuple of Misfit
        Rows that do not fit [-].
    left_out : tuple of (str, str)
        Pours that could not be used, and why [-].
    rod_curves : tuple of RodCurve
        Rod readings by themselves [-].
    trust : str
        One sentence on how far to trust it [-].

    Examples
    --------
    >>> calibrate((), "demo mortar").bands["set_exponent"]
    (5.5, 7.0, 8.5)

    References
    ----------
    As `calibrate`.
    """

    recipe: str
    layer: str
    bands: dict
    known: dict
    pour_count: int
    look_count: int
    rod_count: int
    temp_span_k: float
    energy_fitted: bool
    miss_default_h: float | None
    miss_fitted_h: float | None
    miss_left_out_h: float | None
    misfits: tuple
    left_out: tuple
    rod_curves: tuple
    trust: str


def calibrate(log, recipe, layer="face", *, thickness_m=None):
    """Fit initial set, exponent and activation energy of one layer of one recipe to a log.

    Not to be carried over to another recipe, cement or dose; a new bag of cement deserves a new name.

    Parameters
    ----------
    log : ShopLog or sequence of Pour
        The log [as its fields].
    recipe : str
        Name of the recipe as the log has it; capitals do not count [-].
    layer : str
        "face" or "base", each by its own looks [-].
    thickness_m : float, optional
        Thickness of the pieces and side cups where the log does not say it; that of the defaults table if left out [m].

    Returns
    -------
    Calibration
        Bands for the next plan and how well they do [as its fields].

    Raises
    ------
    ValueError
        When the layer is unknown or the thickness cannot be.

    Examples
    --------
    >>> from shop_calc.trade.logbook.shop_log import read_log
    >>> log = read_log(defaults.data_folder() / "logs" / "eight_pours.csv")
    >>> found = calibrate(log, "demo mortar")
    >>> found.pour_count, found.miss_fitted_h < found.miss_default_h
    (8, True)

    Notes
    -----
    Model and likelihood: shop_calc.trade.logbook.set_posterior. Without a pour the bands are those of the defaults table, to
    the last digit. A pour whose rows say how thick its piece was is aged at that thickness: 1/2 in more or less moves ages
    by a few percent in a room that is far from the mix temperature; a surface temperature in the log takes that away.
    Looks at a soft mortar leave a slow one with a low exponent and a fast one with a high exponent alike likely: the
    bands carry how the three hang together, and a plan draws them so.

    References
    ----------
    Maximum a posteriori; ASTM C1074 form for ages, ASTM C403/C403M for resistance.
    """
    facts, left_out, fitted, span_k, fit, bands, known = _fit(log, recipe, layer, thickness_m)
    default_h = _mean_miss_h(fitted, [np.zeros(3)] * len(fitted))
    fitted_h = _mean_miss_h(fitted, [fit.place] * len(fitted))
    left_h = None
    if len(fitted) > 1:
        left_h = _mean_miss_h(fitted, places_without_each(fitted, fit))
    misfits = misfits_of(facts, fitted, fit)
    wrong = {id(row) for _, row in misfits}
    curves = tuple(curve for curve in (_rod_curve(one, wrong) for one in facts) if curve is not None)
    looks = sum(len(one.rows) for one in fitted)
    rods = sum(reading.by_rod for one in fitted for reading in one.readings)
    return Calibration(
        recipe, layer, bands, known, len(fitted), looks, rods, span_k, fit.energy_fitted, default_h, fitted_h, left_h,
        tuple(misfit for misfit, _ in misfits), left_out, curves,
        trust_words(len(fitted), default_h, left_h, _far_from_default(fit)),
    )  # fmt: skip


def fitted_bands(log, recipe, layer="face", *, thickness_m=None):
    """Fit as `calibrate` does and give the bands for the next plan alone, in half the time.

    Parameters
    ----------
    log : ShopLog or sequence of Pour
        The log [as its fields].
    recipe : str
        Name of the recipe as the log has it; capitals do not count [-].
    layer : str
        "face" or "base" [-].
    thickness_m : float, optional
        As for `calibrate` [m].

    Returns
    -------
    Bands
        Those of the calibration [SI].

    Raises
    ------
    ValueError
        When the layer is unknown or the thickness cannot be.

    Examples
    --------
    >>> fitted_bands((), "demo mortar")["set_exponent"]
    (5.5, 7.0, 8.5)

    References
    ----------
    As `calibrate`.
    """
    *_, bands, _ = _fit(log, recipe, layer, thickness_m)
    return bands


def _fit(log, recipe, layer, thickness_m):
    if layer not in LAYERS:
        raise ValueError(f"layer: {layer!r} given; it must be one of {', '.join(LAYERS)}")
    thickness_m = defaults.si("slab_thickness") if thickness_m is None else thickness_m
    wanted = recipe.strip().casefold()
    pours = [pour for pour in getattr(log, "pours", log) if pour.recipe.strip().casefold() == wanted]
    facts, left_out = pour_facts(pours, layer, thickness_m)
    fitted = [one for one in facts if one.between or one.readings]
    temps = [one.mean_temp_c for one in fitted]
    span_k = max(temps) - min(temps) if temps else 0.0
    usual = {name: defaults.si_band(name) for name in NAMES}
    fit = fit_set(fitted, span_k >= defaults.si("calibration_temp_span"))
    bands, known = Bands(usual, fit.next_root() if fitted else None), dict(usual)
    if fitted:
        for name in NAMES[: 3 if fit.energy_fitted else 2]:
            bands[name], known[name] = fit.next_band(name), fit.known_band(name)
    return facts, left_out, fitted, span_k, fit, bands, known


def _far_from_default(fit):
    return bool(np.abs(fit.place[:2]).max() > 2.0)


def _rod_curve(facts, wrong):
    """Straight line through the rod readings that fit, or None when they do not make a rising line."""
    rods = [reading for reading in facts.readings if reading.by_rod and id(facts.rows[reading.look]) not in wrong]
    ages = facts.age_h([reading.at_h for reading in rods], defaults.si("activation_energy"))
    try:
        line = set_records.fit_penetration(ages, np.exp([reading.log_resistance for reading in rods]))
    except ValueError:
        return None
    trusted = len(rods) >= defaults.get("rod_readings_trusted").value
    return RodCurve(facts.pour.pour_id, line.initial_set_h, line.final_set_h, line.exponent, len(rods), trusted)


def _predicted_h(facts, places, log_resistance):
    """Hour since the layer's water at which a resistance is reached."""
    initial_h, exponent, energy = values_at(places)
    return facts.time_at_age_h(initial_h * np.exp((log_resistance - np.log(INITIAL_SET_PA)) / exponent), energy)


def _misses_h(facts, places):
    """How far the hour of each look is missed; nothing inside the gap between two looks."""
    misses = []
    for item in facts.between:
        at = float(_predicted_h(facts, places, item.log_resistance))
        low = item.after_h if item.after_h is not None else -np.inf
        high = item.before_h if item.before_h is not None else np.inf
        misses.append(max(low - at, at - high, 0.0))
    misses.extend(
        abs(float(_predicted_h(facts, places, reading.log_resistance)) - reading.at_h) for reading in facts.readings
    )
    return misses


def _mean_miss_h(fitted, places):
    """Mean over pours of the mean miss of their looks; None without a pour."""
    if not fitted:
        return None
    return float(np.mean([np.mean(_misses_h(one, place)) for one, place in zip(fitted, places, strict=True)]))
