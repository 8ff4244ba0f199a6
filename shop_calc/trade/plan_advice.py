"""Two lines of advice that belong to no single step: the boards of the form, and air outside the charts."""

from shop_calc.science.evaporation import VALID_TEMP_C, VALID_WIND_M_S
from shop_calc.trade.advice import Advice
from shop_calc.units import show


def form_advice():
    """Ask for a look at the coating of the form boards.

    Returns
    -------
    tuple of Advice
        One note, for every job [-].

    Examples
    --------
    >>> form_advice()[0].where
    'form'

    References
    ----------
    Common practice, no source.
    """
    return (
        Advice(
            "note", "form", "Look over the coated boards: seal every pinhole, scratch and sawn edge, and let it dry.",
            "Sugar that water draws out of bare wood can keep the face from setting at that spot.", "practice",
            "common practice, no source",
        ),
    )  # fmt: skip


def air_advice(room):
    """Say where the room lies outside the charts of evaporation.

    Parameters
    ----------
    room : Room
        Air over the day [SI].

    Returns
    -------
    tuple of Advice
        One note, or nothing [-].

    Examples
    --------
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> air_advice(steady_room(21.0, 0.5, 0.0)), len(air_advice(steady_room(21.0, 0.5, 15.0)))
    ((), 1)

    References
    ----------
    Range of the charts of Menzel 1954, from memory.
    """
    (calm, windy), (cold, hot) = VALID_WIND_M_S, VALID_TEMP_C
    beyond = [f"wind {show(wind, 'speed')}" for wind in room.wind_m_s if not calm <= wind <= windy]
    beyond += [f"air {show(temp, 'temperature')}" for temp in room.air_temp_c if not cold <= temp <= hot]
    if not beyond:
        return ()
    return (
        Advice(
            "note", "float", "Take what the air takes from the face as a guess: this room lies outside the charts.",
            f"{', '.join(dict.fromkeys(beyond))}; the formula was drawn for winds up to {show(windy, 'speed')} and air of "
            f"{show(cold, 'temperature')} to {show(hot, 'temperature')}.", "memory", "range of the charts of Menzel 1954",
        ),
    )  # fmt: skip
