"""The temperature of the water: chilled, warmed, ice, what no water can do, and the order of addition."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from working_eval import check_working

from shop_calc.science import heat_balance
from shop_calc.trade.batching.batch import build_batch
from shop_calc.trade.batching.mixer import mixer
from shop_calc.trade.batching.water import plan_water, temps
from shop_calc.trade.mortar.mix import build_mix
from shop_calc.trade.mortar.recipe import recipe
from shop_calc.trade.mortar.recipe_file import recipe_from_table
from shop_calc.trade.shape.layers import rectangle_layers

IN = 0.0254
# 96 x 25.5 x 1.5 in, front and two ends exposed, 1/4 in of face
COUNTER = rectangle_layers(96 * IN, 25.5 * IN, 1.5 * IN, 0.25 * IN, back=0)
DEMO = build_mix(recipe("demo mortar"), stone_ratio=1.2, coarse_sand_ratio=0.6)
BIG = mixer("drum", usable_m3=1.0)


def batch(layers=COUNTER, mix=DEMO, **changes):
    return build_batch(layers, mix, **{"face_allowance_fraction": 0.15, "vessel": BIG, **changes})


def levels(made, word):
    return {each.level for each in made.advice if word in each.text + each.reason}


def test_the_mortar_comes_out_as_wanted_by_the_heat_balance():
    at = temps(24.0, sand_c=18.0, tap_water_c=20.0)
    plan = plan_water(DEMO, at, 18.0)
    sand = DEMO.mass_kg("fine silica sand") / 1.005
    powder = DEMO.mortar_kg - DEMO.mass_kg("fine silica sand") - DEMO.added_water_kg - DEMO.liquid_water_kg
    again = heat_balance.mix_temp_c(
        [powder, sand], [24.0, 18.0], [DEMO.added_water_kg, DEMO.liquid_water_kg, 0.005 * sand],
        [plan.water_temp_c, 24.0, 18.0],
    )  # fmt: skip
    assert again == pytest.approx(18.0, abs=1e-9)
    assert plan.mix_temp_c == pytest.approx(18.0, abs=1e-9)
    assert 18.0 < plan.base_temp_c < 24.0


@pytest.mark.parametrize(
    ("powder", "tap", "wanted", "method"),
    [
        (21.0, 15.0, 16.0, "chilled"),
        (21.0, 15.0, 18.8, "as it comes"),
        (10.0, 10.0, 16.0, "warmed"),
        (35.0, 27.0, 16.0, "ice"),
        (60.0, 30.0, 5.0, "out of reach"),
        (-4.0, 4.0, 30.0, "out of reach"),
    ],
)
def test_each_way_to_reach_a_temperature(powder, tap, wanted, method):
    plan = plan_water(DEMO, temps(powder, tap_water_c=tap), wanted)
    assert plan.method == method
    if method == "out of reach":
        assert not plan.coldest_c <= wanted <= plan.warmest_c
        assert "no water can do" in plan.words
    else:
        assert plan.mix_temp_c == pytest.approx(wanted, abs=0.5 if method == "as it comes" else 1e-9)
        assert plan.coldest_c <= wanted <= plan.warmest_c
        assert (plan.ice_share > 0) == (method == "ice")


@given(powder=st.floats(-5, 60), tap=st.floats(1, 30), wanted=st.floats(5, 35))
def test_water_never_leaves_what_is_possible(powder, tap, wanted):
    plan = plan_water(DEMO, temps(powder, tap_water_c=tap), wanted)
    assert 0 <= plan.ice_share <= 0.75
    assert min(2.0, tap) <= plan.water_temp_c <= 80.0
    assert plan.coldest_c - 1e-9 <= plan.mix_temp_c <= plan.warmest_c + 1e-9
    assert plan.words and check_working(plan.working) == 3


def test_colder_powder_always_wants_warmer_water():
    needed = [plan_water(DEMO, temps(t), 16.0).needed_water_temp_c for t in (5, 15, 25, 35)]
    assert needed == sorted(needed, reverse=True)


def test_ice_is_warned_above_20_and_called_unreliable_above_50_percent():
    some = plan_water(DEMO, temps(31.0, tap_water_c=22.0), 16.0)
    assert 0.2 < some.ice_share <= 0.5 and levels(some, "Crush the ice") == {"act"}
    much = plan_water(DEMO, temps(38.0, tap_water_c=30.0), 10.0)
    assert 0.5 < much.ice_share <= 0.75 and levels(much, "unreliable") == {"act"}
    lines = {
        x.ingredient: x
        for x in batch(temperatures=temps(38.0, tap_water_c=30.0), wanted_mix_temp_c=10.0).loads[0].lines
    }
    assert lines["ice"].mass_kg / (lines["ice"].mass_kg + lines["water"].mass_kg) == pytest.approx(much.ice_share)


def test_chilled_water_names_the_ice_that_does_the_same():
    plan = plan_water(DEMO, temps(21.0, tap_water_c=15.0), 16.0)
    assert 0 < plan.ice_instead_share < 0.2
    sand = DEMO.mass_kg("fine silica sand") / 1.005
    powder = DEMO.mortar_kg - DEMO.mass_kg("fine silica sand") - DEMO.added_water_kg - DEMO.liquid_water_kg
    ice = DEMO.added_water_kg * plan.ice_instead_share
    with_ice = heat_balance.mix_temp_c(
        [powder, sand], 21.0, [DEMO.added_water_kg - ice, DEMO.liquid_water_kg + 0.005 * sand], [15.0, 21.0], ice
    )
    assert with_ice == pytest.approx(16.0, abs=1e-9)


def test_hot_water_never_meets_cement_alone_and_stops_at_80():
    # Cap about 180 °F, and only into cement already mixed with aggregate
    made = batch(temperatures=temps(-4.0, tap_water_c=4.0), wanted_mix_temp_c=30.0)
    assert made.water.water_temp_c == pytest.approx(80.0)
    assert levels(made, "hot water never meets cement alone") == {"act"}
    first = made.order[1]
    assert "onto the sand" in first.text and "no cement yet" in first.text
    assert "Hot water never meets cement alone" in first.why and "scald" in first.caution
    assert not any("Hot water" in step.text for step in batch().order)
    assert levels(made, "Thaw sand") == {"act"}


def test_a_degree_of_each_material_is_told_beside_the_old_rule():
    # cement 100: sand 100: water 32, oven-dry and without air: 3.45, 3.45, 2.38
    made = recipe_from_table(
        {
            "water": 32,
            "parts": {
                "portland cement": 100,
                "fine silica sand": {"amount": 100, "state": "oven-dry", "absorption": "0 %"},
            },
        }
    )
    plan = plan_water(build_mix(made), temps(20.0), 18.0)
    assert dict(plan.degrees_for_one) == pytest.approx({"powder": 3.45, "sand": 3.45, "water": 2.375}, abs=0.006)
    assert levels(plan, "8-4-2") == {"note"}


def test_the_heat_of_mixing_is_told_as_an_upper_bound():
    made = batch(vessel=mixer(usable_m3=1.0, power_w=1500.0))
    assert levels(made, "at the very most") == {"note"}
    assert not levels(batch(), "at the very most")


def test_the_order_keeps_the_face_share_free_of_stone_and_carries_its_cautions():
    texts = [step.text for step in batch().order]
    aside = next(n for n, text in enumerate(texts) if text.startswith("Set the face share aside"))
    stone = next(n for n, text in enumerate(texts) if text.startswith("Stone and coarse sand"))
    fibre = next(n for n, text in enumerate(texts) if "into the face share" in text)
    assert aside < stone < fibre
    cautions = " ".join(step.caution for step in batch().order)
    for word in ("silica", "respirator", "caustic", "Glass fibre", "ground-fault", "heavy"):
        assert word in cautions
    assert [step.number for step in batch().order] == list(range(1, len(texts) + 1))
    plain = batch(mix=build_mix(recipe("demo counter bag"))).order
    assert any("three quarters of the bag" in step.text for step in plain)
