"""What can go wrong with a surface: how it feels at once, how it shows later, what would have been right."""

from dataclasses import dataclass

_CIP = "from memory of NRMCA Concrete in Practice"
_PRACTICE = "common practice, no source"


@dataclass(frozen=True)
class Consequence:
    """One way in which an act at the wrong moment shows.

    Parameters
    ----------
    key : str
        Short name [-].
    title : str
        What it is [-].
    shows : str
        How it shows, and when [-].
    at_once : str
        What is seen or felt at the moment itself; the worst feel well [-].
    remedy : str
        What would have been right [-].
    mark, source : str
        Where the rule comes from [-].

    Examples
    --------
    >>> CONSEQUENCES["dark"].title
    'Dark marks from the blade'

    References
    ----------
    As each row says.
    """

    key: str
    title: str
    shows: str
    at_once: str
    remedy: str
    mark: str
    source: str


_ROWS = (
    Consequence(
        "mixed", "The layers mixed", "base comes up into the face; polishing finds stone and coarse sand in it",
        "The blade pushes, and the base moves under it.",
        "wait until the base stays where it is when the form is nudged", "practice", _PRACTICE,
    ),
    Consequence(
        "cold joint", "A cold joint", "the face does not grip the base; months later they part",
        "It spreads well; the base below gives nowhere.",
        "put the face on while a thumb still prints the base", "judgement", "layer gap of data/defaults.csv",
    ),
    Consequence(
        "lumps", "Lumps and holes in the face",
        "stiff lumps do not close against the form; holes stay behind the sides",
        "It comes off the trowel in lumps; holes stay against the form.",
        "turn the share over again without water, and use it before it sets", "practice", _PRACTICE,
    ),
    Consequence(
        "uneven", "A top that is not flat", "hollows and humps that no trowel takes out",
        "",
        "screed with a straight board as soon as the form is full", "practice", _PRACTICE,
    ),
    Consequence(
        "torn", "The skin tore under the tool", "a torn, rough skin; its pulls and pits fill badly later",
        "The skin pulls open behind the tool.",
        "work it while it shines, or float a dull but soft skin open first", "practice", _PRACTICE,
    ),
    Consequence(
        "sag", "A sagging or torn edge", "the corner rounds or breaks away with the board",
        "The edge leans out as the side leaves it.",
        "wait until the edge keeps its shape and a thumb sinks about a quarter inch", "practice", _PRACTICE,
    ),
    Consequence(
        "patch", "Patches that show", "the patch does not grip a stiff edge; its outline stays and can come off",
        "The paste slides on the stiff edge and does not key.",
        "patch at once after the sides are off, while the edge still takes a print", "judgement",
        "strip window and layer gap of data/defaults.csv",
    ),
    Consequence(
        "holes", "Holes left in the edges", "what the form left open stays open",
        "",
        "fill the edges with the cup that was kept, and finish them like the top", "practice", _PRACTICE,
    ),
    Consequence(
        "form edge", "Edges as the form left them", "the sides were still on when the mortar set: no edge was worked",
        "",
        "take the sides off within the window, one by one", "practice", _PRACTICE,
    ),
    Consequence(
        "air", "Air and water under a closed skin", "blisters within the hour, or flakes months later",
        "It closes at once and shines; it looks done.",
        "keep the steel away until a thumb barely marks the face and no paste comes off", "memory",
        f"{_CIP} 13 and 20 (blisters, delamination)",
    ),
    Consequence(
        "crust", "A crust taken for set", "the skin slid and cracked over soft mortar, and closed over its air",
        "The skin slides in waves before the blade, then closes.",
        "press below the skin before every tool: dull and dry is not ready", "memory",
        f"{_CIP} 13 (blisters); finishing guidance on crusted slabs",
    ),
    Consequence(
        "hollows", "Hollows and pores left open", "the blade only skims the high spots",
        "The blade rides over the low spots.",
        "begin with the steel while a thumb still barely marks the face", "practice", _PRACTICE,
    ),
    Consequence(
        "dark", "Dark marks from the blade", "grey to black streaks where the blade rang, light colours first",
        "The blade rings, and streaks follow it.",
        "stop while the sheen is hard and the blade still runs quietly", "practice", _PRACTICE,
    ),
    Consequence(
        "crazing", "A net of fine cracks", "the watered skin is weak: it crazes and dusts",
        "It looks fresh again and closes with ease.",
        "no water on the face, ever; cover it instead", "memory", f"{_CIP} 1 and 3 (dusting, crazing)",
    ),
    Consequence(
        "cracks", "Cracks from drying while soft", "short cracks across the face, open before it is hard",
        "",
        "keep the air off it: stop the wind, shade it, a cover held off the face between passes", "memory",
        f"{_CIP} 5 (plastic shrinkage cracks); limit: FHWA-HRT-05-038 ch. 5 as read",
    ),
    Consequence(
        "printed", "The cover printed into the face", "weave or folds stay in a face that was still soft",
        "It sticks where it touches.",
        "hold the cover off a soft face", "practice", _PRACTICE,
    ),
    Consequence(
        "blotches", "Puddles and blotches under plastic",
        "dark where it touched, light where it bridged; may never fade",
        "Drops hang in the folds, and the face below is dark and light.",
        "never bare plastic on a trowelled face", "read", "PCA EB001 text on curing with plastic",
    ),
    Consequence(
        "thirst", "A face that dried out overnight", "less strength at the skin; it dusts and scratches",
        "",
        "the cover that fits the night", "read", "UFGS 03300A and 03301A as read; limits of data/defaults.csv",
    ),
    Consequence(
        "dry mist", "Mist that dried in between", "a skin wetted and dried by turns crazes",
        "",
        "mist until bedtime, then another cover", "practice", _PRACTICE,
    ),
    Consequence(
        "no face", "No face on the base", "the base set without its face",
        "",
        "spread the face in time", "practice", _PRACTICE,
    ),
)  # fmt: skip
CONSEQUENCES = {row.key: row for row in _ROWS}
