"""Lesson 11: a practice pour on the page, its look back as tables and ribbons, one act moved by half an hour."""

from shop_calc.lesson.moves.pour_class import class_ribbon, class_words, invented_class, ways_of_working  # noqa: F401  found here too
from shop_calc.lesson.moves.pour_moved import MOVABLE, mover, mover_words, moving_mark  # noqa: F401  likewise
from shop_calc.lesson.moves.pour_shown import ribbon_of, shown_stages
from shop_calc.lesson.moves.pour_thumb import later_at_bench_h, thumb_force_band_kg  # noqa: F401  likewise
from shop_calc.lesson.pictures.at_the_bench import BenchView
from shop_calc.lesson.said import Said
from shop_calc.lesson.table import table
from shop_calc.trade.rehearsal.account import account, now_words
from shop_calc.trade.rehearsal.damage import damage_words
from shop_calc.trade.rehearsal.debrief import debrief
from shop_calc.trade.rehearsal.reveal import true_stages
from shop_calc.trade.rehearsal.words import ACTS


def steel_allowed_h(state):
    """Say when the first steel was really allowed.

    Parameters
    ----------
    state : State
        A pour [as its fields].

    Returns
    -------
    float
        Hours after the first water [h].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> 2.0 < steel_allowed_h(begin("oak", "mild")) < 6.0
    True

    References
    ----------
    The hidden day of the pour.
    """
    return next(stage for stage in true_stages(state) if stage.key == "first_steel").likely_from_h


def told(state):
    """Say where a pour stands.

    Parameters
    ----------
    state : State
        The pour [as its fields].

    Returns
    -------
    Said
        Shown by the notebook [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> told(begin("oak", "mild")).text.splitlines()[0]
    '08:20, 20 min after the first water.'

    References
    ----------
    Common practice, no source.
    """
    return Said(now_words(state))


def account_of(state):
    """Write the account of a pour for the page.

    Parameters
    ----------
    state : State
        A pour; one that is not over is left as it lies [as its fields].

    Returns
    -------
    Said
        Shown by the notebook [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> from shop_calc.trade.rehearsal.policies import by_cues, work_through
    >>> account_of(work_through(begin("oak", "mild"), by_cues)).text.splitlines()[0]
    'In the morning nothing shows that should not.'

    References
    ----------
    As each consequence says.
    """
    return Said(account(state))


def bench_view(state):
    """Give the picture what the learner knows: own acts, and looks made at this very moment.

    Parameters
    ----------
    state : State
        The pour [as its fields].

    Returns
    -------
    BenchView
        For the picture; nothing hidden is in it [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> from shop_calc.trade.rehearsal.acts import act
    >>> bench_view(act(begin("oak", "mild"), "look edge")).leans
    True

    References
    ----------
    Common practice, no source.
    """
    now = {sign.sign: sign for sign in state.seen if abs(sign.at_h - state.hour_h) < 1e-9}
    thumb, edge, sheen = (now.get(name) for name in ("thumb", "edge", "sheen"))
    return BenchView(
        face_on=state.face_on_h is not None,
        sides_on=len(state.pour.sides) - len(state.off),
        sides=len(state.pour.sides),
        cover=state.cover,
        sheen=sheen.cue if sheen and sheen.cue in ("wet", "fading", "dull", "hard", "polished") else "",
        leans=edge.cue in ("leans", "moves") if edge else None,
        print_m=thumb.print_m if thumb else None,
        deep=thumb is not None and thumb.cue in ("sinks", "deep"),
        skin=thumb is not None and "dry skin" in thumb.words,
    )


def pour_ribbon(state, title=""):
    """Lay the truth of a pour over what was seen and done.

    Parameters
    ----------
    state : State
        The pour [as its fields].
    title : str
        One line over the picture [-].

    Returns
    -------
    PourRibbon
        Ready to be shown [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> from shop_calc.trade.rehearsal.policies import by_cues, work_through
    >>> pour_ribbon(work_through(begin("oak", "mild"), by_cues), "A mild day").alt[:10]
    'A mild day'

    References
    ----------
    Common practice, no source.
    """
    found = debrief(state)
    picture = ribbon_of(found, title or f"The pour {found.state.pour.code}")
    picture.update(shown_stages(found.stages), seen=found.looks, done=found.marks)
    return picture


def half_hours(state):
    """Set every decision beside what half an hour earlier and later would have done.

    Parameters
    ----------
    state : State
        The pour [as its fields].

    Returns
    -------
    Table
        A row a decision [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> from shop_calc.trade.rehearsal.policies import by_cues, work_through
    >>> half_hours(work_through(begin("oak", "mild"), by_cues)).header[3]
    'half an hour earlier'

    References
    ----------
    Computed anew on the same hidden day.
    """
    found = debrief(state)
    rows = []
    for row in found.decisions:
        if row.earlier is None and row.later is None:
            continue
        when = f"{found.state.pour.clock(row.at_h):%H:%M}"
        others = ["–" if other is None else other.words for other in (row.earlier, row.later)]
        rows.append((when, ACTS[row.word].title, damage_words(row.damage), *others))
    return table(("when", "what", "what it did", "half an hour earlier", "half an hour later"), rows)


def hidden_day(state):
    """Uncover the hidden day beside what the plan counted with.

    Parameters
    ----------
    state : State
        The pour [as its fields].

    Returns
    -------
    Table
        A row a quantity [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> hidden_day(begin("oak", "mild")).rows[0][0]
    'Initial set at 21 °C'

    References
    ----------
    Plan: data/defaults.csv.
    """
    return table(("hidden", "the plan", "this day"), debrief(state).hidden)
