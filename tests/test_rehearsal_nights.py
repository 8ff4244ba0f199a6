"""The night after a practice pour: when the morning comes, what its air takes, what every cover leaves, what was never done."""

from dataclasses import replace

import pytest
from practice_pieces import PSI, a_pour, piece, worst

from shop_calc.science import slab_heat
from shop_calc.trade.rehearsal import night
from shop_calc.trade.rehearsal.bench import begin
from shop_calc.trade.rehearsal.damage import BAD, TRACE
from shop_calc.trade.timeline.room import Room

DONE = {"screeded_h": 1.1, "off": ("left", "right", "front", "back"), "patched": ("left", "right", "front", "back")}


@pytest.mark.parametrize(
    ("left_h", "morning_h"), [(6.0, 24.0), (15.9, 24.0), (19.9, 24.0), (20.0, 24.0), (20.1, 48.0), (23.0, 48.0)]
)
def test_the_morning_is_the_next_eight_o_clock_that_leaves_four_hours(left_h, morning_h):
    """Row morning_hour; the first water of this pour was at 8:00."""
    pour = a_pour()
    assert (pour.water_in.hour, pour.water_in.minute) == (8, 0)
    assert night.morning_h(pour, left_h) == morning_h


def test_the_night_is_read_from_the_leaving_to_the_morning_and_no_further():
    """Left at 14:00, looked at at 8:00: the air of 13:57 and of 8:03 is not in it, that of 14:03 and 7:52 is."""
    room = Room((0.0, 5.95, 6.05, 23.8, 24.05), (5.0, 12.0, 20.0, 25.0, 40.0), (0.1, 0.7, 0.6, 0.5, 0.2), (0.0,) * 5)
    mean, peak, coldest_c, hottest_c, driest = night.night_demand(replace(a_pour(), room=room), 6.0)
    assert (coldest_c, hottest_c, driest) == (20.0, 25.0, 0.5)
    assert 0.0 < mean < peak


def test_the_night_is_as_much_warmer_as_the_thermometer_was_wrong():
    cool, warm = (night.night_demand(a_pour(room_error_k=error), 6.0) for error in (0.0, 3.0))
    assert warm[2] - cool[2] == pytest.approx(3.0) and warm[3] - cool[3] == pytest.approx(3.0)
    assert warm[0] > cool[0]  # warmer air of the same humidity takes more


def test_a_piece_left_after_the_last_hour_of_its_history_starts_the_night_at_its_last_temperature():
    """97 steps of five minutes are eight hours; who leaves after ten starts from the temperature at eight."""
    pour = a_pour()
    flat, steep = [20.0] * 97, [20.0] * 95 + [10.0, 20.0]
    nights = [night.night_demand(replace(pour, temp_c=tuple(temps)), 10.0) for temps in (flat, steep, [19.0] * 97)]
    assert nights[0] == pytest.approx(nights[1], rel=1e-9) and nights[0][1] > nights[2][1]


@pytest.mark.parametrize("code", ["oak 1", "oak 2", "oak 3", "oak 4", "oak 5"])
def test_a_night_in_quarter_hours_is_the_night_in_minutes(code, monkeypatch):
    """No finer first steps long after the placing: within 0.3 % of steps of a minute, tried on 180 nights."""
    pour = begin(code).pour
    quick = night.night_demand(pour, 7.5)
    whole = slab_heat.slab_history
    monkeypatch.setattr(slab_heat, "slab_history", lambda *at, **more: whole(*at, **more | {"longest_part_s": 60.0}))
    assert quick[:2] == pytest.approx(night.night_demand(pour, 7.5)[:2], rel=0.003)


def under(cover, monkeypatch, mean, peak, hottest_c=20.0, driest=0.5):
    """The night of a face that is done, its air as given."""
    monkeypatch.setattr(night, "night_demand", lambda pour, hour_h: (mean, peak, 15.0, hottest_c, driest))
    return night.of_cover_overnight(piece(psi=600), cover)


NIGHTS = [  # rows face_amber 0.25 (mean) and face_red 0.5 (peak); half more is plain to see, judgement
    (0.249, 0.499, 20.0, 0.5, 0.0),
    (0.251, 0.4, 20.0, 0.5, 0.00246),  # 1/4 ln(0.251/0.25) / ln 1.5
    (0.375, 0.4, 20.0, 0.5, 0.25),
    (0.1, 0.75, 20.0, 0.5, 0.25),
    (0.1, 1.125, 20.0, 0.5, 0.5),
    (0.375, 1.125, 20.0, 0.5, 0.5),  # the worse of the two
    (0.5625, 0.6, 20.0, 0.5, 0.5),
    (0.1, 0.2, 27.0, 0.35, 0.0),  # cure_air_hot 27 °C, cure_humidity_low 35 %: still well
    (0.1, 0.2, 27.1, 0.5, 0.2),  # a trace: eight tenths of what is plain
    (0.1, 0.2, 20.0, 0.349, 0.2),
    (0.5625, 0.6, 30.0, 0.2, 0.5),  # adds nothing to what is worse
]


@pytest.mark.parametrize(("mean", "peak", "hottest_c", "driest", "severity"), NIGHTS)
def test_an_open_face_thirsts_and_mist_is_never_better_than_plain(monkeypatch, mean, peak, hottest_c, driest, severity):
    thirst = under("open", monkeypatch, mean, peak, hottest_c, driest)
    assert worst(thirst, "thirst") == pytest.approx(severity, abs=1e-5) and len(thirst) == (severity > 0)
    dried = under("mist", monkeypatch, mean, peak, hottest_c, driest)
    assert worst(dried, "dry mist") == pytest.approx(max(severity, TRACE) if severity else 0.0)
    assert len(dried) == (severity > 0)
    for cover in ("fabric", "tent", "membrane"):
        assert under(cover, monkeypatch, mean, peak, hottest_c, driest) == ()


def test_plastic_blotches_by_the_hours_until_the_morning_and_those_before():
    """Laid when left at 23:30 it lies 8.5 h, laid at 22:00 it lies 10: 1/4 of log2(17) = 1.02, at most 1."""
    (late,) = night.of_cover_overnight(piece(psi=600, hour_h=15.5), "plastic")
    assert late.severity == 1.0 and late.at_h == 15.5 and "8 h 30 min" in late.reason
    (early,) = night.of_cover_overnight(piece(psi=600, hour_h=15.5, cover="plastic", cover_from_h=14.0), "plastic")
    assert "10 h" in early.reason


def test_what_was_never_done_shows_and_how_much():
    """No board, no steel, a side still on: bad each; edges not patched: twice what is plain to see (judgement)."""
    steeled = {"steel": ((2.0, 100 * PSI), (2.5, 300 * PSI)), "cover": "fabric"}
    assert night.of_night(piece(psi=600, **DONE, **steeled)) == ()
    half = DONE | {"screeded_h": None, "off": ("left", "right"), "patched": ("left",)}
    found = {item.key: item for item in night.of_night(piece(psi=600, cover="fabric", **half))}
    assert {key: item.severity for key, item in found.items()} == {
        "uneven": BAD, "form edge": BAD, "holes": 0.5, "hollows": BAD,
    }  # fmt: skip
    (nothing,) = night.of_night(piece(face_on_h=None))
    assert nothing.key == "no face" and nothing.severity == 1.0
    assert found["form edge"].reason == "Still on: back, front." and found["holes"].reason == "Not patched: right."
