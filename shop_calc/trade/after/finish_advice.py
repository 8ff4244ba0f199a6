"""What is said about polishing and sealing."""

from shop_calc import defaults
from shop_calc.trade.advice import Advice
from shop_calc.trade.after.finish_words import DUST, ETCH, HAZE, SEALERS
from shop_calc.trade.after.polish_seal import FIBRE_WORDS
from shop_calc.units import show


def finish_advice(finish, layers, mix, cure, narrow_m):
    """Say what to mind about polishing and sealing.

    Parameters
    ----------
    finish : Finish
        Times and amounts [as its fields].
    layers : Layers
        The layers [m].
    mix : Mix
        The mix, for its fibre [kg].
    cure : Cure
        The night [-].
    narrow_m : float
        Shorter side of the piece [m].

    Returns
    -------
    tuple of Advice
        In the order of the work [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> [line.where for line in finish_advice(plan.finish, plan.layers, plan.mix, plan.cure, 0.381)]
    ['seal', 'seal', 'seal']

    References
    ----------
    Marks and sources stand in each Advice.
    """
    lines = []
    depth = show(finish.depth_m, "length")
    if finish.grits:
        face = layers.face_thickness_m
        if finish.depth_m >= face * (1 - 1e-9):
            lines.append(
                Advice(
                    "act", "polish", "Polish less deep, or make the face thicker: this goes through the face into "
                    "the base.",
                    f"{depth} of {show(face, 'length')} of face; stone of the base comes out in patches.", "derived",
                    "geometry",
                )
            )  # fmt: skip
        elif finish.depth_m > face / 2:
            lines.append(
                Advice(
                    "note", "polish", "Expect thin spots: more than half of the face is ground away.",
                    f"{depth} of {show(face, 'length')}; the face is never of one thickness.", "judgement", "ours",
                )
            )  # fmt: skip
        if finish.fibre in ("some", "worst"):
            names = " and ".join(fibre.name for fibre in mix.face_fibres)
            lines.append(
                Advice(
                    "act", "polish",
                    f"Polish less deep than {show(defaults.si('fibre_safe_depth'), 'length')}, or leave fibre out of "
                    "the face, or take the finest PVA fibre: it shows least.",
                    f"At {depth} {FIBRE_WORDS[finish.fibre]} ({names}).", "practice", "common practice, no source",
                )
            )  # fmt: skip
        if not finish.choice.wet:
            lines.append(
                Advice(
                    "act", "polish", f"Better polish wet. {DUST}",
                    "Dry grinding has been measured at 35 to 55 times the exposure that is recommended.", "unnamed",
                    "exposure measurements as read; limits: 29 CFR 1926.1153 and 1910.1053",
                )
            )  # fmt: skip
    if finish.choice.sealer == "none":
        return tuple(lines)
    kind = SEALERS[finish.choice.sealer]
    low, usual, high = (age / 24.0 for age in defaults.si_band(kind.row))
    lines.append(
        Advice(
            "note", "seal", f"Seal with {'an' if kind.title[0] in 'aeiou' else 'a'} {kind.title} when it is dry and "
            f"about {usual:.0f} days old; {low:.0f} to {high:.0f} days are quoted.",
            "28 days is no law for every sealer, and dry to the touch is not dry. "
            + kind.works[0].upper() + kind.works[1:]
            + f"; {kind.damp}. The cover of the first night: {cure.picked.sealing}.",
            defaults.get(kind.row).mark, defaults.get(kind.row).source,
        )
    )  # fmt: skip
    if kind.film:
        lines.append(Advice("note", "seal", HAZE, "Moisture cannot leave through a film.", "practice",
                            "common practice, no source"))  # fmt: skip
    side = defaults.si("sheet_side")
    if kind.dry and narrow_m < side:
        lines.append(
            Advice(
                "note", "seal", "Cut the taped sheet as wide as the piece allows.",
                f"The test wants about {show(side, 'length')} square; this piece is {show(narrow_m, 'length')} wide.",
                "read",
                "ASTM D4263",
            )
        )  # fmt: skip
    lines.append(Advice("note", "seal", ETCH, "Acids dissolve cement paste, under most sealers too.", "practice",
                        "common practice, no source"))  # fmt: skip
    return tuple(lines)
