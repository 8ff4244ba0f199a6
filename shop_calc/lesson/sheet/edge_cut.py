"""A cut through an edge for paper: the face goes over the base and, where the edge is seen, down its side."""

from shop_calc.lesson.sheet.drawing import BASE_FILL, INK, PAPER, box, number, pair, svg
from shop_calc.lesson.sheet.sketch import SI, US
from shop_calc.units import show


def edge_cut(layers, faced):
    """Draw a cut through an edge: the face goes over the base and, where the edge is seen, down its side.

    Not to scale: a face of a quarter inch would be a line.

    Parameters
    ----------
    layers : Layers
        The two layers [m].
    faced : bool
        Whether any edge is faced [-].

    Returns
    -------
    str
        SVG [-].

    Examples
    --------
    >>> from types import SimpleNamespace as S
    >>> "1/4" in edge_cut(S(thickness_m=0.0381, face_thickness_m=0.00635, base_depth_m=0.03175), True)
    True

    References
    ----------
    Common practice, no source.
    """
    wide, tall, left, top, thin = 96.0, 36.0, 2.0, 2.0, 11.0
    inset = thin if faced else 0.0
    parts = [
        box(left, top, wide - left, tall, PAPER, INK, 1.6),
        box(left + inset, top + thin, wide - left - inset, tall - thin, BASE_FILL, INK, 1.2),
        box(wide - 1, top - 2, 6, tall + 4, PAPER),  # the piece goes on to the right
    ]
    sizes = (("face", layers.face_thickness_m, top + thin / 2), ("base", layers.base_depth_m, top + (tall + thin) / 2))
    for name, size_m, y in sizes:
        us, si = show(size_m, "length", "us"), show(size_m, "length", "si")
        parts.append(box(wide - 10, y - 0.5, 16, 1, INK))
        parts.append(
            f'<text x="{number(wide + 11)}" y="{number(y + 4.5)}">{pair(f"{name} {us}", si, US, SI)}</text> '
        )
    words = (
        f"Cut through an edge: face {show(layers.face_thickness_m, 'length')} over base "
        f"{show(layers.base_depth_m, 'length')}" + (", and down the faced edge." if faced else ".")
    )
    return svg(wide + 175, tall + 4, "".join(parts), words, "cut")
