"""Lesson 11: many pours laid side by side: ways of working over thirty days, and a class on one code."""

from collections import Counter
from functools import cache
from itertools import chain

from shop_calc.lesson.moves.pour_moved import MOVABLE, mover, mover_words, moving_mark  # noqa: F401  found here too
from shop_calc.lesson.moves.pour_shown import shown_stages
from shop_calc.lesson.moves.pour_thumb import later_at_bench_h, thumb_force_band_kg  # noqa: F401  likewise
from shop_calc.lesson.pictures.pour_ribbon import PourRibbon
from shop_calc.lesson.said import Said
from shop_calc.lesson.table import table
from shop_calc.trade.rehearsal.acts import act
from shop_calc.trade.rehearsal.bench import begin
from shop_calc.trade.rehearsal.consequences import CONSEQUENCES
from shop_calc.trade.rehearsal.policies import POLICIES, work_through
from shop_calc.trade.rehearsal.replay import diary_text


def ways_of_working(count=30, code="free"):
    """Work many hidden days through in the ways of POLICIES and count the mornings.

    Parameters
    ----------
    count : int
        How many days [-].
    code : str
        What their codes begin with [-].

    Returns
    -------
    Table
        A row a way: mornings with nothing to be seen, and what shows most [-].

    Examples
    --------
    >>> ways_of_working(2).rows[0][0]
    'by the cues'

    References
    ----------
    Computed; the days are drawn from codes.
    """
    mornings = {name: [] for name in POLICIES}
    for number in range(count):
        start, do = begin(f"{code} {number}"), cache(act)  # four of the ways begin alike
        for name, policy in POLICIES.items():
            mornings[name].append({item.key for item in work_through(start, policy, do).kept})
    rows = []
    for name, keys in mornings.items():
        shows = Counter(chain.from_iterable(keys))
        clean = keys.count(set())
        most = sorted(shows.items(), key=lambda row: (-row[1], row[0]))[:2]
        words = "; ".join(f"{CONSEQUENCES[key].title.lower()} on {many}" for key, many in most)
        rows.append((name, f"{clean} of {count}", words or "nothing"))
    return table(("way of working", "nothing shows", "what shows most"), rows)


def class_ribbon(pooled, title="The class"):
    """Draw the decisions of a class over the true windows.

    Parameters
    ----------
    pooled : Pooled
        What `pool` gives [as its fields].
    title : str
        One line over the picture [-].

    Returns
    -------
    PourRibbon
        Ready to be shown [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.pooled import pool
    >>> class_ribbon(pool("oak", ["step away; spread; leave"], weather="mild")).alt[:10]
    'The class.'

    References
    ----------
    Common practice, no source.
    """
    picture = PourRibbon(shown_stages(pooled.stages), shown_stages(pooled.planned), pooled.water_in, pooled.room, title)
    done = [(key, at_h, good) for key, marks in pooled.hours_h.items() for at_h, good in marks]
    picture.update(shown_stages(pooled.stages), done=done)
    return picture


def invented_class(code, weather=None):
    """Make up the diaries of a class, to show what pooling them looks like.

    Parameters
    ----------
    code : str
        The code that everybody had [-].
    weather : str, optional
        As for `begin` [-].

    Returns
    -------
    list of str
        Invented diaries, one a learner [-].

    Examples
    --------
    >>> len(invented_class("oak", "mild"))
    12

    References
    ----------
    Invented for the demonstration.
    """
    start, do = begin(code, weather), cache(act)

    def slower(policy, wait):
        return lambda state: wait if policy(state).startswith("wait") else policy(state)

    ways = [*POLICIES.values(), *(slower(way, "wait 15") for way in POLICIES.values())]
    return [diary_text(work_through(start, way, do)) for way in ways]


def class_words(pooled):
    """Say what a class did with one code.

    Parameters
    ----------
    pooled : Pooled
        What `pool` gives [as its fields].

    Returns
    -------
    Said
        Shown by the notebook [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.pooled import pool
    >>> class_words(pool("oak", ["step away; spread; leave"], weather="mild")).text.splitlines()[0]
    '1 piece on the same hidden day.'

    References
    ----------
    Common practice, no source.
    """
    lines = [f"{pooled.count} piece{'s' if pooled.count > 1 else ''} on the same hidden day."]
    for key, many in pooled.shows.items():
        lines.append(f"{CONSEQUENCES[key].title}: on {many}.")
    return Said("\n".join(lines if pooled.shows else [*lines, "On none of them anything shows."]))
