"""Lesson 07: shrinkage, curl, and what to do about it."""

from shop_calc.lesson.moves.shrink_and_curl_sums import (
    EXPONENT,
    WORKING,
    base_over_face,
    equal_layers_m,
    one_face_m,
    shorter_m,
    twice_as_thick,
)
from shop_calc.lesson.question import Number, Question
from shop_calc.lesson.slips import by, word

RUINED, WET, PLANE, SCREW = (
    "it is ruined: throw it out", "wet the dry face, cover it, let it lie down; then dry both faces alike",
    "grind the ends flat", "screw it down flat to the frame",
)  # fmt: skip
BATTENS, PLASTIC, SUN, FLOOR = (
    "on battens, air all round, both faces", "flat on plastic sheet", "in the sun, top up", "flat on the shop floor",
)  # fmt: skip

QUESTIONS = (
    Question(
        "one_face",
        "A slab {thickness_m} thick lies on plastic. Its top has dried, and is shorter than its underside by "
        "{strain_count} millionths. How far do its ends come up over a length of {length_m}?",
        one_face_m,
        "length",
        "in",
        numbers=(
            Number("strain_count", "-", 300, 200, 500, 50),
            Number("thickness_m", "in", 1, 0.75, 1.5, 0.25),
            Number("length_m", "in", 72, 48, 96, 12),
        ),
        slips=(
            by(
                lambda strain_count, thickness_m, length_m: strain_count * 1e-6 / thickness_m * length_m / 8,
                "length not squared",
                "Twice as long bows four times as much: the length counts twice.",
            ),
            by(
                lambda strain_count, thickness_m, length_m: strain_count * 1e-6 / thickness_m * length_m**2 / 2,
                "the half length forgotten",
                "The ends are half a length from the middle. Half, squared, is a quarter.",
            ),
            by(
                lambda strain_count, thickness_m, length_m: strain_count * 1e-6 / (thickness_m / 2) * length_m**2 / 8,
                "half the thickness",
                "The difference is between the two faces: how far are they apart?",
            ),
        ),
        hints=(
            "Curvature first: the difference over the thickness.",
            "Then curvature times length squared over eight.",
        ),
        working=WORKING["one_face"],
    ),
    Question(
        "thicker",
        "A top {thin_m} thick bows by {bow_thin_m} when its upper face dries first. The same top, {thick_m} thick, with "
        "the same difference between its faces: how far does it bow?",
        twice_as_thick,
        "length",
        "in",
        numbers=(
            Number("thin_m", "in", 0.75, 0.75, 1, 0.25),
            Number("thick_m", "in", 1.5, 1.5, 2, 0.25),
            Number("bow_thin_m", "in", 0.36, 0.24, 0.48, 0.06),
        ),
        slips=(
            by(
                lambda thin_m, thick_m, bow_thin_m: bow_thin_m,
                "thickness left out",
                "The same difference bends a thin sheet more. Where does the thickness stand?",
            ),
            by(
                lambda thin_m, thick_m, bow_thin_m: bow_thin_m * (thin_m / thick_m) ** 3,
                "as for stiffness",
                "Stiffness goes with the third power. But here nothing pushes: the slab bends itself.",
            ),
            by(
                lambda thin_m, thick_m, bow_thin_m: bow_thin_m * thick_m / thin_m,
                "the wrong way",
                "Which bends more easily: a sheet of paper or a book?",
            ),
        ),
        hints=("Curvature is the difference over the thickness.", "So the bow goes with one over the thickness."),
        working=WORKING["thicker"],
    ),
    Question(
        "restraint",
        "Of a base, {mortar_share} by volume is mortar, the rest stone and coarse sand. With the exponent 1.5: how much "
        "does it shrink, as a share of what its mortar alone would?",
        base_over_face,
        "number",
        "-",
        numbers=(Number("mortar_share", "-", 0.64, 0.60, 0.80, 0.02),),
        slips=(
            by(
                lambda mortar_share: mortar_share,
                "in proportion",
                "The stone takes its own share away and holds back what is round it too: the power is more than one.",
            ),
            by(
                lambda mortar_share: (1 - mortar_share) ** EXPONENT,
                "the stone taken for the mortar",
                "A base without stone shrinks like its mortar. Does your number become one then?",
            ),
            by(
                lambda mortar_share: mortar_share * EXPONENT,
                "multiplied by the exponent",
                "The exponent is a power, it does not multiply.",
            ),
        ),
        hints=("More mortar, more shrinkage; all mortar, all of it.", "The mortar share to the power 1.5."),
        working=WORKING["restraint"],
    ),
    Question(
        "ruined",
        "A patio top, 3/4 in thick, has dried for a weekend; all four corners stand up. What now?",
        lambda: WET,
        "choice",
        choices=(RUINED, WET, PLANE, SCREW),
        slips=(
            word(RUINED, "What happened to the paper when its other face got wet?"),
            word(PLANE, "When the lower face has dried too, the ends go down again. What is flat then?"),
            word(SCREW, "Held flat, the pull that lifted the corners has nowhere to go. What gives?"),
        ),
        hints=("What lifted the corners: a lack of concrete, or a lack of water?", "It comes and goes with moisture."),
    ),
    Question(
        "patio",
        "A square top, 5 ft by 5 ft, is {thickness_m} thick; its diagonal is {length_m}. Its upper face is shorter by "
        "{strain_count} millionths. How far are its corners up?",
        one_face_m,
        "length",
        "in",
        numbers=(
            Number("strain_count", "-", 300, 200, 400, 20),
            Number("thickness_m", "in", 0.75, 0.75, 1.5, 0.25),
            Number("length_m", "in", 85, 85, 85),
        ),
        slips=(
            by(
                lambda strain_count, thickness_m, length_m: one_face_m(strain_count, thickness_m, 60 * 0.0254),
                "the side instead of the diagonal",
                "The corners are the farthest apart. Along which line?",
            ),
            by(
                lambda strain_count, thickness_m, length_m: strain_count * 1e-6 * length_m,
                "shortening instead of bow",
                "That is how much shorter the top got. How far up do the ends come?",
            ),
        ),
        hints=("It bows along its longest line.", "Difference over thickness, times the diagonal squared, over eight."),
        working=WORKING["patio"],
    ),
    Question(
        "shorter",
        "A base {length_m} long shrinks by {strain_count} millionths. How much shorter is it?",
        shorter_m,
        "length",
        "mm",
        numbers=(Number("length_m", "m", 2.4, 1.2, 3.0, 0.3), Number("strain_count", "-", 500, 300, 800, 50)),
        slips=(
            by(
                lambda length_m, strain_count: length_m * strain_count * 1e-3,
                "thousandths",
                "A millionth of a metre is a thousandth of a millimetre.",
            ),
            by(
                lambda length_m, strain_count: strain_count * 1e-6,
                "length left out",
                "A longer piece shrinks by more. Where is the length?",
            ),
        ),
        hints=("Millionths of what?", "Length times the number, divided by a million."),
        working=WORKING["shorter"],
    ),
    Question(
        "equal_layers",
        "Two layers, equally thick and equally stiff, {thickness_m} together. The upper one shrinks {strain_count} "
        "millionths more. For equal layers the curvature is 1.5 times the difference over the whole thickness. How far "
        "does it bow over {length_m}?",
        equal_layers_m,
        "length",
        "mm",
        numbers=(
            Number("strain_count", "-", 400, 200, 600, 50),
            Number("thickness_m", "mm", 25, 20, 40, 5),
            Number("length_m", "m", 2.4, 1.2, 2.4, 0.3),
        ),
        slips=(
            by(one_face_m, "the 1.5 forgotten", "A sharp step bends more than an even run from face to face."),
            by(
                lambda strain_count, thickness_m, length_m: 2 * equal_layers_m(strain_count, thickness_m, length_m),
                "one layer's thickness",
                "The rule is written with the whole thickness.",
            ),
        ),
        hints=("Curvature first.", "1.5 times the difference over the thickness, times length squared over eight."),
        working=WORKING["equal_layers"],
    ),
    Question(
        "drying",
        "The piece is off the form and strong enough. How does it dry?",
        lambda: BATTENS,
        "choice",
        choices=(PLASTIC, BATTENS, SUN, FLOOR),
        slips=(
            word(PLASTIC, "Which face can dry then, and which not?"),
            word(SUN, "Which face dries first, and which way do the ends go?"),
            word(FLOOR, "How much air gets under it?"),
        ),
        hints=("What makes a bow: drying, or drying unlike?", "Both faces should see the same air."),
    ),
)
