"""Lesson 01: the box and the jug that measure two layers at the kitchen table."""

from dataclasses import dataclass

from shop_calc import units
from shop_calc.lesson.said import Said
from shop_calc.units import show

TAPE_M = 0.0015875  # judgement: a tape is read to 1/16 in
JUG_SHARE = 0.05  # judgement: a kitchen jug, and how tightly the grains lie
PRINTED = (("8 in", "5 in", "2 in"), ("7 in", "4 in", "1 1/2 in"))  # invented: box and block as the lesson prints them


def box_band(box, block):
    """Predict what fills a box round a smaller block, with what tape and jug may be off.

    The block stands for the base, what is filled in for the face.

    Parameters
    ----------
    box, block : tuple of str
        Length, width, height of each, inside the box and outside the block, as people write them [-].

    Returns
    -------
    tuple of float
        Low, likely, high [m3].

    Raises
    ------
    ValueError
        When a size cannot be read, or the block does not go into the box.

    Notes
    -----
    Every size is off by up to 1/16 in, the jug and the lie of the grains by up to 5 % (judgement), each by
    itself: the parts are added as squares.

    Examples
    --------
    >>> [round(1e6 * value, 3) for value in box_band(("10 cm", "10 cm", "5 cm"), ("8 cm", "8 cm", "4 cm"))]
    [217.891, 244.0, 270.109]

    References
    ----------
    Derived: geometry and propagation of independent errors.
    """
    outer, inner = (_three(name, sizes) for name, sizes in (("box", box), ("block", block)))
    names = ("long", "wide", "high")
    for name, of_block, of_box in zip(names, inner, outer, strict=True):
        if of_block >= of_box:
            raise ValueError(
                f"block: {show(of_block, 'length')} {name} given; the box has only {show(of_box, 'length')} there"
            )
    whole, core = (sizes[0] * sizes[1] * sizes[2] for sizes in (outer, inner))
    likely = whole - core
    off = [volume * TAPE_M / size for volume, sizes in ((whole, outer), (core, inner)) for size in sizes]
    spread = (sum(part**2 for part in off) + (JUG_SHARE * likely) ** 2) ** 0.5
    return max(likely - spread, 0.0), likely, likely + spread


@dataclass(frozen=True)
class BoxModel(Said):
    """What is said of a box and a block, and the band of what fills the gap.

    Parameters
    ----------
    text, typed : str
        As for `Said` [-].
    band : tuple of float
        Low, likely, high [m3].

    Examples
    --------
    >>> BoxModel("Predicted 1 L.", band=(0.0009, 0.001, 0.0011))
    Predicted 1 L.

    References
    ----------
    Common practice, no source.
    """

    band: tuple = ()

    __repr__ = Said.__repr__


def box_model(box, block):
    """Predict what fills a box round a block; sizes that cannot be used are answered in words, not by an error.

    Parameters
    ----------
    box, block : tuple of str
        As for `box_band` [-].

    Returns
    -------
    BoxModel
        What is said, and the band; the band of the printed sizes where the typed ones cannot be used [-].

    Examples
    --------
    >>> box_model(*PRINTED)
    Predicted 2.63 cup (623 mL).
    >>> box_model(("8", "5", "2"), PRINTED[1]).text.split(". ")[0]
    "box: '8' given; it has no unit (8 in? 8 mm?)"

    References
    ----------
    Common practice, no source.
    """
    try:
        band = box_band(box, block)
    except ValueError as reason:
        text = f"{reason}. Mend the line and run the cell again; until then the sizes of the printed lesson are used."
        return BoxModel(text, band=box_band(*PRINTED))
    return BoxModel(f"Predicted {show(band[1], 'liquid')}.", band=band)


def _three(name, sizes):
    if not isinstance(sizes, (tuple, list)) or len(sizes) != 3:
        raise ValueError(f"{name}: {sizes!r} given; it must be three sizes: length, width, height")
    return tuple(units.parse(text, "length", entry=name) for text in sizes)
