"""Ways to work through a day: by the cues alone, and the habits that go wrong."""

from shop_calc import defaults
from shop_calc.trade.rehearsal.acts import act
from shop_calc.trade.rehearsal.night import expected_cover

_LONGEST = 600  # acts; a policy that has not left by then never will


def _last(state, sign, within_h=0.0):
    """The last look of one kind, when it was made at this very moment, or not longer ago than `within_h`."""
    for seen in reversed(state.seen):
        if seen.at_h < state.hour_h - within_h - 1e-9:
            return None
        if seen.sign == sign:
            return seen.cue
    return None


def by_cues(state):
    """Say the next act of somebody who looks and follows only what is seen.

    Parameters
    ----------
    state : State
        The piece; of it only the looks, the own acts, the clock and the forecast are used [as its fields].

    Returns
    -------
    str
        The next act [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> by_cues(begin("oak", "mild"))
    'look bucket'

    References
    ----------
    The order of the method: shop_calc.trade.timeline.stages.
    """
    if state.face_on_h is None:
        return _before_the_face(state)
    if state.screeded_h is None:
        return "screed"
    if state.float_h is None:
        return "float"
    if _last(state, "air", defaults.si("look_interval")) is None:
        return "look air"
    for sign in ("thumb", "edge", "sheen"):
        if _last(state, sign) is None:
            return f"look {sign}"
    return _next_tool(state) or _between_tools(state)


def _before_the_face(state):
    for sign in ("bucket", "edge"):
        if _last(state, sign) is None:
            return f"look {sign}"
    if _last(state, "bucket") == "stiff":
        return "stir"
    if _last(state, "edge") in ("stays", "too stiff") or _last(state, "bucket") == "set":
        return "spread"
    return "wait 5"


def _next_tool(state):
    thumb, edge = _last(state, "thumb"), _last(state, "edge")
    if len(state.off) < len(state.pour.sides):
        return "strip" if edge in ("keeps", "firm", "stiff") or state.off else ""
    if len(state.patched) < len(state.off):
        return "patch"
    if not state.steel:
        return "steel" if thumb in ("faint", "nail", "hard", "past", "rings") else ""
    if _last(state, "sheen") == "hard" and thumb == "hard":
        return "steel"
    if _last(state, "sheen") == "polished" or thumb in ("past", "rings"):
        return _for_the_night(state)
    return ""


def _between_tools(state):
    thumb = _last(state, "thumb")
    dry = _last(state, "sheen") == "dull"
    soft = thumb in ("sinks", "deep", "print", "shallow")
    if soft and (dry or state.hour_h - state.float_h >= defaults.si("look_interval") - 1e-9):
        return "float"
    if state.cover == "open" and _last(state, "air", defaults.si("look_interval")) != "green" and soft:
        return "cover tent"
    return "wait 15" if thumb == "sinks" else "wait 5"


def _for_the_night(state):
    """The cover that fits the night as the forecast has it; what was laid stays."""
    if state.diary[-1].word == "uncover" or state.cover in ("fabric", "membrane"):
        return "leave"
    pick, _ = expected_cover(state.pour, state.hour_h)
    if pick == "open":
        return "leave" if state.cover == "open" else "uncover"
    return f"cover {pick}"


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
            return _for_the_night(state)
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
