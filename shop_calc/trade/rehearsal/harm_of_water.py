"""What water, air and covers do to a face: every consequence with its reason in numbers."""

from shop_calc import defaults, units
from shop_calc.trade.rehearsal.damage import found as _found
from shop_calc.trade.rehearsal.damage import past

SKIN_M = 0.001  # depth that a trowel works sprinkled water into; judgement
SPRINKLED_KG_M2 = 0.1  # a flick of the brush, a tenth of a millimetre of water; judgement
COVER_HOURS = (0.5, 1.0)  # bare plastic marks from the first, plainly from the second; judgement
CONTACT = ("fabric", "plastic", "membrane")  # covers that touch the face


def of_sprinkle(state, word="sprinkle"):
    """Find what comes of water on the face now.

    Parameters
    ----------
    state : State
        The piece before the act [as its fields].
    word : str
        The act that brings the water [-].

    Returns
    -------
    tuple of Damage
        A weak, crazed skin [as its fields].

    Examples
    --------
    >>> from dataclasses import replace
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> of_sprinkle(replace(begin("oak", "mild"), face_on_h=0.5))[0].key
    'crazing'

    References
    ----------
    Derived: the water of a skin one millimetre deep and what is added to it. From memory of NRMCA Concrete in
    Practice 1 and 3.
    """
    held = SKIN_M * state.pour.face_water_kg_m3
    ratio = 1.0 + (state.water_kg_m2 + SPRINKLED_KG_M2) / held
    reason = (
        f"The upper millimetre holds {units.show(held, 'areal_mass')} of water; with what was sprinkled it has "
        f"{100 * (ratio - 1):.0f} % more, and so has its w/cm."
    )
    return _found("crazing", state, word, past(ratio, 1.1, 1.2), reason)


def of_cover(state, key):
    """Find what comes of laying a cover now.

    Parameters
    ----------
    state : State
        The piece before the act [as its fields].
    key : str
        A cover [-].

    Returns
    -------
    tuple of Damage
        Its print in a soft face, or water on it, or nothing [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> of_cover(begin("oak", "mild"), "tent")
    ()

    References
    ----------
    Common practice, no source.
    """
    if key == "mist" and state.face_pa < defaults.si("last_steel_pr_high"):
        return of_sprinkle(state, f"cover {key}")
    if key not in CONTACT:
        return ()
    limit = defaults.si("first_steel_pr_low")
    until = units.show(limit, "pressure")
    reason = f"The face stood below {until}: paste sticks to what touches it."
    return _found("printed", state, f"cover {key}", past(state.face_pa, limit, defaults.si("strip_pr_high")), reason)


def of_uncover(state):
    """Find what a cover has done by the time it comes off.

    Parameters
    ----------
    state : State
        The piece under its cover [as its fields].

    Returns
    -------
    tuple of Damage
        Blotches under bare plastic, or nothing [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> of_uncover(begin("oak", "mild"))
    ()

    References
    ----------
    PCA EB001 text on curing with plastic.
    """
    if state.cover != "plastic":
        return ()
    lay_h = state.hour_h - state.cover_from_h
    reason = f"Bare plastic lay on the face for {units.show(lay_h, 'duration')}: its water gathered under the folds."
    return _found("blotches", state, "cover plastic", past(lay_h, *COVER_HOURS), reason)


def of_drying(state):
    """Find what the air has done to a soft face by now.

    Parameters
    ----------
    state : State
        The piece [as its fields].

    Returns
    -------
    tuple of Damage
        Cracks, or nothing [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> of_drying(begin("oak", "mild"))
    ()

    References
    ----------
    Limit of a low-bleed face: data/defaults.csv. That it has to take all free water is a judgement.
    """
    free = state.pour.free_water_kg_m2
    red = units.show(defaults.si("face_red"), "rate")
    reason = (
        f"While it was soft the air took {units.show(state.red_kg_m2, 'areal_mass')} at more than {red}; "
        f"the face had {units.show(free, 'areal_mass')} to give before its skin dried."
    )
    return _found("cracks", state, "left open", past(state.red_kg_m2, free, 1.5 * free), reason)
