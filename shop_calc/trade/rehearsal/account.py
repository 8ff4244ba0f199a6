"""The pour in words: the moment at the bench, and the account afterwards."""

from shop_calc import units
from shop_calc.trade.rehearsal.air_words import air_speed
from shop_calc.trade.rehearsal.debrief import Debrief, debrief
from shop_calc.trade.rehearsal.words import ACTS

_LYING = {
    "open": "", "fabric": "Under damp fabric and plastic.", "plastic": "Under bare plastic.",
    "tent": "Under plastic held off the face.", "mist": "Misted.", "membrane": "Sprayed with a curing compound.",
}  # fmt: skip


def briefing(pour):
    """Say what is known before the first act: the piece, the mix, the room as it is expected.

    Parameters
    ----------
    pour : Pour
        The pour [as its fields].

    Returns
    -------
    str
        Three lines [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.truth import draw_pour
    >>> print(briefing(draw_pour("oak", "mild")).splitlines()[0])
    Garden bench top, code oak. First water 08:00; the base is packed at 08:20.

    References
    ----------
    Common practice, no source.
    """
    told, room = pour.told, pour.told.room
    rows = []
    for hour, air_c, rh_fraction, wind_m_s in zip(
        room.from_h, room.air_temp_c, room.rh_fraction, room.wind_m_s, strict=True
    ):
        moving = "still" if wind_m_s < 0.15 else f"wind {air_speed(wind_m_s)}"
        air = units.show(air_c, "temperature")
        rows.append(f"from {pour.clock(hour):%H:%M} {air}, {100 * rh_fraction:.0f} % humidity, {moving}")
    return "\n".join(
        (
            f"{pour.plan.job.name}, code {pour.code}. First water {pour.clock(0.0):%H:%M}; the base is packed at "
            f"{pour.clock(pour.starts_h):%H:%M}.",
            f"Mortar {units.show(told.mix_temp_c, 'temperature')}, base {units.show(told.base_temp_c, 'temperature')}, "
            f"{told.hands:.0f} at the bench.",
            f"The room as expected: {'; '.join(rows)}.",
        )
    )


def now_words(state):
    """Say where the pour stands.

    Parameters
    ----------
    state : State
        The piece [as its fields].

    Returns
    -------
    str
        The clock and what was just done or seen; what has been done so far; what lies on it [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.acts import act
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> print(now_words(act(begin("oak", "mild"), "look edge")))
    08:20, 20 min after the first water.
    Nudge the form: The form is nudged: the base moves with it and settles by itself.
    Base packed at 08:20, the face share waits in its bucket.

    References
    ----------
    Common practice, no source.
    """
    pour = state.pour
    first = f"{pour.clock(state.hour_h):%H:%M}, {units.show(state.hour_h, 'duration')} after the first water."
    if state.over:
        first = f"{pour.clock(state.hour_h):%H:%M} the next morning; the pour is over."
    return "\n".join(line for line in (first, _last(state), _so_far(state)) if line)


def diary_lines(state, from_line=0):
    """Write the diary line by line, from one line on.

    Parameters
    ----------
    state : State
        The piece [as its fields].
    from_line : int
        First line wanted, from 0 [-].

    Returns
    -------
    str
        Clock, what was done, what was seen or felt [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> from shop_calc.trade.rehearsal.replay import play
    >>> print(diary_lines(play(begin("oak", "mild"), "wait 5; look edge")))
    08:20 Wait 5 min.
    08:25 Nudge the form: The form is nudged: the base moves with it and settles by itself.

    References
    ----------
    Common practice, no source.
    """
    lines = (f"{state.pour.clock(entry.hour_h):%H:%M} {_entry(entry)}" for entry in state.diary[from_line:])
    return "\n".join(lines)


def _entry(entry):
    title = ACTS[entry.word].title
    return f"{title}: {entry.said}" if entry.said else f"{title}."


def _last(state):
    return _entry(state.diary[-1]) if state.diary else ""


def _so_far(state):
    def at(hour):
        return f"{state.pour.clock(hour):%H:%M}"

    if state.face_on_h is None:
        return f"Base packed at {at(state.pour.starts_h)}, the face share waits in its bucket."
    parts = [f"Face on at {at(state.face_on_h)}"]
    parts.append("not screeded" if state.screeded_h is None else "screeded")
    if state.float_h is not None:
        parts.append(f"last float {at(state.float_h)}")
    if state.off:
        open_edges = [side for side in state.off if side not in state.patched]
        every = len(state.pour.sides)
        parts.append("all sides off" if len(state.off) == every else f"sides off: {', '.join(state.off)}")
        if open_edges:
            parts.append("no edge patched" if len(open_edges) == every else f"not patched: {', '.join(open_edges)}")
    else:
        parts.append("sides on")
    if state.steel:
        count = len(state.steel)
        parts.append(f"{count} pass{'es' if count > 1 else ''} of steel, the last {at(state.steel[-1][0])}")
    return f"{', '.join(parts)}. {_LYING[state.cover]}".strip()


def account(found):
    """Write the account of a pour.

    Parameters
    ----------
    found : Debrief or State
        What `debrief` gives, or the pour itself [as its fields].

    Returns
    -------
    str
        What shows in the morning, each with its reason, what would have been right, and the source [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> from shop_calc.trade.rehearsal.policies import by_cues, work_through
    >>> account(work_through(begin("oak", "mild"), by_cues)).splitlines()[0]
    'In the morning nothing shows that should not.'

    References
    ----------
    As each consequence says.
    """
    found = found if isinstance(found, Debrief) else debrief(found)
    pour = found.state.pour
    traces = [item for item in found.state.damage if item.healed_h is None and not item.stays]
    healed = [item for item in found.state.damage if item.healed_h is not None]
    lines = ["In the morning nothing shows that should not."]
    if found.damage:
        lines = ["In the morning this shows:"]
    for item in found.damage:
        row = item.row
        did = f" ({pour.clock(item.at_h):%H:%M}, {ACTS[item.word].title.lower()})" if item.word in ACTS else ""
        lines.append(f"• {row.title}, {item.size}{did}: {row.shows}.")
        source = f"From memory: {row.source.removeprefix('from memory of ')}" if row.mark == "memory" else row.source
        lines.append(f"  Why: {item.reason} Right would have been: {row.remedy}. ({source[0].upper()}{source[1:]}.)")
    if traces:
        names = dict.fromkeys(f"{item.row.title[0].lower()}{item.row.title[1:]}" for item in traces)
        lines.append(f"A trace, seen only by who looks for it: {', '.join(names)}.")
    if healed:
        names = dict.fromkeys(f"{item.row.title[0].lower()}{item.row.title[1:]}" for item in healed)
        lines.append(f"Undone by floating in time: {', '.join(names)}.")
    return "\n".join(lines)
