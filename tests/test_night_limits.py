"""The first night at its limits: from which hour to which, how old the piece is by the morning, the coldest water."""

from dataclasses import replace
from datetime import datetime, timedelta
from types import SimpleNamespace

import pytest

from shop_calc.trade.curing.cure import MEMBRANE_HOURS, MEMBRANE_LOSS_KG_M2, _advice, _morning_h, first_night
from shop_calc.trade.timeline.day import DayInputs, plan_day
from shop_calc.trade.timeline.drying import face_clock
from shop_calc.trade.timeline.room import steady_room

WATER = datetime(2026, 5, 4, 8)
EVEN = DayInputs(WATER, steady_room(21.0, 1.0, 0.0), 21.0, 0.0381, 0.03175, 0.58)  # nothing evaporates, nothing cools


def night(**change):
    day = plan_day(replace(EVEN, **change))
    return first_night(day, face_clock(day), face_thickness_m=0.00635, face_water_kg_m3=280.0, piece_water_kg_m2=8.0)


@pytest.mark.parametrize(
    ("stop", "morning"),
    [
        ("2026-05-04T17:00", "2026-05-05T08:00"),
        ("2026-05-05T03:57", "2026-05-05T08:00"),  # four hours and three minutes
        ("2026-05-05T04:00", "2026-05-05T08:00"),
        ("2026-05-05T04:01", "2026-05-06T08:00"),  # not four hours any more
        ("2026-05-05T09:00", "2026-05-06T08:00"),
    ],
)
def test_the_morning_is_the_next_eight_oclock_that_leaves_four_hours(stop, morning):
    # eight in the morning is row morning_hour of data/defaults.csv; four hours are a judgement
    day = SimpleNamespace(water_in=WATER, clock=lambda hour: WATER + timedelta(hours=hour))
    from_h = (datetime.fromisoformat(stop) - WATER).total_seconds() / 3600
    until_h = _morning_h(day, from_h)
    assert WATER + timedelta(hours=until_h) == datetime.fromisoformat(morning)


@pytest.mark.parametrize("face_load_h", [0.0, 1.0, 2.0])
def test_at_the_temperature_of_the_clock_a_closed_piece_is_as_old_as_hours_went_by_since_its_own_water(face_load_h):
    # at 21 °C every hour counts as one; the last step of the night ends in the morning
    cure = night(face_load_h=face_load_h)
    for key in ("plastic", "membrane"):
        assert cure.choice(key).morning_age_h == pytest.approx(cure.until_h - face_load_h, abs=1e-3)
        assert cure.night(key)[0][-1] == pytest.approx(cure.until_h, abs=1e-9)


def test_a_membrane_loses_its_limit_by_the_hour():
    # ASTM C309: at most 0.55 kg/m2 in 72 h
    assert (MEMBRANE_LOSS_KG_M2, MEMBRANE_HOURS) == (0.55, 72.0)
    cure = night()
    assert cure.choice("membrane").water_lost_kg_m2 == pytest.approx(0.55 / 72 * (cure.until_h - cure.from_h), rel=1e-9)


@pytest.mark.parametrize(
    ("surface_c", "words"), [(30.0, "66.2 °F (19 °C)"), (17.0, "42.8 °F (6 °C)"), (12.0, "41 °F (5 °C)")]
)
def test_curing_water_may_be_eleven_degrees_colder_and_never_near_freezing(surface_c, words):
    # UFGS 03700, row curing_water_drop: 11 K (20 °F); 5 °C is a judgement
    (line,) = [line for line in _advice("fabric", False, (), surface_c) if "fabric" in line.text]
    assert f"colder than {words} can craze" in line.reason.replace("66.20", "66.2")
