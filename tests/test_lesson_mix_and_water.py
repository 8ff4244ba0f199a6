"""Lessons 02 and 03: sums against numbers worked by hand, sliders at every end, tables that stay text."""

import itertools

import pytest

from shop_calc import units
from shop_calc.lesson.blocks import Block, slider
from shop_calc.lesson.book import book
from shop_calc.lesson.check import Kind, check
from shop_calc.lesson.moves import mix_and_yield, water_temperature
from shop_calc.lesson.pictures.from_plan import one_mix_of
from shop_calc.lesson.pictures.one_mix import one_mix_alt
from shop_calc.lesson.practice import Practice
from shop_calc.lesson.table import table
from shop_calc.trade.jobs.job import demo_job, read_job
from shop_calc.trade.plan import make_plan

PLAN = make_plan(read_job(demo_job("garden_bench_top")))
STONE = ("stone_ratio", "coarse_sand_ratio", "stone_moisture_fraction", "face_allowance_fraction")
STONE_ENDS = ((0.0, 2.4), (0.0, 1.8), (0.0, 0.04), (0.10, 0.40))
HEAT = ("powder_c", "water_c", "ice_share", "wanted_c")
HEAT_ENDS_F = ((35, 100), (34, 120), (0, 75), (50, 75))


def lb(kg):
    return units.convert(kg, "kg", "lb")


def fahrenheit(temp_c):
    return units.convert(temp_c, "C", "F")


def celsius(temp_f):
    return units.convert(temp_f, "F", "C")


@pytest.mark.parametrize(
    ("lesson", "id", "by_hand"),
    [
        # 1 ft3 - 5 % - 40/(3.15*62.4) - 14/62.4 = 0.52214 ft3 of sand, times 2.65*62.4
        ("mix_and_yield", "sand", 86.34),
        ("mix_and_yield", "poured", 100 * 0.34 - 12 * 0.53),
        ("mix_and_yield", "sugar", 80 * 0.16 * 0.0005 * 453.59237),
        ("mix_and_yield", "set_aside", 420 * 1.25 / 1728 * 132),
        ("mix_and_yield", "damp_sand", 208.0),
        ("mix_and_yield", "bags", 28.0),  # 8.2/0.30 = 27.3
        ("mix_and_yield", "pints", 9 * 2.0854 / 2),  # a quart of water is 57.75 in3 at 62.4 lb/ft3
        ("mix_and_yield", "left_dry", (22.5 * 0.33 - 27 * 0.015) / 22.5),
        ("water_temperature", "mix", 99.2 / 1.38),  # 1 : 3 : 0.5 at 90 and 40 °F
        ("water_temperature", "needed", 60 - 0.22 * 70 * 12 / 11),
        ("water_temperature", "colder", 4 * 78 / 34),
        ("water_temperature", "ice", (0.22 * 70 * 26 + 11 * 12) / (144 + 72 - 32)),
        ("water_temperature", "page", 27.74),  # (0.22 x 350 x 8 + 75 x 48)/(0.22 x 350 + 75) = 4216/152
        ("water_temperature", "mixer", 1400 * 240 / (4184 * 26 * 0.45359237) * 1.8),
    ],
)
def test_answers_are_those_worked_by_hand(lesson, id, by_hand):
    assert Practice(lesson).solution(id) == pytest.approx(by_hand, rel=5e-4)


@pytest.mark.parametrize(
    ("lesson", "id", "believed", "part"),
    [
        ("mix_and_yield", "sugar", 18.1, "Percent of what?"),  # the dose on the whole bag
        ("mix_and_yield", "damp_sand", 192, "stands in print and is wrong"),
        ("mix_and_yield", "bags", 30, "dry powder"),  # 8.2 x 145/40 = 29.7
        ("mix_and_yield", "pints", 9, "Weigh a pint"),
        ("water_temperature", "page", 15.1, "page's own number"),
        ("water_temperature", "mix", 84.4, "four to five times"),
        ("water_temperature", "colder", 16, "the rule for lean mixes"),
    ],
)
def test_wrong_beliefs_and_wrong_printed_answers_earn_their_own_hint(lesson, id, believed, part):
    outcome = check(Practice(lesson)[id], believed)
    assert outcome.kind is Kind.SLIP and part in outcome.text


def test_the_block_of_lesson_02_starts_at_the_plan_of_the_bench_top():
    mix, batch = mix_and_yield.stretch(1.2, 0.6, 0.0, 0.25)
    assert batch.set_aside_kg == pytest.approx(PLAN.batch.set_aside_kg, rel=1e-12)
    assert [load.name for load in batch.loads] == [load.name for load in PLAN.batch.loads]
    assert mix.phi == pytest.approx(PLAN.mix.phi, rel=1e-12)
    rows = mix_and_yield.stretch_rows(batch)
    fibre = sum(item.total_kg for item in batch.ingredients if item.kind == "fibre")
    assert rows[-1].base_kg + rows[-1].face_kg == pytest.approx(batch.total_kg - fibre, rel=1e-12)


def test_stone_saves_mortar_and_leaves_the_face_share_alone():
    found = [mix_and_yield.stretch(ratio, 0.6, 0.0, 0.25) for ratio in (0.0, 0.6, 1.2, 1.8, 2.4)]
    assert len({round(batch.set_aside_kg, 9) for _, batch in found}) == 1
    mortar = [batch.mortar_kg for _, batch in found]
    assert mortar == sorted(mortar, reverse=True)


def test_stone_stops_drinking_where_its_moisture_pays_for_the_coarse_sand_too():
    # 1.2 x 1 % + 0.6 x 0.5 % = 1.5 % of the binder; on 1.2 parts of stone that is 1.25 %
    drinks, neither, brings = (mix_and_yield.stretch(1.2, 0.6, wet, 0.25) for wet in (0.0120, 0.0125, 0.0130))
    assert "drinks" in mix_and_yield.stretch_words(drinks)
    assert "neither" in mix_and_yield.stretch_words(neither)
    assert "brings" in mix_and_yield.stretch_words(brings)


def test_a_harsh_base_is_warned_of_and_one_with_holes_refused():
    assert "Harsh" in mix_and_yield.stretch_words(mix_and_yield.stretch(1.5, 0.6, 0.0, 0.25))
    assert "Harsh" not in mix_and_yield.stretch_words(mix_and_yield.stretch(1.2, 0.6, 0.0, 0.25))
    with pytest.raises(ValueError, match="voids of the stone"):
        mix_and_yield.stretch(2.4, 1.8, 0.0, 0.25)


def driven(block, names, ends):
    """Every corner of a block's sliders: its words, which may be a refusal."""
    for corner in itertools.product(*ends):
        block.set(**dict(zip(names, corner, strict=True)))
        assert "fault" not in block.text and block.text and block.alt
        yield block.text


@pytest.mark.parametrize("system", ["us", "si", "both"])
def test_the_block_of_lesson_02_speaks_at_every_end(system):
    start = (1.2, 0.6, 0.0, 0.25)
    rows = [
        slider(name, label=name, value=100 * at if "fraction" in name else at,
               low=100 * low if "fraction" in name else low, high=100 * high if "fraction" in name else high,
               unit="%" if "fraction" in name else "-")
        for name, at, (low, high) in zip(STONE, start, STONE_ENDS, strict=True)
    ]  # fmt: skip
    block = Block(mix_and_yield.stretch, mix_and_yield.stretch_words, rows, picture=mix_and_yield.stretch_bars(*start))
    block.units.system = system
    said = list(driven(block, STONE, STONE_ENDS))
    assert any(text.startswith("Not possible") for text in said) and any("Set aside" in text for text in said)
    assert max(len(text.splitlines()) for text in said) <= 4


@pytest.mark.parametrize("system", ["us", "si", "both"])
def test_the_block_of_lesson_03_speaks_at_every_end(system):
    start = (celsius(70), 15.0, 0.0, celsius(60))
    rows = [
        slider(name, label=name, value=at, low=low, high=high, unit="%" if name == "ice_share" else "F")
        for name, at, (low, high) in zip(HEAT, (70, 59, 0, 60), HEAT_ENDS_F, strict=True)
    ]
    picture = water_temperature.warmth_picture(*start)
    block = Block(water_temperature.warmth, water_temperature.warmth_words, rows, picture=picture)
    block.units.system = system
    ends = [row.ends for row in block.rows.values()]
    said = list(driven(block, HEAT, ends))
    assert any("no such water" in text for text in said) and any("never meets cement" in text for text in said)
    assert any(text.startswith("Not possible") for text in said)  # more ice than a cold mortar can melt
    assert max(len(text.splitlines()) for text in said) <= 3


def test_the_block_of_lesson_03_agrees_with_the_plan():
    at = PLAN.batch.water
    result = water_temperature.warmth(celsius(70), at.water_temp_c, 0.0, celsius(60))
    assert result.balance.mix_temp_c == pytest.approx(at.mix_temp_c, abs=1e-9)
    assert result.needed_water_c == pytest.approx(at.needed_water_temp_c, abs=1e-9)
    assert "as wanted" in water_temperature.warmth_words(result)


def test_the_areas_of_the_heat_picture_are_equal():
    for ice in (0.0, 0.3):
        balance = water_temperature.warmth(30.0, 15.0, ice, 16.0).balance
        assert sum(part.heat_share for part in balance.parts) == pytest.approx(1.0)
        over = sum(part.heat_share * (part.temp_c - balance.mix_temp_c) for part in balance.parts)
        assert over == pytest.approx(0.0, abs=1e-9)


def test_the_picture_of_lesson_03_has_no_ice_where_there_is_none():
    alt = water_temperature.balance_picture(PLAN).alt
    assert "Ice" not in alt and "66.2 °F" in alt


def test_the_sheet_weighs_everything_and_the_face_share_between_mortar_and_stone():
    load = PLAN.batch.loads[-1]
    rows = mix_and_yield.weigh_sheet(load, "us").rows
    when = [row[0] for row in rows]
    assert when.index("set aside, covered") == when.index("then to the rest") - 1
    held = [row for row in rows if row[0] == "held back"]
    assert len(rows) == len(load.lines) + len(held) + 1
    assert ("then to the rest", "stone 3/8 in", "27 lb") in rows  # 1.2 x 22.5 lb of binder


def test_the_jug_reads_water_and_grains_and_never_the_heaps():
    low, likely, high = mix_and_yield.jug_band_m3(355e-6, 0.4536)
    assert likely == pytest.approx(355e-6 + 0.4536 / 2.65 / 999.552, rel=1e-6)
    assert low < likely < high < 355e-6 + 0.4536 / 1600  # 1600 kg/m3: sand as it lies in a heap
    with pytest.raises(ValueError, match="to drown the sand"):
        mix_and_yield.jug_band_m3(100e-6, 0.4536)


def test_the_cup_tells_heat_from_pounds():
    low, likely, high = water_temperature.cup_band_c(0.453592, celsius(70), 0.226796, celsius(40))
    by_pounds = celsius((70 + 0.5 * 40) / 1.5)
    assert low < likely < high < by_pounds - 3
    # (0.22 + 0.0220) x 70 + 0.5 x 40 over 0.742: the likely cup counts as 10 g, 0.0220 lb, of water
    assert fahrenheit(likely) == pytest.approx((0.24205 * 70 + 20) / 0.74205, abs=0.01)
    for cold, warm in ((5.0, 25.0), (25.0, 5.0)):
        assert sorted(band := water_temperature.cup_band_c(0.5, warm, 0.25, cold)) == list(band)


def test_the_book_names_what_kind_of_number_it_is():
    shown = book(("sand", "AV-1e", 1151.7), ("hot cement", "HB-6", 87.983), ("rich", "HB-12b", 2.375))
    assert [row[-1] for row in shown.rows] == ["published", "recalled, not read again", "worked out"]
    assert shown.rows[0][1:4] == ("1152 lb", "1151.7 lb", "-0.3")
    assert "From memory of PCA EB001" in shown.caption and "6.97 ft³" in shown.caption
    with pytest.raises(ValueError, match="no such id"):
        book(("x", "AV-99", 1.0))


def test_a_table_shows_text_as_text_and_numbers_to_the_right():
    shown = table(("what", "lb"), [("<b>sand</b>", "9.2 lb"), ("stone", 27)], "1 < 2")
    page = shown._repr_mimebundle_()["text/html"]
    assert "<b>" not in page and "&lt;b&gt;" in page and "1 &lt; 2" in page
    assert shown.sides == ["left", "right"]
    with pytest.raises(ValueError, match="2 cells"):
        table(("a", "b"), [("only one",)])


def test_the_vessels_of_one_mix_hold_what_the_batch_weighs_out():
    batch = PLAN.batch
    picture = one_mix_of(batch, "A mix")
    seen = picture.mix
    assert seen.face_share_m3 == pytest.approx(1.25 * seen.face_m3) and seen.base_m3 == pytest.approx(1.05 * seen.core_m3)
    assert seen.mortar_of_base_m3 == pytest.approx(batch.mortar_m3 - batch.face_share_m3)
    inch_of = picture.in_per_m3
    (rest, _), (aside, _) = picture._fills[0]
    assert aside.get_height() == pytest.approx(inch_of * batch.face_share_m3)
    assert aside.get_y() == pytest.approx(rest.get_y() + inch_of * seen.mortar_of_base_m3)
    (mortar, _), (stone, _) = picture._fills[2]
    assert mortar.get_height() + stone.get_height() == pytest.approx(inch_of * batch.base_m3)
    assert "are for screeding, edges and the patch cup" in picture.alt and "ft³" not in one_mix_alt(seen, "A mix", "si")
