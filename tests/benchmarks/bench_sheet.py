"""Medians of the shop sheet, on request: python -m pytest tests/benchmarks/bench_sheet.py --benchmark-only"""

import pytest

from shop_calc.lesson.sheet import sheet_html
from shop_calc.trade.jobs.job import demo_jobs, read_job
from shop_calc.trade.plan import make_plan


@pytest.mark.parametrize("name", sorted(demo_jobs()))
def test_sheet_after_the_plan(benchmark, name):
    """Aim: 300 ms, most of it the ruler."""
    plan = make_plan(read_job(demo_jobs()[name]))
    html = benchmark(sheet_html, plan)
    assert len(html.encode()) <= 300_000
