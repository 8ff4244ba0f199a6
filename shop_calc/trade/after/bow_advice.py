"""What is said about shrinkage and curl."""

from shop_calc.science import shrinkage, shrinkage_aci
from shop_calc.trade.advice import Advice
from shop_calc.units import show


def bow_advice(bow, layers, mix):
    """Say what to do about a bow.

    Parameters
    ----------
    bow : Bow
        The numbers [as its fields].
    layers : Layers
        The two layers [m].
    mix : Mix
        Mortar and base [kg].

    Returns
    -------
    tuple of Advice
        In the order of the work [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> [line.level for line in bow_advice(plan.bow, plan.layers, plan.mix)]
    ['act', 'note', 'note', 'note']

    References
    ----------
    Marks and sources stand in each Advice.
    """
    one, two = bow.one_face, bow.two_layer
    care = one.level != "low" or two.level != "low"
    lines = [
        Advice(
            "act" if care else "note", "bow",
            "Dry both faces alike: on battens with air all round from the first move on, and seal both faces alike.",
            f"If only the top dries, the piece bows up by some {show(one.likely_m, 'length')} "
            f"({show(one.low_m, 'length')} to {show(one.high_m, 'length')}) along its diagonal, a {one.level} bow. Lying "
            f"on a flat bed its ends stand {show(one.lying_m, 'length')} up.", "derived",
            "plane sections; the share that the top is ahead is our judgement",
        ),
        Advice(
            "note", "bow", "A curled piece is not ruined: wet the dry face, cover it, and it lies down within "
            "hours; then dry both faces alike. Never carry a curled top flat, and never screw it down flat.",
            "Curl from unlike moisture comes and goes. A patio top, 3/4 in thick, dished when dry and lay flat "
            "under wet towels; it broke when it was carried flat.",
            "unnamed", "report from the trade; mechanics of bending",
        ),
    ]  # fmt: skip
    if mix.base_lines:
        lines.append(
            Advice(
                "note", "bow", "Even dried alike, expect the face to pull the ends up by some "
                f"{show(two.likely_m, 'length')}, {show(two.low_m, 'length')} to {show(two.high_m, 'length')}: "
                f"a {two.level} bow.",
                f"The base shrinks {100 * bow.restraint_ratio:.0f} % of what the face does "
                f"({100 * bow.restraint_low_ratio:.0f} to {100 * bow.restraint_high_ratio:.0f} %). Creep is left out "
                "and takes a good part of it back over weeks.",
                "memory", "Pickett 1956 and Timoshenko 1925, from memory",
            )
        )  # fmt: skip
    beyond = ["polymer and fibre", *beyond_codes(layers.thickness_m, bow.rh_fraction)]
    lines.append(
        Advice(
            "note", "bow", "Take shrinkage as a size and no more: extrapolated from ordinary concrete.",
            f"EN 1992 gives {1e6 * bow.en_strain:.0f} and ACI 209 {1e6 * bow.aci_strain:.0f} millionths for the base "
            f"in the end, {1e6 * bow.en_28d_strain:.0f} and {1e6 * bow.aci_28d_strain:.0f} after 28 days; each "
            f"scatters by 30 %, and neither knows {' or '.join(beyond)}.", "read",
            "EN 1992-1-1:2004 B.2(1); ACI 209 from memory",
        )
    )  # fmt: skip
    return tuple(lines)


def beyond_codes(thickness_m, rh_fraction):
    """Name what of a piece and its air lies outside the range of the shrinkage codes.

    Parameters
    ----------
    thickness_m : float
        Thickness, both faces drying [m].
    rh_fraction : float
        Air in which it stands [-].

    Returns
    -------
    tuple of str
        A few words for each range that is left; empty within them [-].

    Examples
    --------
    >>> beyond_codes(0.2, 0.5), beyond_codes(0.2, 0.3)
    ((), ('air of 30 % (EN 1992 starts at 40 %, ACI 209 at 40 %)',))

    References
    ----------
    EN 1992-1-1:2004 Table 3.3 and B.1; ACI 209R-92, from memory.
    """
    found = []
    if shrinkage.notional_size_m(thickness_m, 2) < (least_m := shrinkage.EN_VALID_NOTIONAL_SIZE_M[0]):
        found.append(f"a piece {show(thickness_m, 'length')} thick (EN 1992 starts at {show(least_m, 'length')})")
    return (*found, *too_dry(rh_fraction))


def too_dry(rh_fraction):
    """Say that air is drier than the shrinkage codes know.

    Parameters
    ----------
    rh_fraction : float
        Air in which a piece stands [-].

    Returns
    -------
    tuple of str
        A few words, or nothing [-].

    Examples
    --------
    >>> too_dry(0.4), too_dry(0.2)
    ((), ('air of 20 % (EN 1992 starts at 40 %, ACI 209 at 40 %)',))

    References
    ----------
    EN 1992-1-1:2004 B.1; ACI 209R-92, from memory.
    """
    en, aci = shrinkage.EN_VALID_RH_FRACTION[0], shrinkage_aci.ACI_VALID_RH_FRACTION[0]
    if rh_fraction >= max(en, aci):
        return ()
    return (f"air of {100 * rh_fraction:.0f} % (EN 1992 starts at {100 * en:.0f} %, ACI 209 at {100 * aci:.0f} %)",)
