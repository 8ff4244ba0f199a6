"""What goes into an explained value says what it is and how to ask further."""

from dataclasses import replace

from demo_plans import demo_plan

from shop_calc.trade.explain import explain
from shop_calc.trade.working import Step

MADE = Step("volume_m3", "V", "a * b", (("a", 2.0, "m"), ("b", 3.0, "m2")), 6.0, "m3", "derived", "geometry", "its volume")
MASS = Step("mass_kg", "m", "V * rho", (("V", 6.0, "m3"), ("rho", 2.0, "kg/m3")), 12.0, "kg", "derived", "mass", "its mass")


def test_an_input_that_another_step_made_is_told_with_its_name():
    text = explain((MADE, MASS), "mass_kg", "si").splitlines()
    assert text[3] == "    V = 6 m³, its volume (volume_m3)"
    assert text[4] == "    ρ = 2 kg/m³"


def test_the_same_letter_with_another_value_is_another_thing():
    other = replace(MASS, inputs=(("V", 7.0, "m3"), ("rho", 2.0, "kg/m3")), value=14.0)
    assert "volume_m3" not in explain((MADE, other), "mass_kg", "si")


def test_what_is_meant_for_one_kilogram_of_binder_says_so():
    text = explain(demo_plan("garden_bench_top").working, "binder_needed_kg", "us")
    assert "mortar that comes out for 1 kg of binder (mix_mortar_volume_m3)" in text
