"""The kinds of quantity a person enters or reads, with the units each may have."""

from dataclasses import dataclass

_LENGTH = ("in", "ft", "yd", "mm", "cm", "m")
_VOLUME = ("in3", "ft3", "yd3", "gal", "qt", "pt", "cup", "floz", "tbsp", "tsp", "mm3", "cm3", "m3", "L", "mL")
_TIME = ("s", "min", "h", "d", "week")


@dataclass(frozen=True)
class Kind:
    """One kind of quantity.

    `us` and `si` are the display units with the least size (SI) from which each is used, largest first. `floor`
    is the least possible value; `parts` says that an entry may have several ("2 lb 3 oz"); `plain` that a number
    without a unit is natural; `decimals` the most decimals worth printing.
    """

    name: str
    si_unit: str
    words: tuple[str, ...]
    examples: tuple[str, ...]
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

    @property
    def us_unit(self):
        """The usual US unit, for a slider or a column of a table."""
        return self.us[0][1]

    @property
    def si_shown(self):
        """The usual metric unit, for a slider or a column of a table."""
        return self.si[0][1]


def _kind(name, si_unit, words, examples, us, si, **more):
    def ladder(spec):
        return ((0.0, spec),) if isinstance(spec, str) else tuple(spec)

    return Kind(name, si_unit, tuple(words), tuple(examples), ladder(us), ladder(si), **more)


# Sizes from which a larger unit reads better are judgement; lb, quart, gallon steps are their sizes in SI.
_ALL = (
    _kind("length", "m", _LENGTH, ("10'6\"", "4 1/2 in", "38 mm"), "in", ((10.0, "m"), (0.0, "mm")), parts=True),
    _kind("film_thickness", "m", ("mil", "in", "um", "mm"), ("1.5 mil", "40 µm"), "mil", "um"),
    _kind("area", "m2", ("in2", "ft2", "yd2", "mm2", "cm2", "m2"), ("4.5 sq ft", "1,440 in2", "0.6 m2"),
          ((0.0929, "ft2"), (0.0, "in2")), ((0.01, "m2"), (0.0, "cm2"))),
    _kind("volume", "m3", _VOLUME, ("0.5 ft3", "3 qt", "12 L"),
          ((0.00283, "ft3"), (0.0, "in3")), ((1.0, "m3"), (0.001, "L"), (0.0, "mL")), parts=True),
    _kind("liquid", "m3", _VOLUME, ("3 qt", "2 Tbsp", "1.5 L"),
          ((0.003785411783, "gal"), (0.000236588236, "qt"), (0.0, "floz")), ((0.001, "L"), (0.0, "mL")),
          parts=True),
    _kind("mass", "kg", ("lb", "oz", "kg", "g"), ("2 lb 3 oz", "22.5 kg", "40 g"),
          ((0.45359236, "lb"), (0.0, "oz")), ((1.0, "kg"), (0.0, "g")), parts=True),
    _kind("density", "kg/m3", ("lb/ft3", "lb/yd3", "lb/gal", "kg/m3", "kg/L", "g/cm3", "g/mL"),
          ("145 lb/ft3", "2300 kg/m3"), "lb/ft3", "kg/m3"),
    _kind("temperature", "C", ("F", "C", "K"), ("72 F", "22 °C"), "F", "C", floor=-273.15, decimals=1),
    _kind("temperature_difference", "delta_K", ("F", "C", "K"), ("10 F", "5 °C"), "delta_F", "delta_C", floor=None,
          decimals=1),
    _kind("speed", "m/s", ("mi/h", "ft/min", "ft/s", "km/h", "m/s"), ("5 mph", "8 km/h", "2 m/s"), "mi/h", "km/h"),
    _kind("duration", "h", _TIME, ("20 min", "2 h 30 min", "7 days"), "h", "h", parts=True),
    _kind("time", "s", _TIME, ("90 s", "20 min", "1 h"), "h", "h", parts=True),
    _kind("fraction", "-", ("%", "-"), ("5 %", "0.05 fraction"), "%", "%"),
    _kind("mass_ratio", "-", ("-", "%", "kg/kg", "g/kg", "g/g", "lb/lb", "oz/lb", "oz/oz"),
          ("1.2", "1.2 kg per kg", "0.6 lb/lb", "5 % of cement"), "-", "-", plain=True),
    _kind("number", "-", ("-",), ("3", "4 1/2"), "-", "-", floor=None, plain=True),
    _kind("pressure", "Pa", ("psi", "ksi", "lb/ft2", "lbf/ft2", "Pa", "kPa", "MPa", "bar"),
          ("4000 psi", "30 lb/ft2", "28 MPa"), ((6894.0, "psi"), (0.0, "lbf/ft2")),
          ((1e6, "MPa"), (1e3, "kPa"), (0.0, "Pa"))),
    _kind("pressure_rate", "Pa/s", ("Pa/s", "kPa/h", "psi/h"), ("0.5 Pa/s",), "Pa/s", "Pa/s"),
    _kind("rate", "kg/m2/h", ("lb/ft2/h", "kg/m2/h", "g/m2/h"), ("0.1 lb/ft2/h", "0.5 kg/m2/h"),
          "lb/ft2/h", "kg/m2/h"),
    _kind("areal_mass", "kg/m2", ("lb/ft2", "oz/ft2", "oz/yd2", "kg/m2", "g/m2"), ("18.75 lb/ft2", "91 kg/m2"),
          "lb/ft2", "kg/m2"),
    _kind("coverage", "m2/m3", ("ft2/gal", "m2/L", "m2/m3"), ("200 ft2/gal", "5 m2/L"), "ft2/gal", "m2/L"),
    _kind("energy", "J/mol", ("kJ/mol", "J/mol", "kcal/mol"), ("36 kJ/mol",), "kJ/mol", "kJ/mol"),
    _kind("force", "N", ("lb", "lbf", "kgf", "N", "kN"), ("250 lb", "1.1 kN"), "lbf", ((1000.0, "kN"), (0.0, "N"))),
    _kind("power", "W", ("hp", "W", "kW"), ("1.5 kW", "2 hp"), ((0.0, "hp"),), ((1000.0, "kW"), (0.0, "W"))),
    _kind("heat_transfer", "W/m2/K", ("W/m2/K",), ("4 W/m2K",), "W/m2/K", "W/m2/K"),
    _kind("conductivity", "W/m/K", ("W/m/K",), ("1.8 W/mK",), "W/m/K", "W/m/K"),
    _kind("heat_capacity", "J/kg/K", ("J/kg/K", "kJ/kg/K"), ("1000 J/kgK",), "J/kg/K", "J/kg/K"),
)  # fmt: skip

KINDS = {kind.name: kind for kind in _ALL}

# Which kinds a unit belongs to, for the message "lb is a mass, not a length".
KINDS_OF_UNIT = {}
for _each in _ALL:
    for _word in _each.words:
        KINDS_OF_UNIT.setdefault(_word, []).append(_each.title)


def kind_of(name):
    """Return the Kind called `name`, or say which kinds there are.

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
    try:
        return KINDS[name]
    except (KeyError, TypeError):
        raise ValueError(f"kind: {name!r} given; it must be one of {', '.join(KINDS)}") from None
