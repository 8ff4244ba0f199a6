"""Predicted against seen: bars and marks stand at their hours; and lesson 10 says what its log says."""

from dataclasses import replace
from datetime import datetime

import pytest
from picture_checks import unreadable

from shop_calc import defaults
from shop_calc.lesson.blocks.log_form import HAPPENED, LogForm, event_of, log_file
from shop_calc.lesson.moves import log_class, log_next, log_seen, shop_log
from shop_calc.lesson.pictures.predicted_seen import PredictedSeen, SeenRow
from shop_calc.trade.logbook.calibrate import calibrate
from shop_calc.trade.logbook.shop_log import ShopLog, read_log

START = datetime(2026, 5, 4, 8)
ROWS = (
    SeenRow("sides off", (1.8, 2.4, 3.3), (1.8, 2.1, 2.8), 1.75, 2.25),
    SeenRow("first steel", (2.4, 3.0, 3.9), None, None, 3.0),
    SeenRow("last steel", (2.9, 3.7, 4.7), (3.0, 3.5, 4.0), 9.0, None),
)
LOGS = defaults.data_folder() / "logs"


@pytest.fixture(scope="module")
def example():
    return shop_log.example()


@pytest.fixture(scope="module")
def year():
    return read_log(LOGS / "eight_pours.csv")


def test_bands_likely_lines_and_marks_stand_at_their_hours():
    picture = PredictedSeen(ROWS, (1.0, 6.0), water_in=START)
    first, second, third = picture._rows
    assert (first["before"].get_x(), first["before"].get_width()) == pytest.approx((1.8, 1.5))
    assert first["after_likely"].get_xdata() == pytest.approx([2.1, 2.1])
    assert list(first["gap"].get_xdata()) == [1.75, 2.25]
    assert not second["after"].get_visible() and len(second["gap"].get_xdata()) == 0
    assert list(second["there"].get_xdata()) == [3.0] and len(second["not_yet"].get_xdata()) == 0
    assert list(third["not_yet"].get_xdata()) == [6.0]  # beyond the scale: at its end


def test_the_words_say_every_number_and_who_did_not_look():
    picture = PredictedSeen([*ROWS, SeenRow("stop", (4.0, 4.6, 5.4))], (1.0, 6.0), "A pour", START)
    for words in ("A pour.", "Sides off: plan 10:24, between 09:48 and 11:18", "with the log 10:06",
                  "not yet 09:45, there 10:15", "nobody looked"):  # fmt: skip
        assert words in picture.alt
    assert "plan 2 h 24" in PredictedSeen(ROWS, (1.0, 6.0)).alt


@pytest.mark.parametrize("water_in", [None, START])
def test_words_are_on_the_sheet_and_apart(water_in):
    rows = [replace(row, name=row.name + " of a piece that was never made") for row in ROWS * 3]
    figure = PredictedSeen(rows, (0.2, 14.0), "A title" * 30, water_in).figure
    assert unreadable(figure) == []


def test_another_number_of_lines_is_refused():
    with pytest.raises(ValueError, match="2 given"):
        PredictedSeen(ROWS, (1.0, 6.0)).update(ROWS[:2])


def test_the_gap_is_the_last_look_without_and_the_first_with(example):
    pour = example[1]
    assert shop_log.gap_h(pour, "strip") == pytest.approx((1.75, 2.25))
    assert shop_log.gap_h(pour, "last_steel") == (None, pytest.approx(3 + 40 / 60))
    assert shop_log.gap_h(pour, "stop") == (None, None)


def test_the_log_draws_the_band_of_its_own_day_together_round_the_gap(example):
    day, pour = example
    rows = log_seen.predicted_seen(day, pour, calibrate((pour,), "demo mortar")).rows
    for row in rows:
        assert row.after_h[2] - row.after_h[0] < 0.75 * (row.before_h[2] - row.before_h[0])
    first = rows[1]
    assert first.not_yet_h < first.after_h[1] < first.there_h


def test_the_band_of_each_pour_comes_from_the_others_alone(example, year):
    day = example[0]
    picture = log_seen.pours_seen(day, year, "demo mortar")
    mixes = sorted(pour.mix_temp_c("face") for pour in year.pours)
    assert picture.count == 8 and mixes[0] == 11.0 and picture.rows[0].name.startswith("pour 8")
    others = calibrate(tuple(pour for pour in year.pours if pour.pour_id != "pour 8"), "demo mortar")
    pour = next(pour for pour in year.pours if pour.pour_id == "pour 8")
    again = log_seen.predicted_seen(day, pour, others, ("first_steel",)).rows[0]
    assert picture.rows[0].after_h == pytest.approx(again.after_h)


def test_no_log_is_exactly_the_defaults_at_every_temperature(example, year):
    model = log_next.next_pour(example[0], year, "demo mortar")
    for temp_c in (9.0, 12.0, 25.0):
        with_log, without = model(0, temp_c, temp_c)
        assert with_log.stages == without.stages and with_log.samples.inputs.bands is None
        logged, _ = model(8, temp_c, temp_c)
        first, plain = (each.stage("first_steel") for each in (logged, without))
        assert first.over_by_h - first.look_from_h < 0.7 * (plain.over_by_h - plain.look_from_h)
    assert calibrate(ShopLog((), (), (), ()), "demo mortar").bands["set_time_initial"] == defaults.si_band(
        "set_time_initial"
    )


def test_three_readings_of_the_record_may_miss_by_an_hour_and_five_do_not():
    misses = {row[0]: max(abs(int(cell.split()[0])) for cell in row[2:]) for row in log_class.forecast_table().rows}
    assert misses["2 to 4"] > 60 and max(misses["1 to 5"], misses["2 to 6"]) <= 20
    assert misses["1 to 3"] < 10  # luck


def test_a_class_knows_more_than_its_benches(year):
    logs = {"a": read_log(LOGS / "first_pour.csv"), "b": year}
    rows = log_class.pooled(logs, "Demo Mortar").rows
    assert [row[1] for row in rows] == ["1", "8", "9"]
    wide = [float(row[4].split()[2]) - float(row[4].split()[0]) for row in rows]
    assert wide[2] <= wide[1] < wide[0]


def test_one_cup_moves_the_band_most_of_the_way_and_narrows_it():
    before, after = log_class.cup_band_h(), log_class.cup_band_h(20)
    assert before[1] < after[1] < 20 / 60 and after[2] / after[0] < before[2] / before[0]
    for bad in ("soon", 0.1, 999):
        assert "cannot be read" in log_class.second_cup(bad, ...).text
    assert "inside the band" in log_class.second_cup(18, "21 min").alt


def test_a_log_of_one_s_own_is_never_needed_and_never_stops_the_lesson(tmp_path):
    assert "exactly on its defaults" in log_class.your_log(..., "demo mortar").text
    assert "cannot be read" in log_class.your_log(tmp_path / "none.csv", "demo mortar").text
    assert "8 pours" in log_class.your_log(LOGS / "eight_pours.csv", "demo mortar").text


def _fill(form, what, **fields):
    form.what.value = what
    for key, value in fields.items():
        form.fields[key].value = value
    return form.keep().text


def test_the_form_writes_only_into_the_work_folder_and_what_it_wrote_is_a_log(work_folder):
    form = LogForm()
    assert list(work_folder.iterdir()) == []  # to show it writes nothing
    day = {"pour": "bench 2", "recipe": "demo mortar", "date": "2026-11-21"}
    assert "Kept" in _fill(form, "water in", **day, time="08:00", number="54 F", note="=cold <b>shop</b>", thick="1 1/2 in")
    assert form.fields["thick"].value == ""  # once is enough, the rows after it need not repeat it
    assert "Kept" in _fill(form, "the room", time="08:05", number="12 °C")
    assert "Kept" in _fill(form, "first steel: not yet", time="11:30")
    assert "Kept" in _fill(form, "first steel: there", time="12:00")
    assert "5 rows of this pour" in _fill(form, "rod reading", time="12:05", number="80 psi")
    assert [path.name for path in work_folder.iterdir()] == [log_file().name]
    log = read_log(log_file())
    assert not log.problems and log.events[0].note == "=cold <b>shop</b>"
    assert log.pours[0].thickness_m == pytest.approx(0.0381)
    assert calibrate(log, "demo mortar").pour_count == 1


@pytest.mark.parametrize(
    ("what", "fields", "words"),
    [
        ("first steel: there", {"time": "11:00"}, "must be 'water in'"),
        ("water in", {"time": "eleven", "number": "54 F"}, "date and clock time"),
        ("water in", {"time": "08:00", "number": "warm"}, "mix temperature"),
        ("water in", {"time": "08:00", "number": "54 F", "recipe": ""}, "recipe: nothing given"),
        ("stop: there", {"time": "11:00", "number": "3"}, "nothing to read"),
        ("water in", {"time": "08:00", "number": "54 F", "thick": "thick"}, "thickness: 'thick' given"),
        ("water in", {"time": "08:00", "number": "54 F", "thick": "0.1 in"}, "thickness: '0.1 in' given; it must be from 3/16"),
    ],
)
def test_a_row_that_cannot_be_is_not_kept_and_said_so(work_folder, what, fields, words):
    form = LogForm()
    said = _fill(form, what, **{"pour": "bench 2", "recipe": "demo mortar", "date": "2026-11-21", **fields})
    assert said.startswith("Not kept") and words in said and not log_file().exists()
    assert 'role="alert"' in form._status.value


def test_nothing_typed_reaches_the_page_unescaped(work_folder):
    form = LogForm()
    _fill(form, "water in", pour="<img src=x>", recipe="r", date="2026-11-21", time="08:00", number="54 F")
    assert "<img" not in form._status.value and "&lt;img" in form._status.value


def test_every_field_has_a_name_of_its_own_and_every_choice_makes_a_row():
    form = LogForm()
    names = [form.what.description, *(field.description for field in form.fields.values())]
    assert all(names) and len({*names}) == len(names) and form.button.description
    numbers = {"water in": "60 F", "the room": "70 F", "rod reading": "20 psi", "thumb print": "1/4 in"}
    for what in HAPPENED:
        event_of(what, "p", "r", "2026-11-21", "08:00", numbers.get(what, ""))


def test_the_weight_on_the_scale_is_not_yet_a_rod_reading():
    with pytest.raises(ValueError, match=r"unit of mass.*over the area of the rod's end"):
        event_of("rod reading", "bench 2", "", "2026-11-21", "10:40", "3 lb", "")


def test_lesson_10_counts_right_how_many_gaps_the_bands_of_the_others_meet(example):
    rows = log_seen.pours_seen(example[0], read_log(LOGS / "eight_pours.csv"), "demo mortar").rows
    met = [row.after_h[0] <= row.there_h and row.not_yet_h <= row.after_h[2] for row in rows]
    assert (sum(met), len(met)) == (7, 8)
