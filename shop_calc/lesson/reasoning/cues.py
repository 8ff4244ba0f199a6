"""Which sign allows which tool, asked from the table that a plan is printed from."""

from shop_calc.lesson.question import Number, Question
from shop_calc.lesson.slips import Slip, word
from shop_calc.trade.timeline.stages import ORDER, STAGES

HINTS = (
    "Times are for looking. What would you see or feel at this step, with the tool in your hand?",
    "Go through the day from the first float to the cover; each sign is a little stiffer than the one before.",
)
TOO_SOON = "That is the sign of a step before it. What would this tool do to a surface that soft?"
TOO_LATE = "When that sign is there, this step should long be done. What does the tool still have to move?"


def choose_cue(id, asked, among, also=(), text="Which sign allows this step?", hints=HINTS):
    """Make a question that asks for the sign of a stage of the day.

    Parameters
    ----------
    id : str
        Short name, unique in its lesson [-].
    asked : sequence of str
        Keys of the stages that may be asked for, see `shop_calc.trade.timeline.stages`; a student code draws one [-].
    among : sequence of str
        Keys of the stages whose signs are offered, with one before and one after each that is asked [-].
    also : sequence of (str, str)
        Other signs that people go by, each with the hint that leads back [-].
    text : str
        The question; the step is named below it [-].
    hints : tuple of str
        Two general hints [-].

    Returns
    -------
    Question
        Of kind "choice" [-].

    Raises
    ------
    ValueError
        When a stage is not known, or an asked one has no neighbour among those offered.

    Examples
    --------
    >>> question = choose_cue("sign", ["strip"], ["look", "strip", "first_steel"])
    >>> question.answer(stage_number=0)
    'a thumb sinks in a quarter inch and the hole stays; the edge keeps its shape'
    >>> print(question.sheet(stage_number=0))
    The step: sides off, patch the edges. In your hand: screwdriver, margin trowel, edging trowel.

    References
    ----------
    Common practice, no source: the stages of the day, as their table says.
    """
    among = tuple(sorted(among, key=_place))
    places = [among.index(key) if key in among else -1 for key in asked]
    if not places or not all(0 < place < len(among) - 1 for place in places):
        raise ValueError(f"question {id}: {', '.join(asked)} asked; each needs one before and one after it offered")
    signs = [STAGES[key].cue for key in among]

    def place_of(stage_number):
        return places[int(stage_number)]

    def sheet(stage_number):
        stage = STAGES[among[place_of(stage_number)]]
        return f"The step: {stage.title[0].lower()}{stage.title[1:]}. In your hand: {stage.tool}."

    return Question(
        id,
        text,
        lambda stage_number: signs[place_of(stage_number)],
        "choice",
        numbers=(Number("stage_number", "-", 0, 0, len(places) - 1),),
        slips=(
            Slip("sign of the step before", lambda answer, n: signs[place_of(**n) - 1], TOO_SOON),
            Slip("sign of the step after", lambda answer, n: signs[place_of(**n) + 1], TOO_LATE),
            *(word(sign, hint) for sign, hint in also),
        ),
        hints=tuple(hints),
        choices=(*reversed(signs), *(sign for sign, _ in also)),
        sheet=sheet,
    )


def _place(key):
    if key not in ORDER:
        raise ValueError(f"stage: {key!r} given; there are {', '.join(ORDER)}")
    return ORDER.index(key)
