"""The job file: what is read, and what is said about every entry that cannot be."""

import copy
import tomllib
from datetime import datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from shop_calc import units
from shop_calc.trade.jobs.job import check_job, demo_job, demo_jobs, parse_job, read_job
from shop_calc.trade.jobs.job_fields import FIELDS, SIZES
from shop_calc.trade.plan import make_plan
from shop_calc.trade.problems import Problems

BENCH = tomllib.loads(demo_job("garden_bench_top").read_text(encoding="utf-8"))


def lines(entries):
    with pytest.raises(Problems) as error:
        make_plan(check_job(entries))
    return error.value.lines


def changed(**places):
    """The bench with some entries changed; piece__length="5 ft" changes [piece] length, None takes it out."""
    entries = copy.deepcopy(BENCH)
    for place, value in places.items():
        *way, last = place.split("__")
        table = entries
        for step in way:
            table = table.setdefault(step, {})
            table = table[0] if isinstance(table, list) else table
        if value is None:
            table.pop(last, None)
        else:
            table[last] = value
    return entries


@pytest.mark.parametrize("name", demo_jobs())
def test_demo_jobs_are_read_and_planned_and_say_that_they_are_invented(name):
    assert "invented" in demo_job(name).read_text(encoding="utf-8").splitlines()[0]
    assert make_plan(read_job(demo_job(name))).day.stages


def test_there_are_demo_jobs_of_every_sort():
    jobs = [read_job(path) for path in demo_jobs().values()]
    assert {job.piece["outline"] for job in jobs} >= {"rectangle", "circle", "L"}
    assert any(job.cutouts for job in jobs)
    assert any("bag" in str(job.mix["recipe"]) for job in jobs)
    assert max(len(make_plan(job).batch.loads) for job in jobs) >= 4


def test_entries_arrive_in_si():
    job = read_job(demo_job("garden_bench_top"))
    assert job.piece["length"] == pytest.approx(5 * 12 * 0.0254)
    assert job.piece["thickness"] == pytest.approx(1.5 * 0.0254)
    assert job.day["wanted_mix_temp"] == pytest.approx((60 - 32) / 1.8)
    assert job.rooms[0]["humidity"] == 0.5
    assert job.mixer["minutes_per_load"] == pytest.approx(1 / 3)
    assert job.day["water_in"] == datetime(2026, 5, 4, 8)


def test_us_and_si_entries_give_the_same_plan():
    metric = changed(
        piece__length="1524 mm", piece__width="38.1 cm", piece__thickness="38.1 mm", layers__face="6.35 mm",
        materials__powder_temp="21.11111111 °C", day__wanted_mix_temp="15.55555556 °C", room__air="21.11111111 °C",
        room__wind="0 km/h",
    )  # fmt: skip
    one, two = make_plan(check_job(BENCH)), make_plan(check_job(metric))
    assert two.batch.set_aside_kg == pytest.approx(one.batch.set_aside_kg, rel=1e-7)
    for a, b in zip(one.day.stages, two.day.stages, strict=True):
        assert b.likely_from_h == pytest.approx(a.likely_from_h, abs=1e-6)


@pytest.mark.parametrize(
    ("places", "words"),
    [
        ({"format": 2}, "format: 2 given; it must be 1"),
        ({"format": None}, "format: nothing given"),
        ({"name": "  "}, "name: "),
        ({"piece": None}, "[piece]: nothing given"),
        ({"piece": 3}, "[piece]: 3 given; it must be a part of the file"),
        ({"room": None}, "[[room]]: nothing given"),
        ({"room": []}, "[[room]]: nothing given"),
        ({"roof": {}}, "roof: no such entry; did you mean 'room'?"),
        ({"piece__lenght": "5 ft"}, "piece.lenght: no such entry; did you mean 'length'?"),
        ({"piece__length": "5"}, "piece.length: '5' given; it has no unit"),
        ({"piece__length": 5}, "piece.length: 5 given"),
        ({"piece__length": "11/4"}, "2-3/4 or 1-1/4"),
        ({"piece__length": "5 lb"}, "'lb' is a unit of mass"),
        (
            {"piece__length": "500 ft"},
            "piece.length: '500 ft' given; it must be at least 1 15/16\" (50 mm) and at most",
        ),
        ({"piece__length": None}, "piece.length: nothing given; 'rectangle' needs length, width"),
        ({"piece__diameter": "3 ft"}, "a rectangle has no such size"),
        ({"piece__outline": "kidney"}, "piece.outline: 'kidney' given; it must be one of rectangle"),
        ({"piece__thickness": None}, "piece.thickness: nothing given"),
        ({"piece__exposed": ["front", "top"]}, "'top' given; the edges are front, right, back, left"),
        ({"piece__exposed": "most"}, "a list of edge names"),
        ({"piece__use": "boat"}, "piece.use: 'boat' given"),
        ({"piece__corner_radius": "9 in"}, "corner radius"),
        ({"piece__notch_at": "9 in"}, "a rectangle has no such size"),
        ({"layers__face": "1 1/2 in"}, "less than the thickness"),
        ({"layers__face_allowance": "25"}, "layers.face_allowance: '25' given"),
        ({"mix__recipe": "grandmother's"}, "grandmother's"),
        ({"mix__stone": "9 kg per kg binder"}, "stone"),
        ({"mix__stone": "1.2"}, "mix.stone: '1.2' given"),
        ({"mix__stone": "1.2 kg per kg bag"}, "mix.stone"),
        ({"mix__coarse_sand": "3 ft"}, "mix.coarse_sand: '3 ft' given"),
        ({"day__water_in": "8:00"}, "day.water_in: '8:00' given; it must be date and time"),
        ({"day__hands": 0}, "day.hands: 0 given; it must be at least 1"),
        ({"day__hands": 1.5}, "day.hands: 1.5 given; it must be a whole number"),
        ({"day__hands": True}, "day.hands: true given"),
        ({"day__wanted_mix_temp": "60"}, "it has no unit"),
        ({"day__wanted_mix_temp": "200 F"}, "at most 95 °F (35 °C)"),
        ({"room__humidity": 0.5}, "percent, from 1 to 100"),
        ({"room__humidity": 150}, "percent, from 1 to 100"),
        ({"room__air": "200 F"}, "room 1.air: '200 F' given"),
        ({"room__wind": "-3 mph"}, "room 1.wind: '-3 mph' given"),
        ({"room__from": datetime(2026, 5, 4, 9)}, "must start at or before the first water"),
        ({"mixer__vessel": "spoon"}, "mixer.vessel: 'spoon' given"),
        ({"mixer__usable": "12"}, "it has no unit"),
        ({"mixer__minutes_per_load": 0}, "mixer.minutes_per_load: 0 given"),
        ({"materials__stone_moisture": "2"}, "materials.stone_moisture: '2' given"),
    ],
)
def test_each_bad_entry_gets_one_clear_line(places, words):
    found = lines(changed(**places))
    assert any(words in line for line in found), found
    assert all("Traceback" not in line and len(line) < 400 for line in found)


def test_a_cut_out_outside_and_crossing_corners_are_named():
    hole = {"shape": "circle", "diameter": "4 in", "at": ["60 in", "4 in"], "name": "tap"}
    assert any("'tap'" in line and "inside the piece" in line for line in lines(changed(piece__cutout=[hole])))
    bow_tie = {"outline": "polygon", "points": [["0 in", "0 in"], ["40 in", "20 in"], ["40 in", "0 in"], ["0 in", "20 in"]],
               "thickness": "1.5 in"}  # fmt: skip
    assert any("cross" in line for line in lines(changed(piece=bow_tie)))


def test_an_opening_may_show_some_of_its_edges():
    hole = {"shape": "rectangle", "length": "12 in", "width": "6 in", "at": ["30 in", "7 in"]}
    face = {}
    for exposed in (False, ["front"], ["front", "back"], True):
        job = check_job(changed(piece__cutout=[hole | {"exposed": exposed}]))
        face[str(exposed)] = make_plan(job).layers.face_m3
    assert list(face.values()) == sorted(face.values()) and len(set(face.values())) == 4
    assert any("true, false or a list" in line for line in lines(changed(piece__cutout=[hole | {"exposed": 3}])))


def test_round_corners_take_concrete_away():
    square, rounded = (make_plan(check_job(changed(piece__corner_radius=radius))) for radius in (None, "3 in"))
    assert square.layers.total_m3 - rounded.layers.total_m3 == pytest.approx(
        (4 - 3.14159265) * 0.0762**2 * 0.0381, rel=1e-4
    )


def test_several_problems_are_said_together():
    found = lines(changed(piece__length="5", day__hands=0, room__humidity=0.5, mix__recipe=""))
    assert len(found) == 4


def test_geometry_and_recipe_are_both_checked_before_anything_is_said():
    found = lines(changed(layers__face="1 1/2 in", mix__recipe="no such recipe"))
    assert len(found) == 2


def test_rooms_must_rise():
    entries = copy.deepcopy(BENCH)
    entries["room"][1]["from"] = entries["room"][0]["from"]
    assert any("rows must rise in time" in line for line in lines(entries))


def test_a_time_zone_is_refused():
    text = demo_job("garden_bench_top").read_text(encoding="utf-8").replace("water_in = 2026-05-04T08:00:00",
                                                                            "water_in = 2026-05-04T08:00:00Z")  # fmt: skip
    with pytest.raises(Problems, match="without a time zone"):
        parse_job(text)


@pytest.mark.parametrize("text", ["length = 5 ft", "[[[", "\x00", "a = " + "[" * 2000])
def test_what_is_no_toml_is_said_in_one_line(text):
    with pytest.raises(Problems, match="job file"):
        parse_job(text)


def test_files_that_cannot_be_read_are_named(tmp_path):
    for make, words in (
        (lambda p: None, "no such file"),
        (lambda p: p.mkdir(), "folder"),
        (lambda p: p.write_bytes(b"\xff\xfe\x00"), "UTF-8"),
        (lambda p: p.write_text("#" * 300_000), "at most 200,000 bytes"),
    ):
        path = tmp_path / f"job{len(list(tmp_path.iterdir()))}.toml"
        make(path)
        with pytest.raises(Problems, match=words):
            read_job(path)


def test_a_byte_order_mark_does_no_harm(tmp_path):
    path = tmp_path / "job.toml"
    path.write_bytes(b"\xef\xbb\xbf" + demo_job("garden_bench_top").read_bytes())
    assert read_job(path).name == "Garden bench top"


def test_what_was_left_out_is_known():
    job = read_job(demo_job("counter_worked_example"))
    assert "day.wanted_mix_temp" in job.assumed
    assert job.materials["stone_temp"] == job.materials["sand_temp"] == job.materials["powder_temp"]


def test_every_field_has_words_and_every_outline_its_sizes():
    for fields in FIELDS.values():
        assert all(field.words and (not field.row or field.kind) for field in fields)
    names = {field.name for field in FIELDS["piece"]}
    assert all(set(sizes) <= names for sizes in SIZES.values())


_LEAF = st.one_of(st.none(), st.booleans(), st.integers(), st.floats(), st.text(max_size=20), st.datetimes(),
                  st.lists(st.text(max_size=5), max_size=3))  # fmt: skip


@settings(max_examples=4 * settings().max_examples)
@given(data=st.data())
def test_any_value_anywhere_gives_a_plan_or_clear_lines(data):
    section = data.draw(st.sampled_from([name for name in FIELDS if "." not in name]))
    field = data.draw(st.sampled_from([field.name for field in FIELDS[section]]))
    entries = changed(**{f"{section}__{field}": data.draw(_LEAF)})
    try:
        check_job(entries)
    except Problems as error:
        assert error.lines and all(line.strip() for line in error.lines)


@settings(max_examples=2 * settings().max_examples)
@given(st.recursive(_LEAF, lambda inner: st.dictionaries(st.text(max_size=6), inner, max_size=3), max_leaves=6))
def test_any_table_gives_clear_lines(value):
    entries = value if isinstance(value, dict) else {"piece": value}
    with pytest.raises(Problems):
        check_job(entries)


@given(inches=st.integers(8, 400), sixteenths=st.integers(0, 15))
def test_sizes_come_back_as_written(inches, sixteenths):
    job = check_job(changed(piece__length=f"{inches} {sixteenths}/16 in"))
    assert job.piece["length"] == pytest.approx(units.convert(inches + sixteenths / 16, "in", "m"))
