"""What an act does at this moment: every consequence computed from the hidden day, with its reason in numbers."""

from math import sqrt

from shop_calc import defaults, units
from shop_calc.trade.rehearsal.damage import BAD, past, short_of
from shop_calc.trade.rehearsal.damage import found as _found


def _psi(name):
    return defaults.si(name)


def _show(pa):
    return units.show(pa, "pressure")


def _stood(resistance_pa):
    """A penetration resistance in words; in the soft stage the curve says no more than that it is soft."""
    soft = defaults.si("power_law_from")
    return f"less than {_show(soft)}" if resistance_pa < soft else _show(resistance_pa)


def of_spread(state):
    """Find what comes of putting the face on now.

    Parameters
    ----------
    state : State
        The piece before the act [as its fields].

    Returns
    -------
    tuple of Damage
        Mixed layers, a cold joint, lumps, or nothing [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> of_spread(begin("oak", "mild"))[0].key
    'mixed'

    References
    ----------
    Early clock and layer gap of data/defaults.csv.
    """
    needed_pa, have_pa = state.edge_pa, state.bears_pa
    earliest_h = defaults.si("base_ready_earliest")
    short = short_of(have_pa, needed_pa, needed_pa / defaults.si("edge_safety_factor"))
    soon = max(1.0 - state.rest_h / earliest_h, 0.0) if earliest_h else 0.0
    # a rounded clock is no reason to call a quarter hour too short
    soon = soon if soon > 1e-6 else 0.0
    reason = (
        f"After {units.show(state.rest_h, 'duration')} of rest the base bears {_show(have_pa)}; "
        f"to stay where it is it needs {_show(needed_pa)} and {units.show(earliest_h, 'duration')}."
    )
    found = _found("mixed", state, "spread", max(short, soon), reason)
    limit_h, most_h = defaults.si("layer_gap"), defaults.get("layer_gap").high / 60.0
    gap = past(state.gap_h, limit_h, sqrt(limit_h * most_h))
    stiff = past(state.base_pa, _psi("layer_gap_pr"), _psi("first_steel_pr_high"))
    reason = (
        f"The base had {units.show(state.gap_h, 'duration')} at 21 °C behind it, the limit is "
        f"{units.show(limit_h, 'duration')}; it stood at {_stood(state.base_pa)} against the "
        f"{_show(_psi('layer_gap_pr'))} at which it takes no thumb print."
    )
    found += _found("cold joint", state, "spread", max(gap, stiff), reason)
    if state.stiff_in_bucket:
        reason = "The share had stiffened falsely in its bucket; turned over without water it would have come back."
        return found + _found("lumps", state, "spread", BAD, reason)
    set_in = past(state.face_pa, _psi("strip_pr_low"), 2.0 * _psi("strip_pr_low"))
    return found + _found("lumps", state, "spread", set_in, f"The share itself stood at {_stood(state.face_pa)}.")


def _tearing(state, word):
    """A board or a float over a skin that has dried, or over a face that has set."""
    free = state.pour.free_water_kg_m2
    board = word == "screed"
    dry = past(state.skin_kg_m2, free, 1.5 * free) if board else 0.0
    limit, plain = ("strip_pr_low", "strip_pr_high") if board else ("first_steel_pr_high", "last_steel_pr_low")
    stiff = past(state.face_pa, _psi(limit), _psi(plain))
    if dry > stiff:
        lost, gone = (units.show(mass, "areal_mass") for mass in (state.skin_kg_m2, free))
        reason = f"The skin had lost {lost}; its shine is gone from {gone} on."
    else:
        reason = f"The face stood at {_stood(state.face_pa)}; this tool moves it until {_show(_psi(limit))}."
    return _found("torn", state, word, max(dry, stiff), reason)


def of_screed(state):
    """Find what comes of drawing the board over it now.

    Parameters
    ----------
    state : State
        The piece before the act [as its fields].

    Returns
    -------
    tuple of Damage
        A torn skin, or nothing [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> of_screed(begin("oak", "mild"))
    ()

    References
    ----------
    Common practice, no source: at once, before the sheen goes.
    """
    return _tearing(state, "screed")


def of_float(state):
    """Find what comes of floating now.

    Parameters
    ----------
    state : State
        The piece before the act [as its fields].

    Returns
    -------
    tuple of Damage
        Drag marks on a face that has set, or nothing [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> of_float(begin("oak", "mild"))
    ()

    References
    ----------
    Common practice, no source.
    """
    return _tearing(state, "float")


def of_strip(state):
    """Find what comes of taking a side off now.

    Parameters
    ----------
    state : State
        The piece before the act [as its fields].

    Returns
    -------
    tuple of Damage
        A sagging edge, or nothing [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> of_strip(begin("oak", "mild"))[0].key
    'sag'

    References
    ----------
    Strip window and edge criterion of data/defaults.csv.
    """
    low = _psi("strip_pr_low")
    softer_pa, needed_pa = state.softer_pa, state.edge_pa
    soft = past(softer_pa, low, 0.7 * low)  # three tenths short is plain to see; judgement
    weak = short_of(state.bears_pa, needed_pa, needed_pa / defaults.si("edge_safety_factor"))
    if weak > soft:
        rest = units.show(state.rest_h, "duration")
        reason = f"The edge bears {_show(state.bears_pa)} after {rest} of rest; to stand it needs {_show(needed_pa)}."
    else:
        reason = f"The softer layer stood at {_stood(softer_pa)}; sides come off from {_show(low)} on."
    return _found("sag", state, "strip", max(soft, weak), reason)


def of_patch(state):
    """Find what comes of patching the open edges now.

    Parameters
    ----------
    state : State
        The piece before the act [as its fields].

    Returns
    -------
    tuple of Damage
        Patches that show, or nothing [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> of_patch(begin("oak", "mild"))
    ()

    References
    ----------
    Strip window of data/defaults.csv; plain to see from where nothing grips any more, the layer gap.
    """
    limit = _psi("strip_pr_high")
    reason = (
        f"The face stood at {_stood(state.face_pa)}; a patch grips until {_show(limit)}, and not at all where no thumb "
        "prints it."
    )
    return _found("patch", state, "patch", past(state.face_pa, limit, _psi("layer_gap_pr")), reason)


def of_steel(state):
    """Find what comes of a pass of steel now.

    Parameters
    ----------
    state : State
        The piece before the act [as its fields].

    Returns
    -------
    tuple of Damage
        Trapped air, a broken crust, open hollows, dark marks, or nothing [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> of_steel(begin("oak", "mild"))[0].key
    'air'

    References
    ----------
    Windows of data/defaults.csv.
    """
    low, high = _psi("first_steel_pr_low"), _psi("first_steel_pr_high")
    early = past(state.face_pa, low, _psi("strip_pr_high"))
    key, reason = "air", f"The face stood at {_stood(state.face_pa)}; steel begins at {_show(low)}."
    if state.crusted:
        key = "crust"
        reason = (
            f"The skin was dry, {units.show(state.skin_kg_m2, 'areal_mass')} lost, and carried a finger; below it the "
            f"face stood at {_stood(state.face_pa)}, and steel begins at {_show(low)}."
        )
    found = _found(key, state, "steel", early, reason)
    if not state.steel:
        reason = f"The first pass met {_show(state.face_pa)}; hollows and pores close until {_show(high)}."
        found += _found("hollows", state, "steel", past(state.face_pa, high, _psi("last_steel_pr_low")), reason)
    end, stop = _psi("last_steel_pr_high"), _psi("stop_pr")
    reason = f"The blade met {_show(state.face_pa)}; light passes end at {_show(end)}, and at {_show(stop)} it rings."
    return found + _found("dark", state, "steel", past(state.face_pa, end, sqrt(end * stop)), reason)
