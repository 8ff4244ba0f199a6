"""From the words of a recipe to masses for one kilogram of its binder, or of the bag."""

from dataclasses import dataclass

from shop_calc.science.absolute_volume import WATER_DENSITY_KG_M3
from shop_calc.trade.mortar.materials import BINDER_KINDS, POLYMER_KINDS
from shop_calc.trade.mortar.mix_lines import MixLine, aggregate_line, plain_line


@dataclass(frozen=True)
class Parts:
    """A recipe in kilograms for one kilogram of its basis.

    Parameters
    ----------
    lines : tuple of MixLine
        Everything but the added water [kg].
    total_water_kg : float
        Water of the mix: added, free and in liquids [kg].
    cement_share : tuple of float
        Low, likely and high mass of cement in one kilogram of the basis [-].
    binder_share : tuple of float
        Low, likely and high mass of binder in one kilogram of the basis [-].
    unit_mass_kg : float
        Mass of the basis that absolute amounts of the recipe refer to [kg].

    Examples
    --------
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> recipe_parts(recipe("demo mortar")).cement_share
    (0.8, 0.8, 0.8)

    References
    ----------
    Common practice, no source.
    """

    lines: tuple
    total_water_kg: float
    cement_share: tuple
    binder_share: tuple
    unit_mass_kg: float


def recipe_parts(recipe, sand_moisture_fraction=None):
    """Bring a recipe by parts to one kilogram of binder.

    Parameters
    ----------
    recipe : Recipe
        The recipe [-].
    sand_moisture_fraction : float or None
        Moisture of the recipe's own aggregates today; None when they come in the state the recipe says [-].

    Returns
    -------
    Parts
        Masses for one kilogram of binder [kg].

    Raises
    ------
    ValueError
        When doses of total mass add up to the whole mix, or a moisture is impossible.

    Notes
    -----
    A dose of total mass counts itself in the total: M = K / (1 - sum p), K the mass of everything else.

    Examples
    --------
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> f"{recipe_parts(recipe('demo mortar')).total_water_kg:.5f}"
    '0.33000'

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    binder = sum(line.amount.value for line in recipe.parts if line.material.kind in BINDER_KINDS)
    cement = recipe.cement_share
    ratios = {"binder": 1.0, "cement": cement, "part": 1.0 / binder, "mass": 1.0 / binder}
    lines, state_water = [], 0.0
    for each in recipe.parts:
        given = each.amount.value / binder
        if each.material.kind == "aggregate":
            lines.append(
                aggregate_line(each.material, given, each.state, sand_moisture_fraction, each.own_density)
            )
            if each.state == "oven-dry":  # as given it drinks its absorption
                state_water -= lines[-1].absorbed_kg
        else:
            lines.append(plain_line(each.material, given))
    of_total = []
    for each in recipe.doses:
        if each.amount.basis == "total mass":
            of_total.append(each)
        else:
            lines.append(
                plain_line(each.material, _as_it_comes(each, each.amount.value * ratios[each.amount.basis]))
            )
    total_water = recipe.w_cm
    added = None
    if recipe.water is not None:
        added = recipe.water.value * ratios[recipe.water.basis]
        total_water = added + state_water + sum(line.liquid_water_kg for line in lines)
    if of_total:
        known = total_water + sum(line.dry_kg + line.absorbed_kg for line in lines)
        for each in of_total:
            mass = _total_mass(known, of_total, water_counts=added is not None)
            line = plain_line(each.material, _as_it_comes(each, each.amount.value * mass))
            lines.append(line)
            total_water += line.liquid_water_kg if added is not None else 0.0
    return Parts(tuple(lines), float(total_water), (cement,) * 3, (1.0,) * 3, binder)


def bag_parts(bag):
    """Bring a pre-blended bag to one kilogram of its dry mass.

    Parameters
    ----------
    bag : Bag
        The bag [-].

    Returns
    -------
    Parts
        Masses for one kilogram of dry bag; its binder is known as a range only [kg].

    Examples
    --------
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> f"{bag_parts(recipe('demo counter bag')).total_water_kg:.5f}"
    '0.06517'

    References
    ----------
    Arithmetic; the cement share of a bag is common practice, no source.
    """
    water = bag.water_kg / bag.mass_kg
    known = 1.0 + water
    # the room of the powder is what the label's yield leaves beside the water
    room = bag.yield_m3 / bag.mass_kg - water / WATER_DENSITY_KG_M3
    powder = MixLine(
        bag.name,
        "bag",
        "",
        1.0,
        1.0,
        0.0,
        0.0,
        0.0,
        0.0,
        1.0,
        1.0,
        1.0 / (room * WATER_DENSITY_KG_M3),
        bag.largest_particle_m,
    )
    lines = [powder]
    of_total = [each for each in bag.doses if each.amount.basis == "total mass"]
    for each in bag.doses:
        ratio = {
            "bag": 1.0,
            "each bag": 1.0 / bag.mass_kg,
            "mass": 1.0 / bag.mass_kg,
            "cement": bag.cement_share[1],
        }
        if each.amount.basis in ratio:
            lines.append(
                plain_line(each.material, _as_it_comes(each, each.amount.value * ratio[each.amount.basis]))
            )
    known += sum(line.mass_kg for line in lines[1:])
    for each in of_total:
        mass = _total_mass(known, of_total, water_counts=True)
        lines.append(plain_line(each.material, _as_it_comes(each, each.amount.value * mass)))
    water += sum(line.liquid_water_kg for line in lines)
    return Parts(tuple(lines), water, bag.cement_share, bag.cement_share, bag.mass_kg)


def fibre_per_layer_kg(line, parts, basis_per_layer_kg, layer_density_kg_m3):
    """Mass of fibre for one kilogram of the layer it goes into.

    Parameters
    ----------
    line : RecipeLine
        The fibre and its dose [-].
    parts : Parts
        The recipe for one kilogram of its basis [-].
    basis_per_layer_kg : float
        Binder, or bag, in one kilogram of the layer [-].
    layer_density_kg_m3 : float
        Density of the layer before the fibre [kg/m3].

    Returns
    -------
    float
        Fibre for one kilogram of the layer [-].

    Examples
    --------
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> demo = recipe("demo mortar")
    >>> round(fibre_per_layer_kg(demo.face[0], recipe_parts(demo), 0.41453, 2120.2), 5)
    0.005

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    value, basis = line.amount.value, line.amount.basis
    if basis == "total mass":
        return value
    if basis == "volume":
        return value * line.material.density_kg_m3 / layer_density_kg_m3
    of_basis = {
        "binder": parts.binder_share[1],
        "cement": parts.cement_share[1],
        "bag": 1.0,
    }.get(basis, 1.0 / parts.unit_mass_kg)
    return value * of_basis * basis_per_layer_kg


def polymer_solids_kg(lines):
    """Solids of all polymers among the lines.

    Parameters
    ----------
    lines : sequence of MixLine
        Ingredients for one kilogram of binder [kg].

    Returns
    -------
    float
        Polymer solids [kg].

    Examples
    --------
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> f"{polymer_solids_kg(recipe_parts(recipe('demo mortar')).lines):.5f}"
    '0.05000'

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    return sum(line.dry_kg for line in lines if line.kind in POLYMER_KINDS)


def _as_it_comes(line, mass_kg):
    """A dose counted as solids is poured as more liquid."""
    return mass_kg / line.material.solids_fraction if line.amount.counted == "solids" else mass_kg


def _total_mass(known_kg, lines, water_counts):
    share = 0.0
    for line in lines:
        solids = line.material.solids_fraction if line.material.is_liquid else 1.0
        poured = line.amount.value / (solids if line.amount.counted == "solids" else 1.0)
        share += poured * (1.0 if water_counts else solids)
    if share >= 1.0:
        raise ValueError(
            f"doses of total mass: {share:.0%} together given; they must be less than the whole mix"
        )
    return known_kg / (1.0 - share)
