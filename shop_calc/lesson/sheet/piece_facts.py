"""What the sheet says of the piece: sizes in both systems, openings, mass and the lift."""

from shop_calc.lesson.sheet.edge_cut import edge_cut
from shop_calc.lesson.sheet.printed import both, clean, clock, date
from shop_calc.lesson.sheet.sketch import sketch
from shop_calc.trade.after.moving import lift_advice
from shop_calc.trade.shape.drop_words import listed

NAME_SIZES = (("short", 24), ("middle", 31), ("wide", 60))  # type of the title, and the most letters it is for


def piece_facts(plan):
    """Print the piece.

    Parameters
    ----------
    plan : Plan
        The plan [SI].

    Returns
    -------
    dict
        Name, date, sizes as strings, openings, mass, and the two drawings [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> piece_facts(make_plan(read_job(demo_job("garden_bench_top"))))["thickness"]["us"]
    '1 1/2"'

    References
    ----------
    Common practice, no source.
    """
    piece, layers, lift = plan.piece, plan.layers, plan.handling.lift
    names, name = piece.outline.edge_names, clean(plan.job.name)
    return {
        "name": name,
        "size": next((size for size, most in NAME_SIZES if len(name) <= most), "long"),
        "date": f"{date(plan.day.water_in)} {plan.day.water_in.year}",
        "waters": [clock(plan.day, hour) for hour in plan.day.load_offsets_h],
        "thickness": both(layers.thickness_m, "length"),
        "top": both(layers.top_area_m2, "area"),
        "faced": ", ".join(name for name in names if name in piece.exposed) or "none",
        "faced_length": both(layers.exposed_length_m, "length"),
        "walls": ", ".join(name for name in names if name not in piece.exposed),
        "holes": [_hole(number, cutout) for number, cutout in enumerate(piece.cutouts, 1)],
        "drops": _drops(piece.drop),
        "narrow": both(layers.narrowest_width_m, "length") if piece.cutouts else None,
        "narrow_where": layers.narrowest_where,
        "mass": both(lift.mass_kg, "mass"),
        "people": str(lift.people),
        "each": both(lift.each_kg, "mass"),
        "may": both(lift.share_kg, "mass"),
        "index": f"{lift.index_ratio:.1f}",
        "lift": lift_advice(lift)[0].text,
        "sketch": sketch(piece),
        "cut": edge_cut(layers, bool(piece.exposed)),
    }


def _drops(drops):
    """Edges that drop alike are one line."""
    alike = {}
    for drop in drops:
        alike.setdefault((drop.depth_m, drop.width_m), []).append(drop.edge)
    return [
        {"edge": listed(names), "many": len(names) > 1, "depth": both(depth, "length"), "width": both(width, "length")}
        for (depth, width), names in alike.items()
    ]


def _hole(number, cutout):
    length, width = cutout.outline.box_m
    left, front, right, back = cutout.outline.polygon.bounds
    round_one = cutout.outline.shape == "circle"
    return {
        "number": str(number),
        "name": clean(cutout.name),
        "round": round_one,
        "length": both(length, "length"),
        "width": both(width, "length"),
        "faced": "edge faced" if cutout.exposed else "edge not faced",
        "across": both((left + right) / 2, "length"),
        "deep": both((front + back) / 2, "length"),
    }
