"""Reading amounts and recipes: the basis is part of the number, and every problem is named at once."""

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shop_calc.defaults import data_folder
from shop_calc.trade.mortar.amounts import parse_amount, stone_ratio
from shop_calc.trade.mortar.materials import material
from shop_calc.trade.mortar.recipe import recipe, recipes
from shop_calc.trade.mortar.recipe_file import recipe_from_table
from shop_calc.trade.mortar.recipe_types import Bag, Recipe
from shop_calc.trade.problems import Collector, Problems

ALL = ("part", "mass", "binder", "cement", "total mass", "volume", "bag")
BAG = {"kind": "bag", "mass": "80 lb", "water": "5.2 lb", "yield": "0.60 ft3"}
PARTS = {"portland cement": 94, "fine silica sand": {"amount": 94, "state": "oven-dry"}}


@pytest.mark.parametrize(
    ("text", "value", "basis"),
    [
        ("0.6 % of binder", 0.006, "binder"),
        ("3 % of cement", 0.03, "cement"),
        ("3 percent of the cement", 0.03, "cement"),
        ("0.5 % of total mass", 0.005, "total mass"),
        ("0.1 % of volume", 0.001, "volume"),
        ("1/2 % of cement", 0.005, "cement"),
        ("1 lb per 94 lb of cement", 1 / 94, "cement"),
        ("1.2 kg per kg binder", 1.2, "binder"),
        ("120 lb per 100 lb binder", 1.2, "binder"),
        ("18 g per bag", 0.018, "each bag"),
        ("0.05 % of bag", 0.0005, "bag"),
        ("94 lb", 94 * 0.45359237, "mass"),
        ("80", 80.0, "part"),
        (80, 80.0, "part"),
    ],
)
def test_an_amount_is_read_with_its_basis(text, value, basis):
    amount = parse_amount(text, None, "dose", ALL)
    assert (amount.value, amount.basis) == (pytest.approx(value, rel=1e-12), basis)


def test_a_pound_on_a_sack_is_1_06_percent():
    # Pigment trade rule: 1 lb per 94 lb sack = 1.06 %
    assert 100 * parse_amount("1 lb per 94 lb of cement").value == pytest.approx(1.06, abs=0.005)


def test_liquids_may_be_poured_and_powders_are_weighed():
    reducer = material("water reducer, liquid")
    poured = parse_amount("120 mL", reducer, "reducer", ("mass",))
    assert poured.value == pytest.approx(0.120 * 1.08 * 0.999552, rel=1e-5)
    with pytest.raises(ValueError, match="weigh it"):
        parse_amount("3 tsp", material("portland cement"), "cement", ("mass",))


def test_ounces_of_mass_and_fluid_ounces_differ():
    # 32 fluid ounces of water weigh 33.4 oz: "a pint's a pound" is 4 % low
    water = material("water")
    fluid = parse_amount("32 fl oz", water, "water", ("mass",)).value
    ounces = parse_amount("32 oz", water, "water", ("mass",)).value
    assert fluid / ounces == pytest.approx(33.4 / 32, rel=2e-3)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("0.6 %", "a percent needs what it is a percent of"),
        ("5 % of sand", "a percent needs what it is a percent of"),
        ("5 % of 3 lb cement", "a percent needs what it is a percent of"),
        ("-3 % of cement", "at least 0|negative"),
        ("1 kg per binder", "after 'per' it must be a mass"),
        ("1 kg per kg", "after 'per' it must be a mass of something"),
        ("3 % of volume of cement", "a percent needs"),
        ("", "in quotes"),
        (None, "in quotes"),
        (True, "in quotes"),
        ("nan", "dose"),
        ("a" * 200, "at most 80 characters"),
        (-1, "at least 0"),
        (float("nan"), "dose"),
        ("1 kg per 0 kg binder", "more than 0"),
        ("0.1 L per kg volume", "must be a mass"),
    ],
)
def test_an_amount_that_says_too_little_is_refused(text, words):
    with pytest.raises(ValueError, match=words):
        parse_amount(text, None, "dose", ALL)


def test_a_liquid_polymer_must_say_solids_or_liquid():
    polymer = material("acrylic dispersion 50 %")
    with pytest.raises(ValueError, match="solids of binder"):
        parse_amount("10 % of binder", polymer)
    assert parse_amount("5 % solids of binder", polymer).counted == "solids"
    assert parse_amount("10 % liquid of binder", polymer).counted == "as it comes"


@given(st.text(max_size=40))
def test_whatever_is_typed_is_read_or_refused_with_a_line(text):
    try:
        amount = parse_amount(text, material("water reducer, liquid"), "dose", ALL)
    except ValueError as error:
        assert str(error).startswith("dose")
    else:
        assert amount.value >= 0


def test_stone_on_cement_and_on_the_bag_is_brought_to_the_basis_of_the_recipe():
    demo, bag = recipe("demo mortar"), recipe("demo counter bag")
    assert stone_ratio("1.5 kg per kg cement", demo) == pytest.approx(1.2)
    assert stone_ratio("1.2 kg per kg binder", demo) == pytest.approx(1.2)
    assert stone_ratio("8 lb per bag", bag) == pytest.approx(0.1)
    assert stone_ratio(0, demo) == 0.0
    for text in ("1.2", "120 %", "1.2 kg per kg bag"):
        with pytest.raises(ValueError, match=r"mix\.stone"):
            stone_ratio(text, demo, "mix.stone")
    with pytest.raises(ValueError, match=r"0\.5 % of bag"):
        stone_ratio("1.2 kg per kg binder", bag)


def test_the_recipes_that_come_along_say_they_are_invented():
    assert {"demo mortar", "demo lean mortar", "demo counter bag"} <= set(recipes())
    for each in recipes().values():
        assert each.mark == "invented" and "invented" in each.origin
    for path in (data_folder() / "recipes").glob("*.toml"):
        assert path.read_text(encoding="utf-8").startswith("# Invented for the demonstration.")


def test_an_unknown_recipe_is_answered_with_those_there_are():
    with pytest.raises(ValueError, match="demo mortar, demo"):
        recipe("demo mortr")


def test_a_recipe_in_masses_reads_liquids_by_volume():
    mixed = recipe_from_table(
        {
            "water": "6 gal",
            "parts": {"portland cement": "94 lb", "fine silica sand": {"amount": "94 lb", "state": "oven-dry"}},
            "doses": {"water reducer, liquid": "120 mL", "iron-oxide pigment yellow": "2 % of cement"},
        }
    )
    assert isinstance(mixed, Recipe) and mixed.w_cm is None
    assert mixed.water.value == pytest.approx(50.05 * 0.45359237, rel=1e-4)


def test_every_problem_of_a_recipe_is_named_at_once():
    table = {
        "w_cm": 2,
        "air": "40 %",
        "colour": "red",
        "parts": {"portlnd cement": 80, "fine silica sand": 100, "metakaolin": "20 lb"},
        "doses": {"iron-oxide pigment yellow": "3 %", "acrylic dispersion 50 %": "10 % of binder"},
        "face": {"metakaolin": "1 % of total mass"},
    }
    with pytest.raises(Problems) as caught:
        recipe_from_table(table, "mix")
    lines = caught.value.lines
    assert caught.value.problems == lines
    for start in (
        "mix: 'colour' given",
        "mix.parts.portlnd cement",
        "mix.parts.fine silica sand.state: nothing given",
        "mix.doses.iron-oxide pigment yellow: '3 %' given",
        "mix.doses.acrylic dispersion 50 %",
        "mix.face: metakaolin given",
        "mix.w_cm: 2 given",
        "mix.air",
    ):
        assert any(line.startswith(start) for line in lines), start


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"parts": {"metakaolin": 20}}, "at least one cement"),
        ({"parts": {}}, "a table with a line for each material"),
        ({"parts": {"portland cement": 80, "metakaolin": "20 lb"}}, "all parts by mass or all masses"),
        ({"water": "3"}, "one of the two"),
        ({"w_cm": None}, "mix.w_cm"),
        ({"w_cm": 0}, "more than 0"),
        ({"w_cm": 2.0}, "upside down"),
        ({"air": 4}, "mix.air"),
        ({"format": 2}, "mix.format: 2 given; it must be 1"),
        ({"kind": "powder"}, "mix.kind"),
        ({"parts": {"portland cement": 80, "water": 30}}, "w_cm or water"),
        ({"parts": {"portland cement": {"amount": 80, "state": "oven-dry"}}}, "only an aggregate"),
        ({"parts": {"portland cement": {"part": 80}}}, "a line with an amount"),
        ({"parts": {"portland cement": {"amount": 80, "relative_density": 3150}}}, "at most 25"),
        ({"doses": {"metakaolin": "120 % of binder"}}, "less than 100 %"),
        ({"parts": {"own ash": {"amount": 20, "kind": "ash", "relative_density": 2.3}}}, "own ash.kind"),
    ],
)
def test_what_a_recipe_cannot_be_is_refused(change, words):
    with pytest.raises(Problems, match=words):
        recipe_from_table({"w_cm": 0.35, "parts": PARTS, **change}, "mix")


def test_powder_and_water_two_to_one_written_upside_down_is_refused():
    # Thin-coat powder:water 2:1 mixed as 1:2: water/powder 2.0
    with pytest.raises(Problems, match="upside down"):
        recipe_from_table({"w_cm": "2.0", "parts": PARTS})
    with pytest.raises(Problems, match="upside down"):
        recipe_from_table({**BAG, "mass": "10 lb", "water": "20 lb", "yield": "0.35 ft3"})


def test_a_material_of_ones_own_needs_kind_and_density():
    parts = {**PARTS, "rice husk ash": {"amount": 10, "kind": "pozzolan", "relative_density": 2.1}}
    assert recipe_from_table({"w_cm": 0.35, "parts": parts}).parts[-1].material.kind == "pozzolan"
    with pytest.raises(Problems, match="needs its kind and relative density"):
        recipe_from_table({"w_cm": 0.35, "parts": {**PARTS, "rice husk ash": 10}})


def test_a_bag_reads_its_label_and_takes_the_usual_cement_share():
    bag = recipe_from_table(BAG)
    assert isinstance(bag, Bag)
    assert bag.cement_share == (0.12, 0.16, 0.20)
    assert recipe_from_table({**BAG, "cement_share": "25 %"}).cement_share == (0.25, 0.25, 0.25)
    assert recipe_from_table({**BAG, "cement_share": ["20 %", "24 %"]}).cement_share == pytest.approx((0.2, 0.22, 0.24))


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"mass": "80"}, "mix.mass"),
        ({"yield": None}, "mix.yield"),
        ({"yield": "6 ft3"}, "wet mix"),
        ({"cement_share": ["20 %", "12 %"]}, "low one must stand first"),
        ({"cement_share": ["10 %", "12 %", "14 %", "16 %"]}, "4 numbers"),
        ({"cement_share": "90 %"}, "of the bag"),
        ({"parts": {}}, "no such entry"),
    ],
)
def test_what_a_bag_cannot_be_is_refused(change, words):
    with pytest.raises(Problems, match=words):
        recipe_from_table({**BAG, **change}, "mix")


def test_a_bag_that_says_nothing_names_all_that_is_missing():
    with pytest.raises(Problems) as caught:
        recipe_from_table({"kind": "bag"}, "mix.recipe")
    assert [line.split(":")[0] for line in caught.value.lines] == [
        "mix.recipe.mass",
        "mix.recipe.yield",
        "mix.recipe.water",
    ]


def test_the_demo_files_are_plain_toml():
    for path in (data_folder() / "recipes").glob("*.toml"):
        assert tomllib.loads(path.read_text(encoding="utf-8"))["format"] == 1


def test_the_collector_gathers_lines_of_every_kind():
    found = Collector()
    found.raise_if_any()
    with found.catch("face"):
        raise Problems(["one", "two"])
    with found.catch("face"):
        raise ValueError("wrong")
    found.unknown({"thicknes": 1, "zzz": 2}, ("thickness",), "layers")
    with pytest.raises(Problems) as caught:
        found.raise_if_any()
    assert caught.value.lines[:3] == ("one", "two", "face: wrong")
    assert "did you mean 'thickness'?" in caught.value.lines[3]
    assert "it has thickness" in caught.value.lines[4]
