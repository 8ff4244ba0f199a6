"""What a person types and must not be guessed: refused, with the reason."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from shop_calc import units


@pytest.mark.parametrize("text", ["11/4", "11/4 in", '11/4"', "5' 11/4\""])
def test_eleven_quarters_is_refused_with_both_readings(text):
    with pytest.raises(ValueError, match="2-3/4 or 1-1/4"):
        units.parse(text, "length")


def test_three_readings_are_all_named():
    with pytest.raises(ValueError, match="7-3/16 or 1-15/16 or 11-5/16"):
        units.parse("115/16 in", "length")


def test_numbers_without_unit_only_where_they_are_natural():
    assert units.parse(1.2, "mass_ratio") == 1.2
    assert units.parse(3, "number") == 3
    for kind in ("length", "mass", "temperature", "fraction"):
        with pytest.raises(ValueError, match=r"the entry: 50 given; it has no unit"):
            units.parse(50, kind, entry="the entry")
    with pytest.raises(ValueError, match=r"0\.05 %\? 0\.05 fraction\?"):
        units.parse("0.05", "fraction")


# (text, kind, words of the message)
REFUSED = [
    ("24", "length", "it has no unit"),
    ("5 lb", "length", "'lb' is a unit of mass"),
    ("5 lb/ft2", "length", "is a unit of pressure"),
    ("5 ft", "mass", "is a unit of length"),
    ("2 yards", "volume", "yd3 would fit"),
    ("5 gal", "mass", "is a unit of volume"),
    ("32 oz", "volume", "an ounce is a mass"),
    ("32 oz", "liquid", "a volume is written fl oz"),
    ("32 fl oz", "mass", "a fluid ounce is a volume"),
    ("1 ton", "mass", "2000 lb in one shop"),
    ("2 T", "volume", "tsp, Tbsp or kg"),
    ("5 mg", "mass", "write g or kg"),
    ("5 mPa", "pressure", "write MPa"),
    ("1 bag", "mass", "write the mass"),
    ("4 mil", "length", "film thickness"),
    ("72", "temperature", "it has no unit"),
    ("72°", "temperature", "F or C is missing"),
    ("72 degrees", "temperature", "F or C is missing"),
    ("-460 F", "temperature", "absolute zero"),
    ("-1 K", "temperature", "absolute zero"),
    ("1 F 2 C", "temperature", "only one number"),
    ("", "length", "nothing is written"),
    ("   ", "mass", "nothing is written"),
    ("in", "length", "does not begin with a number"),
    ("-3 in", "length", "at least 0"),
    ("-0.0000000001 in", "length", "at least 0"),
    ("-1 lb", "mass", "at least 0"),
    ("-5 %", "fraction", "at least 0"),
    ("1/0 in", "length", "divides by zero"),
    ("4 1/0 in", "length", "divides by zero"),
    ("nan", "length", "does not begin with a number"),
    ("inf in", "length", "does not begin with a number"),
    ("nan", "mass_ratio", "does not begin with a number"),
    ("1e400 in", "length", "powers of ten"),
    ("1e3 mm", "length", "powers of ten"),
    ("9" * 70 + " 9 in", "length", "side by side"),
    ("1" * 90 + " in", "length", "longer than 80"),
    ("3 in 4 in", "length", "stands twice"),
    ("3 in 4 ft", "length", "larger unit must stand first"),
    ("5 ft 2 lb", "length", "is a unit of mass"),
    ("2 lb 3", "mass", "last number has no unit"),
    ("10'12", "length", "last number has no unit"),
    ("5.5' 3\"", "length", "only the last part"),
    ("1/2' 3\"", "length", "only the last part"),
    ("5 3 in", "length", "side by side"),
    ("1 500 mm", "length", "side by side"),
    ("10, 5 in", "length", "cannot stand there"),
    ("4 5/4 in", "length", "not less than one"),
    ("4 8/8 in", "length", "not less than one"),
    ("2 lb - 3 oz", "mass", "cannot stand there"),
    ("1 mL 1 cm3", "volume", "larger unit must stand first"),
    ("4.5 1/2 in", "length", "mixes a decimal"),
    ("4.5/2 in", "length", "whole numbers"),
    ("1.5.2 in", "length", "more than one point"),
    ("1,50,0 in", "length", "group thousands"),
    ("1,5.0,2 in", "length", "make no number"),
    ("4 - 1/2 in", "length", "cannot stand there"),
    ("2-3 in", "length", "cannot stand there"),
    ("5 ft x 3 in", "length", "not a unit this entry knows"),
    ("5 ft × 3 in", "length", "not a unit this entry knows"),
    ("5 ft * 3 in", "length", "not a unit this entry knows"),
    ("5 ft/3 in", "length", "'ft/' is not a unit"),
    ("5 ft.3 in", "length", "two readings"),
    ("5 ft -", "length", "'ft -'"),
    ("10'-", "length", "missing after the dash"),
    ("2 lb and", "mass", "'lb and' is not a unit"),
    ("٣ in", "length", "does not begin with a number"),
    ("3٣ in", "length", "not a unit this entry knows"),
    ("１２ in", "length", "does not begin with a number"),
    ("10² in", "length", "not a unit this entry knows"),
    ("Ⅻ in", "length", "does not begin with a number"),
    ("2:30 h", "duration", "cannot stand there"),
    ("__import__('os')", "length", "does not begin with a number"),
    ("5 in; 6", "length", "cannot stand there"),
    ("5 furlong", "length", "not a unit this entry knows"),
    ("5 kg/m2", "rate", "is a unit of areal mass"),
    ("5 mL/kg", "mass_ratio", "not a unit this entry knows"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "kind", "words"), REFUSED)
def test_what_is_refused_says_entry_text_reason_and_an_example(text, kind, words):
    with pytest.raises(ValueError) as caught:
        units.parse(text, kind, entry="top width")
    message = str(caught.value)
    assert message.startswith("top width: ")
    assert words in message
    assert units.KINDS[kind].examples[0] in message
    assert text[:30] in message
    assert len(message) < 260


@pytest.mark.parametrize("value", [None, True, b"5 in", [5], float("nan"), float("inf"), 10**400, -1.0])
def test_values_that_are_no_text_are_refused(value):
    with pytest.raises(ValueError, match="ratio: "):
        units.parse(value, "mass_ratio", entry="ratio")


def test_hidden_signs_never_reach_the_message():
    with pytest.raises(ValueError) as caught:
        units.parse("5\u202e\x07 in", "length")
    assert str(caught.value).isprintable()


def test_an_unknown_kind_is_named_with_those_there_are():
    with pytest.raises(ValueError, match="kind: 'weight' given; it must be one of length"):
        units.parse("5 lb", "weight")


MESSY = st.text(alphabet="0123456789 .,/-+'\"″½¾ftinlbozmcgkLqhFC°%²³·*()^:;eand²", max_size=30)


@settings(max_examples=8 * settings().max_examples)
@given(text=st.one_of(st.text(max_size=100), MESSY), kind=st.sampled_from(sorted(units.KINDS)))
def test_any_text_gives_a_number_or_a_message_that_names_the_entry(text, kind):
    try:
        value = units.parse(text, kind, entry="this entry")
    except ValueError as problem:
        assert str(problem).startswith("this entry: ")
        assert len(str(problem)) < 300
        return
    floor = units.KINDS[kind].floor
    assert isinstance(value, float)
    assert abs(value) < float("inf")
    assert floor is None or value >= floor


def test_a_refusal_says_an_area_and_a_length():
    with pytest.raises(ValueError, match="Write an area like"):
        units.parse("2 bananas", "area")
    with pytest.raises(ValueError, match="Write a length like"):
        units.parse("2 bananas", "length")
