"""Order of addition: what goes in when, and why, with the caution where the step can hurt."""

from dataclasses import dataclass

from shop_calc.trade.mortar.mix_advice import stone_words


@dataclass(frozen=True)
class Addition:
    """One step at the mixer.

    Parameters
    ----------
    number : int
        From 1 [-].
    text : str
        What to do [-].
    why : str
        Why in this order [-].
    caution : str
        What can hurt here; empty when nothing does [-].

    Examples
    --------
    >>> Addition(1, "Weigh everything.", "A jug is wrong by a tenth.").caution
    ''

    References
    ----------
    Common practice, no source.
    """

    number: int
    text: str
    why: str
    caution: str = ""


SILICA = (
    "Dust of cement and sand holds silica: open bags low and slowly, with a respirator on and the air drawn "
    "away "
    "(29 CFR 1926.1153, and your local rules)."
)
CAUSTIC = (
    "Wet mix is caustic, pH 12 to 13, and burns are felt late: gloves, long clothes, glasses. Skin: rinse. "
    "Eyes: rinse "
    "20 minutes and get help."
)


def order_of_addition(mix, water, rest_h, *, face_alone=False):
    """List the steps at the mixer for this mix and this water.

    Not the day's plan: floats, strip and steel follow it.

    Parameters
    ----------
    mix : Mix
        The mix [-].
    water : WaterPlan
        The water plan [-].
    rest_h : float
        Rest after mixing [h].
    face_alone : bool
        True when the face is mixed in loads of its own [-].

    Returns
    -------
    tuple of Addition
        The steps [-].

    Examples
    --------
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> from shop_calc.trade.batching.water import plan_water, temps
    >>> mix = build_mix(recipe("demo mortar"))
    >>> order_of_addition(mix, plan_water(mix, temps(21.111)), 1 / 6)[0].text
    'Weigh everything for this load, and open the bags.'

    References
    ----------
    Common practice, no source. Silica: 29 CFR 1926.1153.
    """
    hot = water.water_temp_c > 35.0 and water.method in ("warmed", "out of reach")
    rows = [
        (
            "Weigh everything for this load, and open the bags.",
            "A jug or a shovel is wrong by a tenth and more.",
            SILICA,
        ),
        _first(mix, water, hot),
        _powder(mix, hot),
        _reducer(mix),
        (
            "Scrape the sides and the bottom down and mix on; add water held back only if it still does not "
            "move.",
            "Dry powder at the wall makes lumps later.",
            CAUSTIC,
        ),
        (
            f"Let it rest {60 * rest_h:.0f} minutes, then mix again without any water.",
            "It stiffens falsely and comes back on remixing.",
            "",
        ),
    ]
    if face_alone:
        rows.append(
            (
                "Cover the load that is all face; no stone goes into it, nothing is set aside from the others.",
                "Stone in the face tears under the trowel, and the cover keeps its water.",
                "",
            )
        )
        if mix.base_lines:
            rows.append(_stone(mix))
    elif mix.base_lines:
        rows.append(
            (
                "Set the face share aside by mass, covered, before any stone goes in.",
                "Stone in the face tears under the trowel, and the cover keeps its water.",
                "",
            )
        )
        rows.append(_stone(mix))
    else:
        rows.append(("Set the face share aside by mass, covered.", "The cover keeps its water.", ""))
    if mix.base_fibres:
        rows.append(
            (
                f"Stir {_names(mix.base_fibres)} into the base if it is still too loose; it should stand "
                "like porridge.",
                "Fibre thickens it and holds it at the form.",
                "",
            )
        )
    if mix.face_fibres:
        glass = any("glass" in fibre.name for fibre in mix.face_fibres)
        rows.append(
            (
                f"Just before the face goes on, stir {_held_out(mix)}{_names(mix.face_fibres)} into the face share.",
                "It thickens the face and holds the surface together under the trowel.",
                "Glass fibre itches and its dust is bad for lungs: gloves and respirator." if glass else "",
            )
        )
    return tuple(Addition(number, *row) for number, row in enumerate(rows, 1))


def _held_out(mix):
    """What wet stone brings is held out of all the mortar; the face share gets its part back."""
    return "its water back, if the weigh sheet says so, and " if mix.stone_water_kg < -1e-9 else ""


def _names(fibres):
    return " and ".join(fibre.name for fibre in fibres)


def _first(mix, water, hot):
    pigment = " and the pigment" if any(line.kind == "pigment" for line in mix.lines) else ""
    if hot:
        sand = any(line.kind == "aggregate" for line in mix.lines)
        where = "onto the sand" if sand else "and let it cool to hand warm before the powder"
        return (
            f"Hot water first, {where}{pigment and ', then the pigment'}; no cement yet.",
            "Hot water never meets cement alone: it stiffens at once.",
            "Hot water scalds.",
        )
    cold = {"chilled": "The chilled water", "ice": "The water with the crushed ice"}.get(
        water.method, "The water"
    )
    return (f"{cold}{pigment} first, less what is held back.", "Colour spreads evenly in water.", "")


def _powder(mix, hot):
    polymer = "the liquid polymer, then " if any(line.kind == "polymer liquid" for line in mix.lines) else ""
    powder = "the bag" if mix.basis == "bag" else "the powder"
    last = " once sand and water are mixed and no longer hot" if hot else ""
    return (
        f"With the mixer turning: {polymer}three quarters of {powder}{last}.",
        "A quarter in hand keeps the mixer from stalling.",
        "Keep hands, sleeves and hair out of a turning mixer; electric tools near water on a ground-fault "
        "breaker.",
    )


def _reducer(mix):
    if any(line.role == "water reducer" for line in mix.lines):
        return (
            "Water reducer in small doses until it flows, then the rest of the powder by and by.",
            "It acts with a delay; all at once is often too much.",
            "",
        )
    return ("The rest of the powder by and by.", "It wets better in small portions.", "")


def _stone(mix):
    extra, which = mix.stone_water_kg > 1e-9, stone_words(mix.base_lines)
    whose = "their" if " and " in which else "its"
    return (
        f"{which[0].upper()}{which[1:]} to the rest" + (f", with {whose} own water." if extra else "."),
        "Dry stone drinks from the mortar." if extra else "They stretch the mortar.",
        "A full bucket is heavy: half loads. Two people lift less than twice what one does.",
    )
