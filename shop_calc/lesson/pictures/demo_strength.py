"""Numbers to look at for the pictures of strength and carrying. All are invented; none comes from a model or a test."""

from datetime import datetime

import numpy as np

from shop_calc.lesson.pictures.carry_ways import CarryLane, CarryView, CarryWays
from shop_calc.lesson.pictures.first_days import FirstDays, StrengthOfFirstDays
from shop_calc.lesson.pictures.open_mixes import OpenMixes, StrengthOfMixes

WATER_IN = datetime(2026, 5, 4, 8, 0)
EDGE = "On edge (two people, in a frame, never left leaning: a slab on edge falls)"
CARRIED = CarryView(
    1.524, 0.381, 0.0381,
    (
        CarryLane("Flat, on a stiff board or frame under all of it", None, False, 0.0, 0.0, True, "from Tue 08:00",
                  "none, while the board does not bend"),
        CarryLane(EDGE, 0.0, True, 0.11e6, 0.33e6, True, "from Tue 08:00", "the lower edge, at the middle"),
        CarryLane("Flat, held a good fifth of the length in from each end", 0.2071, False, 0.19e6, 0.57e6, True,
                  "from Tue 08:00", "the upper face over the holds and the underside at the middle, alike"),
        CarryLane("Flat, held by the ends", 0.0, False, 1.1e6, 3.3e6, False, "not in 28 days",
                  "the underside, at the middle"),
    ),
    1.3e6, 3.1e6,
)  # fmt: skip


def first_days_numbers():
    """Invented first days.

    Returns
    -------
    FirstDays
        What the picture takes [as its fields].
    """
    hours = np.linspace(0.0, 72.0, 145)
    air = np.where(hours < 12, 21.0, 16.0)
    piece = 16.5 + 3.0 * np.exp(-(((hours - 10.0) / 5.0) ** 2))
    days = np.maximum(hours - 2.0, 0.5) / 24.0
    hard = np.where(hours > 5.5, 1.0, np.nan)
    aci, en = 25e6 * days / (4.0 + 0.85 * days), 25e6 * np.exp(0.25 * (1.0 - np.sqrt(28.0 / days)))
    needs = (("on edge", 0.25e6), ("a fifth in", 0.8e6), ("by the ends", 28e6))
    return FirstDays(hours, piece, air, hard * aci, hard * en, needs, 24.0)


def mixes_numbers():
    """Invented mixes.

    Returns
    -------
    OpenMixes
        What the picture takes [as its fields].
    """
    spread = np.cos(7.0 * np.arange(40))  # neither random nor even
    water, other = np.linspace(0.30, 0.85, 40), np.linspace(0.28, 0.70, 40)
    line_water = np.linspace(0.28, 0.88, 30)
    line = lambda ratio: 130e6 * 13.0 ** (-ratio)  # noqa: E731
    age = np.repeat([3.0, 7.0, 14.0, 90.0], 10)
    aci, en = (lambda d: d / (4.0 + 0.85 * d)), (lambda d: np.exp(0.25 * (1.0 - np.sqrt(28.0 / d))))
    ratio, curve = aci(age) * (1.0 + 0.15 * spread), np.geomspace(1.0, 100.0, 40)
    return OpenMixes(
        other, 0.8 * line(other) * (1 + 0.2 * spread), water, line(water) * (1 + 0.12 * spread), line_water,
        line(line_water), age, ratio, curve, aci(curve), en(curve), 0.12 * spread, ratio / aci(age) - 1,
        ratio / en(age) - 1,
    )  # fmt: skip


# name: how to build it, and what to update it with
STRENGTH = {
    "first days": lambda: StrengthOfFirstDays(first_days_numbers(), WATER_IN),
    "ways to carry": lambda: CarryWays(CARRIED),
    "open mixes": lambda: StrengthOfMixes(mixes_numbers()),
}
STRENGTH_UPDATES = {"first days": first_days_numbers, "ways to carry": lambda: CARRIED, "open mixes": mixes_numbers}
