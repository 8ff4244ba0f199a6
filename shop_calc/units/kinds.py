"""The kinds of quantity a person enters or reads, with the units each may have."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Kind:
    """One kind of quantity: what may be typed for it, and how it is shown.

    Parameters
    ----------
    name : str
        "length", "mass" and so on [-].
    si_unit : str
        Unit of the calculations; hours for `duration`, °C for `temperature` [-].
    words : tuple of str
        Our names of the units that may be typed [-].
    examples : tuple of str
        Entries as a message shows them [-].
    us_unit, si_shown : str
        The usual unit of a US and of a metric shop, for a slider or a column [-].
    us, si : tuple of (float, str)
        Display units, largest first, each with the least size from which it is used [si_unit].
    digits : int
        Significant digits shown [-].
    floor : float or None
        The least possible value [si_unit].
    parts : bool
        True when an entry may have several parts, "2 lb 3 oz" [-].
    plain : bool
        True when a number without a unit is natural [-].
    decimals : int or None
        The most decimals worth showing [-].

    Examples
    --------
    >>> KINDS["density"].us_unit
    'lb/ft3'

    References
    ----------
    Common practice, no source.
    """

    name: str
    si_unit: str
    words: tuple[str, ...]
    examples: tuple[str, ...]
    us_unit: str
    si_shown: str
    us: tuple[tuple[float, str], ...]
    si: tuple[tuple[float, str], ...]
    digits: int = 3
    floor: float | None = 0.0
    parts: bool = False
    plain: bool = False
    decimals: int | None = None

    @property
    def title(self):
        """The name as people read it."""
        return self.name.replace("_", " ")


def _kind(name, si_unit, words, examples, us_unit, si_shown, us=None, si=None, **more):
    us, si = us or ((0.0, us_unit),), si or ((0.0, si_shown),)
    return Kind(name, si_unit, tuple(words.split()), examples, us_unit, si_shown, us, si, **more)


_VOLUMES = "in3 ft3 yd3 gal qt pt cup floz tbsp tsp mm3 cm3 m3 L dL cL mL"
_TIMES = "s min h d week"
_LITRES = ((0.001, "L"), (0.0, "mL"))

# From which size a larger unit reads better: gallon, quart, cup, pound, square foot and psi from their own
# size in SI (a hair below, so that one gallon is a gallon); the others are judgement.
_ALL = (
    _kind("length", "m", "in ft yd mm cm m", ("10'6\"", "4 1/2 in", "38 mm"), "in", "mm", parts=True),
    _kind("film_thickness", "m", "mil in um mm", ("1.5 mil", "40 µm"), "mil", "um"),
    _kind("area", "m2", "in2 ft2 yd2 mm2 cm2 m2", ("4.5 sq ft", "1,440 in2", "0.6 m2"), "ft2", "m2",
          us=((0.0929, "ft2"), (0.0, "in2")), si=((0.01, "m2"), (0.0, "cm2"))),
    _kind("volume", "m3", _VOLUMES, ("0.5 ft3", "3 qt", "12 L"), "ft3", "L",
          us=((0.00283, "ft3"), (0.0, "in3")), si=((1.0, "m3"), *_LITRES), parts=True),
    _kind("liquid", "m3", _VOLUMES, ("3 qt", "2 Tbsp", "1.5 L"), "qt", "L",
          us=((3.7854117e-3, "gal"), (9.4635294e-4, "qt"), (2.3658823e-4, "cup"), (0.0, "floz")),
          si=_LITRES, parts=True),
    _kind("mass", "kg", "lb oz kg g", ("2 lb 3 oz", "22.5 kg", "40 g"), "lb", "kg",
          us=((0.45359236, "lb"), (0.0, "oz")), si=((1.0, "kg"), (0.0, "g")), parts=True),
    _kind("density", "kg/m3", "lb/ft3 lb/yd3 lb/gal kg/m3 kg/L g/cm3 g/mL", ("145 lb/ft3", "2300 kg/m3"),
          "lb/ft3", "kg/m3"),
    _kind("temperature", "C", "F C K", ("72 F", "22 °C"), "F", "C", floor=-273.15, decimals=1),
    _kind("temperature_difference", "delta_K", "F C K", ("10 F", "5 °C"), "delta_F", "delta_C", floor=None,
          decimals=1),
    _kind("speed", "m/s", "mi/h ft/min ft/s km/h m/s", ("5 mph", "8 km/h", "2 m/s"), "mi/h", "km/h"),
    _kind("duration", "h", _TIMES, ("20 min", "2 h 30 min", "7 days"), "h", "h", parts=True),
    _kind("time", "s", _TIMES, ("90 s", "20 min", "1 h"), "min", "min", parts=True),
    _kind("fraction", "-", "% -", ("5 %", "0.05 fraction"), "%", "%"),
    _kind("mass_ratio", "-", "- % kg/kg g/kg g/g lb/lb oz/lb oz/oz lb/kg",
          ("1.2", "1.2 kg per kg", "0.6 lb/lb", "5 % of cement"), "-", "-", plain=True),
    _kind("number", "-", "-", ("3", "4 1/2"), "-", "-", floor=None, plain=True),
    _kind("pressure", "Pa", "psi ksi lb/ft2 lbf/ft2 Pa kPa MPa bar", ("4000 psi", "30 lb/ft2", "28 MPa"),
          "psi", "MPa", us=((6894.7, "psi"), (0.0, "lbf/ft2")), si=((1e6, "MPa"), (1e3, "kPa"), (0.0, "Pa"))),
    _kind("pressure_rate", "Pa/s", "Pa/s kPa/h psi/h", ("0.5 Pa/s",), "Pa/s", "Pa/s"),
    _kind("rate", "kg/m2/h", "lb/ft2/h kg/m2/h g/m2/h", ("0.1 lb/ft2/h", "0.5 kg/m2/h"),
          "lb/ft2/h", "kg/m2/h"),
    _kind("areal_mass", "kg/m2", "lb/ft2 oz/ft2 oz/yd2 kg/m2 g/m2", ("18.75 lb/ft2", "91 kg/m2"),
          "lb/ft2", "kg/m2"),
    _kind("coverage", "m2/m3", "ft2/gal m2/L m2/m3", ("200 ft2/gal", "5 m2/L"), "ft2/gal", "m2/L"),
    _kind("energy", "J/mol", "kJ/mol J/mol kcal/mol", ("36 kJ/mol",), "kJ/mol", "kJ/mol"),
    _kind("force", "N", "lb lbf kgf N kN", ("250 lb", "1.1 kN"), "lbf", "N", si=((1e3, "kN"), (0.0, "N"))),
    _kind("power", "W", "hp W kW", ("1.5 kW", "2 hp"), "hp", "W", si=((1e3, "kW"), (0.0, "W"))),
    _kind("heat_transfer", "W/m2/K", "W/m2/K", ("4 W/m2K",), "W/m2/K", "W/m2/K"),
    _kind("conductivity", "W/m/K", "W/m/K", ("1.8 W/mK",), "W/m/K", "W/m/K"),
    _kind("heat_capacity", "J/kg/K", "J/kg/K kJ/kg/K", ("1000 J/kgK",), "J/kg/K", "J/kg/K"),
)  # fmt: skip

KINDS = {kind.name: kind for kind in _ALL}

# What a unit measures, for the message "lb is a unit of mass".
KIND_OF_UNIT = {word: kind.title for kind in reversed(_ALL) for word in kind.words}


def kind_of(name):
    """Find a kind, or say which kinds there are.

    Parameters
    ----------
    name : str or Kind
        "length", "mass" and so on [-].

    Returns
    -------
    Kind
        The record of that kind [-].

    Raises
    ------
    ValueError
        When there is no such kind.

    Examples
    --------
    >>> kind_of("mass").si_unit
    'kg'

    References
    ----------
    Common practice, no source.
    """
    if isinstance(name, Kind):
        return name
    if isinstance(name, str) and name in KINDS:
        return KINDS[name]
    raise ValueError(f"kind: {name!r} given; it must be one of {', '.join(KINDS)}")
