"""Lesson 06: carrying, strength that it asks for, maturity with its datum, steel in the middle, weights, seats."""

from shop_calc import units
from shop_calc.lesson.moves import strip_move_sums as sums
from shop_calc.lesson.question import Number, Question
from shop_calc.lesson.slips import by, times, with_number, word
from shop_calc.science.bending import BEST_SUPPORT_RATIO, carried_stress_pa
from shop_calc.science.loads import implied_density_kg_m3

_DENSITY = Number("density_kg_m3", "lb/ft3", 150, 150, 150)

NO_MORE = "no more than without it"
TWICE, HALF_MORE = "about twice as much", "half as much again"
ON_TOP = "less, because mesh weakens the underside"
THUMB = "the same day, when a quarter-inch print stays and the edge keeps its shape"
DAY, TWO_DAYS = "after 24 hours", "after 48 hours, to be safe"
BY_CLOCK = "two and a half hours after the water, whatever the weather"

QUESTIONS = (
    Question(
        "plank",
        "A top is {length_m} long, {width_m} wide and {thickness_m} thick and weighs {density_kg_m3}. Two people take "
        "it flat by its ends, like a plank. With what does its own weight pull the underside?",
        sums.plank_pa,
        "pressure",
        "psi",
        numbers=(
            Number("length_m", "ft", 8, 6, 9),
            Number("width_m", "in", 25, 24, 26),
            Number("thickness_m", "in", 0.75, 0.75, 1.5, 0.25),
            _DENSITY,
        ),
        slips=(
            with_number(lambda n: {"thickness_m": n["width_m"]}, "on edge",
                        "That is the sum for a slab on edge. Which size stands upright when it lies flat?"),
            by(lambda length_m, width_m, thickness_m, density_kg_m3: float(
                carried_stress_pa(length_m, thickness_m, density_kg_m3, BEST_SUPPORT_RATIO)), "held a fifth in",
               "0.1287 is for hands a good fifth of the length in. Where are the hands here?"),
            times(1.0 / 6.0, "moment for stress",
                  "An eighth of the weight times length is the moment. What turns a moment into a stress?"),
        ),
        hints=("It grows with the square of the length and shrinks with the thickness.",
               "0.75 times the weight of a cubic inch, times the length squared, over the thickness, all in inches."),
        working=sums.WORKING["plank"],
    ),
    Question(
        "patio",
        "A patio top is {length_m} square, {thickness_m} thick and weighs {density_kg_m3}. It is to be carried flat by "
        "two opposite edges. With a jolt of 2.0, a scatter of 1.5 and 7.5 times the root for bending: what compressive "
        "strength does that ask for?",
        sums.patio_pa,
        "pressure",
        "psi",
        numbers=(
            Number("length_m", "ft", 5, 4, 6, 0.5),
            Number("thickness_m", "in", 0.75, 0.75, 1.25, 0.25),
            _DENSITY,
        ),
        slips=(
            by(lambda **n: sums.squared_pa(**n, factor=1.0), "lying still",
               "That is enough for a top that lies still. What do steps and a stumble add, and how sure is the "
               "strength?"),
            by(lambda **n: sums.squared_pa(**n, factor=2.0), "scatter forgotten",
               "The jolt is in. Do all strips of one batch break at one load?"),
            by(lambda **n: 3.0 * sums.squared_pa(**n, factor=1.0), "factors after the square",
               "Jolt and scatter raise the pull. Put them in before you square."),
            by(lambda length_m, thickness_m, density_kg_m3: 3.0 * float(
                carried_stress_pa(length_m, thickness_m, density_kg_m3)), "bending taken for compression",
               "That is what it needs in bending. Which strength does a cylinder tell?"),
        ),
        hints=("First the pull of its own weight, then what it must stand in bending.",
               "Divide what it needs in bending by 7.5 and square that, in psi."),
        working=sums.WORKING["patio"],
    ),
    Question(
        "datum",
        "A curing record: {time_h} at {temp_c} on average, counted over a datum of {datum_c}. How many °C·days is "
        "that?",
        sums.degree_days,
        "number",
        "-",
        numbers=(
            Number("time_h", "d", 28, 14, 28, 7),
            Number("temp_c", "C", 15, 13, 20),
            Number("datum_c", "C", -11, -11, -11),
        ),
        slips=(
            by(lambda time_h, temp_c, datum_c: time_h * (temp_c + datum_c) / 24.0, "sign of the datum",
               "Does a piece at the datum gain anything? How many degrees does the thermometer stand above it?"),
            by(lambda time_h, temp_c, datum_c: time_h * temp_c / 24.0, "counted from 0 °C",
               "Counted from where? Every such number has its datum beside it."),
            times(24.0, "hours for days", "Days are asked for, and there are 24 hours in each."),
        ),
        hints=("Count the degrees above the datum first.",
               "Temperature less datum, times the days. Mind the two signs."),
        tolerance=0.005,
        working=sums.WORKING["datum"],
    ),
    Question(
        "mesh",
        "Somebody lays welded wire mesh in the middle of the thickness, so that the top can be carried flat by its "
        "ends. Before the first crack, how much more does it carry?",
        lambda: NO_MORE,
        "choice",
        choices=(TWICE, HALF_MORE, NO_MORE, ON_TOP),
        slips=(
            word(TWICE, "Which face is pulled, and how far from it does the mesh lie?"),
            word(HALF_MORE, "At the middle of the thickness nothing is pulled and nothing pressed. What can steel hold "
                 "there?"),
            word(ON_TOP, "The mesh does no harm to the underside. Does it do anything for it?"),
        ),
        hints=("Bend an eraser with a line drawn along the middle of its edge.", "Does that line get longer?"),
        reason="The middle of the thickness is neither pulled nor pressed. Steel helps near the face in tension: below "
        "in a span, above over a hold; a piece that is turned over sees both.",
    ),
    Question(
        "fourteen",
        "A page says: count from 0 °C, that is 14 °F. A piece has lain for {time_h} at {temp_c}. How many °C·h has it "
        "really gained over a datum of 14 °F?",
        sums.degree_hours,
        "number",
        "-",
        numbers=(Number("time_h", "h", 24, 18, 36, 3), Number("temp_c", "F", 50, 50, 68, 9)),
        slips=(
            by(lambda time_h, temp_c: time_h * temp_c, "the page's 0 °C",
               "Turn 14 °F into Celsius yourself. It is a good deal below freezing."),
            by(lambda time_h, temp_c: time_h * (temp_c - sums.DATUM_C) * 1.8, "in °F·h",
               "Those are Fahrenheit degrees. °C·h are asked for."),
        ),
        hints=("Put both temperatures into Celsius before you take one from the other.", "14 °F is -10 °C."),
        tolerance=0.005,
        working=sums.WORKING["fourteen"],
    ),
    Question(
        "claimed",
        "A page says that panels {thickness_m} thick weigh {mass_kg_m2}. Which density would that be? (Mixes of sand "
        "and cement have 110 to 155 lb/ft³.)",
        lambda mass_kg_m2, thickness_m: float(implied_density_kg_m3(mass_kg_m2, thickness_m)),
        "density",
        "lb/ft3",
        numbers=(Number("thickness_m", "in", 0.75, 0.75, 0.75), Number("mass_kg_m2", "lb/ft2", 12, 10, 12, 0.5)),
        slips=(
            times(1.0 / 12.0, "inch for foot", "You divided by inches. A cubic foot is twelve of them high."),
            by(lambda mass_kg_m2, thickness_m: mass_kg_m2 / units.convert(1.0, "in", "m"), "an inch thick",
               "That holds for a panel an inch thick. Is this one?"),
        ),
        hints=("How many such panels make a stack a foot high?", "Twelve inches over the thickness, times the weight."),
        working=sums.WORKING["claimed"],
    ),
    Question(
        "sides",
        "Four people say when the sides come off a top whose edges are to be trowelled. Who is right?",
        lambda: THUMB,
        "choice",
        choices=(DAY, TWO_DAYS, THUMB, BY_CLOCK),
        slips=(
            word(DAY, "What can a trowel still do to an edge that is a day old?"),
            word(TWO_DAYS, "Corners that crumble at 24 hours speak of a cold room. What does waiting cost the edge?"),
            word(BY_CLOCK, "In which room, with what water? The clock says when to look."),
        ),
        hints=("The edge must stand by itself and still take a trowel.", "There is a window, and the thumb finds it."),
        reason="Every one of these hours was right somewhere: cold and warm rooms lie hours apart. An edge that is "
        "to be trowelled must be bared while it holds its shape and can still be worked.",
    ),
    Question(
        "sitter",
        "A bench {width_m} wide and {thickness_m} thick stands on two legs {span_m} apart. One person, 250 lb, sits "
        "down on the middle; sitting down doubles it. With what does that person pull the underside, the bench's own weight "
        "left out?",
        sums.sitter_pa,
        "pressure",
        "psi",
        numbers=(
            Number("width_m", "in", 15, 12, 18),
            Number("thickness_m", "in", 1.5, 1.5, 2.5, 0.5),
            Number("span_m", "in", 40, 30, 45, 1),
        ),
        slips=(
            times(0.5, "lowered gently",
                  "Nobody lowers himself that gently. What does the last inch of sitting down do?"),
            by(lambda span_m, width_m, thickness_m: sums.sitter_pa(span_m, width_m, thickness_m) * units.convert(
                thickness_m, "m", "in"), "thickness not squared",
               "Twice as thick is not twice as strong. Which size is squared under the load?"),
        ),
        hints=("The moment at the middle is load times span over 4.",
               "The stress is 6 times the moment over width times thickness squared."),
        working=sums.WORKING["sitter"],
    ),
)  # fmt: skip
