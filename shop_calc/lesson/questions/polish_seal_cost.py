"""Lesson 08: how far a sealer goes, when it is dry, what is bought and what is used."""

from shop_calc.lesson.moves.polish_seal_cost_sums import (
    WORKING,
    bags_count,
    covered_m2,
    lost_a_day_share,
    pack_cash,
    sealer_for_top_m3,
)
from shop_calc.lesson.question import Number, Question
from shop_calc.lesson.slips import by, left_out, percent_not_turned, times, waste_forgotten, with_number, word

_WET_KG_M3 = 2322.677  # 145 lb/ft3


NOW, LATER, THIN, AGAIN = (
    "seal: it is a week old and dry to the touch", "wait for 28 days, as for all concrete",
    "seal thinly, so that the water can still get out", "let it go on drying, and tape the sheet again in a few days",
)  # fmt: skip
WET, MASK, QUICK, BARE = (
    "wet, on a GFCI circuit; respirator, gloves, apron and boots that keep water out",
    "dry, outdoors, with a paper mask", "dry, with a fan in the door",
    "wet, in shorts and old sneakers: wet means no dust, so no danger",
)  # fmt: skip
HONE, SCRUB, BLEACH, SEAL = (
    "hone it wet, 400 and then 800 grit, and seal again", "scrub it with vinegar", "bleach it out",
    "seal over it",
)  # fmt: skip

QUESTIONS = (
    Question(
        "covers",
        "The label of a film-forming sealer says {solids_fraction} solids by volume; a coat is to dry to {film_m}. How "
        "many square feet does {volume_m3} cover, one coat, nothing wasted?",
        covered_m2,
        "area",
        "ft2",
        numbers=(
            Number("volume_m3", "gal", 1, 1, 1),
            Number("solids_fraction", "%", 30, 16, 40, 2),
            Number("film_m", "mil", 1.5, 1, 2.5, 0.25),
        ),
        slips=(
            percent_not_turned("Out of a hundred parts, how many stay on the concrete?"),
            with_number(lambda numbers: {"solids_fraction": 1.0}, "the water spread too",
                        "Most of the can goes into the air. How much of the gallon is there when it has dried?"),
            by(lambda volume_m3, solids_fraction, film_m: volume_m3 * (1 - solids_fraction) / film_m,
               "what leaves taken for what stays", "That is the part that dries away. Which part is the film?"),
        ),
        hints=(
            "A gallon spread one mil thick, all of it staying, covers 1604 ft².",
            "1604 times the solids, over the mils.",
        ),
        working=WORKING["covers"],
    ),
    Question(
        "sheet",
        "A top is to get a penetrating sealer. It is eight days old and dry to the touch. You take off the sheet that "
        "was taped down last night: its inside is beaded with water. What now?",
        lambda: AGAIN,
        "choice",
        choices=(NOW, LATER, THIN, AGAIN),
        slips=(
            word(NOW, "Your hand feels the skin. What did the sheet feel?"),
            word(LATER, "It may be dry long before, or not yet by then. Who can tell: the calendar or the sheet?"),
            word(THIN, "A sealer goes in where the water is not. What fills the pores now?"),
        ),
        hints=("Where did that water come from?", "The surface was dry; the inside was not."),
        reason="The water came out of the concrete overnight: the pores are not dry, whatever hand or calendar say.",
    ),
    Question(
        "packs",
        "The tops of one week take {needed_kg} of fine sand. It is sold by the bag of {pack_kg}, and a bag costs "
        "{price_count} dollars. How many dollars go over the counter?",
        pack_cash,
        "number",
        "-",
        numbers=(
            Number("needed_kg", "lb", 120, 110, 240, 5),
            Number("pack_kg", "lb", 50, 40, 60, 10),
            Number("price_count", "-", 9, 7, 12, 1),
        ),
        slips=(
            by(lambda needed_kg, pack_kg, price_count: needed_kg / pack_kg * price_count, "the share that is used",
               "That is the sand in the tops. Does the yard sell part of a bag?"),
            by(lambda needed_kg, pack_kg, price_count: needed_kg // pack_kg * price_count, "rounded down",
               "With so many bags, what is the last top made of?"),
            by(lambda needed_kg, pack_kg, price_count: -(-needed_kg // pack_kg), "bags and not dollars",
               "That is how many bags. What does each of them cost?"),
        ),
        hints=("Bags first, and only whole ones.", "Round up, then times the price."),
        working=WORKING["packs"],
    ),
    Question(
        "bags",
        "A form holds {volume_m3}. A bag of {bag_kg} says on its back that it makes {bag_yield_m3}; wet, the mix "
        "weighs 145 lb/ft³. How many bags?",
        bags_count,
        "number",
        "-",
        numbers=(
            Number("volume_m3", "ft3", 36, 24, 75, 3),
            Number("bag_yield_m3", "ft3", 0.3, 0.3, 0.3),
            Number("bag_kg", "lb", 40, 40, 40),
        ),
        slips=(
            by(lambda volume_m3, bag_yield_m3, bag_kg: -(-volume_m3 * _WET_KG_M3 // bag_kg), "by the label weight",
               "The label is dry powder, the 145 lb have water in them. Which number on the bag says what it makes?"),
            by(lambda volume_m3, bag_yield_m3, bag_kg: volume_m3 / 0.028316847 * bag_yield_m3 / 0.028316847,
               "multiplied", "Each bag makes less than a cubic foot. Are there more bags than cubic feet, or fewer?"),
        ),
        hints=("What is one bag good for, in cubic feet?", "Volume over yield, rounded up."),
        tolerance=0.001,
        within=0.5,
        working=WORKING["bags"],
    ),
    Question(
        "grind",
        "The day after the sides came off, the top is ready for the 200 grit. How?",
        lambda: WET,
        "choice",
        choices=(MASK, WET, QUICK, BARE),
        slips=(
            word(MASK, "Dry grinding was measured at 35 to 55 times the exposure that is recommended. Is a paper mask "
                 "enough for that?"),
            word(QUICK, "Where does the fan carry the dust, and who breathes there?"),
            word(BARE, "The dust is gone. What is in the water, a day after the pour, and when do you feel it?"),
        ),
        hints=("Two dangers, one in the air and one in the water.", "Wet keeps the dust down; then keep the wet off."),
        reason="Water binds the silica dust; slurry of young concrete is caustic, and wet tools want a GFCI.",
    ),
    Question(
        "lost_a_day",
        "Wiped dry, a slab weighs {first_kg}; {between_h} later, {second_kg}. What share of its weight does it "
        "lose in a day?",
        lost_a_day_share,
        "fraction",
        "%",
        numbers=(
            Number("first_kg", "lb", 111.4, 110.6, 112.6, 0.2),
            Number("second_kg", "lb", 110.8, 109.4, 110.2, 0.2),
            Number("between_h", "h", 48, 48, 72, 24),
        ),
        slips=(
            with_number(lambda numbers: {"between_h": 24.0}, "not by the day",
                        "That is the loss between the weighings. How many days was that?"),
            by(lambda first_kg, second_kg, between_h: (first_kg - second_kg) / 0.45359237 * 24 / between_h / 100,
               "pounds taken for per cent", "Pounds out of how many pounds?"),
            by(lambda first_kg, second_kg, between_h: (first_kg - second_kg) / first_kg / between_h, "by the hour",
               "That is by the hour. How many hours has a day?"),
        ),
        hints=("What was lost, over what there was.", "Then over the days between the weighings."),
        working=WORKING["lost_a_day"],
    ),
    Question(
        "lemon",
        "A slice of lemon lay on the sealed top; a dull, pale spot stayed. What brings the face back?",
        lambda: HONE,
        "choice",
        choices=(SCRUB, BLEACH, HONE, SEAL),
        slips=(
            word(SCRUB, "Vinegar is an acid too. What did the first one do?"),
            word(BLEACH, "Bleach takes colour away. Did something come onto the face, or go from it?"),
            word(SEAL, "A sealer shuts in what is there. Is the gloss there?"),
        ),
        hints=("Is it a stain, something added, or an etch, something dissolved?", "Coarse first, then fine."),
        reason="Acid has dissolved paste: it is an etch. Honing takes the dull skin off; the sealer went with it.",
    ),
    Question(
        "both_faces",
        "One face of a top has {top_m2}, its edges together {edge_m2}. The label: {coverage_m2_m3} a coat. It takes "
        "{coats_count} coats, on both faces and the edges, and {waste_fraction} stays in pad and tray. How much is "
        "that?",
        sealer_for_top_m3,
        "liquid",
        "qt",
        numbers=(
            Number("top_m2", "ft2", 8, 5, 14, 1),
            Number("edge_m2", "ft2", 2, 1, 3, 0.5),
            Number("coverage_m2_m3", "ft2/gal", 160, 120, 240, 20),
            Number("coats_count", "-", 2, 2, 3),
            Number("waste_fraction", "%", 10, 10, 20, 5),
        ),
        slips=(
            with_number(lambda numbers: {"top_m2": numbers["top_m2"] / 2}, "one face",
                        "A top that is sealed above and open below dries unlike. What did lesson 07 say it does then?"),
            left_out("edge_m2", "And the edges?"),
            with_number(lambda numbers: {"coats_count": 1}, "one coat", "That is one coat."),
            waste_forgotten("waste_fraction", "What stays in the pad and the tray was bought too."),
            times(0.25, "gallons for quarts", "That is in gallons. How many quarts has one?"),
        ),
        hints=("All the area first: two faces and the edges.", "Area over coverage, times coats, plus the waste."),
        working=WORKING["both_faces"],
        others=("qt", "L", "mL"),
    ),
)
