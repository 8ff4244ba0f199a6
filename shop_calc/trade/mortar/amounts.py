"""How much of something, with what it is a share of: "0.6 % of binder", "1 lb per 94 lb of cement"."""

import re
from dataclasses import dataclass

from shop_calc import units
from shop_calc.science.absolute_volume import WATER_DENSITY_KG_M3
from shop_calc.science.checks import require

# The words a person may write, and the one name we keep.
BASES = {
    "binder": "binder",
    "cementitious": "binder",
    "cementitious material": "binder",
    "cement": "cement",
    "total mass": "total mass",
    "total weight": "total mass",
    "mix mass": "total mass",
    "volume": "volume",
    "total volume": "volume",
    "mix volume": "volume",
    "bag": "bag",
    "bag mass": "bag",
    "powder": "bag",
}
LARGEST = 1_000_000_000  # no shop has a part or a mass of it
LONGEST = 80  # characters; the longest amount a person writes has about 40
NO_BASIS = 'a percent needs what it is a percent of: "of cement", "of binder", "of total mass" or "of volume"'

_PERCENT = re.compile(
    r"^(?P<number>[^%]+?)\s*(?:%|percent\b)\s*(?:(?P<counted>solids|liquid)\b)?\s*(?P<rest>.*)$", re.I
)
_PER = re.compile(r"^(?P<amount>.+?)\s*(?:\b(?P<counted>solids|liquid))?\s+per\s+(?P<rest>.+)$", re.I)
_REST = re.compile(
    rf"^(?P<mass>.*?)\s*\b(?:of\s+)?(?:the\s+)?(?P<basis>{'|'.join(sorted(BASES, key=len, reverse=True))})$",
    re.I,
)
_COUNTED = re.compile(r"^(?P<amount>.+?)\s+(?P<counted>solids|liquid)$", re.I)


@dataclass(frozen=True)
class Amount:
    """An amount and what it is reckoned on.

    Parameters
    ----------
    value : float
        Share or mass ratio; kilograms where the basis is "mass" or "each bag" [- or kg].
    basis : str
        "part", "mass", "each bag", or one of "binder", "cement", "total mass", "volume", "bag" [-].
    counted : str
        "solids" when only what is not water is meant, otherwise "as it comes" [-].
    text : str
        The amount as it was written [-].

    Examples
    --------
    >>> parse_amount("0.6 % of binder", entry="reducer").value
    0.006

    References
    ----------
    Common practice, no source.
    """

    value: float
    basis: str
    counted: str = "as it comes"
    text: str = ""


def parse_amount(text, material=None, entry="amount", bases=("binder", "cement", "total mass", "volume")):
    """Read an amount that says what it is a share of.

    Not for sizes and volumes of a piece: see `units.parse`. A percent without its basis is refused, because
    0.05 % of a bag is three to eight times 0.05 % of its cement.

    Parameters
    ----------
    text : str or float
        What was written; a bare number is so many parts by mass [-].
    material : Material or None
        What it is an amount of; a liquid may be given by volume [-].
    entry : str
        The entry as messages call it [-].
    bases : sequence of str
        Bases that make sense here; "part" and "mass" allow bare parts and plain masses [-].

    Returns
    -------
    Amount
        The amount [-].

    Raises
    ------
    ValueError
        When there is no basis, one that makes no sense here, a unit that does not fit, or a negative number.

    Notes
    -----
    Understood: "80" (parts) · "94 lb", "120 mL" · "3 % of cement", "5 % solids of binder", "10 % liquid of
    binder" · "1 lb per 94 lb of cement", "12 mL per kg binder" · "18 g per bag".

    Examples
    --------
    >>> round(parse_amount("1 lb per 94 lb of cement").value, 7)
    0.0106383

    References
    ----------
    Common practice, no source.
    """
    if isinstance(text, (int, float)) and not isinstance(text, bool):
        if not abs(text) < LARGEST:
            raise ValueError(f"{entry}: {str(float(text)) if isinstance(text, float) else 'a huge number'} given; "
                             f"it must be less than {LARGEST:,}")  # fmt: skip
        return _parts(float(text), str(text), entry, bases)
    if not isinstance(text, str) or not text.strip():
        raise ValueError(f"{entry}: {text!r} given; it must be an amount in quotes, {_examples(bases)}")
    written = " ".join(text.split())
    if len(written) > LONGEST:
        raise ValueError(f"{entry}: {written[:40] + '...'!r} given; it must be at most {LONGEST} characters")
    percent, per = _PERCENT.match(written), _PER.match(written)
    if percent:
        amount = _from_percent(percent, written, entry, bases)
    elif per:
        amount = _from_per(per, written, material, entry, bases)
    else:
        amount = _plain(written, material, entry, bases)
    return _with_liquid(amount, material, entry)


def stone_ratio(text, recipe, entry="stone"):
    """Read stone or coarse sand for the base as a mass per mass of the recipe's own basis, oven-dry.

    Parameters
    ----------
    text : str or float
        "1.2 kg per kg binder", "90 lb per 94 lb of cement", "0.3 kg per kg bag"; 0 for none [-].
    recipe : Recipe or Bag
        What it is a share of [-].
    entry : str
        The entry as messages call it [-].

    Returns
    -------
    float
        Oven-dry mass per mass of binder, or of bag for a pre-blended bag [-].

    Raises
    ------
    ValueError
        When the basis is missing, or the recipe does not know it.

    Examples
    --------
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> f"{stone_ratio('1.5 kg per kg cement', recipe('demo mortar')):.5f}"
    '1.20000'

    References
    ----------
    Common practice, no source.
    """
    if text in (0, None) and not isinstance(text, bool):
        return 0.0
    bases = ("bag",) if recipe.basis == "bag" else ("binder", "cement")
    amount = parse_amount(text, None, entry, bases)
    if amount.basis == "each bag":
        return amount.value / recipe.mass_kg
    return amount.value * (recipe.cement_share if amount.basis == "cement" else 1.0)


def _from_percent(found, written, entry, bases):
    basis = _basis(found["rest"], written, entry, bases, NO_BASIS)
    share = units.parse(f"{found['number']} %", "fraction", entry)
    return Amount(share, basis, (found["counted"] or "").lower(), written)


def _from_per(found, written, material, entry, bases):
    rest = _REST.match(found["rest"])
    if not rest:
        raise ValueError(
            f"{entry}: {written!r} given; after 'per' it must be a mass of something, {_examples(bases)}"
        )
    mass_kg = _mass(found["amount"], material, entry)
    basis, counted = BASES[rest["basis"].lower()], (found["counted"] or "").lower()
    if basis == "bag" and not rest["mass"].strip():
        _allow("each bag", written, entry, (*bases, "each bag") if "bag" in bases else bases)
        return Amount(mass_kg, "each bag", counted, written)
    _allow(basis, written, entry, bases)
    if basis == "volume":
        raise ValueError(
            f"{entry}: {written!r} given; a share of volume must be a percent, like '0.1 % of volume'"
        )
    below = rest["mass"].strip()
    if not below:
        raise ValueError(f"{entry}: {written!r} given; after 'per' it must be a mass, like 'per kg {basis}'")
    below_kg = units.parse(below if any(sign.isdigit() for sign in below) else f"1 {below}", "mass", entry)
    return Amount(
        mass_kg / require(f"{entry}, after 'per'", below_kg, 0, low_open=True), basis, counted, written
    )


def _plain(written, material, entry, bases):
    found = _COUNTED.match(written)
    counted, amount = (found["counted"].lower(), found["amount"]) if found else ("", written)
    try:
        return _parts(units.parse(amount, "number", entry), written, entry, bases)
    except ValueError:
        mass_kg = _mass(amount, material, entry)
    if "mass" not in bases:
        raise ValueError(f"{entry}: {written!r} given; it must say of what, {_examples(bases)}")
    return Amount(mass_kg, "mass", counted, written)


def _parts(number, written, entry, bases):
    if "part" not in bases:
        raise ValueError(f"{entry}: {written} given; a bare number says nothing here, {_examples(bases)}")
    return Amount(require(entry, number, 0), "part", "", str(written))


def _mass(text, material, entry):
    try:
        return units.parse(text, "mass", entry)
    except ValueError as no_mass:
        try:
            volume_m3 = units.parse(text, "liquid", entry)
        except ValueError:
            raise no_mass from None
    if material is None or not material.is_liquid:
        raise ValueError(
            f"{entry}: {text!r} given; it must be a mass: only liquids are measured by volume, weigh it"
        )
    return volume_m3 * material.relative_density * WATER_DENSITY_KG_M3


def _basis(rest, written, entry, bases, message):
    found = _REST.match(rest) if rest.lower().startswith("of") else None
    if not found or found["mass"].strip(" of"):
        raise ValueError(f"{entry}: {written!r} given; {message}")
    basis = BASES[found["basis"].lower()]
    _allow(basis, written, entry, bases)
    return basis


def _allow(basis, written, entry, bases):
    if basis not in bases:
        raise ValueError(f"{entry}: {written!r} given; it must say of what, {_examples(bases)}")


def _with_liquid(amount, material, entry):
    """One shop doses a liquid polymer by its solids and the next as liquid: the word must be there."""
    counted = amount.counted
    shared = amount.basis not in ("part", "mass", "each bag")
    if shared and material is not None and material.kind == "polymer liquid" and not counted:
        raise ValueError(
            f"{entry}: {amount.text!r} given; for a liquid polymer it must say which is meant, "
            "for example '5 % solids of binder' or '10 % liquid of binder'"
        )
    if counted == "solids" and material is not None and material.solids_fraction == 0:
        raise ValueError(f"{entry}: {amount.text!r} given; {material.name} has no solids")
    return Amount(amount.value, amount.basis, "solids" if counted == "solids" else "as it comes", amount.text)


def _examples(bases):
    shown = {
        "part": "a number of parts by mass",
        "mass": "a mass like '94 lb' or '20 kg'",
        "binder": "'0.6 % of binder' or '1.2 kg per kg binder'",
        "cement": "'3 % of cement'",
        "total mass": "'0.5 % of total mass'",
        "volume": "'0.1 % of volume'",
        "bag": "'0.5 % of bag' or '18 g per bag'",
    }
    return "for example " + ", ".join(shown[each] for each in bases if each in shown)
