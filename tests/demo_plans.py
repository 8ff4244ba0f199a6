"""Plans of the demo jobs. A test makes its own, so that whoever asks which tests touch a line hears all of them."""

import copy
import tomllib

from shop_calc.trade.jobs.job import check_job, demo_job, demo_jobs, read_job
from shop_calc.trade.plan import make_plan

NAMES = tuple(demo_jobs())
BENCH = tomllib.loads(demo_job("garden_bench_top").read_text(encoding="utf-8"))


def demo_plan(name):
    """The plan of one demo job, made afresh: some fifty milliseconds."""
    return make_plan(read_job(demo_job(name)))


def demo_plans():
    """The plans of all demo jobs, one after the other."""
    return map(demo_plan, NAMES)


def bench(**places):
    """The bench planned with some entries changed: place__span="40 in" changes [place] span; room__ changes every row."""
    entries = copy.deepcopy(BENCH)
    for way, value in places.items():
        section, name = way.split("__")
        for table in entries["room"] if section == "room" else (entries.setdefault(section, {}),):
            table[name] = value
    return make_plan(check_job(entries))
