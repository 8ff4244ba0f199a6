"""Lesson 09: what a whole job weighs, takes and leaves over, and a sheet with one wrong line."""

from shop_calc import units
from shop_calc.lesson.moves.whole_job_sums import WORKING, bags_back, before_leaving_h, table_kg, waiting_share
from shop_calc.lesson.question import Number, Question
from shop_calc.lesson.reasoning import find_wrong_line
from shop_calc.lesson.slips import Slip, by, waste_taken_off, word
from shop_calc.trade.batching.layer_mix import set_aside_kg
from shop_calc.trade.shape.layers import rectangle_layers
from shop_calc.trade.working import Step

INCH_M = float(units.parse("1 in", "length"))
WATER_KG_M3 = 1000.0
BY_THE_FOOT_KG_M2 = float(units.convert(11.0, "lb/ft2", "kg/m2"))  # what is said of 3/4 in; too much
FACE_M, FACE_MORE, MORTAR_KG_M3 = 0.25 * INCH_M, 0.25, float(units.convert(132.4, "lb/ft3", "kg/m3"))


def _sheet_steps(length_m, width_m, thickness_m):
    layers = rectangle_layers(length_m, width_m, thickness_m, FACE_M)
    total, core, face = (float(each) for each in (layers.total_m3, layers.core_m3, layers.face_m3))
    share = face * (1.0 + FACE_MORE)
    sizes = (("L", length_m, "m"), ("W", width_m, "m"), ("T", thickness_m, "m"))
    return (
        Step("total_m3", "V", "L * W * T", sizes, total, "m3", "derived", "geometry", "volume of the piece"),
        Step("core_m3", "V_base", "(L - 2 * t) * (W - 2 * t) * (T - t)", (*sizes, ("t", FACE_M, "m")), core, "m3",
             "derived", "geometry", "volume of the base"),
        Step("face_m3", "V_face", "V - V_base", (("V", total, "m3"), ("V_base", core, "m3")), face, "m3", "derived",
             "geometry", "volume of the face"),
        Step("share_m3", "V_share", "V_face * (1 + a)", (("V_face", face, "m3"), ("a", FACE_MORE, "-")), share, "m3",
             "derived", "arithmetic", "face share with its allowance"),
        Step("aside_kg", "M", "V_share * rho", (("V_share", share, "m3"), ("rho", MORTAR_KG_M3, "kg/m3")),
             float(set_aside_kg(face, FACE_MORE, MORTAR_KG_M3)), "kg", "derived", "arithmetic", "mass to set aside"),
    )  # fmt: skip


ARROWS = "strength down, pores up, shrinkage and curl up"
UP, ONLY_FLOW = "strength up, it can spread better", "only the flow changes, the water dries out again"
DRIES_FAST = "strength down, but it sets sooner and curls less"
TOUCH = "where it touched it cured wetter and is darker: it may never fade; wet and dry it, then cover flat or not at all"
STAIN, OIL = "plastic stains concrete: scrub it with acid", "the plastic was dirty: use a new sheet the same way"
TENT_DROPS = "leave the plastic on longer, then it evens out by itself"
EARLIER = "start earlier, or let mix and room be warmer"
MORNING, THIN = "leave the last passes for the morning", "use less water, so that it sets sooner"
HURRY, SPRINKLE = "go on an hour earlier than the signs", "sprinkle cement on it to dry it"

QUESTIONS = (
    Question(
        "table_weight",
        "A table top {length_m} by {width_m} and {thickness_m} thick is cast on its cabinet and trowelled there. The "
        "concrete has {density_kg_m3}. What will the cabinet carry, before anybody leans on it?",
        table_kg,
        "mass",
        "lb",
        numbers=(
            Number("length_m", "in", 84, 72, 96, 6),
            Number("width_m", "in", 42, 36, 48, 3),
            Number("thickness_m", "in", 2, 1.5, 2.5, 0.5),
            Number("density_kg_m3", "lb/ft3", 147, 144, 150, 1),
        ),
        slips=(
            by(lambda length_m, width_m, thickness_m, density_kg_m3: length_m * width_m * density_kg_m3 * thickness_m * 12,
               "cubic inches over 144", "How many cubic inches has a cubic foot? A foot has 12 in each of three ways."),
            by(lambda length_m, width_m, thickness_m, density_kg_m3: length_m * width_m * thickness_m * WATER_KG_M3,
               "weighed as water", "That is the weight of so much water. Does concrete float?"),
            by(lambda length_m, width_m, thickness_m, density_kg_m3:
               length_m * width_m * BY_THE_FOOT_KG_M2 * thickness_m / (0.75 * INCH_M), "eleven pounds for 3/4 in",
               "11 lb a square foot for 3/4 in is often said, and too much. What does a cubic foot over 16 weigh?"),
        ),
        hints=("Volume first, then pounds a cubic foot.", "Length × width × thickness in inches, over 1728."),
        tolerance=0.01,
        working=WORKING["table_weight"],
    ),
    Question(
        "last_pass",
        "The sheet says that the last pass ends {done_h} after the water of the face share. There are {loads} loads, "
        "one every {interval_h}, and the face share comes from the last. Cleaning and covering take {clean_h}. How "
        "many hours before you must leave does the first water go in, at the latest?",
        before_leaving_h,
        "duration",
        "h",
        numbers=(
            Number("done_h", "h", 4.1, 3.5, 5.5, 0.1),
            Number("loads", "-", 3, 2, 5),
            Number("interval_h", "min", 20, 15, 30, 5),
            Number("clean_h", "min", 30, 30, 30),
        ),
        slips=(
            by(lambda done_h, loads, interval_h, clean_h: loads * interval_h + done_h + clean_h, "gaps counted as loads",
               "How many gaps lie between so many loads?"),
            by(lambda done_h, loads, interval_h, clean_h: done_h + clean_h, "clock of the first load",
               "The hours of the sheet run from the water of the face share. When does that go in?"),
            by(lambda done_h, loads, interval_h, clean_h: (loads - 1) * interval_h + done_h, "no time to clean",
               "Who washes the tools and lays the cover?"),
        ),
        hints=("Go backwards from the door.", "Cleaning, then the hours of the face, then the loads before it."),
        tolerance=0.01,
        working=WORKING["last_pass"],
    ),
    find_wrong_line(
        "wrong_sheet",
        "A bench {length_m} by {width_m}, {thickness_m} thick, all four edges show, face 0.25 in, a quarter more face "
        "for the patch cup. On this sheet one line goes wrong first. Which?",
        _sheet_steps,
        [
            ("V_base", Slip("the base made as thick as the piece",
                            lambda answer, n: (n["L"] - 2 * n["t"]) * (n["W"] - 2 * n["t"]) * n["T"],
                            "Where does the base end, if the face lies on it?")),
            ("V_share", waste_taken_off("a", "Is the patch cup more mortar, or less?")),
        ],
        (
            Number("length_m", "in", 48, 36, 60, 6),
            Number("width_m", "in", 14, 12, 18, 1),
            Number("thickness_m", "in", 1.5, 1.25, 1.75, 0.25),
        ),
        unit="in3",
    ),
    Question(
        "arrows",
        "The mix is stiff to turn, arms are tired, and somebody pours in another quart of water. Which way do the "
        "arrows go?",
        lambda: ARROWS,
        "choice",
        choices=(UP, DRIES_FAST, ONLY_FLOW, ARROWS),
        slips=(
            word(UP, "It spreads better in the hand. What fills the room of that water once it has gone?"),
            word(DRIES_FAST, "More water between the grains: do they meet sooner or later? And what must leave again?"),
            word(ONLY_FLOW, "It does dry out again. What does it leave behind where it was?"),
        ),
        hints=("Water that the cement cannot take makes pores.", "Three arrows: strength, pores, shrinkage."),
        reason="Hold water back at first, use the water reducer, take a second pair of hands; never thin the mix.",
    ),
    Question(
        "bags_back",
        "For a piece of {volume_m3} somebody bought {bought} bags. A bag makes {bag_yield_m3}, and {allowance_fraction} "
        "more is mixed. How many bags go back unopened?",
        bags_back,
        "number",
        "-",
        numbers=(
            Number("bought", "-", 25, 22, 30),
            Number("volume_m3", "ft3", 4, 3.8, 5.6, 0.2),
            Number("bag_yield_m3", "ft3", 0.6, 0.6, 0.6),
            Number("allowance_fraction", "%", 10, 10, 20, 5),
        ),
        slips=(
            by(lambda bought, volume_m3, bag_yield_m3, allowance_fraction:
               bought - volume_m3 * (1 + allowance_fraction) / bag_yield_m3, "part of a bag sent back",
               "An opened bag does not go back. How many are opened?"),
            by(lambda bought, volume_m3, bag_yield_m3, allowance_fraction:
               volume_m3 * (1 + allowance_fraction) / bag_yield_m3, "bags used", "That many are used. How many are left?"),
            by(lambda bought, volume_m3, bag_yield_m3, allowance_fraction: bought - volume_m3 / bag_yield_m3,
               "nothing for the bucket", "What stays in the bucket and on the screed has to be mixed as well."),
        ),
        hints=("How many bags does the piece need?", "Round up, then count what is left."),
        tolerance=0.001,
        working=WORKING["bags_back"],
    ),
    Question(
        "waiting",
        "A pour takes {work_h} of work, counted for one person. {hands} people are there from the first water to the "
        "last pass, {span_h}. What share of their time is waiting?",
        waiting_share,
        "fraction",
        "%",
        numbers=(
            Number("work_h", "h", 1.7, 1.5, 2.5, 0.1),
            Number("hands", "-", 2, 2, 3),
            Number("span_h", "h", 4, 3.5, 5, 0.25),
        ),
        slips=(
            by(lambda work_h, hands, span_h: work_h / (hands * span_h), "the share that is work",
               "That is the share in which hands are busy. And the rest?"),
            by(lambda work_h, hands, span_h: 1 - work_h / span_h, "one person's time",
               "How many people are waiting?"),
            by(lambda work_h, hands, span_h: 1 - hands * work_h / span_h, "work counted for each",
               "The hours of work are those of all hands together."),
        ),
        hints=("Person-hours: people times hours.", "Work over person-hours is not the waiting, but the rest of it is."),
        working=WORKING["waiting"],
    ),
    Question(
        "plastic",
        "In the morning the bare plastic comes off a grey top. It is blotched: dark where the sheet lay, pale under its "
        "wrinkles. What is it, and what next?",
        lambda: TOUCH,
        "choice",
        choices=(STAIN, TOUCH, TENT_DROPS, OIL),
        slips=(
            word(STAIN, "Nothing from the sheet went into the concrete. What was different where it touched?"),
            word(OIL, "A clean sheet has wrinkles too. What does a wrinkle do?"),
            word(TENT_DROPS, "The wrinkles stay where they are. Which places stay wetter all the while?"),
        ),
        hints=("Compare what lay under the contact and under the air gap.", "No dirt is needed: moisture is enough."),
        reason="Wet and dry the whole face a few times; a test patch before any cleaner. "
        "Next time damp fabric in full contact.",
    ),
    Question(
        "late",
        "The sheet puts the last steel at 22:40. What do you change, before anything is weighed?",
        lambda: EARLIER,
        "choice",
        choices=(MORNING, HURRY, EARLIER, SPRINKLE, THIN),
        slips=(
            word(MORNING, "By the morning the blade rings. Which stage comes after stop?"),
            word(HURRY, "Steel before its sign closes a skin over air and water. Can you move the sign instead?"),
            word(SPRINKLE, "A dry skin over a wet body dusts and crazes. What moves the whole clock?"),
            word(THIN, "You could not turn it, and the recipe is no clock. What about temperature?"),
        ),
        hints=("It is still only paper: everything may move.", "Two entries of the job move that hour most."),
    ),
)  # fmt: skip
