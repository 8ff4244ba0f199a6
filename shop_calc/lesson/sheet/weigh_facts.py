"""What the sheet says of the mix: one table in the order of the work, with a tick for every load."""

import re

from shop_calc.lesson.sheet.printed import both, clean, clock
from shop_calc.lesson.sheet.words import SHORT_CAUTION
from shop_calc.trade.after.cost import FREE, SEALER
from shop_calc.units import show

DIGIT, DEGREES, MITRED = re.compile(r"\d"), re.compile(r"(?:\.0)? degrees\b"), re.compile(r"(?:both ends are|\bis) mitred to\b")
_FIRST = ("water", "ice", "pigment")
# Widths of columns in points, and how many ticks stand beside one another.
PAGE_PT, NAMES_PT, LEAST_STEP_PT, WIDEST_STEP_PT = 549, 106, 110, 214
TALLY_PT, MOST_BOXES = 70, 6  # beyond so many loads strokes are made on a line
MASS_PT, TICK_PT, TICK_TWICE_PT, TOTAL_PT, PACKS_PT, MOST_TICKS = 86, 13, 24, 40, 46, 6
_MORTAR = ("weigh", "first", "powder", "reducer", "scrape", "rest", "aside")


def weigh_facts(plan):
    """Print the weigh table: the steps at the mixer, what each takes, how much for which load.

    Parameters
    ----------
    plan : Plan
        The plan [SI].

    Returns
    -------
    dict
        "groups" of loads that are weighed alike, "steps" with their rows, and the water [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> facts = weigh_facts(make_plan(read_job(demo_job("large_l_four_loads"))))
    >>> [group["numbers"] for group in facts["groups"]]
    [['1', '2', '3', '4'], ['5']]

    References
    ----------
    Common practice, no source.
    """
    groups = _alike(plan.batch.loads)
    water = plan.batch.water
    return {
        "groups": [_group(group) for group in groups],
        "twice": len(plan.batch.loads) == 1,
        "totals": len(plan.batch.loads) > 1,
        "columns": _columns(groups, bool(plan.cost.lines)),
        "steps": _steps(plan, groups),
        "loads": [
            {"number": str(load.number), "water": clock(plan.day, load.water_in_offset_h)} for load in plan.batch.loads
        ],
        "water": water.words,
        "comes": both(water.mix_temp_c, "temperature"),
        "base_comes": both(water.base_temp_c, "temperature"),
        "recipe": clean(plan.mix.recipe_name),
    }


def _columns(groups, packs):
    """Widths of the columns in points; what is left over belongs to the names."""
    count = sum(len(group) for group in groups)
    tick = TICK_TWICE_PT if count == 1 else TICK_PT
    ticks = [(min(len(group), MOST_TICKS) * tick if len(group) <= MOST_BOXES else TALLY_PT) + 5 for group in groups]
    buy = (TOTAL_PT if count > 1 else 0) + (PACKS_PT if packs or count == 1 else 0)
    taken = NAMES_PT + len(groups) * MASS_PT + sum(ticks) + buy
    step = max(min(PAGE_PT - taken, WIDEST_STEP_PT), LEAST_STEP_PT)
    return {"step": str(step), "mass": str(MASS_PT), "ticks": [str(wide) for wide in ticks], "buy": str(buy)}


def _alike(loads):
    """Loads with the same sheet together, in order."""
    groups = {}
    for load in loads:
        key = tuple((line.ingredient, line.stage, round(line.mass_kg, 9)) for line in load.lines)
        groups.setdefault(key, []).append(load)
    return list(groups.values())


def _group(loads):
    first = loads[0]
    return {
        "name": ("base and face" if first.face_kg and first.base_kg else "base" if first.base_kg else "face"),
        "numbers": [str(load.number) for load in loads],
        "loads": str(first.number) if len(loads) == 1 else f"{first.number} to {loads[-1].number}"
        if len(loads) > MOST_BOXES else " ".join(str(load.number) for load in loads),
        "ticks": len(loads) <= MOST_BOXES,
    }


def _steps(plan, groups):
    mix = plan.mix
    buy = {row["name"]: row for row in buy_facts(plan)}
    kinds = [*_MORTAR]
    kinds += ["stone"] if mix.base_lines else []
    kinds += ["base fibre"] if mix.base_fibres else []
    kinds += ["face fibre"] if mix.face_fibres else []
    steps = [
        {
            "kind": kind,
            "number": str(addition.number),
            "text": addition.text,
            "caution": SHORT_CAUTION[kind] if addition.caution else "",
            "layer": {"stone": "base", "base fibre": "base", "face fibre": "face", "aside": "face"}.get(kind, ""),
            "rows": [],
        }
        for kind, addition in zip(kinds, plan.batch.order, strict=True)
    ]
    by_kind = {step["kind"]: step for step in steps}
    for name, kind, stage in dict.fromkeys(
        (line.ingredient, line.kind, line.stage) for group in groups for line in group[0].lines
    ):
        found = [_line(group[0], name, stage) for group in groups]
        step = by_kind[_step_of(kind, stage, by_kind)]
        first = ["" if line is None else both(line.first_kg, "mass") for line in found]
        if any(line is not None and line.first_kg > 0 for line in found):
            step["rows"].append({"name": clean(name), "masses": first, "buy": buy.pop(clean(name), None)})
        if any(line is not None and line.held_back_kg for line in found):
            held = ["" if line is None else both(line.held_back_kg, "mass") for line in found]
            by_kind["scrape"]["rows"].append(
                {"name": "water held back, at most", "masses": held, "buy": None}
            )
    aside = [both(g[0].set_aside_kg, "mass") if g[0].face_kg > 0 and g[0].base_kg > 0 else "" for g in groups]
    if plan.batch.face_alone:
        alone = [both(g[0].face_kg, "mass") if g[0].face_kg > 0 else "" for g in groups]
        by_kind["aside"]["rows"].insert(0, {"name": "all of it, covered", "masses": alone, "buy": None})
    elif any(aside):
        by_kind["aside"]["rows"].insert(0, {"name": "set aside, covered", "masses": aside, "buy": None})
    return steps


def _line(load, name, stage):
    return next((line for line in load.lines if line.ingredient == name and line.stage == stage), None)


def _step_of(kind, stage, steps):
    if stage == "mix":
        return "first" if kind in _FIRST else "reducer" if kind == "liquid admixture" else "powder"
    if stage == "base":
        return "base fibre" if kind == "fibre" and "base fibre" in steps else "stone" if "stone" in steps else "aside"
    return "face fibre" if "face fibre" in steps else "aside"


def buy_facts(plan):
    """Print what to buy: totals, and packs where the job says what a pack holds.

    Parameters
    ----------
    plan : Plan
        The plan [SI].

    Returns
    -------
    list of dict
        "name", "need" in both systems and "packs", None where no pack is known [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> buy_facts(make_plan(read_job(demo_job("garden_bench_top"))))[0]["packs"]
    {'us': '1 × 94 lb', 'si': '42.6 kg'}

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    priced = {line.what: line for line in plan.cost.lines}
    rows = []
    for each in plan.batch.ingredients:
        if each.name in FREE:
            continue
        line = priced.pop(each.name, None)
        need = both(line.needed, line.kind) if line else both(each.total_kg, "mass")
        rows.append({"name": clean(each.name), "need": need, "packs": _packs(line)})
    if plan.batch.water.ice_share:
        ice_kg = sum(line.mass_kg for load in plan.batch.loads for line in load.lines if line.kind == "ice")
        rows.append({"name": "ice", "need": both(ice_kg, "mass"), "packs": _packs(priced.pop("ice", None))})
    sealer = priced.pop(SEALER, None)
    if plan.finish.sealer_both_m3 > 0:
        rows.append(
            {"name": "sealer", "need": both(plan.finish.sealer_both_m3, "liquid"), "packs": _packs(sealer)}
        )
    for line in priced.values():
        if line.kind == "number":
            rows.append({"name": clean(line.what), "need": {"us": f"{line.needed:g}", "si": ""}, "packs": None})
    return rows


def _packs(line):
    if line is None:
        return None
    return {"us": f"{line.count} × {show(line.pack, line.kind, 'us')}", "si": show(line.pack, line.kind, "si")}


def cut_facts(plan):
    """Print the cut list of the form.

    Parameters
    ----------
    plan : Plan
        The plan [SI].

    Returns
    -------
    dict
        "rows" with count, name and sizes, "also" what else is bought, "caulk" and "screws" [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> cut_facts(make_plan(read_job(demo_job("garden_bench_top"))))["rows"][0]["count"]
    '2'

    References
    ----------
    Common practice, no source.
    """
    form = plan.form
    return {
        "also": _also(plan),
        "rows": [
            {
                "count": str(row.count), "name": clean(row.name), "length": both(row.length_m, "length"),
                "width": both(row.width_m, "length"), "note": clean(note),
            }
            for row, note in zip(form.rows, _said_once(form.rows), strict=True)
        ],
        "caulk": show(form.caulk_length_m, "length"),
        "screws": str(form.screw_count),
    }  # fmt: skip


def _said_once(rows):
    """Notes of the cut list: what all of three or more rows of a kind say stands on the first, but for numbers."""
    kinds = {}
    for row in rows:
        kinds.setdefault(row.name.split(":")[0], []).append(row.note.split("; "))
    shared = {  # of two rows nothing is won
        kind: [part for part in notes[0] if not DIGIT.search(part) and all(part in note for note in notes)]
        for kind, notes in kinds.items()
        if len(notes) > 2
    }
    said = set()
    for row in rows:
        kind, parts = row.name.split(":")[0], row.note.split("; ")
        own = [part for part in parts if part not in shared.get(kind, ())]
        if any(shared.get(kind, ())) and kind not in said:
            own.append(f"all of them {'; '.join(shared[kind])}")
        said.add(kind)
        yield MITRED.sub("mitred", DEGREES.sub("°", "; ".join(own)))


def _also(plan):
    """What is bought and not weighed into the mix."""
    weighed = {clean(line.ingredient) for load in plan.batch.loads for line in load.lines}
    return [row for row in buy_facts(plan) if row["name"] not in weighed]
