"""The words for everything a person can do at the bench."""

from dataclasses import dataclass

from shop_calc.trade.rehearsal.signs import SIGNS


@dataclass(frozen=True)
class Act:
    """One act.

    Parameters
    ----------
    word : str
        How it is called [-].
    title : str
        What it is, for a button [-].
    kind : str
        "time", "look", "work" or "cover" [-].

    Examples
    --------
    >>> ACTS["float"].kind
    'work'

    References
    ----------
    Common practice, no source.
    """

    word: str
    title: str
    kind: str


WAITS_MIN = {"wait 5": 5.0, "wait 15": 15.0, "wait 30": 30.0, "step away": 90.0}
_WORK = {
    "stir": "Turn the face share over again, no water",
    "spread": "Spread the face over the base",
    "screed": "Screed with the straight board",
    "float": "Float, wood or magnesium",
    "strip": "Take the next side off",
    "patch": "Patch the open edges",
    "steel": "One pass of steel",
    "sprinkle": "Sprinkle water on the face",
}
_COVERS = {
    "uncover": "Take the cover off",
    "cover fabric": "Damp fabric flat, plastic over it",
    "cover plastic": "Bare plastic on the face",
    "cover tent": "Plastic held off the face",
    "cover mist": "Mist it",
    "cover membrane": "Spray a curing compound",
}
ACTS = {
    act.word: act
    for act in (
        *(Act(word, f"Wait {minutes:.0f} min" if word != "step away" else "Step away for an hour and a half", "time")
          for word, minutes in WAITS_MIN.items()),
        *(Act(f"look {sign}", title[0].upper() + title[1:], "look") for sign, title in SIGNS.items()),
        *(Act(word, title, "work") for word, title in _WORK.items()),
        *(Act(word, title, "cover") for word, title in _COVERS.items()),
        Act("leave", "Leave it for the night", "cover"),
    )
}  # fmt: skip
