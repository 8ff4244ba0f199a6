"""The working of a mix: every number for one kilogram of its basis, as arithmetic that can be done again."""

from shop_calc.science.absolute_volume import WATER_DENSITY_KG_M3
from shop_calc.trade.working import Step

VOLUMES = "absolute volumes, NAVEDTRA 14070/14071 ch. 17"
MASS = "conservation of mass"


def mix_working(mix):
    """Write down how the numbers of a mix came about.

    Parameters
    ----------
    mix : Mix
        The mix [-].

    Returns
    -------
    tuple of Step
        The lines, each with plain arithmetic in its own inputs [SI].

    Examples
    --------
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> steps = mix_working(build_mix(recipe("demo mortar")))
    >>> [f"{step.value:.5f}" for step in steps if step.name == "mix_w_cm"]
    ['0.33000']

    References
    ----------
    Common practice, no source.
    """
    of = f"for 1 kg of {mix.basis}"
    binder = mix.binder_share[1]
    free, free_inputs = _sum(
        [
            (
                "O{0}*(mc{0} - ab{0})",
                (
                    ("O", line.dry_kg, "kg"),
                    ("mc", line.moisture_fraction, "-"),
                    ("ab", line.absorption_fraction, "-"),
                ),
            )
            for line in mix.lines
            if line.kind == "aggregate"
        ]
    )
    liquid, liquid_inputs = _sum(
        [
            ("L{0}*(1 - s{0})", (("L", line.mass_kg, "kg"), ("s", line.solids_fraction, "-")))
            for line in mix.lines
            if line.liquid_water_kg > 0
        ]
    )
    solids, solid_inputs = _sum(
        [
            ("m{0}/rd{0}", (("m", line.volume_mass_kg, "kg"), ("rd", line.relative_density, "-")))
            for line in mix.lines
        ]
    )
    scale, scale_inputs = _sum([("m{0}", (("m", line.mass_kg, "kg"),)) for line in mix.lines])
    drink, drink_inputs = _sum(
        [
            (
                "O{0}*(ab{0} - mc{0})",
                (
                    ("O", line.dry_kg, "kg"),
                    ("ab", line.absorption_fraction, "-"),
                    ("mc", line.moisture_fraction, "-"),
                ),
            )
            for line in mix.base_lines
        ]
    )
    stone, stone_inputs = _sum(
        [
            ("M{0}/rd{0}", (("M", line.volume_mass_kg, "kg"), ("rd", line.relative_density, "-")))
            for line in mix.base_lines
        ]
    )
    saturated, saturated_inputs = _sum(
        [
            ("M{0}*(1 + ab{0})", (("M", line.dry_kg, "kg"), ("ab", line.absorption_fraction, "-")))
            for line in mix.base_lines
        ]
    )
    water = ("rho_w", WATER_DENSITY_KG_M3, "kg/m3")
    mortar, volume = ("M_mortar", mix.mortar_kg, "kg"), ("V_mortar", mix.mortar_m3, "m3")
    base = ("V_base", mix.base_m3, "m3")
    steps = [
        Step(
            "mix_total_water_kg",
            "W_mix",
            "by the recipe: all its water",
            (),
            mix.total_water_kg,
            "kg",
            mix.mark,
            mix.origin,
            f"water of the mix {of}",
        ),
        Step(
            "mix_liquid_water_kg",
            "W_liquid",
            liquid,
            liquid_inputs,
            mix.liquid_water_kg,
            "kg",
            "derived",
            MASS,
            f"water inside the liquids {of}",
        ),
        Step(
            "mix_free_water_kg",
            "W_free",
            free,
            free_inputs,
            mix.free_water_kg,
            "kg",
            "derived",
            MASS,
            f"water on the sand {of}, below 0 when it drinks",
        ),
        Step(
            "mix_added_water_kg",
            "W_added",
            "W_mix - W_liquid - W_free",
            (
                ("W_mix", mix.total_water_kg, "kg"),
                ("W_liquid", mix.liquid_water_kg, "kg"),
                ("W_free", mix.free_water_kg, "kg"),
            ),
            mix.added_water_kg,
            "kg",
            "derived",
            MASS,
            f"water to pour in {of}",
        ),
        Step(
            "mix_w_cm",
            "w_cm",
            "(W_added + W_free + W_liquid)/B",
            (
                ("W_added", mix.added_water_kg, "kg"),
                ("W_free", mix.free_water_kg, "kg"),
                ("W_liquid", mix.liquid_water_kg, "kg"),
                ("B", binder, "kg"),
            ),
            mix.w_cm,
            "-",
            "memory",
            "from memory of ACI Concrete Terminology",
            "water-cementitious ratio",
        ),
        Step(
            "mix_absolute_volume_m3",
            "V_abs",
            f"({solids} + W_mix)/rho_w",
            (*solid_inputs, ("W_mix", mix.total_water_kg, "kg"), water),
            mix.absolute_m3,
            "m3",
            "read",
            VOLUMES,
            f"mortar without air {of}",
        ),
        Step(
            "mix_mortar_volume_m3",
            "V_mortar",
            "V_abs/(1 - air)",
            (("V_abs", mix.absolute_m3, "m3"), ("air", mix.air_fraction, "-")),
            mix.mortar_m3,
            "m3",
            "read",
            VOLUMES,
            f"mortar that comes out {of}",
        ),
        Step(
            "mix_mortar_mass_kg",
            "M_mortar",
            f"{scale} + W_added",
            (*scale_inputs, ("W_added", mix.added_water_kg, "kg")),
            mix.mortar_kg,
            "kg",
            "derived",
            MASS,
            f"mass of mortar {of}",
        ),
        Step(
            "mix_mortar_density_kg_m3",
            "rho_mortar",
            "M_mortar/V_mortar",
            (mortar, volume),
            mix.mortar_density_kg_m3,
            "kg/m3",
            "derived",
            "definition",
            "density of the mortar with its air",
        ),
        Step(
            "mix_air_free_density_kg_m3",
            "rho_air_free",
            "M_mortar/V_abs",
            (mortar, ("V_abs", mix.absolute_m3, "m3")),
            mix.air_free_density_kg_m3,
            "kg/m3",
            "derived",
            "definition",
            "density of the mortar without air",
        ),
        Step(
            "mix_stone_water_kg",
            "W_stone",
            drink,
            drink_inputs,
            mix.stone_water_kg,
            "kg",
            "derived",
            MASS,
            f"water that goes in with the stone {of}",
        ),
        Step(
            "mix_base_volume_m3",
            "V_base",
            f"V_mortar + ({stone})/rho_w",
            (volume, *stone_inputs, water),
            mix.base_m3,
            "m3",
            "derived",
            "every grain displaces its own volume",
            f"extended volume {of}",
        ),
        Step(
            "mix_phi",
            "phi",
            "V_mortar/V_base",
            (volume, base),
            mix.phi,
            "-",
            "derived",
            "definition",
            "share of mortar in the base",
        ),
        Step(
            "mix_base_mass_kg",
            "M_base",
            f"M_mortar + {saturated}",
            (mortar, *saturated_inputs),
            mix.base_kg,
            "kg",
            "derived",
            MASS,
            f"mass of the base {of}, its stone saturated",
        ),
        Step(
            "mix_base_density_kg_m3",
            "rho_base",
            "M_base/V_base",
            (("M_base", mix.base_kg, "kg"), base),
            mix.base_density_kg_m3,
            "kg/m3",
            "derived",
            "definition",
            "density of the base",
        ),
    ]
    return tuple(steps)


def _sum(rows):
    """Join terms with numbered symbols: ("m{0}/rd{0}", inputs) three times -> "m1/rd1 + m2/rd2 + m3/rd3"."""
    terms, inputs = [], []
    for number, (term, symbols) in enumerate(rows, 1):
        terms.append(term.format(number))
        inputs.extend((f"{symbol}{number}", value, unit) for symbol, value, unit in symbols)
    return " + ".join(terms) or "0", tuple(inputs)
