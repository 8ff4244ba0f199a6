"""Lesson 09: the form, the file it keeps, the maps and the questions."""

import html
from datetime import datetime

import numpy as np
import pytest

from shop_calc import defaults
from shop_calc.lesson.blocks import Block, slider
from shop_calc.lesson.blocks.job_form import JobForm
from shop_calc.lesson.draw import numbers_for
from shop_calc.lesson.formula import evaluate, is_arithmetic
from shop_calc.lesson.job_file import file_name, own_jobs, save_job
from shop_calc.lesson.moves import ready_by, whole_job
from shop_calc.lesson.moves import whole_job_sums as sums
from shop_calc.lesson.moves.job_short import entries_of, texts_of
from shop_calc.lesson.questions import whole_job as questions
from shop_calc.lesson.said import Said
from shop_calc.science.evaporation import menzel_rate_kg_m2_h
from shop_calc.trade.curing.cure_rules import pick_cover
from shop_calc.trade.jobs.job import check_job, demo_job, demo_jobs, read_job
from shop_calc.trade.plan import make_plan
from shop_calc.trade.timeline.drying import moving_air
from shop_calc.trade.timeline.hands import person_hours


@pytest.fixture(scope="module")
def plan():
    return make_plan(read_job(demo_job("garden_bench_top")))


@pytest.fixture
def own(tmp_path, monkeypatch):
    monkeypatch.setenv("SHOP_CALC_WORK", str(tmp_path / "made"))
    return tmp_path / "made"


@pytest.fixture
def form(own):
    return JobForm()


# ---- texts and entries


@pytest.mark.parametrize("name", demo_jobs())
def test_texts_that_nobody_touched_leave_the_job_as_it_was(name):
    base = read_job(demo_job(name)).entries
    assert entries_of(texts_of(base), base) == dict(base)


def test_the_room_follows_the_day_and_goes_over_midnight():
    base = read_job(demo_job("garden_bench_top")).entries
    texts = {**texts_of(base), "water_in": "2026-06-01 09:30",
             "room": "09:30, 70 F, 50, 0 mph\n22:00, 60 F, 55.5 %, 2 mph\n\n02:00, 12 °C, 70 %, 0 mph"}  # fmt: skip
    job = check_job(entries_of(texts, base))
    assert [row["from"] for row in job.rooms] == [
        datetime(2026, 6, 1, 9, 30), datetime(2026, 6, 1, 22), datetime(2026, 6, 2, 2)
    ]  # fmt: skip
    assert [row["humidity"] for row in job.rooms] == pytest.approx([0.50, 0.555, 0.70])


def test_another_outline_drops_the_sizes_that_the_form_hides():
    base = read_job(demo_job("garden_bench_top")).entries
    job = check_job(entries_of({**texts_of(base), "outline": "circle", "diameter": "30 in", "exposed": "all"}, base))
    assert job.piece["diameter"] == pytest.approx(30 * 0.0254) and job.piece["length"] is None


# ---- the form


def test_the_form_says_the_plan_and_what_moved(form):
    assert "Chill the mixing water" in form.text and "Tonight: leave it open." in form.text
    assert "Against the file" not in form.text
    form.fields["length"].value = "7 ft"
    assert "1 load more" in form.text and "first steel 20 min later" in form.text
    form.fields["length"].value = "5 ft"
    assert "Against the file" not in form.text


@pytest.mark.parametrize("name", demo_jobs())
def test_every_demo_job_stands_in_the_form_as_in_its_file(form, name):
    form.file.value = demo_job(name)
    assert form.plan is not None and dict(form.job.entries) == dict(read_job(demo_job(name)).entries)


@pytest.mark.parametrize(
    ("field", "typed", "part"),
    [
        ("length", "2 bananas", "Length: "),
        ("length", "", "Length: nothing given; 'rectangle' needs length, width"),
        ("thickness", "15", "it has no unit"),
        ("water_in", "nine", "First water: "),
        ("hands", "two", "a whole number"),
        ("stone", "1.2", "Base stone: "),
        ("exposed", "front, roof", "roof"),
        ("face", "2 in", "Face: "),
        ("room", "08:00, 70 F", "Room, line 1, humidity: nothing given"),
        ("room", "nonsense", "Room, line 1, from: 'nonsense'"),
        ("room", "", "at least one row for the air"),
        ("name", "", "Name: nothing given"),
        ("length", "__import__('os').abort()", "Length: "),
    ],
)
def test_every_problem_is_a_line_and_nothing_stops(form, field, typed, part):
    form.fields[field].value = typed
    assert form.text.startswith("The plan waits") and part in form.text and form.plan is None
    assert isinstance(form.sheet(), Said) and isinstance(form.file_text(), Said)
    assert str(form.keep()).startswith("Not kept") and not own_jobs()
    form.load()
    assert form.plan is not None


def test_several_problems_are_said_at_once(form):
    form.fields["width"].value = "wide"
    form.fields["wanted_mix_temp"].value = "cool"
    assert len(form.text.splitlines()) == 3


def test_what_is_typed_is_escaped_where_it_is_shown(form):
    bad = "<img src=x onerror=alert(1)>"
    form.fields["length"].value = bad
    assert "<img" not in form._words.value and html.escape(bad)[:10] in form._words.value
    form.load()
    form.fields["name"].value = bad
    assert "<img src=x" not in form.sheet().html
    form.keep()
    assert "<img" not in form._status.value


def test_every_field_has_a_name_for_a_screen_reader(form):
    assert all(field.description for field in (form.file, form.replace, form.button, *form.fields.values()))


def test_the_form_shows_only_the_sizes_of_its_outline(form):
    form.file.value = demo_job("round_table_cold_shop")
    assert form.fields["diameter"].layout.display is None and form.fields["length"].layout.display == "none"
    assert "Diameter" in form.plain() and "Length" not in form.plain()


# ---- the file


def test_a_kept_job_reads_back_and_can_be_chosen(form, own):
    form.fields["name"].value = 'My "best" bench \\ 🪨'
    assert str(form.keep()).endswith("it reads back the same.")
    path = own / "my_best_bench.toml"
    assert read_job(path).entries == form.job.entries
    assert path in [value for _, value in form.file.options]


def test_a_file_that_is_there_stays_unless_the_box_is_ticked(form, own):
    form.keep()
    kept = (own / "garden_bench_top.toml").read_bytes()
    form.fields["length"].value = "6 ft"
    assert "is there already and was left as it is; tick the box" in str(form.keep())
    assert (own / "garden_bench_top.toml").read_bytes() == kept
    form.replace.value = True
    assert str(form.keep()).startswith("Kept in") and not form.replace.value
    assert (own / "garden_bench_top.toml").read_bytes() != kept
    assert [path.name for path in own.iterdir()] == ["garden_bench_top.toml"]


def test_a_name_with_an_unseen_sign_is_not_kept(form, own):
    form.fields["name"].value = "a\x07b"
    assert "signs that can be seen" in str(form.keep()) and not own_jobs()


def test_a_folder_that_cannot_be_made_is_said(form, tmp_path, monkeypatch):
    (tmp_path / "file").write_text("x")
    monkeypatch.setenv("SHOP_CALC_WORK", str(tmp_path / "file" / "made"))
    assert "nothing was written" in str(form.keep())


@pytest.mark.parametrize("name", ["../../etc/passwd", "C:\\x", "nul", ".", "/", "日本", "a" * 300, "COM1"])
def test_no_name_leaves_the_folder(own, name):
    stem = file_name(name).removesuffix(".toml")
    assert stem.isascii() and stem.replace("_", "").isalnum() and len(stem) <= 64
    assert stem not in ("nul", "com1")
    entries = {**read_job(demo_job("garden_bench_top")).entries, "name": name}
    assert save_job(entries).parent == own


def test_a_broken_file_of_ones_own_is_said(own):
    own.mkdir()
    (own / "broken.toml").write_text("format = [", encoding="utf-8")
    form = JobForm()
    form.file.value = own / "broken.toml"
    assert form.text.startswith("This file cannot be read:")


# ---- the maps


def test_the_dot_on_the_map_is_the_hour_of_the_plan(plan):
    inputs = plan.day.samples.inputs
    here = ready_by.ready_by(plan)(inputs.mix_temp_c, inputs.room.air_temp_c[0], inputs.thickness_m, 0.0)
    assert here.done_h + inputs.face_load_h == pytest.approx(plan.day.stage("last_steel").likely_to_h, abs=1e-9)


def test_warmer_is_earlier_all_over_the_map_and_the_dot_lies_on_it(plan):
    moved = ready_by.ready_by(plan)(15.0, 20.0, 0.0381, 0.0)
    answer = moved.shown.answer
    assert np.all(np.diff(answer, axis=0) < 0) and np.all(np.diff(answer, axis=1) < 0)
    column = [np.interp(68.0, ready_by.ROOMS_F, row) for row in answer]
    assert np.interp(59.0, ready_by.MIXES_F, column) == pytest.approx(moved.done_h, abs=0.02)


def test_the_prose_about_the_map_is_true(plan):
    model = ready_by.ready_by(plan)
    done = lambda mix_f, room_f, inches=1.5, mph=0.0: model(  # noqa: E731
        (mix_f - 32) / 1.8, (room_f - 32) / 1.8, inches * 0.0254, mph * 0.44704
    ).done_h
    assert 1.2 < done(60, 55) - done(60, 70) < 1.6 and done(86, 55) > 4.0
    assert 0 < done(60, 70, 3.0) - done(60, 70) < 0.25 and 0 < done(60, 70, mph=10) - done(60, 70) < 0.25
    assert 0.5 < done(60, 62) - done(60, 70) < 0.9
    assert done(50, 90, mph=10) < done(50, 90) - 0.1  # cold mortar, hot room: the wind warms it


@pytest.mark.parametrize("air_c", [11.0, 18.0, 25.0, 35.0, 5.0])
def test_the_map_of_covers_is_the_rule_itself(air_c):
    face_c = air_c - 1.5
    for rh in np.linspace(0.1, 1.0, 19):
        for wind in np.linspace(0.0, 8.0, 9):
            rate = float(menzel_rate_kg_m2_h(face_c, air_c, rh, moving_air(wind)))
            if abs(rate - defaults.si("face_amber")) < 1e-9 or abs(rh - defaults.si("cure_humidity_low")) < 1e-9:
                continue
            cover = pick_cover(rate, rate, air_c, air_c, rh, False)[0]
            assert (cover == "fabric") == bool(whole_job.cover_score(face_c, air_c, rh, wind) > 0)


def test_the_dot_on_the_map_of_covers_is_the_pick_of_the_plan():
    for name in demo_jobs():
        shown = make_plan(read_job(demo_job(name)))
        word = "damp fabric" if shown.cure.pick == "fabric" else "leave it open"
        assert whole_job.cover_map(shown).alt.endswith(f": {word}."), name


def test_the_block_answers_at_both_ends_of_every_slider(plan):
    block = Block(
        ready_by.ready_by(plan), ready_by.ready_words(plan),
        [slider("mix_temp_c", label="Mortar", value=60, low=50, high=86, unit="F"),
         slider("air_temp_c", label="Room", value=70, low=50, high=90, unit="F"),
         slider("thickness_m", label="Thickness", value=1.5, low=0.75, high=3, unit="in"),
         slider("wind_m_s", label="Moving air", value=0, low=0, high=15, unit="mph")],
        picture=ready_by.ready_map(plan),
    )  # fmt: skip
    start = block.text
    for key, row in block.rows.items():
        said = []
        low, high = row.ends
        for place in (low, high, low + 0.4 * (high - low)):  # wind of 15 mph ends where still air does, to the minute
            block.set(**{key: place})
            assert block.text.startswith("Last steel done about")
            said.append(block.text)
        assert len(set(said)) > 1
        block.reset()
    assert block.text == start


# ---- work and the bench


def test_the_work_by_hand(plan):
    assert person_hours(plan) == pytest.approx((20 + 0.580644 * (20 + 15 + 7 * 8) + 30) / 60, rel=1e-9)


def test_a_load_by_hand_and_whatever_is_typed():
    assert whole_job.load_band_h(5)[1] * 60 == pytest.approx(5 * 0.75 + 3)
    assert "above the band" in whole_job.timed("20 min", 5).alt and "Nothing measured" in whole_job.timed(..., 5).alt
    for typed in ("long", [3], "5 lb", 3j):
        assert isinstance(whole_job.timed(typed, 5), Said)


# ---- questions


def test_answers_of_questions_by_plain_arithmetic():
    inch = 0.0254
    pounds = sums.table_kg(84 * inch, 42 * inch, 2 * inch, 147 * 16.018463373960142) / 0.45359237
    assert pounds == pytest.approx(84 * 42 * 2 / 1728 * 147, rel=1e-6)
    assert sums.bags_back(25, 4 * 0.3048**3, 0.6 * 0.3048**3, 0.10) == 25 - 8
    assert sums.before_leaving_h(4.1, 3, 1 / 3, 0.5) == pytest.approx(2 / 3 + 4.6)
    assert sums.waiting_share(1.7, 2, 4) == pytest.approx(6.3 / 8)


@pytest.mark.parametrize("question", [q for q in questions.QUESTIONS if q.working], ids=lambda q: q.id)
def test_every_line_of_the_working_can_be_worked_out_again(question):
    numbers = numbers_for(question, "lab 3")[1]
    for step in filter(is_arithmetic, question.working(**numbers)):
        assert evaluate(step.formula, dict((s, v) for s, v, _ in step.inputs)) == pytest.approx(step.value, rel=1e-9)
