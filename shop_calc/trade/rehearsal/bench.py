"""The bench: how a practice pour begins, and how time passes over it."""

from shop_calc import defaults
from shop_calc.trade.rehearsal.pour import Pour, read_at
from shop_calc.trade.rehearsal.state import State
from shop_calc.trade.rehearsal.truth import draw_pour
from shop_calc.trade.timeline.room import room_at

LAST_H = 20.0  # nobody stands longer at the bench: then it is left as it is. Judgement
UNCOVERED = ("open", "mist")  # mist is gone in minutes


def begin(code, weather=None, plan=None):
    """Begin a practice pour: the base has just been packed, the face share waits in its covered bucket.

    Parameters
    ----------
    code : str or Pour
        Any text; or a pour drawn before [-].
    weather : str, optional
        "mild", "hot and windy" or "cold shop"; drawn from the code if left out [-].
    plan : Plan, optional
        An own job to rehearse; the bench top of the lessons if left out [as its fields].

    Returns
    -------
    State
        At the moment the base is packed [as its fields].

    Raises
    ------
    ValueError
        When the code is empty or the weather unknown.

    Examples
    --------
    >>> f"{begin('oak', 'mild').hour_h * 60:.0f} min"
    '20 min'

    References
    ----------
    Common practice, no source.
    """
    pour = code if isinstance(code, Pour) else draw_pour(code, weather, plan)
    ages = tuple(read_at(pour.ages_h[layer, True], pour.starts_h) for layer in ("base", "face"))
    return State(pour, pour.starts_h, *ages, path=((pour.starts_h, *ages),))


def let_pass(state, hours_h):
    """Let time pass over the piece as it lies.

    Parameters
    ----------
    state : State
        The piece [as its fields].
    hours_h : float
        How long [h].

    Returns
    -------
    State
        The piece later; ages, skin and losses have moved on [as its fields].

    Examples
    --------
    >>> later = let_pass(begin("oak", "mild"), 0.5)
    >>> later.face_age_h > begin("oak", "mild").face_age_h
    True

    References
    ----------
    As the histories of the pour.
    """
    if hours_h <= 0.0 or state.over:
        return state
    pour, start_h, end_h = state.pour, state.hour_h, state.hour_h + hours_h
    covered = state.cover not in UNCOVERED
    base_h = state.base_age_h + pour.age_between_h("base", start_h, end_h, covered)
    face_h = state.face_age_h + pour.age_between_h("face", start_h, end_h, covered)
    moved = {"hour_h": end_h, "base_age_h": base_h, "face_age_h": face_h}
    moved["path"] = (*state.path, (end_h, base_h, face_h))
    if state.face_on_h is not None and not covered:
        lost = read_at(pour.demand_kg_m2, end_h) - read_at(pour.demand_kg_m2, start_h)
        moved |= {"skin_kg_m2": state.skin_kg_m2 + lost, "lost_kg_m2": state.lost_kg_m2 + lost}
        if state.face_pa < defaults.si("first_steel_pr_low"):
            red = read_at(pour.red_kg_m2, end_h) - read_at(pour.red_kg_m2, start_h)
            moved["red_kg_m2"] = state.red_kg_m2 + red
    return state.having(**moved)


def air_now(state):
    """Read thermometer, hygrometer and wind at this moment.

    Parameters
    ----------
    state : State
        The piece [as its fields].

    Returns
    -------
    tuple of float
        Air temperature as the thermometer shows it, humidity, air speed [°C, -, m/s].

    Examples
    --------
    >>> air_now(begin("oak", "cold shop"))[0] < 14.0
    True

    References
    ----------
    Rows of the room.
    """
    return tuple(float(value) for value in room_at(state.pour.room, state.hour_h))
