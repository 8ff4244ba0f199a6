"""Five sample questions, one of each kind, for the tests of practice."""



from shop_calc.lesson import slips
from shop_calc.lesson.question import Number, Question
from shop_calc.trade.working import Step

HINTS = ("What is asked for?", "Size times size times size.")


def volume_m3(length_m, width_m, thickness_m, allowance_fraction):
    return length_m * width_m * thickness_m * (1 + allowance_fraction)


def volume_steps(length_m, width_m, thickness_m, allowance_fraction):
    net_m3 = length_m * width_m * thickness_m
    sizes = (("l", length_m, "m"), ("w", width_m, "m"), ("t", thickness_m, "m"))
    more = (("V", net_m3, "m3"), ("a", allowance_fraction, "-"))
    return (
        Step("net_volume_m3", "V", "l * w * t", sizes, net_m3, "m3", "derived", "geometry", "net volume"),
        Step(
            "volume_m3",
            "V_a",
            "V * (1 + a)",
            more,
            net_m3 * (1 + allowance_fraction),
            "m3",
            "derived",
            "geometry",
        ),
    )


VOLUME = Question(
    "volume",
    "A top {length_m} long, {width_m} wide, {thickness_m} thick, with {allowance_fraction} more. How much?",
    volume_m3,
    "volume",
    "ft3",
    numbers=(
        Number("length_m", "in", 60, 48, 96, 6),
        Number("width_m", "in", 15, 12, 30, 1),
        Number("thickness_m", "in", 1.5, 1.25, 2, 0.25),
        Number("allowance_fraction", "%", 10, 5, 25, 5),
    ),
    slips=(
        slips.inch_for_foot(hint="Is the thickness in feet too?"),
        slips.waste_forgotten("allowance_fraction"),
        slips.waste_taken_off("allowance_fraction"),
    ),
    hints=HINTS,
    working=volume_steps,
)
WARM = Question(
    "warm",
    "Sand at {sand_c} and water at {water_c}, {sand_kg} and {water_kg}. How warm is the mix?",
    lambda sand_kg, sand_c, water_kg, water_c: (
        (0.22 * sand_kg * sand_c + water_kg * water_c) / (0.22 * sand_kg + water_kg)
    ),
    "temperature",
    "F",
    numbers=(
        Number("sand_kg", "lb", 50, 40, 80, 5),
        Number("sand_c", "F", 80, 70, 95, 1),
        Number("water_kg", "lb", 8, 6, 10, 1),
        Number("water_c", "F", 40, 34, 50, 1),
    ),
    slips=(slips.plain_mass_average((("sand_kg", "sand_c"), ("water_kg", "water_c"))),),
    hints=HINTS,
    within=1.0,
)
COVER = Question(
    "cover",
    "Dry wind all night. Which cover?",
    lambda: "damp fabric under plastic",
    "choice",
    choices=("open", "damp fabric under plastic", "bare plastic"),
    slips=(
        slips.word("open", "What does the wind take?"),
        slips.word("bare plastic", "Where do the drops run?"),
    ),
    hints=HINTS,
)
ORDER = Question(
    "order",
    "Put in order.",
    lambda: ("screed", "float", "steel"),
    "order",
    choices=("float", "steel", "screed"),
    slips=(slips.word(("screed", "steel", "float"), "What does steel close?"),),
    hints=HINTS,
)
RATIO = Question(
    "ratio",
    "{cement_kg} cement, w/cm {ratio}. How much water?",
    lambda cement_kg, ratio: cement_kg * ratio,
    "mass",
    "lb",
    numbers=(Number("cement_kg", "lb", 20, 10, 40), Number("ratio", "-", 0.35, 0.3, 0.4, 0.01)),
    slips=(slips.ratio_upside_down("ratio"),),
    hints=HINTS,
)
ALL = (VOLUME, WARM, COVER, ORDER, RATIO)
CODES = (None, "", "mar 7", "A-113", "ö<b>")
