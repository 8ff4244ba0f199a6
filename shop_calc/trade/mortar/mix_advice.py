"""What a mix is refused for, and what it is warned about, each with its number and its source."""

from shop_calc import defaults
from shop_calc.trade.advice import Advice

WHERE = "mix"
W_CM_SEEN = 0.005  # judgement: half of the last digit that a recipe gives; less is no news
SLACK = 1e-9  # a limit met exactly is met, whatever binary fractions make of it


def mix_advice(mix):
    """Refuse what cannot work and say what needs care.

    Not a judgement of strength: direction only, no figures that nobody measured.

    Parameters
    ----------
    mix : Mix
        The mix [-].

    Returns
    -------
    tuple of Advice
        Warnings and notes, the gravest first [-].

    Raises
    ------
    ValueError
        When the mortar does not fill the voids of the stone, or pigment is above the limit of ASTM C979.

    Examples
    --------
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> lean = build_mix(recipe("demo mortar"), stone_ratio=1.5, coarse_sand_ratio=0.7)
    >>> [each.level for each in mix_advice(lean) if "phi" in each.reason]
    ['act']

    References
    ----------
    Marks and sources stand in each Advice and in data/defaults.csv.
    """
    _refuse_phi(mix)
    _refuse_pigment(mix)
    found = [
        *_stone(mix),
        *_water(mix),
        *_retarder(mix),
        *_pigment(mix),
        *_fibres(mix),
        *_density(mix),
        *_cure(mix),
    ]
    order = {"stop": 0, "act": 1, "note": 2}
    return tuple(sorted(found, key=lambda each: order[each.level]))


def _row(level, text, reason, default_name="", mark="", source=""):
    if default_name:
        row = defaults.get(default_name)
        mark, source = row.mark, row.source
    return Advice(level, WHERE, text, reason, mark or "practice", source or "common practice, no source")


def stone_words(lines):
    """Name what stretches the base: stone, coarse sand, or both.

    Parameters
    ----------
    lines : sequence of MixLine
        Lines of the base, or some of them [-].

    Returns
    -------
    str
        Words for the middle of a sentence, stone first [-].

    Examples
    --------
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> stone_words(build_mix(recipe("demo mortar"), stone_ratio=1.0).base_lines)
    'stone'

    References
    ----------
    Common practice, no source.
    """
    sand = [line for line in lines if "sand" in line.name]
    return " and ".join(["stone"] * (len(lines) > len(sand)) + ["coarse sand"] * bool(sand))


def _percent(share, digits=1):
    return f"{100.0 * share:.{digits}f} %"


def _span(low, high, digits=2):
    return f"{low:.{digits}f}" if abs(high - low) < SLACK else f"{low:.{digits}f} to {high:.{digits}f}"


def _refuse_phi(mix):
    least = mix.void_fraction + defaults.si("phi_margin")
    if mix.base_lines and mix.phi < least - SLACK:
        raise ValueError(
            f"mortar share of the base, phi: {mix.phi:.2f} given by so much stone and coarse sand; it must "
            "be at "
            f"least {least:.2f}, the voids of the stone {mix.void_fraction:.2f} and 0.05 more. Take less "
            "stone"
        )


def _refuse_pigment(mix):
    limit = defaults.si("pigment_limit")
    if mix.pigment_share[0] > limit + SLACK:
        of = "cement in the bag" if mix.basis == "bag" else "binder"
        raise ValueError(
            f"pigment: {_span(*(100 * share for share in mix.pigment_share[::2]), digits=1)} % of the {of} "
            "given; it "
            f"must be at most {_percent(limit, 0)} of the binder (ASTM C979). Is it a percent of the bag or "
            "the mix?"
        )


def _stone(mix):
    if not mix.base_lines:
        return
    warn = defaults.si("phi_warn")
    if mix.phi < warn - SLACK:
        yield _row(
            "act",
            "Take less stone, or pack and vibrate the base with great care.",
            f"Mortar is {_percent(mix.phi, 0)} of the base (phi {mix.phi:.2f}); below {warn:.2f} it is "
            "harsh and leaves "
            "holes along the form.",
            "phi_warn",
        )
    water = mix.stone_water_kg
    dry = stone_words([line for line in mix.base_lines if line.free_water_kg < 0])
    wet = stone_words([line for line in mix.base_lines if line.free_water_kg > 0])
    both = " and " in dry
    if water > SLACK:
        yield _row(
            "act" if mix.w_cm - mix.w_cm_stone_left_dry >= W_CM_SEEN else "note",
            f"Give the dry {dry} {'their' if both else 'its'} own water with "
            f"{'the stone' if both else 'it'}, or wet {'them' if both else 'it'} the day before.",
            f"{'They drink' if both else 'It drinks'} {_percent(water / mix.total_water_kg)} of the water of the "
            f"mix; left out, w/cm falls from {mix.w_cm:.3f} to {mix.w_cm_stone_left_dry:.3f} and the base stiffens in "
            "the bucket.",
            mark="derived",
            source="absorption on oven-dry mass, conservation of mass",
        )
    elif water < -SLACK:
        yield _row(
            "act",
            f"Better let the {wet} dry until the surface is dull; otherwise hold the water of it out of the mixing "
            "water as the weigh sheet says.",
            f"Wet {wet} brings {_percent(-water / mix.total_water_kg)} of the water of the mix; not held "
            "out, w/cm of "
            f"the base climbs from {mix.w_cm:.3f} to {mix.w_cm_stone_left_wet:.3f}.",
            mark="derived",
            source="moisture on oven-dry mass, conservation of mass",
        )


def _water(mix):
    low, high = defaults.si("w_cm_low"), defaults.si("w_cm_high")
    span = _span(mix.w_cm_low, mix.w_cm_high)
    if mix.basis == "bag":
        yield _row(
            "note",
            "Ask the maker of the bag how much cement is in it, and never add water beyond the label.",
            f"The label does not say; with {_percent(mix.cement_share[0], 0)} to "
            f"{_percent(mix.cement_share[2], 0)} "
            f"cement w/cm is {span}.",
            "bag_cement_share",
        )
    if mix.w_cm_low > high + SLACK:
        yield _row(
            "act" if mix.basis == "binder" else "note",
            "Take less water and more water reducer.",
            f"w/cm {span}; practice for tops is {low:.2f} to {high:.2f}. More water is weaker, paler, more "
            "porous, "
            "shrinks and curls more. How much more nobody can say without a test.",
            "w_cm_high",
        )
    elif mix.w_cm_high < low - SLACK:
        yield _row(
            "note",
            "Expect a stiff mix: water reducer in small doses, no more water than the recipe.",
            f"w/cm {span}; practice for tops is {low:.2f} to {high:.2f}.",
            "w_cm_low",
        )


def _retarder(mix):
    sugar = sum(line.mass_kg for line in mix.lines if line.role == "retarder")
    if not sugar:
        return
    shares = sorted(sugar / share for share in mix.cement_share)
    warn, stop = defaults.si("retarder_warn"), defaults.si("retarder_stop")
    span = _span(100 * shares[0], 100 * shares[-1])
    if shares[-1] > warn + SLACK:
        grave = shares[-1] >= stop - SLACK
        yield _row(
            "stop" if grave else "act",
            "Weigh the retarder again: it is a percent of the cement, not of the bag.",
            f"{span} % of the cement. Around 0.05 % is some 4 h later; around 0.2 % is days, and above 1 % "
            "it never "
            "hardens properly.",
            "retarder_stop" if grave else "retarder_warn",
        )
    else:
        yield _row(
            "note",
            "Try the retarder in a cup first; every cement answers differently.",
            f"{span} % of the cement; every time of the day's plan moves later and the plan does not know "
            "by how much.",
            "retarder_warn",
        )


def _pigment(mix):
    warn, limit = defaults.si("pigment_warn"), defaults.si("pigment_limit")
    low, likely, high = mix.pigment_share
    if high > warn + SLACK:
        yield _row(
            "act",
            "Take less pigment, or make a sample first.",
            f"{_span(100 * low, 100 * high, 1)} % of the binder; above {_percent(warn, 0)} it adds little "
            "colour and "
            f"takes water, and more than {_percent(limit, 0)} is not allowed by ASTM C979.",
            "pigment_limit" if high > limit else "pigment_warn",
        )
    elif 0 < likely < 0.01:
        yield _row(
            "note",
            "Expect a pale colour.",
            f"{_percent(likely, 2)} pigment of the binder; below about 1 % it looks washed out.",
        )


def _fibres(mix):
    for layer, fibres in (("face", mix.face_fibres), ("base", mix.base_fibres)):
        for fibre in fibres:
            few = fibre.per_layer_kg < defaults.si("structural_fibre")
            text = f"Count {fibre.name} in the {layer} as crack control only."
            reason = f"{_percent(fibre.per_layer_kg, 2)} of the mass of the {layer}"
            reason += "; so little carries no load." if few else "; it is never counted in bending here."
            yield _row("note", text, reason, "structural_fibre")


def _density(mix):
    low, high = defaults.si("wet_density_sanity_low"), defaults.si("wet_density_sanity_high")
    for name, density in (("mortar", mix.mortar_density_kg_m3), ("base", mix.base_density_kg_m3)):
        if not low <= density <= high:
            yield _row(
                "act",
                f"Look for a slip in the amounts of the {name}.",
                f"Its density comes out at {density:.0f} kg/m3; fresh mixes of this kind are {low:.0f} to "
                f"{high:.0f}.",
                "wet_density_sanity_high",
            )


def _cure(mix):
    polymer = defaults.si("polymer_air_cure")
    if mix.polymer_solids_share >= polymer - SLACK:
        yield _row(
            "note",
            "Keep it dry and warm after the first night: the polymer film must dry.",
            f"Polymer solids are {_percent(mix.polymer_solids_share)} of the binder, at or above "
            f"{_percent(polymer, 0)}.",
            "polymer_air_cure",
        )
    if mix.has_silica_fume:
        yield _row(
            "note",
            "Cover it early and cure it moist: silica fume bleeds little and its surface dries first.",
            "The recipe has silica fume.",
            mark="read",
            source="UFGS 03300A",
        )
    if mix.is_white or mix.is_pigmented:
        yield _row(
            "note",
            "Clean tools, no plastic touching the face, and light late passes: this colour shows every mark.",
            "The recipe is " + ("white" if mix.is_white else "pigmented") + ".",
        )
