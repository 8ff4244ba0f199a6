"""For instructors: the day of a workshop beside the plan, the key of a few codes, the cabinet of mistakes."""

from math import ceil

from shop_calc.lesson.banks import banked_lessons
from shop_calc.lesson.classroom import answer_key
from shop_calc.lesson.formula import evaluate, pretty, sized
from shop_calc.lesson.page import sign
from shop_calc.lesson.reasoning import find_wrong_line, plant
from shop_calc.lesson.slips import CABINET, mistake
from shop_calc.lesson.table import table

# What a class can do while the mortar needs nobody.
MEANWHILE = {
    "base": "everybody packs",
    "face": "lesson 04, guess first: when will the steel come?",
    "float": "everybody floats, one after the other",
    "look": "lesson 04 to its slider block; every half hour all look, and write the sign down",
    "strip": "sides off, short side first; edges patched",
    "first_steel": "one at a time at each bench, the others press thumbs",
    "last_steel": "light passes; who stops first, and why?",
    "stop": "lesson 05: which cover tonight? Then it goes on",
}


def workshop_day(plan):
    """Lay the plan of a day beside what a class does meanwhile.

    Parameters
    ----------
    plan : Plan
        Plan of the piece that the workshop pours [as its fields].

    Returns
    -------
    Table
        A row a stage: look from, likely, what to look for, what the class does [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> workshop_day(make_plan(read_job(demo_job("garden_bench_top")))).rows[0][0]
    'Pack the base'

    References
    ----------
    The stages of the plan.
    """
    day = plan.day

    def at(hour):
        return f"{day.clock(hour):%H:%M}"

    def likely(stage):
        first, last = at(stage.likely_from_h), at(stage.likely_to_h)
        return first if first == last else f"{first} to {last}"

    rows = [(s.title, at(s.look_from_h), likely(s), s.cue, MEANWHILE[s.key]) for s in day.stages]
    return table(("at the bench", "look from", "likely", "the sign", "the class"), rows)


def apart_min(plan, key="first_steel", step_min=5):
    """Say how far apart the benches should start, so that one pair of eyes sees the same stage on each.

    Parameters
    ----------
    plan : Plan
        Plan of one bench [as its fields].
    key : str
        The stage that should not fall together [-].
    step_min : int
        Rounded up to this [min].

    Returns
    -------
    int
        Minutes from one bench's water to the next [min].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> apart_min(make_plan(read_job(demo_job("garden_bench_top"))))
    25

    References
    ----------
    Common practice, no source: the likely window of that stage.
    """
    stage = plan.day.stage(key)
    return step_min * ceil(60.0 * (stage.likely_to_h - stage.likely_from_h) / step_min - 1e-9)


def key_of(number, students):
    """Show the key of one lesson for a few students.

    Parameters
    ----------
    number : str
        The lesson, as "01" [-].
    students : sequence of Student
        A roster [-].

    Returns
    -------
    Table
        A row a question, a column a student [-].

    Raises
    ------
    ValueError
        When there is no such lesson.

    Examples
    --------
    >>> from shop_calc.lesson.classroom import roster
    >>> key_of("00", roster([("bench 1", "")])).rows[0][0]
    'tile'

    References
    ----------
    Common practice, no source.
    """
    found = [each for each in banked_lessons() if each.lesson.number == number]
    if not found:
        raise ValueError(f"lesson: {number!r} given; there are {', '.join(e.lesson.number for e in banked_lessons())}")
    columns = answer_key(students, found)[found[0].stem]
    rows = []
    for lines in zip(*columns, strict=True):
        answers = (f"{line.answer:g} {line.unit}" if isinstance(line.answer, float) else line.answer for line in lines)
        rows.append((lines[0].question.id.replace("_", " "), *answers))
    return table(("question", *(student.label for student in students)), rows)


def cabinet():
    """Show every slip of the cabinet in the line where it happens.

    Returns
    -------
    Table
        What people do, the right line, what comes out instead, the hint [-].

    Examples
    --------
    >>> cabinet().rows[0][:2]
    ('inches used where feet belong', 'V = A × t = 0.0375 m³')

    References
    ----------
    The cabinet of shop_calc.lesson.slips; its lines are invented.
    """
    rows = []
    for each in CABINET:
        line, right = each.example, {symbol: value for symbol, value, _ in each.example.inputs}
        wrong = each.slip.wrong(lambda formula=line.formula, **given: evaluate(formula, given), right)
        unit = sign(line.unit)
        right_line = f"{pretty(line)} = {sized(line.value)} {unit}".strip()
        rows.append((each.words, right_line, f"{sized(wrong)} {unit}".strip(), each.slip.hint))
    return table(("what people do", "the line (invented numbers)", "then it says", "the hint"), rows)


def wrong_sheet(steps, line, slip_name, *arguments, about="a plan"):
    """Make a sheet with one wrong line out of the working of a plan.

    Parameters
    ----------
    steps : sequence of Step
        The working, for example `plan.layers.working` [SI].
    line : str
        Symbol of the line where it goes wrong [-].
    slip_name : str
        A slip of the cabinet [-].
    *arguments : str
        What the slip needs to know of that line: the symbols it takes wrongly [-].
    about : str
        What the sheet is about, for its first line [-].

    Returns
    -------
    Question
        For `ask`, `check` and `worked` of shop_calc.lesson.practice [-].

    Raises
    ------
    ValueError
        When there is no such slip or line, or nobody would see the slip there.

    Examples
    --------
    >>> from shop_calc.lesson.practice import solution
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> layers = make_plan(read_job(demo_job("garden_bench_top"))).layers
    >>> solution(wrong_sheet(layers.working[5:10], "V_core", "left_out", "t", "Is the base as thick as the piece?"))
    'c'

    References
    ----------
    Common practice, no source.
    """
    steps = tuple(steps)
    slip = mistake(slip_name).make(*arguments)
    plant(steps, line, slip)  # says at once what is wrong with the request
    return find_wrong_line(
        "sheet", f"One line of these sums ({about}) goes wrong first. Which?", lambda: steps, [(line, slip)]
    )
