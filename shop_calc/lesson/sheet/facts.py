"""All that the sheet prints of one plan: every number on it comes from here, as a string."""

from shop_calc.lesson.sheet.after_facts import advice_facts, after_facts
from shop_calc.lesson.sheet.day_facts import day_facts, ruler_facts, weather_facts
from shop_calc.lesson.sheet.piece_facts import piece_facts
from shop_calc.lesson.sheet.source_facts import source_facts
from shop_calc.lesson.sheet.weigh_facts import buy_facts, cut_facts, weigh_facts


def sheet_facts(plan):
    """Collect what the sheet prints.

    Not for further arithmetic: all of it is rounded text.

    Parameters
    ----------
    plan : Plan
        The plan [SI].

    Returns
    -------
    dict
        Sections of strings, in the order of the page [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> list(sheet_facts(make_plan(read_job(demo_job("garden_bench_top")))))[:3]
    ['piece', 'advice', 'day']

    References
    ----------
    Common practice, no source.
    """
    return {
        "piece": piece_facts(plan),
        "advice": advice_facts(plan),
        "day": day_facts(plan),
        "ruler": ruler_facts(plan.day),
        "weather": weather_facts(plan),
        "weigh": weigh_facts(plan),
        "buy": buy_facts(plan),
        "cut": cut_facts(plan),
        "after": after_facts(plan),
        "sources": source_facts(plan),
    }


def strings(facts):
    """Walk through all strings of the facts, drawings left out.

    Parameters
    ----------
    facts : dict, list or str
        What `sheet_facts` gives, or a part of it [-].

    Returns
    -------
    list of str
        Every string once for each place [-].

    Examples
    --------
    >>> strings({"a": ["1 kg", {"b": "<svg>2</svg>"}]})
    ['1 kg']

    References
    ----------
    Common practice, no source.
    """
    if isinstance(facts, str):
        return [] if facts.startswith("<svg") else [facts]
    if isinstance(facts, dict):
        return [text for part in facts.values() for text in strings(part)]
    return [text for part in facts for text in strings(part)] if isinstance(facts, list) else []
