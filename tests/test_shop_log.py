"""The pours of the shop log: room, water, layers and looks."""

from dataclasses import replace
from datetime import timedelta, timezone

import pytest
from log_rows import START, WATER

from shop_calc import defaults
from shop_calc.trade.logbook.shop_log import Event, append_events, gather_pours, pour_looks, read_log


def test_room_water_and_looks_of_a_pour():
    at = lambda hour: START + timedelta(hours=hour)  # noqa: E731
    events = (
        Event("p", START, "water_in", "base", recipe="m", mix_temp_c=17.0),
        Event("p", START, "room", air_temp_c=20.0, rh_fraction=0.4),
        Event("p", at(0.5), "water_in", "face", mix_temp_c=15.0),
        Event("p", at(2), "room", air_temp_c=24.0),
        Event("p", at(2.5), "check", "face", cue="strip seen", depth_m=0.005, surface_temp_c=18.0),
        Event("p", at(2.6), "check", "base", cue="strip not yet", resistance_pa=50_000.0),
    )
    (pour,) = gather_pours(events)
    assert (pour.start_h("base"), pour.start_h("face")) == (0.0, 0.5)
    assert (pour.mix_temp_c("base"), pour.mix_temp_c("face")) == (17.0, 15.0)
    room = pour.room()
    assert room.from_h == (0.0, 2.0) and room.air_temp_c == (20.0, 24.0) and room.rh_fraction == (0.4, 0.4)
    assert room.wind_m_s == (defaults.si("wind"),) * 2
    assert [look.kind for look, _ in pour_looks(pour, "face")] == ["seen", "print"]
    assert [look.kind for look, _ in pour_looks(pour, "base")] == ["not_yet", "rod"]
    assert pour.surface("face") == ((2.5, 18.0),) and pour.surface("base") == ()
    assert gather_pours(events[:1])[0].room() is None


def test_times_with_and_without_an_offset_can_be_added(tmp_path):
    file = tmp_path / "log.csv"
    zone = timezone(timedelta(hours=2))
    append_events(file, replace(WATER, time=START.replace(tzinfo=zone)))
    assert "2026-05-04T08:00:00+02:00" in file.read_text()
    assert read_log(file).events[0].time.utcoffset() == timedelta(hours=2)


@pytest.mark.parametrize("name", ["first_pour", "eight_pours"])
def test_the_demo_logs_have_no_bad_row(name):
    log = read_log(defaults.data_folder() / "logs" / f"{name}.csv")
    assert log.problems == () == log.remarks
    assert "invented" in log.events[0].note


def test_the_demo_log_with_slips_names_them():
    log = read_log(defaults.data_folder() / "logs" / "log_with_slips.csv")
    assert [problem.column for problem in log.problems] == ["event", "time_iso", "rh_fraction", "cue", "pr_kpa"]
    assert len(log.pours) == 3
