"""What the eyes, the thumb and the rod find: words for a look, true to the hidden day and silent about it."""

from dataclasses import dataclass

from shop_calc import defaults, units
from shop_calc.trade.rehearsal.air_words import air_speed
from shop_calc.trade.rehearsal.bench import air_now
from shop_calc.trade.rehearsal.pour import GRID_H
from shop_calc.trade.rehearsal.state import DULL
from shop_calc.trade.timeline.drying import face_level
from shop_calc.trade.timeline.rod import print_resistance_pa, rod_for_m, rod_mass_kg

SIGNS = {
    "air": "room and wind",
    "bucket": "lid off the share",
    "sheen": "along the light",
    "edge": "nudge the form",
    "thumb": "press a thumb",
    "rod": "rod in the cup",
}

EIGHTH_M = 0.003175  # by definition of the inch

# Classes of a thumb, from soft to hard, each from a resistance of the defaults table on.
_THUMB = (
    ("sinks", None, "The thumb goes in without meeting anything, and the hole closes behind it."),
    ("deep", "strip_pr_low/4", "The thumb sinks deeper than half an inch; the rim of the hole slumps."),
    ("print", "strip_pr_low", "The thumb sinks {depth} and the hole stays; paste comes off on the thumb."),
    ("shallow", "strip_pr_high", "The thumb leaves a shallow print, {depth}; some paste still comes off on it."),
    ("faint", "first_steel_pr_low", "The thumb barely marks it, {depth}; no paste comes off on the thumb."),
    ("nail", "first_steel_pr_high", "The thumb leaves nothing; a fingernail still draws a line."),
    ("hard", "last_steel_pr_low", "Hard under the knuckle; a fingernail hardly scratches it."),
    ("past", "last_steel_pr_high", "Hard and dry; the fingernail slides over it, and it sounds firm when tapped."),
    ("rings", "stop_pr", "It rings when tapped."),
)
THUMB = tuple(row[0] for row in _THUMB)


@dataclass(frozen=True)
class Sign:
    """One look.

    Parameters
    ----------
    sign : str
        A key of SIGNS [-].
    at_h : float
        When, hours after the first water [h].
    cue : str
        What it comes to, in one word: the class of the thumb, "stays" or "moves" for the nudge, and so on [-].
    words : str
        What one sees and feels [-].
    print_m : float or None
        Depth of a thumb print that can be measured; 0 where there is none [m].
    resistance_pa : float or None
        Reading of the rod [Pa].

    Examples
    --------
    >>> Sign("sheen", 1.0, "wet", "It shines.").print_m is None
    True

    References
    ----------
    Common practice, no source.
    """

    sign: str
    at_h: float
    cue: str
    words: str
    print_m: float | None = None
    resistance_pa: float | None = None


def look(state, sign):
    """Look at the piece.

    Parameters
    ----------
    state : State
        The piece [as its fields].
    sign : str
        A key of SIGNS [-].

    Returns
    -------
    Sign
        What is seen or felt [as its fields].

    Raises
    ------
    ValueError
        When there is no such look.

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> look(begin("oak", "mild"), "edge").cue
    'moves'

    Notes
    -----
    Every class begins and ends at a resistance of data/defaults.csv; the words never name a stage that has not come.

    References
    ----------
    Cues: common practice, no source. Depth of the print: shop_calc.trade.timeline.rod.
    """
    if sign not in SIGNS:
        raise ValueError(f"look: {sign!r} given; it must be one of {', '.join(SIGNS)}")
    return _LOOKS[sign](state)


def print_depth_m(resistance_pa):
    """Depth to which a thumb sinks.

    Parameters
    ----------
    resistance_pa : float
        Penetration resistance, above 0 [Pa].

    Returns
    -------
    float
        Depth; 0 where none can be seen, never more than the deepest that says anything [m].

    Examples
    --------
    >>> f"{print_depth_m(20 * 6894.757293168361):.5f}"
    '0.00635'

    References
    ----------
    As shop_calc.trade.timeline.rod.print_resistance_pa, turned round; judgement.
    """
    one_m = 0.1  # any depth will do: resistance times depth is the same for all
    depth = float(print_resistance_pa(one_m)) * one_m / max(resistance_pa, 1.0)
    if depth < defaults.si("print_faintest"):
        return 0.0
    return min(depth, defaults.si("print_deepest"))


def thumb_class(resistance_pa):
    """Sort a resistance into what a thumb tells apart.

    Parameters
    ----------
    resistance_pa : float
        Penetration resistance [Pa].

    Returns
    -------
    str
        One of THUMB, from soft to hard [-].

    Examples
    --------
    >>> thumb_class(20 * 6894.757), thumb_class(100 * 6894.757)
    ('print', 'faint')

    References
    ----------
    Windows of data/defaults.csv.
    """
    found = THUMB[0]
    for name, from_row, _ in _THUMB[1:]:
        row, _, parts = from_row.partition("/")
        if resistance_pa >= defaults.si(row) / float(parts or 1) * (1 - 1e-12):
            found = name
    return found


def _deep_words(depth_m):
    """An inch rule says no more than "under an eighth" of a faint print."""
    if depth_m < EIGHTH_M:
        return f"less than {units.show(EIGHTH_M, 'length', 'us')} ({1000 * depth_m:.1f} mm)"
    return units.show(depth_m, "length")


def _thumb(state):
    layer_pa = state.base_pa if state.face_on_h is None else state.face_pa
    name, depth_m = thumb_class(layer_pa), print_depth_m(layer_pa)
    words = {row: text for row, _, text in _THUMB}[name].format(depth=_deep_words(depth_m))
    if state.face_on_h is None:
        words = f"On the base. {words}"
    if state.crusted:
        words = f"A dry skin carries the thumb at first; leaned on, it breaks. Below it: {words[0].lower()}{words[1:]}"
    return Sign("thumb", state.hour_h, name, words, depth_m)


def _sheen(state):
    at_h = state.hour_h
    if state.face_on_h is None:
        return Sign("sheen", at_h, "no face", "The base is rough and moist; there is no face to look along yet.")
    hard = state.face_pa >= defaults.si("last_steel_pr_low")
    if state.steel and state.steel[-1][1] >= defaults.si("last_steel_pr_low"):
        return Sign("sheen", at_h, "polished", "A hard, even sheen stays where the blade went.")
    if hard and state.steel:
        return Sign("sheen", at_h, "hard", "A light touch of the blade leaves a hard sheen.")
    if state.dryness < DULL / 2:
        return Sign("sheen", at_h, "wet", "It shines all over.")
    if state.dryness < DULL:
        return Sign("sheen", at_h, "fading", "The shine draws back; dull islands spread from the edges.")
    return Sign("sheen", at_h, "dull", "Dull and dry to the fingertips; that says nothing of what lies below.")


def _edge(state):
    at_h = state.hour_h
    if state.face_on_h is None:
        if state.base_pa >= defaults.si("layer_gap_pr"):
            return Sign("edge", at_h, "too stiff", "The base does not move, and it takes no thumb print any more.")
        if state.stands:
            return Sign("edge", at_h, "stays", "The form is nudged: the base stays where it is.")
        return Sign("edge", at_h, "moves", "The form is nudged: the base moves with it and settles by itself.")
    nudge = "Touched" if len(state.off) == len(state.pour.sides) else "A side loosened by a hair"
    deep = units.show(state.pour.told.thickness_m + state.pour.told.drop_m, "length")
    if not state.stands or state.softer_pa < defaults.si("strip_pr_low"):
        words = f"{nudge}: the edge, {deep} high, leans after it."
        return Sign("edge", at_h, "leans", words)
    if state.face_pa <= defaults.si("strip_pr_high"):
        words = f"{nudge}: the edge keeps its shape, and a trowel still cuts it."
        return Sign("edge", at_h, "keeps", words)
    if state.face_pa < defaults.si("first_steel_pr_low"):
        words = "The edge keeps its shape; a trowel cuts it with some force, paste barely sticks to it."
        return Sign("edge", at_h, "firm", words)
    return Sign("edge", at_h, "stiff", "The edge is stiff; fresh paste slides off it.")


def _rod(state):
    pa = state.face_pa
    if pa < defaults.si("power_law_from"):
        least = units.show(defaults.si("power_law_from"), "pressure")
        words = f"The rod sinks under little more than its own weight: less than {least}."
        return Sign("rod", state.hour_h, "soft", words)
    mass_kg = float(rod_mass_kg(pa))
    rod = units.show(float(rod_for_m(pa)), "length", "us")
    if mass_kg > defaults.si("kitchen_scale"):
        words = f"The {rod} rod: the scale ends at {units.show(defaults.si('kitchen_scale'), 'mass')} before it sinks."
        return Sign("rod", state.hour_h, "beyond", words)
    words = f"The {rod} rod: {units.show(mass_kg, 'mass')} on the scale, that is {units.show(pa, 'pressure')}."
    return Sign("rod", state.hour_h, "read", words, None, pa)


def _air(state):
    air_c, rh_fraction, wind_m_s = air_now(state)
    pour = state.pour
    place = min(int(state.hour_h / GRID_H + 0.5), len(pour.rate_kg_m2_h) - 1)
    # what a person can work out: the estimate, without the factor that only this day knows
    rate = pour.rate_kg_m2_h[place] / float(pour.hidden.evaporation_factor[0])
    level = face_level(rate)
    moving = "still" if wind_m_s < 0.15 else f"moving at {air_speed(wind_m_s)}"
    near = "little" if rate < defaults.si("face_amber") / 2.0 else "nearly enough to want care"
    can = {"green": near, "amber": "enough to want care", "red": "more than a face of this kind can give"}[level]
    words = (
        f"Air {units.show(air_c, 'temperature')}, humidity {100 * rh_fraction:.0f} %, {moving}: "
        f"it can take about {units.show(rate, 'rate')}, {can}."
    )
    return Sign("air", state.hour_h, level, words)


def _bucket(state):
    if state.face_on_h is not None:
        return Sign("bucket", state.hour_h, "cup", "What is left is the covered cup, kept for the edges.")
    if state.face_pa >= defaults.si("strip_pr_low"):
        return Sign("bucket", state.hour_h, "set", "The share has begun to set; turned over it falls into lumps.")
    if state.stiff_in_bucket:
        return Sign("bucket", state.hour_h, "stiff", "The share stands stiff in its bucket and does not run together.")
    return Sign("bucket", state.hour_h, "ready", "The share is smooth and runs together slowly.")


_LOOKS = {"air": _air, "bucket": _bucket, "sheen": _sheen, "edge": _edge, "thumb": _thumb, "rod": _rod}
