"""Somebody who looks, and follows only what is seen."""

from shop_calc import defaults
from shop_calc.trade.rehearsal.night import expected_cover


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
        return cover_for_the_night(state)
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


def cover_for_the_night(state):
    """Say the act that ends the day: the cover that fits the night as the forecast has it; what was laid stays.

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
    >>> from shop_calc.trade.rehearsal.policies import by_cues, work_through
    >>> evening = work_through(begin("oak", "mild"), lambda now: "leave" if len(now.steel) > 1 else by_cues(now))
    >>> cover_for_the_night(evening)
    'leave'

    References
    ----------
    shop_calc.trade.curing.cure_rules, for the night as forecast.
    """
    if state.diary[-1].word == "uncover" or state.cover in ("fabric", "membrane"):
        return "leave"
    pick, _ = expected_cover(state.pour, state.hour_h)
    if pick == "open":
        return "leave" if state.cover == "open" else "uncover"
    return f"cover {pick}"
