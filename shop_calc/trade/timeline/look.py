"""A look at the bench: a cue that is there or not yet, a rod reading, a thumb print."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from math import floor

from shop_calc import units
from shop_calc.science import checks
from shop_calc.trade.timeline.stages import STAGES

KINDS = ("seen", "not_yet", "rod", "print")
LAYERS = ("face", "base")
# Stages whose cue the mortar decides, with the row of the defaults table that opens them; None: the early clock.
CUES = {
    "face": None,
    "strip": "strip_pr_low",
    "first_steel": "first_steel_pr_low",
    "last_steel": "last_steel_pr_low",
    "stop": "stop_pr",
}
LONGEST_H = 96.0


@dataclass(frozen=True)
class Look:
    """One look at the bench.

    Parameters
    ----------
    at : float or datetime
        When: hours after the first water, or the clock on the wall [h].
    kind : str
        "seen" (the cue of a stage is there), "not_yet", "rod" or "print" [-].
    stage : str
        Stage of the cue, a key of CUES; empty for rod and print [-].
    layer : str
        "face" or "base"; empty means the layer whose clock decides the stage, and the face for rod and print [-].
    resistance_pa : float or None
        Rod reading, penetration resistance [Pa].
    depth_m : float or None
        Depth of the thumb print, 0 when the thumb leaves none [m].

    Raises
    ------
    ValueError
        When an entry is missing or cannot be.

    Examples
    --------
    >>> Look(2.5, "seen", "strip").layer
    ''

    References
    ----------
    Common practice, no source.
    """

    at: float | datetime
    kind: str
    stage: str = ""
    layer: str = ""
    resistance_pa: float | None = None
    depth_m: float | None = None

    def __post_init__(self):
        if self.kind not in KINDS:
            raise ValueError(f"look: {self.kind!r} given; it must be one of {', '.join(KINDS)}")
        if self.layer not in ("", *LAYERS):
            raise ValueError(f"layer: {self.layer!r} given; it must be one of {', '.join(LAYERS)}")
        if isinstance(self.at, datetime):
            if self.at.tzinfo is not None:
                raise ValueError(
                    f"time: {self.at.isoformat()} given; it must be the clock on the wall, without a time zone"
                )
        else:
            checks.require("time of the look", self.at, 0, LONGEST_H, unit="h after the first water")
        if self.kind in ("seen", "not_yet"):
            if self.stage not in CUES:
                raise ValueError(f"stage: {self.stage!r} given; it must be one with a cue: {', '.join(CUES)}")
        elif self.kind == "rod":
            checks.require("rod reading", self.resistance_pa, 0, 1e8, unit="Pa")
        else:
            checks.require("thumb print", self.depth_m, 0, 0.2, unit="m")


def seen(at, stage, layer=""):
    """Say that the cue of a stage was there.

    Parameters
    ----------
    at : float or datetime
        When: hours after the first water, or the clock [h].
    stage : str
        A key of CUES [-].
    layer : str
        "face" or "base"; empty for the layer whose clock decides [-].

    Returns
    -------
    Look
        The look [as its fields].

    Raises
    ------
    ValueError
        When an entry cannot be.

    Examples
    --------
    >>> seen(2.75, "strip").kind
    'seen'

    References
    ----------
    Common practice, no source.
    """
    return Look(at, "seen", stage, layer)


def not_yet(at, stage, layer=""):
    """Say that somebody looked for the cue of a stage and did not find it.

    Parameters
    ----------
    at : float or datetime
        When: hours after the first water, or the clock [h].
    stage : str
        A key of CUES [-].
    layer : str
        "face" or "base"; empty for the layer whose clock decides [-].

    Returns
    -------
    Look
        The look [as its fields].

    Raises
    ------
    ValueError
        When an entry cannot be.

    Examples
    --------
    >>> not_yet(2.25, "strip").stage
    'strip'

    References
    ----------
    Common practice, no source.
    """
    return Look(at, "not_yet", stage, layer)


def rod_reading(at, resistance_pa, layer="face"):
    """Write down a rod pressed into the side cup.

    Parameters
    ----------
    at : float or datetime
        When: hours after the first water, or the clock [h].
    resistance_pa : float
        Penetration resistance, see shop_calc.trade.timeline.rod [Pa].
    layer : str
        "face" or "base": which mix is in the cup [-].

    Returns
    -------
    Look
        The look [as its fields].

    Raises
    ------
    ValueError
        When an entry cannot be.

    Examples
    --------
    >>> rod_reading(2.5, 172369.0).resistance_pa
    172369.0

    References
    ----------
    ASTM C403/C403M for the quantity.
    """
    return Look(at, "rod", "", layer, resistance_pa=resistance_pa)


def thumb_print(at, depth_m, layer="face"):
    """Write down how deep a thumb sank.

    Parameters
    ----------
    at : float or datetime
        When: hours after the first water, or the clock [h].
    depth_m : float
        Depth of the print, 0 when there is none [m].
    layer : str
        "face" or "base" [-].

    Returns
    -------
    Look
        The look [as its fields].

    Raises
    ------
    ValueError
        When an entry cannot be.

    Examples
    --------
    >>> thumb_print(2.5, 0.00635).depth_m
    0.00635

    References
    ----------
    Common practice, no source.
    """
    return Look(at, "print", "", layer, depth_m=depth_m)


def look_h(look, water_in):
    """Turn the time of a look into hours after the first water.

    Parameters
    ----------
    look : Look
        The look [as its fields].
    water_in : datetime
        Clock time of the first water [-].

    Returns
    -------
    float
        Hours after the first water [h].

    Raises
    ------
    ValueError
        When the look is before the first water or four days after it.

    Examples
    --------
    >>> look_h(seen(datetime(2026, 5, 4, 10, 45), "strip"), datetime(2026, 5, 4, 8))
    2.75

    References
    ----------
    Common practice, no source.
    """
    if not isinstance(look.at, datetime):
        return float(look.at)
    hours = (look.at - water_in).total_seconds() / 3600.0
    if not 0.0 <= hours <= LONGEST_H:
        raise ValueError(
            f"time of the look: {look.at:%Y-%m-%d %H:%M} given; it must be after the first water at "
            f"{water_in:%Y-%m-%d %H:%M} and within {LONGEST_H:.0f} h of it"
        )
    return hours


def look_words(look, water_in):
    """Say a look in words, with its clock time.

    Parameters
    ----------
    look : Look
        The look [as its fields].
    water_in : datetime
        Clock time of the first water [-].

    Returns
    -------
    str
        "sides off, patch the edges: not yet at 10:15" and the like [-].

    Examples
    --------
    >>> look_words(not_yet(2.25, "strip"), datetime(2026, 5, 4, 8))
    'cue for "Sides off, patch the edges" not yet there at 10:15'

    References
    ----------
    Common practice, no source.
    """
    when = f"{water_in + timedelta(minutes=floor(look_h(look, water_in) * 60.0 + 0.5)):%H:%M}"
    if look.kind in ("seen", "not_yet"):
        layer = f" ({look.layer})" if look.layer else ""
        there = "seen" if look.kind == "seen" else "not yet there"
        return f'cue for "{STAGES[look.stage].title}"{layer} {there} at {when}'
    if look.kind == "rod":
        return f"rod {units.show(look.resistance_pa, 'pressure')} ({look.layer or 'face'}) at {when}"
    depth = units.show(look.depth_m, "length") if look.depth_m else "none"
    return f"thumb print {depth} ({look.layer or 'face'}) at {when}"
