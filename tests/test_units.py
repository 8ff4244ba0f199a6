"""What a person types is read as a shop means it: sizes, masses, volumes, temperatures."""

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shop_calc import units

INCH = 0.0254  # definition, 1959
POUND = 0.45359237  # definition, 1959
GALLON = 231 * INCH**3  # definition
WATER_LB_GAL = 8.345  # the constant of the trade texts; their 62.4 lb/ft3 makes 8.342


# Sizes that break general software; inches by hand.
SIZES_IN = {
    "5' 3/4\"": 60.75,
    "60 ft 1 in": 721,
    "4 1/2 in": 4.5,
    "10'6\"": 126,
    "10'-6\"": 126,
    "10' - 6\"": 126,
    "10’6”": 126,
    "10′ 6″": 126,
    "10''": 10,
    "10'6": 126,
    "3/4\"": 0.75,
    "11/16\"": 0.6875,
    "¾\"": 0.75,
    "1½ in": 1.5,
    "1-½\"": 1.5,
    "5'¾\"": 60.75,
    "4'2-1/4\"": 50.25,
    "4'-2 1/4\"": 50.25,
    "4' 2 1/4": 50.25,
    "10 3/8 in": 10.375,
    "5 ft. 3 in.": 63,
    "5ft 3in": 63,
    "5ft3in": 63,
    "5 feet and 3 inches": 63,
    "5 feet, 3 inches": 63,
    "4 and 1/2 in": 4.5,
    "60 ft 13 in": 733,
    "1 yd 1 ft 1 in": 49,
    "2.5 FT": 30,
    ".5 in": 0.5,
    "5. in": 5,
    "5 ft .5 in": 60.5,
    "+3 in": 3,
    "0\"": 0,
    "1,440 in": 1440,
    "1,440.5 in": 1440.5,
    "4,5 in": 4.5,
    "5/4 in": 1.25,
    "16/16 in": 1,
}  # fmt: skip


@pytest.mark.parametrize(("text", "inches"), SIZES_IN.items())
def test_sizes_are_read_as_a_shop_means_them(text, inches):
    assert units.parse(text, "length") == pytest.approx(inches * INCH, rel=1e-14)


@pytest.mark.parametrize("text", SIZES_IN)
def test_sizes_of_sixteenths_come_back_unchanged_from_the_tape_form(text):
    size_m = units.parse(text, "length")
    assert units.parse(units.show(size_m, "length", "us"), "length") == pytest.approx(size_m, rel=1e-14)


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("38 mm", 38),
        ("38,5 mm", 38.5),
        ("3.8 cm", 38),
        ("1 m 25 mm", 1025),
        ("0,25 m", 250),
        ("1,2345 m", 1234.5),
        ("0,250 m", 250),
    ],
)
def test_metric_sizes(text, mm):
    assert units.parse(text, "length") == pytest.approx(mm / 1000, rel=1e-14)


def test_what_is_read_carries_no_rounding_of_the_arithmetic():
    assert units.parse("3/4 in", "length") == 0.01905
    assert math.copysign(1, units.parse(-0.0, "number")) == 1


def test_ten_and_three_eighths_is_263_and_a_half_mm():
    assert round(units.parse("10 3/8 in", "length") * 1000, 1) == 263.5


def test_a_size_without_unit_is_refused_and_a_pure_number_is_four_and_a_half():
    with pytest.raises(ValueError, match=r"length: '4 1/2' given; it has no unit \(4 1/2 in\? 4 1/2 mm\?\)"):
        units.parse("4 1/2", "length", entry="length")
    assert units.parse("4 1/2", "number") == 4.5


def test_a_comma_before_three_digits_is_refused_only_where_it_has_two_readings():
    with pytest.raises(ValueError, match=r"1,500 can be 1500 or 1\.500"):
        units.parse("1,500 mm", "length")
    assert units.parse("1,440 in2", "area") == pytest.approx(10 * (12 * INCH) ** 2, rel=1e-14)
    assert units.parse("1.234,5 mm", "length") == pytest.approx(1.2345, rel=1e-14)
    assert units.parse("1,234,567 mm", "length") == pytest.approx(1234.567, rel=1e-14)


# (text, kind, SI value): values from the definitions above and arithmetic.
OTHERS = [
    ("3 qt", "volume", 0.75 * GALLON),
    ("1 gal", "liquid", GALLON),
    ("1 fl oz", "liquid", GALLON / 128),
    ("2 fluid ounces", "volume", GALLON / 64),
    ("2 fl. oz.", "volume", GALLON / 64),
    ("2 Tbsp", "liquid", GALLON / 128),
    ("3 tsp", "volume", GALLON / 256),
    ("1 cup", "volume", GALLON / 16),
    ("1 pint", "volume", GALLON / 8),
    ("1 gal 2 qt", "liquid", 1.5 * GALLON),
    ("250 mL", "volume", 250e-6),
    ("1.5 litres", "volume", 1.5e-3),
    ("0.5 cu ft", "volume", 864 * INCH**3),
    ("0.5 ft³", "volume", 864 * INCH**3),
    ("3672 in^3", "volume", 3672 * INCH**3),
    ("1 yd3", "volume", 46656 * INCH**3),
    ("2 lb 3 oz", "mass", 35 / 16 * POUND),
    ("2 lbs. and 3 ounces", "mass", 35 / 16 * POUND),
    ("2 1/3 oz", "mass", 7 / 48 * POUND),
    ("80#", "mass", 80 * POUND),
    ("22.5 kg", "mass", 22.5),
    ("4.5 sq ft", "area", 648 * INCH**2),
    ("4.5 square feet", "area", 648 * INCH**2),
    ("0,6 m²", "area", 0.6),
    ("145 lb/ft3", "density", 145 * POUND / (12 * INCH) ** 3),
    ("145 pcf", "density", 145 * POUND / (12 * INCH) ** 3),
    ("145 pounds per cubic foot", "density", 145 * POUND / (12 * INCH) ** 3),
    ("2.3 g/cm3", "density", 2300),
    ("72 F", "temperature", 200 / 9),
    ("72 °F", "temperature", 200 / 9),
    ("72 deg F", "temperature", 200 / 9),
    ("22 °C", "temperature", 22),
    ("-5,5 °C", "temperature", -5.5),
    ("−40 F", "temperature", -40),
    ("300 K", "temperature", 26.85),
    ("-459.67 F", "temperature", -273.15),
    ("18 F", "temperature_difference", 10),
    ("-2 °C", "temperature_difference", -2),
    ("5 mph", "speed", 5 * 63360 * INCH / 3600),
    ("0 mph", "speed", 0),
    ("9 km/h", "speed", 2.5),
    ("20 min", "duration", 1 / 3),
    ("2 h 30 min", "duration", 2.5),
    ("1 day 6 hours", "duration", 30),
    ("7 days", "duration", 168),
    ("1 h", "time", 3600),
    ("5 %", "fraction", 0.05),
    ("5%", "fraction", 0.05),
    ("5 percent", "fraction", 0.05),
    ("0.05 fraction", "fraction", 0.05),
    ("0 %", "fraction", 0),
    ("1.2 kg per kg binder", "mass_ratio", 1.2),
    ("0.6 kg per kg of binder", "mass_ratio", 0.6),
    ("1.2 lb/lb", "mass_ratio", 1.2),
    ("2 oz per lb", "mass_ratio", 0.125),
    ("0.6", "mass_ratio", 0.6),
    ("5 % of cement", "mass_ratio", 0.05),
    ("1 psi", "pressure", POUND * 9.80665 / INCH**2),
    ("144 lb/ft2", "pressure", POUND * 9.80665 / INCH**2),
    ("144 psf", "pressure", POUND * 9.80665 / INCH**2),
    ("28 MPa", "pressure", 28e6),
    ("28 N/mm2", "pressure", 28e6),
    ("0.5 Pa/s", "pressure_rate", 0.5),
    ("0.1 lb/ft2/h", "rate", 0.1 * POUND / (12 * INCH) ** 2),
    ("0.1 lb/ft²·h", "rate", 0.1 * POUND / (12 * INCH) ** 2),
    ("0.5 kg/(m2 h)", "rate", 0.5),
    ("18.75 lb/ft2", "areal_mass", 18.75 * POUND / (12 * INCH) ** 2),
    ("1.5 mil", "film_thickness", 1.5e-3 * INCH),
    ("40 µm", "film_thickness", 40e-6),
    ("200 ft2/gal", "coverage", 200 * (12 * INCH) ** 2 / GALLON),
    ("36 kJ/mol", "energy", 36000),
    ("250 lb", "force", 250 * POUND * 9.80665),
    ("1.5 kW", "power", 1500),
    ("4 W/m2K", "heat_transfer", 4),
    ("1.8 W/mK", "conductivity", 1.8),
    ("1 kJ/kgK", "heat_capacity", 1000),
]


@pytest.mark.parametrize(("text", "kind", "si"), OTHERS)
def test_quantities_of_every_kind(text, kind, si):
    assert units.parse(text, kind) == pytest.approx(si, rel=1e-13, abs=1e-12)


def test_every_kind_reads_its_own_examples_and_has_one_tested_here():
    for kind in units.KINDS.values():
        for example in kind.examples:
            assert units.parse(example, kind.name) >= 0
    assert {kind for _, kind, _ in OTHERS} >= set(units.KINDS) - {"length", "number"}


def test_the_basis_of_a_share_is_kept():
    assert units.basis("5 % of cement") == "cement"
    assert units.basis("1.2 kg per kg binder") == "binder"
    assert units.basis("1.2") == ""


# Water and small doses as trainers state them; the text's rounding is the tolerance.
def test_water_by_quart_gallon_and_cup():
    def pounds(text):
        return units.convert(units.parse(text, "liquid"), "m3", "gal") * WATER_LB_GAL

    assert pounds("3 qt") == pytest.approx(6.26, abs=0.005)
    assert pounds("7 gal") == pytest.approx(58.4, abs=0.05)
    assert pounds("1 cup") == pytest.approx(0.52, abs=0.005)
    assert 6.5 / pounds("1 qt") == pytest.approx(3.12, abs=0.005)
    assert units.parse("7 gal", "liquid") == pytest.approx(units.parse("28 qt", "liquid"), rel=1e-14)
    assert pounds("1 qt") == pytest.approx(2.086, abs=0.0005)
    assert units.convert(WATER_LB_GAL, "lb/gal", "lb/ft3") == pytest.approx(62.4, abs=0.05)


def test_thirty_two_fluid_ounces_of_water_do_not_weigh_thirty_two_ounces():
    water_kg = units.parse("32 fl oz", "liquid") / GALLON * WATER_LB_GAL * POUND
    assert units.convert(water_kg, "kg", "oz") == pytest.approx(33.4, abs=0.05)
    assert units.convert(water_kg, "kg", "lb") == pytest.approx(2.086, abs=0.0005)


def test_small_doses():
    ounce = units.parse("1 fl oz", "liquid")
    assert ounce == pytest.approx(units.parse("2 Tbsp", "liquid"), rel=1e-14)
    assert ounce == pytest.approx(29.6e-6, abs=0.05e-6)
    assert 0.75 * ounce == pytest.approx(units.parse("1 1/2 Tbsp", "liquid"), rel=1e-14)
    assert 0.75 * ounce == pytest.approx(units.parse("0.75 fl oz", "liquid"), rel=1e-14)
    assert units.convert(units.parse("2 oz", "mass"), "kg", "lb") == pytest.approx(0.125, rel=1e-14)
    assert units.convert(units.parse("1.5 oz", "mass"), "kg", "lb") == pytest.approx(0.094, abs=0.0005)
    fibre = units.parse("2 oz", "mass") / units.parse("95 lb", "mass")
    assert fibre == pytest.approx(0.0013, abs=0.00005)
    assert units.show(ounce, "liquid") == "1 fl oz (29.6 mL)"


STYLES = ["{f}'{i} {n}/{d}\"", "{f}'-{i}-{n}/{d}\"", "{f} ft {i} {n}/{d} in", "{f}′ {i} {n}⁄{d}″"]
STYLES += ["{f}' {i}-{n}/{d}", "{f} feet, {i} and {n}/{d} inches"]


@given(
    feet=st.integers(1, 300),
    inches=st.integers(0, 11),
    bottom=st.sampled_from([2, 3, 4, 8, 16, 32, 64]),
    top=st.integers(1, 63),
    style=st.sampled_from(STYLES),
)
def test_any_feet_inches_and_fraction_equal_their_arithmetic(feet, inches, bottom, top, style):
    top = 1 + top % (bottom - 1) if bottom > 2 else 1
    text = style.format(f=feet, i=inches, n=top, d=bottom)
    exact = (12 * feet + inches + Fraction(top, bottom)) * Fraction(254, 10000)
    assert units.parse(text, "length") == pytest.approx(float(exact), rel=1e-14)
