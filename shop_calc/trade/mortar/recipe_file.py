"""Read a recipe from a table of a TOML file, and say everything that is wrong with it at once."""

from shop_calc import units
from shop_calc.science.checks import require
from shop_calc.trade.jobs.file_kind import file_kind
from shop_calc.trade.mortar.amounts import parse_amount
from shop_calc.trade.mortar.bag_file import bag_from_table
from shop_calc.trade.mortar.materials import material
from shop_calc.trade.mortar.recipe_lines import HEAD, head, recipe_lines
from shop_calc.trade.mortar.recipe_types import Recipe
from shop_calc.trade.problems import Collector

RECIPE_KEYS = ("parts", "doses", "face", "base", "w_cm", "water", "air")
AIR_HIGHEST = 0.25  # judgement: a foam, not a mortar that can be trowelled
W_CM_LOWEST = 0.1  # judgement: less water than this wets no powder
W_CM_HIGHEST = 1.0  # above it the ratio is upside down: no mortar of the trade has more water than binder
PART_BASES = ("part", "mass")
DOSE_BASES = ("binder", "cement", "total mass")
FIBRE_BASES = ("total mass", "volume", "binder", "cement")


def recipe_from_table(table, entry="recipe"):
    """Build a recipe or a bag from a table as it stands in a TOML file.

    Parameters
    ----------
    table : dict
        The table, in the form said under Notes [-].
    entry : str
        Where it stands in the file, as messages call it [-].

    Returns
    -------
    Recipe or Bag
        The checked recipe [-].

    Raises
    ------
    Problems
        With one line for each thing that is wrong.

    Notes
    -----
    A recipe has ``w_cm`` (all water, a ratio) or ``water`` (what is added; parts or a mass or "0.3 kg per kg
    binder"), ``air`` ("4 %") and up to four tables whose keys are names of materials:

    - ``parts``: binder and aggregates; numbers (parts by mass), or all of them masses ("94 lb");
    - ``doses``: polymer, admixture, pigment: "3 % of binder", "5 % solids of binder", "0.5 % of total mass",
      "1 lb per 94 lb of cement"; "120 mL" where the parts are masses;
    - ``face``, ``base``: fibres: "0.5 % of total mass" or "0.1 % of volume" of that layer, or of binder.

    Instead of a plain amount a line may be a table: ``amount``, ``state`` (needed for an aggregate:
    "oven-dry" or "saturated surface-dry"), ``relative_density`` (in that state), ``absorption``, ``solids``,
    ``solids_relative_density``, ``largest_particle``; ``kind`` and ``role`` for a material that the table of
    materials does not have.

    A bag (``kind = "bag"``) has ``mass``, ``water``, ``yield``, ``largest_particle`` and ``cement_share``
    ("16 %" or low, likely, high); its doses may be "0.5 % of bag" or "18 g per bag".

    Examples
    --------
    >>> recipe_from_table({"w_cm": 0.35000, "parts": {"portland cement": 1}}).w_cm
    0.35

    References
    ----------
    A form of our own.
    """
    found = Collector()
    if not isinstance(table, dict):
        found.add(entry, repr(table)[:40], "a table of parts, a bag, or the name of a recipe in quotes")
        found.raise_if_any()
    if file_kind(table) == "job":
        found.say(
            f'{entry}: this is a job, not a recipe: a recipe has parts and w_cm, a bag has kind = "bag", mass, water and yield'
        )
        found.raise_if_any()
    kind = table.get("kind", "recipe")
    if kind not in ("recipe", "bag"):
        found.add(f"{entry}.kind", repr(kind), '"recipe" or "bag"')
    if table.get("format", 1) != 1:
        found.add(f"{entry}.format", repr(table["format"]), "1")
    result = (bag_from_table if kind == "bag" else _recipe)(table, entry, found)
    found.raise_if_any()
    return result


def _recipe(table, entry, found):
    found.unknown(table, (*HEAD, *RECIPE_KEYS), entry)
    parts = recipe_lines(table.get("parts"), f"{entry}.parts", PART_BASES, found)
    in_masses = any(line.amount.basis == "mass" for line in parts)
    if in_masses and any(line.amount.basis == "part" for line in parts):
        found.add(f"{entry}.parts", "parts and masses", "all parts by mass or all masses")
    if not any(line.material.is_cement and line.amount.value > 0 for line in parts):
        found.add(f"{entry}.parts", "no cement", "at least one cement with an amount above 0")
    own = ("mass",) if in_masses else ("part",)
    doses = recipe_lines(table.get("doses"), f"{entry}.doses", (*DOSE_BASES, *own), found, optional=True)
    face, base = (_fibres(table, place, entry, own, found) for place in ("face", "base"))
    w_cm, water = _water(table, entry, own, found)
    air = 0.0
    with found.catch(f"{entry}.air"):
        air = units.parse(table.get("air", "0 %"), "fraction", f"{entry}.air")
        require(f"{entry}.air, of the volume", air, 0, AIR_HIGHEST)
    return Recipe(
        parts=parts,
        doses=doses,
        face=face,
        base=base,
        w_cm=w_cm,
        water=water,
        air_fraction=air,
        **head(table, entry),
    )


def _water(table, entry, own, found):
    w_cm = water = None
    if ("w_cm" in table) == ("water" in table):
        given = "both w_cm and water" if "w_cm" in table else "neither w_cm nor water"
        found.add(f"{entry}.w_cm", given, "one of the two")
        return w_cm, water
    if "water" in table:
        with found.catch(f"{entry}.water"):
            water = parse_amount(
                table["water"], material("water"), f"{entry}.water", ("binder", "cement", *own)
            )
        return w_cm, water
    with found.catch(f"{entry}.w_cm"):
        w_cm = units.parse(table["w_cm"], "number", f"{entry}.w_cm")
        if w_cm > W_CM_HIGHEST:
            found.add(
                f"{entry}.w_cm",
                f"{w_cm:g}",
                f"at most {W_CM_HIGHEST:g}: is the ratio upside down? 2 parts powder to 1 part water is 0.5",
            )
        require(f"{entry}.w_cm", w_cm, 0, low_open=True)
        require(f"{entry}.w_cm", w_cm, W_CM_LOWEST)
    return w_cm, water


def _fibres(table, place, entry, own, found):
    lines = recipe_lines(table.get(place), f"{entry}.{place}", (*FIBRE_BASES, *own), found, optional=True)
    for line in lines:
        if line.material.kind != "fibre":
            found.add(
                f"{entry}.{place}",
                line.material.name,
                "a fibre; everything else is mixed into all the mortar",
            )
    return lines
