"""What a person can do at the bench, and what the piece is afterwards."""

from dataclasses import replace

from shop_calc import defaults
from shop_calc.trade.curing.cure import CHOICES
from shop_calc.trade.rehearsal import harm, harm_of_water
from shop_calc.trade.rehearsal.bench import LAST_H, let_pass
from shop_calc.trade.rehearsal.damage import TRACE
from shop_calc.trade.rehearsal.night import morning_h, of_night
from shop_calc.trade.rehearsal.signs import look
from shop_calc.trade.rehearsal.state import Done
from shop_calc.trade.rehearsal.words import ACTS, WAITS_MIN
from shop_calc.trade.timeline.hands import step_h

STRIP_AND_PATCH_MIN = 15.0  # person-minutes for all sides, and again for their edges; as in hands.work_hours
SHORT_MIN = 2.0  # to stir, to sprinkle, to lay or lift a cover; judgement


def act(state, word):
    """Do one thing at the bench.

    Parameters
    ----------
    state : State
        The piece [as its fields].
    word : str
        A key of ACTS [-].

    Returns
    -------
    State
        The piece afterwards; the one given stays as it was [as its fields].

    Raises
    ------
    ValueError
        When there is no such act.

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> act(begin("oak", "mild"), "look edge").seen[-1].cue
    'moves'

    Notes
    -----
    An act that makes no sense at the moment changes nothing but the diary, which says why. A tool lifts the cover
    first. Work takes the time that the plan reckons for these hands, looks take none.

    References
    ----------
    Consequences: shop_calc.trade.rehearsal.harm and night.
    """
    if word not in ACTS:
        raise ValueError(f"act: {word!r} given; it must be one of {', '.join(ACTS)}")
    if state.over:
        return _note(state, word, "It is the morning after; the pour is over.")
    if ACTS[word].kind == "look":
        sign = look(state, word.removeprefix("look "))
        entry = Done(state.hour_h, word, 0.0, sign.words)
        return state.having(seen=(*state.seen, sign), diary=(*state.diary, entry))
    if word in WAITS_MIN:
        return _tired(_done(state, state, word, WAITS_MIN[word]))
    if word == "leave":
        return leave(state)
    why_not = _senseless(state, word)
    if why_not:
        return _note(state, word, why_not)
    return _tired(_DO[word](state))


def leave(state, said=""):
    """Leave the piece as it lies until the morning.

    Parameters
    ----------
    state : State
        The piece [as its fields].
    said : str
        What the diary says about it [-].

    Returns
    -------
    State
        The morning after [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> leave(begin("oak", "mild")).over
    True

    References
    ----------
    As shop_calc.trade.rehearsal.night.
    """
    harm_done = of_night(state)
    until_h = morning_h(state.pour, state.hour_h)
    entry = Done(state.hour_h, "leave", (until_h - state.hour_h) * 60.0, said, tuple(d.key for d in harm_done))
    later = let_pass(state, until_h - state.hour_h)
    return later.having(over=True, damage=(*state.damage, *harm_done), diary=(*state.diary, entry))


def _tired(state):
    if state.hour_h < LAST_H:
        return state
    return leave(state, "Nobody stands longer at a bench: the piece was left as it lay.")


def _note(state, word, said):
    return state.having(diary=(*state.diary, Done(state.hour_h, word, 0.0, said)))


def _done(before, after, word, minutes, harm_done=(), said="", feels=""):
    """Write the diary, keep the damage, let the minutes pass.

    What is felt is that of the harm, where there is any that can be felt, else `feels`.
    """
    felt = [damage.row.at_once for damage in harm_done if damage.severity >= TRACE and damage.row.at_once]
    words = " ".join(filter(None, (said, *(felt or [feels]))))
    entry = Done(before.hour_h, word, minutes, words, tuple(damage.key for damage in harm_done))
    after = after.having(damage=(*after.damage, *harm_done), diary=(*after.diary, entry))
    return let_pass(after, minutes / 60.0)


def _senseless(state, word):
    """Why an act cannot be done now; empty when it can."""
    on = state.face_on_h is not None
    if word in ("stir", "spread") and on:
        return "The face is on already."
    if word not in ("stir", "spread", "uncover") and not on:
        return "The face is not on yet."
    if word == "strip" and len(state.off) == len(state.pour.sides):
        return "All sides are off."
    if word == "patch" and len(state.patched) == len(state.off):
        return "No open edge: take a side off first." if not state.off else "Every open edge is patched."
    if word == "uncover" and state.cover == "open":
        return "Nothing lies on it."
    if word.startswith("cover ") and word.removeprefix("cover ") == state.cover:
        return "That cover lies on it already."
    return ""


def _uncovered(state):
    """The cover off, with what it did; what the air has done shows at the same moment."""
    if state.cover == "open":
        return state, ()
    return state.having(cover="open", cover_from_h=state.hour_h), harm_of_water.of_uncover(state)


def _minutes(state, row):
    told = state.pour.told
    return step_h(told.area_m2, defaults.get(row).value, told.hands) * 60.0


def _stir(state):
    return _done(state, state.having(stirred=True), "stir", SHORT_MIN)


def _spread(state):
    minutes = _minutes(state, "face_minutes_per_area")
    feels = "It lies down on the base, which stays where it is."
    after = _done(state, state.having(stirred=True), "spread", minutes, harm.of_spread(state), feels=feels)
    return after.having(face_on_h=after.hour_h, settled_h=after.hour_h)


def _screed(state):
    state, blotches = _uncovered(state)
    minutes = _minutes(state, "float_minutes_per_area") / 2.0
    after = state.having(screeded_h=state.hour_h, skin_kg_m2=0.0, red_kg_m2=0.0)
    harm_done = (*blotches, *harm.of_screed(state))
    after = _done(state, after, "screed", minutes, harm_done, feels="The board leaves a flat, even skin.")
    return after.having(settled_h=after.hour_h) if state.screeded_h is None else after


def _float(state):
    state, blotches = _uncovered(state)
    row, share = ("float_minutes_per_area", 0.5) if state.float_h is None else ("trowel_minutes_per_area", 1.0)
    opened = state
    if state.face_pa < defaults.si("first_steel_pr_low"):  # soft enough: the skin is worked back, closed air comes out
        damage = tuple(_healed(state, item) for item in state.damage)
        opened = state.having(skin_kg_m2=0.0, red_kg_m2=0.0, damage=damage)
    harm_done = (*blotches, *harm.of_float(state))
    after = _done(state, opened, "float", _minutes(state, row) * share, harm_done, feels=_float_feels(state))
    settled_h = after.hour_h if state.float_h is None else state.settled_h
    return after.having(float_h=after.hour_h, settled_h=settled_h)


def _healed(state, item):
    open_again = item.key in ("air", "crust") and item.healed_h is None
    return replace(item, healed_h=state.hour_h) if open_again else item


def _float_feels(state):
    if state.face_pa < defaults.si("strip_pr_low") / 4.0:
        return "It moves like cream; paste follows the float."
    if state.face_pa < defaults.si("strip_pr_high"):
        return "It tightens under the float."
    return "The float drags a little and fine paste comes up slowly."


def _strip(state):
    state, blotches = _uncovered(state)
    side = next(name for name in state.pour.sides if name not in state.off)
    minutes = STRIP_AND_PATCH_MIN / state.pour.told.hands / len(state.pour.sides)
    after = state.having(off=(*state.off, side))
    harm_done = (*blotches, *harm.of_strip(state))
    feels = "It slides away and the edge stands."
    return _done(state, after, "strip", minutes, harm_done, f"{side[0].upper()}{side[1:]} side off.", feels)


def _patch(state):
    state, blotches = _uncovered(state)
    open_edges = [side for side in state.off if side not in state.patched]
    minutes = STRIP_AND_PATCH_MIN / state.pour.told.hands * len(open_edges) / len(state.pour.sides)
    after = state.having(patched=(*state.patched, *open_edges))
    harm_done = (*blotches, *harm.of_patch(state))
    said = f"{', '.join(open_edges)} patched."
    said = f"{said[0].upper()}{said[1:]}"
    return _done(state, after, "patch", minutes, harm_done, said, "The paste keys in.")


def _steel(state):
    state, blotches = _uncovered(state)
    after = state.having(steel=(*state.steel, (state.hour_h, state.face_pa)))
    hard = state.face_pa >= defaults.si("last_steel_pr_low")
    feels = "A hard sheen follows the blade." if hard else "The blade lies flat and closes the pores."
    minutes = _minutes(state, "trowel_minutes_per_area")
    return _done(state, after, "steel", minutes, (*blotches, *harm.of_steel(state)), feels=feels)


def _sprinkle(state):
    state, blotches = _uncovered(state)
    after = _wetted(state)
    return _done(state, after, "sprinkle", SHORT_MIN, (*blotches, *harm_of_water.of_sprinkle(state)))


def _wetted(state):
    skin = max(state.skin_kg_m2 - harm_of_water.SPRINKLED_KG_M2, 0.0)
    return state.having(water_kg_m2=state.water_kg_m2 + harm_of_water.SPRINKLED_KG_M2, skin_kg_m2=skin)


def _uncover(state):
    after, blotches = _uncovered(state)
    return _done(state, after, "uncover", SHORT_MIN, blotches)


def _cover(key):
    def lay(state):
        state, blotches = _uncovered(state)
        harm_done = (*blotches, *harm_of_water.of_cover(state, key))
        wet = key == "mist" and any(damage.key == "crazing" for damage in harm_done)
        after = (_wetted(state) if wet else state).having(cover=key, cover_from_h=state.hour_h)
        return _done(state, after, f"cover {key}", SHORT_MIN, harm_done)

    return lay


_DO = {
    "stir": _stir, "spread": _spread, "screed": _screed, "float": _float, "strip": _strip, "patch": _patch,
    "steel": _steel, "sprinkle": _sprinkle, "uncover": _uncover,
    **{f"cover {key}": _cover(key) for key in CHOICES if key != "open"},
}  # fmt: skip
