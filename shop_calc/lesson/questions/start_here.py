"""Lesson 00: two easy questions, to learn how practice works."""

from shop_calc.lesson.question import Number, Question
from shop_calc.lesson.slips import by, word
from shop_calc.trade.shape.plain_volumes import slab_volume_m3
from shop_calc.trade.working import Step

_INCH_M = 0.0254
CUE = "the sign on the surface"
CLOCK = "the clock"
DULL = "the shine: dull means ready"


def tile_m3(side_m, thickness_m):
    """Volume of a square tile.

    Parameters
    ----------
    side_m, thickness_m : float
        Its sizes [m].

    Returns
    -------
    float
        Volume [m3].

    Examples
    --------
    >>> round(tile_m3(0.30480, 0.0381), 9)
    0.003539606

    References
    ----------
    Derived: geometry.
    """
    return slab_volume_m3(side_m, side_m, thickness_m)


def _tile_steps(side_m, thickness_m):
    area, volume = side_m**2, tile_m3(side_m, thickness_m)
    sizes = (("A", area, "m2"), ("T", thickness_m, "m"))
    return (
        Step("area_m2", "A", "s * s", (("s", side_m, "m"),), area, "m2", "derived", "geometry", "area of the tile"),
        Step("volume_m3", "V", "A * T", sizes, volume, "m3", "derived", "geometry", "volume of the tile"),
    )


QUESTIONS = (
    Question(
        "tile",
        "A practice tile is {side_m} by {side_m} and {thickness_m} thick. How much mix does it take?",
        tile_m3,
        "volume",
        "in3",
        numbers=(Number("side_m", "in", 12, 8, 16, 1), Number("thickness_m", "in", 1.5, 1, 2, 0.25)),
        slips=(
            by(lambda side_m, thickness_m: side_m**2 * _INCH_M, "area only",
               "That is how large it is seen from above. How thick is it?"),
            by(lambda side_m, thickness_m: side_m * thickness_m * _INCH_M, "one side only",
               "It has two sides: how many square inches does one see from above?"),
        ),
        hints=("A volume is an area times a thickness.", "Side times side times thickness, all in inches."),
        working=_tile_steps,
    ),
    Question(
        "who_decides",
        "The plan says: sides off about 10:22. At 10:22 your thumb still sinks in deep and the hole closes. "
        "What decides?",
        lambda: CUE,
        "choice",
        choices=(CLOCK, CUE, DULL),
        slips=(
            word(CLOCK, "The clock was worked out the evening before, for a room and a mix as expected. "
                 "Which of the two has seen today's mix?"),
            word(DULL, "Wind dries a skin while it is still soft below. What does your thumb say?"),
        ),
        hints=("The times of a plan are for looking.", "Something you can see or feel allows each tool."),
        reason="The clock was set last night; only the surface knows today's mix, room and water.",
    ),
)  # fmt: skip
