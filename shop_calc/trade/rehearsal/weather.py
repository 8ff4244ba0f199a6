"""Rooms to rehearse in: three kinds of day, drawn from a code. All of it is invented."""

import hashlib
from dataclasses import dataclass

from shop_calc import units
from shop_calc.trade.timeline.room import Room


@dataclass(frozen=True)
class Weather:
    """One kind of day; every pair is a range to draw from, ends included.

    Parameters
    ----------
    name : str
        What the shop calls it [-].
    share : float
        How often a free code gets it [-].
    air_c : tuple of pair
        Air in the morning, from noon, from the evening on [°C].
    rh_fraction : tuple of pair
        Humidity at the same three times [-].
    wind_m_s : tuple of pair
        Air speed at the same three times [m/s].
    mix_c : pair
        Mortar when the water was chilled, or warmed, as planned [°C].
    other_mix_c : pair
        Mortar when it was not [°C].

    Examples
    --------
    >>> WEATHERS["cold shop"].air_c[0]
    (10.5, 13.0)

    References
    ----------
    Invented for the rehearsal.
    """

    name: str
    share: float
    air_c: tuple
    rh_fraction: tuple
    wind_m_s: tuple
    mix_c: tuple
    other_mix_c: tuple


def _km_h(*pairs):
    return tuple(tuple(float(units.convert(end, "km/h", "m/s")) for end in pair) for pair in pairs)


# All ranges are invented. No night is colder than 10 °C: below that the plan heats, which nobody rehearses here.
WEATHERS = {
    row.name: row
    for row in (
        Weather(
            "mild", 0.45,
            ((18.0, 22.0), (20.0, 24.0), (16.0, 19.0)), ((0.45, 0.65), (0.40, 0.60), (0.45, 0.65)),
            _km_h((0, 2), (0, 4), (0, 2)), (14.0, 18.0), (20.0, 23.0),
        ),
        Weather(
            "hot and windy", 0.30,
            ((26.0, 30.0), (31.0, 35.0), (26.0, 29.0)), ((0.25, 0.40), (0.15, 0.30), (0.25, 0.40)),
            _km_h((6, 14), (10, 20), (4, 12)), (14.0, 18.0), (26.0, 30.0),
        ),
        Weather(
            "cold shop", 0.25,
            ((10.5, 13.0), (12.0, 15.0), (10.5, 12.0)), ((0.50, 0.70), (0.45, 0.65), (0.50, 0.70)),
            _km_h((0, 3), (0, 3), (0, 2)), (18.0, 22.0), (10.0, 13.0),
        ),
    )
}  # fmt: skip
NOON_H, EVENING_H = (3.5, 5.0), (9.5, 11.5)  # after the first water; invented
OTHER_MIX_SHARE = 0.2  # invented: how often the mix is not as cool, or as warm, as planned
SURPRISES = {  # invented: what nobody foresaw, with what it adds to air and wind
    "the wind got up": (0.0, 10.0),
    "the sun came round onto the bench": (4.0, 0.0),
    "a door stayed open": (-3.0, 6.0),
}
SURPRISE_SHARE, SURPRISE_H = 0.35, (0.8, 3.0)  # invented: how often, and when after the first water


def drawn(code, name, low=0.0, high=1.0):
    """Draw one number from a code, the same on every machine.

    Parameters
    ----------
    code : str
        Any text [-].
    name : str
        What is drawn; each name has a number of its own [-].
    low, high : float
        Ends of the range [any unit].

    Returns
    -------
    float
        Between low and high [unit of the ends].

    Examples
    --------
    >>> f"{drawn('oak', 'air'):.5f}"
    '0.42327'

    References
    ----------
    SHA-256; Python's own hash differs from run to run.
    """
    seed = hashlib.sha256(f"{code}|{name}".encode()).digest()
    return low + (high - low) * (int.from_bytes(seed[:7], "big") + 0.5) / 2**56


def tidy_code(code):
    """Bring a code to one spelling.

    Parameters
    ----------
    code : str
        As typed [-].

    Returns
    -------
    str
        Lower case without spaces [-].

    Raises
    ------
    ValueError
        When nothing is left.

    Examples
    --------
    >>> tidy_code(" Old  Oak 7")
    'oldoak7'

    References
    ----------
    Common practice, no source.
    """
    text = "".join(str(code).casefold().split())
    if not text:
        raise ValueError("code: nothing given; any word or number will do")
    return text


def pick_weather(code, name=None):
    """Give the kind of day that a code, or a name, stands for.

    Parameters
    ----------
    code : str
        A tidy code [-].
    name : str, optional
        A key of WEATHERS; drawn from the code if left out [-].

    Returns
    -------
    Weather
        The kind of day [as its fields].

    Raises
    ------
    ValueError
        When the name is unknown.

    Examples
    --------
    >>> pick_weather("oak", "mild").name
    'mild'

    References
    ----------
    Invented for the rehearsal.
    """
    if name is not None:
        if name not in WEATHERS:
            raise ValueError(f"weather: {name!r} given; it must be one of {', '.join(WEATHERS)}")
        return WEATHERS[name]
    place, reached = drawn(code, "weather"), 0.0
    for row in WEATHERS.values():
        reached += row.share
        if place < reached:
            return row
    return row


def draw_room(code, weather):
    """Draw the room as the morning expects it.

    Parameters
    ----------
    code : str
        A tidy code [-].
    weather : Weather
        The kind of day [as its fields].

    Returns
    -------
    Room
        Three rows: morning, from noon, from the evening on [as its fields].

    Examples
    --------
    >>> len(draw_room("oak", WEATHERS["mild"]).from_h)
    3

    References
    ----------
    Invented for the rehearsal.
    """
    columns = []
    for quantity in ("air_c", "rh_fraction", "wind_m_s"):
        pairs = getattr(weather, quantity)
        columns.append(tuple(drawn(code, f"{quantity} {row}", *pair) for row, pair in enumerate(pairs)))
    return Room((0.0, drawn(code, "noon", *NOON_H), drawn(code, "evening", *EVENING_H)), *columns)


def surprised(code, room):
    """Change a room as the day may really go.

    Parameters
    ----------
    code : str
        A tidy code [-].
    room : Room
        The room as expected [as its fields].

    Returns
    -------
    tuple of (Room, str)
        The room as it comes, and what happened; empty when nothing did [-].

    Examples
    --------
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> surprised("oak", steady_room(21.0, 0.5, 0.0))[1] in ("", *SURPRISES)
    True

    References
    ----------
    Invented for the rehearsal.
    """
    if drawn(code, "surprise") >= SURPRISE_SHARE:
        return room, ""
    what = tuple(SURPRISES)[int(drawn(code, "which surprise", 0.0, len(SURPRISES)))]
    warmer_k, faster_km_h = SURPRISES[what]
    faster_m_s = float(units.convert(faster_km_h, "km/h", "m/s"))
    from_h, ends_h = drawn(code, "surprise from", *SURPRISE_H), drawn(code, "surprise to", *EVENING_H)
    rows = []
    for hour in sorted({*room.from_h, from_h, ends_h}):
        row = max((n for n, start in enumerate(room.from_h) if start <= hour), default=0)
        on = from_h <= hour < ends_h
        rows.append(
            (
                hour,
                min(max(room.air_temp_c[row] + on * warmer_k, -5.0), 50.0),
                room.rh_fraction[row],
                min(room.wind_m_s[row] + on * faster_m_s, 17.0),
            )
        )
    return Room(*(tuple(column) for column in zip(*rows, strict=True))), what
