"""Lesson 08: the sums behind its questions, each with its working."""

from shop_calc.science.loads import spread_rate_m2_m3
from shop_calc.trade.after.cost import cost_line
from shop_calc.trade.after.polish_seal import sealer_volume_m3
from shop_calc.trade.batching.shopping import bags
from shop_calc.trade.working import Step


def covered_m2(volume_m3, solids_fraction, film_m):
    """Area that a volume of a film-forming sealer covers in one coat.

    Parameters
    ----------
    volume_m3 : float
        Sealer [m3].
    solids_fraction : float
        Solids by volume [-].
    film_m : float
        Dry film [m].

    Returns
    -------
    float
        Area [m2].

    Examples
    --------
    >>> f"{covered_m2(0.003785412, 0.25, 0.0000381):.4f}"
    '24.8387'

    References
    ----------
    Derived: geometry.
    """
    return volume_m3 * float(spread_rate_m2_m3(solids_fraction, film_m))


def _covered_steps(volume_m3, solids_fraction, film_m):
    stays = volume_m3 * solids_fraction
    return (
        Step("solids_m3", "V_s", "V * s", (("V", volume_m3, "m3"), ("s", solids_fraction, "-")), stays, "m3",
             "derived", "definition of solids by volume", "what stays when it has dried"),
        Step("covered_m2", "A", "V_s / d", (("V_s", stays, "m3"), ("d", film_m, "m")),
             covered_m2(volume_m3, solids_fraction, film_m), "m2", "derived", "geometry", "area of that thickness"),
    )  # fmt: skip


def pack_cash(needed_kg, pack_kg, price_count):
    """Money for the whole packs of one material.

    Parameters
    ----------
    needed_kg, pack_kg : float
        Needed, and in a pack [kg].
    price_count : float
        Price of a pack [currency].

    Returns
    -------
    float
        Money [currency].

    Examples
    --------
    >>> f"{pack_cash(27.0, 22.67962, 9.0000):.4f}"
    '18.0000'

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    return float(cost_line("sand", "mass", needed_kg, pack_kg, price_count).cash)


def _pack_steps(needed_kg, pack_kg, price_count):
    line = cost_line("sand", "mass", needed_kg, pack_kg, price_count)
    return (
        Step("packs_count", "N", "by rounding needed over pack up",
             (("M", needed_kg, "kg"), ("M_1", pack_kg, "kg")), line.count, "-", "derived", "arithmetic",
             "packs to buy"),
        Step("cash", "P", "N * p", (("N", line.count, "-"), ("p", price_count, "-")), float(line.cash), "-", "given",
             "the price of the question, invented", "cash"),
    )  # fmt: skip


def bags_count(volume_m3, bag_yield_m3, bag_kg):
    """Bags for a volume, by what a bag makes; its mass does not count.

    Parameters
    ----------
    volume_m3, bag_yield_m3 : float
        Volume to fill, and what one bag makes [m3].
    bag_kg : float
        Mass on the label, which only the wrong count uses [kg].

    Returns
    -------
    float
        Whole bags [-].

    Examples
    --------
    >>> f"{bags_count(2.1127196, 0.0084951, 18.1437):.3f}"
    '249.000'

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    return float(bags(volume_m3, bag_yield_m3).count)


def _bags_steps(volume_m3, bag_yield_m3, bag_kg):
    made, sizes = bags(volume_m3, bag_yield_m3), (("V", volume_m3, "m3"), ("Y", bag_yield_m3, "m3"))
    exact = (("n", made.exact_count, "-"),)
    return (
        Step("exact_count", "n", "V / Y", sizes, made.exact_count, "-", "derived", "arithmetic", "volume over yield"),
        Step("bag_count", "N", "by rounding n up to whole bags", exact, float(made.count), "-", "derived", "arithmetic",
             "half a bag is not sold"),
    )  # fmt: skip


def lost_a_day_share(first_kg, second_kg, between_h):
    """Share of its mass that a piece loses in a day.

    Parameters
    ----------
    first_kg, second_kg : float
        Two weighings [kg].
    between_h : float
        Time between them [h].

    Returns
    -------
    float
        Loss in 24 h over the first mass [-].

    Examples
    --------
    >>> f"{lost_a_day_share(50.000, 49.900, 48.0):.6f}"
    '0.001000'

    References
    ----------
    Arithmetic; the limit is constant_mass of data/defaults.csv, judgement.
    """
    return (first_kg - second_kg) / first_kg * 24.0 / between_h


def _lost_steps(first_kg, second_kg, between_h):
    lost = (first_kg - second_kg) / first_kg
    return (
        Step("lost_share", "x", "(M_1 - M_2) / M_1", (("M_1", first_kg, "kg"), ("M_2", second_kg, "kg")), lost, "-",
             "derived", "arithmetic", "share lost between the weighings"),
        Step("a_day_share", "x_d", "x * 24 / t", (("x", lost, "-"), ("t", between_h, "h")),
             lost_a_day_share(first_kg, second_kg, between_h), "-", "derived", "arithmetic", "share lost in a day"),
    )  # fmt: skip


def sealer_for_top_m3(top_m2, edge_m2, coverage_m2_m3, coats_count, waste_fraction):
    """Sealer for both faces of a top and its edges.

    Parameters
    ----------
    top_m2, edge_m2 : float
        One face, and all edges [m2].
    coverage_m2_m3 : float
        Area that a volume covers in one coat [m2/m3].
    coats_count : float
        Coats [-].
    waste_fraction : float
        Extra [-].

    Returns
    -------
    float
        Volume [m3].

    Examples
    --------
    >>> f"{1e6 * sealer_for_top_m3(0.58064, 0.14516, 4000.0, 2, 0.1):.3f}"
    '718.542'

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    return float(sealer_volume_m3(2.0 * top_m2 + edge_m2, coverage_m2_m3, coats_count, waste_fraction))


def _sealer_steps(top_m2, edge_m2, coverage_m2_m3, coats_count, waste_fraction):
    area = 2.0 * top_m2 + edge_m2
    return (
        Step("area_m2", "A", "2 * A_t + A_e", (("A_t", top_m2, "m2"), ("A_e", edge_m2, "m2")), area, "m2", "derived",
             "geometry", "both faces and the edges"),
        Step("sealer_m3", "V", "A / C * n * (1 + w)",
             (("A", area, "m2"), ("C", coverage_m2_m3, "m2/m3"), ("n", coats_count, "-"), ("w", waste_fraction, "-")),
             sealer_for_top_m3(top_m2, edge_m2, coverage_m2_m3, coats_count, waste_fraction), "m3", "derived",
             "arithmetic", "sealer"),
    )  # fmt: skip


WORKING = {
    "covers": _covered_steps,
    "packs": _pack_steps,
    "bags": _bags_steps,
    "lost_a_day": _lost_steps,
    "both_faces": _sealer_steps,
}
