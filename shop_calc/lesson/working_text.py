"""The working of a question as text, line by line, with the numbers of one student."""

from shop_calc import units
from shop_calc.lesson.draw import draw
from shop_calc.lesson.formula import is_arithmetic, is_pi, pretty, sized, with_numbers
from shop_calc.lesson.page import sign
from shop_calc.lesson.question import OTHER_UNITS, WORD_KINDS
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


def step_text(step, printed=(), unit=""):
    """Write one line of working: what it is, the formula, the numbers in it, the result.

    Parameters
    ----------
    step : Step
        A line of a working [SI].
    printed : sequence of (value, unit, str)
        Numbers of the question, which stand as the question prints them [SI].
    unit : str
        Unit in which the question asks; amounts of its kind stand in it as well [-].

    Returns
    -------
    str
        Up to three lines of text [-].

    Examples
    --------
    >>> from shop_calc.trade.working import Step
    >>> print(step_text(Step("v_m3", "V", "A * t", (("A", 0.6, "m2"), ("t", 0.0381, "m")), 0.02286, "m3", "derived",
    ...     "geometry", "volume"), [(0.0381, "m", "1.5 in")]))
    volume: V = A × t
       with A = 0.6 m² (6.46 ft²), t = 1.5 in (0.0381 m)
       V = 0.6 × 0.0381 = 0.02286 m³ (0.807 ft³)

    References
    ----------
    Common practice, no source.
    """
    psi = any(text.endswith(" psi") for _, _, text in printed)

    def asked(of):  # what is made of pressures in psi stays in psi, however small
        return "psi" if of == "Pa" and psi else unit

    inputs = [
        f"{symbol.replace('rho', 'ρ')} = {_input(value, of, printed, asked(of))}"
        for symbol, value, of in step.inputs
        if not is_pi(symbol)
    ]
    name = step.words or step.name.replace("_", " ")
    lines = [f"{name}: {pretty(step)}" if is_arithmetic(step) else f"{name}, {step.formula}"]
    if inputs:
        lines.append(f"   with {', '.join(inputs)}")
    start = with_numbers(step) if inputs and is_arithmetic(step) else step.symbol
    return "\n".join([*lines, f"   {start} = {amount(step.value, step.unit, asked(step.unit))}"])


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
    here = f"{sized(value)} {sign(of)}".strip()
    other = _IN_INCHES.get(of) if asked in _IN_INCHES.values() else asked
    if asked and other and _kind(of) == _kind(other) != "":
        there = f"{sized(units.convert(value, of, other))} {sign(other)}".strip()
    else:
        us, si = shown_value(value, of, "us"), shown_value(value, of, "si")
        there = us if us != si else here  # a length as a tape shows it
    return here if here == there else f"{here} ({there})"


def _kind(unit):
    """What a unit counts; empty where units.convert would not know."""
    if unit == "Pa" or unit in OTHER_UNITS["liquid"]:
        return "pressure" if unit == "Pa" else "volume"
    return next((kind for kind, names in OTHER_UNITS.items() if unit in names), "")


def _input(value, of, printed, asked):
    for given, its_unit, text in printed:
        if value == given and (of == its_unit != "-" or (of == "-" and text.endswith("%"))):
            here = f"{sized(value)} {sign(of)}".strip()
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
    reason = question.reason(**drawn.given) if callable(question.reason) else question.reason
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
    printed = [(drawn.given[name], units.suffix_unit(name) or "-", text[name]) for name in text]
    return [step_text(step, printed, question.unit) for step in steps_of(question, drawn)]
