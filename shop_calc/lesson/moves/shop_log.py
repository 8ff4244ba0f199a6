"""Lesson 10: the card of a pour, and what can be read off it."""

from dataclasses import replace

from shop_calc import defaults
from shop_calc.lesson.table import table
from shop_calc.trade.logbook.log_ages import pour_facts
from shop_calc.trade.logbook.shop_log import pour_looks
from shop_calc.trade.timeline.stages import STAGES
from shop_calc.units import show

KEYS = ("strip", "first_steel", "last_steel")
SHORT = {"strip": "sides off", "first_steel": "first steel", "last_steel": "last steel"}
WHAT = {"water_in": "water in", "placed": "placed", "room": "the room", "check": "look", "action": "done"}


def card(pour):
    """Set the rows of a pour side by side, as they were written on the card.

    Parameters
    ----------
    pour : Pour
        A pour of a log [as its fields].

    Returns
    -------
    Table
        Clock, what happened, what was seen or read [-].

    Examples
    --------
    >>> from shop_calc import defaults
    >>> from shop_calc.trade.logbook.shop_log import read_log
    >>> pour = read_log(defaults.data_folder() / "logs" / "first_pour.csv").pours[0]
    >>> card(pour).rows[0]
    ('08:00', 'water in', 'demo mortar, mix 60.8 °F (16 °C)')

    References
    ----------
    Common practice, no source.
    """
    rows = []
    for event in pour.events:
        seen = [event.recipe] if event.recipe and event.event == "water_in" else []
        if event.cue:
            stage, _, there = event.cue.partition(" ")
            seen.append(f"{SHORT.get(stage) or STAGES[stage].title.lower()}: {'there' if there == 'seen' else there}")
        for value, kind, name in (
            (event.mix_temp_c, "temperature", "mix"), (event.air_temp_c, "temperature", "air"),
            (event.rh_fraction, "fraction", "humidity"), (event.surface_temp_c, "temperature", "surface"),
            (event.resistance_pa, "pressure", "rod"), (event.depth_m, "length", "print"),
        ):  # fmt: skip
            if value is not None:
                seen.append(f"{name} {show(value, kind)}")
        note = [event.note] if event.note and not event.note.startswith("invented") else []
        where = f" ({event.layer})" if event.layer else ""
        rows.append((f"{event.time:%H:%M}", WHAT[event.event] + where, ", ".join(seen + note)))
    return table(("clock", "what", "seen or read"), rows)


def pour_inputs(day, pour, bands=None):
    """Put the room, the water and the mortar of a pour into a planned day.

    Parameters
    ----------
    day : Day
        A planned day, for the piece [h].
    pour : Pour
        A pour of a log, with a mix and a room [as its fields].
    bands : dict, optional
        Bands of a calibration; the defaults if left out [SI].

    Returns
    -------
    DayInputs
        What a plan would have known that morning [as its fields].

    Examples
    --------
    >>> day, pour = example()
    >>> pour_inputs(day, pour).mix_temp_c
    16.0

    References
    ----------
    Common practice, no source.
    """
    return replace(
        day.samples.inputs, water_in=pour.water_in, room=pour.room(), mix_temp_c=pour.mix_temp_c("face"),
        base_mix_temp_c=pour.mix_temp_c("base"), base_loads_h=(0.0,), face_load_h=pour.start_h("face"), bands=bands,
        base_bands=None, thickness_m=pour.thickness_m or day.samples.inputs.thickness_m,
    )  # fmt: skip


def example():
    """Give a day and a pour for the examples.

    Returns
    -------
    (Day, Pour)
        The bench top of the lessons, and the one pour of the first demo log [h].

    Examples
    --------
    >>> example()[1].pour_id
    'bench 1'

    References
    ----------
    Common practice, no source.
    """
    from shop_calc.trade.jobs.job import demo_job, read_job
    from shop_calc.trade.logbook.shop_log import read_log
    from shop_calc.trade.plan import make_plan

    log = read_log(defaults.data_folder() / "logs" / "first_pour.csv")
    return make_plan(read_job(demo_job("garden_bench_top"))).day, log.pours[0]


def ages_h(pour, hours):
    """Give the age of the face of a pour at some hours.

    Parameters
    ----------
    pour : Pour
        A pour of a log, with a mix and a room [as its fields].
    hours : sequence of float
        Hours after its water [h].

    Returns
    -------
    ndarray
        Equivalent ages at 21 °C [h].

    Raises
    ------
    ValueError
        When the pour has no look, no mix or no room.

    Examples
    --------
    >>> print(ages_h(example()[1], [2.25, 3.0]).round(4))
    [1.8303 2.4572]

    References
    ----------
    As shop_calc.trade.logbook.log_ages.
    """
    return facts_of(pour).age_h(hours, defaults.si("activation_energy"))


def facts_of(pour):
    """Give what the fit counts with of one pour, its face.

    Parameters
    ----------
    pour : Pour
        A pour of a log [as its fields].

    Returns
    -------
    PourFacts
        Its mix, its room, its looks [as its fields].

    Raises
    ------
    ValueError
        When the pour has no look, no mix or no room.

    Examples
    --------
    >>> facts_of(example()[1]).pour.pour_id
    'bench 1'

    References
    ----------
    As shop_calc.trade.logbook.log_ages.
    """
    facts, left_out = pour_facts((pour,), "face", defaults.si("slab_thickness"))
    if not facts:
        raise ValueError(f"pour: {left_out[0][0]!r} given; it has {left_out[0][1]}")
    return facts[0]


def gap_h(pour, stage):
    """Find between which two looks a sign came.

    Parameters
    ----------
    pour : Pour
        A pour of a log [as its fields].
    stage : str
        Stage of the sign [-].

    Returns
    -------
    (float or None, float or None)
        Last look without it, first look with it, hours after the first water [h].

    Examples
    --------
    >>> low, high = gap_h(example()[1], "first_steel")
    >>> f"{low:.4f} {high:.4f}"
    '2.6667 3.0000'

    References
    ----------
    Common practice, no source.
    """
    looks = [look for look, _ in pour_looks(pour, "face") if look.stage == stage]
    there = min((look.at for look in looks if look.kind == "seen"), default=None)
    before = [look.at for look in looks if look.kind == "not_yet" and (there is None or look.at < there)]
    return max(before, default=None), there


def minutes(hours):
    """Write a stretch of time in whole minutes.

    Parameters
    ----------
    hours : float or None
        The stretch; None where nothing was looked at [h].

    Returns
    -------
    str
        Minutes, or "no look" [-].

    Examples
    --------
    >>> minutes(0.5)
    '30 min'

    References
    ----------
    Common practice, no source.
    """
    return "no look" if hours is None else f"{60 * hours:.0f} min"
