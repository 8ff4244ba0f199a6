"""The mix: what one kilogram of binder, or of bag, makes, and what stone stretches it to."""

from dataclasses import replace

from shop_calc import defaults
from shop_calc.science import absolute_volume, bulk, water_ratio
from shop_calc.science.checks import require
from shop_calc.trade.mortar.materials import BINDER_KINDS, Material, material
from shop_calc.trade.mortar.mix_advice import mix_advice
from shop_calc.trade.mortar.mix_lines import aggregate_line
from shop_calc.trade.mortar.mix_parts import bag_parts, fibre_per_layer_kg, polymer_solids_kg, recipe_parts
from shop_calc.trade.mortar.mix_record import Fibre, Mix
from shop_calc.trade.mortar.mix_working import mix_working
from shop_calc.trade.mortar.recipe_types import Bag

STONE_RATIO_HIGHEST = (
    10.0  # kg of stone per kg of binder: beyond it nothing packs, a slip of units is likelier
)


def build_mix(
    recipe,
    *,
    stone_ratio=0.0,
    coarse_sand_ratio=0.0,
    stone="stone 3/8 in",
    coarse_sand="coarse sand",
    stone_moisture_fraction=0.0,
    coarse_sand_moisture_fraction=0.0,
    sand_moisture_fraction=None,
    stone_void_fraction=None,
):
    """Work out a mortar and its base from a recipe and the stone that stretches it.

    Not for a structural design: strength is not designed here, only volumes, masses and water are.

    Parameters
    ----------
    recipe : Recipe or Bag
        The recipe [-].
    stone_ratio, coarse_sand_ratio : float
        Oven-dry stone and coarse sand per mass of binder, or of bag [-].
    stone, coarse_sand : str or Material
        Which stone and which coarse sand [-].
    stone_moisture_fraction, coarse_sand_moisture_fraction : float
        Their moisture today, on oven-dry mass [-].
    sand_moisture_fraction : float or None
        Moisture of the recipe's own sand; None when it comes in the state of the recipe [-].
    stone_void_fraction : float or None
        Voids of the dry-rodded stone; None to take the bulk density of the defaults [-].

    Returns
    -------
    Mix
        Masses, water, volumes, densities, advice and working for one kilogram of binder or bag [kg].

    Raises
    ------
    ValueError
        When the sand and the liquids bring more water than the recipe has, water outweighs the powder, the
        mortar does not fill the voids of the stone with 5 % to spare, or pigment is above 10 % of the binder.

    Notes
    -----
    Water of the mix is added, free and liquid-borne water, never absorbed water. Dry stone drinks: its water
    is counted to the base and never to the ratio.

    Examples
    --------
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> mix = build_mix(recipe("demo mortar"), stone_ratio=1.2, coarse_sand_ratio=0.6)
    >>> f"{mix.phi:.5f}"
    '0.62608'

    References
    ----------
    Absolute volumes; see `science.absolute_volume`. phi limit derived from ACI 211.1 stone fractions, a
    judgement.
    """
    is_bag = isinstance(recipe, Bag)
    parts = bag_parts(recipe) if is_bag else recipe_parts(recipe, sand_moisture_fraction)
    lines, total = parts.lines, parts.total_water_kg
    free = sum(line.free_water_kg for line in lines)
    in_liquids = sum(line.liquid_water_kg for line in lines)
    added = _added_water(total, free, in_liquids, parts)
    air = 0.0 if is_bag else recipe.air_fraction
    mass = [*(line.volume_mass_kg for line in lines), total]
    density = [*(line.relative_density for line in lines), 1.0]
    volume = float(absolute_volume.mix_volume_m3(mass, density, air))
    mortar = sum(line.mass_kg for line in lines) + added

    base_lines = _base_lines(
        (coarse_sand, coarse_sand_ratio, coarse_sand_moisture_fraction, "coarse sand"),
        (stone, stone_ratio, stone_moisture_fraction, "stone"),
    )
    base_volume = volume
    if base_lines:
        base_volume = float(
            absolute_volume.extended_volume_m3(
                volume,
                [line.volume_mass_kg for line in base_lines],
                [line.relative_density for line in base_lines],
            )
        )
    drinks = -sum(line.free_water_kg for line in base_lines)
    ratio = [
        float(water_ratio.water_cementitious_ratio(share, added, free, in_liquids))
        for share in parts.binder_share
    ]
    pigment = sum(line.mass_kg for line in lines if line.kind == "pigment")
    base_mass = mortar + sum(line.dry_kg + line.absorbed_kg for line in base_lines)
    mix = Mix(
        recipe_name=recipe.name,
        basis=recipe.basis,
        lines=lines,
        base_lines=base_lines,
        added_water_kg=added,
        free_water_kg=free,
        liquid_water_kg=in_liquids,
        absorbed_water_kg=sum(line.absorbed_kg for line in lines),
        total_water_kg=total,
        w_cm=ratio[1],
        w_cm_low=min(ratio),
        w_cm_high=max(ratio),
        binder_share=parts.binder_share,
        cement_share=parts.cement_share,
        air_fraction=air,
        mortar_kg=mortar,
        mortar_m3=volume,
        absolute_m3=volume * (1.0 - air),
        stone_water_kg=drinks,
        base_kg=base_mass,
        base_m3=base_volume,
        phi=volume / base_volume,
        void_fraction=_void_fraction(base_lines, stone_void_fraction),
        w_cm_stone_left_dry=(total - max(drinks, 0.0)) / parts.binder_share[1],
        w_cm_stone_left_wet=(total + max(-drinks, 0.0)) / parts.binder_share[1],
        polymer_solids_share=polymer_solids_kg(lines) / parts.binder_share[1],
        pigment_share=tuple(sorted(pigment / share for share in parts.binder_share)),
        has_silica_fume=any(line.role == "silica fume" for line in lines),
        is_white=any(line.role == "white cement" for line in lines),
        is_pigmented=any(line.kind == "pigment" and line.role != "white pigment" for line in lines),
        largest_particle_m=max((line.largest_particle_m or 0.0 for line in lines), default=0.0) or None,
        largest_stone_m=max((line.largest_particle_m or 0.0 for line in base_lines), default=0.0) or None,
        face_fibres=_fibres(recipe.face, parts, 1.0 / mortar, mortar / volume),
        base_fibres=_fibres(recipe.base, parts, 1.0 / base_mass, base_mass / base_volume),
        origin=recipe.origin,
        mark=recipe.mark,
    )
    return replace(mix, advice=mix_advice(mix), working=mix_working(mix))


def _added_water(total, free, in_liquids, parts):
    added = total - free - in_liquids
    if added < 0:
        raise ValueError(
            f"added water: {added:.3g} kg per kg left over; sand and liquids bring {free + in_liquids:.3g} "
            "kg and "
            f"the recipe has {total:.3g} kg. The water must be at least what they bring: dry the sand or "
            "use less liquid"
        )
    powder = sum(line.mass_kg for line in parts.lines if line.kind in (*BINDER_KINDS, "bag"))
    if total > powder:
        raise ValueError(
            f"water: {total / powder:.3g} parts to 1 part of powder given; it must be at most 1. "
            "Is the ratio upside down? 2 parts powder to 1 part water is 0.5"
        )
    return added


def _base_lines(*rows):
    lines = []
    for which, ratio, moist, name in rows:
        ratio = require(f"{name} per mass of binder", ratio, 0, STONE_RATIO_HIGHEST)
        if ratio > 0:
            what = which if isinstance(which, Material) else material(which, name)
            if what.kind != "aggregate":
                raise ValueError(f"{name}: {what.name!r} given; it must be an aggregate")
            require(f"moisture of {what.name}", moist, 0, 0.3)
            lines.append(aggregate_line(what, ratio, "oven-dry", moist))
    return tuple(lines)


def _void_fraction(base_lines, given):
    if given is not None:
        return require("voids of the stone", given, 0, 0.6)
    if not base_lines:
        return 0.0
    largest = max(base_lines, key=lambda line: line.largest_particle_m or 0.0)
    return float(bulk.void_fraction(defaults.si("stone_dry_rodded"), largest.relative_density))


def _fibres(rows, parts, basis_per_layer_kg, layer_density_kg_m3):
    return tuple(
        Fibre(
            line.material.name,
            fibre_per_layer_kg(line, parts, basis_per_layer_kg, layer_density_kg_m3),
            line.material.density_kg_m3,
            line.amount.text,
        )
        for line in rows
    )
