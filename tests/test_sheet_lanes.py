"""The lanes of the shop sheet: what stands beside a band stays on the lane, and what ruins the piece is said whole."""

import copy
import re
import tomllib

import pytest

from shop_calc.lesson.sheet.day_facts import LANE_WIDE, day_facts
from shop_calc.lesson.sheet.drawing import type_width
from shop_calc.trade.jobs.job import check_job, demo_job
from shop_calc.trade.plan import make_plan

TYPE = re.compile(r'<text x="([\d.]+)"[^>]*?(text-anchor="end")?[^>]*>([^<]+)</text>')
BENCH = tomllib.loads(demo_job("garden_bench_top").read_text(encoding="utf-8"))


def lanes(depth):
    """Lanes of the bench with its edges dropped: the deeper they are, the longer the band of the face."""
    entries = copy.deepcopy(BENCH)
    entries["piece"]["drop"] = {"edge": ["front", "left"], "depth": depth, "width": "2 in"}
    plan = make_plan(check_job(entries))
    return plan, {stage["key"]: stage["lane"] for stage in day_facts(plan)["stages"]}


@pytest.mark.parametrize("depth", ["2 in", "3 in", "4 in", "5 in", "7 in"])
def test_the_last_good_moment_of_the_face_is_said_whole_on_its_lane(depth):
    plan, drawn = lanes(depth)
    assert f">not after {plan.day.clock(plan.day.stage('face').deadline_h):%H:%M}<" in drawn["face"]
    for lane in drawn.values():
        for x, ends, words in TYPE.findall(lane):
            wide = type_width(words, 12.0, "not after" in words)
            left = float(x) - wide if ends else float(x)
            assert left >= -0.01 and left + wide <= LANE_WIDE + 0.01, words


@pytest.mark.parametrize("depth", ["4 in", "5 in", "7 in"])
def test_the_patch_leaves_the_likely_window_and_the_mark_in_sight(depth):
    face = lanes(depth)[1]["face"]
    right, patch = {}, None
    for tag in re.findall(r"<rect[^>]*>", face):
        x, wide = (float(re.search(rf'{name}="([\d.]+)"', tag).group(1)) for name in (" x", "width"))
        for kind in ("likely", "deadline"):
            if f'class="{kind}"' in tag:
                right[kind] = x + wide
        patch = x if 'class="patch"' in tag else patch
    assert set(right) == {"likely", "deadline"} and patch >= max(right.values()) - 0.5


def test_words_over_a_band_have_a_patch_of_the_lane_behind_them():
    assert "patch" in lanes("4 in")[1]["face"] and "patch" not in lanes("1 9/16 in")[1]["face"]
