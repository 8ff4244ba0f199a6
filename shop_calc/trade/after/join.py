"""From the job to everything after the trowel, in one call."""

from dataclasses import replace

from shop_calc.trade.advice import Advice
from shop_calc.trade.after.bow import plan_bow
from shop_calc.trade.after.cost import plan_cost
from shop_calc.trade.after.finish import FinishChoice, plan_finish
from shop_calc.trade.after.handling import Stand, plan_handling
from shop_calc.trade.problems import Collector


def after_the_trowel(job, piece, layers, mix, batch, day, cure):
    """Plan moving, bow, finish and cost of a job.

    Parameters
    ----------
    job : Job
        A checked job [SI].
    piece : Piece
        The piece [m].
    layers : Layers
        Its layers [m].
    mix : Mix
        Mortar and base [kg].
    batch : Batch
        Everything that is mixed [kg].
    day : Day
        The day [h].
    cure : Cure
        The night [as its fields].

    Returns
    -------
    tuple
        Handling, Bow, Finish and Cost [as their fields].

    Raises
    ------
    Problems
        With one line for each entry that does not fit together.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> parts = after_the_trowel(plan.job, plan.piece, plan.layers, plan.mix, plan.batch, plan.day, plan.cure)
    >>> [type(part).__name__ for part in parts]
    ['Handling', 'Bow', 'Finish', 'Cost']

    References
    ----------
    Common practice, no source, for the order of the steps.
    """
    found, place = Collector(), job.place
    bow = finish = cost = handling = None
    tested = None if "mix.strength_28d" in job.assumed else job.mix["strength_28d"]
    with found.catch("place"):
        handling = plan_handling(
            day, cure, piece, layers, mix,
            people=job.day["hands"],
            strength_28d_pa=tested,
            cement=job.mix["cement"],
            stand=Stand(place["on"], place["span"], place["overhang"], place["overhang_at"], place["rails"]),
            density_kg_m3=None if place["weighed"] is None else place["weighed"] / layers.total_m3,
        )  # fmt: skip
    found.raise_if_any()
    with found.catch("place"):
        bow = plan_bow(
            layers, mix, handling.density_kg_m3, rh_fraction=place["humidity"], strength_28d_pa=tested,
            cement=handling.cement,
        )  # fmt: skip
    with found.catch("finish"):
        finish = plan_finish(piece, layers, mix, handling, day, cure, _choice(job))
    if finish is not None:
        with found.catch("cost"):
            cost = plan_cost(
                batch, mix, layers.top_area_m2, finish.sealer_both_m3, job.cost["prices"], job.cost["currency"]
            )
    found.raise_if_any()
    return replace(handling, advice=(*handling.advice, *_curled_and_carried(bow))), bow, finish, cost


def _choice(job):
    entries = job.finish
    from_label = {
        name: None if f"finish.{entry}" in job.assumed else entries[entry]
        for name, entry in (("solids_fraction", "solids"), ("film_m", "film"), ("coverage_m2_m3", "coverage"),
                            ("coats", "coats"))
    }  # fmt: skip
    return FinishChoice(
        polish_depth_m=entries["polish_depth"],
        first_grit=int(entries["first_grit"]),
        last_grit=int(entries["last_grit"]),
        sealer=entries["sealer"],
        wet=entries["polish"] == "wet",
        **from_label,
    )


def _curled_and_carried(bow):
    """A piece that has curled is carried on a board, however strong it is."""
    if bow.one_face.level != "high":
        return ()
    return (
        Advice(
            "act", "move", "If the ends have lifted, wet it and let it lie down first; never carry a curled top "
            "flat by its ends or its middle.",
            "Its dry face is pulled already; its own weight adds to that over a hold, and it cracks across.",
            "unnamed", "report from the trade; mechanics of bending",
        ),
    )  # fmt: skip
