"""The whole chain: the worked job from a file, the working re-evaluated, the print, the commands."""

import csv
import re
import subprocess
import sys
from pathlib import Path

import pytest
from demo_plans import NAMES, demo_plan, demo_plans
from working_eval import evaluate

from shop_calc import defaults, units
from shop_calc.__main__ import main
from shop_calc.trade.advice import LEVELS
from shop_calc.trade.explain import explain
from shop_calc.trade.jobs.job import demo_job, parse_job
from shop_calc.trade.plan import make_plan
from shop_calc.trade.report import report

LB = 0.45359237
FT3 = 0.3048**3


@pytest.mark.parametrize(
    ("of", "expected", "tolerance", "source"),
    [
        # By hand: 96 x 25.5 x 1.5 in, face 1/4 in on front and both ends, 15 % and 5 % extra; all derived.
        (lambda plan: plan.layers.total_m3 / FT3, 2.125, 0.0005, "GE-1a"),
        (lambda plan: plan.layers.core_m3 / 0.0254**3, 3014.22, 0.01, "GE-1b"),
        (lambda plan: plan.layers.face_m3 / 0.0254**3, 657.78, 0.01, "GE-1c"),
        (lambda plan: 100 * LB * plan.mix.mortar_m3 / FT3, 1.8226, 0.0005, "DM-1, yield per 100 lb binder"),
        (lambda plan: plan.mix.phi, 0.6261, 0.0001, "DM-4b"),
        (lambda plan: plan.batch.mortar_m3 / FT3, 1.5845, 0.0005, "JOB-1a"),
        (lambda plan: plan.batch.set_aside_kg / LB, 57.94, 0.02, "JOB-1b"),
        (lambda plan: plan.batch.ingredient("portland cement").total_kg / LB, 69.55, 0.01, "JOB-1c"),
        (lambda plan: plan.batch.ingredient("ground-glass pozzolan").total_kg / LB, 17.39, 0.01, "JOB-1c"),
        (lambda plan: plan.batch.ingredient("fine silica sand").total_kg / LB, 86.93, 0.01, "JOB-1c"),
        (lambda plan: plan.batch.ingredient("water").total_kg / LB, 24.03, 0.01, "JOB-1c"),
        (lambda plan: plan.batch.ingredient("coarse sand").total_kg / LB, 37.75, 0.01, "JOB-1d"),
        (lambda plan: plan.batch.ingredient("stone 3/8 in").total_kg / LB, 75.50, 0.01, "JOB-1d"),
        (lambda plan: plan.batch.mixed_kg / LB, 323.91, 0.02, "JOB-1e"),
        (lambda plan: plan.batch.mixed_m3 / FT3, 2.2693, 0.0005, "JOB-1e"),
        (lambda plan: plan.batch.mortar_saved_fraction, 0.302, 0.001, "JOB-1f"),
    ],
)
def test_the_worked_job_from_a_file(of, expected, tolerance, source):
    assert of(demo_plan("counter_worked_example")) == pytest.approx(expected, abs=tolerance), source


@pytest.mark.parametrize("name", NAMES)
def test_every_formula_of_the_working_gives_its_value(name):
    checked = 0
    for step in demo_plan(name).working:
        if step.formula.startswith("by "):
            continue
        again = evaluate(step.formula, {symbol: value for symbol, value, _ in step.inputs})
        assert again == pytest.approx(step.value, rel=1e-9, abs=1e-12), step.name
        checked += 1
    assert checked > 40


@pytest.mark.parametrize("name", NAMES)
def test_every_line_of_the_working_has_name_words_mark_and_source(name):
    steps = demo_plan(name).working
    for step in steps:
        assert step.words and step.source and step.mark, step.name
        assert explain(steps, step.name), step.name
    names = [step.name for step in steps]
    assert len(set(names)) == len(names)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("system", ["us", "si", "both"])
def test_the_print_has_everything_and_fits_the_page(name, system):
    plan = demo_plan(name)
    text = report(plan, system)
    assert plan.job.name in text
    for stage in plan.day.stages:
        title = "Stop: " if stage.key == "stop" else stage.title  # the cover that the night wants stands there
        assert title in text and f"{plan.day.clock(stage.likely_from_h):%H:%M}" in text
    for load in plan.batch.loads:
        for line in load.lines:
            assert line.ingredient in text
            shown = units.show(line.first_kg if line.held_back_kg else line.mass_kg, "mass", system)
            assert shown in text
    for choice in plan.cure.choices:
        assert choice.title in text
    for carry in plan.handling.carries:
        assert " ".join(carry.title.split()) in " ".join(text.split())
    for step in plan.finish.steps:
        assert units.one_system(step.work, system) in " ".join(text.split())
    flat = " ".join(text.split())
    for advice in plan.advice:
        assert units.one_system(" ".join(advice.text.split()), system) in flat
    assert max(len(line) for line in text.splitlines()) <= 120
    assert "nan" not in text.lower().replace("finance", "")


@pytest.mark.parametrize("name", NAMES)
def test_no_length_that_fails_is_printed_as_a_support(name):
    text = report(demo_plan(name)).partition("What it may stand on")[2].partition("How far it may bow")[0]
    for line in text.splitlines():
        if "does not hold" in line:
            assert '"' not in line.partition("psi")[0], line


def test_on_edge_never_stands_without_the_fall_line():
    for plan in demo_plans():
        flat = " ".join(report(plan).split())
        for place in re.finditer("[Oo]n edge", flat):
            assert re.search("two people|never left leaning|falls", flat[place.start() : place.start() + 160])


def test_one_system_prints_only_its_units():
    plan = demo_plan("counter_worked_example")
    us, si = report(plan, "us"), report(plan, "si")
    body = "\n".join(line for line in si.splitlines() if "[" not in line)
    assert " kg" not in us.split("The piece")[1].split("Order at")[0]
    assert " lb" not in body.split("The piece")[1].split("Order at")[0]


def test_warnings_come_gravest_first_and_are_said_once():
    for plan in demo_plans():
        order = [LEVELS.index(advice.level) for advice in plan.advice]
        assert order == sorted(order)
        assert len(set(plan.advice)) == len(plan.advice)
        for advice in plan.advice:
            assert advice.text and advice.reason and advice.mark and advice.source


def test_the_demo_jobs_say_what_they_are_there_for():
    hot, cold = demo_plan("sink_top_hot_day"), demo_plan("round_table_cold_shop")
    assert hot.drying.level == "red" and hot.cure.pick == "fabric" and hot.batch.water.ice_share > 0
    assert cold.cure.heat and cold.mix.w_cm_high > cold.mix.w_cm_low
    assert demo_plan("garden_bench_top").cure.pick == "open"
    assert any(advice.where == "use" for advice in demo_plan("garden_bench_top").advice)
    assert len(demo_plan("large_l_four_loads").batch.loads) >= 4


def test_pasted_controls_in_a_name_do_not_reach_the_terminal(tmp_path, capsys):
    text = demo_job("garden_bench_top").read_text(encoding="utf-8")
    path = tmp_path / "job.toml"
    path.write_text(text.replace('"Garden bench top"', '"Bench \\u001b[31m red"'), encoding="utf-8")
    assert main(["plan", str(path)]) == 0
    assert "\x1b" not in capsys.readouterr().out


def test_commands(capsys):
    path = str(demo_job("garden_bench_top"))
    assert main(["plan", path]) == 0
    assert "The day: the cue decides" in capsys.readouterr().out
    assert main(["plan", path, "--why", "set_aside_kg", "--units", "us"]) == 0
    said = capsys.readouterr().out
    assert "26" in said and "derived" in said and "kg)" not in said
    assert main(["plan", path, "--why", "all"]) == 0
    assert "first_steel_likely_from_h" in capsys.readouterr().out


def test_the_backward_question_goes_down_to_the_water(capsys):
    path = str(demo_job("garden_bench_top"))
    assert main(["plan", path, "--strip-by", "10:00", "--leave-by", "18:00"]) == 0
    said = capsys.readouterr().out
    assert "wanted by 10:00" in said and "wanted by 18:00" in said  # the same day: not named
    assert "For that mix: " in said and "water in at" in said
    # The mix that the answer names, planned forward, is ready in time within a few minutes.
    warm = float(re.search(r"a mix of [\d.]+ °F \(([\d.]+) °C\) or warmer", said).group(1))
    text = demo_job("garden_bench_top").read_text(encoding="utf-8").replace('"60 F"', f'"{warm} °C"')
    strip = make_plan(parse_job(text)).day.stage("strip").likely_from_h
    assert strip == pytest.approx(2.0, abs=0.12)
    assert main(["plan", path, "--leave-by", "six"]) == 2
    assert "as in 18:00" in capsys.readouterr().err


def test_a_thick_piece_in_wind_says_that_it_is_not_of_one_temperature():
    text = demo_job("garden_bench_top").read_text(encoding="utf-8")
    thick = text.replace('thickness = "1 1/2 in"', 'thickness = "4 in"').replace('wind = "0 mph"', 'wind = "15 mph"')
    assert any("Biot" in line.reason for line in make_plan(parse_job(thick)).advice)
    assert not any("Biot" in line.reason for line in demo_plan("garden_bench_top").advice)


def test_every_default_is_used_somewhere():
    root = Path(__file__).parents[1] / "shop_calc"
    code = "\n".join(path.read_text(encoding="utf-8") for path in root.rglob("*.py"))
    unused = [name for name in defaults.table() if not re.search(rf"[\"']{name}[\"']", code)]
    assert unused == [], "rows of data/defaults.csv that no code reads by name"


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (["plan", "nowhere.toml"], "no such file"),
        (["plan", str(demo_job("garden_bench_top")), "--why", "colour"], "no value is called"),
        (["plan", str(demo_job("garden_bench_top")), "--why", "kg"], "fits several values"),
    ],
)
def test_what_cannot_be_done_is_said_in_a_line_with_code_2(words, message, capsys):
    assert main(words) == 2
    out, err = capsys.readouterr()
    assert message in err and out == "" and "Traceback" not in err


def test_a_bad_job_prints_all_problems_and_writes_nothing(tmp_path):
    path = tmp_path / "job.toml"
    text = demo_job("garden_bench_top").read_text(encoding="utf-8")
    path.write_text(text.replace('"5 ft"', '"5"').replace("humidity = 50", "humidity = 0.5"), encoding="utf-8")
    run = subprocess.run([sys.executable, "-m", "shop_calc", "plan", str(path)], capture_output=True, text=True)
    assert run.returncode == 2 and run.stdout == ""
    assert len(run.stderr.strip().splitlines()) == 2 and "Traceback" not in run.stderr
    assert [p.name for p in tmp_path.iterdir()] == ["job.toml"]


def test_the_table_of_defaults_is_complete():
    with open(defaults.data_folder() / "defaults.csv", newline="", encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    assert len({row["name"] for row in rows}) == len(rows)
    for row in rows:
        default = defaults.get(row["name"])
        assert default.label and default.mark and default.source and default.used_by and default.message, default.name
        ends = [default.minimum, default.low, default.value, default.high, default.maximum]
        known = [end for end in ends if end is not None]
        assert known == sorted(known), default.name
        units.convert(default.value, default.unit, defaults.si_unit(default.name))
    with pytest.raises(ValueError, match="no such name"):
        defaults.get("colour")
