"""The working of a batch: every mass and volume as arithmetic that can be done again."""

from shop_calc.trade.working import Step

GEOMETRY = ("derived", "arithmetic on the two volumes")
MASS = ("derived", "conservation of mass")


def batch_working(batch, mix, vessel):
    """Write down how the numbers of a batch came about.

    Parameters
    ----------
    batch : Batch
        The batch [-].
    mix : Mix
        The mix [-].
    vessel : Mixer
        The mixer [-].

    Returns
    -------
    tuple of Step
        The lines, the water plan's among them [SI].

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> from shop_calc.trade.batch import build_batch
    >>> from shop_calc.trade.mix import build_mix
    >>> from shop_calc.trade.recipe import recipe
    >>> layers = SimpleNamespace(face_m3=0.010779, core_m3=0.0493943, face_thickness_m=0.00635)
    >>> batch = build_batch(layers, build_mix(recipe("demo mortar")))
    >>> batch.working[0].name, f"{batch.working[0].value:.6f}"
    ('face_share_volume_m3', '0.013474')

    References
    ----------
    Common practice, no source.
    """
    face = ("V_s", batch.face_share_m3, "m3")
    base = ("V_b", batch.base_m3, "m3")
    mortar = ("V_m", batch.mortar_m3, "m3")
    rho = ("rho_m", mix.mortar_density_kg_m3, "kg/m3")
    basis = ("n", batch.mortar_m3 / mix.mortar_m3, "kg")
    base_basis = ("n_b", batch.base_m3 / mix.base_m3, "kg")
    steps = [
        Step(
            "face_share_volume_m3",
            "V_s",
            "V_f*(1 + a_f)",
            (("V_f", batch.face_m3, "m3"), ("a_f", batch.face_allowance_fraction, "-")),
            batch.face_share_m3,
            "m3",
            *GEOMETRY,
            "face mortar to set aside",
        ),
        Step(
            "base_to_make_m3",
            "V_b",
            "V_c*(1 + a_b)",
            (("V_c", batch.core_m3, "m3"), ("a_b", batch.base_allowance_fraction, "-")),
            batch.base_m3,
            "m3",
            *GEOMETRY,
            "base mix to make",
        ),
        Step(
            "mortar_to_make_m3",
            "V_m",
            "V_s + phi*V_b",
            (face, ("phi", mix.phi, "-"), base),
            batch.mortar_m3,
            "m3",
            *GEOMETRY,
            "mortar to mix for both layers",
        ),
        Step(
            "set_aside_kg",
            "m_s",
            "V_s*rho_m",
            (face, rho),
            batch.set_aside_kg,
            "kg",
            *MASS,
            "face share on the scale",
        ),
        Step(
            "set_aside_fraction",
            "f_s",
            "V_s/V_m",
            (face, mortar),
            batch.set_aside_fraction,
            "-",
            *GEOMETRY,
            "face share of all the mortar",
        ),
        Step(
            f"{mix.basis}_needed_kg",
            "n",
            "V_m/v_m",
            (mortar, ("v_m", mix.mortar_m3, "m3")),
            basis[1],
            "kg",
            *GEOMETRY,
            f"{mix.basis} for all the mortar",
        ),
        Step(
            f"{mix.basis}_in_base_kg",
            "n_b",
            "V_b/v_b",
            (base, ("v_b", mix.base_m3, "m3")),
            base_basis[1],
            "kg",
            *GEOMETRY,
            f"{mix.basis} in the base",
        ),
        *_ingredients(batch, mix, basis, base_basis),
        Step("mortar_kg", "m_m", "V_m*rho_m", (mortar, rho), batch.mortar_kg, "kg", *MASS, "all the mortar"),
        Step(
            "base_kg",
            "m_b",
            "V_b*rho_b",
            (base, ("rho_b", mix.base_density_kg_m3, "kg/m3")),
            batch.base_kg,
            "kg",
            *MASS,
            "the base mix, its stone saturated",
        ),
        Step(
            "mixed_kg",
            "m_all",
            "m_s + m_b",
            (("m_s", batch.set_aside_kg, "kg"), ("m_b", batch.base_kg, "kg")),
            batch.mixed_kg,
            "kg",
            *MASS,
            "everything mixed, fibre not counted",
        ),
        Step(
            "mortar_saved_fraction",
            "f_saved",
            "1 - V_m/(V_s + V_b)",
            (mortar, face, base),
            batch.mortar_saved_fraction,
            "-",
            *GEOMETRY,
            "mortar saved by stretching the base",
        ),
        Step(
            "load_count",
            "N",
            "by splitting the mortar into equal loads that fit the vessel",
            (mortar, ("V_vessel", vessel.usable_m3, "m3")),
            float(len(batch.loads)),
            "-",
            "practice",
            "common practice, no source",
            batch.loads_why,
        ),
        Step(
            "mixing_time_h",
            "t_mix",
            "N*t_load",
            (("N", float(len(batch.loads)), "-"), ("t_load", vessel.load_interval_h, "h")),
            batch.mixing_h,
            "h",
            *GEOMETRY,
            "from the first water until the last load is done",
        ),
        Step(
            "mixing_person_h",
            "t_people",
            "t_mix*hands",
            (("t_mix", batch.mixing_h, "h"), ("hands", batch.hands, "-")),
            batch.person_h,
            "h",
            *GEOMETRY,
            "person-hours of mixing",
        ),
    ]
    return (*steps, *batch.water.working)


def _ingredients(batch, mix, basis, base_basis):
    wet = min(mix.stone_water_kg, 0.0)
    for each in batch.ingredients:
        name = "_".join("".join(sign if sign.isalnum() else " " for sign in each.name.lower()).split())
        if each.name == "water":
            inputs = (basis, ("w", mix.added_water_kg, "-"), base_basis, ("w_stone", wet, "-"))
            formula = "n*w + n_b*w_stone"
        elif each.kind == "fibre":
            formula, inputs = (
                "m_face + m_base",
                (("m_face", each.face_kg, "kg"), ("m_base", each.base_kg, "kg")),
            )
        elif each.name == "water for the stone":
            formula, inputs = "n_b*w", (base_basis, ("w", mix.stone_water_kg, "-"))
        else:
            inputs = (
                basis,
                ("m", sum(line.mass_kg for line in mix.lines if line.name == each.name), "-"),
                base_basis,
                ("m_b", sum(line.mass_kg for line in mix.base_lines if line.name == each.name), "-"),
            )
            formula = "n*m + n_b*m_b"
        yield Step(f"{name}_kg", "m_i", formula, inputs, each.total_kg, "kg", *MASS, f"{each.name} in all")
