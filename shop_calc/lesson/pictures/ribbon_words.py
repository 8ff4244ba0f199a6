"""The ribbon of the day in words: for who cannot see it, and for its own narrow lanes."""

from shop_calc.lesson.pictures.lettering import listing, sentence
from shop_calc.lesson.pictures.scales import clock, day_name, moment, span_of
from shop_calc.units import show

STILL_M_S = 0.15  # judgement: slower air is not felt, and a number for it would be read as known

_LAYERS = {"face": "the face", "base": "the base", "both": "both layers"}


def water_words(water_in, load_offsets_h):
    """The water-in times after the first, for the lane of the loads.

    >>> from datetime import datetime
    >>> water_words(datetime(2026, 5, 4, 8), (0, 1 / 3))
    '08:00, 08:20'
    """
    return ", ".join(clock(water_in, hours_h) for hours_h in load_offsets_h)


def room_words(room, number, system="both"):
    """The air from one change on: all of it, then less and less, to the temperature in one unit.

    Parameters
    ----------
    room : object
        from_h, air_temp_c, rh_fraction and wind_m_s, one entry a change [h, degC, -, m/s].
    number : int
        Which entry [-].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    list of str
        Longest first [-].

    Examples
    --------
    >>> from types import SimpleNamespace as S
    >>> room_words(S(air_temp_c=[21.0], rh_fraction=[0.5], wind_m_s=[0.0]), 0)[0]
    '69.8 °F (21 °C), 50 % humidity, still'
    """
    temp = show(room.air_temp_c[number], "temperature", system)
    damp = f"{100 * room.rh_fraction[number]:.0f} % humidity"
    wind = room.wind_m_s[number]
    moving = f"air {show(wind, 'speed', system)}" if wind >= STILL_M_S else "still"
    least = show(room.air_temp_c[number], "temperature", "si" if system == "si" else "us")
    return [f"{temp}, {damp}, {moving}", f"{temp}, {damp}", temp, least]


def _stage_words(stage, water_in, before):
    day = moment(water_in, stage.likely_from_h)
    other_day = f" on {day_name(day)}" if day.date() != water_in.date() else ""
    words = (
        f"{stage.title}, {_LAYERS.get(stage.layer, stage.layer)}: look from {clock(water_in, stage.look_from_h)}, "
        f"likely {span_of(water_in, stage.likely_from_h, stage.likely_to_h)}{other_day}, "
        f"over by {clock(water_in, stage.over_by_h)}"
    )
    if stage.deadline_h is not None:
        words += f", not after {clock(water_in, stage.deadline_h)}"
    if before is not None:
        words += f" (first plan {span_of(water_in, before.likely_from_h, before.likely_to_h)})"
    return sentence(f"{words}. Tool: {stage.tool}. Cue: {stage.cue}")


def ribbon_of_the_day_alt(
    stages, water_in, load_offsets_h=(0.0,), room=None, dark_h=(), system="both", *, first=None, seen=(), title=""
):
    """The whole ribbon in full sentences.

    Parameters
    ----------
    stages, water_in, load_offsets_h, room, dark_h, first, seen, title : as there
        As for `RibbonOfTheDay` and its `update` [-].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    str
        Alt text [-].
    """
    before = {stage.key: stage for stage in first or ()}
    words = [
        f"{title or 'The day'}, {day_name(moment(water_in, 0.0))}, on a clock.",
        f"Water in at {listing(clock(water_in, hours_h) for hours_h in load_offsets_h)}.",
    ]
    if room is not None:
        rows = [
            f"from {clock(water_in, hours_h)} {room_words(room, number, system)[0]}"
            for number, hours_h in enumerate(room.from_h)
        ]
        words.append(f"Room {listing(rows)}.")
    if dark_h:
        words.append(f"Dark {listing(span_of(water_in, *pair) for pair in dark_h)}.")
    words += [_stage_words(stage, water_in, before.get(stage.key)) for stage in stages]
    titles = {stage.key: stage.title for stage in stages}
    for key, at_h, there in seen:
        words.append(
            f"Seen at {clock(water_in, at_h)}, {titles.get(key, key)}: {'the cue was there' if there else 'not yet'}."
        )
    return " ".join(words)
