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
    >>> from shop_calc.trade.batching.batch import build_batch
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> layers = SimpleNamespace(face_m3=0.010779, core_m3=0.0493943, face_thickness_m=0.00635)
    >>> batch = build_batch(layers, build_mix(recipe("demo mortar")))
    >>> batch.working[0].name, f"{batch.working[0].value:.6f}"
    ('face_share_volume_m3', '0.013474')

    References
    ----------
    Common practice, no source.
    """
    face = ("V_aside", batch.face_share_m3, "m3")
    base = ("V_base_all", batch.base_m3, "m3")
    mortar = ("V_mortar_all", batch.mortar_m3, "m3")
    rho = ("rho_mortar", mix.mortar_density_kg_m3, "kg/m3")
    basis = ("B_all", batch.mortar_m3 / mix.mortar_m3, "kg")
    base_basis = ("B_base", batch.base_m3 / mix.base_m3, "kg")
    steps = [
        Step(
            "face_share_volume_m3",
            "V_aside",
            "V_face*(1 + a_f)",
            (("V_face", batch.face_m3, "m3"), ("a_f", batch.face_allowance_fraction, "-")),
            batch.face_share_m3,
            "m3",
            *GEOMETRY,
            "face mortar to set aside",
        ),
        Step(
            "base_to_make_m3",
            "V_base_all",
            "V_core*(1 + a_b)",
            (("V_core", batch.core_m3, "m3"), ("a_b", batch.base_allowance_fraction, "-")),
            batch.base_m3,
            "m3",
            *GEOMETRY,
            "base mix to make",
        ),
        Step(
            "mortar_to_make_m3",
            "V_mortar_all",
            "V_aside + phi*V_base_all",
            (face, ("phi", mix.phi, "-"), base),
            batch.mortar_m3,
            "m3",
            *GEOMETRY,
            "mortar to mix for both layers",
        ),
        Step(
            "set_aside_kg",
            "m_aside",
            "V_aside*rho_mortar",
            (face, rho),
            batch.set_aside_kg,
            "kg",
            *MASS,
            "face share on the scale" if batch.back_to_face_kg == 0 else "face share, with the water it gets back later",
        ),
        *_on_scale(batch),
        Step(
            "set_aside_fraction",
            "f_s",
            "V_aside/V_mortar_all",
            (face, mortar),
            batch.set_aside_fraction,
            "-",
            *GEOMETRY,
            "face share of all the mortar",
        ),
        Step(
            f"{mix.basis}_needed_kg",
            "B_all",
            "V_mortar_all/V_mortar",
            (mortar, ("V_mortar", mix.mortar_m3, "m3")),
            basis[1],
            "kg",
            *GEOMETRY,
            f"{mix.basis} for all the mortar",
        ),
        Step(
            f"{mix.basis}_in_base_kg",
            "B_base",
            "V_base_all/V_base",
            (base, ("V_base", mix.base_m3, "m3")),
            base_basis[1],
            "kg",
            *GEOMETRY,
            f"{mix.basis} in the base",
        ),
        *_ingredients(batch, mix, basis, base_basis),
        Step(
            "mortar_kg",
            "m_mortar",
            "V_mortar_all*rho_mortar",
            (mortar, rho),
            batch.mortar_kg,
            "kg",
            *MASS,
            "all the mortar",
        ),
        Step(
            "base_kg",
            "m_base",
            "V_base_all*rho_base",
            (base, ("rho_base", mix.base_density_kg_m3, "kg/m3")),
            batch.base_kg,
            "kg",
            *MASS,
            "the base mix, its stone saturated",
        ),
        Step(
            "mixed_kg",
            "m_all",
            "m_aside + m_base",
            (("m_aside", batch.set_aside_kg, "kg"), ("m_base", batch.base_kg, "kg")),
            batch.mixed_kg,
            "kg",
            *MASS,
            "everything mixed, fibre not counted",
        ),
        Step(
            "mortar_saved_fraction",
            "f_saved",
            "1 - V_mortar_all/(V_aside + V_base_all)",
            (mortar, face, base),
            batch.mortar_saved_fraction,
            "-",
            *GEOMETRY,
            "mortar saved by stretching the base",
        ),
        Step(
            "load_count",
            "N_loads",
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
            "N_loads*t_load",
            (("N_loads", float(len(batch.loads)), "-"), ("t_load", vessel.load_interval_h, "h")),
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
            inputs = (basis, ("W_added", mix.added_water_kg, "-"), base_basis, ("W_wet", wet, "-"))
            formula = "B_all*W_added + B_base*W_wet"
        elif each.kind == "fibre":
            formula, inputs = (
                "x_face + x_base",
                (("x_face", each.face_kg, "kg"), ("x_base", each.base_kg, "kg")),
            )
        elif each.name == "water for the stone":
            formula, inputs = "B_base*W_stone", (base_basis, ("W_stone", mix.stone_water_kg, "-"))
        else:
            inputs = (
                basis,
                ("k_mortar", sum(line.mass_kg for line in mix.lines if line.name == each.name), "-"),
                base_basis,
                ("k_base", sum(line.mass_kg for line in mix.base_lines if line.name == each.name), "-"),
            )
            formula = "B_all*k_mortar + B_base*k_base"
        yield Step(
            f"{name}_kg", f"m_{name}", formula, inputs, each.total_kg, "kg", *MASS, f"{each.name} in all"
        )


def _on_scale(batch):
    """What the scale shows where water is held out for wet stone: the face share gets its part back after setting aside."""
    if batch.back_to_face_kg > 0:
        yield Step(
            "on_scale_kg",
            "m_scale",
            "m_aside - m_back",
            (("m_aside", batch.set_aside_kg, "kg"), ("m_back", batch.back_to_face_kg, "kg")),
            batch.on_scale_kg,
            "kg",
            *MASS,
            "face share on the scale, as it is set aside",
        )
