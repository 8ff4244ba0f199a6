"""Lesson 09: the sums behind its questions, each with its working."""

from shop_calc.trade.batching.shopping import bags
from shop_calc.trade.shape.plain_volumes import slab_volume_m3
from shop_calc.trade.working import Step


def table_kg(length_m, width_m, thickness_m, density_kg_m3):
    """Mass of a top cast where it stays.

    Parameters
    ----------
    length_m, width_m, thickness_m : float
        Sizes [m].
    density_kg_m3 : float
        Density of the concrete [kg/m3].

    Returns
    -------
    float
        Mass [kg].

    Examples
    --------
    >>> f"{table_kg(2.1336, 1.0668, 0.0508, 2354.71):.2f}"
    '272.27'

    References
    ----------
    Geometry.
    """
    return float(slab_volume_m3(length_m, width_m, thickness_m)) * density_kg_m3


def _table_steps(length_m, width_m, thickness_m, density_kg_m3):
    volume = float(slab_volume_m3(length_m, width_m, thickness_m))
    return (
        Step("volume_m3", "V", "L * W * T", (("L", length_m, "m"), ("W", width_m, "m"), ("T", thickness_m, "m")), volume,
             "m3", "derived", "geometry", "volume of the top"),
        Step("mass_kg", "M", "V * rho", (("V", volume, "m3"), ("rho", density_kg_m3, "kg/m3")),
             table_kg(length_m, width_m, thickness_m, density_kg_m3), "kg", "derived", "geometry", "mass of the top"),
    )  # fmt: skip


def bags_back(bought, volume_m3, bag_yield_m3, allowance_fraction):
    """Whole bags that go back to the shop.

    Parameters
    ----------
    bought : float
        Bags bought [-].
    volume_m3 : float
        Volume to fill [m3].
    bag_yield_m3 : float
        Volume that one bag makes [m3].
    allowance_fraction : float
        Extra that is mixed [fraction].

    Returns
    -------
    float
        Bags never opened [-].

    Examples
    --------
    >>> bags_back(25, 0.1132674, 0.0169901, 0.10)
    17.0

    References
    ----------
    As shop_calc.trade.batching.shopping.
    """
    return float(bought - bags(volume_m3, bag_yield_m3, allowance_fraction).count)


def _bags_back_steps(bought, volume_m3, bag_yield_m3, allowance_fraction):
    made = bags(volume_m3, bag_yield_m3, allowance_fraction)
    sizes = (("V", volume_m3, "m3"), ("a", allowance_fraction, "-"), ("Y", bag_yield_m3, "m3"))
    back = bags_back(bought, volume_m3, bag_yield_m3, allowance_fraction)
    return (
        Step("exact_count", "n", "V * (1 + a) / Y", sizes, made.exact_count, "-", "derived", "arithmetic",
             "the volume with its extra, over the yield of a bag"),
        Step("opened", "N", "by rounding n up to whole bags", (("n", made.exact_count, "-"),), float(made.count), "-",
             "derived", "arithmetic", "bags that are opened"),
        Step("back", "R", "B - N", (("B", bought, "-"), ("N", float(made.count), "-")), back, "-", "derived", "arithmetic",
             "bags that go back"),
    )  # fmt: skip


def before_leaving_h(done_h, loads, interval_h, clean_h):
    """How long before leaving the first water goes in.

    Parameters
    ----------
    done_h : float
        From the water of the face share to the last pass [h].
    loads : float
        Number of loads; the face share comes from the last [-].
    interval_h : float
        From one load's water to the next [h].
    clean_h : float
        Cleaning and covering after the last pass [h].

    Returns
    -------
    float
        Hours [h].

    Examples
    --------
    >>> f"{before_leaving_h(4.1, 3, 1 / 3, 0.5):.5g}"
    '5.2667'

    References
    ----------
    Counting gaps; common practice, no source.
    """
    return (loads - 1) * interval_h + done_h + clean_h


def _leaving_steps(done_h, loads, interval_h, clean_h):
    lag = (loads - 1) * interval_h
    return (
        Step("lag_h", "s", "(n - 1) * i", (("n", loads, "-"), ("i", interval_h, "h")), lag, "h", "derived",
             "counting gaps", "water of the face share, after the first"),
        Step("before_h", "t", "s + d + c", (("s", lag, "h"), ("d", done_h, "h"), ("c", clean_h, "h")),
             before_leaving_h(done_h, loads, interval_h, clean_h), "h", "derived", "arithmetic", "first water to the door"),
    )  # fmt: skip


def waiting_share(work_h, hands, span_h):
    """Share of everybody's time that is waiting.

    Parameters
    ----------
    work_h : float
        Work of one person [h].
    hands : float
        People there all the time [-].
    span_h : float
        From the first water to the last pass [h].

    Returns
    -------
    float
        Share [fraction].

    Examples
    --------
    >>> f"{waiting_share(1.7, 2, 4.25):.5f}"
    '0.80000'

    References
    ----------
    Arithmetic.
    """
    return 1.0 - work_h / (hands * span_h)


def _waiting_steps(work_h, hands, span_h):
    there = hands * span_h
    return (
        Step("there_h", "H", "n * s", (("n", hands, "-"), ("s", span_h, "h")), there, "h", "derived", "arithmetic",
             "person-hours that the day takes"),
        Step("waiting_share", "w", "1 - k / H", (("k", work_h, "h"), ("H", there, "h")),
             waiting_share(work_h, hands, span_h), "-", "derived", "arithmetic", "share that is waiting"),
    )  # fmt: skip


WORKING = {
    "table_weight": _table_steps,
    "last_pass": _leaving_steps,
    "bags_back": _bags_back_steps,
    "waiting": _waiting_steps,
}
