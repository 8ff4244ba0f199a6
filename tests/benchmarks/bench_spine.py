"""Medians of the spine, on request: python -m pytest tests/benchmarks/bench_spine.py --benchmark-only

Ratios between rows of one run can be trusted; absolute times depend on the machine. Aims on two quiet cores are
written beside each.
"""

import subprocess
import sys
from datetime import datetime

import numpy as np

from shop_calc.trade.jobs.job import demo_job, read_job
from shop_calc.trade.plan import make_plan
from shop_calc.trade.timeline.backwards import work_backwards
from shop_calc.trade.timeline.day import DayInputs, plan_day, read_day, sample_day
from shop_calc.trade.timeline.room import steady_room
from shop_calc.trade.timeline.what_if import middle_times_h

DAY = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.50, 0.0), 16.0, 0.0381, 0.03175, 0.58)
RNG = np.random.default_rng(5)


def _cells(count):
    ends = ((10.0, 24.0), (5.0, 38.0), (0.20, 0.90), (0.0, 6.0), (0.02, 0.08))
    return tuple(RNG.uniform(low, high, count) for low, high in ends)


def test_whole_plan(benchmark):
    """Aim: 25 ms for the spine, 40 ms with strength and handling."""
    benchmark(make_plan, read_job(demo_job("garden_bench_top")))


def test_whole_plan_of_several_loads(benchmark):
    benchmark(make_plan, read_job(demo_job("large_l_four_loads")))


def test_timeline_of_500_days(benchmark):
    """Aim: 10 ms."""
    benchmark(plan_day, DAY)


def test_reading_500_days_again_with_new_weights(benchmark):
    """Aim: 20 ms with the look that gave the weights."""
    samples = sample_day(DAY)
    benchmark(read_day, samples, np.linspace(0.1, 1.0, 500))


def test_10000_what_ifs(benchmark):
    """Aim: 300 ms."""
    cells = _cells(10_000)
    benchmark.pedantic(middle_times_h, cells, rounds=5, warmup_rounds=1)


def test_the_backward_question(benchmark):
    """Aim: 300 ms; each start and each mortar that is tried is a day of 500."""
    benchmark(work_backwards, DAY, "strip", datetime(2026, 5, 4, 10, 15))


def test_opening_the_trade_room(benchmark):
    """Aim: 600 ms, a fresh Python included."""
    command = [sys.executable, "-c", "import shop_calc.trade.plan"]
    benchmark.pedantic(subprocess.run, (command,), {"check": True}, rounds=5, warmup_rounds=1)
