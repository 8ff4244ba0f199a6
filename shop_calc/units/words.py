"""The unit words the shop uses: how people spell them, what they are called here, what pint calls them."""

import re

# Our own name of a unit, its name in pint, and every spelling accepted (lower case; capitals do not matter).
_UNITS = """
in    inch          in inch inches ins "
ft    foot          ft foot feet '
yd    yard          yd yds yard yards
mil   thou          mil mils thou
mi    mile          mi mile miles
um    micrometer    um µm μm micron microns micrometer micrometers micrometre micrometres
mm    millimeter    mm millimeter millimeters millimetre millimetres
cm    centimeter    cm centimeter centimeters centimetre centimetres
m     meter         m meter meters metre metres
km    kilometer     km kilometer kilometers kilometre kilometres
lb    pound         lb lbs pound pounds lbm #
oz    ounce         oz ounce ounces
ug    microgram     ug µg μg
g     gram          g gm gms gram grams gramme grammes
kg    kilogram      kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes
floz  fluid_ounce floz
tsp   teaspoon      tsp tsps teaspoon teaspoons
tbsp  tablespoon    tbsp tbsps tbs tbl tablespoon tablespoons
cup   cup           cup cups
pt    pint       pt pts pint pints
qt    quart      qt qts quart quarts
gal   gallon     gal gals gallon gallons
mL    milliliter    ml mls milliliter milliliters millilitre millilitres
L     liter         l lt ltr liter liters litre litres
s     second        s sec secs second seconds
min   minute        min mins minute minutes
h     hour          h hr hrs hour hours
d     day           d day days
week  week          week weeks wk wks
F     delta_degF    f degf fahrenheit ℉
C     delta_degC    c degc celsius centigrade ℃
K     kelvin        k kelvin kelvins
delta_F delta_degF  delta_f delta_degf
delta_C delta_degC  delta_c delta_degc
delta_K kelvin      delta_k
deg   degree        deg degree degrees °
lbf   pound_force   lbf
kgf   kilogram_force kgf
N     newton        n newton newtons
kN    kilonewton    kn
psi   psi           psi
ksi   kip/inch**2   ksi
Pa    pascal        pa pascal pascals
kPa   kilopascal    kpa
MPa   megapascal    mpa
bar   bar           bar bars
J     joule         j joule joules
kJ    kilojoule     kj
MJ    megajoule     mj
cal   calorie       cal
kcal  kilocalorie   kcal
BTU   Btu           btu
W     watt          w watt watts
kW    kilowatt      kw
hp    horsepower    hp horsepower
mol   mole          mol mole moles
%     percent       % percent pct
-     dimensionless fraction fractions -
"""

PINT = {}
_SPELLINGS = {}
for _line in _UNITS.strip().splitlines():
    _name, _pint, *_words = _line.split()
    PINT[_name] = _pint
    for _word in _words:
        _SPELLINGS[_word] = _name

# One word that stands for a unit made of several.
_COMPOUND = {
    "psf": "lbf/ft2", "pcf": "lb/ft3", "mph": "mi/h", "kph": "km/h", "kmh": "km/h", "kmph": "km/h",
    "fpm": "ft/min", "cc": "cm3", "ccm": "cm3", "sqft": "ft2", "sqin": "in2", "sqyd": "yd2", "sqm": "m2",
    "cuft": "ft3", "cuin": "in3", "cuyd": "yd3", "cum": "m3", "mk": "m·K", "kgk": "kg·K",
}  # fmt: skip
# Spellings of the same unit that are brought to one.
_SAME = {"lb/in2": "psi", "lbf/in2": "psi", "N/mm2": "MPa", "N/m2": "Pa", "kN/m2": "kPa", "MN/m2": "MPa"}

# Words that look like a unit but have two meanings: the message says which to write instead.
UNCLEAR = {
    "ton": "a ton is 2000 lb in one shop and 1000 kg in another; write lb or kg",
    "tons": "a ton is 2000 lb in one shop and 1000 kg in another; write lb or kg",
    "tonne": "write it in kg (1 tonne is 1000 kg)",
    "tonnes": "write it in kg (1 tonne is 1000 kg)",
    "t": "t can be a teaspoon, a tablespoon or a tonne; write tsp, Tbsp or kg",
    "fl": "write fl oz for fluid ounces",
    "gr": "gr can be a grain or a gram; write g",
    "mg": "mg and Mg differ by a thousand million; write g or kg",
    "sack": "sacks differ; write the mass in lb or kg",
    "bag": "bags differ; write the mass in lb or kg",
    "bags": "bags differ; write the mass in lb or kg",
}

METRIC = {"um", "mm", "cm", "m", "km", "ug", "g", "kg", "mL", "L", "C", "K", "N", "kN", "kgf", "Pa", "kPa",
          "MPa", "bar", "J", "kJ", "MJ", "cal", "kcal", "W", "kW", "mol"}  # fmt: skip
US = {"in", "ft", "yd", "mil", "mi", "lb", "oz", "floz", "tsp", "tbsp", "cup", "pt", "qt", "gal", "F", "lbf",
      "psi", "ksi", "BTU", "hp"}  # fmt: skip

_POWERS = {"square": "2", "sq": "2", "cubic": "3", "cu": "3"}
_DEGREES = {"deg", "degree", "degrees", "°"}
_TOKEN = re.compile(r"[a-zA-Zµμ℉℃_]+|°|%|#|[23]|[/·*^().\"' -]")


def split_power(piece):
    """Split "ft2" into ("ft", 2); a unit without a power has power 1."""
    return (piece[:-1], int(piece[-1])) if piece[-1] in "23" else (piece, 1)


def pieces(unit):
    """Yield (name, power) of each part of one of our unit names, powers below the line negative."""
    above, *below = unit.split("/")
    for text, sign in [(above, 1), *((part, -1) for part in below)]:
        for piece in text.split("·"):
            name, power = split_power(piece)
            if name != "1":
                yield name, sign * power


def is_us(unit):
    """True for a unit used only in US shops (feet, pounds), where a comma groups thousands."""
    return any(name in US for name, _ in pieces(unit))


def unclear(phrase):
    """Return the advice for a word with two meanings, or an empty text."""
    for word in phrase.replace(".", " ").replace("/", " ").split():
        if word.lower() in UNCLEAR:
            return UNCLEAR[word.lower()]
    return "mPa is a thousandth of a pascal; write MPa" if "mPa" in phrase else ""


def canonical(phrase):
    """Bring a unit as written ("sq. ft.", "pounds per cubic foot", "lb/ft²·h") to our own name of it.

    Parameters
    ----------
    phrase : str
        The unit without its number [-].

    Returns
    -------
    str or None
        Our name of the unit ("ft2", "lb/ft3", "lb/ft2/h"), None when a word is not known [-].

    Examples
    --------
    >>> canonical("pounds per cubic foot"), canonical("sq. ft."), canonical("lb/ft²·h")
    ('lb/ft3', 'ft2', 'lb/ft2/h')

    References
    ----------
    Common practice, no source.
    """
    text = phrase.strip().replace("²", "2").replace("³", "3").replace("**", "")
    if not text or len(text) > 60 or "mPa" in text:
        return None
    if text in ("-", "1"):
        return "-"
    if text.startswith("1/"):
        text = text[1:]
    tokens = _TOKEN.findall(text)
    if "".join(tokens) != text:
        return None
    above, below, power, degrees, fluid, divide = [], [], "", False, False, False
    for token in tokens:
        low = token.lower()
        target = below if divide else above
        if low in (" ", "·", "*", "^", "(", ")", ".", "-"):
            continue
        if low in ("/", "per"):
            if power or degrees or fluid:
                return None
            divide = True
        elif low in ("2", "3"):
            if not target or target[-1][-1] in "23":
                return None
            target[-1] += low
        elif low in _POWERS:
            power = _POWERS[low]
        elif low in ("fl", "fluid"):
            fluid = True
        elif low in _DEGREES:
            degrees = True
        else:
            name = _COMPOUND.get(low) or _SPELLINGS.get(low)
            if name is None or (degrees and name not in ("F", "C", "K")) or (fluid and name != "oz"):
                return None
            if power and ("/" in name or name[-1] in "23"):
                return None
            name = "floz" if fluid else name + power
            first, *rest = name.split("/")
            target.extend(first.split("·"))
            (above if target is below else below).extend(rest)
            power, degrees, fluid = "", False, False
    if degrees and not above and not below:
        return "deg"
    if power or degrees or fluid or not (above or below) or (divide and not below):
        return None
    name = "/".join(["·".join(above) or "1", *below])
    return _SAME.get(name, name)
