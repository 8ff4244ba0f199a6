"""Lesson 11: a practice pour on the page, its look back as tables and ribbons, one act moved by half an hour."""

from math import pi

from shop_calc import defaults
from shop_calc.lesson.pictures.at_the_bench import BenchView
from shop_calc.lesson.pictures.follow import Follow
from shop_calc.lesson.pictures.pour_ribbon import PourRibbon
from shop_calc.lesson.said import Said
from shop_calc.lesson.table import table
from shop_calc.trade.rehearsal.account import account, now_words
from shop_calc.trade.rehearsal.bench import begin
from shop_calc.trade.rehearsal.consequences import CONSEQUENCES
from shop_calc.trade.rehearsal.damage import TRACE, damage_words
from shop_calc.trade.rehearsal.debrief import debrief
from shop_calc.trade.rehearsal.policies import POLICIES, work_through
from shop_calc.trade.rehearsal.replay import diary_text, moved
from shop_calc.trade.rehearsal.reveal import true_stages
from shop_calc.trade.rehearsal.words import ACTS

# Stages that a ribbon of a practice pour shows: those that a person decides on.
SHOWN = ("face", "strip", "first_steel", "last_steel", "stop")
MOVABLE = {
    "the face": ("face", "spread"),
    "the first side off": ("strip", "strip"),
    "the first steel": ("first_steel", "steel"),
    "the last steel": ("last_steel", "steel"),
}
QUARTER_INCH_M = 0.00635  # by definition of the inch


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
    >>> from shop_calc.trade.rehearsal.policies import by_cues
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
        steel_count=len(state.steel),
    )


def _shown(stages):
    return [stage for stage in stages if stage.key in SHOWN]


def _ribbon(found, title):
    pour = found.state.pour
    return PourRibbon(_shown(found.stages), _shown(found.planned), pour.water_in, pour.room, title)


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
    >>> from shop_calc.trade.rehearsal.policies import by_cues
    >>> pour_ribbon(work_through(begin("oak", "mild"), by_cues), "A mild day").alt[:10]
    'A mild day'

    References
    ----------
    Common practice, no source.
    """
    found = debrief(state)
    picture = _ribbon(found, title or f"The pour {found.state.pour.code}")
    picture.update(_shown(found.stages), seen=found.looks, done=found.marks)
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
    >>> from shop_calc.trade.rehearsal.policies import by_cues
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
    >>> hidden_day(begin("oak", "mild")).rows[0][0]
    'Initial set at 21 °C'

    References
    ----------
    Plan: data/defaults.csv.
    """
    return table(("hidden", "the plan", "this day"), debrief(state).hidden)


def ways_of_working(count=30, code="free"):
    """Work many hidden days through in five ways and count the mornings.

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
    starts = [begin(f"{code} {number}") for number in range(count)]
    rows = []
    for name, policy in POLICIES.items():
        shows = {}
        clean = 0
        for start in starts:
            keys = {item.key for item in work_through(start, policy).kept}
            clean += not keys
            for key in keys:
                shows[key] = shows.get(key, 0) + 1
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
    picture = PourRibbon(_shown(pooled.stages), _shown(pooled.planned), pooled.water_in, pooled.room, title)
    done = [(key, at_h, good) for key, marks in pooled.hours_h.items() for at_h, good in marks]
    picture.update(_shown(pooled.stages), done=done)
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
    start = begin(code, weather)

    def slower(policy, wait):
        return lambda state: wait if policy(state).startswith("wait") else policy(state)

    ways = [*POLICIES.values(), *(slower(way, "wait 15") for way in POLICIES.values())]
    return [diary_text(work_through(start, way)) for way in ways]


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


def mover(state):
    """Give the model of the block: one act of a finished pour at another hour, all before it as it was.

    Parameters
    ----------
    state : State
        A finished pour [as its fields].

    Returns
    -------
    callable
        `model(which, later_h)`, gives the name, the hour as done, and what it would have done [-, h, Instead].

    Raises
    ------
    ValueError
        When the act was never done in that pour.

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.policies import by_cues
    >>> end = work_through(begin("oak", "mild"), by_cues)
    >>> mover(end)("the first steel", -0.5)[2].words
    'air and water under a closed skin, bad'

    References
    ----------
    Computed anew on the same hidden day.
    """
    numbers = {}
    for row in debrief(state).decisions:
        for name, (stage, word) in MOVABLE.items():
            if (row.stage, row.word) == (stage, word) and name not in numbers:
                numbers[name] = _line(state, row)

    def model(which, later_h):
        if which not in numbers:
            raise ValueError(f"{which}: it was not done in this pour")
        number = numbers[which]
        return which, state.diary[number].hour_h, moved(state, number, later_h)

    return model


def _line(state, row):
    return next(
        number
        for number, entry in enumerate(state.diary)
        if entry.word == row.word and abs(entry.hour_h - row.at_h) < 1e-9
    )


def mover_words(state):
    """Give the words of the block.

    Parameters
    ----------
    state : State
        The pour that the model has [as its fields].

    Returns
    -------
    callable
        `words(result, system)`, gives what shows, and why [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.policies import by_cues
    >>> end = work_through(begin("oak", "mild"), by_cues)
    >>> mover_words(end)(mover(end)("the first steel", 0.0), "both").splitlines()[0][-8:]
    'no harm.'

    References
    ----------
    Common practice, no source.
    """
    clock = state.pour.clock

    def words(result, system="both"):
        which, _, instead = result
        lines = [f"{which[0].upper()}{which[1:]} at {clock(instead.at_h):%H:%M}: {instead.words}."]
        lines += [item.reason for item in instead.damage if item.severity > 0.0]
        return "\n".join(lines)

    return words


def moving_mark(state, title=""):
    """Give the picture of the block: the true windows, and the act where it is moved to.

    Parameters
    ----------
    state : State
        The pour that the model has [as its fields].
    title : str
        One line over the picture [-].

    Returns
    -------
    Follow
        Takes what the model gives [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.policies import by_cues
    >>> end = work_through(begin("oak", "mild"), by_cues)
    >>> picture = moving_mark(end, "Moved")
    >>> picture.update(mover(end)("the first steel", 0.0))
    >>> picture.alt[:6]
    'Moved.'

    References
    ----------
    Common practice, no source.
    """
    found = debrief(state)
    stages = _shown(found.stages)

    def read(result):
        which, _, instead = result
        good = not any(item.severity >= TRACE for item in instead.damage)
        return stages, {"done": [(MOVABLE[which][0], instead.at_h, good)]}

    return Follow(_ribbon(found, title), read)


def later_at_bench_h(seen_h, ratio, exponent=None):
    """Say when the face will have grown so many times stiffer, on a bench that stays as warm as it is.

    Not for a room that changes: then look, and do not reckon.

    Parameters
    ----------
    seen_h : float
        When the softer sign was seen, hours after the water of the face [h].
    ratio : float
        How many times the resistance has to grow [-].
    exponent : float, optional
        Exponent of the set curve; that of the table if left out [-].

    Returns
    -------
    float
        Hours after the water of the face [h].

    Examples
    --------
    >>> f"{later_at_bench_h(2.5, 3.0):.4f}"
    '2.9248'

    References
    ----------
    Power law of ASTM C403/C403M, at one temperature.
    """
    power = defaults.get("set_exponent").value if exponent is None else exponent
    return seen_h * ratio ** (1.0 / power)


def thumb_force_band_kg(thumb_radius_m=0.010):
    """Reckon how hard a thumb presses, from the print that it leaves.

    Parameters
    ----------
    thumb_radius_m : float
        Radius of the ball of the thumb; half its width [m].

    Returns
    -------
    tuple of float
        Low, likely and high reading of a scale under the thumb [kg].

    Examples
    --------
    >>> [f"{mass:.3f}" for mass in thumb_force_band_kg()]
    ['1.914', '3.829', '7.658']

    Notes
    -----
    A ball of radius r sunk by d touches a circle of pi (2 r d - d2); a quarter inch deep, at the resistance of the
    table with its band.

    References
    ----------
    Derived from the cues of data/defaults.csv; judgement.
    """
    depth = QUARTER_INCH_M
    area_m2 = pi * (2.0 * thumb_radius_m * depth - depth**2)
    row = defaults.si_band("thumb_print_pr")
    return tuple(pa * area_m2 / 9.80665 for pa in row)
