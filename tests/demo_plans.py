"""Plans of the demo jobs. A test makes its own, so that whoever asks which tests touch a line hears all of them."""

from shop_calc.trade.jobs.job import demo_job, demo_jobs, read_job
from shop_calc.trade.plan import make_plan

NAMES = tuple(demo_jobs())


def demo_plan(name):
    """The plan of one demo job, made afresh: some fifty milliseconds."""
    return make_plan(read_job(demo_job(name)))


def demo_plans():
    """The plans of all demo jobs, one after the other."""
    return map(demo_plan, NAMES)
