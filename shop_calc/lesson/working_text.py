"""The working of a question as text, line by line, with the numbers of one student."""

from dataclasses import replace

from shop_calc import units
from shop_calc.lesson.asked_units import kind_of, shop_units, turned
from shop_calc.lesson.draw import draw
from shop_calc.lesson.formula import is_arithmetic, is_pi, pretty, readable, sized, with_numbers
from shop_calc.lesson.page import sign
from shop_calc.lesson.question import WORD_KINDS
from shop_calc.lesson.wording import blanks, typed
from shop_calc.trade.explain import shown_value

_IN_INCHES = {"m": "in", "m2": "in2", "m3": "in3"}


def steps_of(question, drawn):
    """Work the question with the numbers drawn.

    Parameters
    ----------
    question : Question
        The question [-].
    drawn : Drawn
        Its numbers [as its fields].

    Returns
    -------
    tuple of Step
        The lines of its working; none where it has none [SI].

    Examples
    --------
    >>> from shop_calc.lesson.question import Question
    >>> q = Question("q", "", lambda: 0.6096, "length", "ft", hints=("x", "y"))
    >>> steps_of(q, draw(q))
    ()

    References
    ----------
    Common practice, no source.
    """
    return tuple(question.working(**drawn.given)) if question.working else ()


def step_text(step, printed=(), unit="", shop=None):
    """Write one line of working: what it is, the formula, the numbers in it, the result.

    Parameters
    ----------
    step : Step
        A line of a working [SI].
    printed : sequence of (value, unit, str, str)
        Numbers of the question, which stand as the question prints them: in SI, their SI unit, as printed, the unit
        printed [SI].
    unit : str
        Unit in which the question asks; amounts of its kind stand in it as well [-].
    shop : (tuple of str, tuple of str, str), optional
        Units of the shop, as `shop_units` chose them for this line; SI if not given [-].

    Returns
    -------
    str
        Up to three lines of text [-].

    Examples
    --------
    >>> from shop_calc.trade.working import Step
    >>> print(step_text(Step("v_m3", "V", "A * t", (("A", 0.6, "m2"), ("t", 0.0381, "m")), 0.02286, "m3", "derived",
    ...     "geometry", "volume"), [(0.0381, "m", "1.5 in", "in")]))
    volume: V = A × t
       with A = 0.6 m² (6.46 ft²), t = 1.5 in (0.0381 m)
       V = 0.6 × 0.0381 = 0.02286 m³ (0.807 ft³)

    References
    ----------
    Common practice, no source.
    """
    name = step.words or step.name.replace("_", " ")
    first = f"{name}: {pretty(step)}" if is_arithmetic(step) else f"{name}, {step.formula}"
    if shop:
        return "\n".join([first, *_in_shop_units(step, printed, unit, *shop)])
    psi = any(text.endswith(" psi") for _, _, text, _ in printed)

    def asked(of):  # what is made of pressures in psi stays in psi, however small
        return "psi" if of == "Pa" and psi else unit

    inputs = [
        f"{symbol.replace('rho', 'ρ')} = {_input(value, of, printed, asked(of))}"
        for symbol, value, of in step.inputs
        if not is_pi(symbol)
    ]
    lines = [first]
    if inputs:
        lines.append(f"   with {', '.join(inputs)}")
    start = with_numbers(step) if inputs and is_arithmetic(step) else step.symbol
    return "\n".join([*lines, f"   {start} = {amount(step.value, step.unit, asked(step.unit))}"])


def _in_shop_units(step, printed, asked, came, chosen, unit):
    """The numbers of a line, and its sum, in units of the shop; what was turned stands in both units."""
    said, there = [], []
    for (symbol, value, of), first, its in zip(step.inputs, came, chosen, strict=True):
        there.append((symbol, turned(value, of, its), its))
        here = _counted(value, of, its)
        text = next((t for given, si, t, _ in printed if given == value and (of == si != "-" or t.endswith("%"))), "")
        text = text or _counted(value, of, first or its)
        if not is_pi(symbol):
            said.append(f"{symbol.replace('rho', 'ρ')} = {text if text == here else f'{text} ({here})'}")
    lines = [f"   with {', '.join(said)}"] if said else []
    start = with_numbers(replace(step, inputs=tuple(there))) if said else step.symbol
    return [*lines, f"   {start} = {shop_amount(step.value, step.unit, unit, asked)}"]


def _counted(value, of, unit):
    number, written = readable(turned(value, of, unit), unit)
    return f"{number} {sign(written)}".strip()


def shop_amount(value, of, unit, asked=""):
    """Write a value in a unit of the shop, and behind it as the question asks or else in SI.

    Parameters
    ----------
    value : float
        A value of a working [SI].
    of, unit : str
        Its unit, and the one of the shop [-].
    asked : str
        Unit in which the question asks; may be empty [-].

    Returns
    -------
    str
        For the page [-].

    Examples
    --------
    >>> shop_amount(0.00354, "m3", "in3", "ft3"), shop_amount(0.00354, "m3", "ft3", "ft3"), shop_amount(2.0, "-", "-")
    ('216 in³ (0.125 ft³)', '0.125 ft³ (3.54 L)', '2')

    References
    ----------
    Common practice, no source.
    """
    here = _counted(value, of, unit)
    if not kind_of(of):
        return here
    if asked and asked != unit and kind_of(asked) == kind_of(of):
        return f"{here} ({_counted(value, of, asked)})"
    there = here if unit == of else shown_value(value, of, "si")
    return here if here == there else f"{here} ({there})"


def amount(value, of, asked=""):
    """Write a value in the unit of the working, and behind it as the question or else the shop counts it.

    Parameters
    ----------
    value : float
        A value of a working [SI].
    of : str
        Its unit [-].
    asked : str
        Unit in which the question asks; may be empty [-].

    Returns
    -------
    str
        For the page [-].

    Examples
    --------
    >>> amount(0.00354, "m3", "in3"), amount(0.00354, "m3"), amount(2.0, "-")
    ('0.00354 m³ (216 in³)', '0.00354 m³ (0.125 ft³)', '2')

    References
    ----------
    Common practice, no source.
    """
    here = _counted(value, of, of)
    other = _IN_INCHES.get(of) if asked in _IN_INCHES.values() else asked
    if asked and other and kind_of(of) == kind_of(other) != "":
        there = f"{sized(units.convert(value, of, other))} {sign(other)}".strip()
    else:
        us, si = shown_value(value, of, "us"), shown_value(value, of, "si")
        there = us if us != si else here  # a length as a tape shows it
    return here if here == there else f"{here} ({there})"


def _input(value, of, printed, asked):
    for given, its_unit, text, _ in printed:
        if value == given and (of == its_unit != "-" or (of == "-" and text.endswith("%"))):
            here = _counted(value, of, of)
            return text if text == here else f"{text} ({here})"
    return amount(value, of, asked)


def worked_text(question, code=None):
    """Write the working of a question line by line, and its answer.

    Parameters
    ----------
    question : Question
        The question [-].
    code : str, optional
        Student code [-].

    Returns
    -------
    str
        Plain text [-].

    Examples
    --------
    >>> from shop_calc.lesson.question import Question
    >>> worked_text(Question("q", "", lambda: 0.6096, "length", "ft", hints=("x", "y")))
    'Answer: 2 ft'

    References
    ----------
    Common practice, no source.
    """
    drawn = draw(question, code)
    lines = [f"{place}. {text}" for place, text in enumerate(step_texts(question, drawn), 1)]
    right = typed(question, drawn, drawn.right)
    if question.kind not in WORD_KINDS:
        return "\n".join([*lines, f"Answer: {right:g} {sign(question.unit)}".strip()])
    words = dict(zip(question.letters, drawn.choices, strict=True))
    beside = not question.sheet or isinstance(question.sheet(**drawn.given), str)
    letters = right.split(", ")
    form = "{}, {}" if len(letters) == 1 else "{} ({})"
    picked = [form.format(letter, words[letter]) if beside else letter for letter in letters]
    lines.append(f"Answer: {'; '.join(picked)}")
    reason = question.why(drawn.given)
    return "\n".join([*lines, *([reason] if reason else []), *_why_not(question, drawn)])


def _why_not(question, drawn):
    """What each foreseen wrong choice overlooks; the hint stands for it."""
    if question.kind != "choice":
        return []
    return [f"Not {letter}: {hint}" for letter, hint in sorted((typed(question, drawn, value), slip.hint)
                                                               for slip, value in drawn.slips)]  # fmt: skip


def step_texts(question, drawn):
    """Write each line of a question's working.

    Parameters
    ----------
    question : Question
        The question [-].
    drawn : Drawn
        Its numbers [as its fields].

    Returns
    -------
    list of str
        One text a line of working [-].

    Examples
    --------
    >>> from shop_calc.lesson.question import Question
    >>> q = Question("q", "", lambda: 0.6096, "length", "ft", hints=("x", "y"))
    >>> step_texts(q, draw(q))
    []

    References
    ----------
    Common practice, no source.
    """
    text = blanks(question, drawn)
    printed = [
        (drawn.given[each.name], units.suffix_unit(each.name) or "-", text[each.name], each.unit) for each in question.numbers
    ]
    return lines_of(steps_of(question, drawn), printed, question.unit)


def lines_of(steps, printed=(), asked="", right=None):
    """Write a working line by line: in units of the shop where every sum comes out in them, else in SI.

    Parameters
    ----------
    steps : sequence of Step
        The working, or one with a slip in it [SI].
    printed : sequence of (value, unit, str, str)
        Numbers of the question, as for `step_text` [SI].
    asked : str
        Unit in which the question asks [-].
    right : sequence of Step, optional
        The right working, where the other has a slip; it tells the units [SI].

    Returns
    -------
    list of str
        One text a line of working [-].

    Examples
    --------
    >>> from shop_calc.trade.working import Step
    >>> line = Step("v_m3", "V", "A * t", (("A", 0.6, "m2"), ("t", 0.0381, "m")), 0.02286, "m3", "derived", "geometry",
    ...     "volume")
    >>> print(*lines_of([line], [(0.0381, "m", "1.5 in", "in")], "ft3"))
    volume: V = A × t
       with A = 930 in², t = 1.5 in
       V = 930 × 1.5 = 1395 in³ (0.8073 ft³)

    References
    ----------
    Common practice, no source.
    """
    shop = shop_units(right or steps, printed, asked) or [None] * len(steps)
    return [step_text(step, printed, asked, its) for step, its in zip(steps, shop, strict=True)]
