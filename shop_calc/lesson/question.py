"""A practice question: what is given, what is asked, the slips it foresees."""

from dataclasses import dataclass
from functools import cached_property

from shop_calc import units
from shop_calc.lesson.page import sign

WORD_KINDS = ("choice", "order")
# What a bare number may turn out to be in: the units a shop would reach for.
OTHER_UNITS = {
    "length": ("in", "ft", "mm", "cm", "m"),
    "area": ("in2", "ft2", "m2"),
    "volume": ("in3", "ft3", "yd3", "L", "m3"),
    "liquid": ("qt", "gal", "L", "mL"),
    "mass": ("lb", "oz", "kg", "g"),
    "density": ("lb/ft3", "kg/m3"),
    "temperature": ("F", "C"),
    "temperature_difference": ("F", "C"),
    "speed": ("mph", "km/h", "m/s"),
    "duration": ("h", "min"),
    "fraction": ("%", "fraction"),
    "pressure": ("psi", "kPa", "MPa"),
    "rate": ("lb/ft2/h", "kg/m2/h"),
    "areal_mass": ("lb/ft2", "kg/m2"),
}


@dataclass(frozen=True)
class Number:
    """One number of a question, which a student code may change.

    Parameters
    ----------
    name : str
        Name of the argument of the answer function, with its SI suffix; `{name}` in the text [-].
    unit : str
        Unit in which the text gives it [-].
    printed : float
        The number without a student code [unit].
    low, high, step : float
        Grid of numbers to draw from; low = high keeps the printed one [unit].

    Examples
    --------
    >>> Number("length_m", "in", 60, 48, 96, 6).text(60)
    '60 in'

    References
    ----------
    Common practice, no source.
    """

    name: str
    unit: str
    printed: float
    low: float
    high: float
    step: float = 1.0

    @property
    def count(self):
        """How many numbers can be drawn."""
        return int((self.high - self.low) / self.step + 1e-9) + 1

    def at(self, place):
        """One of the numbers that can be drawn, by its place from 0."""
        return round(self.low + place * self.step, 9)

    def grid(self):
        """Every number that can be drawn."""
        return tuple(self.at(place) for place in range(self.count))

    @cached_property
    def _wanted(self):
        return units.suffix_unit(self.name) or "-"

    def inside(self, number):
        """The number as the answer function takes it: in the unit that its name says."""
        if self._wanted == "-" and self.unit == "-":
            return number
        return float(units.convert(number, self.unit, self._wanted))

    def text(self, number):
        """The number as the question prints it."""
        return f"{number:g} {sign(self.unit)}".strip()


@dataclass(frozen=True)
class Question:
    """A question with numbers, or with words to choose from or to put in order.

    Parameters
    ----------
    id : str
        Short name, unique in its lesson [-].
    text : str
        The question; `{name}` stands where a number goes [-].
    answer : callable
        `answer(**numbers)`: SI value, or the right word, or the words in order [SI, or words].
    kind : str
        A kind of `shop_calc.units`, or "choice", or "order" [-].
    unit : str
        Unit in which the answer is asked; empty for words [-].
    numbers : tuple of Number
        What is given [-].
    slips : tuple of Slip
        Foreseen wrong ways [-].
    hints : tuple of str
        Two general hints, the second nearer to the answer than the first [-].
    choices : tuple of str
        Words to choose from or to order, shown as a, b, c [-].
    tolerance : float
        Share of the right answer that it may be off [fraction].
    within : float
        What it may be off at least; needed for temperatures, where a share means nothing [unit].
    others : tuple of str, optional
        Units in which a bare number is recognised; a short list per kind if not given [-].
    working : callable, optional
        `working(**numbers)`: Steps of `shop_calc.trade.working`, in order [-].
    sheet : callable, optional
        `sheet(**numbers)`: a text under the question; or a tuple of texts, one for each choice, which stand beside the
        letters instead of the choices themselves [-].
    fixed : bool
        Whether the choices keep their printed order for every student code [-].
    reason : str or callable
        Why the right word is right, said when it is found and in the solution; or `reason(**numbers)` [-].
    otherwise : callable, optional
        `otherwise(answer, **numbers)`: what is said of a wrong answer that is none of the slips [-].

    Examples
    --------
    >>> q = Question("side", "A square of {side_m}: how large?", lambda side_m: side_m**2, "area", "ft2",
    ...     numbers=(Number("side_m", "ft", 2, 2, 6),), hints=("What is an area?", "Side times side."))
    >>> round(q.asked(q.answer(0.6096)), 6)
    4.0

    References
    ----------
    Common practice, no source.
    """

    id: str
    text: str
    answer: object
    kind: str
    unit: str = ""
    numbers: tuple = ()
    slips: tuple = ()
    hints: tuple = ()
    choices: tuple = ()
    tolerance: float = 0.02
    within: float = 0.0
    others: tuple | None = None
    working: object = None
    sheet: object = None
    fixed: bool = False
    reason: object = ""
    otherwise: object = None

    def __post_init__(self):
        if len(self.hints) < 2:
            raise ValueError(f"question {self.id}: {len(self.hints)} hints given; two are needed")
        if self.kind in WORD_KINDS:
            if len(self.choices) < 2:
                raise ValueError(
                    f"question {self.id}: {len(self.choices)} choices given; at least two are needed"
                )
        elif self.kind not in units.KINDS:
            raise ValueError(f"question {self.id}: kind {self.kind!r} given; no such kind of quantity")
        elif self.kind == "temperature" and not self.within:
            raise ValueError(f"question {self.id}: a temperature needs `within`, the degrees it may be off")

    def inside(self, number, unit=None):
        """A number in the asked unit, or in another of its kind, as the answer function gives it."""
        return float(units.convert(number, unit or self.unit, units.KINDS[self.kind].si_unit))

    def asked(self, value):
        """A value of the answer function in the asked unit."""
        return float(units.convert(value, units.KINDS[self.kind].si_unit, self.unit))

    def why(self, given):
        """Why the right word is right, with these numbers; empty where nothing is said."""
        return self.reason(**given) if callable(self.reason) else self.reason

    @cached_property
    def memory(self):
        """What has been worked already, by the numbers that went in."""
        return {}

    @property
    def letters(self):
        """The letters that stand for the choices."""
        return tuple("abcdefghijklmnopqrstuvwxyz"[: len(self.choices)])
