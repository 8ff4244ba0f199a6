"""The table of materials and how a person finds a material in it."""

import csv

import pytest

from shop_calc.defaults import data_folder
from shop_calc.trade.mortar.materials import BINDER_KINDS, KINDS, Material, material, materials

MARKS = {"read", "unnamed", "memory", "derived", "practice", "judgement", "invented"}


def rows():
    with open(data_folder() / "materials.csv", newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def test_every_row_has_a_kind_a_mark_and_a_source():
    for row in rows():
        assert row["kind"] in KINDS
        assert row["mark"] in MARKS
        assert row["source"].strip()
        assert None not in row, f"{row['material']}: more cells than columns"


def test_relative_densities_lie_inside_their_own_range():
    for each in materials().values():
        if each.low is not None:
            assert each.low <= each.relative_density <= each.high, each.name


def test_only_read_rows_claim_an_edition_and_recalled_ones_say_so():
    for row in rows():
        if row["mark"] == "memory":
            assert row["source"].startswith("from memory of")


def test_a_liquid_weighs_what_its_solids_and_water_weigh_together():
    # 1/(s/rd + 1 - s): volumes of solids and water add up
    for each in materials().values():
        if each.is_liquid and each.kind != "water":
            share = each.solids_fraction
            derived = 1 / (share / each.solids_relative_density + 1 - share)
            assert each.low <= derived <= each.high
            assert each.relative_density == pytest.approx(derived, abs=0.012), each.name


def test_slag_is_binder_but_no_cement():
    slag = material("slag cement")
    assert slag.kind in BINDER_KINDS and not slag.is_cement
    assert material("portland cement").is_cement and material("white portland cement").is_cement


@pytest.mark.parametrize(
    ("typed", "near"),
    [("portland", "portland cement"), ("wite portland cement", "white portland cement"), ("stone", "stone 3/8 in")],
)
def test_a_name_that_is_not_there_is_answered_with_near_ones(typed, near):
    with pytest.raises(ValueError, match=near) as caught:
        material(typed, "mix.parts")
    assert str(caught.value).startswith(f"mix.parts: '{typed}' given")


def test_capitals_and_spaces_do_not_matter():
    assert material("  Portland   CEMENT ") is material("portland cement")


@pytest.mark.parametrize(
    ("entries", "words"),
    [
        ({"kind": "aggregat"}, "kind of own"),
        ({"kind": "aggregate", "relative_density": 2650}, "relative density of own: 2650 given"),
        ({"kind": "aggregate", "relative_density": -1}, "at least 0.01"),
        ({"kind": "aggregate", "relative_density": 5e-324}, "at least 0.01"),
        ({"kind": "polymer liquid", "relative_density": 1.1, "solids_relative_density": 5e-324}, "the solids of own: 4.94"),
        ({"kind": "aggregate", "relative_density": 2.6, "absorption_fraction": 1.5}, "absorption of own"),
        ({"kind": "polymer liquid", "relative_density": 1.1, "solids_fraction": 1.2}, "solids of own"),
    ],
)
def test_an_impossible_material_is_refused_by_name(entries, words):
    with pytest.raises(ValueError, match=words):
        Material(name="own", **entries)
