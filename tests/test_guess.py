"""A first guess comes back beside what was worked out, and nothing that is typed stops the lesson."""

import pytest

from shop_calc.lesson.guess import guessed


@pytest.mark.parametrize(
    ("guess", "said"),
    [
        (3.0, "25 % too low"),
        (5, "25 % too high"),
        ("5 h", "25 % too high"),
        ("300 min", "25 % too high"),
        ("5", "25 % too high"),
        (4.001, "the very number"),
        (..., "No guess"),
        (None, "No guess"),
        ("", "No guess"),
        ("a while", "cannot be read"),
        (float("nan"), "cannot be read"),
        ([1, 2], "cannot be read"),
        ("<b>5</b>", "cannot be read"),
    ],
)
def test_every_guess_is_answered_in_words(guess, said):
    assert said in guessed(guess, 4.0, "duration", "h").text


def test_a_temperature_is_off_by_degrees_and_not_by_a_share():
    # 60 °F against 50 °F: ten degrees of Fahrenheit, 5.6 of Celsius
    text = guessed(60, 10.0, "temperature", "F").text
    assert "10 °F" in text and "too high" in text and "%" not in text


def test_the_guess_is_shown_as_text():
    page = guessed("<i>x</i>", 4.0, "duration", "h")._repr_mimebundle_()["text/html"]
    assert "<i>" not in page
