"""The shop log in the plan: which log, what it changes, what is said of it."""

from datetime import datetime

import numpy as np
import pytest

from shop_calc import defaults
from shop_calc.science import setting
from shop_calc.trade.jobs.job import demo_job, parse_job, read_job
from shop_calc.trade.logbook.set_places import NAMES
from shop_calc.trade.plan import make_plan
from shop_calc.trade.timeline.backwards import work_backwards

DEMO = defaults.data_folder() / "logs" / "eight_pours.csv"
BENCH = demo_job("garden_bench_top").read_text(encoding="utf-8")


@pytest.fixture(scope="module")
def plans():
    job = read_job(demo_job("garden_bench_top"))
    return make_plan(job), make_plan(job, DEMO)


def test_a_plan_with_a_log_says_so_and_what_changed(plans):
    plain, logged = plans
    assert plain.log is None and not any(line.where == "log" for line in plain.advice)
    old, new = (plan.day.stage("first_steel") for plan in plans)
    assert new.likely_from_h < old.likely_from_h - 0.1  # the demo mortar is faster than the default
    assert new.over_by_h - new.look_from_h < 0.7 * (old.over_by_h - old.look_from_h)
    (line,) = (line for line in logged.advice if line.where == "log")
    for words in ("eight_pours.csv", "8 pours of demo mortar", f"{plain.day.clock(old.likely_from_h):%H:%M}",
                  f"{logged.day.clock(new.likely_from_h):%H:%M}"):  # fmt: skip
        assert words in line.text


def test_face_and_base_have_bands_of_their_own_in_the_plan(plans):
    inputs = plans[1].day.samples.inputs
    assert inputs.bands["set_time_initial"] != inputs.base_bands["set_time_initial"]
    clock = plans[1].day.samples.clock
    assert clock.initial_set_h.shape == (4, 500)
    assert np.median(clock.initial_set_h[0]) == pytest.approx(inputs.base_bands["set_time_initial"][1], rel=1e-3)
    assert np.median(clock.initial_set_h[3]) == pytest.approx(inputs.bands["set_time_initial"][1], rel=1e-3)


def test_the_working_and_the_backward_question_stand_on_the_log_too(plans):
    for plan in plans:
        step = next(step for step in plan.working if step.name == "first_steel_age_h")
        bands = plan.day.samples.inputs.bands or {"set_time_initial": defaults.si_band("set_time_initial")}
        assert dict((name, value) for name, value, _ in step.inputs)["t_i"] == bands["set_time_initial"][1]
    by = datetime(2026, 5, 4, 15)
    plain, logged = (work_backwards(plan.day.samples.inputs, "first_steel", by) for plan in plans)
    assert logged.latest_start_h > plain.latest_start_h + 0.1


def test_strength_counts_from_the_final_set_of_the_clock_that_the_plan_uses(plans):
    for plan in plans:
        bands = plan.day.samples.inputs.bands or {}
        initial_h, exponent, energy = (bands.get(name, defaults.si_band(name))[1] for name in NAMES)
        hard = plan.handling.hardening
        # 4000 psi is final set (ASTM C403): eight times the 500 psi of initial set
        age_h = setting.equivalent_age_h(hard.time_h, hard.temp_c, energy, 21.0)
        assert np.interp(hard.final_set_h, hard.time_h, age_h) == pytest.approx(initial_h * 8.0 ** (1 / exponent), rel=1e-4)
        assert hard.activation_energy_j_mol == energy
        step = next(step for step in plan.working if step.name == "morning_open_aci_age_h")
        assert dict((name, value) for name, value, _ in step.inputs)["E_a"] == energy
        # the night goes on at the pace of the same clock: its age in the morning is that of the whole history
        morning_h = np.interp(plan.cure.until_h, hard.time_h, age_h)
        assert plan.cure.picked.morning_age_h == pytest.approx(morning_h, rel=2e-3)
    assert plans[1].handling.hardening.final_set_h < plans[0].handling.hardening.final_set_h - 0.5


def test_loads_that_outlast_the_set_are_measured_by_the_clock_of_the_log():
    """The base of the demo log sets in 3.2 h where the table has 3.4: loads of 3.3 h are too many for it alone."""
    text = BENCH.replace('usable = "24 L"', 'usable = "3 L"').replace("minutes_per_load = 20", "minutes_per_load = 22")
    plain, logged = make_plan(parse_job(text)), make_plan(parse_job(text), DEMO)
    assert logged.log.base_initial_set_h == (logged.day.samples.inputs.base_bands or logged.day.samples.inputs.bands)[
        "set_time_initial"][1]  # fmt: skip
    assert logged.log.base_initial_set_h < plain.batch.mixing_h < 3.4
    for plan, said in ((plain, False), (logged, True)):
        stop = [line for line in plan.advice if line.text.startswith("Do not pour it like this")]
        assert bool(stop) is said
        assert all(line.source == "fit of the shop log" and "3.2 h" in line.reason for line in stop)


def test_a_layer_without_looks_goes_with_the_other():
    plan = make_plan(read_job(demo_job("garden_bench_top")), defaults.data_folder() / "logs" / "first_pour.csv")
    assert plan.day.samples.inputs.bands is not None and plan.day.samples.inputs.base_bands is None
    assert any("goes with the face" in line.reason for line in plan.advice)


def test_a_log_without_this_recipe_leaves_the_plan_on_its_defaults(plans):
    job = parse_job(BENCH.replace('"demo mortar"', '"demo lean mortar"'))
    plan, plain = make_plan(job, DEMO), make_plan(job)
    assert plan.day.stages == plain.day.stages
    assert any(line.where == "log" and "stands on its defaults" in line.text for line in plan.advice)


def test_slips_in_the_log_are_said_in_the_plan():
    plan = make_plan(read_job(demo_job("garden_bench_top")), defaults.data_folder() / "logs" / "log_with_slips.csv")
    words = " ".join(f"{line.text} {line.reason}" for line in plan.advice if line.where == "log")
    assert "5 cells to mend" in words and "line 43, time_iso" in words and "hardly fit" in words


def test_a_job_file_names_its_log(tmp_path):
    (tmp_path / "logs").mkdir()
    (tmp_path / "logs" / "mine.csv").write_bytes(DEMO.read_bytes())
    (tmp_path / "job.toml").write_text(BENCH + '\n[log]\nfile = "logs/mine.csv"\n', encoding="utf-8")
    plan = make_plan(read_job(tmp_path / "job.toml"))
    assert plan.log.name == "mine.csv" and plan.log.face.pour_count == 8


@pytest.mark.parametrize(
    "path", ["/etc/passwd", "../mine.csv", "logs/../../mine.csv", "C:\\\\logs\\\\mine.csv", "..\\\\mine.csv",
             "~/mine.csv", "\\\\\\\\server\\\\mine.csv", "", "a\\u0000b"],
)  # fmt: skip
def test_a_log_outside_the_folder_of_the_job_is_refused(tmp_path, path):
    (tmp_path / "job.toml").write_text(BENCH + f'\n[log]\nfile = "{path}"\n', encoding="utf-8")
    with pytest.raises(ValueError, match=r"log\.file"):
        read_job(tmp_path / "job.toml")


def test_a_link_out_of_the_folder_a_missing_log_and_a_job_without_a_folder_are_said(tmp_path):
    inside = tmp_path / "inside"
    inside.mkdir()
    (tmp_path / "mine.csv").write_bytes(DEMO.read_bytes())
    (inside / "link.csv").symlink_to(tmp_path / "mine.csv")
    for name, words in (("link.csv", "must lie below"), ("none.csv", "no such file")):
        (inside / "job.toml").write_text(BENCH + f'\n[log]\nfile = "{name}"\n', encoding="utf-8")
        with pytest.raises(ValueError, match=words):
            make_plan(read_job(inside / "job.toml"))
    with pytest.raises(ValueError, match="was not read from a file"):
        make_plan(parse_job(BENCH + '\n[log]\nfile = "link.csv"\n'))
    with pytest.raises(ValueError, match="no such file"):
        make_plan(read_job(demo_job("garden_bench_top")), tmp_path / "none.csv")


def test_practice_pours_do_not_move_a_real_plan(tmp_path):
    """A pour rehearsed with the model can teach nothing about mortar."""
    from shop_calc import defaults
    from shop_calc.trade.jobs.job import demo_job, read_job
    from shop_calc.trade.logbook.log_write import append_events
    from shop_calc.trade.plan import make_plan
    from shop_calc.trade.rehearsal.bench import begin
    from shop_calc.trade.rehearsal.policies import by_cues, work_through
    from shop_calc.trade.rehearsal.rows import log_events

    real = (defaults.data_folder() / "logs" / "eight_pours.csv").read_bytes()
    path = tmp_path / "log.csv"
    path.write_bytes(real)
    append_events(path, log_events(work_through(begin("a code", "mild"), by_cues)))
    job = read_job(demo_job("garden_bench_top"))
    alone, mixed = make_plan(job, defaults.data_folder() / "logs" / "eight_pours.csv"), make_plan(job, path)
    assert mixed.log.rehearsed_count == 1
    assert any("practice pour left out" in line.text for line in mixed.advice)
    for one, other in zip(alone.day.stages, mixed.day.stages, strict=True):
        assert other.likely_from_h == one.likely_from_h
