"""Which cover for which night, and how many days after it."""

from shop_calc import defaults, units


def pick_cover(mean_kg_m2_h, peak_kg_m2_h, coldest_c, hottest_c, driest_fraction, silica_fume):
    """Choose the cover for a night; the first line that fits decides.

    Parameters
    ----------
    mean_kg_m2_h : float
        Mean evaporation demand of the night [kg/m2/h].
    peak_kg_m2_h : float
        Largest demand of the night [kg/m2/h].
    coldest_c : float
        Coldest air [°C].
    hottest_c : float
        Warmest air [°C].
    driest_fraction : float
        Lowest relative humidity [-].
    silica_fume : bool
        True when the binder has silica fume [-].

    Returns
    -------
    tuple of (str, bool, str)
        Key of the cover, whether to insulate or heat, and the reason in words [-].

    Examples
    --------
    >>> pick_cover(0.4, 0.7, 25.0, 34.0, 0.2, False)[0]
    'fabric'

    Notes
    -----
    Bare plastic is never chosen for an exposed trowelled face. Between 10 and 15 °C an open face is still allowed,
    with the caution that the morning comes early for its strength.

    References
    ----------
    Silica fume: UFGS 03300A as read. Limits: judgement, data/defaults.csv. Open in a mild room: common practice.
    """
    cold, hot = defaults.si("cure_air_cold"), defaults.si("cure_air_hot")
    dry = defaults.si("cure_humidity_low")
    amber, red = defaults.si("face_amber"), defaults.si("face_red")
    reasons = []
    if mean_kg_m2_h > amber:
        reasons.append(f"the air would take {units.show(mean_kg_m2_h, 'rate')} on average")
    if peak_kg_m2_h > red:
        reasons.append(f"at its worst it would take {units.show(peak_kg_m2_h, 'rate')}")
    if driest_fraction < dry:
        reasons.append(f"the air is as dry as {100 * driest_fraction:.0f} %")
    if hottest_c > hot:
        reasons.append(f"it is as warm as {units.show(hottest_c, 'temperature')}")
    drying = "; ".join(reasons)
    if coldest_c < cold:
        reason = (
            f"The air falls to {units.show(coldest_c, 'temperature')}, below {units.show(cold, 'temperature')}: "
            "lay blankets over the damp fabric and its plastic, or heat with a heater that is vented outside."
        )
        return "fabric", True, reason + (f" Besides, {drying}." if drying else "")
    if silica_fume:
        return (
            "fabric",
            False,
            "Silica fume bleeds nothing and cracks when it dries: damp fabric, sheet alone is not enough.",
        )
    if drying:
        return "fabric", False, drying[0].upper() + drying[1:] + ": keep it wet, in full contact."
    return (
        "open",
        False,
        (
            f"A mild night, {_span(coldest_c, hottest_c)}, the air takes "
            f"at most {units.show(peak_kg_m2_h, 'rate')}: left open it stays unmarked."
        ),
    )


def _span(coldest_c, hottest_c):
    cold, hot = units.show(coldest_c, "temperature"), units.show(hottest_c, "temperature")
    return cold if cold == hot else f"{cold} to {hot}"


def moist_cure_days(type_two, much_ash_or_slag):
    """Give the days of moist curing for a binder without polymer.

    Parameters
    ----------
    type_two : bool
        True for a moderate-heat portland cement, Type II [-].
    much_ash_or_slag : bool
        True when ash or slag is more than a quarter of the binder [-].

    Returns
    -------
    int
        Days [-].

    Examples
    --------
    >>> moist_cure_days(False, False), moist_cure_days(False, True)
    (7, 21)

    References
    ----------
    UFGS 03301A as read: 7, 14 and 21 days.
    """
    return 21 if much_ash_or_slag else 14 if type_two else 7
