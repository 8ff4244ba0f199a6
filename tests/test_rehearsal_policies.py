"""When each way of working through a practice pour does what: by what was seen, by the clock on the wall, by habit."""

from functools import cache

import pytest
from practice_pieces import PSI, a_pour, piece

from shop_calc.trade.rehearsal.policies import (
    bare_plastic,
    by_cues,
    by_the_clock,
    half_hour_looks,
    sprinkling,
    steel_at_two_hours,
)
from shop_calc.trade.rehearsal.pooled import pool
from shop_calc.trade.rehearsal.signs import Sign
from shop_calc.trade.rehearsal.state import Done

SECOND = 1.0 / 3600.0
ALL = ("left", "right", "back", "front")
ONCE, TWICE = ((2.5, 100 * PSI),), ((2.5, 100 * PSI), (2.9, 300 * PSI))


@cache
def the_pour():
    return a_pour()


def seen(at_h=3.0, **cues):
    """Looks made at one moment."""
    return tuple(Sign(sign, at_h, cue, "") for sign, cue in cues.items())


def at_work(cues=None, **fields):
    """A piece screeded and floated, with what was just seen of it."""
    looks = {"air": "green", "thumb": "print", "edge": "leans", "sheen": "wet"} | (cues or {})
    started = {"screeded_h": 1.1, "float_h": 2.9, "diary": (Done(2.9, "wait 5", 5.0),), "seen": seen(**looks)}
    return piece(the_pour(), **(started | fields))


DONE = {"off": ALL, "patched": ALL}
HARD = {"thumb": "hard", "edge": "stiff"}
STEPS = [  # what was seen, how far the work is, the next act
    ({"edge": "keeps"}, {}, "strip"),
    ({"edge": "firm"}, {"off": ALL[:1]}, "strip"),
    ({}, {"off": ALL[:3]}, "strip"),  # who has begun goes round
    ({"edge": "keeps"}, {"off": ALL, "patched": ALL[:3]}, "patch"),
    ({"edge": "firm", "thumb": "faint"}, DONE, "steel"),
    ({"edge": "keeps", "thumb": "shallow"}, DONE, "wait 5"),
    (HARD | {"sheen": "hard"}, DONE | {"steel": ONCE}, "steel"),
    (HARD | {"sheen": "dull"}, DONE | {"steel": ONCE}, "wait 5"),
    ({"edge": "stiff", "thumb": "nail", "sheen": "hard"}, DONE | {"steel": ONCE}, "wait 5"),
    (HARD | {"sheen": "polished"}, DONE | {"steel": TWICE, "cover": "fabric"}, "leave"),
    ({"thumb": "rings", "edge": "stiff"}, DONE | {"steel": ONCE, "cover": "fabric"}, "leave"),
    ({"thumb": "faint"}, {}, "wait 5"),
    ({"thumb": "sinks"}, {}, "wait 15"),
    # between the tools: a dull face is floated at once, a shining one half an hour after the last time (look_interval)
    ({"sheen": "dull"}, {"float_h": 2.95}, "float"),
    ({}, {"float_h": 2.5 + SECOND}, "wait 5"),
    ({}, {"float_h": 2.5}, "float"),
    ({"thumb": "faint"}, {"float_h": 2.0}, "wait 5"),  # too stiff for a float
    ({"air": "amber"}, {}, "cover tent"),
    ({"air": "red"}, {"cover": "tent"}, "wait 5"),
    ({"air": "red", "thumb": "faint"}, {}, "wait 5"),  # no soft face any more
]


@pytest.mark.parametrize(("cues", "fields", "word"), STEPS)
def test_who_follows_the_cues_does_what_was_just_seen_to_be_right(cues, fields, word):
    assert by_cues(at_work(cues, **fields)) == word
    assert half_hour_looks(at_work(cues, **fields)) == ("wait 30" if word.startswith("wait") else word)


def test_looks_grow_old_those_at_the_air_after_half_an_hour_all_others_at_once():
    looks = {"thumb": "print", "edge": "leans", "sheen": "wet"}
    fresh = seen(**looks)
    assert by_cues(at_work(seen=seen(2.5, air="green") + fresh)) == "wait 5"
    assert by_cues(at_work(seen=seen(2.5 - SECOND, air="green") + fresh)) == "look air"
    assert by_cues(at_work(seen=seen(3.0 - SECOND, **looks) + seen(air="green"))) == "look thumb"
    assert by_cues(at_work(seen=seen(air="green", thumb="print", edge="leans"))) == "look sheen"


@pytest.mark.parametrize(
    ("bucket", "edge", "word"),
    [
        ("ready", "moves", "wait 5"),
        ("ready", "stays", "spread"),
        ("stiff", "stays", "stir"),
        ("set", "moves", "spread"),
    ],
)
def test_the_face_waits_for_the_nudge_unless_its_share_begins_to_set(bucket, edge, word):
    waiting = at_work(face_on_h=None, settled_h=None, screeded_h=None, float_h=None)
    assert by_cues(waiting.having(seen=seen(bucket=bucket, edge=edge))) == word
    assert by_cues(waiting.having(seen=())) == "look bucket"
    assert by_cues(waiting.having(face_on_h=1.0)) == "screed"
    assert by_cues(waiting.having(face_on_h=1.0, screeded_h=1.1)) == "float"


CLOCK = [  # stage of the wall, how far the work is, what is done from then on
    ("face", {"face_on_h": None, "settled_h": None, "screeded_h": None, "float_h": None}, "spread"),
    ("strip", {}, "strip"),
    ("first_steel", DONE, "steel"),
    ("last_steel", DONE | {"steel": ONCE}, "steel"),
    ("stop", DONE | {"steel": TWICE, "cover": "fabric"}, "leave"),
]


@pytest.mark.parametrize(("stage", "fields", "word"), CLOCK)
def test_the_clock_on_the_wall_strikes_half_a_wait_before_its_likely_time(stage, fields, word):
    """Who waits five minutes at a time acts from two and a half minutes before; three seconds are more than 2 % of that."""
    likely_h = next(row.likely_from_h for row in the_pour().wall.stages if row.key == stage)
    due_h = likely_h - 2.5 / 60.0
    assert by_the_clock(at_work(**(fields | {"hour_h": due_h - SECOND}))) == "wait 5"
    assert by_the_clock(at_work(**(fields | {"hour_h": due_h + SECOND}))) == word


def test_the_clock_asks_for_one_pass_a_time_and_nothing_twice():
    hours = {row.key: row.likely_from_h for row in the_pour().wall.stages}
    assert by_the_clock(at_work(hour_h=hours["first_steel"], **DONE, steel=ONCE)) == "wait 5"
    assert by_the_clock(at_work(hour_h=hours["last_steel"], **DONE, steel=TWICE)) == "wait 5"
    assert by_the_clock(at_work(hour_h=hours["last_steel"], **DONE)) == "steel"  # late for the first, but the first
    assert by_the_clock(at_work(hour_h=hours["stop"], off=ALL, patched=ALL[:2])) == "patch"
    assert by_the_clock(at_work(hour_h=1.2, off=ALL[:1])) == "patch"
    assert by_the_clock(at_work(hour_h=1.2, screeded_h=None)) == "screed"
    assert by_the_clock(at_work(hour_h=1.2, float_h=None)) == "float"


def test_steel_at_two_hours_comes_at_two_hours_once_and_ends_the_floating():
    looked = {"seen": seen(2.0, air="green", thumb="print", edge="leans", sheen="wet"), "float_h": 1.2}
    assert steel_at_two_hours(at_work(hour_h=2.0, **looked)) == "steel"
    early = at_work(hour_h=2.0 - SECOND, **(looked | {"seen": seen(2.0 - SECOND, air="green")}))
    assert steel_at_two_hours(early) == "look thumb"
    assert steel_at_two_hours(at_work(hour_h=2.0, **(looked | {"float_h": None}))) == "float"
    # afterwards the float that the cues ask for is left out, everything else goes on
    assert by_cues(at_work(hour_h=2.0, **looked, steel=ONCE)) == "float"
    assert steel_at_two_hours(at_work(hour_h=2.0, **looked, steel=ONCE)) == "wait 5"
    assert steel_at_two_hours(at_work({"edge": "keeps"}, steel=ONCE)) == "strip"


def test_plastic_comes_for_the_night_once_the_steel_was_used_and_not_by_day():
    finished = HARD | {"sheen": "polished"}
    assert bare_plastic(at_work(finished, **DONE, steel=TWICE)) == "cover plastic"
    assert bare_plastic(at_work({"thumb": "past", "edge": "stiff"}, **DONE, steel=ONCE)) == "cover plastic"
    assert bare_plastic(at_work(finished, **DONE, steel=TWICE, cover="plastic")) == "leave"
    assert bare_plastic(at_work({"air": "red"})) == "cover tent"


@pytest.mark.parametrize(
    ("so_far", "cues", "word"),
    [
        (("float",), {"sheen": "dull"}, "sprinkle"),
        (("float", "sprinkle"), {"sheen": "dull"}, "float"),
        (("float", "sprinkle", "float"), {"sheen": "dull"}, "sprinkle"),
        (("float", "sprinkle", "steel"), HARD | {"sheen": "hard"}, "sprinkle"),
        (("float", "sprinkle", "steel", "sprinkle"), HARD | {"sheen": "hard"}, "steel"),
        (("float",), {"edge": "keeps"}, "strip"),  # no water before other tools
    ],
)
def test_water_goes_on_once_before_every_further_float_and_every_steel(so_far, cues, word):
    diary = tuple(Done(2.0, each, 5.0) for each in so_far)
    further = DONE | {"steel": ONCE} if "steel" in so_far else {}
    assert sprinkling(at_work(cues, diary=diary, **further)) == word


def test_no_water_before_the_first_float():
    assert sprinkling(at_work(float_h=None, diary=())) == "float"


def test_what_most_of_a_class_shows_stands_first():
    shows = pool("oak", ["step away; spread; steel; leave", "leave", "leave"], weather="mild").shows
    assert next(iter(shows)) == "no face" and list(shows.values()) == sorted(shows.values(), reverse=True)
    assert shows["no face"] == 2 and shows["form edge"] == 1
