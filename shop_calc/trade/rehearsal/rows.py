"""A practice pour as rows of the shop log, in the same columns as a real one."""

from shop_calc import defaults
from shop_calc.trade.logbook.log_fields import Event
from shop_calc.trade.rehearsal.debrief import cue_of
from shop_calc.trade.rehearsal.words import ACTS
from shop_calc.trade.timeline.room import room_at


def log_events(state, pour_id=None):
    """Write a practice pour as the rows of a shop log.

    Parameters
    ----------
    state : State
        The pour [as its fields].
    pour_id : str, optional
        Its name in the log; "practice" and the code if left out [-].

    Returns
    -------
    tuple of Event
        Rows in order of time, ready for `append_events` or `gather_pours` [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.replay import play
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> [row.event for row in log_events(play(begin("oak", "mild"), "wait 30; look edge; spread"))]
    ['water_in', 'water_in', 'placed', 'check', 'action', 'placed']

    Notes
    -----
    Only what a person could have written down: looks, acts, thermometers. The note of every first row says that the
    pour was a practice one, so that no calibration takes it for mortar.

    References
    ----------
    Columns: data/README.md.
    """
    pour, told = state.pour, state.pour.told
    name = pour_id or f"practice {pour.code}"
    recipe = pour.plan.job.mix["recipe"]
    recipe = recipe if isinstance(recipe, str) else "own recipe"
    air_c, rh_fraction, wind_m_s = (float(value) for value in room_at(pour.room, 0.0))
    rows = [
        Event(
            name, pour.clock(told.base_loads_h[0]), "water_in", "base", recipe, told.base_temp_c, air_c, rh_fraction,
            wind_m_s, note=f"practice pour, {pour.weather}, not a real one",
        ),
        Event(name, pour.clock(told.face_load_h), "water_in", "face", recipe, told.mix_temp_c),
        Event(name, pour.clock(pour.starts_h), "placed", "base"),
    ]  # fmt: skip
    looks = iter(state.seen)
    for entry in state.diary:
        if ACTS[entry.word].kind == "look":
            if entry.minutes == 0.0 and (sign := next(looks, None)) is not None:
                rows += _look_row(state, name, sign)
        elif entry.minutes and ACTS[entry.word].kind != "time":
            rows.append(Event(name, pour.clock(entry.hour_h), "action", note=_note(entry)))
            if entry.word == "spread":
                rows.append(Event(name, pour.clock(entry.hour_h + entry.minutes / 60.0), "placed", "face"))
    return tuple(sorted(rows, key=lambda row: row.time))


def _note(entry):
    title = ACTS[entry.word].title
    return f"{title}: {entry.said}" if entry.said else title


def _look_row(state, name, sign):
    at = state.pour.clock(sign.at_h)
    if sign.sign == "air":
        air_c, rh_fraction, wind_m_s = (float(value) for value in room_at(state.pour.room, sign.at_h))
        return [Event(name, at, "room", "", "", None, air_c, rh_fraction, wind_m_s)]
    stage, there = cue_of(sign)
    cue = f"{stage} {'seen' if there else 'not yet'}" if stage else ""
    on_base = state.face_on_h is None or sign.at_h < state.face_on_h
    deepest = sign.print_m is not None and sign.print_m >= defaults.si("print_deepest")
    return [
        Event(
            name, at, "check", "base" if on_base and sign.sign == "thumb" else "", cue=cue,
            resistance_pa=sign.resistance_pa, depth_m=None if deepest else sign.print_m, note=sign.words,
        )
    ]  # fmt: skip
