"""Lesson 10: what a log says, and what it does not."""

from shop_calc.lesson.moves.waits import SEVENTY_F_C, TEN_F_K, THIRD_LONGER
from shop_calc.lesson.question import Number, Question
from shop_calc.lesson.slips import by, word
from shop_calc.trade.working import Step

PROOF = "10:40, one pour has shown it"
NO_PROOF = "11:00 with the old band, one pour is chance"
PART = "a bit before 11:00, with a narrower band, and the thumb decides"
MEAN = "10:50, the middle of the two, with no band"

AT_THERE = "ready at 10:45"
BETWEEN = "ready at some moment between 10:15 and 10:45"
BEFORE = "ready at some moment before 10:45; the first look found nothing"
MIDDLE = "ready at 10:30"

SAME_HOLE = "both; the mortar has become softer"
HOLE_MEAN = "the mean of the two, at 10:45"
NEW_HOLE = "the first one; the second is a new reading, an inch beside"
MORE_WEIGHT = "the second one, it is the later"

WAS_THERE = "first steel there at 11:40: it was ready by then, and nobody knows since when"
CAME_THEN = "first steel came at 11:40"
NOTHING = "nothing, the look was of no use"
GUESSED = "first steel there at 11:00, as the plan had said"

OWN_COLD = "all that it needs: a mortar is a mortar"
NO_COLD = "how fast this mortar is; how much the cold slows it is still the default"
USELESS = "nothing, throw it away"
STRAIGHT = "add to the hours what the last three pours have changed from one to the next"


def colder_h(clock_h, temp_c, next_temp_c):
    """Hours of the clock for the same age in another mortar, by the rule of a third for every 10 °F.

    Parameters
    ----------
    clock_h : float
        Hours it took [h].
    temp_c, next_temp_c : float
        Mean temperature of that mortar, and of the next one [°C].

    Returns
    -------
    float
        Hours it will take [h].

    Examples
    --------
    >>> f"{colder_h(3.0, 18.0, 18.0 - 10.0 / 1.8):.5g}"
    '4'

    References
    ----------
    Concrete Construction, note on accelerating admixtures: one third longer for each 10 °F colder.
    """
    return clock_h * THIRD_LONGER ** ((temp_c - next_temp_c) / TEN_F_K)


def _colder_steps(clock_h, temp_c, next_temp_c):
    steps = (temp_c - next_temp_c) / TEN_F_K
    return (
        Step("steps_of_ten", "n", "(T_1 - T_2) / d",
             (("T_1", temp_c, "C"), ("T_2", next_temp_c, "C"), ("d", TEN_F_K, "delta_K")),
             steps, "-", "derived", "arithmetic", "steps of 10 °F from the one mortar to the other"),
        Step("wait_h", "t_2", "t_1 * k**n", (("t_1", clock_h, "h"), ("k", THIRD_LONGER, "-"), ("n", steps, "-")),
             colder_h(clock_h, temp_c, next_temp_c), "h", "read",
             "Concrete Construction: one third longer for each 10 °F colder", "wait of the next pour"),
    )  # fmt: skip


def mean_late_h(first_h, second_h, third_h, fourth_h, fifth_h):
    """Mean miss of the three pours of one recipe; the other two are of another one.

    Parameters
    ----------
    first_h, second_h, third_h : float
        Misses of the recipe [h].
    fourth_h, fifth_h : float
        Misses of another recipe, left out [h].

    Returns
    -------
    float
        Mean miss [h].

    Examples
    --------
    >>> f"{mean_late_h(0.1, 0.2, 0.3, 1.0, 2.0):.5g}"
    '0.2'

    References
    ----------
    Arithmetic.
    """
    return (first_h + second_h + third_h) / 3


def _mean_steps(first_h, second_h, third_h, fourth_h, fifth_h):
    return (
        Step("mean_late_h", "m", "(a + b + c) / 3",
             (("a", first_h, "h"), ("b", second_h, "h"), ("c", third_h, "h")),
             mean_late_h(first_h, second_h, third_h, fourth_h, fifth_h), "h", "derived", "arithmetic",
             "mean of the pours of this recipe"),
    )  # fmt: skip


def missed_h(plan_h, not_yet_h, there_h):
    """How far a forecast misses a sign that came between two looks.

    Parameters
    ----------
    plan_h : float
        Hour foreseen [h].
    not_yet_h, there_h : float
        Last look without the sign, first look with it [h].

    Returns
    -------
    float
        Nothing inside the gap, else the way to its nearer end [h].

    Examples
    --------
    >>> f"{missed_h(3.0, 2.25, 2.75):.5g}"
    '0.25'

    References
    ----------
    As shop_calc.trade.logbook.calibrate.
    """
    return max(not_yet_h - plan_h, plan_h - there_h, 0.0)


def _missed_steps(plan_h, not_yet_h, there_h):
    return (
        Step("miss_h", "m", "p - s", (("p", plan_h, "h"), ("s", there_h, "h")),
             missed_h(plan_h, not_yet_h, there_h), "h", "derived", "arithmetic",
             "from the nearer end of the gap to the forecast"),
    )  # fmt: skip


QUESTIONS = (
    Question(
        "between",
        "At 10:15 the sign for the sides was not there. At 10:45 it was. What has the log learned?",
        lambda: BETWEEN,
        "choice",
        choices=(AT_THERE, BETWEEN, BEFORE, MIDDLE),
        slips=(
            word(AT_THERE, "Was it not yet there at 10:44?"),
            word(BEFORE, "'Not yet' is a reading too. Which hours does it strike out?"),
            word(MIDDLE, "Why the middle? The two looks say nothing of what lay between them."),
        ),
        hints=("Each of the two looks strikes out some hours.", "One strikes out the early hours, the other the late."),
        reason="A look without the sign rules out every earlier hour; a look with it rules out every later one.",
    ),
    Question(
        "one_pour",
        "The plan said first steel at 11:00, on nine days of ten between 10:20 and 11:55. In your first pour it was "
        "there at 10:40. Same mortar and same room tomorrow: what do you plan with?",
        lambda: PART,
        "choice",
        choices=(PROOF, NO_PROOF, PART, MEAN),
        slips=(
            word(PROOF, "From one pour to the next the same mortar differs by some ten minutes. What would a second "
                 "pour have shown?"),
            word(NO_PROOF, "One look did strike out many of the days that today could have been. Which ones?"),
            word(MEAN, "A middle says where to look, but not from when to when. What do you do with the band?"),
        ),
        hints=("One pour is something, and it is not all.", "What does a look do to the five hundred days?"),
        reason="One pour strikes out days that do not explain it, and leaves the scatter from pour to pour.",
    ),
    Question(
        "clock_or_age",
        "In your log first steel took {clock_h}, with a mortar at {temp_c} on average. The next mortar will be at "
        "{next_temp_c}. By the rule of a third longer for every 10 °F colder: how many hours will it take?",
        colder_h,
        "duration",
        "h",
        numbers=(
            Number("clock_h", "h", 3.0, 2.6, 3.6, 0.2),
            Number("temp_c", "F", 64, 62, 68, 2),
            Number("next_temp_c", "F", 52, 48, 54, 2),
        ),
        slips=(
            by(lambda clock_h, temp_c, next_temp_c: clock_h, "the clock of the log",
               "These hours belong to that mortar. What stays the same from day to day: the hours, or the age?"),
            by(lambda clock_h, temp_c, next_temp_c: colder_h(clock_h, next_temp_c, temp_c), "the wrong way",
               "Does a mortar take longer in the cold, or less long?"),
            by(lambda clock_h, temp_c, next_temp_c: colder_h(clock_h, SEVENTY_F_C, next_temp_c), "counted from 70 °F",
               "The hours in the log were not at 70 °F. From which temperature do you count the steps?"),
        ),
        hints=("How many steps of 10 °F lie between the two mortars?", "Times 4/3 for each step, parts of a step too."),
        tolerance=0.01,
        working=_colder_steps,
    ),
    Question(
        "same_hole",
        "At 10:30 the rod goes into the cup and the scale shows 3 lb. At 11:00 the rod goes into the same hole, and "
        "the scale shows 2.5 lb. What goes into the log?",
        lambda: NEW_HOLE,
        "choice",
        choices=(SAME_HOLE, HOLE_MEAN, NEW_HOLE, MORE_WEIGHT),
        slips=(
            word(SAME_HOLE, "A mortar left alone does not get softer. What stood where the rod went in?"),
            word(HOLE_MEAN, "The mean of a reading and of a hole: what is that a reading of?"),
            word(MORE_WEIGHT, "What had the rod to push aside the second time?"),
        ),
        hints=("What did the first push leave behind?", "Resistance is measured in mortar that nothing has touched."),
        reason="The first push has already broken the mortar there; a reading needs a place of its own.",
    ),
    Question(
        "two_recipes",
        "Five pours opened earlier than planned: three of your own mortar, by {first_h}, {second_h} and {third_h}, and "
        "two of a bag mix, by {fourth_h} and {fifth_h}. By how much is the plan of your own mortar late, on the mean?",
        mean_late_h,
        "duration",
        "min",
        numbers=(
            Number("first_h", "min", 12, 8, 14, 2),
            Number("second_h", "min", 16, 12, 18, 2),
            Number("third_h", "min", 14, 10, 20, 2),
            Number("fourth_h", "min", 42, 40, 50, 2),
            Number("fifth_h", "min", 50, 46, 60, 2),
        ),
        slips=(
            by(lambda **misses: sum(misses.values()) / len(misses),
               "two recipes in one mean", "What does a bag with another cement know of your mortar?"),
            by(lambda first_h, second_h, third_h, fourth_h, fifth_h: (fourth_h + fifth_h) / 2, "the other recipe",
               "For which of the two recipes is the next plan?"),
            by(lambda first_h, second_h, third_h, fourth_h, fifth_h: first_h + second_h + third_h, "a sum for a mean",
               "Can the mean be more than each of them?"),
        ),
        hints=("Which pours are of this mortar?", "Add these, and divide by how many there are."),
        working=_mean_steps,
    ),
    Question(
        "too_late",
        "The first look of the day was at 11:40: the thumb leaves nothing, and the blade rings. What goes into the "
        "log?",
        lambda: WAS_THERE,
        "choice",
        choices=(CAME_THEN, WAS_THERE, NOTHING, GUESSED),
        slips=(
            word(CAME_THEN, "It rings: it has been ready for a while. What do you really know of the hour?"),
            word(NOTHING, "All days on which it would still be soft at 11:40 are struck out. Is that nothing?"),
            word(GUESSED, "What can a log teach the plan that was copied from the plan?"),
        ),
        hints=("Write what was seen, when it was seen.", "There was no look before it that found nothing."),
        reason="A sign that was there at the first look has a latest hour and no earliest one.",
    ),
    Question(
        "missed",
        "The plan foresaw the sides at {plan_h} after the water. The sign was not there at {not_yet_h}, and was there "
        "at {there_h}. By how much did the plan miss, for certain?",
        missed_h,
        "duration",
        "min",
        numbers=(
            Number("plan_h", "h", 3.2, 3.0, 3.4, 0.1),
            Number("not_yet_h", "h", 2.25, 2.25, 2.25),
            Number("there_h", "h", 2.75, 2.75, 2.75),
        ),
        slips=(
            by(lambda plan_h, not_yet_h, there_h: plan_h - (not_yet_h + there_h) / 2, "from the middle of the gap",
               "It may have come just before the second look. What is the least that the plan is off?"),
            by(lambda plan_h, not_yet_h, there_h: plan_h - not_yet_h, "from the look without it",
               "At that look it was not there. Up to which hour can it have come?"),
        ),
        hints=("Anything inside the gap would be no miss at all.", "From the nearer end of the gap to the forecast."),
        working=_missed_steps,
    ),
    Question(
        "summer_log",
        "The log holds three pours, all from one warm week. The next pour is in a shop at 45 °F. What does the log "
        "give the plan?",
        lambda: NO_COLD,
        "choice",
        choices=(OWN_COLD, NO_COLD, USELESS, STRAIGHT),
        slips=(
            word(OWN_COLD, "From which two of these pours could you tell what the cold does?"),
            word(USELESS, "The age at which this mortar turns stiff was measured. Is that lost in the cold?"),
            word(STRAIGHT, "Three pours at one temperature differ by chance. What would you be carrying on?"),
        ),
        hints=("Two things decide the hours: this mortar's age at the sign, and how fast it ages.",
               "Which of the two can be told without a cold pour?"),
        reason="The age at a sign is the mortar's own; how cold slows it shows only once pours span some 14 °F (8 °C).",
    ),
)  # fmt: skip
