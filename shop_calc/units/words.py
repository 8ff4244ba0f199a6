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
cL    centiliter    cl centiliter centiliters centilitre centilitres
dL    deciliter     dl deciliter deciliters decilitre decilitres
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
_UNCLEAR = {
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

# Units that only US shops use: their commas group thousands.
_US = {"in", "ft", "yd", "mil", "mi", "lb", "oz", "floz", "tsp", "tbsp", "cup", "pt", "qt", "gal", "F", "lbf",
       "psi", "ksi", "BTU", "hp"}  # fmt: skip

_POWERS = {"square": "2", "sq": "2", "cubic": "3", "cu": "3"}
_MODIFIERS = {"deg": "deg", "degree": "deg", "degrees": "deg", "°": "deg", "fl": "fl", "fluid": "fl"}
_TOKEN = re.compile(r"[a-zA-Zµμ℉℃_]+|[°%#23/·*.\"' -]")
_LONGEST = 60  # characters; "pounds per square foot per hour" has 31


def pieces(unit):
    """List the parts of one of our unit names, with the powers of those below the line negative.

    Parameters
    ----------
    unit : str
        A name that `canonical` gave [-].

    Returns
    -------
    list of tuple
        (name, power) of each part [-].

    Examples
    --------
    >>> pieces("lb/ft2/h")
    [('lb', 1), ('ft', -2), ('h', -1)]

    References
    ----------
    Common practice, no source.
    """
    found = []
    for row, text in enumerate(unit.split("/")):
        for piece in text.split("·"):
            name, power = (piece[:-1], int(piece[-1])) if piece[-1] in "23" else (piece, 1)
            if name != "1":
                found.append((name, -power if row else power))
    return found


def is_us(unit):
    """Tell whether a unit is one that only US shops use, so that its comma groups thousands.

    Parameters
    ----------
    unit : str
        A name that `canonical` gave [-].

    Returns
    -------
    bool
        True when any part is an inch, a pound, a quart and the like [-].

    Examples
    --------
    >>> is_us("lb/ft3"), is_us("mm")
    (True, False)

    References
    ----------
    Common practice, no source.
    """
    return any(name in _US for name, _ in pieces(unit))


def unclear(phrase):
    """Say what to write instead of a unit word with two meanings.

    Parameters
    ----------
    phrase : str
        The unit as typed [-].

    Returns
    -------
    str
        Advice in shop words, or an empty text [-].

    Examples
    --------
    >>> unclear("T")
    't can be a teaspoon, a tablespoon or a tonne; write tsp, Tbsp or kg'

    References
    ----------
    Common practice, no source.
    """
    for word in phrase.replace(".", " ").replace("/", " ").split():
        if word.lower() in _UNCLEAR:
            return _UNCLEAR[word.lower()]
    return "mPa is a thousandth of a pascal; write MPa" if "mPa" in phrase else ""


def _plain_unit(phrase):
    """Bring raised figures, powers and the brackets of kg/(m2·h) to one way of writing."""
    text = phrase.strip().replace("²", "2").replace("³", "3").replace("⋅", "·")
    for power in "23":
        text = text.replace(f"**{power}", power).replace(f"^{power}", power)
    if text.endswith(")") and text.count("/(") == 1 and text.count("(") == text.count(")") == 1:
        text = text.replace("/(", "/")[:-1]
    return text


def canonical(phrase):
    """Bring a unit as written to our own name of it.

    Not for a number with its unit: that is `parse` or `parse_quantity`.

    Parameters
    ----------
    phrase : str
        The unit without its number [-].

    Returns
    -------
    str or None
        Our name of the unit, None when it holds a word or sign that is not known [-].

    Notes
    -----
    Capitals do not matter, except that mPa is never taken for MPa. US measures: a gallon is 231 in3.

    Examples
    --------
    >>> canonical("pounds per cubic foot"), canonical("sq. ft."), canonical("lb/ft²·h")
    ('lb/ft3', 'ft2', 'lb/ft2/h')

    References
    ----------
    Common practice, no source.
    """
    text = _plain_unit(phrase)
    if text in ("-", "1"):
        return "-"
    upside_down = text.startswith("1/")
    text = text[2:] if upside_down else text
    tokens = _TOKEN.findall(text)
    if not text or len(text) > _LONGEST or "mPa" in text or "".join(tokens) != text:
        return None
    rows = [[], []]  # above and below the line
    row, power, modifier, waiting, before = (1 if upside_down else 0), "", "", True, ""
    for token in tokens:
        low = token.lower()
        last, before = before, token
        if low == " ":
            continue
        if low == ".":
            if not last.isalpha():
                return None
        elif low in ("/", "per", "·", "*", "-"):
            if waiting or power or modifier:
                return None
            waiting, row = True, 1 if low in ("/", "per") else row
        elif low in ("2", "3"):
            if waiting or not last.isalpha() or rows[row][-1][-1] in "23":
                return None
            rows[row][-1] += low
        elif low in _POWERS:
            power = _POWERS[low]
        elif low in _MODIFIERS:
            modifier = _MODIFIERS[low]
        else:
            name = _COMPOUND.get(low) or _SPELLINGS.get(low)
            if name is None or (modifier == "deg" and name not in ("F", "C", "K")):
                return None
            if (modifier == "fl" and name != "oz") or (power and ("/" in name or name[-1] in "23")):
                return None
            first, *rest = ("floz" if modifier == "fl" else name + power).split("/")
            rows[row].extend(first.split("·"))
            rows[1 - row].extend(rest)
            power, modifier, waiting = "", "", False
    if modifier == "deg" and not rows[0]:
        return "deg"
    if power or modifier or waiting:
        return None
    name = "/".join(["·".join(rows[0]) or "1", *rows[1]])
    return _SAME.get(name, name)
