"""Lesson 05: what the air takes, what to lay on the face, and what never."""

from shop_calc import defaults
from shop_calc.lesson.moves.curing_sums import WORKING, coldest_water_c, lost_share, rate_kg_m2_h
from shop_calc.lesson.moves.night import menzel_lb_ft2_h
from shop_calc.lesson.question import Number, Question
from shop_calc.lesson.reasoning.lesson_sheets import EVENING
from shop_calc.lesson.slips import by, left_out, with_number, word
from shop_calc.trade.timeline.drying import face_level
from shop_calc.units import convert

NIGHTS = {
    "air and slab at 90 °F, 90 % humidity, still": (90, 90, 0.90, 1),
    "air and slab at 90 °F, 30 % humidity, still": (90, 90, 0.30, 1),
    "air and slab at 70 °F, 50 % humidity, 10 mph": (70, 70, 0.50, 10),
    "air at 40 °F over a slab at 70 °F, 50 % humidity, 10 mph": (70, 40, 0.50, 10),
}
HUMID, DRY, MILD, COLD = NIGHTS


def driest():
    """Find the night that takes most from a face.

    Returns
    -------
    str
        One of the four nights [-].

    Examples
    --------
    >>> driest()
    'air at 40 °F over a slab at 70 °F, 50 % humidity, 10 mph'

    References
    ----------
    Menzel 1954, from memory.
    """
    return max(NIGHTS, key=lambda name: menzel_lb_ft2_h(*NIGHTS[name]))


FACE_ONLY = "fine for an ordinary slab, and the face must be covered"
BOTH_FINE, BOTH_COVER = "fine for both", "both must be covered"
SLAB_ONLY = "the slab must be covered, and the face is fine"


def verdict(rate_kg_m2_h):
    """Say whether an ordinary slab and a low-bleed face may lie open at a rate.

    Parameters
    ----------
    rate_kg_m2_h : float
        Evaporation rate [kg/m2/h].

    Returns
    -------
    str
        One of the four answers [-].

    Examples
    --------
    >>> verdict(0.58589)
    'fine for an ordinary slab, and the face must be covered'

    References
    ----------
    ACI 305R/308 and FHWA-HRT-05-038 ch. 5, as in data/defaults.csv.
    """
    slab = rate_kg_m2_h >= defaults.si("ordinary_limit")
    face = face_level(rate_kg_m2_h) == "red"
    return {(False, False): BOTH_FINE, (False, True): FACE_ONLY, (True, True): BOTH_COVER}.get((slab, face), SLAB_ONLY)


DAMP = "damp cotton laid flat on every inch, plastic over the cotton"
BARE, TENT = "plastic straight on the face", "plastic on bricks at the corners"
HALF = "damp cotton folded over the edges only"
VENT = "a heater whose fumes leave through a flue, or an electric one"
CRACK, FAR = "a gas burner, with the door a hand open", "a gas burner, far from the top"
SHORT = "a gas burner, until bedtime only"
AIR, WEEK = "take the cover off; air above 55 °F (13 °C)", "keep it wet for 7 days"
MONTH, NOTHING = "plastic on it for 28 days", "nothing: it is no longer warm, so it has cured"


QUESTIONS = (
    Question(
        "menzel",
        "Over the face the vapour presses with {surface_pa}; saturated air of the room would press with {air_pa}. "
        "The humidity is {rh_fraction}, the air moves at {wind_m_s}. How much does it take?",
        rate_kg_m2_h,
        "rate",
        "lb/ft2/h",
        numbers=(
            Number("surface_pa", "psi", 0.30, 0.26, 0.40, 0.02),
            Number("air_pa", "psi", 0.36, 0.24, 0.36, 0.02),
            Number("rh_fraction", "%", 40, 30, 60, 5),
            Number("wind_m_s", "mph", 5, 3, 12, 1),
        ),
        slips=(
            with_number(lambda n: {"rh_fraction": 1.0}, "humidity left out",
                        "Is the air of the room saturated? How much of that pressure does it really hold?"),
            with_number(lambda n: {"rh_fraction": 0.0}, "vapour of the air left out",
                        "Half-dry air presses back too. With how much of what it could hold?"),
            with_number(lambda n: {"rh_fraction": 1.0 - n["rh_fraction"]}, "dryness for humidity",
                        "Humidity is what the air holds, and not what it lacks."),
            left_out("wind_m_s", "What does the moving air do? It has its own term."),
        ),
        hints=("First the difference of two pressures, then the wind.",
               "0.44 times (face less humidity times room) times (0.253 + 0.096 times speed), in psi and mph."),
        tolerance=0.03,
        working=WORKING["menzel"],
    ),
    Question(
        "limit",
        "The air takes {rate_kg_m2_h}. Beside your face, which bleeds little, lies an ordinary slab. Who has to act?",
        verdict,
        "choice",
        numbers=(Number("rate_kg_m2_h", "lb/ft2/h", 0.12, 0.12, 0.18, 0.01),),
        choices=(BOTH_FINE, SLAB_ONLY, FACE_ONLY, BOTH_COVER),
        slips=(
            word(BOTH_FINE, "0.2 is the limit for a slab that bleeds. What does a face send up for what leaves?"),
            word(SLAB_ONLY, "Which of the two has more water on its way to the surface?"),
            word(BOTH_COVER, "What is the limit for an ordinary slab?"),
        ),
        hints=("There are two limits, and one is half of the other.", "0.2 lb/ft²·h for ordinary concrete."),
    ),
    Question(
        "driest",
        "Four evenings. On which does the air take most from the face?",
        driest,
        "choice",
        choices=(HUMID, DRY, MILD, COLD),
        slips=(
            word(HUMID, "Hot, yes. How much more can air take that is nearly full?"),
            word(DRY, "Hot and dry, but nothing moves. Which of the four has the strongest wind and the emptiest air?"),
            word(MILD, "Close. What does a face at 70 °F press with, and how much can cold air hold against it?"),
        ),
        hints=("It is the difference of two pressures that counts.",
               "Cold air holds little; a warm slab does not know it."),
    ),
    Question(
        "sheet",
        "The face is pigmented, it is dry and windy, and it must be kept wet tonight. What goes on?",
        lambda: DAMP,
        "choice",
        choices=(BARE, TENT, DAMP, HALF),
        slips=(
            word(BARE, "Where it touches it is dark, where it bridges it is light. Will that fade?"),
            word(TENT, "What forms under it overnight, and where does it fall? And what does the wind do there?"),
            word(HALF, "What colour will the line be where the cotton ends?"),
        ),
        hints=("Colour follows contact.", "All of it touched alike, or none."),
    ),
    Question(
        "curing_water",
        "The face is at {surface_c}. How cold may the water for the cotton be at the coldest?",
        coldest_water_c,
        "temperature",
        "F",
        numbers=(Number("surface_c", "F", 88, 76, 100, 2),),
        slips=(
            by(lambda surface_c: surface_c - 11 / 1.8, "degrees Celsius taken as Fahrenheit",
               "Eleven degrees of which scale? A degree of one is almost two of the other."),
            by(lambda surface_c: surface_c + defaults.si("curing_water_drop"), "warmer",
               "Is it the cold or the warm water that shocks a warm face?"),
            by(lambda surface_c: surface_c - 7.0, "the misprint",
               "So it is misprinted: 7 °C beside 20 °F. How many °C is a difference of 20 °F?"),
            by(lambda surface_c: convert(20.0, "F", "C"), "the difference as a reading",
               "20 °F is how far below the face, and not what the thermometer shows."),
        ),
        hints=("It is a difference from the face.", "11 °C is 20 °F of difference."),
        within=1.0,
        working=WORKING["curing_water"],
    ),
    Question(
        "share",
        "The air takes {rate_kg_m2_h} from a face {thickness_m} thick that holds {water_kg_m3} of water. It lies open "
        "for {hours_h}. What share of its water has gone?",
        lost_share,
        "fraction",
        "%",
        numbers=(
            Number("rate_kg_m2_h", "lb/ft2/h", 0.06, 0.04, 0.10, 0.01),
            Number("thickness_m", "in", 0.25, 0.25, 0.375, 0.0625),
            Number("water_kg_m3", "lb/ft3", 18, 16, 19, 1),
            Number("hours_h", "h", 1.5, 1.5, 3, 0.5),
        ),
        slips=(
            left_out("hours_h", "That is what one hour takes. How long does it lie open?", 1.0),
            with_number(lambda n: {"thickness_m": 0.0381}, "the whole piece",
                        "You counted 1 1/2 in. How thick is the layer that is asked for?"),
            with_number(lambda n: {"thickness_m": 12 * n["thickness_m"]}, "inch for foot",
                        "Are all the numbers in feet? An inch is a twelfth of one."),
        ),
        hints=("How much leaves a square foot, and how much was in it?",
               "The thickness in feet times the water of a cubic foot."),
        working=WORKING["share"],
    ),
    Question(
        "heater",
        "The air will fall to 40 °F tonight, and the top lies in a closed garage. How is it kept warm?",
        lambda: VENT,
        "choice",
        choices=(CRACK, FAR, VENT, SHORT),
        slips=(
            word(CRACK, "Carbon monoxide has no smell, and a hand of open door does not clear it."),
            word(FAR, "Its fumes fill the room however far it stands. What do they do to you, and to the face?"),
            word(SHORT, "In the first hours fumes make a fresh face chalky, and one evening of them can kill."),
        ),
        hints=("Think of whoever sleeps beside it, then of the face.", "Where do the fumes go?"),
    ),
    Question(
        "polymer",
        "The mix of the bench top has 5 % polymer solids in its binder. The first night is over. What now?",
        lambda: AIR,
        "choice",
        choices=(WEEK, AIR, MONTH, NOTHING),
        slips=(
            word(WEEK, "That is for a plain portland mix. What does the polymer have to do before it helps?"),
            word(MONTH, "28 days is the age at which strength is quoted. Does a polymer form its film in the wet?"),
            word(NOTHING, "The heat peaks in the first day, and a thin piece never feels warm. Is it strong?"),
        ),
        hints=("A polymer works as a film.", "A film forms by drying, and not in the cold."),
    ),
    EVENING,
)  # fmt: skip
