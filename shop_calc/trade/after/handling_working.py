"""The working of the handling: ages, strengths, stresses and loads, line by line."""

from shop_calc import defaults
from shop_calc.science import strength_laws
from shop_calc.science.loads import GRAVITY_M_S2
from shop_calc.trade.after.seat_rule import SITTING_DOWN
from shop_calc.trade.after.strength_of_morning import CEMENTS, DAY_H
from shop_calc.trade.working import Step

_ACI = "ACI 209R-92 equation (2-1) and Table 2.2.1, from memory"
_EN = "EN 1992-1-1:2004, 3.1.2(6)"
_BEAM = "elementary beam theory"
_RUPTURE = "ACI 318-19 19.2.3, 7.5 sqrt(fc) in psi, from memory"


def handling_working(handling, piece):
    """Write the working of a handling.

    Parameters
    ----------
    handling : Handling
        The numbers [as its fields].
    piece : Piece
        The piece [m].

    Returns
    -------
    tuple of Step
        In the order they follow from one another [as named].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> handling_working(plan.handling, plan.piece)[0].name
    'strength_28d_counted_pa'

    References
    ----------
    Sources stand in each Step.
    """
    at_28, lift = handling.strength, handling.lift
    given = ("given", "tested, as given with the job") if at_28.tested else (
        defaults.get("strength_28d").mark, defaults.get("strength_28d").source)  # fmt: skip
    counted = ("f_28c", at_28.counted_pa, "Pa")
    steps = [
        Step("strength_28d_counted_pa", "f_28c", "by the test, or the low end of the band where nobody tested", (),
             at_28.counted_pa, "Pa", *given, "strength at 28 days that moves and supports are checked with"),
        Step("strength_28d_pa", "f_28", "by the test, or the table", (), at_28.likely_pa, "Pa", *given,
             "likely strength at 28 days"),
    ]  # fmt: skip
    for row in handling.mornings:
        steps += _morning_steps(row, handling.hardening, at_28.likely_pa)
    steps += _carry_steps(handling, counted)
    for number, check in enumerate((*handling.supports, *handling.legs), 1):
        steps += _support_steps(check, number, counted)
    steps += [
        Step("piece_density_kg_m3", "rho_piece", "by the two layers and their volumes", (), handling.density_kg_m3,
             "kg/m3", "derived", "conservation of mass", "density of the whole piece"),
        Step("piece_mass_kg", "M_piece", "m_area * A_top", (("m_area", lift.mass_kg_m2, "kg/m2"),
             ("A_top", piece.area_m2, "m2")), lift.mass_kg, "kg", "derived", "geometry", "mass of the piece"),
        Step("piece_mass_each_kg", "M_each", "M_piece / n_people", (("M_piece", lift.mass_kg, "kg"),
             ("n_people", lift.people, "-")), lift.each_kg, "kg", "derived", "arithmetic", "what each person bears"),
        Step("lifting_limit_kg", "RWL", "by the revised lifting equation, a slab without handles",
             (("H_lift", defaults.si("lift_reach"), "m"), ("V_lift", defaults.si("lift_height"), "m"),
              ("D_lift", defaults.si("lift_travel"), "m")), lift.limit_kg, "kg", "read", "NIOSH 94-110",
             "what one person may lift like this"),
        Step("team_share_ratio", "k_team", "by the rule for teams, two thirds for two, half for three and more",
             (("n_people", lift.people, "-"),), lift.share_ratio, "-", "read", "HSE L23 as quoted",
             "share of one person's limit that counts in the team"),
        Step("team_limit_each_kg", "RWL_team", "k_team * RWL", (("k_team", lift.share_ratio, "-"),
             ("RWL", lift.limit_kg, "kg")), lift.share_kg, "kg", "derived", "NIOSH 94-110 with HSE L23 as quoted",
             "what each may lift in the team"),
        Step("lifting_index_ratio", "LI", "M_each / RWL_team",
             (("M_each", lift.each_kg, "kg"), ("RWL_team", lift.share_kg, "kg")), lift.index_ratio, "-", "judgement",
             "NIOSH 94-110, section 1.4, joined with HSE L23 as quoted by us", "lifting index, the team counted in"),
    ]  # fmt: skip
    return tuple(steps)


def _morning_steps(row, hardening, likely_28_pa):
    (a_days, b), s = CEMENTS[hardening.cement]
    energy = hardening.activation_energy_j_mol
    key, f_28 = row.key, ("f_28", likely_28_pa, "Pa")
    yield Step(f"morning_{key}_aci_age_h", f"te_aci_{key}", "by adding up the rate over the temperatures of day and "
               "night",
               (("E_a", energy, "J/mol"), ("T_ref", row.aci_reference_c, "C")), row.aci_age_h, "h", "derived",
               "ASTM C1074 form", f"{row.title}: equivalent age at {row.aci_reference_c:g} °C")  # fmt: skip
    yield Step(f"morning_{key}_en_age_h", f"te_en_{key}", "by adding up the rate of equation (B.10)", (), row.en_age_h,
               "h", "read", "EN 1992-1-1:2004, B.1(3)", f"{row.title}: adjusted age at 20 °C")  # fmt: skip
    yield Step(f"morning_{key}_maturity_c_h", f"M_{key}", "by adding up the temperature over the datum",
               (("T_datum", row.datum_c, "C"),), row.maturity_c_h, "C·h", "memory", "ASTM C1074 form; datum of Saul "
               "1951",
               f"{row.title}: temperature-time factor over {row.datum_c:g} °C")  # fmt: skip
    if row.aci_pa == 0.0:
        aci, en = "by final set, which it has not reached", "by final set, which it has not reached"
    else:
        aci = f"f_28 * te_aci_{key} / (a_aci + b_aci * te_aci_{key})"
        en = f"f_28 * exp(s_en * (1 - sqrt(t_28 / te_en_{key})))"
    yield Step(f"morning_{key}_aci_pa", f"f_aci_{key}", aci,
               (f_28, ("a_aci", 24.0 * a_days, "h"), ("b_aci", b, "-"), (f"te_aci_{key}", row.aci_age_h, "h")),
               row.aci_pa, "Pa", "memory", _ACI, f"{row.title}: strength by ACI 209")  # fmt: skip
    yield Step(f"morning_{key}_en_pa", f"f_en_{key}", en,
               (f_28, ("s_en", s, "-"), ("t_28", 28.0 * DAY_H, "h"), (f"te_en_{key}", row.en_age_h, "h")), row.en_pa,
               "Pa", "read", _EN, f"{row.title}: strength by EN 1992")  # fmt: skip
    yield Step(f"morning_{key}_strength_pa", f"f_{key}", "by taking the lower of the two",
               ((f"f_aci_{key}", row.aci_pa, "Pa"), (f"f_en_{key}", row.en_pa, "Pa")), row.likely_pa, "Pa", "judgement",
               "ours: on open data the lower one is nearer", f"{row.title}: strength by the morning, likely"
               )  # fmt: skip


def _carry_steps(handling, counted):
    beam = handling.beam
    jolt, scatter = defaults.si("carry_factor"), defaults.si("flexure_scatter")
    for way in handling.carries:
        key = way.key
        stress = (f"sigma_{key}", way.stress_pa, "Pa")
        rupture = (f"fr_{key}", way.needed_rupture_pa, "Pa")
        yield Step(f"carry_{key}_stress_pa", f"sigma_{key}", "by moment over section at every cut across the piece",
                   (("L_beam", beam.length_m, "m"), ("t_beam", beam.thickness_m, "m"), ("b_beam", beam.across_m, "m"),
                    ("rho_piece", handling.density_kg_m3, "kg/m3")), way.stress_pa, "Pa", "derived", _BEAM,
                   f"{way.title}: stress of its own weight")  # fmt: skip
        yield Step(f"carry_{key}_rupture_pa", f"fr_{key}", f"k_jolt * k_scatter * sigma_{key}",
                   (("k_jolt", jolt, "-"), ("k_scatter", scatter, "-"), stress), way.needed_rupture_pa, "Pa",
                   "judgement",
                   "ours", f"{way.title}: bending strength it needs")  # fmt: skip
        yield Step(f"carry_{key}_strength_pa", f"fc_{key}", f"(fr_{key} / k_r)**2",
                   (rupture, ("k_r", strength_laws.RUPTURE_ROOT_PA, "Pa**0.5")), way.needed_strength_pa, "Pa", "memory",
                   _RUPTURE, f"{way.title}: compressive strength it needs")  # fmt: skip
        if way.earliest_h is not None:
            yield Step(f"carry_{key}_earliest_h", f"t_{key}", "by the hour that the strength is there, the morning "
                       "at the earliest", (counted, (f"fc_{key}", way.needed_strength_pa, "Pa")), way.earliest_h, "h",
                       "derived",
                       f"{_ACI}; {_EN}", f"{way.title}: first hour after the first water")  # fmt: skip


def _support_steps(check, number, counted):
    name = f"support_{number}_{check.key}"
    scatter = ("k_scatter", defaults.si("flexure_scatter"), "-")
    limit = (("k_r", strength_laws.RUPTURE_ROOT_PA, "Pa**0.5"), counted, scatter)
    length = (f"l_{number}", check.size_m, "m")
    plates = check.key == "span" and check.ratio is not None
    how = ("by the theory of plates", "theory of plates") if plates else ("by beam theory", _BEAM)
    yield Step(f"{name}_own_pa", f"so_{number}", how[0], (length,), check.own_pa, "Pa", "derived", how[1],
               f"stress of its own weight, {check.where}")  # fmt: skip
    if check.ratio is not None:
        yield from _use_steps(check, number, name, length)
    elif check.key == "rail":
        yield Step(f"{name}_people_pa", f"sp_{number}", "by beam theory, one person at the middle",
                   (length, ("P_rail", defaults.si("rail_load"), "kg")), check.people_pa, "Pa", "judgement", "ours",
                   f"stress of a person leaning, {check.where}")  # fmt: skip
    else:
        yield Step(f"{name}_people_pa", f"sp_{number}", "by beam theory, or by plates where both rails carry it, one "
                   "person for every 24 in", (length, ("P_seat", defaults.si("seat_load"), "kg"),
                   ("k_sit", SITTING_DOWN, "-")), check.people_pa, "Pa", "judgement", "ours",
                   f"stress of people, {check.where}")  # fmt: skip
    yield Step(f"{name}_limit_pa", f"lim_{number}", "k_r * sqrt(f_28c) / k_scatter", limit, check.limit_pa, "Pa",
               "judgement", f"{_RUPTURE}; scatter ours", f"stress allowed, {check.where}")  # fmt: skip
    yield Step(f"{name}_use_ratio", f"use_{number}", f"(so_{number} + sp_{number}) / lim_{number}",
               ((f"so_{number}", check.own_pa, "Pa"), (f"sp_{number}", check.people_pa, "Pa"),
                (f"lim_{number}", check.limit_pa, "Pa")), check.use_ratio, "-", "judgement", "our rule",
               f"share of what is allowed, {check.where}; above 1 it must not be loaded")  # fmt: skip


def _use_steps(check, number, name, length):
    """A top that is no seat: moment per width over the load, then the three stresses that come from it."""
    how = "by a width as long as the overhang" if check.key == "overhang" else "by the theory of plates"
    yield Step(f"{name}_ratio", f"m_{number}", f"{how}, a load on a square at the worst spot",
               (length, ("b_knee", defaults.si("knee_width"), "m")), check.ratio, "-", "derived", "theory of plates",
               f"moment per width over the load, {check.where}")  # fmt: skip
    lean, kneel, drop = ("P_rail", "k_kneel * P_seat", "k_sit * P_seat")
    person = ("P_seat", defaults.si("seat_load"), "kg")
    for part, symbol, load, inputs, stress, words in (
        ("lean", "sl", lean, (("P_rail", defaults.si("rail_load"), "kg"),), check.lean_pa, "leaning"),
        ("people", "sp", kneel, (("k_kneel", defaults.si("kneel_factor"), "-"), person), check.people_pa,
         "kneeling down slowly"),
        ("drop", "sd", drop, (("k_sit", SITTING_DOWN, "-"), person), check.drop_pa, "dropping onto a knee"),
    ):  # fmt: skip
        yield Step(f"{name}_{part}_pa", f"{symbol}_{number}", f"6 * {load} * g * m_{number} / t_piece**2",
                   (*inputs, ("g", GRAVITY_M_S2, "m/s2"), (f"m_{number}", check.ratio, "-"),
                    ("t_piece", check.thickness_m, "m")), stress, "Pa", "judgement", "ours; theory of plates",
                   f"stress of a person {words}, {check.where}")  # fmt: skip
