"""A warning or a caution with its reason and its source."""

from dataclasses import dataclass

LEVELS = ("stop", "act", "note")


@dataclass(frozen=True)
class Advice:
    """One line that a plan says beside its numbers.

    Parameters
    ----------
    level : str
        "stop" (do not pour like this), "act" (do something), "note" (know this) [-].
    where : str
        The step of the job it belongs to, for example "mix" or "cure" [-].
    text : str
        What to do, in shop words [-].
    reason : str
        Why, with the numbers [-].
    mark : str
        read, unnamed, memory, derived, practice, judgement or invented [-].
    source : str
        Where the rule comes from [-].

    Examples
    --------
    >>> Advice("note", "mix", "Wear gloves.", "Wet cement burns.", "practice", "").level
    'note'

    References
    ----------
    Common practice, no source.
    """

    level: str
    where: str
    text: str
    reason: str
    mark: str = "practice"
    source: str = "common practice, no source"

    def __post_init__(self):
        if self.level not in LEVELS:
            raise ValueError(f"advice level: {self.level!r} given; it must be one of {', '.join(LEVELS)}")
