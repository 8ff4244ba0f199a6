"""Lesson 04: clocks, signs and tools."""

from math import pi

from shop_calc.lesson.moves.waits import SEVENTY_F_C, TEN_F_K, THIRD_LONGER, third_longer_h
from shop_calc.lesson.question import Number, Question
from shop_calc.lesson.reasoning.lesson_sheets import SIGN
from shop_calc.lesson.slips import Slip, by, radius_for_diameter, sign_flipped, word
from shop_calc.science.loads import GRAVITY_M_S2
from shop_calc.science.setting import INITIAL_SET_PA, age_at_resistance_h
from shop_calc.trade.timeline.rod import rod_resistance_pa
from shop_calc.trade.working import Step

_EXPONENT = 7.0


def _tens(temp_c):
    return (SEVENTY_F_C - temp_c) / TEN_F_K


def _colder_steps(wait_h, temp_c):
    steps = _tens(temp_c)
    return (
        Step("steps_of_ten", "n", "(T_70 - T) / d",
             (("T_70", SEVENTY_F_C, "C"), ("T", temp_c, "C"), ("d", TEN_F_K, "delta_K")),
             steps, "-", "derived", "arithmetic", "steps of 10 °F below 70 °F"),
        Step("wait_h", "t", "t_70 * k**n", (("t_70", wait_h, "h"), ("k", THIRD_LONGER, "-"), ("n", steps, "-")),
             third_longer_h(wait_h, temp_c), "h", "read",
             "Concrete Construction: one third longer for each 10 °F colder", "wait in the cold shop"),
    )  # fmt: skip


def _rod_steps(mass_kg, diameter_m):
    area, force = pi * diameter_m**2 / 4.0, mass_kg * GRAVITY_M_S2
    return (
        Step("rod_area_m2", "A", "pi_ * d**2 / 4", (("pi_", pi, "-"), ("d", diameter_m, "m")), area, "m2", "derived",
             "geometry", "area of the flat end"),
        Step("force_n", "F", "m * g", (("m", mass_kg, "kg"), ("g", GRAVITY_M_S2, "m/s2")), force, "N",
             "derived", "mechanics", "force on the scale: a pound pushes with one pound of force (lbf)"),
        Step("resistance_pa", "PR", "F / A", (("F", force, "N"), ("A", area, "m2")),
             float(rod_resistance_pa(mass_kg, diameter_m)), "Pa", "derived", "ASTM C403/C403M: force over area",
             "penetration resistance"),
    )  # fmt: skip


def age_of_h(age_h, now_pa, wanted_pa):
    """Age at which a mortar reaches a resistance, from its age at another one.

    Parameters
    ----------
    age_h : float
        Equivalent age now [h].
    now_pa, wanted_pa : float
        Resistance now, and the one waited for [Pa].

    Returns
    -------
    float
        Equivalent age then [h].

    Examples
    --------
    >>> f"{age_of_h(2.1, 20.0, 60.0):.5g}"
    '2.4569'

    References
    ----------
    Power law of ASTM C403/C403M with the exponent of data/defaults.csv.
    """
    initial_h = age_h * (INITIAL_SET_PA / now_pa) ** (1.0 / _EXPONENT)
    return float(age_at_resistance_h(wanted_pa, initial_h, _EXPONENT))


def _age_steps(age_h, now_pa, wanted_pa):
    ratio = wanted_pa / now_pa
    return (
        Step("stiffer_ratio", "r", "PR_2 / PR_1", (("PR_2", wanted_pa, "Pa"), ("PR_1", now_pa, "Pa")), ratio, "-",
             "derived", "arithmetic", "how many times stiffer"),
        Step("wanted_age_h", "t_2", "t_1 * r**(1 / b)", (("t_1", age_h, "h"), ("r", ratio, "-"), ("b", _EXPONENT, "-")),
             age_of_h(age_h, now_pa, wanted_pa), "h", "derived", "power law of penetration resistance", "age then"),
    )  # fmt: skip


def both_layers_h(loads, interval_h, age_h):
    """Hours after the first water at which the last load has reached an age.

    Parameters
    ----------
    loads : float
        Number of loads [-].
    interval_h : float
        From one load's water to the next [h].
    age_h : float
        Age that is waited for, each load from its own water [h].

    Returns
    -------
    float
        Hours after the first water [h].

    Examples
    --------
    >>> f"{both_layers_h(4, 1 / 3, 2.4):.5g}"
    '3.4'

    References
    ----------
    Common practice, no source: the slower of the two layers decides.
    """
    return (loads - 1) * interval_h + age_h


def _loads_steps(loads, interval_h, age_h):
    lag = (loads - 1) * interval_h
    return (
        Step("lag_h", "s", "(n - 1) * i", (("n", loads, "-"), ("i", interval_h, "h")), lag, "h", "derived",
             "counting gaps", "water of the last load, after the first"),
        Step("both_h", "t", "s + a", (("s", lag, "h"), ("a", age_h, "h")), both_layers_h(loads, interval_h, age_h),
             "h", "derived", "the slower layer decides", "both layers old enough"),
    )  # fmt: skip


def halving_off(first_h, warm_h):
    """How much later than a table the rule of half for each 20 °F puts the set at 90 °F.

    Parameters
    ----------
    first_h, warm_h : float
        The table at 70 °F and at 90 °F [h].

    Returns
    -------
    float
        Share of the table's own number, positive when the rule is late [fraction].

    Examples
    --------
    >>> halving_off(6.0, 160 / 60)
    0.125

    References
    ----------
    Rule: NFBA newsletter, October 2020, after ACI 305 and 306. Table: Penn State CE 584.
    """
    return first_h / 2.0 / warm_h - 1.0


def _halving_steps(first_h, warm_h):
    return (
        Step("rule_h", "t", "t_70 / 2", (("t_70", first_h, "h"),), first_h / 2.0, "h", "read",
             "NFBA newsletter, October 2020, after ACI 305 and 306", "the rule at 90 °F"),
        Step("off_share", "d", "t / t_90 - 1", (("t", first_h / 2.0, "h"), ("t_90", warm_h, "h")),
             halving_off(first_h, warm_h), "-", "derived", "arithmetic", "rule against table"),
    )  # fmt: skip


READY = "a thumb barely marks it and comes away clean"
DEEP, DULL, BAG = "a thumb sinks in half an inch", "the shine has gone", "four hours have passed since the water"
REST = "after about 20 minutes, when the base stays still as the form is nudged"
AT_ONCE, FIRM = "at once, wet on wet", "after 3 hours, when the base is firm"
MORNING = "the next morning, on a scratched base"
COVER = "press below the skin, float again, shade it and keep a cover on between passes"
STEEL, SPRINKLE = "take the steel, it is dull", "sprinkle water and trowel it in"
DUST = "dust dry cement on it and trowel"

QUESTIONS = (
    Question(
        "colder",
        "In a shop at 70 °F a thumb sinks a quarter inch after {wait_h}. Tomorrow shop, sand and water are all at "
        "{temp_c}. By the rule of a third longer for every 10 °F colder: after how many hours will it be?",
        third_longer_h,
        "duration",
        "h",
        numbers=(Number("wait_h", "h", 3, 2.5, 4, 0.25), Number("temp_c", "F", 50, 45, 55, 5)),
        slips=(
            by(lambda wait_h, temp_c: wait_h * (1 + _tens(temp_c) / 3), "thirds of the first wait added",
               "The second step of 10 °F is a third longer than what? Take it on the wait you have by then."),
            by(lambda wait_h, temp_c: wait_h * THIRD_LONGER, "one step only",
               "How many steps of 10 °F is it from 70 °F?"),
            by(lambda wait_h, temp_c: wait_h / THIRD_LONGER ** _tens(temp_c), "the wrong way",
               "Does mortar set faster or slower in the cold?"),
        ),
        hints=("Go down ten degrees at a time.", "Each step multiplies the wait you have by 4/3."),
        tolerance=0.01,
        working=_colder_steps,
    ),
    Question(
        "ready",
        "Four people look at the same face. Which of them may take the steel trowel?",
        lambda: READY,
        "choice",
        choices=(DULL, DEEP, READY, BAG),
        slips=(
            word(DULL, "Wind and sun dry a skin over jelly. What does your thumb find below it?"),
            word(DEEP, "An eighth to a quarter inch is where sides and floats begin, and steel wants less than that. "
                 "What would a blade close in?"),
            word(BAG, "Whose hours are on the bag: those of this mix, in this room?"),
        ),
        hints=("Three of the four signs can be there over a soft base.",
               "Steel closes the skin. What must have left by then?"),
    ),
    Question(
        "rod",
        "A rod of {diameter_m} diameter, end cut flat, goes into the cup. With the cup taken off, the scale shows "
        "{mass_kg}. How stiff is the mortar?",
        lambda mass_kg, diameter_m: float(rod_resistance_pa(mass_kg, diameter_m)),
        "pressure",
        "psi",
        numbers=(Number("mass_kg", "lb", 3, 1, 7, 0.5), Number("diameter_m", "in", 0.25, 0.25, 0.25)),
        slips=(
            radius_for_diameter("diameter_m", "Half across, squared, times pi: is a quarter inch half across?"),
            by(lambda mass_kg, diameter_m: mass_kg * GRAVITY_M_S2 / diameter_m**2, "a square rod",
               "The end of the rod is round. How much smaller is a circle than the square about it?"),
        ),
        hints=("Pounds over square inches.", "The area of the end is pi times the diameter squared over 4."),
        working=_rod_steps,
    ),
    Question(
        "age",
        "At an age of {age_h} the rod reads {now_pa}. The resistance grows with the power 7 of the age. At what age "
        "does it reach {wanted_pa}, where the first steel may start?",
        age_of_h,
        "duration",
        "h",
        numbers=(
            Number("age_h", "h", 2.1, 1.8, 2.6, 0.1),
            Number("now_pa", "psi", 20, 12, 30, 2),
            Number("wanted_pa", "psi", 60, 60, 60),
        ),
        slips=(
            by(lambda age_h, now_pa, wanted_pa: age_h * wanted_pa / now_pa, "as if it grew evenly",
               "Three times stiffer does not take three times as long: a tenth more age already doubles it."),
            by(lambda age_h, now_pa, wanted_pa: age_h * (now_pa / wanted_pa) ** (1 / _EXPONENT), "ratio upside down",
               "Is it stiffer later or earlier? Which of the two numbers goes on top?"),
            by(lambda age_h, now_pa, wanted_pa: age_h * (1 + (wanted_pa / now_pa - 1) / _EXPONENT), "divided by seven",
               "The seventh root is not a seventh of it."),
        ),
        hints=("How many times stiffer must it get?",
               "Take the seventh root of that, in Python ** (1 / 7), and multiply the age by it."),
        tolerance=0.01,
        working=_age_steps,
    ),
    Question(
        "gap",
        "The base is packed, the shop is at 70 °F. When does the face go on?",
        lambda: REST,
        "choice",
        choices=(AT_ONCE, REST, FIRM, MORNING),
        slips=(
            word(AT_ONCE, "Wet on wet bonds, but what happens to a quarter inch of face on a base that still moves?"),
            word(FIRM, "A base without a thumb print gives the face nothing to knit into. What is that joint called?"),
            word(MORNING, "A scratch coat is another method, with a bonding layer. What holds these two together?"),
        ),
        hints=("There is a too early and a too late.", "Nudge the form and watch the base."),
    ),
    Question(
        "dull",
        "It is 88 °F with a breeze. Forty minutes after floating the face has turned dull; under a light thumb the "
        "skin moves like a sheet on jelly. What now?",
        lambda: COVER,
        "choice",
        choices=(STEEL, SPRINKLE, COVER, DUST),
        slips=(
            word(STEEL, "What is under the skin that you would close?"),
            word(SPRINKLE, "Where does that water go? It makes a skin weaker than what lies below, and it crazes."),
            word(DUST, "Dry cement on a wet face makes a second, weaker skin that dusts and crazes."),
        ),
        hints=("The skin has dried, it has not set.", "Stop the drying and open the skin again."),
    ),
    Question(
        "halving",
        "A table of set times gives {first_h} at 70 °F and {warm_h} at 90 °F. A rule says: half the time "
        "for 20 °F warmer. By what share of the table's own time is the rule late at 90 °F?",
        halving_off,
        "fraction",
        "%",
        numbers=(Number("first_h", "min", 360, 340, 420, 20), Number("warm_h", "min", 160, 120, 165, 5)),
        slips=(
            sign_flipped("Late means that the rule gives more minutes than the table. Which sign is that?"),
            by(lambda first_h, warm_h: 1 - warm_h / (first_h / 2), "share of the rule",
               "A share of what? The question asks for a share of the table's time."),
            by(lambda first_h, warm_h: (first_h / 2 - warm_h) / first_h, "share of the time at 70 °F",
               "You divided by the time at 70 °F. Which time is meant?"),
            Slip("halved twice", lambda answer, n: n["first_h"] / 4 / n["warm_h"] - 1,
                 "From 70 to 90 °F is one step of 20 °F."),
        ),
        hints=("What does the rule give at 90 °F?", "Rule over table, less one."),
        working=_halving_steps,
    ),
    Question(
        "loads",
        "A long top takes {loads} loads, water into the first at 08:00 and into the next ones every {interval_h}. The "
        "face share comes from the last. The sides may come off when base and face have both reached an age of "
        "{age_h}. How many hours after 08:00 is that?",
        both_layers_h,
        "duration",
        "h",
        numbers=(
            Number("loads", "-", 4, 3, 6),
            Number("interval_h", "min", 20, 15, 30, 5),
            Number("age_h", "h", 2.4, 2.2, 2.8, 0.1),
        ),
        slips=(
            by(lambda loads, interval_h, age_h: loads * interval_h + age_h, "gaps counted as loads",
               "Count the gaps between the loads on your fingers."),
            by(lambda loads, interval_h, age_h: age_h, "clock of the first load",
               "Which load went into the face, and when did its water go in?"),
            by(lambda loads, interval_h, age_h: (loads - 1) * interval_h / 2 + age_h, "the mean of the loads",
               "Both layers must be old enough. Which one is the slower?"),
        ),
        hints=("Every load has a clock of its own.", "When does the water of the last load go in?"),
        working=_loads_steps,
    ),
    SIGN,
)  # fmt: skip
