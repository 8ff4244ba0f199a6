"""The stages of the day in the words of the shop: cue, tool, too early, too late."""

from dataclasses import dataclass


@dataclass(frozen=True)
class StageWords:
    """What a person does and looks for at one stage.

    Parameters
    ----------
    key : str
        Short name, used in files and working [-].
    title : str
        What is done [-].
    layer : str
        The layer whose clock decides: base, face or both [-].
    tool : str
        What is in the hand [-].
    cue : str
        The sign that decides; the clock only says when to look for it [-].
    too_early, too_late : str
        What goes wrong [-].
    safety : str
        The caution that belongs to the step; empty where there is none [-].

    Examples
    --------
    >>> STAGES["strip"].tool
    'screwdriver, margin trowel, edging trowel'

    References
    ----------
    Common practice, no source.
    """

    key: str
    title: str
    layer: str
    tool: str
    cue: str
    too_early: str
    too_late: str
    safety: str = ""


_ROWS = (
    StageWords(
        "base",
        "Pack the base",
        "base",
        "gloved hands, tamper",
        "packed into the corners, one face thickness short of every exposed edge and of the top",
        "stone added before the face share is set aside: the face has stone in it",
        "a stiff load does not pack: voids under the face",
        "Wet cement burns skin, and the burn comes late: gloves, sleeves, eye protection.",
    ),
    StageWords(
        "face",
        "Face onto the base",
        "base",
        "flexible blade",
        "the base stays where it is when the form is nudged",
        "the base moves and mixes into the face",
        "the base takes no thumb print: the layers part later (cold joint)",
    ),
    StageWords(
        "float",
        "Screed, first float",
        "face",
        "straight board, wood or magnesium float",
        "at once, before the sheen goes",
        "nothing is too early once the form is full",
        "the skin tears under the board",
    ),
    StageWords(
        "look",
        "Look every half hour, float again",
        "face",
        "wood or magnesium float",
        "it tightens under the float; dull alone means nothing, press below the skin",
        "steel now closes a skin over air: it flakes off later",
        "it stiffens unseen: look again at the next half hour",
    ),
    StageWords(
        "strip",
        "Sides off, patch the edges",
        "both",
        "screwdriver, margin trowel, edging trowel",
        "a thumb sinks in a quarter inch and the hole stays; the edge keeps its shape",
        "the edge sags or tears away with the board",
        "edges can no longer be patched or finished like the top",
        "Short side first, slide it along the piece, never pull it off. Gloves: the young edge still burns skin.",
    ),
    StageWords(
        "first_steel",
        "First steel",
        "face",
        "steel trowel, blade flat",
        "a thumb barely marks it and no paste comes off on the thumb",
        "air and water are closed in under a brittle skin",
        "hollows and open pores can no longer be closed",
    ),
    StageWords(
        "last_steel",
        "Last steel",
        "face",
        "steel trowel, blade a little raised, light passes",
        "a hard sheen follows the blade",
        "the sheen does not hold: wait",
        "the blade burns dark marks into the face, light colours first",
    ),
    StageWords(
        "stop",
        "Stop, cover",
        "face",
        "cover",
        "the blade rings and leaves dark marks",
        "a cover on a soft face marks it",
        "every further pass only darkens it",
    ),
)

STAGES = {row.key: row for row in _ROWS}
ORDER = tuple(STAGES)


@dataclass(frozen=True)
class Stage:
    """One stage with its three times, in hours after the first water.

    Parameters
    ----------
    words : StageWords
        What is done and looked for [-].
    look_from_h : float
        When to start looking: only 5 % of the days open earlier, evaporation left out [h].
    likely_from_h, likely_to_h : float
        The likely window [h].
    over_by_h : float
        When it is over on 95 % of the days [h].
    deadline_h : float or None
        Last moment that is still good where being late ruins the piece, else None [h].

    Examples
    --------
    >>> Stage(STAGES["float"], 1.0, 1.1, 1.3, 1.6).title
    'Screed, first float'

    References
    ----------
    Common practice, no source.
    """

    words: StageWords
    look_from_h: float
    likely_from_h: float
    likely_to_h: float
    over_by_h: float
    deadline_h: float | None = None

    @property
    def key(self):
        """Short name of the stage."""
        return self.words.key

    @property
    def title(self):
        """What is done."""
        return self.words.title

    @property
    def layer(self):
        """The layer whose clock decides."""
        return self.words.layer

    @property
    def tool(self):
        """What is in the hand."""
        return self.words.tool

    @property
    def cue(self):
        """The sign that decides."""
        return self.words.cue
