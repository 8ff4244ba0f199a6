"""What is said at the mixer and of a mix begins at the limit that is named, not before: each limit from both sides.

A limit met exactly is met, whatever binary fractions make of it; half a percent further it is not.
"""

from dataclasses import replace

import pytest

from shop_calc import defaults, units
from shop_calc.trade.batching.batch import build_batch
from shop_calc.trade.batching.batch_advice import batch_advice, refuse_face
from shop_calc.trade.batching.loads import split_loads
from shop_calc.trade.batching.mix_heat import MixHeat
from shop_calc.trade.batching.mixer import Mixer, mixer
from shop_calc.trade.batching.order import order_of_addition
from shop_calc.trade.batching.water import plan_water, temps
from shop_calc.trade.batching.water_advice import water_advice
from shop_calc.trade.mortar.mix import build_mix
from shop_calc.trade.mortar.mix_advice import mix_advice
from shop_calc.trade.mortar.recipe import recipe
from shop_calc.trade.mortar.recipe_file import recipe_from_table
from shop_calc.trade.shape.layers import rectangle_layers

IN, FURTHER, SAME = 0.0254, 0.005, 1e-12
DEMO = build_mix(recipe("demo mortar"), stone_ratio=1.2, coarse_sand_ratio=0.6)
BIG = mixer("drum", usable_m3=1.0)
BATCH = build_batch(rectangle_layers(96 * IN, 25.5 * IN, 1.5 * IN, 0.25 * IN, back=0), DEMO, vessel=BIG)
AT = temps(24.0, sand_c=18.0, tap_water_c=20.0)


def said(advice, words):
    return any(words in each.text + each.reason for each in advice)


def one_value(name, value):
    """The demo mix with one thing changed, or a pair of them."""
    pairs = {"pigment_share": (value,) * 3, "w_cm": value}
    changes = {name: pairs.get(name, value)}
    if name == "w_cm":
        changes |= {"w_cm_low": value, "w_cm_high": value}
    return mix_advice(replace(DEMO, **changes))


@pytest.mark.parametrize(
    ("name", "limit", "outwards", "words"),
    [
        ("phi", defaults.si("phi_warn"), -1, "it is harsh"),
        ("w_cm", defaults.si("w_cm_high"), 1, "Take less water"),
        ("w_cm", defaults.si("w_cm_low"), -1, "Expect a stiff mix"),
        ("pigment_share", defaults.si("pigment_warn"), 1, "Take less pigment"),
        ("pigment_share", 0.01, -1, "Expect a pale colour"),  # judgement: below about 1 %
    ],
)
def test_a_word_on_a_mix_begins_at_its_limit(name, limit, outwards, words):
    assert not said(one_value(name, limit), words)
    assert words == "Expect a pale colour" or not said(one_value(name, limit * (1 + outwards * SAME)), words)
    assert said(one_value(name, limit * (1 + outwards * FURTHER)), words)
    assert not said(one_value(name, limit * (1 - outwards * FURTHER)), words)


def test_a_mix_is_refused_just_beyond_its_limits_and_not_at_them():
    least = DEMO.void_fraction + defaults.si("phi_margin")
    for name, limit, outwards, words in (("phi", least, -1, "mortar share"), ("pigment_share", 0.10, 1, "ASTM C979")):
        one_value(name, limit), one_value(name, limit * (1 + outwards * SAME))
        with pytest.raises(ValueError, match=words):
            one_value(name, limit * (1 + outwards * FURTHER))


def test_polymer_that_wants_dry_air_begins_at_five_percent():
    limit = defaults.si("polymer_air_cure")
    assert limit == 0.05  # row CR-9a
    for share, expected in ((limit, True), (limit * (1 - SAME), True), (limit * (1 - FURTHER), False)):
        assert said(one_value("polymer_solids_share", share), "polymer film must dry") is expected


def test_retarder_is_told_in_percent_of_the_cement_and_judged_on_both_sides():
    # rows SU-1a and SU-1b: 0.05 % of the cement adds about 4 h, 0.2 % is days; between them from 0.1 % on
    parts = {"portland cement": 100, "fine silica sand": {"amount": 100, "state": "oven-dry"}}
    for dose, level, span in (("0.05", "note", "0.05 %"), ("0.1", "note", "0.10 %"), ("0.1005", "act", "0.10 %"),
                              ("0.199", "act", "0.20 %"), ("0.2", "stop", "0.20 %"), ("1.20", "stop", "1.20 %")):  # fmt: skip
        doses = {"sugar, as a retarder": f"{dose} % of cement"}
        mix = build_mix(recipe_from_table({"water": 32, "parts": parts, "doses": doses}))
        found = [each for each in mix.advice if "of the cement" in each.reason]
        assert [(each.level, each.reason.startswith(span)) for each in found] == [(level, True)], dose


def test_a_label_must_make_a_mix_that_is_neither_foam_nor_iron():
    # one cubic foot = 0.0283168 m3 of 62.5 + 0 lb is 1001 kg/m3; the water counts: 60 + 3 lb is 1009, 60 + 2 lb is 993
    # and 160 + 14 lb is 2787, 160 + 16 lb is 2819
    for mass, water, allowed in ((60, 3, True), (60, 2, False), (160, 14, True), (160, 16, False)):
        label = {"kind": "bag", "mass": f"{mass} lb", "water": f"{water} lb", "yield": "1 ft3"}
        if allowed:
            recipe_from_table(label)
        else:
            with pytest.raises(ValueError, match="wet mix is 1000 to 2800"):
                recipe_from_table(label)


def test_what_is_said_at_the_mixer_begins_at_its_limit():
    gap, setting = defaults.si("layer_gap"), defaults.si("set_time_initial")
    for limit, words in ((gap, "no longer knits"), (setting, "cold joint"), (3.0, "never thin the mix")):
        at, beyond = limit * (1 + SAME * (limit == gap)), limit * (1 + FURTHER)
        assert said(batch_advice(replace(BATCH, mixing_h=beyond), DEMO, BIG), words), words
        assert not said(batch_advice(replace(BATCH, mixing_h=at), DEMO, BIG), words), words
    # 51 lb = 23.13 kg: load constant of the lifting equation. Two may lift 4/3 of it, three 3/2 (HSE L23, as quoted)
    words = ("scoop it out or tip it, or take two people.", "or take three people.", "scoop it out or tip it.")
    for kg, expected in ((23.1, None), (23.2, 0), (30.8, 0), (30.9, 1), (34.6, 1), (34.8, 2)):
        loads = tuple(replace(load, mortar_kg=kg, base_kg=0.0) for load in BATCH.loads)
        lines = batch_advice(replace(BATCH, loads=loads), DEMO, BIG)
        assert [word for word in words if said(lines, word)] == ([] if expected is None else [words[expected]]), kg


def test_hours_and_minutes_of_mixing_are_told_as_they_are():
    for hours, words in ((0.95, "57 min"), (1.0, "1.0 h"), (1.01, "1.0 h"), (2.5, "2.5 h")):
        found = batch_advice(replace(BATCH, mixing_h=hours), DEMO, BIG)
        assert hours <= defaults.si("layer_gap") or said(found, f"loads take {words}"), hours


def test_the_heat_of_the_mixer_is_power_times_time_over_heat_capacity():
    # 1500 W for the time of a load less its rest; water takes 4184 J/(kg K)
    vessel = mixer(usable_m3=1.0, power_w=1500.0)
    made = build_batch(rectangle_layers(96 * IN, 25.5 * IN, 1.5 * IN, 0.25 * IN, back=0), DEMO, vessel=vessel)
    mortar_kg = made.loads[0].mortar_m3 / DEMO.mortar_m3  # the only load; the mix stands for 1 kg of binder
    as_water = 0.22 * sum(line.dry_kg for line in DEMO.lines) + DEMO.added_water_kg + sum(line.water_kg for line in DEMO.lines)
    joule = 1500.0 * 60.0 * (60.0 * vessel.load_interval_h - 60.0 * vessel.rest_h)
    rise = units.show(joule / (4184.0 * as_water * mortar_kg), "temperature_difference")
    assert said(made.advice, f"would warm a load by {rise} at the very most")


def test_a_third_of_the_face_is_still_fine():
    stone = DEMO.largest_particle_m
    refuse_face(DEMO, 3 * stone * (1 - SAME))
    with pytest.raises(ValueError, match="third of the face"):
        refuse_face(DEMO, 3 * stone * (1 - FURTHER))


def test_one_load_holds_what_fits_to_the_last_drop():
    # 0.1 + 0.2 is a little more than 0.3 in binary
    assert split_loads(0.1, 0.2, 1.0, 0.3) == split_loads(0.1, 0.2, 1.0, 0.3 + 1e-12)
    assert len(split_loads(0.1, 0.2, 1.0, 0.3)[0]) == 1 and len(split_loads(0.1, 0.2, 1.0, 0.3 * 0.995)[0]) == 2
    assert len(split_loads(0.01, 0.3, 0.5, 0.3)[0]) == 1 and len(split_loads(0.01, 0.3, 0.5, 0.3 * 0.995)[0]) == 2
    assert split_loads(0.0, 0.5, 0.6, 0.3)[1] == "2 equal loads."
    assert split_loads(0.05, 0.5, 0.6, 0.3)[1] == "2 equal loads, the face share out of the last one."
    assert split_loads(0.4, 0.5, 0.6, 0.5)[1].endswith("in a load of its own.")
    assert split_loads(0.9, 0.5, 0.6, 0.5)[1].endswith("in 2 loads of its own.")


def test_the_heat_of_what_is_not_water_is_weighed_with_its_own_temperature():
    # cement and oven-dry sand, one part each; 0.22 of the heat of water; 30 and 10 °C
    parts = {"portland cement": 100, "fine silica sand": {"amount": 100, "state": "oven-dry", "absorption": "0 %"}}
    heat = MixHeat(build_mix(recipe_from_table({"water": 32, "parts": parts})), temps(30.0, sand_c=10.0, tap_water_c=12.0))
    per_kg = heat.added_kg / 0.32  # of cement, and of sand
    assert heat.solids == pytest.approx([per_kg, per_kg])
    assert heat.other_heat == pytest.approx(0.22 * per_kg * (30.0 + 10.0), rel=1e-12)
    assert heat.capacity_kg == pytest.approx(per_kg * (0.44 + 0.32), rel=1e-12)


def test_water_comes_as_it_is_within_half_a_degree():
    heat = MixHeat(DEMO, AT)
    for off_k, method in ((0.495, "as it comes"), (0.505, "warmed"), (-0.495, "as it comes"), (-0.505, "chilled")):
        assert plan_water(DEMO, AT, heat.mix_c(20.0 + off_k)).method == method, off_k


PLAN = plan_water(DEMO, AT, 18.0)


def of_plan(**changes):
    return water_advice(replace(PLAN, **changes), DEMO, AT)


def test_what_is_said_of_ice_and_hot_water_begins_at_its_limit():
    for share, words in ((0.20, "Weigh the ice as water."), (0.201, "Crush the ice"), (0.5, "Crush the ice"),
                         (0.501, "rather than trust so much ice")):  # fmt: skip
        assert said(of_plan(method="ice", ice_share=share)[1], words), share
    assert not said(of_plan(method="ice", ice_share=0.0)[1], "Weigh the ice")
    for instead, expected in ((0.0, False), (0.75, True), (0.751, False)):
        assert said(of_plan(method="chilled", ice_instead_share=instead)[1], "No chilled water?") is expected
    hot = defaults.si("water_hot_warn")
    for water_c, expected in ((hot, False), (hot + 0.1, True)):
        assert said(of_plan(method="warmed", water_temp_c=water_c)[1], "it scalds") is expected


def test_what_no_water_can_do_is_told_the_right_way_round():
    cold = of_plan(method="out of reach", ice_share=0.75, water_temp_c=2.0, mix_temp_c=14.0, wanted_mix_temp_c=10.0)
    warm = of_plan(method="out of reach", ice_share=0.0, water_temp_c=80.0, mix_temp_c=25.0, wanted_mix_temp_c=30.0)
    assert cold[0].startswith("Even 75 % of the mixing water as ice") and said(cold[1], "Store powder and sand colder")
    assert warm[0].startswith("Even water at") and said(warm[1], "Store powder and sand warmer, heat the shop")


def test_hot_water_changes_the_order_above_35_degrees():
    for water_c, expected in ((34.8, False), (35.2, True)):
        steps = order_of_addition(DEMO, replace(PLAN, method="warmed", water_temp_c=water_c), 1 / 6)
        assert any("Hot water" in step.why for step in steps) is expected


def test_stone_gets_its_own_water_only_when_it_drinks():
    for water_kg, expected in ((0.01, True), (0.0, False), (-0.01, False)):
        steps = order_of_addition(replace(DEMO, stone_water_kg=water_kg), PLAN, 1 / 6)
        assert any("with their own water" in step.text for step in steps) is expected


def test_a_vessel_that_nobody_described_is_a_tub_of_twelve_litres():
    made = Mixer()
    assert (made.usable_m3, 60 * made.load_interval_h, 60 * made.rest_h) == pytest.approx((0.012, 20.0, 10.0))


def test_the_working_starts_from_the_binder_of_the_whole_batch():
    given = {name: value for step in BATCH.working for name, value, _ in step.inputs}
    assert given["B_all"] == pytest.approx(BATCH.mortar_kg / DEMO.mortar_kg)
    assert given["B_base"] == pytest.approx(BATCH.base_kg / DEMO.base_kg)
