"""Lesson 01: a piece, its two layers, its cut list."""

from dataclasses import dataclass

from shop_calc import units
from shop_calc.lesson.moves.box_and_jug import box_model  # noqa: F401  the lesson finds all under one name
from shop_calc.lesson.moves.cut_up import cut_up_picture  # noqa: F401
from shop_calc.lesson.pictures.follow import Follow
from shop_calc.lesson.pictures.from_plan import piece_plan
from shop_calc.lesson.pictures.sections import LayerSections
from shop_calc.lesson.table import table
from shop_calc.trade.shape.layers import Layers, split_layers
from shop_calc.trade.shape.outline import rectangle
from shop_calc.trade.shape.piece import Piece, build_piece
from shop_calc.units import show

EDGES = {
    "all four": ("front", "right", "back", "left"),
    "front and both ends": ("front", "right", "left"),
    "front and one end": ("front", "left"),
    "front only": ("front",),
    "none": (),
}
LONGEST_M, WIDEST_M, THICKEST_M = 2.4384, 0.6096, 0.0635  # ends of the sliders: 96, 24 and 2 1/2 in


@dataclass(frozen=True)
class TwoLayers:
    """A piece and its two layers.

    Parameters
    ----------
    piece : Piece
        The piece [-].
    layers : Layers
        What is face and what is base [-].

    Examples
    --------
    >>> two_layers(1.52400, 0.38100, 0.0381, 0.00635).layers.face_share > 0.2
    True

    References
    ----------
    Derived: geometry.
    """

    piece: Piece
    layers: Layers


def two_layers(length_m, width_m, thickness_m, face_thickness_m, edges="all four"):
    """Split a rectangular top whose edges are chosen by words.

    Parameters
    ----------
    length_m, width_m, thickness_m, face_thickness_m : float
        Sizes [m].
    edges : str
        A key of `EDGES` [-].

    Returns
    -------
    TwoLayers
        The piece and its layers [-].

    Raises
    ------
    ValueError
        When the sizes make no piece of two layers.

    Examples
    --------
    >>> round(two_layers(1.52400, 0.38100, 0.0381, 0.00635).layers.face_m3, 8)
    0.00445011

    References
    ----------
    Derived: geometry.
    """
    piece = build_piece(rectangle(length_m, width_m), thickness_m, set(EDGES[edges]))
    return TwoLayers(piece, split_layers(piece, face_thickness_m))


def layer_words(result, system="both"):
    """Say how much of each layer a top takes, and what the edges cost.

    Parameters
    ----------
    result : TwoLayers
        A split piece [-].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    str
        Two lines [-].

    Examples
    --------
    >>> print(layer_words(two_layers(1.52400, 0.38100, 0.0381, 0.00635), "us"))
    Face 0.157 ft³, base 0.624 ft³: 20.1 % of the piece is face.
    On the top lie 0.13 ft³ of it; the edges, 12'-6" of them, wear 0.0269 ft³.

    References
    ----------
    Derived: geometry.
    """
    layers = result.layers
    us = "in³" if "in³" in show(layers.face_m3, "volume", "us") else "ft³"  # one unit for all four
    volume = lambda value: _in_one_unit(value, us, system)  # noqa: E731
    first = (
        f"Face {volume(layers.face_m3)}, base {volume(layers.core_m3)}: "
        f"{show(layers.face_share, 'fraction', system)} of the piece is face."
    )
    if not layers.exposed_length_m:
        return f"{first}\nAll of it lies on the top: no edge shows."
    top_m3 = layers.top_area_m2 * layers.face_thickness_m
    run = show(layers.exposed_length_m, "length", system)
    return (
        f"{first}\nOn the top lie {volume(top_m3)} of it; the edges, {run} of them, wear "
        f"{volume(layers.face_m3 - top_m3)}."
    )


def _in_one_unit(volume_m3, us, system):
    """A volume that stays in the unit of the others, however small."""
    us = f"{units.plain_number(units.convert(volume_m3, 'm3', us.replace('³', '3')))} {us}"
    si = f"{units.plain_number(units.convert(volume_m3, 'm3', 'L'))} L"
    return {"us": us, "si": si}.get(system, f"{us} ({si})")


def drawing(result, title):
    """Draw plan and cut as large as the sheet allows.

    Parameters
    ----------
    result : TwoLayers
        A split piece [-].
    title : str
        One line over it [-].

    Returns
    -------
    LayerSections
        A picture; its `still` puts it on the page [-].

    Examples
    --------
    >>> drawing(two_layers(1.524, 0.381, 0.0381, 0.00635), "A top").title
    'A top'

    References
    ----------
    Common practice, no source.
    """
    return LayerSections(piece_plan(result.piece, result.layers), title=title)


def moving_picture(result, title):
    """Draw plan and cut on scales that hold the largest top of the sliders.

    Parameters
    ----------
    result : TwoLayers
        What it shows first [-].
    title : str
        One line over it [-].

    Returns
    -------
    Follow
        A picture that moves with results of `two_layers` [-].

    Examples
    --------
    >>> moving_picture(two_layers(1.524, 0.381, 0.0381, 0.00635), "A top").title
    'A top'

    References
    ----------
    Common practice, no source.
    """
    read = lambda moved: piece_plan(moved.piece, moved.layers)  # noqa: E731
    sections = LayerSections(read(result), (LONGEST_M, WIDEST_M), THICKEST_M, title)
    return Follow(sections, read)


def cut_list(form, system="us"):
    """Write the cut list of a form as it hangs beside the saw.

    Parameters
    ----------
    form : Form
        The form [-].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    Table
        Count, part, sizes, how it is cut [-].

    Examples
    --------
    >>> from shop_calc.trade.shape.form import build_form
    >>> top = two_layers(1.52400, 0.38100, 0.0381, 0.00635)
    >>> cut_list(build_form(top.piece)).rows[1][:4]
    ('2', 'side: right, left', '1\\'-4 1/2"', '2 1/4"')

    References
    ----------
    Common practice, no source.
    """
    size = lambda metres: show(metres, "length", system)  # noqa: E731
    rows = [
        (row.count, row.name, size(row.length_m), size(row.width_m), size(row.thickness_m), row.note)
        for row in form.rows
    ]
    return table(("cut", "part", "long", "wide or high", "board", "how"), rows)


def compared(before, after):
    """Set the volumes of two pieces side by side.

    Parameters
    ----------
    before, after : Layers
        Two pieces split into layers [-].

    Returns
    -------
    Table
        Whole, face and base of each, and what changed in cubic inches [-].

    Examples
    --------
    >>> at_wall = two_layers(1.52400, 0.38100, 0.0381, 0.00635, "front and both ends").layers
    >>> compared(two_layers(1.52400, 0.38100, 0.0381, 0.00635).layers, at_wall).rows[1]
    ('face', '0.157 ft³ (4.45 L)', '0.146 ft³ (4.15 L)', '-18.6 in³')

    References
    ----------
    Derived: geometry.
    """
    rows = []
    for what, part in (("piece", "total_m3"), ("face", "face_m3"), ("base", "core_m3")):
        old, new = getattr(before, part), getattr(after, part)
        change = units.convert(new - old, "m3", "in3")
        shown = "0 in³" if abs(change) < 0.05 else f"{change:+.1f} in³"
        rows.append((what, show(old, "volume"), show(new, "volume"), shown))
    return table(("", "before", "after", "change"), rows)


def warned(advice):
    """Set advice out as a table.

    Parameters
    ----------
    advice : sequence of Advice
        What is worth saying [-].

    Returns
    -------
    Table
        What to do, why, and the mark of the reason [-].

    Examples
    --------
    >>> from shop_calc.trade.advice import Advice
    >>> warned([Advice("act", "mix", "Use smaller stone.", "It jams.", "judgement", "ours")]).rows
    (('Use smaller stone.', 'It jams.', 'judgement'),)

    References
    ----------
    Common practice, no source.
    """
    return table(("do", "because", "mark"), [(line.text, line.reason, line.mark) for line in advice])


def written_sizes(*texts):
    """Show how sizes are read as people write them, and which are refused.

    Parameters
    ----------
    *texts : str
        Entries as typed [-].

    Returns
    -------
    Table
        What was typed, what was understood [-].

    Examples
    --------
    >>> written_sizes("5' 3/4\\"").rows
    (('5\\' 3/4"', '60.75 in', '5\\'-0 3/4" (1543 mm)'),)

    References
    ----------
    Common practice, no source.
    """
    rows = []
    for text in texts:
        try:
            metres = units.parse(text, "length", entry="size")
        except ValueError as error:
            rows.append((text, "refused", _plain_reason(str(error), text)))
            continue
        inches = units.plain_number(units.convert(metres, "m", "in"), 5)
        rows.append((text, f"{inches} in", show(metres, "length")))
    return table(("typed", "read as", "shown as, or why not"), rows)


def _plain_reason(message, text):
    """The part of a refusal that says why, without the entry's name and the list of examples."""
    return message.removeprefix(f"size: {text!r} given; ").split(". Write")[0]
