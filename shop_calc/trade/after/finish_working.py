"""The working of polishing and sealing, line by line."""

from shop_calc import defaults
from shop_calc.trade.after.finish_words import SEALERS
from shop_calc.trade.working import Step


def finish_working(finish, handling):
    """Write the working of a finish.

    Parameters
    ----------
    finish : Finish
        Times and amounts [as its fields].
    handling : Handling
        Strength with the hours [h, Pa].

    Returns
    -------
    tuple of Step
        In the order they follow from one another [as named].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> finish_working(plan.finish, plan.handling)[-1].name
    'sealer_both_m3'

    References
    ----------
    Sources stand in each Step.
    """
    steps = []
    if finish.polish_from_h is not None:
        row = defaults.get("polish_strength_fine")
        steps.append(
            Step("polish_from_h", "t_polish", "by the hour that the strength is there, the morning at the earliest",
                 (("f_polish", finish.polish_strength_pa, "Pa"), ("f_28", handling.strength.likely_pa, "Pa")),
                 finish.polish_from_h, "h", row.mark, row.source, "polishing, hours after the first water")
        )  # fmt: skip
    steps.append(
        Step("finish_area_m2", "A_seal", "by adding top and exposed edges",
             (), finish.area_m2, "m2", "derived", "geometry",
             "area of top and exposed edges")
    )  # fmt: skip
    if finish.choice.sealer == "none":
        return tuple(steps)
    kind, waste = SEALERS[finish.choice.sealer], defaults.si("sealer_waste")
    row = defaults.get(kind.row)
    rest = (("C_seal", finish.coverage_m2_m3, "m2/m3"), ("n_coats", finish.coats, "-"), ("w_seal", waste, "-"))
    if kind.film and finish.choice.coverage_m2_m3 is None:
        solids = finish.choice.solids_fraction
        film = finish.choice.film_m
        solids = defaults.si("sealer_solids") if solids is None else solids
        film = defaults.si("sealer_film") if film is None else film
        steps.append(
            Step("sealer_coverage_m2_m3", "C_seal", "s_solids / d_film",
                 (("s_solids", solids, "-"), ("d_film", film, "m")),
                 finish.coverage_m2_m3, "m2/m3", "derived", "geometry; in US units 1604 times the solids over the mils",
                 "area of one coat")
        )  # fmt: skip
    return (
        *steps,
        Step("seal_from_h", "t_seal", "by the age that is usual for this kind", (), finish.seal_from_h, "h", row.mark,
             row.source, f"{kind.title}: hours after the first water"),
        Step("sealer_m3", "V_seal", "A_seal / C_seal * n_coats * (1 + w_seal)",
             (("A_seal", finish.area_m2, "m2"), *rest), finish.sealer_m3, "m3", "derived", "arithmetic",
             "sealer for top and exposed edges"),
        Step("sealer_both_m3", "V_seal_both", "A_both / C_seal * n_coats * (1 + w_seal)",
             (("A_both", finish.both_m2, "m2"), *rest), finish.sealer_both_m3, "m3", "derived", "arithmetic",
             "sealer for both faces and the exposed edges"),
    )  # fmt: skip
