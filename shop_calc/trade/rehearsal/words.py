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
    "stir": "Turn the share over, no water",
    "spread": "Spread the face",
    "screed": "Screed",
    "float": "Float",
    "strip": "Next side off",
    "patch": "Patch the edges",
    "steel": "Steel, one pass",
    "sprinkle": "Sprinkle water",
}
_COVERS = {
    "uncover": "Cover off",
    "cover fabric": "Damp fabric, plastic over it",
    "cover plastic": "Bare plastic",
    "cover tent": "Plastic held off",
    "cover mist": "Mist",
    "cover membrane": "Curing compound",
}
ACTS = {
    act.word: act
    for act in (
        *(Act(word, f"Wait {minutes:.0f} min" if word != "step away" else "Step away, 1 h 30 min", "time")
          for word, minutes in WAITS_MIN.items()),
        *(Act(f"look {sign}", title[0].upper() + title[1:], "look") for sign, title in SIGNS.items()),
        *(Act(word, title, "work") for word, title in _WORK.items()),
        *(Act(word, title, "cover") for word, title in _COVERS.items()),
        Act("leave", "Leave for the night", "cover"),
    )
}  # fmt: skip
