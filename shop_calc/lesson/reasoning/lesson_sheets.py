"""The sheets with a wrong line, and the sign of a step, that the lessons ask for; all their numbers are invented."""

from shop_calc.lesson.question import Number
from shop_calc.lesson.reasoning.cues import choose_cue
from shop_calc.lesson.reasoning.wrong_line import find_wrong_line
from shop_calc.lesson.slips import (
    added_not_multiplied,
    by,
    inch_for_foot,
    left_out,
    percent_of_bag_not_cement,
    ratio_upside_down,
    swapped,
    times,
    with_number,
)
from shop_calc.science.heat_balance import SOLID_SPECIFIC_HEAT
from shop_calc.trade.working import Step

QUESTION = "Each line is worked from the numbers in it. One goes wrong first; the lines below carry it on. Which is it?"


def _line(name, symbol, formula, value, unit, words, **inputs):
    given = tuple((key, *pair) for key, pair in inputs.items())
    return Step(name, symbol, formula, given, value, unit, "derived", "geometry or conservation of mass and heat", words)


def two_layer_steps(length_m, width_m, thickness_m, face_m):
    """Work the two layers of a rectangle that shows on all four edges.

    Not for a plan: `shop_calc.trade.shape.layers` takes any outline.

    Parameters
    ----------
    length_m, width_m, thickness_m, face_m : float
        Sizes of the piece, and thickness of the face [m].

    Returns
    -------
    tuple of Step
        Area, whole, base, face, share of face [SI].

    Examples
    --------
    >>> round(two_layer_steps(1.524, 0.381, 0.0381, 0.00635)[-1].value, 5)
    0.20116

    References
    ----------
    Derived: geometry.
    """
    area = length_m * width_m
    whole = area * thickness_m
    base = (length_m - 2 * face_m) * (width_m - 2 * face_m) * (thickness_m - face_m)
    long, wide, thick, face = (length_m, "m"), (width_m, "m"), (thickness_m, "m"), (face_m, "m")
    return (
        _line("area_m2", "A", "L * W", area, "m2", "seen from above", L=long, W=wide),
        _line("whole_m3", "V", "A * T", whole, "m3", "the whole piece", A=(area, "m2"), T=thick),
        _line("base_m3", "V_b", "(L - 2 * t) * (W - 2 * t) * (T - t)", base, "m3", "the base", L=long, W=wide, T=thick, t=face),
        _line("face_m3", "V_f", "V - V_b", whole - base, "m3", "what is left is face", V=(whole, "m3"), V_b=(base, "m3")),
        _line("share", "s", "V_f / V", 1.0 - base / whole, "-", "its share of the piece", V_f=(whole - base, "m3"),
              V=(whole, "m3")),
    )  # fmt: skip


def water_steps(bag_kg, cement_share, ratio, polymer_kg, solids_fraction):
    """Work the water to pour for a bag with liquid polymer.

    Parameters
    ----------
    bag_kg, polymer_kg : float
        Mass of the bag and of the liquid polymer [kg].
    cement_share, ratio, solids_fraction : float
        Cement in the bag, water over cement, solids in the polymer [-].

    Returns
    -------
    tuple of Step
        Cement, water it may have, water in the polymer, water to pour, mortar [SI].

    Examples
    --------
    >>> round(water_steps(36.3, 0.16, 0.36, 1.0, 0.47)[3].value, 5)
    1.56088

    References
    ----------
    Derived: conservation of mass.
    """
    cement, inside = bag_kg * cement_share, polymer_kg * (1.0 - solids_fraction)
    water = cement * ratio
    pour, bag, polymer = water - inside, (bag_kg, "kg"), (polymer_kg, "kg")
    return (
        _line("cement_kg", "C", "M * s", cement, "kg", "cement in the bag", M=bag, s=(cement_share, "-")),
        _line("water_kg", "W", "C * q", water, "kg", "all the water it may have", C=(cement, "kg"), q=(ratio, "-")),
        _line("inside_kg", "W_p", "P * (1 - k)", inside, "kg", "water inside the polymer", P=polymer, k=(solids_fraction, "-")),
        _line("pour_kg", "W_t", "W - W_p", pour, "kg", "water to pour", W=(water, "kg"), W_p=(inside, "kg")),
        _line("mortar_kg", "B", "M + P + W_t", bag_kg + polymer_kg + pour, "kg", "what the bucket weighs then", M=bag,
              P=polymer, W_t=(pour, "kg")),
    )  # fmt: skip


def warmth_steps(solids_kg, solids_c, water_kg, water_c, wanted_c):
    """Work how far a mix is from the temperature that is wanted.

    Parameters
    ----------
    solids_kg, water_kg : float
        Masses [kg].
    solids_c, water_c, wanted_c : float
        Temperatures [°C].

    Returns
    -------
    tuple of Step
        Solids as water, all as water, temperature, how much too warm [SI].

    Examples
    --------
    >>> round(warmth_steps(31.4, 21.1, 5.1, 15.0, 15.6)[2].value, 5)
    18.50923

    References
    ----------
    From memory of ACI 305R: heat balance with 0.22 for solids.
    """
    factor = SOLID_SPECIFIC_HEAT
    as_water = factor * solids_kg
    whole = as_water + water_kg
    mix = (as_water * solids_c + water_kg * water_c) / whole
    solids, water = (solids_c, "C"), (water_kg, "kg")
    return (
        _line("solids_as_water_kg", "S", "c * M", as_water, "kg", "the solids, counted as water", c=(factor, "-"),
              M=(solids_kg, "kg")),
        _line("all_as_water_kg", "H", "S + W", whole, "kg", "the whole mix, counted as water", S=(as_water, "kg"), W=water),
        _line("mix_c", "T", "(S * T_s + W * T_w) / H", mix, "C", "temperature of the mix", S=(as_water, "kg"), T_s=solids,
              W=water, T_w=(water_c, "C"), H=(whole, "kg")),
        _line("too_warm_k", "d", "T - T_0", mix - wanted_c, "delta_K", "warmer than wanted", T=(mix, "C"), T_0=(wanted_c, "C")),
    )  # fmt: skip


def evening_steps(face_pa, full_pa, rh_fraction, carried_kg_m2_h_pa, open_h, held_kg_m2):
    """Work what an evening in the open takes from a face.

    Parameters
    ----------
    face_pa, full_pa : float
        Vapour pressure at the face, and of air of the room if it were full [Pa].
    rh_fraction : float
        Humidity [-].
    carried_kg_m2_h_pa : float
        What the moving air carries off for each pascal [kg/m2/h/Pa].
    open_h : float
        How long the face lies open [h].
    held_kg_m2 : float
        Water in the fresh face [kg/m2].

    Returns
    -------
    tuple of Step
        Difference of pressures, rate, water lost, share of it [SI].

    Examples
    --------
    >>> round(evening_steps(2482.0, 827.0, 0.5, 0.0002266, 2.0, 1.855)[-1].value, 5)
    0.50536

    References
    ----------
    From memory of Menzel 1954: the difference of two pressures, times what the wind carries off.
    """
    pull = face_pa - rh_fraction * full_pa
    rate = pull * carried_kg_m2_h_pa
    lost = rate * open_h
    return (
        _line("pull_pa", "p", "e_f - r * e_a", pull, "Pa", "what the face presses more than the air", e_f=(face_pa, "Pa"),
              r=(rh_fraction, "-"), e_a=(full_pa, "Pa")),
        _line("rate_kg_m2_h", "W", "p * c", rate, "kg/m2/h", "what the air takes", p=(pull, "Pa"),
              c=(carried_kg_m2_h_pa, "kg/m2/h/Pa")),
        _line("lost_kg_m2", "w", "W * t", lost, "kg/m2", "water lost", W=(rate, "kg/m2/h"), t=(open_h, "h")),
        _line("share", "s", "w / m", lost / held_kg_m2, "-", "its share of the water in the face", w=(lost, "kg/m2"),
              m=(held_kg_m2, "kg/m2")),
    )  # fmt: skip


TWO_LAYERS = find_wrong_line(
    "wrong_line",
    "Somebody worked a top {length_m} long, {width_m} wide and {thickness_m} thick, with {face_m} of face on the top and all "
    f"four edges. {QUESTION}",
    two_layer_steps,
    (
        ("V_b", by(lambda L, W, T, t: (L - 2 * t) * (W - 2 * t) * T, "the top forgotten",
                   "Face lies on the top as well. What does that take off the base?")),
        ("V", inch_for_foot()),
        ("A", added_not_multiplied(("L", "W"))),
    ),
    (
        Number("length_m", "in", 66, 48, 96, 6),
        Number("width_m", "in", 18, 14, 26, 1),
        Number("thickness_m", "in", 2, 1.5, 2.5, 0.25),
        Number("face_m", "in", 0.25, 0.25, 0.375, 0.125),
    ),
    "in3",
)
WATER = find_wrong_line(
    "wrong_line",
    "A bag of {bag_kg}, {cement_share} of it cement; w/cm {ratio}; {polymer_kg} of liquid polymer, {solids_fraction} of it "
    f"solids. {QUESTION}",
    water_steps,
    (
        ("W_p", left_out("k", "Only part of the polymer is water. Which part?")),
        ("C", percent_of_bag_not_cement("s")),
        ("W", ratio_upside_down("q")),
        ("W_t", left_out("W_p", "Some of the water is in the bucket already. In what?")),
    ),
    (
        Number("bag_kg", "lb", 80, 50, 80, 10),
        Number("cement_share", "%", 16, 12, 20, 1),
        Number("ratio", "-", 0.36, 0.32, 0.4, 0.01),
        Number("polymer_kg", "lb", 2, 1.5, 2.5, 0.25),
        Number("solids_fraction", "%", 47, 45, 52, 1),
    ),
    "lb",
)
WARMTH = find_wrong_line(
    "wrong_line",
    "{solids_kg} of powder and sand at {solids_c}, {water_kg} of water at {water_c}; the mortar is wanted at {wanted_c}. "
    f"{QUESTION}",
    warmth_steps,
    (
        ("S", times(1.0 / SOLID_SPECIFIC_HEAT, "0.22 forgotten",
                    "Does a pound of sand hold as much heat as a pound of water?")),
        ("T", swapped("T_s", "T_w")),
        ("H", left_out("W", "What else is in the bucket, and holds more heat than all the rest?")),
    ),
    (
        Number("solids_kg", "lb", 70, 50, 90, 5),
        Number("solids_c", "F", 75, 68, 90, 1),
        Number("water_kg", "lb", 11, 9, 14, 0.5),
        Number("water_c", "F", 50, 40, 60, 1),
        Number("wanted_c", "F", 60, 58, 62, 1),
    ),
    "F",
)
EVENING = find_wrong_line(
    "wrong_line",
    "The vapour at a face presses with {face_pa}; if the air were full, it would press with {full_pa}. Its humidity is "
    "{rh_fraction}. The draught carries off {carried_kg_m2_h_pa}: so much for each psi of difference. The face holds "
    f"{{held_kg_m2}} of water, and lies open for {{open_h}}. {QUESTION}",
    evening_steps,
    (
        ("p", with_number(lambda n: {"r": 1.0}, "the air counted as full",
                          "What share of that pressure does it really press back with?")),
        ("p", with_number(lambda n: {"e_a": 0.0}, "the air counted as dry",
                          "Half-dry air presses back too. With how much of what it could?")),
        ("w", with_number(lambda n: {"t": 1.0}, "one hour counted", "How long does the face lie open?")),
    ),
    (
        Number("face_pa", "psi", 0.36, 0.30, 0.38, 0.02),
        Number("full_pa", "psi", 0.12, 0.12, 0.20, 0.02),
        Number("rh_fraction", "%", 50, 40, 60, 5),
        Number("carried_kg_m2_h_pa", "lb/ft2/h/psi", 0.32, 0.26, 0.36, 0.02),
        Number("open_h", "h", 2, 1.5, 2, 0.25),
        Number("held_kg_m2", "lb/ft2", 0.38, 0.34, 0.42, 0.02),
    ),
)
SIGN = choose_cue(
    "sign",
    ("first_steel", "strip", "last_steel"),
    ("look", "strip", "first_steel", "last_steel", "stop"),
    also=(("the time that stands on the plan", "The plan was worked out last night. What has it seen of today's mix?"),),
)
