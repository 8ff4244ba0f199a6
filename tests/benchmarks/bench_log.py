"""Medians of looks and log, on request: python -m pytest tests/benchmarks/bench_log.py --benchmark-only

Aims on two quiet cores are written beside each.
"""

import sys
from datetime import datetime, timedelta
from pathlib import Path

import numpy as np
import pytest

sys.path.insert(0, str(Path(__file__).parents[1]))
from made_logs import Mortar, made_log

from shop_calc.trade.logbook.calibrate import calibrate
from shop_calc.trade.logbook.shop_log import Event, append_events, gather_pours, read_log
from shop_calc.trade.timeline.day import DayInputs, plan_day
from shop_calc.trade.timeline.looks import not_yet, replan, rod_reading, seen
from shop_calc.trade.timeline.room import steady_room
from shop_calc.trade.timeline.ruler import ruler

START = datetime(2026, 5, 4, 8)
DAY = plan_day(DayInputs(START, steady_room(21.0, 0.50, 0.0), 16.0, 0.0381, 0.03175, 0.58))
LOOKS = {
    "pair": (not_yet(2.25, "strip"), seen(2.75, "strip")),
    "rod": (rod_reading(2.5, 170_000.0),),
    "far off": (not_yet(4.25, "strip"), seen(4.75, "strip")),
}


@pytest.mark.parametrize("kind", LOOKS)
def test_planning_again_from_looks(benchmark, kind):
    """Aim: 20 ms."""
    benchmark(replan, DAY, LOOKS[kind])


def test_the_ruler(benchmark):
    """Aim: 100 ms."""
    benchmark(ruler, DAY)


def test_adding_to_a_log_of_100000_rows(benchmark, tmp_path):
    """Aim: 50 ms."""
    file, row = tmp_path / "log.csv", Event("p", START, "water_in", recipe="made mortar", mix_temp_c=16.0)
    append_events(file, row)
    line = file.read_bytes().splitlines(keepends=True)[1]
    with open(file, "ab") as long:
        long.write(line * 100_000)
    benchmark(append_events, file, Event("p", START + timedelta(hours=2), "check", "face", cue="strip seen"))


def test_reading_10000_rows(benchmark, tmp_path):
    file = tmp_path / "log.csv"
    append_events(file, [Event("p", START, "water_in", note=str(number)) for number in range(10_000)])
    benchmark.pedantic(read_log, (file,), rounds=3)


def test_fitting_20_pours_of_12_looks(benchmark):
    """Aim: 1 s with every pour left out in turn."""
    log = gather_pours(made_log(np.random.default_rng(5), Mortar(), 20, rods=4, mix_c=(8, 26), air_c=(8, 30)))
    benchmark.pedantic(calibrate, (log, "made mortar"), rounds=3, warmup_rounds=1)
