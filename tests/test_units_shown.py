"""Units as they are shown, converted, and told by a name."""

import math
import re
import subprocess
import sys
from functools import cache

import make_unit_lines
import numpy as np
import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import constants

from shop_calc import units
from shop_calc.units import factors, names, words


@cache
def pint_units():
    return pint.UnitRegistry()


def test_factors_agree_with_scipy():
    outside = {
        ("in", "m"): constants.inch,
        ("ft", "m"): constants.foot,
        ("yd", "m"): constants.yard,
        ("mil", "m"): constants.mil,
        ("lb", "kg"): constants.pound,
        ("oz", "kg"): constants.oz,
        ("gal", "m3"): constants.gallon,
        ("fl oz", "m3"): constants.fluid_ounce,
        ("mph", "m/s"): constants.mph,
        ("km/h", "m/s"): constants.kmh,
        ("psi", "Pa"): constants.psi,
        ("lbf", "N"): constants.lbf,
        ("kgf", "N"): constants.kgf,
        ("hp", "W"): constants.hp,
        ("kcal/mol", "J/mol"): constants.kilo * constants.calorie_th,
        ("bar", "Pa"): constants.bar,
        ("lb/ft3", "kg/m3"): constants.pound / constants.foot**3,
        ("lb/ft2/h", "kg/m2/h"): constants.pound / constants.foot**2,
    }
    for (from_unit, to_unit), factor in outside.items():
        assert units.convert(1.0, from_unit, to_unit) == pytest.approx(factor, rel=1e-12)
        assert units.convert(factor, to_unit, from_unit) == pytest.approx(1.0, rel=1e-12)


def test_factors_agree_with_the_list_of_nist_sp_811_from_memory():
    """Seven digits of its appendix B, recalled from memory: a second opinion, not a published check."""
    printed = [
        ("lb/ft3", "kg/m3", 16.01846), ("lb/gal", "kg/m3", 119.8264), ("lb/yd3", "kg/m3", 0.5932764),
        ("lb/ft2", "kg/m2", 4.882428), ("oz/ft2", "kg/m2", 0.3051517), ("oz/yd2", "kg/m2", 0.03390575),
        ("psf", "Pa", 47.88026), ("psi", "Pa", 6894.757), ("qt", "L", 0.9463529), ("pt", "L", 0.4731765),
        ("cup", "mL", 236.5882), ("tbsp", "mL", 14.78676), ("tsp", "mL", 4.928922), ("in3", "mL", 16.38706),
        ("yd3", "m3", 0.7645549), ("hp", "W", 745.6999),
    ]  # fmt: skip
    for from_unit, to_unit, factor in printed:
        assert units.convert(1.0, from_unit, to_unit) == pytest.approx(factor, rel=6e-7)


def test_definitions_are_exact():
    assert units.convert(1, "in", "mm") == 25.4
    assert units.convert(1, "lb", "kg") == 0.45359237
    assert units.convert(1, "gal", "in3") == pytest.approx(231, rel=1e-14)
    assert units.convert(12, "in", "ft") == 1
    assert units.convert(1, "d", "h") == 24


@pytest.mark.parametrize(
    ("fahrenheit", "celsius"), [(32, 0), (212, 100), (-40, -40), (60, 140 / 9), (14, -10)]
)
def test_thermometers_have_their_offset(fahrenheit, celsius):
    assert units.convert(fahrenheit, "F", "C") == pytest.approx(celsius, abs=1e-12)
    assert units.convert(celsius, "C", "F") == pytest.approx(fahrenheit, abs=1e-12)
    assert units.convert(celsius, "C", "K") == pytest.approx(celsius + 273.15, abs=1e-12)
    registry = pint_units()
    outside = registry.Quantity(fahrenheit, registry.degF).to(registry.degC).magnitude
    assert units.convert(fahrenheit, "F", "C") == pytest.approx(outside, abs=1e-9)


def test_differences_have_no_offset():
    assert units.convert(18, "F", "delta_K") == pytest.approx(10, rel=1e-14)
    assert units.convert(10, "delta_K", "F") == pytest.approx(18, rel=1e-14)
    assert units.convert(4, "W/m2K", "W/m2/K") == 4
    assert units.convert(9, "F h", "C h") == pytest.approx(5, rel=1e-14)


def test_arrays_lists_and_numbers_convert_alike():
    array = units.convert(np.array([32.0, 72.0]), "F", "C")
    assert array == pytest.approx([units.convert(32.0, "F", "C"), units.convert(72.0, "F", "C")], rel=1e-15)
    assert units.convert([1, 2], "in", "mm") == pytest.approx([25.4, 50.8])
    assert isinstance(units.convert(1.5, "in", "mm"), float)


def test_what_cannot_be_converted_says_so():
    with pytest.raises(ValueError, match="'lb' to 'm' asked; the two measure different things"):
        units.convert(1, "lb", "m")
    with pytest.raises(ValueError, match="unit: 'parsec' given"):
        units.convert(1, "parsec", "m")
    with pytest.raises(ValueError, match="different things"):
        units.convert(1, "kg", "N")


def test_every_kept_line_is_what_pint_says():
    assert make_unit_lines.FILE.read_text(encoding="utf-8") == make_unit_lines.text()
    assert factors.line("mile", "feet") == (5280.0, 0.0)  # asked of pint: not kept
    assert ("mi", "ft") not in factors.LINES and ("lb", "kg") in factors.LINES


def test_every_unit_of_the_table_is_known_to_pint():
    for name in words.PINT:
        assert factors.ask_pint(name, name)[0] == pytest.approx(1.0, rel=1e-12)
    for kind in units.KINDS.values():
        for unit in (*kind.words, kind.us_unit, kind.si_shown):
            assert math.isfinite(units.convert(1.0, unit, kind.si_unit))


def test_units_as_people_write_them_are_one_unit():
    same = [
        ("sq. ft.", "ft²", "ft^2", "sqft", "square feet", "SQ FT", "ft**2"),
        ("lb/ft2/h", "lb/ft²·h", "lb/(ft2·h)", "pounds per square foot per hour", "lb/ft2 hr"),
        ("fl oz", "fl. oz.", "fluid ounces", "FL OZ"),
        ("°F", "F", "deg F", "degrees Fahrenheit", "degF"),
        ("km/h", "kph", "kmh"),
        ("lb/in2", "psi", "lbs per sq in"),
    ]
    for spellings in same:
        assert len({words.canonical(spelling) for spelling in spellings}) == 1
    wrong_units = ["", "ft *", "* ft", "ft //m", "sq", "ft2 2", "ft(2", "deg ft", "fl lb", "sq mph", "m\nm"]
    for wrong in wrong_units:
        assert words.canonical(wrong) is None


def test_lengths_are_shown_as_a_tape_reads():
    for inches, text in [
        (50.125, "4'-2 1/8\""), (2.125, "2 1/8\""), (0.75, "3/4\""), (12, "1'-0\""), (11.99, "1'-0\""),
        (60.75, "5'-0 3/4\""), (721, "60'-1\""), (11.96, "11 15/16\""), (1 / 32, "1/16\""), (0, "0\""),
        (0.02, "0.02 in"), (23.97, "2'-0\""), (0.40625, "7/16\""), (-2.125, "-2 1/8\""),
    ]:  # fmt: skip
        assert units.show(inches * 0.0254, "length", "us") == text
    assert units.show(50.125 * 0.0254, "length") == "4'-2 1/8\" (1273 mm)"


def test_tape_fractions_of_any_division():
    assert units.shop_fraction(1.3, 8) == '1 1/4"'
    assert units.shop_fraction(1.3, 1) == '1"'
    assert units.shop_fraction(-0.001) == '0"'
    assert units.shop_fraction(10.53125, 32) == '10 17/32"'
    for wrong in (0, -4, 2.5):
        with pytest.raises(ValueError, match="denominator"):
            units.shop_fraction(1, wrong)
    with pytest.raises(ValueError, match="length"):
        units.shop_fraction(float("nan"))


def test_other_kinds_as_shown():
    for value, kind, text in [
        (22.5, "mass", "49.6 lb (22.5 kg)"),
        (0.0425, "mass", "1.5 oz (42.5 g)"),
        (0, "mass", "0 lb (0 kg)"),
        (0.06, "volume", "2.12 ft³ (60 L)"),
        (units.parse("3 qt", "liquid"), "liquid", "3 qt (2.84 L)"),
        (units.parse("7 gal", "liquid"), "liquid", "7 gal (26.5 L)"),
        (units.parse("1 qt", "liquid"), "liquid", "1 qt (946 mL)"),
        (units.parse("1 lb", "mass"), "mass", "1 lb (454 g)"),
        (units.parse("1 cup", "liquid"), "liquid", "1 cup (237 mL)"),
        (16, "temperature", "60.8 °F (16 °C)"),
        (-0.01, "temperature", "32 °F (0 °C)"),
        (10, "temperature_difference", "18 °F (10 °C)"),
        (2.2352, "speed", "5 mph (8.05 km/h)"),
        (2.5, "duration", "2 h 30 min"),
        (0.75, "duration", "45 min"),
        (0.9999, "duration", "1 h"),
        (0.01, "duration", "36 s"),
        (0, "duration", "0 min"),
        (168, "duration", "7 days"),
        (5400, "time", "1 h 30 min"),
        (0.05, "fraction", "5 %"),
        (1.2, "mass_ratio", "1.2 by mass"),
        (27.6e6, "pressure", "4003 psi (27.6 MPa)"),
        (150, "pressure", "3.13 lb/ft² (150 Pa)"),
        (0.5, "rate", "0.102 lb/ft²·h (0.5 kg/m²·h)"),
        (36000, "energy", "36 kJ/mol"),
        (2300, "density", "144 lb/ft³ (2300 kg/m³)"),
        (float("nan"), "mass", "not known"),
        (None, "length", "not known"),
        (float("inf"), "duration", "without limit"),
    ]:
        assert units.show(value, kind) == text
    assert units.show(np.float64(2.5), "mass", "si") == "2.5 kg"


def test_rounding_is_half_away_from_zero_and_keeps_whole_digits():
    for value, text in [
        (2.345, "2.35"), (-2.345, "-2.35"), (1152.4, "1152"), (1.005, "1.01"), (0.9996, "1"), (99.95, "100"),
        (0.000123456, "0.000123"), (1234567, "1234567"), (0.0, "0"), (-0.0, "0"),
    ]:  # fmt: skip
        assert units.plain_number(value) == text
    assert units.plain_number(-0.04, 3, 1) == "0"
    assert units.plain_number(2.34567, 5) == "2.3457"


def test_what_cannot_be_shown_says_so():
    with pytest.raises(ValueError, match="system: 'metric' given"):
        units.show(1, "mass", "metric")
    with pytest.raises(ValueError, match="kind: 'weight' given"):
        units.show(1, "weight")
    with pytest.raises(ValueError, match="mass: "):
        units.show(np.array([1.0, 2.0]), "mass")


# Shop ranges in SI, over which what is shown must read back.
RANGES = {
    "length": (0.0008, 30), "film_thickness": (1e-5, 2e-3), "area": (1e-3, 50), "volume": (1e-6, 5),
    "liquid": (1e-6, 0.2), "mass": (1e-3, 2000), "density": (500, 4000), "temperature": (-30, 90),
    "temperature_difference": (-40, 40), "speed": (0.1, 30), "duration": (0.04, 2000), "time": (150, 7e6),
    "fraction": (1e-3, 1), "mass_ratio": (1e-3, 9), "number": (1e-3, 999), "pressure": (1, 1e8),
    "pressure_rate": (0.02, 3), "rate": (0.01, 3), "areal_mass": (0.1, 300), "coverage": (50, 5e4),
    "energy": (2e4, 6e4), "force": (1, 1e4), "power": (100, 5000), "heat_transfer": (1, 30),
    "conductivity": (0.5, 3), "heat_capacity": (700, 1500),
}  # fmt: skip


# Half of 1/16 in, of a degree F, of 0.1 degree, of a minute; elsewhere three digits are good to 0.5 %.
HALF_STEPS = {"length": 0.0254 / 32, "temperature": 0.5 / 1.8, "temperature_difference": 0.05}
HALF_STEPS |= {"duration": 1 / 120, "time": 30}


@pytest.mark.parametrize("system", ["us", "si"])
@pytest.mark.parametrize("kind", sorted(units.KINDS))
@settings(max_examples=settings().max_examples // 5)
@given(share=st.floats(0, 1))
def test_what_is_shown_reads_back_within_its_rounding(kind, system, share):
    low, high = RANGES[kind]
    value = low * (high / low) ** share if low > 0 else low + (high - low) * share
    text = units.show(value, kind, system)
    assert not re.search("[0-9]e", text)
    assert units.parse(text, kind) == pytest.approx(value, rel=0.00501, abs=HALF_STEPS.get(kind, 0) * 1.001)


def test_the_suffix_of_a_name_tells_its_unit():
    told = {
        "thickness_m": "m", "area_m2": "m2", "volume_m3": "m3", "mass_kg": "kg", "density_kg_m3": "kg/m3",
        "strength_pa": "Pa", "build_up_pa_s": "Pa/s", "mix_temp_c": "C", "rise_k": "delta_K", "set_h": "h",
        "rest_s": "s", "wind_m_s": "m/s", "area_mass_kg_m2": "kg/m2", "rate_kg_m2_h": "kg/m2/h",
        "activation_energy_j_mol": "J/mol", "h_top_w_m2_k": "W/m2/K", "rh_fraction": "-",
        "relative_density": "-",
        "water_ratio": "-", "exponent": "-", "part_shares": "-", "load_count": "-", "name": None, "m": None,
        "system": None, "items": None, "maturity_c_h": "delta_K·h", "span_moment_n_m": "N·m",
    }  # fmt: skip
    assert {name: units.suffix_unit(name) for name in told} == told


def test_every_suffix_is_a_unit_that_convert_knows():
    for suffix, unit in names._SUFFIXES.items():
        assert units.suffix_unit(f"x_{suffix}") == unit
        assert units.convert(3.0, unit, unit) == pytest.approx(3.0)


def test_quantities_of_data_files():
    read = {
        "610 lb": (610, "lb"), "62.4 lb/ft3": (62.4, "lb/ft3"), "0.05": (0.05, "-"), "150 Pa": (150, "Pa"),
        "0.5 Pa/s": (0.5, "Pa/s"), "12 mph": (12, "mi/h"), "2 in": (2, "in"), "-5.5 °C": (-5.5, "C"),
        "1e-3 m": (0.001, "m"), "1 1/2 in": (1.5, "in"), "-1/2 in": (-0.5, "in"), "5 %": (5, "%"),
        "3 -": (3, "-"), "1,440 in2": (1440, "in2"), ".25": (0.25, "-"), "4 W/m2K": (4, "W/m2/K"),
        "2 1/h": (2, "1/h"),
    }  # fmt: skip
    assert {text: units.parse_quantity(text) for text in read} == read
    for wrong in [
        "",
        "lb",
        "5 parsec",
        "1 lb 2 oz",
        "1e999 m",
        "nan",
        "--1/2 in",
        "1/0",
        "1,500 mm",
        "11/4 in",
    ]:
        with pytest.raises(ValueError, match="quantity: "):
            units.parse_quantity(wrong)


def test_importing_units_is_light():
    code = (
        "import sys, shop_calc.units; print(sorted({'pint', 'numpy', 'pandas', 'scipy'} & set(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_a_plan_is_made_without_waiting_for_pint_or_scipy():
    code = (
        "import sys; from shop_calc.trade.plan import make_plan; from shop_calc.trade.jobs.job import demo_job, read_job; "
        "make_plan(read_job(demo_job('garden_bench_top'))); "
        "print(sorted({'pint', 'pandas', 'scipy', 'matplotlib', 'ipywidgets'} & set(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_no_question_waits_for_pint():
    """Loading pint takes longer than anything else a lesson does; pairs of units that questions ask for are kept."""
    code = (
        "import sys; from shop_calc.lesson.banks import bank, bank_names; [bank(name) for name in bank_names()]; "
        "print(len(bank_names()) > 9, 'pint' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.split() == ["True", "False"]
