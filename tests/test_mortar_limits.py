"""A recipe: what it may say, from both sides of each limit, and masses on every basis worked out by hand."""

from dataclasses import replace

import pytest

from shop_calc.trade.mortar.materials import material
from shop_calc.trade.mortar.mix import build_mix
from shop_calc.trade.mortar.recipe import recipe
from shop_calc.trade.mortar.recipe_file import recipe_from_table

SAND = {"amount": 100, "state": "oven-dry", "absorption": "1 %"}
PARTS = {"portland cement": 100, "fine silica sand": SAND}


def mortar(**table):
    return recipe_from_table({"parts": PARTS, **({} if "w_cm" in table else {"water": 32}), **table})


def bag(**table):
    return recipe_from_table({"kind": "bag", "mass": "80 lb", "water": "5.2 lb", "yield": "0.60 ft3", **table})


def demo(**changes):
    return build_mix(recipe("demo mortar"), **changes)


@pytest.mark.parametrize(
    ("make", "inside", "beyond", "words"),
    [
        (lambda value: mortar(air=f"{value} %"), 25, 25.1, "air"),  # a foam, no mortar
        (lambda value: mortar(w_cm=value), 0.1, 0.0995, "w_cm"),  # wets no powder
        (lambda value: mortar(w_cm=value), 1.0, 1.005, "upside down"),
        (lambda value: mortar(doses={"metakaolin": f"{value} % of cement"}), 99.5, 100, "less than 100 %"),
        (lambda value: mortar(parts=PARTS | {"metakaolin": value}), 999_999_999, 1_000_000_000, "must be less than"),
        (lambda value: demo(stone_ratio=0.0, coarse_sand_ratio=value, stone_void_fraction=0.0), 1.0, 10.05, "coarse sand"),
        (lambda value: demo(stone_ratio=1.0, stone_void_fraction=value), 0.3, 0.603, "voids of the stone"),
        (lambda value: replace(material("coarse sand"), absorption_fraction=value), 0.995, 1.0, "absorption"),
        (lambda value: replace(material("coarse sand"), absorption_fraction=value), 0.995, 1.01, "absorption"),
        (lambda value: replace(material("acrylic dispersion 50 %"), solids_fraction=value), 1.0, 1.005, "solids"),
    ],
)
def test_an_entry_is_taken_up_to_its_limit_and_refused_just_beyond(make, inside, beyond, words):
    make(inside)
    with pytest.raises(ValueError, match=words):
        make(beyond)


def test_wet_stone_may_hold_three_tenths_of_its_mass():
    with pytest.raises(ValueError, match=r"at most 0\.3"):
        demo(stone_ratio=0.1, stone_moisture_fraction=0.303)
    demo(stone_ratio=0.1, stone_moisture_fraction=0.3)


def test_doses_of_the_total_leave_something_of_the_rest():
    for more in ("40 %", "41 %"):  # with 60 %: the whole, and more than it
        with pytest.raises(ValueError, match="less than the whole mix"):
            build_mix(mortar(doses={"metakaolin": "60 % of total mass", "fly ash": f"{more} of total mass"}))


def test_three_eighths_of_an_inch_are_nine_and_a_half_millimetres():
    assert material("stone 3/8 in").largest_particle_m == pytest.approx(0.375 * 0.0254, rel=0.003)
    assert material("portland cement").density_kg_m3 == pytest.approx(3150.0, rel=0.002)  # 3.15 times 1000


def test_all_water_counts_what_is_added_what_comes_with_a_liquid_and_what_sand_drinks():
    # 100 cement, 32 water; 10 of a dispersion bring 5; 100 of dry sand drink 1 % = 1: (32 + 5 - 1)/100 = 0.36
    made = build_mix(mortar(doses={"acrylic dispersion 50 %": "10 % liquid of cement"}))
    assert made.w_cm == pytest.approx(0.36, rel=1e-9)
    # with 20 of fly ash the binder is 120: 0.30, and 8 % of 100 cement brings 4: (32 + 4 - 1)/120
    parts = PARTS | {"fly ash": 20}
    for dose in ("8 % liquid of cement", "6.6666666667 % liquid of binder", "4 % solids of cement"):
        made = build_mix(mortar(parts=parts, doses={"acrylic dispersion 50 %": dose}))
        assert made.w_cm == pytest.approx(35 / 120, rel=1e-9), dose


def test_a_bag_counts_doses_by_the_bag_and_ratios_by_its_cement():
    made = build_mix(bag(doses={"acrylic dispersion 50 %": "4 lb per bag"}), stone_ratio=0.3)
    cement = made.cement_share[1]
    by_bag = build_mix(bag(doses={"acrylic dispersion 50 %": "5 % liquid of bag"}), stone_ratio=0.3)  # 4 lb of 80 lb
    assert [line.mass_kg for line in made.lines] == pytest.approx([line.mass_kg for line in by_bag.lines])
    assert made.polymer_solids_share == pytest.approx(2.0 / 80.0 / cement)
    # the label's 5.2 lb are all the water there is, with the 2 lb that the dispersion brings
    assert made.total_water_kg == pytest.approx((5.2 + 2.0) / 80.0, rel=1e-9)
    assert made.w_cm == pytest.approx(made.total_water_kg / cement)
    dry, wet = (build_mix(bag(), stone_ratio=0.3, stone_moisture_fraction=moist) for moist in (0.0, 0.05))
    assert dry.stone_water_kg > 0 > wet.stone_water_kg
    assert dry.w_cm - dry.w_cm_stone_left_dry == pytest.approx(dry.stone_water_kg / cement)
    assert wet.w_cm_stone_left_wet - wet.w_cm == pytest.approx(-wet.stone_water_kg / cement)
    assert dry.w_cm_stone_left_wet == dry.w_cm and wet.w_cm_stone_left_dry == wet.w_cm


def test_fibres_are_a_share_of_their_layer_on_every_basis():
    glass = material("AR glass fibre")
    for where in ("face", "base"):
        for dose in ("1 % of binder", "1 % of cement", "1 % of volume", "1 % of total mass"):
            made = build_mix(mortar(**{where: {"AR glass fibre": dose}}), stone_ratio=0.8)
            kilograms = made.mortar_kg if where == "face" else made.base_kg  # that hold 1 kg of binder, all cement
            cubic = made.mortar_m3 if where == "face" else made.base_m3
            expected = {"binder": 0.01 / kilograms, "cement": 0.01 / kilograms, "total mass": 0.01,
                        "volume": 0.01 * glass.density_kg_m3 * cubic / kilograms}[dose[7:].strip()]  # fmt: skip
            fibre = (made.face_fibres if where == "face" else made.base_fibres)[0]
            assert fibre.per_layer_kg == pytest.approx(expected, rel=1e-9), (where, dose)


def test_fibres_by_mass_are_those_of_the_same_recipe():
    # 0.94 lb for a sack of 94 lb, the only binder, is 1 % of it; 0.8 lb for a bag of 80 lb as well
    parts = {"portland cement": "94 lb", "fine silica sand": {"amount": "94 lb", "state": "oven-dry"}}
    for make, mass in ((lambda dose: {"parts": parts, "water": "30 lb", "face": {"AR glass fibre": dose}}, "0.94 lb"),
                       (lambda dose: {"kind": "bag", "mass": "80 lb", "water": "5.2 lb", "yield": "0.60 ft3",
                                      "face": {"AR glass fibre": dose}}, "0.8 lb per bag")):  # fmt: skip
        share = "1 % of binder" if "parts" in make(mass) else "1 % of bag"
        by_mass, by_share = (build_mix(recipe_from_table(make(dose))).face_fibres[0] for dose in (mass, share))
        assert by_mass.per_layer_kg == pytest.approx(by_share.per_layer_kg, rel=1e-9)


def test_a_bag_that_does_not_say_its_cement_holds_an_eighth_to_a_fifth_of_it():
    # common practice, no source: 12, likely 16, at most 20 % cement in a concrete mix sold by the bag
    silent = recipe_from_table({"kind": "bag", "mass": "80 lb", "water": "5.2 lb", "yield": "0.60 ft3"})
    assert silent.cement_share == (0.12, 0.16, 0.20)
