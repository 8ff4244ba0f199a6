"""From a plan to the page: facts into the template, styles into the page, nothing from the network."""

import re
from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from shop_calc.lesson.page import bound
from shop_calc.lesson.sheet import words
from shop_calc.lesson.sheet.drawing import DEFS
from shop_calc.lesson.sheet.facts import sheet_facts
from shop_calc.lesson.sheet.fit import page_scales
from shop_calc.lesson.sheet.printed import clean

PAPERS = {"letter": ("letter", "260mm"), "a4": ("A4", "278mm")}  # name and height of what is printed on
STRONG = ".shop-sheet" * 4 + " "  # says the same, and outweighs the styles of the notebook around it
_FOLDER = Path(__file__).parent
_TAG = re.compile(r"(<[^>]*>)")


@cache
def _template():
    look = {"trim_blocks": True, "lstrip_blocks": True}
    found = Environment(loader=FileSystemLoader(_FOLDER), autoescape=True, undefined=StrictUndefined, **look)
    return found.get_template("page.html.j2")


@cache
def _style(name):
    return (_FOLDER / name).read_text(encoding="utf-8")


def sheet_body(plan, inline=False):
    """Set both pages, without the frame of a document.

    Parameters
    ----------
    plan : Plan
        The plan [SI].
    inline : bool
        True on a page that is not only the sheet's [-].

    Returns
    -------
    str
        HTML; all text of the job is escaped [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> sheet_body(make_plan(read_job(demo_job("garden_bench_top")))).count('<section class="page"')
    2

    References
    ----------
    Common practice, no source.
    """
    facts = sheet_facts(plan)
    inside = _template().render(**facts, words=words, defs=Markup(DEFS), scales=page_scales(facts))
    inside = "".join(part if part.startswith("<") else bound(part) for part in _TAG.split(inside))
    if not inline:
        return f'<div class="shop-sheet" lang="en"><style>{_style("sheet.css")}</style>{inside}</div>'
    style = _style("sheet.css").replace(".shop-sheet ", STRONG)
    return f'<div class="shop-sheet inline" lang="en"><style>{style}</style>{inside}</div>'


def sheet_html(plan, paper=""):
    """Set the shop sheet of a plan as one file that any browser shows and prints.

    Parameters
    ----------
    plan : Plan
        The plan [SI].
    paper : str
        letter, a4, or nothing: then the printer's own paper, both fit [-].

    Returns
    -------
    str
        A whole HTML document that asks for nothing from anywhere [-].

    Raises
    ------
    ValueError
        When the paper is not known.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> sheet_html(make_plan(read_job(demo_job("garden_bench_top")))).splitlines()[0]
    '<!doctype html>'

    References
    ----------
    Common practice, no source.
    """
    if paper and paper not in PAPERS:
        raise ValueError(f"paper: {paper!r} given; it must be one of {', '.join(PAPERS)}")
    size = "@page {{ size: {} portrait; }}\n:root {{ --tall: {}; }}\n".format(*PAPERS[paper]) if paper else ""
    title = Markup.escape(f"{words.TITLE}: {clean(plan.job.name)}")
    head = '<meta charset="utf-8"><meta name="viewport" content="width=device-width">'
    head += f"<title>{title}</title>\n<style>{_style('paper.css')}{size}</style>"
    return f'<!doctype html>\n<html lang="en"><head>{head}</head>\n<body>{sheet_body(plan)}</body></html>\n'
