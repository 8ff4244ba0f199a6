"""A number from the bench over the model's band: what is typed, where the dot stands, what is said."""

import pytest
from picture_checks import unreadable

from shop_calc.lesson.bench import over_band, typed
from shop_calc.lesson.pictures.over_band import BenchNumber, OverBand
from shop_calc.lesson.practice import Said

BAND, ENDS = (12.0, 13.8, 15.5), (8.0, 24.0)


def shown(value):
    return over_band(value, BAND, "temperature", "F", ENDS, "A wet rag", "The forecast.")


@pytest.mark.parametrize(
    ("value", "celsius"), [(57.2, 14.0), ("57.2", 14.0), ("14 C", 14.0), ("57.2 °F", 14.0), (57, 125 / 9)]
)
def test_a_number_is_read_in_the_asked_unit_and_a_text_in_its_own(value, celsius):
    assert typed(value, "temperature", "F") == pytest.approx(celsius, abs=1e-9)


@pytest.mark.parametrize("blank", [..., None, "", " ... ", "___"])
def test_a_blank_shows_the_band_alone(blank):
    assert typed(blank, "temperature", "F") is None
    assert "Nothing measured yet" in shown(blank).alt


@pytest.mark.parametrize("nonsense", ["warm", "14 kg", [1], True, "<b>"])
def test_what_cannot_be_read_is_said_and_never_an_error(nonsense):
    said = shown(nonsense)
    assert isinstance(said, Said) and "cannot be read" in said.text
    assert "<b>" not in said._repr_mimebundle_()["text/html"]


@pytest.mark.parametrize(
    ("celsius", "where"), [(14.0, "inside"), (11.9, "below"), (15.6, "above"), (40.0, "above"), (-3.0, "below")]
)
def test_the_dot_stands_where_it_was_measured_and_the_words_say_so(celsius, where):
    picture = BenchNumber(OverBand(*BAND, celsius), "temperature", ENDS, "A wet rag")
    assert f"{where} the band" in picture.alt
    assert picture.dot.get_xdata()[0] == pytest.approx(min(max(celsius, 8.0), 24.0))
    assert picture.band.get_x() == 12.0 and picture.band.get_width() == pytest.approx(3.5)
    assert picture.line.get_xdata()[0] == 13.8


@pytest.mark.parametrize("kind", ["temperature", "duration", "volume", "mass", "fraction"])
@pytest.mark.parametrize("title", ["A cup", "A cup " * 30])
def test_words_stay_on_the_sheet_and_apart(kind, title):
    picture = BenchNumber(OverBand(*BAND, 15.0), kind, ENDS, title)
    assert unreadable(picture.figure) == []
