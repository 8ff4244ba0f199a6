"""Lines of a recipe: a material, how much of it, and in which state it comes."""

from dataclasses import replace

from shop_calc import units
from shop_calc.trade.mortar.amounts import parse_amount
from shop_calc.trade.mortar.materials import KINDS, Material, material, materials
from shop_calc.trade.mortar.recipe_types import STATES, RecipeLine
from shop_calc.trade.problems import Collector

HEAD = ("format", "kind", "name", "origin", "mark", "note")
LINE_KEYS = (
    "amount",
    "state",
    "relative_density",
    "absorption",
    "solids",
    "solids_relative_density",
    "largest_particle",
    "kind",
    "role",
)


def head(table, entry):
    """Take name, origin, mark and note from a table.

    Parameters
    ----------
    table : dict
        The table of the recipe [-].
    entry : str
        Its name when it has none [-].

    Returns
    -------
    dict
        The words that are there [-].

    Examples
    --------
    >>> head({"note": "lean"}, "mix")
    {'name': 'mix', 'note': 'lean'}

    References
    ----------
    A form of our own.
    """
    words = {key: str(table[key])[:200] for key in ("name", "origin", "mark", "note") if key in table}
    return {"name": entry, **words}


def recipe_lines(table, entry, bases, found, optional=False):
    """Read a table whose keys are materials and whose values are amounts.

    Parameters
    ----------
    table : dict or None
        The table [-].
    entry : str
        Where it stands in the file [-].
    bases : sequence of str
        What its amounts may be a share of [-].
    found : Collector
        Takes the problems [-].
    optional : bool
        True when the table may be left out [-].

    Returns
    -------
    tuple of RecipeLine
        The lines that could be read [-].

    Examples
    --------
    >>> recipe_lines({"metakaolin": "20.250 lb"}, "parts", ("mass",), Collector())[0].amount.text
    '20.250 lb'

    References
    ----------
    A form of our own.
    """
    if table is None and optional:
        return ()
    if not isinstance(table, dict) or not table:
        found.add(
            entry, "nothing" if not table else repr(table)[:40], "a table with a line for each material"
        )
        return ()
    lines = []
    for name, given in table.items():
        with found.catch(f"{entry}.{name}"):
            lines.append(_line(name, given, f"{entry}.{name}", bases))
    return tuple(lines)


def _line(name, given, entry, bases):
    row = given if isinstance(given, dict) else {"amount": given}
    wrong = Collector()
    wrong.unknown(row, LINE_KEYS, entry)
    if "amount" not in row:
        wrong.add(entry, "no amount", "a line with an amount")
    what = None
    with wrong.catch(entry):
        what = material_from_row(name, row, entry)
    state = row.get("state", "")
    if what is not None and what.kind == "water":
        wrong.say(f"{entry}: the water stands in w_cm or water of the recipe, not among its materials")
    if what is not None and what.kind == "aggregate" and state not in STATES:
        wrong.add(
            f"{entry}.state", repr(state) if state else "nothing", " or ".join(f'"{each}"' for each in STATES)
        )
    elif state and what is not None and what.kind != "aggregate":
        wrong.say(f"{entry}.state: {state!r} given; only an aggregate has one")
    amount = None
    with wrong.catch(entry):
        amount = parse_amount(row.get("amount"), what, entry, bases) if "amount" in row else None
    if amount is not None and amount.basis not in ("part", "mass", "each bag") and amount.value >= 1:
        wrong.add(entry, amount.text, "less than 100 % of what it is a share of")
    wrong.raise_if_any()
    return RecipeLine(what, amount, state, "relative_density" in row)


def material_from_row(name, row, entry="material"):
    """Take a material from the table and put a line's own numbers over it, or build one of a person's own.

    Parameters
    ----------
    name : str
        Name of the material [-].
    row : dict
        Entries ``kind``, ``role``, ``relative_density``, ``absorption``, ``solids``,
        ``solids_relative_density``, ``largest_particle``; all of them may be left out for a material of the
        table [-].
    entry : str
        The entry as messages call it [-].

    Returns
    -------
    Material
        The material [-].

    Raises
    ------
    ValueError
        When the name is unknown and the row does not say kind and relative density, or a number is not
        possible.

    Examples
    --------
    >>> material_from_row("portland cement", {"relative_density": 3.1250}).relative_density
    3.125

    References
    ----------
    Common practice, no source.
    """
    own = {}
    for key, field, kind in (
        ("relative_density", "relative_density", "number"),
        ("solids_relative_density", "solids_relative_density", "number"),
        ("absorption", "absorption_fraction", "fraction"),
        ("solids", "solids_fraction", "fraction"),
        ("largest_particle", "largest_particle_m", "length"),
    ):
        if key in row:
            own[field] = units.parse(row[key], kind, f"{entry}.{key}")
    if name not in materials() and "kind" in row and "relative_density" in row:
        if row["kind"] not in KINDS:
            raise ValueError(f"{entry}.kind: {row['kind']!r} given; it must be one of {', '.join(KINDS)}")
        return Material(name=str(name), kind=row["kind"], role=str(row.get("role", "")), **own)
    known = material(name, entry)
    if not own:
        return known
    if "relative_density" in own and "solids_relative_density" not in own and not known.is_liquid:
        own["solids_relative_density"] = own["relative_density"]
    return replace(known, **own, mark="given", source="as given in the recipe")
