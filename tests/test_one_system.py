"""A print in one system of units: no sentence of it speaks the other one."""

import re

import pytest
from demo_plans import NAMES, demo_plan

from shop_calc.__main__ import main
from shop_calc.trade.jobs.job import demo_job
from shop_calc.trade.report import report
from shop_calc.units import KINDS, one_system, show

SI_WORDS = re.compile(r"\d (?:mm|m²|m³|kg|kg/m²|kg/m²·h|L|mL|MPa|kPa|Pa|km/h)(?![\w/²³])")
US_WORDS = re.compile(r"\d (?:ft²|ft³|lb/ft²|lb/ft²·h|oz|psi|qt|cup|mph)(?![\w/²³])|\d\"")


@pytest.mark.parametrize("kind", [name for name in KINDS if name not in ("number", "mass_ratio", "duration", "time")])
def test_whatever_is_shown_in_both_systems_comes_down_to_either(kind):
    below = [-2.0] if kind in ("temperature", "length") else []
    for value in (*below, 0.0, 1e-6, 0.003, 0.0381, 0.3048, 1.0, 21.0, 1273.175, 2.4e6):
        both = f"of {show(value, kind)}, at most."
        for system in ("us", "si"):
            assert one_system(both, system) == f"of {show(value, kind, system)}, at most."
        assert one_system(both, "both") == both


@pytest.mark.parametrize("name", NAMES)
def test_a_plan_in_one_system_has_no_word_of_the_other(name):
    plan = demo_plan(name)
    assert not SI_WORDS.search(report(plan, "us")), SI_WORDS.search(report(plan, "us"))
    assert not US_WORDS.search(report(plan, "si")), US_WORDS.search(report(plan, "si"))
    assert SI_WORDS.search(report(plan, "both")) and US_WORDS.search(report(plan, "both"))


def test_what_stands_alone_is_left_and_a_pair_turned_round_is_found():
    alone = "250 lb for every 24 in, stone 3/8 in (dry), 50 µg/m³ (a shift)"
    assert one_system(alone, "si") == one_system(alone, "us") == alone
    assert one_system("above 30 °C (86 °F)", "us") == "above 86 °F"


def test_the_backward_answer_keeps_to_one_system_too(capsys):
    arguments = ["plan", str(demo_job("garden_bench_top")), "--strip-by", "10:00", "--units"]
    assert main([*arguments, "si"]) == 0
    assert "°F" not in capsys.readouterr().out
    assert main([*arguments, "us"]) == 0
    assert "°C" not in capsys.readouterr().out
