"""Lesson 03: the heat balance forwards and backwards, rules of thumb, ice, hot water, the heat of mixing."""

from shop_calc import units
from shop_calc.lesson.moves.water_temperature_sums import ANSWERS, WORKING, with_water_weighted
from shop_calc.lesson.question import Number, Question
from shop_calc.lesson.reasoning.lesson_sheets import WARMTH
from shop_calc.lesson.slips import by, plain_mass_average, times, with_number, word
from shop_calc.science.heat_balance import ICE_LATENT_HEAT_K, SOLID_SPECIFIC_HEAT

RULE = 4.0  # degrees of water for one of the mix, by the rule 8-4-2
_ZERO_F_K = float(units.convert(32.0, "delta_F", "delta_K"))

_HOT_ORDER = (
    "weigh everything, and warm the water",
    "hot water onto the sand, mixer turning",
    "go on until it is no longer hot",
    "cement and the other powder, by and by",
)


def _question(id, text, kind, unit, numbers, slips, hints, **more):
    return Question(
        id, text, ANSWERS[id], kind, unit, tuple(numbers), tuple(slips), hints, working=WORKING[id], **more
    )


def _heat(solids_kg, solids_c, water_kg, water_c, wanted_c):
    """Heat to take out, and heat capacity, both as kilograms of water."""
    capacity = SOLID_SPECIFIC_HEAT * solids_kg + water_kg
    return SOLID_SPECIFIC_HEAT * solids_kg * solids_c + water_kg * water_c - capacity * wanted_c, capacity


def _by_the_page(cement_kg, cement_c, water_kg, water_c):
    """What a page prints that averages by the kilogram, as one did."""
    return f"  {(cement_kg * cement_c + water_kg * water_c) / (cement_kg + water_kg):.1f} °C"


def _only_melting(**given):
    return _heat(**given)[0] / ICE_LATENT_HEAT_K


def _only_cold(**given):
    return _heat(**given)[0] / given["water_c"]


def _ice_on_top(**given):
    return _heat(**given)[0] / (ICE_LATENT_HEAT_K + given["wanted_c"])


QUESTIONS = (
    _question(
        "mix",
        "{cement_kg} of cement and {sand_kg} of sand lie at {solids_c}; {water_kg} of water at {water_c} go in. How "
        "warm "
        "is the mix?",
        "temperature",
        "F",
        (
            Number("cement_kg", "lb", 10, 10, 10),
            Number("sand_kg", "lb", 30, 20, 30, 5),
            Number("solids_c", "F", 90, 80, 96, 1),
            Number("water_kg", "lb", 5, 4, 6, 0.5),
            Number("water_c", "F", 40, 34, 46, 1),
        ),
        (
            plain_mass_average((("cement_kg", "solids_c"), ("sand_kg", "solids_c"), ("water_kg", "water_c"))),
            by(lambda cement_kg, sand_kg, solids_c, water_kg, water_c:
               with_water_weighted(cement_kg + sand_kg, solids_c, water_kg, water_c), "0.22 on the water",
               "Which of the two holds less heat by the pound? The 0.22 belongs to that one."),
            by(lambda cement_kg, sand_kg, solids_c, water_kg, water_c: (solids_c + water_c) / 2, "halfway",
               "Halfway would mean that both hold the same heat. Do they?"),
        ),
        ("Count the powder and sand as so much water.", "0.22 of their pounds count. Then it is an average by pounds."),
        within=1.0,
    ),
    _question(
        "needed",
        "{solids_kg} of powder and sand stand at {solids_c}. The mix takes {water_kg} of water and is to come out at "
        "{wanted_c}. How cold must the water be?",
        "temperature",
        "F",
        (
            Number("solids_kg", "lb", 70, 60, 80, 5),
            Number("solids_c", "F", 72, 66, 76, 1),
            Number("water_kg", "lb", 11, 11, 14, 0.5),
            Number("wanted_c", "F", 60, 58, 62, 1),
        ),
        (
            by(lambda solids_kg, solids_c, water_kg, wanted_c:
               (wanted_c * (solids_kg + water_kg) - solids_kg * solids_c) / water_kg, "plain mass average",
               "A pound of water holds four to five times the heat of a pound of sand. Where is the 0.22?"),
            by(lambda solids_kg, solids_c, water_kg, wanted_c: 2 * wanted_c - solids_c, "as far below as above",
               "That would do if powder and water held the same heat. Which of them holds more here?"),
            by(lambda solids_kg, solids_c, water_kg, wanted_c:
               (wanted_c * water_kg - SOLID_SPECIFIC_HEAT * solids_kg * (solids_c - wanted_c) * 2) / water_kg,
               "the fall counted twice", "How far do powder and sand have to fall? Count it once."),
        ),
        (
            "What powder and sand give up on their way down, the water must take on its way up.",
            "0.22 times pounds times their fall, over the pounds of water: so many degrees below the wanted one.",
        ),
        within=1.0,
    ),
    _question(
        "colder",
        "{cement_kg} of cement, {sand_kg} of sand, {water_kg} of water. It came out {fall_k} too warm. By how many "
        "degrees "
        "must the water be colder next time?",
        "temperature_difference",
        "delta_F",
        (
            Number("cement_kg", "lb", 100, 100, 100),
            Number("sand_kg", "lb", 100, 100, 140, 10),
            Number("water_kg", "lb", 34, 32, 40, 1),
            Number("fall_k", "delta_F", 4, 3, 8, 1),
        ),
        (
            by(lambda cement_kg, sand_kg, water_kg, fall_k: RULE * fall_k, "the rule 8-4-2",
               "That is 4 for 1, the rule for lean mixes. How much of this mix's heat is in its water?"),
            by(lambda cement_kg, sand_kg, water_kg, fall_k: fall_k, "one for one",
               "Then the water would cool itself and nothing else."),
            by(lambda cement_kg, sand_kg, water_kg, fall_k: fall_k * (cement_kg + sand_kg + water_kg) / water_kg,
               "by pounds", "By pounds there is little water. By heat there is much more. Where is the 0.22?"),
        ),
        ("How much water would the whole mix be, counted by heat?", "That, over the pounds of water, is degrees for "
                                                                    "one."),
        others=("delta_C",),
    ),
    _question(
        "ice",
        "A hot day: {solids_kg} of powder and sand at {solids_c}, {water_kg} of water, the tap at {water_c}. The "
        "mix is to "
        "come out at {wanted_c}. How many pounds of the water go in as ice?",
        "mass",
        "lb",
        (
            Number("solids_kg", "lb", 70, 60, 80, 5),
            Number("solids_c", "F", 86, 80, 92, 1),
            Number("water_kg", "lb", 11, 10, 12, 0.5),
            Number("water_c", "F", 72, 68, 76, 1),
            Number("wanted_c", "F", 60, 58, 62, 1),
        ),
        (
            by(_only_melting, "melting alone", "Ice that has melted is water at the freezing point, and no longer "
                                               "at the tap's."),
            by(_only_cold, "cold but not melting", "Ice is not only cold: melting takes far more heat than warming."),
            by(_ice_on_top, "on top of the water", "Ice is water. If it goes in on top, what becomes of w/cm?"),
        ),
        (
            "How much too warm is it without ice, and how much heat is that?",
            "A pound of ice in place of a pound from the tap takes 144 °F to melt and then lacks the degrees from "
            "32 °F "
            "up to the tap.",
        ),
        tolerance=0.01,
    ),
    _question(
        "page",
        "A page mixes {cement_kg} of cement at {cement_c} with {water_kg} of water at {water_c} and prints the number below. "
        "What is it really, in °C?",
        "temperature",
        "C",
        (
            Number("cement_kg", "kg", 350, 300, 400, 25),
            Number("cement_c", "C", 8, 6, 14, 1),
            Number("water_kg", "kg", 75, 65, 95, 5),
            Number("water_c", "C", 48, 40, 50, 1),
        ),
        (
            plain_mass_average((("cement_kg", "cement_c"), ("water_kg", "water_c")),
                               "That is the page's own number: pounds or kilograms averaged, whatever they hold."),
            by(lambda cement_kg, cement_c, water_kg, water_c:
               with_water_weighted(cement_kg, cement_c, water_kg, water_c), "0.22 on the water",
               "Which of the two holds less heat by the kilogram?"),
        ),
        ("What did the page average by?", "Count 0.22 of the cement's kilograms, all of the water's."),
        within=0.5,
        sheet=_by_the_page,
    ),
    Question(
        "hot_order",
        "January: the water must go in hot. Put the steps in order.",
        lambda: _HOT_ORDER,
        "order",
        choices=(_HOT_ORDER[3], _HOT_ORDER[1], _HOT_ORDER[0], _HOT_ORDER[2]),
        slips=(
            word((_HOT_ORDER[0], _HOT_ORDER[3], _HOT_ORDER[1], _HOT_ORDER[2]),
                 "Then the hot water meets cement. What does cement do at that heat?"),
            word((_HOT_ORDER[0], _HOT_ORDER[1], _HOT_ORDER[3], _HOT_ORDER[2]),
                 "Is it still hot when the cement comes? Let the sand take the heat first."),
        ),
        hints=("Which two must never meet while one of them is hot?", "The sand takes the heat; the cement comes "
                                                                      "last."),
    ),
    _question(
        "mixer",
        "A drill of {power_w} turns for {time_s} in {mortar_kg} of mortar that holds as much heat as {capacity_kg} "
        "of water. "
        "By how many degrees can it warm the mortar at the very most?",
        "temperature_difference",
        "delta_F",
        (
            Number("power_w", "W", 1400, 1000, 1800, 100),
            Number("time_s", "min", 4, 3, 6, 1),
            Number("mortar_kg", "lb", 80, 60, 90, 10),
            Number("capacity_kg", "lb", 26, 20, 30, 1),
        ),
        (
            with_number(lambda n: {"capacity_kg": n["mortar_kg"]}, "all of it counted as water",
                        "A pound of mortar holds less heat than a pound of water. How much less is given."),
            times(1 / 60, "minutes for seconds", "A watt is a joule a second. How many seconds is it?"),
            by(lambda power_w, time_s, mortar_kg, capacity_kg:
               power_w * time_s / (4184.0 * capacity_kg) + _ZERO_F_K, "32 added to a difference",
               "That 32 belongs to a reading. Does a difference of temperatures have one?"),
        ),
        (
            "Watts times seconds are joules; 4,184 of them warm a kilogram of water by 1 °C.",
            "Turn the pounds of water into kilograms, divide, and turn the °C into °F by 1.8.",
        ),
        others=("delta_C",),
    ),
    Question(
        "much_ice",
        "A scorching afternoon: the plan wants 62 % of the water as ice. What do you do?",
        lambda: "store powder and sand in the cool overnight, start at dawn, use less ice",
        "choice",
        choices=(
            "put all of the water in as ice, to be sure",
            "put the ice in on top of the water",
            "store powder and sand in the cool overnight, start at dawn, use less ice",
            "put it in as large lumps and fill the form before they have gone",
        ),
        slips=(
            word("put all of the water in as ice, to be sure",
                 "Above half it rarely all melts in time, and three quarters is the limit. What wets the powder?"),
            word("put the ice in on top of the water", "Ice is water once it has gone. What becomes of w/cm?"),
            word("put it in as large lumps and fill the form before they have gone",
                 "What is left in the slab where a lump has melted?"),
        ),
        hints=("Where does most of the heat of a mortar lie?", "In powder and sand. When are they coolest?"),
    ),
    WARMTH,
)  # fmt: skip
