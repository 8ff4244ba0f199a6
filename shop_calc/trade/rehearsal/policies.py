"""Ways to work through a day: by the cues alone, and the habits that go wrong."""

from shop_calc.trade.rehearsal.acts import act
from shop_calc.trade.rehearsal.cue_follower import by_cues, cover_for_the_night

_LONGEST = 600  # acts; a policy that has not left by then never will


def by_the_clock(state):
    """Say the next act of somebody who reads the likely times off the wall and never looks.

    Parameters
    ----------
    state : State
        The piece [as its fields].

    Returns
    -------
    str
        The next act [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> by_the_clock(begin("oak", "mild"))
    'wait 5'

    References
    ----------
    Common practice, no source: it is what the cues are there to prevent.
    """
    soon_h = 1.0 / 24.0  # half of the five minutes that one waits at a time
    due = {stage.key: stage.likely_from_h - soon_h for stage in state.pour.wall.stages}
    if state.face_on_h is None:
        return "spread" if state.hour_h >= due["face"] else "wait 5"
    if state.screeded_h is None:
        return "screed"
    if state.float_h is None:
        return "float"
    if state.hour_h >= due["strip"] and len(state.off) < len(state.pour.sides):
        return "strip"
    if len(state.patched) < len(state.off):
        return "patch"
    if len(state.off) == len(state.pour.sides):
        if state.hour_h >= due["first_steel"] and not state.steel:
            return "steel"
        if state.hour_h >= due["last_steel"] and len(state.steel) == 1:
            return "steel"
        if state.hour_h >= due["stop"]:
            return cover_for_the_night(state)
    return "wait 5"


def steel_at_two_hours(state):
    """Say the next act of somebody who follows the cues, but always takes the steel at two hours.

    Parameters
    ----------
    state : State
        The piece [as its fields].

    Returns
    -------
    str
        The next act [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> steel_at_two_hours(begin("oak", "mild"))
    'look bucket'

    References
    ----------
    Common practice, no source: a habit that fits no two days.
    """
    if state.float_h is not None and state.hour_h >= 2.0 and not state.steel:
        return "steel"
    word = by_cues(state)
    # who has steeled believes the top done: no float opens it again
    return "wait 5" if word == "float" and state.steel else word


def bare_plastic(state):
    """Say the next act of somebody who follows the cues, but lays plastic on the face for the night.

    Parameters
    ----------
    state : State
        The piece [as its fields].

    Returns
    -------
    str
        The next act [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> bare_plastic(begin("oak", "mild"))
    'look bucket'

    References
    ----------
    PCA EB001 text on curing with plastic: what comes of it.
    """
    if state.cover == "plastic":
        return "leave"
    word = by_cues(state)
    done = len(state.steel) >= 1 and (word in ("leave", "uncover") or word.startswith("cover "))
    return "cover plastic" if done else word


def sprinkling(state):
    """Say the next act of somebody who follows the cues, but wets a dull face before each float.

    Parameters
    ----------
    state : State
        The piece [as its fields].

    Returns
    -------
    str
        The next act [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> sprinkling(begin("oak", "mild"))
    'look bucket'

    References
    ----------
    Common practice, no source: what the trade warns of.
    """
    word = by_cues(state)
    done = [entry.word for entry in state.diary]
    due = word in ("float", "steel") and state.float_h is not None
    return "sprinkle" if due and done.count("sprinkle") < done.count("float") + done.count("steel") else word


def half_hour_looks(state):
    """Say the next act of somebody who follows the cues, but looks only every half hour, to the last.

    Parameters
    ----------
    state : State
        The piece [as its fields].

    Returns
    -------
    str
        The next act [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> half_hour_looks(begin("oak", "mild"))
    'look bucket'

    References
    ----------
    Common practice, no source.
    """
    word = by_cues(state)
    return "wait 30" if word.startswith("wait") else word


POLICIES = {
    "by the cues": by_cues,
    "by the cues, every half hour": half_hour_looks,
    "by the clock on the wall": by_the_clock,
    "steel at two hours": steel_at_two_hours,
    "bare plastic overnight": bare_plastic,
    "water on the face": sprinkling,
}


def work_through(state, policy, do=act):
    """Work a pour through to the morning in one way.

    Parameters
    ----------
    state : State
        Where it begins [as its fields].
    policy : callable
        One of POLICIES, or any function from a State to the next act [-].
    do : callable, optional
        `act`, or one that remembers: ways that begin alike then share what they do alike [-].

    Returns
    -------
    State
        The morning after [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> work_through(begin("oak", "mild"), by_cues).over
    True

    References
    ----------
    Common practice, no source.
    """
    for _ in range(_LONGEST):
        if state.over:
            return state
        state = do(state, policy(state))
    return do(state, "leave")
