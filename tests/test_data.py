"""The data folder: an entry for every file, every entry of a job file described, tidy tables."""

import csv

import pytest

from shop_calc import defaults
from shop_calc.trade.jobs.job_fields import FIELDS

FOLDER = defaults.data_folder()
README = (FOLDER / "README.md").read_text(encoding="utf-8")
TABLES = sorted(FOLDER.rglob("*.csv"))


@pytest.mark.parametrize("path", TABLES, ids=lambda path: path.relative_to(FOLDER).as_posix())
def test_every_table_has_an_entry_and_is_tidy(path):
    in_folder = path.parent.name == "logs"
    assert in_folder or path.name in README, f"{path.name} has no entry in data/README.md"
    with open(path, newline="", encoding="utf-8") as file:
        rows = list(csv.reader(file))
    assert len(rows) > 1
    assert {len(row) for row in rows} == {len(rows[0])}
    assert len(set(rows[0])) == len(rows[0]) and all(name.strip() for name in rows[0])


@pytest.mark.parametrize("section", FIELDS)
def test_every_entry_of_a_job_file_is_described(section):
    for field in FIELDS[section]:
        assert f"`{field.name}`" in README, f"{section}.{field.name}"


def test_no_file_is_without_a_place():
    known = {"defaults.csv", "day_cloud.csv", "materials.csv", "rod_steps.csv", "glossary.csv", "ledger.csv", "README.md"}
    assert {path.name for path in FOLDER.iterdir() if path.is_file()} <= known
    assert {path.name for path in FOLDER.iterdir() if path.is_dir()} <= {"jobs", "logs", "open", "published", "recipes"}
