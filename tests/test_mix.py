"""The mix: yield, water told apart, extension with stone, refusals and warnings."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from working_eval import check_working

from shop_calc.trade.mortar.materials import material
from shop_calc.trade.mortar.mix import build_mix
from shop_calc.trade.mortar.recipe import recipe
from shop_calc.trade.mortar.recipe_file import recipe_from_table
from shop_calc.units import convert

LB_FT3 = convert(1.0, "lb/ft3", "kg/m3")
FT3_PER_100_LB = convert(1.0, "ft3", "m3") / convert(100.0, "lb", "kg")
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


# Demonstration mortar (invented), per 100 lb binder: cement 80 (3.15), pozzolan 20 (2.60), fine sand 100 saturated
# surface-dry (2.65), total w/cm 0.33, polymer solids 5 (rd 1.10) as 50 % liquid, water reducer 0.6 lb at 40 %
# (solids 1.2), pigment 3 (4.9), air 4 %, 62.4 lb/ft3. Arithmetic, rows DM-1 to DM-4 of worked_job.csv.
def test_the_demonstration_mortar_gives_the_numbers_worked_out_by_hand():
    mix = demo()
    assert mix.mortar_m3 / FT3_PER_100_LB == pytest.approx(1.8226, abs=0.0005)  # DM-1
    assert 100 * mix.added_water_kg == pytest.approx(27.64, abs=0.005)  # DM-2: 33.0 - 5.0 - 0.36
    assert mix.mortar_density_kg_m3 / LB_FT3 == pytest.approx(132.36, abs=0.02)  # DM-3a
    assert 100 * mix.mortar_kg == pytest.approx(241.24, abs=0.005)
    assert mix.air_free_density_kg_m3 / LB_FT3 == pytest.approx(137.87, abs=0.02)  # DM-3b
    assert mix.base_m3 / FT3_PER_100_LB == pytest.approx(2.9112, abs=0.0005)  # DM-4a
    assert mix.phi == pytest.approx(0.6261, abs=0.0001)  # DM-4b
    assert 100 * mix.stone_water_kg == pytest.approx(1.5, abs=0.001)  # DM-4c
    assert mix.w_cm_stone_left_dry == pytest.approx(0.315, abs=1e-6)
    assert mix.base_density_kg_m3 / LB_FT3 == pytest.approx(145.21, abs=0.02)  # DM-4d
    assert mix.w_cm == pytest.approx(0.33, abs=1e-12)


def test_nothing_stirred_in_leaves_pure_mortar():
    mix = build_mix(recipe("demo mortar"))
    assert mix.phi == 1.0
    assert mix.base_m3 == mix.mortar_m3 and mix.base_kg == mix.mortar_kg
    assert mix.stone_water_kg == 0.0


def test_more_stone_always_means_less_mortar_in_the_base():
    shares = [demo(stone_ratio=stone).phi for stone in (0.0, 0.3, 0.6, 0.9, 1.2)]
    assert shares == sorted(shares, reverse=True)


@given(
    w_cm=st.floats(0.28, 0.9),
    sand=st.floats(0.2, 4.0),
    moist=st.floats(0.0, 0.08),
    stone=st.floats(0.0, 1.0),
    stone_moist=st.floats(0.0, 0.05),
    air=st.floats(0.0, 0.12),
)
def test_mass_and_volume_close_for_any_recipe(w_cm, sand, moist, stone, stone_moist, air):
    table = {
        "w_cm": round(w_cm, 4),
        "air": f"{100 * air:.3f} %",
        "parts": {"portland cement": 1, "fine silica sand": {"amount": round(sand, 4), "state": "oven-dry"}},
        "doses": {"acrylic dispersion 50 %": "4 % solids of binder", "iron-oxide pigment yellow": "2 % of cement"},
    }
    made = recipe_from_table(table)
    assume(round(sand, 4) * max(moist - 0.005, 0.0) + 0.04 < w_cm)
    mix = build_mix(made, stone_ratio=stone, stone_moisture_fraction=stone_moist, sand_moisture_fraction=moist)
    water = mix.added_water_kg + mix.free_water_kg + mix.liquid_water_kg
    assert water == pytest.approx(mix.total_water_kg, rel=1e-12)
    assert mix.w_cm == pytest.approx(round(w_cm, 4), rel=1e-9)
    # the mortar weighs binder, saturated sand, all water of the mix, polymer solids, pigment: whatever the moisture
    dry = 1 + round(sand, 4) * 1.005 + round(w_cm, 4) + 0.04 + 0.02
    assert mix.mortar_kg == pytest.approx(dry, rel=1e-9)
    solids = 1 / 3.15 + round(sand, 4) / 2.65 + 0.04 / 1.1 + 0.02 / 4.1 + round(w_cm, 4)
    assert mix.mortar_m3 * 999.5521 * (1 - round(air, 5)) == pytest.approx(solids, rel=1e-4)
    assert 0 < mix.phi <= 1
    assert mix.base_kg == pytest.approx(mix.mortar_kg + stone * 1.01, rel=1e-9)
    assert check_working(mix.working) >= 12


def test_total_mass_grows_by_exactly_what_the_pores_hold():
    # total mass grows by sum OD*abs against the recipe in oven-dry masses, whatever the heap's moisture
    recipe_kg = 1.0 + 1.6 + 0.37 + 0.01 * 0.4 + 0.02  # lean: binder, dry sand, water, reducer solids, white pigment
    lean = recipe("demo lean mortar")
    for moist in (0.0, 0.002, 0.005, 0.04):
        assert build_mix(lean, sand_moisture_fraction=moist).mortar_kg - recipe_kg == pytest.approx(1.6 * 0.005)


def test_wet_sand_is_weighed_heavier_and_the_water_cut():
    # Design 1,000 kg SSD sand, 2 % surface moisture: weigh 1,020 kg and cut water 20 kg, never the other way round
    table = {
        "w_cm": 0.5,
        "parts": {
            "portland cement": 400,
            "fine silica sand": {"amount": 1000, "state": "saturated surface-dry", "absorption": "0 %"},
        },
    }
    made = recipe_from_table(table)
    dry, wet = build_mix(made), build_mix(made, sand_moisture_fraction=0.02)
    assert 400 * wet.mass_kg("fine silica sand") == pytest.approx(1020, abs=0.5)
    assert 400 * (wet.added_water_kg - dry.added_water_kg) == pytest.approx(-20, abs=0.5)
    assert wet.w_cm == pytest.approx(dry.w_cm)


def test_dry_sand_is_weighed_lighter_and_gets_water():
    made = recipe("demo mortar")
    dry = build_mix(made, sand_moisture_fraction=0.0)
    asked = build_mix(made)
    assert dry.mass_kg("fine silica sand") < asked.mass_kg("fine silica sand")
    assert dry.added_water_kg > asked.added_water_kg
    assert dry.mortar_kg == pytest.approx(asked.mortar_kg, rel=1e-12)


def test_five_percent_of_the_water_is_0_016_of_the_ratio():
    made = [recipe_from_table({"water": f"{w} lb", "parts": {"portland cement": "100 lb"}}) for w in (32, 33.6)]
    low, high = (build_mix(each).w_cm for each in made)
    assert high - low == pytest.approx(0.016, abs=1e-9)


def test_a_bag_gives_a_range_of_ratios_and_its_own_yield():
    mix = bag()
    assert mix.basis == "bag"
    assert mix.mortar_m3 * convert(80, "lb", "kg") == pytest.approx(convert(0.60, "ft3", "m3"))
    assert (mix.w_cm_low, mix.w_cm_high) == pytest.approx((5.2 / 16, 5.2 / 9.6))
    assert levels(mix, "how much cement") == {"note"}
    assert mix.mortar_density_kg_m3 == pytest.approx(convert(85.2 / 0.60, "lb/ft3", "kg/m3"))


def test_what_a_bag_gets_besides_makes_room_for_itself():
    plain = bag()
    with_polymer = bag(doses={"acrylic dispersion 50 %": "2 % liquid of bag"})
    own = 0.01 / 1.1 + 0.01  # solids and water of 2 % liquid
    assert (with_polymer.mortar_m3 - plain.mortar_m3) * 999.5521 == pytest.approx(own, rel=1e-6)
    assert with_polymer.total_water_kg - plain.total_water_kg == pytest.approx(0.01)
    # of total mass: p (M) with M counting the dose itself
    of_total = bag(doses={"iron-oxide pigment yellow": "0.5 % of total mass"})
    assert of_total.mass_kg("iron-oxide pigment yellow") == pytest.approx(0.005 * of_total.mortar_kg, rel=1e-9)


@pytest.mark.parametrize("head", [{"w_cm": 0.35}, {"water": 0.30}])
def test_doses_of_total_mass_count_themselves(head):
    table = {
        **head,
        "parts": {"portland cement": 1, "fine silica sand": {"amount": 1.5, "state": "oven-dry"}},
        "doses": {
            "iron-oxide pigment yellow": "1 % of total mass",
            "acrylic dispersion 50 %": "2 % solids of total mass",
            "water reducer, liquid": "0.3 % of total mass",
        },
    }
    mix = build_mix(recipe_from_table(table))
    assert mix.mass_kg("iron-oxide pigment yellow") == pytest.approx(0.01 * mix.mortar_kg, rel=1e-9)
    assert mix.mass_kg("acrylic dispersion 50 %") == pytest.approx(0.04 * mix.mortar_kg, rel=1e-9)
    assert mix.mass_kg("water reducer, liquid") == pytest.approx(0.003 * mix.mortar_kg, rel=1e-9)
    if "water" in head:
        assert mix.added_water_kg == pytest.approx(0.30, rel=1e-12)


def test_fibre_of_total_mass_volume_and_binder():
    base = {"face": {"AR glass fibre": "0.5 % of total mass"}, "base": {"PVA fibre": "0.1 % of volume"}}
    mix = mortar(**base)
    assert mix.face_fibres[0].per_layer_kg == pytest.approx(0.005)
    volume = mix.base_fibres[0].per_layer_kg * mix.base_density_kg_m3 / material("PVA fibre").density_kg_m3
    assert volume == pytest.approx(0.001)
    on_binder = mortar(face={"AR glass fibre": "1 % of binder"}).face_fibres[0].per_layer_kg
    assert on_binder * mix.mortar_kg == pytest.approx(0.01)


def test_more_water_than_powder_is_refused_when_it_is_given_as_water_too():
    with pytest.raises(ValueError, match="upside down"):
        build_mix(recipe_from_table({"water": "188 lb", "parts": {"portland cement": "94 lb"}}))


def test_every_line_of_the_working_can_be_worked_out_again():
    for each in (demo(), demo(stone_moisture_fraction=0.04), bag(), build_mix(recipe("demo lean mortar"))):
        assert check_working(each.working) == len(each.working) - 1  # all but the water of the recipe
        assert all(step.source and step.words for step in each.working)
