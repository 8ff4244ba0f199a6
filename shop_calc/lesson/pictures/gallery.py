"""All pictures on one page: in colour, in grey, and as two kinds of colour-blind readers have them."""

import base64
import html
import io
import textwrap
from pathlib import Path

import numpy as np
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.image import imread, imsave

from shop_calc.lesson.pictures.base import LIVE_DPI, png_bytes
from shop_calc.lesson.pictures.colour_sight import SIGHTS, seen_as
from shop_calc.lesson.pictures.demo import pictures

_PAGE = """<!doctype html><html lang="en"><meta charset="utf-8"><title>All pictures</title>
<style>body{{font:16px sans-serif;margin:1.5em;color:#1a1a1a;background:#fff}}
section{{margin:0 0 2.5em}}div{{display:flex;flex-wrap:wrap;gap:12px}}figure{{margin:0}}
img{{border:1px solid #d5d9de;max-width:100%}}figcaption{{color:#5f6670}}p{{max-width:60em}}</style>
<h1>All pictures</h1><p>All numbers on this page are invented.</p>{body}</html>"""


def sights(picture, half=False):
    """One picture in every sight.

    Parameters
    ----------
    picture : Picture
        Any picture [-].
    half : bool
        Half the size, four pixels averaged to one [-].

    Returns
    -------
    dict of str to ndarray of shape (height, width, 3)
        Pixels, 0 to 1 [-].
    """
    pixels = imread(io.BytesIO(png_bytes(picture.figure, LIVE_DPI)), format="png")[:, :, :3]
    if half:
        tall, wide = (side // 2 for side in pixels.shape[:2])
        pixels = pixels[: 2 * tall, : 2 * wide].reshape(tall, 2, wide, 2, 3).mean(axis=(1, 3))
    return {sight: seen_as(pixels, sight) for sight in SIGHTS}


def page_html(shown):
    """The page as HTML that carries its pictures.

    Parameters
    ----------
    shown : dict of str to Picture
        Names and pictures [-].

    Returns
    -------
    str
        HTML [-].
    """
    parts = []
    for name, picture in shown.items():
        figures = []
        for sight, pixels in sights(picture).items():
            out = io.BytesIO()
            imsave(out, pixels, format="png")
            data = base64.b64encode(out.getvalue()).decode("ascii")
            alt = html.escape(f"{picture.alt} Seen in {sight}.")
            figures.append(
                f'<figure><img alt="{alt}" width="880" src="data:image/png;base64,{data}">'
                f"<figcaption>{sight}</figcaption></figure>"
            )
        parts.append(
            f"<section><h2>{html.escape(name)}</h2><div>{''.join(figures)}</div><p>{html.escape(picture.alt)}</p></section>"
        )
    return _PAGE.format(body="".join(parts))


def page_png(shown):
    """The page as one large PNG, each picture at half size.

    Parameters
    ----------
    shown : dict of str to Picture
        Names and pictures [-].

    Returns
    -------
    bytes
        A PNG file [-].
    """
    gap, line = 16, 15
    blocks = []
    for name, picture in shown.items():
        words = textwrap.wrap(f"{name}. {picture.alt}", 250)
        blocks.append((words, sights(picture, half=True)))
    tall = sum(next(iter(seen.values())).shape[0] + line * len(words) + 2 * gap for words, seen in blocks)
    wide = max(sum(p.shape[1] + gap for p in seen.values()) + gap for _, seen in blocks)
    page = Figure(figsize=(wide / 100, tall / 100), dpi=100, layout="none", facecolor="white")
    FigureCanvasAgg(page)
    y = tall
    for words, seen in blocks:
        y -= gap
        page.text(gap / wide, y / tall, "\n".join(words), size=8, va="top", parse_math=False)
        y -= line * len(words) + next(iter(seen.values())).shape[0] + gap
        x = gap
        for pixels in seen.values():
            page.figimage(np.clip(pixels, 0, 1), xo=x, yo=y)
            x += pixels.shape[1] + gap
    return png_bytes(page, 100)


def write_page(path):
    """Write the page, HTML or PNG by the ending of the name.

    Parameters
    ----------
    path : str or Path
        Where to [-].

    Returns
    -------
    Path
        Where it is [-].

    Raises
    ------
    ValueError
        When the name ends otherwise.
    """
    path = Path(path)
    kind = path.suffix.lower()
    if kind not in (".html", ".png"):
        raise ValueError(f"file: {path.name!r} given; the name must end in .html or .png")
    shown = pictures()
    if kind == ".html":
        path.write_text(page_html(shown), encoding="utf-8")
    else:
        path.write_bytes(page_png(shown))
    return path
