"""How much a page has to hold, so that a job with many words is set a little smaller instead of running over.

Heights in pixels of 1/96 in, as a browser sets them on letter paper, the shorter of the two. An estimate, on the safe
side; only the size of the type hangs on it.
"""

import math

PAGE = 992.0  # letter less its margins, and a little less than that
SCALES = (1.0, 0.97, 0.94, 0.9, 0.86, 0.82)  # smaller than that cannot be read at arm's length
MIX_SCALES = (*SCALES, 0.78)  # beside the mixer it is read from nearer, and a third page gets lost
SHRINKS = 1.25  # smaller type also needs fewer lines


def page_scales(facts):
    """Choose how large each page is set.

    Parameters
    ----------
    facts : dict
        What `sheet_facts` gives [-].

    Returns
    -------
    tuple of float
        Scale of the first and of the second page, 1 when there is room [-].

    Examples
    --------
    >>> from shop_calc.lesson.sheet.facts import sheet_facts
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> page_scales(sheet_facts(make_plan(read_job(demo_job("garden_bench_top")))))
    (1.0, 1.0)

    References
    ----------
    Judgement: heights measured on the demo jobs.
    """
    return tuple(
        next((scale for scale in scales if sum(parts.values()) * scale**SHRINKS <= PAGE), scales[-1])
        for parts, scales in ((parts_of_the_day(facts), SCALES), (parts_of_the_mix(facts), MIX_SCALES))
    )


def lines(text, per_line):
    """Count the lines that a text takes.

    Parameters
    ----------
    text : str
        The text [-].
    per_line : int
        Letters that stand on a line [-].

    Returns
    -------
    int
        At least one [-].

    Examples
    --------
    >>> lines("a" * 81, 40)
    3

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    return max(math.ceil(len(text) / per_line), 1)


def parts_of_the_day(facts):
    """Estimate how tall the parts of the first page are.

    Parameters
    ----------
    facts : dict
        What `sheet_facts` gives [-].

    Returns
    -------
    dict of str to float
        Heights by part [px].

    Examples
    --------
    >>> from shop_calc.lesson.sheet.facts import sheet_facts
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> parts = parts_of_the_day(sheet_facts(make_plan(read_job(demo_job("garden_bench_top")))))
    >>> parts["ruler"]
    61.0

    References
    ----------
    Judgement: heights measured on the demo jobs.
    """
    piece, weather, stops = facts["piece"], facts["weather"], facts["advice"]["stop"]
    beside = [piece["faced"] + piece["walls"] + " " * 50, piece["lift"] + " " * 110]
    beside += ["x" * 60] * bool(piece["narrow"]) + [drop["edge"] + " " * 54 for drop in piece["drops"]]
    sketch = float(piece["sketch"].split('height="', 1)[1].split('"', 1)[0])
    return {
        "top": _top(piece),
        "stop": 26.0 + 18.5 * sum(lines(text, 80) for text in stops) if stops else 0.0,
        "piece": max(66.0 + 16.5 * sum(lines(text, 64) for text in beside), sketch + 8.0),
        "holes": sum(15.5 * lines(hole["name"] + " " * 98, 115) for hole in piece["holes"]),
        "todo": _todo(facts["advice"]["day"]),
        "air": 3.0 + 13.3 * lines("x" * 34 * (len(weather["rooms"]) + 1), 130),
        "day": 28.0 + sum(7.5 + 15.4 * max(3.0, _stage_lines(stage)) for stage in facts["day"]["stages"]),
        "ruler": 61.0,
        "three": 162.0 if weather["reach"] == "over" else 150.0,
    }  # fmt: skip


def parts_of_the_mix(facts):
    """Estimate how tall the parts of the second page are.

    Parameters
    ----------
    facts : dict
        What `sheet_facts` gives [-].

    Returns
    -------
    dict of str to float
        Heights by part [px].

    Examples
    --------
    >>> from shop_calc.lesson.sheet.facts import sheet_facts
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> parts = parts_of_the_mix(sheet_facts(make_plan(read_job(demo_job("garden_bench_top")))))
    >>> parts["notes"]
    38.0

    References
    ----------
    Judgement: heights measured on the demo jobs.
    """
    weigh, after, cut, sources = facts["weigh"], facts["after"], facts["cut"], facts["sources"]
    name, loads = facts["piece"]["name"], len(weigh["loads"])
    cuts = [f"{row['name']} {row['note']}" + " " * 36 for row in cut["rows"]] + ["x"] * (1 + len(cut["also"]))
    rows = [after["cover"] + after["cover_work"] + " " * 25, after["after"]]
    rows.append(" " * 75 + " ".join(row["ways"] for row in after["carries"]))
    rows += [step["title"] + step["work"] + step["cue"] for step in after["steps"]]
    small = sources["assumed"] + sources["key"] + [row["sources"] for row in sources["sources"]]
    return {
        "top": 36.0 if len(name) < 40 else 44.0,
        "mixhead": 26.0 if len(weigh["water"]) < 70 else 47.0,
        "todo": _todo(facts["advice"]["mix"]),
        "weigh": _table(weigh),
        "log": 4.0 + 20.0 * math.ceil(loads / (2 if loads < 3 else 3)),
        "cutbuy": 24.0 + 14.2 * math.ceil(sum(lines(text, 72) for text in cuts) / 2),
        "after": 22.0 + sum(4.5 + 12.8 * lines(text, 112) for text in rows)
        + (13.0 * lines(" ".join(facts["advice"]["after"]), 140) if facts["advice"]["after"] else 0.0),
        "notes": 38.0,
        "print": 22.0 + 9.6 * lines("; ".join(small) + " " * 200, 232),
    }  # fmt: skip


def _stage_lines(stage):
    return 1 + lines(stage["cue"], 47) + (0.85 * lines(stage["safety"], 54) if stage["safety"] else 0)


def _table(weigh):
    """Height of the weigh table: each step is as tall as its words or its rows, whichever is more."""
    columns = weigh["columns"]
    step_pt = float(columns["step"])
    taken_pt = sum(float(wide) + float(columns["mass"]) for wide in columns["ticks"]) + float(columns["buy"])
    names_pt = 564.0 - step_pt - taken_pt  # on letter; a4 is narrower and taller
    height = 24.0
    for step in weigh["steps"]:
        wide_pt = step_pt - 8.0 if step["rows"] else step_pt + names_pt
        words = 5.0 + 12.8 * lines(step["text"] + step["caution"] + " " * 4, max(int(wide_pt / 3.75), 12))
        rows = [lines(f"{step['layer']} {row['name']}", max(int(names_pt / 5.0), 8)) for row in step["rows"]] or [1]
        height += max(words, sum(max(4.0 + 15.5 * count, 23.5) for count in rows))
    return height


def _todo(texts):
    if not texts:
        return 0.0
    if len(texts) == 1:
        return 9.0 + 14.0 * lines(texts[0], 128)
    return 8.0 + 14.0 * math.ceil(sum(lines(text, 64) for text in texts) / 2)


def _top(piece):
    size, name = piece["size"], piece["name"]
    if size in ("short", "middle"):
        return 42.0
    return 14.0 + (20.0 * lines(name, 36) if size == "wide" else 17.0 * lines(name, 38))
