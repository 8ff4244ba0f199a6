"""Lesson 02: absolute volume, which water counts, percent of what, the face share, bags, jugs and dry stone."""

from shop_calc import units
from shop_calc.lesson.moves.mix_and_yield_sums import ANSWERS, SAND, WORKING, bags_by_weight
from shop_calc.lesson.question import Number, Question
from shop_calc.lesson.reasoning.lesson_sheets import WATER
from shop_calc.lesson.slips import (
    by,
    inch_for_foot,
    left_out,
    percent_not_turned,
    percent_of_bag_not_cement,
    ratio_upside_down,
    times,
    waste_forgotten,
    with_number,
)
from shop_calc.science.absolute_volume import WATER_DENSITY_KG_M3

_PINT_KG = float(units.convert(1.0, "pt", "m3")) * WATER_DENSITY_KG_M3


def _question(id, text, kind, unit, numbers, slips, hints, **more):
    return Question(
        id, text, ANSWERS[id], kind, unit, tuple(numbers), tuple(slips), hints, working=WORKING[id], **more
    )


def _rounded_down(volume_m3, bag_yield_m3, bag_kg, wet_density_kg_m3):
    return float(int(volume_m3 / bag_yield_m3 + 1e-9))


QUESTIONS = (
    _question(
        "sand",
        "A small batch is to fill {volume_m3} exactly. It has {cement_kg} of cement (3.15 times as heavy as water), "
        "{water_kg} of water and {air_fraction} air. Sand (2.65) fills the rest. How much sand?",
        "mass",
        "lb",
        (
            Number("volume_m3", "ft3", 1, 1, 1),
            Number("cement_kg", "lb", 40, 32, 46, 1),
            Number("water_kg", "lb", 14, 12, 16, 0.5),
            Number("air_fraction", "%", 5, 4, 8, 1),
        ),
        (
            left_out("air_fraction", "Air weighs nothing. Does it take no room either?"),
            left_out("water_kg", "Is the room of the water taken off too?"),
            times(1.0 / SAND, "relative density forgotten",
                  "That much room full of water would weigh so. Is sand as light as water?"),
        ),
        (
            "Turn what is fixed into cubic feet, and see how much of the cubic foot is left.",
            "Room is pounds over (relative density times 62.4). Take cement, water and air off, then go back to "
            "pounds.",
        ),
        tolerance=0.01,
    ),
    _question(
        "poured",
        "{binder_kg} of binder at a w/cm of {ratio}. {polymer_kg} of liquid polymer go in; {solids_fraction} of it is "
        "solids, the rest water. How much water do you pour?",
        "mass",
        "lb",
        (
            Number("binder_kg", "lb", 100, 60, 120, 10),
            Number("ratio", "-", 0.34, 0.31, 0.37, 0.01),
            Number("polymer_kg", "lb", 12, 8, 14, 1),
            Number("solids_fraction", "%", 47, 40, 58, 1),
        ),
        (
            left_out("polymer_kg", "That is all the water the ratio allows. Is some of it in another jug already?"),
            left_out("solids_fraction", "Is the polymer nothing but water?"),
            by(lambda binder_kg, ratio, polymer_kg, solids_fraction:
               binder_kg * ratio + polymer_kg * (1 - solids_fraction), "added instead of taken off",
               "The polymer brings water. Do you then pour more, or less?"),
            by(lambda binder_kg, ratio, polymer_kg, solids_fraction: binder_kg * ratio - polymer_kg * solids_fraction,
               "the solids taken for the water", "You took the solids off. Which part of the polymer is water?"),
            ratio_upside_down("ratio", "Is there more water in a mortar, or more binder?"),
        ),
        (
            "First all the water that counts, then what comes in with the polymer.",
            "All of it is binder times w/cm. The water inside is the polymer times its share that is not solids.",
        ),
    ),
    _question(
        "sugar",
        "Against a hot afternoon somebody stirs sugar in, {dose_fraction} of the cement. A bag of {bag_kg} holds about "
        "{cement_share} cement. How many grams of sugar is that a bag?",
        "mass",
        "g",
        (
            Number("bag_kg", "lb", 80, 50, 80, 10),
            Number("cement_share", "%", 16, 12, 20, 1),
            Number("dose_fraction", "%", 0.05, 0.05, 0.05),
        ),
        (
            percent_of_bag_not_cement(
                "cement_share",
                "Percent of what? On the whole bag this dose is several times too strong: days in the form, or never.",
            ),
            percent_not_turned(),
            by(lambda bag_kg, cement_share, dose_fraction: bag_kg * (1 - cement_share) * dose_fraction,
               "on the sand", "That is the part of the bag that is not cement."),
        ),
        ("How much cement is in the bag?", "The dose is a share of that cement, in grams: 1 lb is 454 g."),
    ),
    _question(
        "set_aside",
        "Another top: its face in place is {face_m3}, the allowance {face_allowance_fraction}, the mortar weighs "
        "{mortar_density_kg_m3}. What does the scale show when the face share is out of the bucket?",
        "mass",
        "lb",
        (
            Number("face_m3", "in3", 420, 300, 700, 20),
            Number("face_allowance_fraction", "%", 25, 15, 35, 5),
            Number("mortar_density_kg_m3", "lb/ft3", 132, 128, 138, 1),
        ),
        (
            waste_forgotten("face_allowance_fraction"),
            by(lambda face_m3, face_allowance_fraction, mortar_density_kg_m3:
               face_m3 * (1 - face_allowance_fraction) * mortar_density_kg_m3, "waste taken off",
               "Does an allowance make the amount larger or smaller?"),
            inch_for_foot(2, "How many cubic inches are in a cubic foot? Twelve along, twelve across, and twelve up."),
            with_number(lambda n: {"mortar_density_kg_m3": WATER_DENSITY_KG_M3}, "water for mortar",
                        "A cubic foot of water weighs that. What does one of this mortar weigh?"),
        ),
        (
            "Volume first, allowance on top; then pounds.",
            "1,728 cubic inches are a cubic foot; cubic feet times pounds a cubic foot are pounds.",
        ),
    ),
    _question(
        "damp_sand",
        "The recipe has {ssd_mass_kg} of sand, saturated surface-dry. Yours stood in the rain: "
        "{free_moisture_fraction} "
        "of that mass is water on its grains. How much of the wet sand goes on the scale?",
        "mass",
        "lb",
        (Number("ssd_mass_kg", "lb", 200, 100, 400, 20), Number("free_moisture_fraction", "%", 4, 2, 7, 1)),
        (
            with_number(lambda n: {"free_moisture_fraction": -n["free_moisture_fraction"]}, "weighed less",
                        "That answer stands in print and is wrong: it leaves sand out. Part of what you weigh is "
                        "water."),
            left_out("free_moisture_fraction", "Then part of your sand is water. How do the same grains go in?"),
        ),
        (
            "The same grains must go in. What lies on the scale besides them?",
            "Sand and its water together: more on the scale, and less from the tap.",
        ),
        tolerance=0.005,
    ),
    _question(
        "bags",
        "A step takes {volume_m3} of ready mix. A bag of {bag_kg} makes {bag_yield_m3}; wet, the mix weighs "
        "{wet_density_kg_m3}. How many bags do you buy?",
        "number",
        "-",
        (
            Number("volume_m3", "ft3", 8.2, 5, 12, 0.2),
            Number("bag_kg", "lb", 40, 40, 40),
            Number("bag_yield_m3", "ft3", 0.3, 0.3, 0.3),
            Number("wet_density_kg_m3", "lb/ft3", 145, 145, 145),
        ),
        (
            by(bags_by_weight, "wet weight over the label",
               "The label weighs dry powder; wet concrete also weighs its water. What does a bag make?"),
            by(_rounded_down, "rounded down", "And the last bit of the form?"),
        ),
        ("How much does one bag make?", "Volume over yield, rounded up."),
        tolerance=0.01,
    ),
    _question(
        "pints",
        "The sheet asks for {sheet_kg} of water. Somebody fills a jug, 'a pint's a pound', once for each pound. How "
        "many "
        "pounds of water go in?",
        "mass",
        "lb",
        (Number("sheet_kg", "lb", 9, 6, 20, 1),),
        (
            times(1.0 / _PINT_KG * 0.45359237, "believed", "Weigh a pint of water once. Is it a pound?"),
            times((0.45359237 / _PINT_KG) ** 2, "the wrong way", "Is a pint heavier than a pound, or lighter?"),
        ),
        ("A quart of water weighs 2.086 lb.", "So a pint weighs half of that; take as many as there are pounds."),
        tolerance=0.01,
    ),
    _question(
        "left_dry",
        "A base has {binder_kg} of binder and a w/cm of {ratio}. {stone_kg} of bone-dry stone go in that drinks "
        "{absorption_fraction} of its mass, and nobody gives it water. What w/cm is left?",
        "number",
        "-",
        (
            Number("binder_kg", "lb", 22.5, 20, 30, 0.5),
            Number("ratio", "-", 0.33, 0.32, 0.36, 0.01),
            Number("stone_kg", "lb", 27, 24, 36, 1),
            Number("absorption_fraction", "%", 1.5, 1.2, 2.5, 0.1),
        ),
        (
            left_out("absorption_fraction", "Where does the stone get its drink from?"),
            with_number(lambda n: {"absorption_fraction": -n["absorption_fraction"]}, "brings instead of drinks",
                        "Is the stone wet, or thirsty?"),
            by(lambda binder_kg, ratio, stone_kg, absorption_fraction: ratio - absorption_fraction,
               "percent of stone taken off the ratio",
               "That percent is of the stone. How many pounds is it, and for how many pounds of binder?"),
        ),
        ("How many pounds does the stone drink?", "Take them off the water of the mix, then divide by the binder."),
        tolerance=0.005,
    ),
    WATER,
)  # fmt: skip
