"""The shop sheet: every number is the plan's, text of a job stays text, black on white, nothing from the net."""

import re
from functools import cache
from html.parser import HTMLParser

import pytest

from shop_calc import defaults
from shop_calc.lesson.sheet import sheet_html, show_sheet, words
from shop_calc.lesson.sheet.after_facts import said_by_the_table
from shop_calc.lesson.sheet.build import sheet_body
from shop_calc.lesson.sheet.day_facts import clock_of_the_day
from shop_calc.lesson.sheet.facts import sheet_facts, strings
from shop_calc.lesson.sheet.fit import MIX_SCALES, SCALES, page_scales
from shop_calc.science.evaporation import menzel_rate_kg_m2_h
from shop_calc.trade.jobs.job import check_job, demo_jobs, read_job
from shop_calc.trade.plan import make_plan
from shop_calc.trade.timeline.hands import person_hours
from shop_calc.trade.timeline.ruler import ruler
from shop_calc.trade.timeline.wind_limit import wind_at_rate_m_s, wind_lines
from shop_calc.units import parse, show

JOBS = sorted(demo_jobs())
NUMBER = re.compile(r"\d+(?:[.,:/]\d+)*")
HOSTILE = (
    "<script>alert('x')</script> & \"quotes\" <b>bold</b> </style></section>",
    "\U0001faa8 \U0001f469\u200d\U0001f527 emoji",
    "\u05e9\u05d5\u05dc\u05d7\u05df \u05d1\u05d8\u05d5\u05df \u202e turned round",
    "{{ 7 * 7 }} {% raise %} \x07 bell",
    "long " * 60,
)


@cache
def planned(name):
    return make_plan(read_job(demo_jobs()[name]))


@cache
def facts_of(name):
    return sheet_facts(planned(name))


@cache
def page_of(name):
    return Page(sheet_html(planned(name)))


class Page(HTMLParser):
    """Text, drawings and tags of a page; a tag that is never closed, or closed twice, is a fault."""

    EMPTY = frozenset({"meta", "col", "br", "path", "rect", "line"})

    def __init__(self, html):
        super().__init__(convert_charrefs=True)
        self.html, self.text, self.drawn, self.tags, self.open, self.style = html, [], [], [], [], []
        self.feed(html)
        self.close()
        assert self.open == []

    def handle_starttag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))
        if tag not in self.EMPTY:
            self.open.append(tag)

    def handle_startendtag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))

    def handle_endtag(self, tag):
        assert self.open.pop() == tag

    def handle_data(self, data):
        if "style" in self.open:
            self.style.append(data)
        elif "svg" in self.open:
            self.drawn.append(data)
        elif "title" not in self.open:
            self.text.append(data)

    @property
    def words(self):
        return " ".join(" ".join(self.text).split())


def numbers(texts):
    return {token for text in texts for token in NUMBER.findall(text)}


# ---- every number


@pytest.mark.parametrize("name", JOBS)
def test_no_number_stands_on_the_sheet_that_is_not_in_the_facts(name):
    known = numbers(strings(facts_of(name))) | words.NUMBERS
    known |= numbers([*words.DO_NOT, *words.IF_THEN.values(), *words.HANDS.values(), *words.SHORT_CAUTION.values()])
    strays = numbers(page_of(name).text) - known
    assert strays == set()


def test_the_fixed_words_hold_no_number_of_a_plan():
    fixed = [*words.DO_NOT, *words.IF_THEN.values(), *words.HANDS.values(), *words.SHORT_CAUTION.values(), words.FOOT]
    fixed += [text for pair in words.PROTECT for text in pair]
    assert numbers(fixed) <= words.NUMBERS


@pytest.mark.parametrize("name", JOBS)
def test_no_number_stands_in_a_drawing_that_is_not_the_plans(name):
    plan = planned(name)
    day, layers = plan.day, plan.layers
    lengths = [edge.length_m for edge in plan.piece.outline.edges]
    lengths += [*plan.piece.outline.box_m, layers.face_thickness_m, layers.base_depth_m]
    known = numbers(show(size, "length", system) for size in lengths for system in ("us", "si"))
    known |= {str(count) for count in range(1, len(plan.piece.cutouts) + 1)}
    for stage in day.stages:
        for hour in (stage.look_from_h, stage.over_by_h, stage.deadline_h):
            known |= set() if hour is None else {f"{day.clock(hour):%H:%M}"}
    known |= {str(day.clock(hour).hour) for hour, _ in clock_of_the_day(day)[1]}
    assert numbers(page_of(name).drawn) - known == set()


@pytest.mark.parametrize("name", JOBS)
def test_windows_are_those_of_the_plan_to_the_minute(name):
    day = planned(name).day
    for row, stage in zip(facts_of(name)["day"]["stages"], day.stages, strict=True):
        ends = [f"{day.clock(hour):%H:%M}" for hour in (stage.likely_from_h, stage.likely_to_h)]
        assert row["likely"] == "–".join(dict.fromkeys(ends))
        tool = planned(name).cure.picked.title.lower() if stage.key == "stop" else stage.tool
        assert (row["title"], row["tool"].lower(), row["cue"]) == (stage.title, tool.lower(), stage.cue)
        assert row["likely"] in page_of(name).words


@pytest.mark.parametrize("name", JOBS)
def test_bars_on_the_lanes_lie_where_the_hours_are(name):
    day = planned(name).day
    axis, _ = clock_of_the_day(day)
    per_h = (axis.width - 2 * axis.spare) / (axis.to_h - axis.from_h)
    for row, stage in zip(facts_of(name)["day"]["stages"], day.stages, strict=True):
        for mark, start_h, end_h in (("likely", stage.likely_from_h, stage.likely_to_h),
                                     ("band", stage.look_from_h, stage.over_by_h)):  # fmt: skip
            rect = re.search(rf'<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)"[^>]*class="{mark}"', row["lane"])
            left, wide = map(float, rect.groups())
            assert axis.from_h + (left - axis.spare) / per_h == pytest.approx(start_h, abs=0.02)
            if wide > 3.5:
                assert wide / per_h == pytest.approx(end_h - start_h, abs=0.02)
        assert ('class="deadline"' in row["lane"]) == (stage.deadline_h is not None)


@pytest.mark.parametrize("name", JOBS)
def test_a_lane_says_in_words_what_it_shows(name):
    lanes = [attrs["aria-label"] for tag, attrs in page_of(name).tags if tag == "svg" and attrs.get("class") == "lane"]
    for said, row in zip(lanes, facts_of(name)["day"]["stages"], strict=True):
        assert all(row[key] in said for key in ("title", "likely", "look", "over", "deadline"))


@pytest.mark.parametrize("name", JOBS)
def test_masses_of_all_loads_add_up_to_the_batch(name):
    plan, weigh = planned(name), facts_of(name)["weigh"]
    found = {}
    for step in weigh["steps"]:
        for row in step["rows"]:
            for group, mass in zip(weigh["groups"], row["masses"], strict=True):
                if mass:
                    kg = parse(mass["si"], "mass")
                    assert parse(mass["us"], "mass") == pytest.approx(kg, rel=0.006)
                    found[row["name"]] = found.get(row["name"], 0.0) + kg * len(group["numbers"])
    water = sum(found.pop(key, 0.0) for key in ("water", "water held back, at most", "ice", "water back to the face"))
    assert water == pytest.approx(plan.batch.ingredient("water").total_kg, rel=0.01)
    assert found.pop("set aside, covered", plan.batch.set_aside_kg) == pytest.approx(
        sum(load.set_aside_kg for load in plan.batch.loads if load.base_kg) or plan.batch.set_aside_kg, rel=0.006
    )
    alone = sum(load.face_kg for load in plan.batch.loads if not load.base_kg)
    assert found.pop("all of it, covered", 0.0) == pytest.approx(alone, rel=0.006)
    for each in plan.batch.ingredients:
        if each.name != "water":
            assert found.pop(each.name) == pytest.approx(each.total_kg, rel=0.01), each.name
    assert found == {}


@pytest.mark.parametrize("name", JOBS)
def test_every_load_has_its_tick_its_time_and_its_blanks(name):
    plan, weigh = planned(name), facts_of(name)["weigh"]
    told = sorted(int(number) for group in weigh["groups"] for number in group["numbers"])
    assert told == [load.number for load in plan.batch.loads]
    assert [row["water"] for row in weigh["loads"]] == [
        f"{plan.day.clock(load.water_in_offset_h):%H:%M}" for load in plan.batch.loads
    ]
    ticks = sum(attrs.get("class") == "tick" for tag, attrs in page_of(name).tags if tag == "span")
    none = [{"masses": [1] * len(weigh["groups"])}]  # a step that weighs nothing is ticked all the same
    rows = [row["masses"] for step in weigh["steps"] for row in step["rows"] or none]
    wanted = sum(len(g["numbers"]) for masses in rows for g, mass in zip(weigh["groups"], masses, strict=True) if mass)
    assert ticks == wanted


@pytest.mark.parametrize("name", JOBS)
def test_steps_at_the_mixer_stand_in_order_with_their_cautions(name):
    order, steps = planned(name).batch.order, facts_of(name)["weigh"]["steps"]
    assert [step["text"] for step in steps] == [step.text for step in order]
    for step, shown in zip(order, steps, strict=True):
        assert bool(step.caution) == bool(shown["caution"])
    said = page_of(name).words
    places = [said.index(f"{step['number']} {step['text']}") for step in steps]
    assert places == sorted(places)


@pytest.mark.parametrize("name", JOBS)
def test_the_ruler_is_that_of_the_looks(name):
    day, rows = planned(name).day, facts_of(name)["ruler"]
    full = {f"{day.clock(row.seen_h):%H:%M}": row for row in ruler(day)}
    assert 3 <= len(rows) <= 9
    for row in rows:
        wanted = full[row["seen"]]
        assert row["look"] == f"{day.clock(wanted.look_from_h):%H:%M}"
        assert row["likely"] == f"{day.clock(wanted.likely_h):%H:%M}"


@pytest.mark.parametrize("name", JOBS)
def test_wind_lines_are_where_the_evaporation_reaches_its_limits(name):
    plan = planned(name)
    lines, weather = wind_lines(plan.day, plan.drying, plan.cure.before), facts_of(name)["weather"]
    for key, row, wind in (("care", "face_amber", lines.care_m_s), ("protect", "face_red", lines.protect_m_s)):
        if weather[key] is None:
            continue
        assert parse(weather[key]["si"], "speed") == pytest.approx(wind, rel=0.006)
        rate = menzel_rate_kg_m2_h(lines.surface_temp_c, lines.air_temp_c, lines.rh_fraction, wind)
        assert rate == pytest.approx(defaults.si(row), rel=1e-6)
    assert (weather["reach"] == "over") == (plan.drying.level == "red")


def test_no_wind_dries_a_face_under_air_that_takes_nothing():
    assert wind_at_rate_m_s(0.5, 10.0, 25.0, 1.0) == float("inf")
    assert wind_at_rate_m_s(0.05, 35.0, 35.0, 0.2) < 0  # still air takes more than that


@pytest.mark.parametrize("name", JOBS)
def test_sizes_mass_and_openings_are_the_plans_in_both_systems(name):
    plan, piece, said = planned(name), facts_of(name)["piece"], page_of(name).words
    for key, value, kind in (("thickness", plan.layers.thickness_m, "length"), ("top", plan.layers.top_area_m2, "area"),
                             ("faced_length", plan.layers.exposed_length_m, "length"),
                             ("mass", plan.handling.lift.mass_kg, "mass")):  # fmt: skip
        assert (piece[key]["us"], piece[key]["si"]) == (show(value, kind, "us"), show(value, kind, "si"))
        assert f"{piece[key]['us']} {piece[key]['si']}" in said
    for hole, row in zip(plan.piece.cutouts, plan.job.cutouts, strict=True):
        across, deep = row["at"]
        assert f"{hole.name} " in said
        assert show(across, "length", "si") in said and show(deep, "length", "si") in said


@pytest.mark.parametrize("name", JOBS)
def test_dates_after_the_trowel_are_never_earlier_than_the_plan(name):
    plan, after = planned(name), facts_of(name)["after"]
    for step in plan.finish.steps:
        if step.key == "move":
            continue
        shown = next(row["when"] for row in after["steps"] if row["key"] == step.key)
        found = re.fullmatch(r"\w{3} (\d+) \w{3} (\d\d):(\d\d)", shown)
        day, hour, minute = map(int, found.groups())
        gap_h = (day - plan.day.water_in.day) % 31 * 24 + hour + minute / 60 - plan.day.water_in.hour
        assert -1e-6 <= gap_h - plan.day.water_in.minute / 60 - step.from_h <= 0.26
    free = [carry for carry in plan.handling.carries if carry.earliest_h is not None]
    assert after["carries"][0]["ways"].startswith(free[0].title[0].lower() + free[0].title[1:])
    assert ("Not at all" in [row["when"] for row in after["carries"]]) == (len(free) < len(plan.handling.carries))


@pytest.mark.parametrize("name", JOBS)
def test_nothing_grave_that_the_plan_says_is_left_off_the_sheet(name):
    plan, said = planned(name), page_of(name).words
    for line in plan.advice:
        if line.level != "note":
            assert said_by_the_table(plan, line) or line.text in said, line.text
    for stage in plan.day.stages:
        assert stage.words.safety in said


def test_a_plan_that_must_not_be_poured_says_so_at_the_top():
    entries = _entries("garden_bench_top")
    entries["room"][1]["air"] = "25 F"
    plan = make_plan(check_job(entries))
    stops = [line.text for line in plan.advice if line.level == "stop"]
    said = Page(sheet_html(plan)).words
    assert stops
    assert said.index("Do not pour like this") < said.index(stops[0]) < said.index("likely window")


def test_a_plan_by_the_shops_own_log_says_so():
    log = defaults.data_folder() / "logs" / "eight_pours.csv"
    plan = make_plan(read_job(demo_jobs()["garden_bench_top"]), log)
    page, facts = Page(sheet_html(plan)), sheet_facts(plan)
    count = max(plan.log.face.pour_count, plan.log.base.pour_count)
    assert re.search(rf"Clock by eight_pours.csv ?, {count} pours", page.words)
    low, value, high = plan.log.face.bands["set_time_initial"]
    found = re.search(r"initial set of the mortar.*?: ([\d.]+) h, ([\d.]+) to ([\d.]+) \(your log\)", page.words)
    assert [float(text) for text in found.groups()] == pytest.approx([value, low, high], abs=0.006)
    stage = plan.day.stage("strip")
    assert facts["day"]["stages"][4]["look"] == f"{plan.day.clock(stage.look_from_h):%H:%M}"
    assert "your log" not in page_of("garden_bench_top").words


# ---- text of a job


def _entries(name):
    import copy
    import tomllib

    return copy.deepcopy(tomllib.loads(demo_jobs()[name].read_text(encoding="utf-8")))


@pytest.mark.parametrize("hostile", HOSTILE)
def test_names_from_a_job_stay_names(hostile):
    entries = _entries("sink_top_hot_day")
    entries["name"] = hostile[:300]
    entries["piece"]["cutout"][0]["name"] = hostile[:60]
    plan = make_plan(check_job(entries))
    page = Page(sheet_html(plan))  # fails when a tag of the name opened or closed anything
    clean = " ".join("".join(" " if sign < " " else sign for sign in plan.job.name).split())
    assert page.words.count(clean) >= 2  # once on each page
    assert all(tag != "script" for tag, _ in page.tags)
    assert "\x07" not in page.html and "49" not in numbers(page.text) - numbers(strings(sheet_facts(plan)))
    parents = re.findall(r"<(\w+)>" + re.escape(_escaped(clean)), page.html)
    assert len(parents) >= 2 and set(parents) == {"bdi"}  # whichever way it is written, it turns nothing around it


def _escaped(text):
    from markupsafe import escape

    return str(escape(text))


# ---- paper


@pytest.mark.parametrize("name", JOBS)
def test_the_page_asks_for_nothing_from_anywhere(name):
    html = page_of(name).html
    assert not re.search(r"https?:|//|@import|src=|href=", html)
    assert set(re.findall(r"url\(([^)]*)\)", html)) <= {"#shop-sheet-hatch"}
    assert len(html.encode()) <= 300_000


def _contrast(one, other):
    def light(colour):
        short = colour.lstrip("#")
        full = "".join(2 * sign for sign in short) if len(short) == 3 else short
        parts = [int(full[place : place + 2], 16) / 255 for place in (0, 2, 4)]
        red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue

    high, low = sorted((light(one), light(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def test_it_is_black_on_white_and_type_on_a_lane_is_read_as_well():
    page = page_of("garden_bench_top")
    style = "".join(page.style)
    assert set(re.findall(r"(?<![-\w])color: ([^;}]+)", style)) == {"#000"}
    assert set(re.findall(r"background: ([^;}]+)", style)) <= {"#fff", "#ddd"}  # the grey lies round it on a screen
    colours = {attrs[key] for tag, attrs in page.tags for key in ("fill", "stroke") if key in attrs}
    greys = {colour for colour in colours if colour.startswith("#")}
    assert all(len(set(colour.lstrip("#")[:3])) <= 2 for colour in greys) and greys == {"#000", "#fff", "#e4e4e4"}
    assert _contrast("#000", "#e4e4e4") > 7  # WCAG 2.2, 1.4.6: enhanced contrast


def test_it_reads_from_top_to_bottom():
    said = page_of("garden_bench_top").words
    order = (
        "first water", "lb", "likely window", "Pack the base", "Stop, cover", "Strip sign seen at",
        "Lines not to cross", "✕ No water", "On you", "The mix", "step", "1 water 08:00",
        "Cut and buy", "After the trowel", "Notes", "Assumed",
    )  # fmt: skip
    places = [said.index(text) for text in order]
    assert places == sorted(places)
    heads = [tag for tag, _ in page_of("garden_bench_top").tags if tag in ("h1", "h2")]
    assert heads[0] == "h1" and heads.count("h1") == 2


def test_no_type_on_the_first_page_is_smaller_than_what_is_read_at_arms_length():
    style = "".join(page_of("garden_bench_top").style)
    sizes = {rule.split("{")[0].strip(): float(size) for rule in re.findall(r"[^{}]+\{[^}]*", style)
             for size in re.findall(r"font-size: ([\d.]+)pt", rule)}  # fmt: skip
    assert sizes[".shop-sheet .day .likely"] >= 16 and sizes[".shop-sheet .day .cue"] >= 10.5
    of_the_day = re.compile(r"\.(day|ruler|three|todo|holes|air|piece)\b")
    assert min(size for name, size in sizes.items() if of_the_day.search(name)) >= 8.5
    assert sizes[".shop-sheet .weigh .mass"] >= 11.5


def test_more_to_say_is_set_smaller_but_never_too_small():
    assert page_scales(facts_of("garden_bench_top")) == (1.0, 1.0)
    entries = _entries("garden_bench_top")
    entries["mixer"]["usable"] = "3 L"
    entries["name"] = "x " * 150
    scales = page_scales(sheet_facts(make_plan(check_job(entries))))
    assert SCALES[-1] <= scales[0] < 1 and MIX_SCALES[-1] <= scales[1] < 1


def test_an_unknown_paper_is_refused_and_a_known_one_stands_on_the_page():
    assert "size: A4" in sheet_html(planned("garden_bench_top"), "a4")
    assert "size:" not in sheet_html(planned("garden_bench_top")).split("</style>")[0].replace("box-sizing:", "")
    with pytest.raises(ValueError, match="letter, a4"):
        sheet_html(planned("garden_bench_top"), "foolscap")


# ---- in a notebook


def test_in_a_notebook_it_changes_nothing_but_itself_and_says_itself_in_text():
    shown = show_sheet(planned("garden_bench_top"))._repr_mimebundle_()
    assert set(shown) == {"text/html", "text/plain"}
    assert "<html" not in shown["text/html"] and "<script" not in shown["text/html"]
    style = re.search(r"<style>(.*?)</style>", shown["text/html"], re.S).group(1)
    plain = re.sub(r"/\*.*?\*/|@(?:media print|container)[^{]*\{", "", style, flags=re.S)
    for selectors in re.findall(r"([^{}]+)\{", plain):
        assert all(part.strip().startswith(".shop-sheet") for part in selectors.split(",")), selectors
    lines = shown["text/plain"].splitlines()
    assert lines[0] == "Shop sheet, 2 pages: Garden bench top, Monday 4 May 2026, first water 08:00."
    assert len(lines) == 4
    assert sheet_body(planned("garden_bench_top"), inline=True) == shown["text/html"]


@pytest.mark.parametrize("name", JOBS)
def test_the_work_of_the_hands_is_that_of_the_plan(name):
    plan = planned(name)
    work = f"Work {show(person_hours(plan), 'duration')} in all, {plan.job.day['hands']:.0f} at hand"
    assert work in page_of(name).words
