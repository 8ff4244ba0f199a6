"""A sheet with one wrong line: a slip of the cabinet planted in a working and carried on below."""

from dataclasses import replace

from shop_calc import units
from shop_calc.lesson.formula import evaluate, is_arithmetic, sized
from shop_calc.lesson.question import Number, Question
from shop_calc.lesson.slips import Slip
from shop_calc.lesson.working_text import lines_of

SHOWS = 0.05  # judgement: a planted value nearer to the right one than this share of it cannot be found by eye
HINTS = (
    "Work each line again from the numbers in it. Are they the right numbers, and does the line come out?",
    "The lines below a wrong one only carry it on: look for the first that does not hold.",
)

HOLDS = "That line is right. Work it once more, then go on down."
BELOW = "That line comes out with the numbers it was given. Look further up: which line is the first that does not hold?"
CARRIES = "That line comes out, but it was handed a wrong number. Which line above gave it that?"
APART = "That line is right, and takes nothing from the wrong one. Look further up."


def _place(steps, line):
    """Where a line stands, by its symbol or its name."""
    for place, step in enumerate(steps):
        if line in (step.symbol, step.name):
            return place
    raise ValueError(f"line: {line!r} given; there are {', '.join(step.symbol for step in steps)}")


def _slipped(step, slip):
    """The line with the slip in it; numbers that the slip changed stand in it as changed."""
    used = {}

    def answer(**numbers):
        used.update(numbers)
        return evaluate(step.formula, numbers)

    right = {symbol: value for symbol, value, _ in step.inputs}
    value = float(slip.wrong(answer, right))
    inputs = tuple((symbol, used.get(symbol, number), unit) for symbol, number, unit in step.inputs)
    return replace(step, value=value, inputs=inputs)


def _carried(step, wrong):
    """A line below, worked with what the wrong line handed on."""
    inputs = tuple((symbol, wrong.get(symbol, value), unit) for symbol, value, unit in step.inputs)
    if inputs == step.inputs:
        return step
    if not is_arithmetic(step):
        raise ValueError(f"line: {step.symbol} uses what the planted line gives, and is no plain arithmetic")
    return replace(step, inputs=inputs, value=evaluate(step.formula, inputs))


def plant(steps, line, slip):
    """Plant a slip in one line of a working and carry it on through the lines below.

    Parameters
    ----------
    steps : sequence of Step
        A right working [SI].
    line : str
        Symbol or name of the line where the slip happens; plain arithmetic [-].
    slip : Slip
        A slip of the cabinet; its numbers are the symbols of that line [-].

    Returns
    -------
    tuple of Step
        As many lines, one of them wrong in itself [SI].

    Raises
    ------
    ValueError
        When there is no such line, it or one that depends on it is a procedure, or the slip cannot be seen.

    Examples
    --------
    >>> from shop_calc.lesson.slips import left_out
    >>> from shop_calc.trade.working import Step
    >>> a = Step("a", "A", "b + c", (("b", 2.0, "m"), ("c", 1.0, "m")), 3.0, "m", "derived", "arithmetic")
    >>> d = Step("d", "D", "A * 2", (("A", 3.0, "m"),), 6.0, "m", "derived", "arithmetic")
    >>> [step.value for step in plant((a, d), "A", left_out("c", "And the other?"))]
    [2.0, 4.0]

    References
    ----------
    Common practice, no source.
    """
    place = _place(steps, line)
    right = steps[place]
    if not is_arithmetic(right):
        raise ValueError(f"line: {right.symbol} is {right.formula!r}; a slip is planted in plain arithmetic")
    bad = _slipped(right, slip)
    if not abs(bad.value - right.value) > SHOWS * abs(right.value):
        raise ValueError(f"line: {right.symbol} with {slip.name!r} gives {sized(bad.value)}; nobody would see it")
    sheet, wrong = [*steps[:place], bad], {bad.symbol: bad.value}
    for step in steps[place + 1 :]:
        sheet.append(_carried(step, wrong))
        wrong[step.symbol] = sheet[-1].value
    return tuple(sheet)


def find_wrong_line(id, text, working, plants, numbers=(), unit="", hints=HINTS):
    """Make a question that asks for the wrong line of a sheet.

    Parameters
    ----------
    id : str
        Short name, unique in its lesson [-].
    text : str
        What the sheet is about, and the question; `{name}` stands where a number goes [-].
    working : callable
        `working(**numbers)`: the right Steps, in order, at least three [SI].
    plants : sequence of (str, Slip)
        Lines, by symbol or name, and what goes wrong in each; a student code draws one of them [-].
    numbers : tuple of Number
        What is given [-].
    unit : str
        Unit in which amounts of its kind stand on the sheet as well, for example "in3" [-].
    hints : tuple of str
        Two general hints [-].

    Returns
    -------
    Question
        Of kind "choice"; its choices are the lines of the sheet [-].

    Raises
    ------
    ValueError
        When a slip cannot be planted where it is asked for, or stands in the last line, which must be handed an error.

    Examples
    --------
    >>> from shop_calc.lesson.practice import worked
    >>> from shop_calc.lesson.questions.start_here import _tile_steps
    >>> from shop_calc.lesson.slips import left_out, times
    >>> from shop_calc.lesson.wording import shown
    >>> print(shown(find_wrong_line("x", "A tile, {s_m} by {s_m}: which line is wrong?",
    ...     lambda s_m: _tile_steps(s_m, 0.05), [("A", times(2, "twice", "How many sides?"))],
    ...     (Number("s_m", "mm", 300, 200, 400, 10),))))
    A tile, 300 mm by 300 mm: which line is wrong?
      a  area of the tile: A = s × s
           with s = 300 mm (0.3 m)
           A = 0.3 × 0.3 = 0.18 m² (1.94 ft²)
      b  volume of the tile: V = A × T
           with A = 0.18 m² (1.94 ft²), T = 0.05 m (1 15/16")
           V = 0.18 × 0.05 = 0.009 m³ (0.318 ft³)

    References
    ----------
    Common practice, no source.
    """
    plants = tuple(plants)
    first = working(**inside_printed(numbers))
    places = [_place(first, line) for line, _ in plants]
    for (line, slip), place in zip(plants, places, strict=True):
        if place == len(first) - 1:
            raise ValueError(f"question {id}: {line!r} is the last line; a line below must carry the slip on")
        plant(first, line, slip)
    lines = tuple(f"line {letter}" for letter in "abcdefghijklmnopqrstuvwxyz"[: len(first)])

    def answer(plant_number, **given):
        plant(working(**given), *plants[int(plant_number)])  # refuses numbers with which nobody would see it
        return lines[places[int(plant_number)]]

    def sheet(plant_number, **given):
        right = working(**given)
        texts = lines_of(plant(right, *plants[int(plant_number)]), _printed(numbers, given), unit, right)
        return tuple(text.replace("\n   ", "\n       ") for text in texts)

    def reason(plant_number, **given):
        slip = plants[int(plant_number)][1]
        right = lines_of(working(**given), _printed(numbers, given), unit)[places[int(plant_number)]]
        return f"What happened there: {slip.name}. {slip.hint} It should be {right.rsplit(' = ', 1)[1]}."

    def otherwise(line, plant_number, **given):
        at, place = lines.index(line), places[int(plant_number)]
        if at < place:
            return HOLDS
        right = working(**given)
        same = plant(right, *plants[int(plant_number)])[at].value == right[at].value
        return APART if same else CARRIES

    def right_lines(plant_number, **given):
        return working(**given)

    return Question(
        id,
        text,
        answer,
        "choice",
        unit,
        numbers=(*numbers, Number("plant_number", "-", 0, 0, len(plants) - 1)),
        slips=_neighbours(lines, places, answer),
        hints=tuple(hints),
        choices=lines,
        working=right_lines,
        sheet=sheet,
        fixed=True,
        reason=reason,
        otherwise=otherwise,
    )


def _printed(numbers, given):
    """The numbers of a sheet, as `lines_of` takes them."""
    return [(given[each.name], _inside_unit(each), _text(each, given[each.name]), each.unit) for each in numbers]


def _inside_unit(number):
    return units.suffix_unit(number.name) or "-"


def _text(number, value):
    """A number of the sheet as the question prints it."""
    return number.text(round(units.convert(value, _inside_unit(number), number.unit), 9))


def inside_printed(numbers):
    """Give the printed numbers of a question in SI.

    Parameters
    ----------
    numbers : sequence of Number
        What a question gives [-].

    Returns
    -------
    dict
        By name [SI].

    Examples
    --------
    >>> inside_printed([Number("a_m", "mm", 5, 1, 9)])
    {'a_m': 0.005}

    References
    ----------
    Common practice, no source.
    """
    return {number.name: number.inside(number.printed) for number in numbers}


def _neighbours(lines, places, answer):
    """Slips of the finder: a line that only carries the error on, and one above that holds."""
    made = [
        Slip(
            "a line that carries it on",
            lambda right, numbers: lines[lines.index(answer(**numbers)) + 1],
            BELOW,
        )
    ]
    if min(places) > 0:
        made.append(
            Slip(
                "a line that holds",
                lambda right, numbers: lines[lines.index(answer(**numbers)) - 1],
                HOLDS,
            )
        )
    return tuple(made)
