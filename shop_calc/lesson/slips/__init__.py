"""The cabinet of slips: wrong ways that people take again and again, each with the hint that leads back.

Each function makes a `Slip`. Some change the answer itself, some work the right sum with a wrong number
in it. A question puts its own words to the hint where the general ones are too general. `CABINET` holds
them all by name, each with a line in which it happens.
"""

from shop_calc.lesson.slips.cabinet import CABINET, NAMES, Mistake, mistake
from shop_calc.lesson.slips.doses import (
    fahrenheit_for_celsius,
    percent_not_turned,
    percent_of_bag_not_cement,
    plain_mass_average,
    ratio_upside_down,
    waste_forgotten,
    waste_taken_off,
)
from shop_calc.lesson.slips.making import Slip, by, times, with_number, word
from shop_calc.lesson.slips.sizes import (
    added_not_multiplied,
    inch_for_foot,
    left_out,
    one_side_forgotten,
    radius_for_diameter,
    sign_flipped,
    swapped,
)

__all__ = [
    "CABINET",
    "NAMES",
    "Mistake",
    "Slip",
    "added_not_multiplied",
    "by",
    "fahrenheit_for_celsius",
    "inch_for_foot",
    "left_out",
    "mistake",
    "one_side_forgotten",
    "percent_not_turned",
    "percent_of_bag_not_cement",
    "plain_mass_average",
    "radius_for_diameter",
    "ratio_upside_down",
    "sign_flipped",
    "swapped",
    "times",
    "waste_forgotten",
    "waste_taken_off",
    "with_number",
    "word",
]
