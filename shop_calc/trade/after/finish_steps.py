"""The steps from the morning to the sealed piece, each with its cue and its caution."""

from dataclasses import dataclass

from shop_calc.trade.after.finish_words import DUST, LIFTING, SEALERS, SLURRY, WET_POWER
from shop_calc.units import show


@dataclass(frozen=True)
class FinishStep:
    """One step after the night.

    Parameters
    ----------
    key, title : str
        Short name and what is done [-].
    from_h : float or None
        Not before, hours after the first water; None when the model does not see it come [h].
    work : str
        How [-].
    cue : str
        The sign that decides [-].
    safety : str
        The caution that belongs to the step [-].

    Examples
    --------
    >>> FinishStep("seal", "Seal", 170.0, "", "the sheet is dry", "gloves").cue
    'the sheet is dry'

    References
    ----------
    Common practice, no source.
    """

    key: str
    title: str
    from_h: float | None
    work: str
    cue: str
    safety: str


def finish_steps(finish, handling):
    """Write the steps of the finish.

    Parameters
    ----------
    finish : Finish
        Times and amounts [as its fields].
    handling : Handling
        Ways to carry [as its fields].

    Returns
    -------
    tuple of FinishStep
        In order [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> [step.key for step in finish_steps(plan.finish, plan.handling)]
    ['move', 'polish', 'dry', 'check', 'seal']

    References
    ----------
    ASTM D4263 for the sheet; the rest common practice, no source.
    """
    first = min((way.earliest_h for way in handling.carries if way.earliest_h is not None), default=None)
    steps = [
        FinishStep(
            "move", "Lift it off the board", first, "only in a way that is free by then, see moving",
            "edges ring hard and take no mark from a fingernail", LIFTING,
        )
    ]  # fmt: skip
    if finish.grits:
        way = "wet" if finish.choice.wet else "dry, under a shroud with a vacuum"
        cautions = (DUST, WET_POWER, SLURRY) if finish.choice.wet else (DUST, WET_POWER)
        steps.append(
            FinishStep(
                "polish", "Polish", finish.polish_from_h,
                f"{way}, grits {', '.join(str(grit) for grit in finish.grits)}: each until the scratches of the one "
                f"before are gone; {show(finish.depth_m, 'length')} in all",
                "try it on a corner of the underside: as long as sand grains come out, wait", " ".join(cautions),
            )
        )  # fmt: skip
    steps.append(
        FinishStep(
            "dry", "Dry it, both faces alike", finish.polish_from_h if finish.grits else first,
            "rinse, wipe, on battens with air all round, out of the sun", "no dark patches left", "",
        )
    )  # fmt: skip
    if finish.choice.sealer == "none":
        return tuple(steps)
    kind = SEALERS[finish.choice.sealer]
    ready = max(finish.seal_from_h, finish.polish_from_h or 0.0)
    if kind.dry:
        steps.append(
            FinishStep(
                "check", "Check the moisture", ready - finish.sheet_h,
                f"tape a clear sheet, 4 mil and about 18 in square, onto the face for {finish.sheet_h:.0f} h or "
                "more; weigh the piece two days running",
                "no water under the sheet, no darker patch, and it has stopped losing weight", "",
            )
        )  # fmt: skip
    steps.append(
        FinishStep(
            "seal", f"Seal: {kind.title}", ready,
            f"{finish.coats:.0f} thin coats, {show(finish.sealer_both_m3, 'liquid')} for both faces and the edges; "
            "try it on a scrap first; the label decides over this plan",
            "dry to the touch is not dry: the sheet and the scale decide" if kind.dry else "the surface is free of "
            "standing water and slurry", kind.safety,
        )
    )  # fmt: skip
    return tuple(steps)
