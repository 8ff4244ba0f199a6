"""What all pictures share: colours, sizes, type, and the way from a figure to the page.

A picture is built once and then only updated in place, so that a slider can redraw it while it is
being dragged. Nothing here lays a figure out anew per draw: margins are fixed per kind of figure.
"""

import html
from contextlib import contextmanager
from types import MappingProxyType

import matplotlib
import numpy as np
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure

from shop_calc.lesson.page import img_tag
from shop_calc.lesson.pictures.png_file import packed

# The eight colours of Okabe and Ito (Color Universal Design, 2008), told apart by colour-blind readers.
BLACK, ORANGE, SKY, GREEN = "#000000", "#E69F00", "#56B4E9", "#009E73"
YELLOW, BLUE, VERMILION, PURPLE = "#F0E442", "#0072B2", "#D55E00", "#CC79A7"
PALETTE = (BLUE, ORANGE, GREEN, VERMILION, SKY, PURPLE, YELLOW, BLACK)

INK = "#1A1A1A"  # type and outlines
QUIET = "#5F6670"  # ticks, second labels: 5.8:1 on white
HAIRLINE = "#D5D9DE"  # grid
PAPER = "#FFFFFF"

# One meaning, one colour, in every picture. Each pair that can touch also differs in grey or in hatch.
ROLES = MappingProxyType(
    {
        "face": ORANGE,
        "base": BLUE,
        "water": SKY,
        "air": HAIRLINE,
        "stone": "#8A8F96",
        "band": SKY,
        "line": BLUE,
        "measured": BLACK,
        "good": GREEN,
        "watch": ORANGE,
        "stop": VERMILION,
    }
)
# Second sign beside the colour, so that a one-colour print says the same.
HATCHES = MappingProxyType({"good": "", "watch": "//", "stop": "xx", "face": "", "base": "..", "stone": "oo"})

# kind: width and height in inches, then left, right, bottom, top of the axes as shares of the figure.
KINDS = MappingProxyType(
    {
        "wide": (9.0, 4.5, (0.10, 0.97, 0.17, 0.90)),
        "ribbon": (9.0, 3.2, (0.06, 0.98, 0.22, 0.88)),
        "tall": (9.0, 6.0, (0.10, 0.97, 0.13, 0.92)),
        "pair": (9.0, 4.5, (0.10, 0.97, 0.17, 0.90)),
        "plan": (9.0, 4.5, (0.02, 0.98, 0.04, 0.92)),  # drawn to scale, no axes shown
    }
)
LIVE_DPI = 100  # 900 px wide, redrawn while a slider moves
STILL_DPI = 144  # sharper, drawn once

STYLE = MappingProxyType(
    {
        "font.family": "DejaVu Sans",  # ships with matplotlib: the same letters on every machine
        "font.size": 13,
        "text.color": INK,
        "axes.titlesize": 15,
        "axes.titleweight": "bold",
        "axes.titlelocation": "left",
        "axes.titlepad": 10,
        "axes.labelsize": 13,
        "axes.labelcolor": INK,
        "axes.edgecolor": QUIET,
        "axes.linewidth": 1.0,
        "axes.spines.top": False,
        "axes.spines.right": False,
        "axes.axisbelow": True,
        "axes.grid": True,
        "axes.autolimit_mode": "data",
        "axes.prop_cycle": matplotlib.cycler(color=PALETTE),
        "grid.color": HAIRLINE,
        "grid.linewidth": 0.8,
        "xtick.labelsize": 12,
        "ytick.labelsize": 12,
        "xtick.color": QUIET,
        "ytick.color": QUIET,
        "xtick.labelcolor": INK,
        "ytick.labelcolor": INK,
        "lines.linewidth": 2.6,
        "lines.markersize": 8,
        "patch.linewidth": 1.2,
        "hatch.linewidth": 0.8,
        "legend.fontsize": 12,
        "legend.frameon": False,
        "figure.facecolor": PAPER,
        "axes.facecolor": PAPER,
        "savefig.facecolor": PAPER,
        "mathtext.default": "regular",
    }
)


@contextmanager
def style():
    """Set the house style while artists are made; a learner's own plots keep theirs.

    Examples
    --------
    >>> with style():
    ...     matplotlib.rcParams["font.size"]
    13.0

    References
    ----------
    Common practice, no source.
    """
    with matplotlib.rc_context(dict(STYLE)):
        yield


def new_figure(kind="wide"):
    """Make an empty figure of one of the set sizes, with margins that never move.

    Parameters
    ----------
    kind : str
        A key of `KINDS` [-].

    Returns
    -------
    tuple of Figure and Axes
        For "pair" the second item is a tuple of two Axes [-].

    Raises
    ------
    ValueError
        When there is no such kind.

    Examples
    --------
    >>> figure, axes = new_figure("ribbon")
    >>> [round(float(side), 4) for side in figure.get_size_inches()]
    [9.0, 3.2]

    References
    ----------
    Common practice, no source.
    """
    if kind not in KINDS:
        raise ValueError(f"kind: {kind!r} given; must be one of {', '.join(KINDS)}")
    width, height, (left, right, bottom, top) = KINDS[kind]
    with style():
        figure = Figure(figsize=(width, height), dpi=LIVE_DPI, layout="none")
        FigureCanvasAgg(figure)
        axes = figure.subplots(1, 2 if kind == "pair" else 1)
        figure.subplots_adjust(left=left, right=right, bottom=bottom, top=top, wspace=0.28)
    if kind == "pair":
        return figure, tuple(axes)
    if kind == "plan":
        axes.set_axis_off()
        axes.set_aspect("equal", adjustable="datalim")
    return figure, axes


def png_bytes(figure, dpi=LIVE_DPI):
    """Give the figure as PNG, always the same number of pixels.

    Parameters
    ----------
    figure : Figure
        A figure from `new_figure` [-].
    dpi : float
        Pixels per inch [-].

    Returns
    -------
    bytes
        A PNG file [-].

    Examples
    --------
    >>> png_bytes(new_figure()[0])[1:4]
    b'PNG'

    References
    ----------
    Common practice, no source.
    """
    before = figure.dpi
    try:
        if dpi != before:
            figure.dpi = dpi
        figure.canvas.draw()
        return packed(np.asarray(figure.canvas.buffer_rgba()))
    finally:
        if dpi != before:
            figure.dpi = before


class Still:
    """A picture on the page with alt text and a caption.

    JupyterLab shows a bare PNG output without alt text; an `<img alt>` inside HTML keeps it.
    """

    def __init__(self, png, alt, caption):
        if not alt.strip() or not caption.strip():
            raise ValueError("a still picture needs alt text and a caption: say what is to be seen")
        self.png, self.alt, self.caption = png, alt.strip(), caption.strip()

    def _repr_mimebundle_(self, include=None, exclude=None):
        # A table of our own colours would be unreadable on a dark page: only the picture is white.
        page = (
            '<figure style="margin:0.6em 0 1em 0">'
            f"{img_tag(self.png, self.alt)}"
            f'<figcaption style="margin-top:0.5em;max-width:900px">{html.escape(self.caption)}</figcaption>'
            "</figure>"
        )
        return {"text/html": page, "text/plain": f"Picture: {self.alt}\n{self.caption}"}


def show_still(figure, alt, caption):
    """Make a figure ready to stand as the last line of a cell.

    Parameters
    ----------
    figure : Figure
        What to show [-].
    alt : str
        What the picture shows, in words [-].
    caption : str
        One sentence on what to see in it [-].

    Returns
    -------
    Still
        Shown by the notebook [-].

    Raises
    ------
    ValueError
        When alt or caption is empty.

    Examples
    --------
    >>> figure, axes = new_figure()
    >>> show_still(figure, "An empty chart.", "Nothing yet.")._repr_mimebundle_()["text/plain"]
    'Picture: An empty chart.\\nNothing yet.'

    References
    ----------
    Common practice, no source.
    """
    with matplotlib.rc_context({"text.hinting": "no_hinting"}):  # the page scales it: letters fitted to pixels gain nothing
        return Still(png_bytes(figure, STILL_DPI), alt, caption)


class Picture:
    """A drawing that is built once and then follows results: subclass it, one class a drawing.

    A subclass sets `kind`, makes its artists in `build(axes)` with fixed limits, and moves them in
    `update(result, system)`, where it also sets `self.alt`. It computes nothing.

    >>> class Bar(Picture):
    ...     def build(self, axes):
    ...         axes.set(xlim=(0, 10), ylim=(0, 1), xlabel="volume (L)")
    ...         (self.bar,) = axes.barh([0.5], [0.0], color=ROLES["face"])
    ...     def update(self, result, system="both"):
    ...         self.bar.set_width(result)
    ...         self.alt = f"A bar of {result:.3g} L."
    >>> picture = Bar()
    >>> picture.update(4.0)
    >>> picture.still("The face takes four litres.").alt
    'A bar of 4 L.'
    """

    kind = "wide"

    def __init__(self):
        self.alt = ""
        self.figure, self.axes = new_figure(self.kind)
        with style():
            self.build(self.axes)

    def build(self, axes):
        """Make every artist once, with fixed limits and labels."""
        raise NotImplementedError

    def update(self, result, system="both"):
        """Move the artists to `result` and set `self.alt`; `system` is "us", "si" or "both"."""
        raise NotImplementedError

    def png(self):
        """The picture as it stands now."""
        return png_bytes(self.figure, LIVE_DPI)

    def still(self, caption):
        """The picture as it stands now, for a page."""
        return show_still(self.figure, self.alt, caption)
