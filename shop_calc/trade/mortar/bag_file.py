"""Read a pre-blended bag from a table of a TOML file."""

from shop_calc import units
from shop_calc.defaults import get, si_band
from shop_calc.science.checks import require
from shop_calc.trade.mortar.amounts import parse_amount
from shop_calc.trade.mortar.materials import material
from shop_calc.trade.mortar.recipe_lines import HEAD, head, recipe_lines
from shop_calc.trade.mortar.recipe_types import Bag

BAG_KEYS = ("mass", "water", "yield", "largest_particle", "cement_share", "doses", "face", "base")
WET_DENSITY_KG_M3 = (1000.0, 2800.0)  # judgement: beyond it mass, water and yield cannot belong to one bag


def bag_from_table(table, entry, found):
    """Read a pre-blended bag.

    Parameters
    ----------
    table : dict
        The table, in the form said in `recipe_from_table` [-].
    entry : str
        Where it stands in the file [-].
    found : Collector
        Takes the problems [-].

    Returns
    -------
    Bag or None
        The bag; None when anything is wrong [-].

    Examples
    --------
    >>> from shop_calc.trade.problems import Collector
    >>> table = {"mass": "80 lb", "water": "5.2 lb", "yield": "0.60 ft3"}
    >>> f"{bag_from_table(table, 'bag', Collector()).yield_m3:.7f}"
    '0.0169901'

    References
    ----------
    A form of our own.
    """
    found.unknown(table, (*HEAD, *BAG_KEYS), entry)
    mass = _quantity(table, "mass", "mass", entry, found)
    volume = _quantity(table, "yield", "volume", entry, found)
    water = None
    with found.catch(f"{entry}.water"):
        water = parse_amount(table.get("water"), material("water"), f"{entry}.water", ("mass",)).value
        require(f"{entry}.water", water, 0, low_open=True)
    if mass and water and volume:
        _check_label(mass, water, volume, entry, found)
    largest = None
    if "largest_particle" in table:
        largest = _quantity(table, "largest_particle", "length", entry, found)
    shares = si_band("bag_cement_share")
    with found.catch(f"{entry}.cement_share"):
        shares = _shares(table.get("cement_share"), shares, f"{entry}.cement_share")
    doses = recipe_lines(
        table.get("doses"), f"{entry}.doses", ("cement", "bag", "total mass"), found, optional=True
    )
    bases = ("total mass", "volume", "cement", "bag")
    face, base = (
        recipe_lines(table.get(place), f"{entry}.{place}", bases, found, optional=True)
        for place in ("face", "base")
    )
    if found.lines:
        return None
    return Bag(
        mass_kg=mass,
        water_kg=water,
        yield_m3=volume,
        largest_particle_m=largest,
        cement_share=shares,
        doses=doses,
        face=face,
        base=base,
        **head(table, entry),
    )


def _shares(given, default, entry):
    if given is None:
        return default
    row = get("bag_cement_share")
    texts = given if isinstance(given, list) else [given] * 3
    if len(texts) == 2:
        low, high = (units.parse(each, "fraction", entry) for each in texts)
        shares = (low, (low + high) / 2.0, high)
    elif len(texts) == 3:
        shares = tuple(units.parse(each, "fraction", entry) for each in texts)
    else:
        raise ValueError(
            f"{entry}: {len(texts)} numbers given; it must be one, or low and high, or low, likely, high"
        )
    for share in shares:
        require(f"{entry}, of the bag", share, row.minimum, row.maximum)
    if list(shares) != sorted(shares):
        raise ValueError(f"{entry}: {given} given; the low one must stand first and the high one last")
    return shares


def _check_label(mass_kg, water_kg, yield_m3, entry, found):
    """Mass, water and yield of one label must belong together, and powder outweighs water."""
    if water_kg > mass_kg:
        found.add(
            f"{entry}.water",
            f"{water_kg / mass_kg:.3g} parts to 1 part of powder",
            "at most 1; is the ratio upside down? 2 parts powder to 1 part water is 0.5",
        )
    low, high = WET_DENSITY_KG_M3
    wet = (mass_kg + water_kg) / yield_m3
    if not low <= wet <= high:
        found.add(
            f"{entry}.yield",
            f"with mass and water that is {wet:.0f} kg/m3",
            f"such that the wet mix is {low:.0f} to {high:.0f} kg/m3",
        )


def _quantity(table, key, kind, entry, found):
    name = f"{entry}.{key}"
    if key not in table:
        found.add(name, "nothing", f"there, for example {units.KINDS[kind].examples[0]!r}")
        return None
    with found.catch(name):
        value = units.parse(table[key], kind, name)
        require(name, value, 0, low_open=True)
        return value
    return None
