"""What a mix is refused for and what it is warned about."""

import math

import pytest

from shop_calc.science.bulk import void_fraction
from shop_calc.trade.batching.order import order_of_addition
from shop_calc.trade.batching.water import plan_water, temps
from shop_calc.trade.mortar.mix import build_mix
from shop_calc.trade.mortar.recipe import recipe
from shop_calc.trade.mortar.recipe_file import recipe_from_table

DEMO = {"stone_ratio": 1.2, "coarse_sand_ratio": 0.6}


def demo(**changes):
    return build_mix(recipe("demo mortar"), **{**DEMO, **changes})


def mortar(**table):
    parts = {"portland cement": 94, "fine silica sand": {"amount": 94, "state": "saturated surface-dry"}}
    return build_mix(recipe_from_table({"w_cm": 0.35, "parts": parts, **table}))


def bag(**table):
    label = {"kind": "bag", "mass": "80 lb", "water": "5.2 lb", "yield": "0.60 ft3"}
    return build_mix(recipe_from_table({**label, **table}))


def levels(mix, word):
    return {each.level for each in mix.advice if word in each.text + each.reason}


def test_gallons_on_a_sack_give_the_ratios_of_the_textbook():
    # 5, 6, 7 gal on a 94 lb sack: 0.443, 0.532, 0.621 (tolerance 0.001)
    for gallons, ratio in ((5, 0.443), (6, 0.532), (7, 0.621)):
        made = recipe_from_table({"water": f"{gallons} gal", "parts": {"portland cement": "94 lb"}})
        mix = build_mix(made)
        assert mix.w_cm == pytest.approx(ratio, abs=0.001)
        assert "act" in levels(mix, "Take less water"), "the old shop rule is far wetter than tops want"
        assert "shrinks and curls more" in next(each.reason for each in mix.advice if "less water" in each.text)


def test_45_gallons_on_900_pounds_is_0_42():
    made = recipe_from_table({"water": "45 gal", "parts": {"portland cement": "900 lb"}})
    assert build_mix(made).w_cm == pytest.approx(0.4165, abs=0.001)


def test_a_ratio_inside_practice_raises_no_word():
    assert not levels(mortar(w_cm=0.34), "practice for tops")
    assert levels(mortar(w_cm=0.45), "practice for tops") == {"act"}
    assert levels(mortar(w_cm=0.27), "practice for tops") == {"note"}


def test_phi_below_0_60_is_warned_and_near_the_voids_refused():
    assert "act" in levels(demo(stone_ratio=1.5), "phi")
    assert not levels(demo(), "phi 0.6")
    stone_voids = void_fraction(1626.0, 2.65)
    assert demo().void_fraction == pytest.approx(stone_voids)
    assert stone_voids == pytest.approx(0.386, abs=0.001)  # dry-rodded 100-103 lb/ft3
    with pytest.raises(ValueError, match=r"phi: 0\.4. given.*at least 0\.44"):
        demo(stone_ratio=3.0, coarse_sand_ratio=1.0)
    assert demo(stone_ratio=3.0, coarse_sand_ratio=1.0, stone_void_fraction=0.30).phi < 0.44


def test_pigment_limits_are_percent_of_binder():
    # ASTM C979: at most 10 % of the cementitious mass
    for dose, expected in (("5 % of binder", set()), ("8 % of binder", {"act"}), ("10 % of binder", {"act"})):
        assert levels(mortar(doses={"iron-oxide pigment yellow": dose}), "less pigment") == expected
    with pytest.raises(ValueError, match="ASTM C979"):
        mortar(doses={"iron-oxide pigment yellow": "10.5 % of binder"})
    pale = mortar(doses={"iron-oxide pigment yellow": "0.5 % of cement"})
    assert levels(pale, "pale") == {"note"}
    sack = mortar(doses={"iron-oxide pigment yellow": "1 lb per 94 lb of cement"})
    assert sack.pigment_share[1] == pytest.approx(0.0106, abs=0.00005)


def test_five_percent_pigment_of_a_bag_is_refused():
    # 5 % of an 80 lb bag = 4 lb = 25 to 42 % of its cement at 20 to 12 %
    with pytest.raises(ValueError, match=r"pigment: 25\.0 to 41\.7 %"):
        bag(doses={"iron-oxide pigment yellow": "5 % of bag"})
    with pytest.raises(ValueError, match="ASTM C979"):
        bag(doses={"iron-oxide pigment yellow": "4 lb per bag"})


def test_pigment_that_may_or_may_not_be_too_much_for_a_bag_is_warned():
    # 1.5 % of the bag is 7.5 to 12.5 % of its cement at 20 to 12 %
    assert levels(bag(doses={"iron-oxide pigment yellow": "1.5 % of bag"}), "ASTM C979") == {"act"}


def test_sugar_on_the_bag_is_stopped_and_on_the_cement_is_fine():
    # 18 to 22 g on an 80 lb bag is 0.25 to 0.42 % of its cement; 3.2 g (3/4 tsp) is right for about 14 lb cement
    sugar = "sugar, as a retarder"
    for dose in ("18 g per bag", "0.05 % of bag"):
        mix = bag(doses={sugar: dose})
        line = next(each for each in mix.advice if "retarder" in each.text)
        assert line.level == "stop"
        assert "0.25 to 0.4" in line.reason
    for dose in ("3 g per bag", "0.05 % of cement"):
        assert levels(bag(doses={sugar: dose}), "retarder") == {"note"}
    assert levels(mortar(doses={sugar: "0.15 % of cement"}), "retarder") == {"act"}


def test_two_ounces_of_fibre_in_95_pounds_is_crack_control_only():
    # 2 oz = 0.125 lb in about 95 lb is 0.13 %
    made = recipe_from_table(
        {
            "water": "15 lb",
            "parts": {"portland cement": "40 lb", "fine silica sand": {"amount": "40 lb", "state": "oven-dry"}},
            "face": {"AR glass fibre": "2 oz"},
        }
    )
    mix = build_mix(made)
    assert 100 * mix.face_fibres[0].per_layer_kg == pytest.approx(0.13, abs=0.005)
    line = next(each for each in mix.advice if "crack control only" in each.text)
    assert line.level == "note" and "0.13 %" in line.reason


def test_dry_and_wet_stone_are_both_warned_with_their_ratio():
    dry, wet = demo(), demo(stone_moisture_fraction=0.03, coarse_sand_moisture_fraction=0.005)
    assert "0.330 to 0.315" in next(each.reason for each in dry.advice if "drink" in each.reason)
    assert wet.stone_water_kg == pytest.approx(-1.2 * 0.02)
    assert "0.330 to 0.354" in next(each.reason for each in wet.advice if "Wet stone" in each.reason)
    soaked = demo(stone_moisture_fraction=0.01, coarse_sand_moisture_fraction=0.005)
    assert soaked.stone_water_kg == pytest.approx(0, abs=1e-15)
    assert not levels(soaked, "stone brings") and not levels(soaked, "They drink")


def test_what_curing_must_know_is_flagged():
    assert demo().polymer_solids_share == pytest.approx(0.05)
    assert levels(demo(), "polymer film") == {"note"}
    assert not levels(mortar(doses={"acrylic dispersion 50 %": "4.9 % solids of binder"}), "polymer film")
    fume = mortar(parts={"portland cement": 92, "silica fume": 8})
    assert fume.has_silica_fume and levels(fume, "silica fume bleeds") == {"note"}
    lean = build_mix(recipe("demo lean mortar"))
    assert lean.is_white and not lean.is_pigmented and levels(lean, "white") == {"note"}
    assert demo().is_pigmented and not demo().is_white


def test_an_unbelievable_density_is_flagged():
    heavy = mortar(parts={"portland cement": {"amount": 94, "relative_density": 6.0}})
    assert "act" in levels(heavy, "slip in the amounts of the mortar")
    assert not levels(demo(), "slip in the amounts")


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"stone_ratio": -0.1}, "stone per mass of binder: -0.1 given"),
        ({"stone_ratio": 120.0}, "at most 10"),
        ({"stone_ratio": math.nan}, "stone per mass of binder"),
        ({"stone": "gravel"}, "'gravel' given"),
        ({"stone": "portland cement"}, "must be an aggregate"),
        ({"stone_moisture_fraction": 3.0}, "moisture of stone"),
        ({"sand_moisture_fraction": 0.5}, "must be at least what they bring"),
        ({"stone_void_fraction": 0.9}, "voids of the stone"),
    ],
)
def test_impossible_entries_are_refused_by_name(change, words):
    with pytest.raises(ValueError, match=words):
        demo(**change)


def said(mix, word):
    return [(each.level, each.text, each.reason) for each in mix.advice if word in each.text]


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({}, "Give the dry stone and coarse sand their own water with the stone, or wet them"),
        ({"coarse_sand_ratio": 0.0}, "Give the dry stone its own water with it, or wet it"),
        ({"stone_ratio": 0.0, "coarse_sand_ratio": 1.2}, "Give the dry coarse sand its own water with it, or wet it"),
    ],
)
def test_only_what_the_base_holds_is_given_water(changes, words):
    ((level, text, reason),) = said(demo(**changes), "own water")
    assert words in text and level == "act"
    assert reason.startswith("They drink " if "them" in words else "It drinks ")


def test_what_is_wet_is_named_and_what_is_dry_is_not():
    # moist on oven-dry mass against absorption of some 1 %: the sand is wet, the stone drinks
    wet_sand = demo(coarse_sand_moisture_fraction=0.04, stone_moisture_fraction=0.005)
    ((_, text, reason),) = said(wet_sand, "Better let")
    assert text.startswith("Better let the coarse sand dry") and reason.startswith("Wet coarse sand brings")
    ((_, text, _),) = said(demo(coarse_sand_moisture_fraction=0.04, stone_moisture_fraction=0.04), "Better let")
    assert text.startswith("Better let the stone and coarse sand dry")


def test_a_drink_too_small_to_be_seen_in_w_cm_is_only_a_note():
    little = demo(stone_ratio=0.0)
    assert little.w_cm - little.w_cm_stone_left_dry < 0.005
    assert [level for level, _, _ in said(little, "own water")] == ["note"]


def test_the_order_names_what_the_base_holds_and_gives_the_face_its_water_back():
    water = plan_water(demo(), temps(21.0))
    for changes, words in (
        ({}, "Stone and coarse sand to the rest, with their own water."),
        ({"coarse_sand_ratio": 0.0}, "Stone to the rest, with its own water."),
        ({"stone_ratio": 0.0, "coarse_sand_ratio": 1.2}, "Coarse sand to the rest, with its own water."),
    ):
        assert words in [step.text for step in order_of_addition(demo(**changes), water, 1 / 6)]
    dry, wet = (order_of_addition(demo(coarse_sand_moisture_fraction=moist), water, 1 / 6)[-1].text for moist in (0.0, 0.06))
    assert "its water back" in wet and "its water back" not in dry


def test_a_face_of_its_own_load_is_not_set_aside_from_the_others():
    water = plan_water(demo(), temps(21.0))
    alone, shared = (order_of_addition(demo(), water, 1 / 6, face_alone=alone) for alone in (True, False))
    assert len(alone) == len(shared) and [step.number for step in alone] == list(range(1, len(alone) + 1))
    assert any("all face" in step.text for step in alone) and not any("Set the face" in step.text for step in alone)
    assert any("Set the face" in step.text for step in shared) and not any("all face" in step.text for step in shared)
