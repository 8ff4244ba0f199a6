"""Lesson 11: what the bench says, and what an act at the wrong moment does."""

from shop_calc.lesson.question import Number, Question
from shop_calc.lesson.slips import by, word
from shop_calc.trade.rehearsal.harm_of_water import SKIN_M
from shop_calc.trade.timeline.rod import print_resistance_pa
from shop_calc.trade.working import Step

_QUARTER_M = 0.00635  # by definition of the inch
_PRESS = "press a thumb through the skin, and wait for what it says"
_STEEL = "take the steel: dull is ready"
_WET = "sprinkle a little water, so that it can be worked again"
_STIR = "turn it over again, without water, and use it"
_WATER = "add a cup of water to the bucket"
_AWAY = "throw it away, it has set"
_TENT = "hold a cover off the face between the passes, and float a dull skin open"
_FLAT = "lay plastic flat on the face"
_FAN = "let it dry: a dry skin carries the trowel sooner"
_DAY = (
    "spread the face", "screed", "first float", "sides off", "patch the edges", "first steel", "last steel", "cover",
)  # fmt: skip
_SOON = (*_DAY[:3], "first steel", *_DAY[3:5], *_DAY[6:])
_FORM_LAST = (*_DAY[:3], *_DAY[5:7], *_DAY[3:5], "cover")


def print_pa(depth_m):
    """Give the resistance of a thumb print.

    Parameters
    ----------
    depth_m : float
        Depth of the print [m].

    Returns
    -------
    float
        Penetration resistance [Pa].

    Examples
    --------
    >>> f"{print_pa(0.00635):.6g}"
    '137895'

    References
    ----------
    As shop_calc.trade.timeline.rod.print_resistance_pa.
    """
    return float(print_resistance_pa(depth_m))


def _print_steps(depth_m):
    known = (("PR_q", print_pa(_QUARTER_M), "Pa"), ("q", _QUARTER_M, "m"), ("d", depth_m, "m"))
    return (
        Step("print_resistance_pa", "PR", "PR_q * q / d", known, print_pa(depth_m), "Pa", "judgement",
             "shop_calc.trade.timeline.rod: one thumb, one force", "resistance under the thumb"),
    )  # fmt: skip


def missed_fraction(window_h, looks_h):
    """Give the share of days on which no look falls into a window.

    Not for somebody who looks more often as the time comes near.

    Parameters
    ----------
    window_h : float
        How long the window is open [h].
    looks_h : float
        Time from look to look [h].

    Returns
    -------
    float
        Share of days, 0 when the looks are closer than the window is long [-].

    Examples
    --------
    >>> f"{missed_fraction(22 / 60, 0.5):.6f}"
    '0.266667'

    References
    ----------
    Derived: the window may begin at any moment between two looks.
    """
    return max(1.0 - window_h / looks_h, 0.0)


def _missed_steps(window_h, looks_h):
    known = (("w", window_h, "h"), ("L", looks_h, "h"))
    return (
        Step("missed_fraction", "p", "1 - w / L", known, missed_fraction(window_h, looks_h), "fraction", "derived",
             "the window may begin at any moment between two looks", "days on which it is missed"),
    )  # fmt: skip


def wetted_ratio(w_cm_ratio, sprinkled_kg_m2, held_kg_m2):
    """Give the w/cm of a skin into which water was worked.

    Parameters
    ----------
    w_cm_ratio : float
        Water over cementitious material of the mortar [-].
    sprinkled_kg_m2 : float
        Water sprinkled [kg/m2].
    held_kg_m2 : float
        Water that the skin held [kg/m2].

    Returns
    -------
    float
        Water over cementitious material of the skin [-].

    Examples
    --------
    >>> f"{wetted_ratio(0.33, 0.1, 0.29):.6f}"
    '0.443793'

    References
    ----------
    Derived: the cementitious material of the skin stays what it was.
    """
    return w_cm_ratio * (1.0 + sprinkled_kg_m2 / held_kg_m2)


def _wetted_steps(w_cm_ratio, sprinkled_kg_m2, held_kg_m2):
    more = sprinkled_kg_m2 / held_kg_m2
    masses = (("S", sprinkled_kg_m2, "kg/m2"), ("H", held_kg_m2, "kg/m2"))
    after = wetted_ratio(w_cm_ratio, sprinkled_kg_m2, held_kg_m2)
    return (
        Step("more_water_ratio", "m", "S / H", masses, more, "-", "derived", f"a skin {1000 * SKIN_M:g} mm deep",
             "water added over the water it held"),
        Step("wetted_w_cm", "r_2", "r_1 * (1 + m)", (("r_1", w_cm_ratio, "-"), ("m", more, "-")), after, "-",
             "derived", "cementitious material unchanged", "w/cm of the skin"),
    )  # fmt: skip


def dull_after_h(free_water_kg_m2, rate_kg_m2_h):
    """Give the time until a face that nobody works turns dull.

    Parameters
    ----------
    free_water_kg_m2 : float
        Water it can lose before its skin dries [kg/m2].
    rate_kg_m2_h : float
        Evaporation [kg/m2/h].

    Returns
    -------
    float
        Time [h].

    Examples
    --------
    >>> dull_after_h(0.25, 0.5)
    0.5

    References
    ----------
    Derived.
    """
    return free_water_kg_m2 / rate_kg_m2_h


def _dull_steps(free_water_kg_m2, rate_kg_m2_h):
    known = (("w_0", free_water_kg_m2, "kg/m2"), ("W", rate_kg_m2_h, "kg/m2/h"))
    return (
        Step("dull_after_h", "t", "w_0 / W", known, dull_after_h(free_water_kg_m2, rate_kg_m2_h), "h", "derived",
             "water over rate", "time until it is dull"),
    )  # fmt: skip


QUESTIONS = (
    Question(
        "dull",
        "Forty minutes after the float a breeze has taken the shine; the face is dull and dry to the fingertips. "
        "What now?",
        lambda: _PRESS,
        "choice",
        choices=(_STEEL, _PRESS, _WET),
        slips=(
            word(_STEEL, "The second pour did just that. What did the thumb find under the skin?"),
            word(_WET, "It looks better at once. What does the upper millimetre hold afterwards?"),
        ),
        hints=(
            "What does wind dry: the skin, or what lies below it?",
            "One sign reaches below the skin.",
        ),
    ),
    Question(
        "print",
        "Your thumb sinks a quarter inch at 20 psi. Pressed alike, it now sinks {depth_m}. What is the resistance?",
        print_pa,
        "pressure",
        "psi",
        numbers=(Number("depth_m", "in", 0.375, 0.125, 0.5, 0.0625),),
        slips=(
            by(lambda depth_m: print_pa(_QUARTER_M) * depth_m / _QUARTER_M, "ratio upside down",
               "A deeper print: is the face stiffer or softer than at a quarter inch?"),
            by(lambda depth_m: print_pa(_QUARTER_M) * (_QUARTER_M / depth_m) ** 2, "squared",
               "Half the depth is twice the resistance, no more."),
        ),
        hints=(
            "One thumb, one force: resistance times depth stays the same.",
            "20 psi times a quarter inch, over the depth.",
        ),
        working=_print_steps,
    ),
    Question(
        "order",
        "Put the day in order.",
        lambda: _DAY,
        "order",
        choices=("sides off", "first steel", "screed", "spread the face", "cover", "patch the edges", "first float",
                 "last steel"),
        slips=(
            word(_SOON, "At which resistance do the sides come off, and at which does steel begin?"),
            word(_FORM_LAST, "When the last steel leaves its sheen, can an edge still be patched?"),
        ),
        hints=(
            "Which acts want a soft face?",
            "Sides off from 10 psi, steel from 60.",
        ),
    ),
    Question(
        "missed",
        "A window stays open for {window_h}, and somebody looks every {looks_h} without hurrying. On how many of a "
        "hundred days does no look fall into it?",
        missed_fraction,
        "fraction",
        "%",
        numbers=(Number("window_h", "min", 22, 8, 26, 2), Number("looks_h", "min", 30, 30, 60, 15)),
        slips=(
            by(lambda window_h, looks_h: window_h / looks_h, "the other share",
               "That is the share of days on which a look does fall into it."),
            by(lambda window_h, looks_h: window_h / (window_h + looks_h), "of both together",
               "The window may begin anywhere between one look and the next: over what length does it lie?"),
        ),
        hints=(
            "The window may begin at any moment between two looks.",
            "It is caught when it is open at the next look.",
        ),
        working=_missed_steps,
    ),
    Question(
        "sprinkled",
        "The upper millimetre of a face holds {held_kg_m2} of water at w/cm {w_cm_ratio}. A brush flicks "
        "{sprinkled_kg_m2} onto it and the trowel works it in. What is the w/cm of that skin?",
        wetted_ratio,
        "number",
        "-",
        numbers=(
            Number("w_cm_ratio", "-", 0.33, 0.30, 0.38, 0.01),
            Number("sprinkled_kg_m2", "kg/m2", 0.10, 0.05, 0.15, 0.01),
            Number("held_kg_m2", "kg/m2", 0.29, 0.24, 0.32, 0.01),
        ),
        slips=(
            by(lambda w_cm_ratio, sprinkled_kg_m2, held_kg_m2: w_cm_ratio + sprinkled_kg_m2, "water added to a ratio",
               "One is kilograms on a square metre, the other a ratio: what share more water is it?"),
            by(lambda w_cm_ratio, sprinkled_kg_m2, held_kg_m2: sprinkled_kg_m2 / held_kg_m2, "only the share more",
               "That is how much more water it holds. What was its w/cm before?"),
        ),
        hints=(
            "How much more water does the skin hold than before, as a share?",
            "Its cement stays: w/cm grows by that share.",
        ),
        working=_wetted_steps,
    ),
    Question(
        "shine",
        "A face can lose {free_water_kg_m2} before its skin dries, and the air takes {rate_kg_m2_h}. After what "
        "time is it dull when nobody touches it?",
        dull_after_h,
        "duration",
        "min",
        numbers=(
            Number("free_water_kg_m2", "kg/m2", 0.25, 0.15, 0.35, 0.05),
            Number("rate_kg_m2_h", "kg/m2/h", 0.4, 0.2, 0.8, 0.1),
        ),
        slips=(
            by(lambda free_water_kg_m2, rate_kg_m2_h: rate_kg_m2_h / free_water_kg_m2, "upside down",
               "Twice the rate: does it take longer, or less long?"),
            by(lambda free_water_kg_m2, rate_kg_m2_h: free_water_kg_m2 * rate_kg_m2_h, "multiplied",
               "Water over water per hour leaves hours; what do you get by multiplying?"),
        ),
        hints=(
            "How much water, and how much of it leaves in an hour?",
            "Water over rate, then into minutes.",
        ),
        working=_dull_steps,
    ),
    Question(
        "bucket",
        "The base is packed. Under its lid the face share stands stiff in the bucket, twenty minutes after the water. "
        "What do you do?",
        lambda: _STIR,
        "choice",
        choices=(_WATER, _STIR, _AWAY),
        slips=(
            word(_WATER, "It looks the same from above. What does a cup of water do to w/cm?"),
            word(_AWAY, "At twenty minutes and room temperature, how far has the late clock come?"),
        ),
        hints=(
            "Two things stiffen a mortar; one of them goes away again.",
            "What did the first pour do with its bucket?",
        ),
    ),
    Question(
        "red_air",
        "The air can take more than a low-bleed face has to give, and the face is still soft. What helps?",
        lambda: _TENT,
        "choice",
        choices=(_FLAT, _FAN, _TENT),
        slips=(
            word(_FLAT, "It stops the air. What does it do to a face that still takes a print?"),
            word(_FAN, "The skin, yes. And the mortar under it?"),
        ),
        hints=(
            "The air has to be kept off, and nothing may touch the face.",
            "What stood over the face in the second pour?",
        ),
    ),
)  # fmt: skip
