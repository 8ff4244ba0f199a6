"""The batch: masses for both layers, loads and weigh sheets, the temperature of the water, the order of addition."""

from types import SimpleNamespace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from working_eval import check_working

from shop_calc.trade.batching.batch import build_batch
from shop_calc.trade.batching.loads import Portion, split_loads
from shop_calc.trade.batching.mixer import mixer
from shop_calc.trade.batching.water import temps
from shop_calc.trade.batching.weigh import weigh_load
from shop_calc.trade.mortar.mix import build_mix
from shop_calc.trade.mortar.recipe import recipe
from shop_calc.trade.mortar.recipe_file import recipe_from_table
from shop_calc.trade.shape.layers import rectangle_layers
from shop_calc.units import convert

FT3, LB, IN = convert(1.0, "ft3", "m3"), convert(1.0, "lb", "kg"), 0.0254
# 96 x 25.5 x 1.5 in, front and two ends exposed, 1/4 in of face
COUNTER = rectangle_layers(96 * IN, 25.5 * IN, 1.5 * IN, 0.25 * IN, back=0)
DEMO = build_mix(recipe("demo mortar"), stone_ratio=1.2, coarse_sand_ratio=0.6)
BIG = mixer("drum", usable_m3=1.0)


def batch(layers=COUNTER, mix=DEMO, **changes):
    return build_batch(layers, mix, **{"face_allowance_fraction": 0.15, "vessel": BIG, **changes})


def layers(face_m3, core_m3, face_thickness_m=0.00635):
    return SimpleNamespace(face_m3=face_m3, core_m3=core_m3, face_thickness_m=face_thickness_m)


def levels(made, word):
    return {each.level for each in made.advice if word in each.text + each.reason}


# Whole job: the counter, the demonstration mortar extended by 60 lb coarse sand and 120 lb stone per 100 lb binder;
# face +15 %, base +5 %. Arithmetic, rows JOB-1a to 1f.
def test_the_worked_job_gives_the_numbers_worked_out_by_hand():
    made = batch()
    pounds = {each.name: each.total_kg / LB for each in made.ingredients}
    assert made.mortar_m3 / FT3 == pytest.approx(1.5845, abs=0.0005)  # 1a
    assert made.face_share_m3 / FT3 == pytest.approx(0.4378, abs=0.00005)
    assert made.base_m3 / FT3 == pytest.approx(1.8316, abs=0.00005)
    assert made.set_aside_kg / LB == pytest.approx(57.94, abs=0.02)  # 1b
    assert 100 * made.set_aside_fraction == pytest.approx(27.6, abs=0.05)
    assert pounds["portland cement"] == pytest.approx(69.55, abs=0.01)  # 1c
    assert pounds["ground-glass pozzolan"] == pytest.approx(17.39, abs=0.01)
    assert pounds["fine silica sand"] == pytest.approx(86.93, abs=0.01)
    assert pounds["water"] == pytest.approx(24.03, abs=0.01)
    assert pounds["acrylic dispersion 50 %"] == pytest.approx(8.69, abs=0.01)
    assert pounds["water reducer, liquid"] == pytest.approx(0.522, abs=0.001)
    assert pounds["iron-oxide pigment red or black"] == pytest.approx(2.608, abs=0.001)
    assert pounds["coarse sand"] == pytest.approx(37.75, abs=0.01)  # 1d
    assert pounds["stone 3/8 in"] == pytest.approx(75.50, abs=0.01)
    assert pounds["water for the stone"] == pytest.approx(0.94, abs=0.01)
    assert made.mixed_kg / LB == pytest.approx(323.91, abs=0.02)  # 1e
    assert made.mixed_m3 / FT3 == pytest.approx(2.2693, abs=0.0001)
    assert 100 * made.mortar_saved_fraction == pytest.approx(30.2, abs=0.1)  # 1f


def test_the_default_allowances_set_62_98_pounds_aside():
    # JOB-2: face +25 %, base +5 %: 62.98 lb, 29.3 % of 1.6225 ft3
    made = build_batch(COUNTER, DEMO, vessel=BIG)
    assert (made.face_allowance_fraction, made.base_allowance_fraction) == (0.25, 0.05)
    assert made.set_aside_kg / LB == pytest.approx(62.98, abs=0.02)
    assert 100 * made.set_aside_fraction == pytest.approx(29.3, abs=0.05)
    assert made.mortar_m3 / FT3 == pytest.approx(1.6225, abs=0.0005)


def close(made, mix):
    sheet = {}
    for load in made.loads:
        for line in load.lines:
            sheet[line.ingredient] = sheet.get(line.ingredient, 0.0) + line.mass_kg
        assert load.mixed_kg == pytest.approx(
            load.face_kg + load.base_kg + sum(x.mass_kg for x in load.lines if x.kind == "fibre"), rel=1e-9
        )
        assert all(line.mass_kg >= 0 and line.held_back_kg >= 0 for line in load.lines)
    water = sheet.pop("water", 0.0) + sheet.pop("ice", 0.0) + sheet.pop("water back to the face", 0.0)
    totals = {each.name: each.total_kg for each in made.ingredients}
    assert water == pytest.approx(totals.pop("water"), rel=1e-9)
    assert sheet == pytest.approx(totals, rel=1e-9)
    assert sum(load.mixed_kg for load in made.loads) == pytest.approx(made.total_kg, rel=1e-9)
    assert made.mixed_kg == pytest.approx(made.set_aside_kg + made.base_kg, rel=1e-12)
    assert sum(each.face_kg for each in made.ingredients if each.kind != "fibre") == pytest.approx(made.set_aside_kg)
    assert sum(each.base_kg for each in made.ingredients if each.kind != "fibre") == pytest.approx(made.base_kg)
    made_m3 = made.face_m3 + made.core_m3 + made.face_extra_m3 + made.base_extra_m3
    assert made_m3 == pytest.approx(made.mixed_m3, rel=1e-12)
    assert sum(load.mortar_m3 for load in made.loads) == pytest.approx(made.mortar_m3, rel=1e-9)
    assert sum(load.face_m3 for load in made.loads) == pytest.approx(made.face_share_m3, rel=1e-9)
    assert mix.mortar_density_kg_m3 * made.mortar_m3 == pytest.approx(made.mortar_kg)


@given(
    face=st.floats(0.0005, 0.03),
    core=st.one_of(st.just(0.0), st.floats(0.0001, 0.2)),
    usable=st.floats(0.004, 0.5),
    stone=st.floats(0.0, 1.3),
    moist=st.floats(0.0, 0.06),
    powder=st.floats(2.0, 40.0),
    name=st.sampled_from(["demo mortar", "demo lean mortar", "demo counter bag"]),
)
def test_loads_add_up_to_the_whole_for_any_job(face, core, usable, stone, moist, powder, name):
    ratio = stone / 5 if "bag" in name else stone
    mix = build_mix(recipe(name), stone_ratio=ratio, stone_moisture_fraction=moist)
    made = batch(
        layers(face, core), mix, vessel=mixer(usable_m3=usable, load_interval_h=0.25), temperatures=temps(powder)
    )
    close(made, mix)
    assert all(load.fullest_m3 <= usable * (1 + 1e-9) for load in made.loads)
    assert [load.water_in_offset_h for load in made.loads] == pytest.approx([0.25 * n for n in range(len(made.loads))])
    assert check_working(made.working) >= 15


def test_loads_are_equal_and_the_face_comes_out_of_the_last():
    made = batch(vessel=mixer(usable_m3=0.040))
    assert [load.name for load in made.loads] == ["base 1", "base 2 and face"]
    assert made.loads[0].mortar_m3 == pytest.approx(made.loads[1].mortar_m3)
    assert [load.face_m3 for load in made.loads] == pytest.approx([0.0, made.face_share_m3])
    mixing = [[(x.ingredient, x.mass_kg) for x in load.stage("mix")] for load in made.loads]
    for (name, first), (other, second) in zip(*mixing, strict=True):
        assert name == other and first == pytest.approx(second)
    assert not made.loads[0].stage("face") and made.loads[1].stage("face")[0].ingredient == "AR glass fibre"


def test_a_face_that_does_not_fit_is_mixed_last_in_a_load_of_its_own():
    made = batch(layers(0.010, 0.020), vessel=mixer(usable_m3=0.0125))
    assert [load.name for load in made.loads] == ["base 1", "base 2", "face"]
    assert "does not fit" in made.loads_why
    assert made.loads[-1].base_m3 == 0 and not made.loads[-1].stage("base")


@pytest.mark.parametrize(
    ("face", "base", "phi", "usable", "names"),
    [
        (0.01, 0.0, 1.0, 0.02, ["face"]),
        (0.0, 0.01, 0.6, 0.02, ["base"]),
        (0.0, 0.03, 0.6, 0.02, ["base 1", "base 2"]),
        (0.03, 0.0, 1.0, 0.02, ["face 1", "face 2"]),
        (0.005, 0.015, 0.6, 0.0151, ["base and face"]),
        (0.006, 0.006, 1.0, 0.006, ["base 1", "base 2 and face"]),
    ],
)
def test_loads_of_every_kind_of_job(face, base, phi, usable, names):
    loads, why = split_loads(face, base, phi, usable)
    assert [load.name for load in loads] == names
    assert sum(load.mortar_m3 for load in loads) == pytest.approx(face + phi * base)
    assert why


def test_impossible_loads_are_refused():
    with pytest.raises(ValueError, match="something to mix"):
        split_loads(0.0, 0.0, 1.0, 0.01)
    with pytest.raises(ValueError, match="at most 500"):
        split_loads(0.1, 10.0, 1.0, 0.001)
    with pytest.raises(ValueError, match="usable volume"):
        split_loads(0.1, 1.0, 1.0, 0.0)


def test_wet_stone_is_held_out_of_the_water_and_both_layers_keep_their_ratio():
    wet = build_mix(recipe("demo mortar"), stone_ratio=1.2, stone_moisture_fraction=0.03)
    dry = build_mix(recipe("demo mortar"), stone_ratio=1.2, stone_moisture_fraction=0.01)
    for usable in (0.040, 1.0):
        made, asked = (batch(mix=mix, vessel=mixer(usable_m3=usable)) for mix in (wet, dry))
        close(made, wet)
        binder = made.base_m3 / wet.base_m3
        # added water changes by -OD (mc - abs): 1.2 x 0.02 per kg of binder in the base
        change = made.ingredient("water").total_kg - asked.ingredient("water").total_kg
        assert change == pytest.approx(-0.024 * binder, rel=1e-9)
        assert made.mixed_kg == pytest.approx(asked.mixed_kg, rel=1e-12)
        shared = made.loads[-1]
        lines = {line.ingredient: line.mass_kg for line in shared.lines}
        taken = shared.set_aside_kg / (shared.mortar_kg - held_out(shared, wet))
        in_face = taken * lines["water"] + lines["water back to the face"]
        in_base = (1 - taken) * lines["water"] + 0.024 * shared.base_m3 / wet.base_m3
        for layer_water, layer in ((in_face, shared.face_m3), (in_base, shared.mortar_m3 - shared.face_m3)):
            assert layer_water / (layer / wet.mortar_m3) == pytest.approx(wet.added_water_kg, rel=1e-9)


def held_out(load, mix):
    water = next(line.mass_kg for line in load.lines if line.ingredient == "water")
    return load.mortar_m3 / mix.mortar_m3 * mix.added_water_kg - water


def test_stone_too_wet_for_its_load_is_refused():
    soaked = build_mix(recipe("demo mortar"), stone_ratio=1.5, stone_moisture_fraction=0.3)
    with pytest.raises(ValueError, match="let the stone dry"):
        weigh_load(soaked, Portion("base", 0.01, 0.0), 1, load_interval_h=0.3, ice_share=0, held_back_fraction=0)


def test_water_is_held_back_and_goes_in_first():
    made = batch()
    first = made.loads[0].stage("mix")[0]
    assert first.ingredient == "water"
    assert first.held_back_kg == pytest.approx(0.10 * first.mass_kg)
    assert first.first_kg + first.held_back_kg == pytest.approx(first.mass_kg)
    assert batch(held_back_fraction=0.0).loads[0].lines[0].held_back_kg == 0


def test_a_third_of_the_face_is_the_largest_particle():
    coarse = recipe_from_table(
        {"kind": "bag", "mass": "80 lb", "water": "5 lb", "yield": "0.6 ft3", "largest_particle": "1/8 in"}
    )
    with pytest.raises(ValueError, match="cannot make this face"):
        batch(mix=build_mix(coarse))
    assert batch(layers(0.01, 0.04, 0.009525), build_mix(coarse)).set_aside_kg > 0  # 3/8 in: 1/8 is just a third
    unknown = recipe_from_table({"kind": "bag", "mass": "80 lb", "water": "5 lb", "yield": "0.6 ft3"})
    assert "act" in levels(batch(mix=build_mix(unknown)), "Sieve")


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"face_allowance_fraction": 1.5}, "face allowance: 1.5 given"),
        ({"base_allowance_fraction": -0.1}, "base allowance"),
        ({"held_back_fraction": 0.9}, "water held back"),
        ({"hands": 0}, "people at work"),
        ({"wanted_mix_temp_c": 60.0}, "wanted mix temperature: 60 °C given"),
    ],
)
def test_impossible_entries_are_refused_by_name(change, words):
    with pytest.raises(ValueError, match=words):
        batch(**change)


def test_impossible_mixers_and_temperatures_are_refused():
    with pytest.raises(ValueError, match="vessel: 'bath' given"):
        mixer("bath")
    with pytest.raises(ValueError, match="rest after mixing"):
        mixer(load_interval_h=0.2, rest_h=0.5)
    with pytest.raises(ValueError, match="usable volume"):
        mixer(usable_m3=0)
    with pytest.raises(ValueError, match="tap water"):
        temps(20.0, tap_water_c=-1.0)
    with pytest.raises(ValueError, match="there are portland cement"):
        batch().ingredient("gold")


def test_a_drum_is_half_full_unless_told():
    # A 2.413 ft3 counter with sink wants a drum of at least twice that, 4.8 ft3
    assert mixer("drum", rated_m3=4.826 * FT3).usable_m3 == pytest.approx(2.413 * FT3)
    one = batch(
        layers(0.413 * FT3, 2.0 * FT3), build_mix(recipe("demo mortar")), vessel=mixer("drum", rated_m3=6 * FT3)
    )
    assert len(one.loads) == 1
    sink = layers(0.413 * FT3, 2.0 * FT3)
    small = build_batch(
        sink, build_mix(recipe("demo mortar")), face_allowance_fraction=0.0, base_allowance_fraction=0.0,
        vessel=mixer("drum", rated_m3=4.7 * FT3),
    )  # fmt: skip
    assert len(small.loads) == 2
    assert "a drum rated 4.83 ft³" in next(each.reason for each in small.advice if "drum" in each.reason)


def test_a_long_pour_is_stopped_before_it_makes_cold_joints():
    # 15 x 10 ft x 5 in, one person: 62.5 ft3, 105 bags, 4.5 h of mixing against 4 h of set at 80 °F
    crossing = batch(layers(0.0, 62.5 * FT3), build_mix(recipe("demo counter bag")), vessel=mixer(
        "drum", rated_m3=6 * FT3, load_interval_h=4.5 / 22), base_allowance_fraction=0.0, hands=1)  # fmt: skip
    assert levels(crossing, "cold joint") == {"stop"}
    assert levels(crossing, "arms are tired") == {"act"}
    assert crossing.advice[0].level == "stop"
    assert not levels(batch(), "cold joint")


def test_mixing_time_counts_every_hand():
    made = batch(vessel=mixer(usable_m3=0.012, load_interval_h=1 / 3), hands=2)
    assert made.mixing_h == pytest.approx(len(made.loads) / 3)
    assert made.person_h == pytest.approx(2 * made.mixing_h)
    assert made.first_water_to_last_h == pytest.approx(made.mixing_h - 1 / 3)
    assert levels(made, "no longer knits") == {"act"}


def test_a_heavy_vessel_is_not_for_one_person():
    assert levels(batch(), "Do not lift") == {"note"}
    assert not levels(batch(layers(0.001, 0.004)), "Do not lift")


def test_a_job_without_stone_or_without_a_face_still_closes():
    plain = build_mix(recipe("demo lean mortar"))
    for one in (layers(0.003, 0.02), layers(0.0, 0.02), layers(0.01, 0.0)):
        close(batch(one, plain), plain)
    assert batch(layers(0.003, 0.02), plain).mortar_saved_fraction == pytest.approx(0.0, abs=1e-12)
