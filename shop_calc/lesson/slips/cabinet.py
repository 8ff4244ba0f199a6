"""The cabinet itself: every slip by name, what it is, and a line of arithmetic in which it happens.

Iterate over `CABINET` for all of them, or ask `mistake(name)` for one. Hints, sheets with a wrong line, the
instructor's table and the test that plants every one of them read this list and no other.
"""

from dataclasses import dataclass
from math import pi

from shop_calc.lesson.slips import doses, sizes
from shop_calc.lesson.slips.making import Slip
from shop_calc.trade.working import Step


@dataclass(frozen=True)
class Mistake:
    """A slip with a name, in the line where it happens.

    Parameters
    ----------
    name : str
        Its name, that of the function which makes it [-].
    words : str
        What people do [-].
    make : callable
        Makes the slip [-].
    arguments : tuple
        What `make` needs to know of the example line [-].
    example : Step
        A right line in which the slip can happen; invented [SI].

    Examples
    --------
    >>> mistake("inch_for_foot").slip.name
    'inch for foot'

    References
    ----------
    Common practice, no source.
    """

    name: str
    words: str
    make: object
    arguments: tuple
    example: Step

    @property
    def slip(self):
        """The slip as the example line needs it."""
        made = self.make(*self.arguments)
        if not isinstance(made, Slip):
            raise TypeError(f"{self.name} makes no slip")
        return made


def _line(words, symbol, formula, value, unit, **inputs):
    """An example: `name=(value, unit)` for each input."""
    given = tuple((name, *pair) for name, pair in inputs.items())
    return Step(symbol.lower(), symbol, formula, given, value, unit, "invented", "example", words)


CABINET = (
    Mistake(
        "inch_for_foot",
        "inches used where feet belong",
        sizes.inch_for_foot,
        (),
        _line("volume of a top", "V", "A * t", 0.0375, "m3", A=(0.75, "m2"), t=(0.05, "m")),
    ),
    Mistake(
        "radius_for_diameter",
        "the diameter put in where the radius belongs",
        sizes.radius_for_diameter,
        ("r",),
        _line("area of a round opening", "A", "pi * r**2", 0.01 * pi, "m2", r=(0.1, "m")),
    ),
    Mistake(
        "one_side_forgotten",
        "one edge too few counted",
        sizes.one_side_forgotten,
        ("n",),
        _line("length of face on the edges", "L_e", "n * l", 2.4, "m", n=(4, "-"), l=(0.6, "m")),
    ),
    Mistake(
        "left_out",
        "one part forgotten",
        sizes.left_out,
        ("W_s", "The sand is damp. Whose water is that?"),
        _line("water in the mix", "W", "W_a + W_s", 4.0, "kg", W_a=(3.0, "kg"), W_s=(1.0, "kg")),
    ),
    Mistake(
        "swapped",
        "two numbers in each other's place",
        sizes.swapped,
        ("W", "C"),
        _line("water to cement", "q", "W / C", 0.4, "-", W=(4.0, "kg"), C=(10.0, "kg")),
    ),
    Mistake(
        "sign_flipped",
        "the right size with the wrong sign",
        sizes.sign_flipped,
        (),
        _line("water for dry sand", "dW", "M * (a - m)", 0.2, "kg", M=(20.0, "kg"), a=(0.015, "-"), m=(0.005, "-")),
    ),
    Mistake(
        "added_not_multiplied",
        "added where one acts on the other",
        sizes.added_not_multiplied,
        (("A", "t"),),
        _line("volume of a top", "V", "A * t", 0.0375, "m3", A=(0.75, "m2"), t=(0.05, "m")),
    ),
    Mistake(
        "percent_of_bag_not_cement",
        "a dose taken of the whole bag instead of the cement in it",
        doses.percent_of_bag_not_cement,
        ("s",),
        _line("sugar for a bag", "D", "d * M * s", 0.0032, "kg", d=(0.0005, "-"), M=(40.0, "kg"), s=(0.16, "-")),
    ),
    Mistake(
        "percent_not_turned",
        "percent used as if it were the number itself",
        doses.percent_not_turned,
        (),
        _line("pigment", "D", "d * C", 0.5, "kg", d=(0.05, "-"), C=(10.0, "kg")),
    ),
    Mistake(
        "ratio_upside_down",
        "multiplied where it should be divided",
        doses.ratio_upside_down,
        ("q",),
        _line("water for the cement", "W", "C * q", 3.5, "kg", C=(10.0, "kg"), q=(0.35, "-")),
    ),
    Mistake(
        "waste_forgotten",
        "the net amount, without the allowance",
        doses.waste_forgotten,
        ("w",),
        _line("face to mix", "V_f", "V * (1 + w)", 0.005, "m3", V=(0.004, "m3"), w=(0.25, "-")),
    ),
    Mistake(
        "waste_taken_off",
        "the allowance taken off instead of added",
        doses.waste_taken_off,
        ("w",),
        _line("face to mix", "V_f", "V * (1 + w)", 0.005, "m3", V=(0.004, "m3"), w=(0.25, "-")),
    ),
    Mistake(
        "plain_mass_average",
        "temperatures averaged by mass alone",
        doses.plain_mass_average,
        ((("M", "T_s"), ("W", "T_w")),),
        _line("temperature of the mix", "T", "(0.22 * M * T_s + W * T_w) / (0.22 * M + W)", 18.8, "C",
              M=(50.0, "kg"), T_s=(30.0, "C"), W=(14.0, "kg"), T_w=(10.0, "C")),
    ),
    Mistake(
        "fahrenheit_for_celsius",
        "°F put in where °C belongs",
        doses.fahrenheit_for_celsius,
        ("T",),
        _line("hours times degrees above the datum", "M", "t * (T + 10)", 720.0, "-", t=(24.0, "h"), T=(20.0, "C")),
    ),
)  # fmt: skip
NAMES = tuple(each.name for each in CABINET)


def mistake(name):
    """Find a slip of the cabinet by its name.

    Parameters
    ----------
    name : str
        One of `NAMES` [-].

    Returns
    -------
    Mistake
        With its example [-].

    Raises
    ------
    ValueError
        When there is no such name.

    Examples
    --------
    >>> mistake("waste_forgotten").words
    'the net amount, without the allowance'

    References
    ----------
    Common practice, no source.
    """
    for each in CABINET:
        if each.name == name:
            return each
    raise ValueError(f"slip: {name!r} given; there are {', '.join(NAMES)}")
