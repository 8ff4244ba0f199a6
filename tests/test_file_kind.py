"""A recipe given for a job, or a job for a recipe: one clear line."""

import subprocess
import sys
import tomllib

import pytest

from shop_calc import defaults
from shop_calc.trade.jobs.file_kind import file_kind
from shop_calc.trade.jobs.job import check_job, demo_job, demo_jobs, read_job
from shop_calc.trade.mortar.recipe_file import recipe_from_table
from shop_calc.trade.plan import make_plan
from shop_calc.trade.problems import Problems

RECIPES = sorted((defaults.data_folder() / "recipes").glob("*.toml"))


def entries(path):
    return tomllib.loads(path.read_text(encoding="utf-8"))


@pytest.mark.parametrize("path", RECIPES, ids=lambda path: path.stem)
def test_a_recipe_given_as_a_job_is_told_so_in_one_line(path):
    with pytest.raises(Problems) as caught:
        read_job(path)
    (line,) = str(caught.value).splitlines()
    kind = "bag" if "bag" in path.stem else "recipe"
    assert line.startswith(f"this is a {kind} ({entries(path)['name']!r}), not a job: a job has [piece]") and "[mix]" in line


@pytest.mark.parametrize("name", demo_jobs())
def test_a_job_given_as_a_recipe_is_told_so_in_one_line(name):
    job = entries(demo_job(name))
    for entry, call in (("mix.recipe", lambda: make_plan(check_job({**job, "mix": {"recipe": job}}))),
                        ("mine", lambda: recipe_from_table(job, "mine"))):  # fmt: skip
        with pytest.raises(Problems) as caught:
            call()
        (line,) = str(caught.value).splitlines()
        assert line.startswith(f"{entry}: this is a job, not a recipe") and "parts" in line and "bag" in line


def test_the_commands_say_that_line_and_nothing_else():
    for command in (["plan", str(RECIPES[0])], ["sheet", str(RECIPES[0]), "nowhere.html"]):
        done = subprocess.run([sys.executable, "-m", "shop_calc", *command], capture_output=True, text=True, check=False)
        assert done.returncode != 0 and done.stdout == ""
        assert len(done.stderr.splitlines()) == 1 and "not a job" in done.stderr


@pytest.mark.parametrize("table", [{}, {"name": "x"}, {"kind": "vessel"}, {"kind": ["bag"]}, {"piece": {}, "parts": {}}])
def test_what_is_neither_or_both_is_told_entry_by_entry(table):
    assert file_kind(table) is None
    with pytest.raises(Problems) as caught:
        check_job(table)
    assert len(str(caught.value).splitlines()) > 2 and "not a job" not in str(caught.value)


def test_a_name_that_is_no_name_is_not_repeated():
    with pytest.raises(Problems, match=r"^this is a recipe, not a job"):
        check_job({"name": 7, "parts": {"portland cement": 1}})
    with pytest.raises(Problems) as caught:
        check_job({"name": "x" * 500 + "\n[31m", "parts": {}})
    assert len(str(caught.value)) < 350 and "\n" not in str(caught.value)
