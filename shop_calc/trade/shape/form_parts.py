"""Single numbers of a form: heights both ways, mass on the table, and a line of the cut list."""

from dataclasses import dataclass

import numpy as np

from shop_calc.science.checks import require

BOARD_M = 0.01905  # practice: 3/4 in coated board
FRESH_DENSITY_KG_M3 = 2403.0  # practice: 150 lb/ft3 until the mix is known


@dataclass(frozen=True)
class CutRow:
    """One line of the cut list.

    Parameters
    ----------
    name : str
        What it is [-].
    count : int
        How many [-].
    length_m, width_m, thickness_m : float
        Sizes; the width of a side is its height in the form, the thickness of a knock-out its height [m].
    note : str
        How it is cut or treated [-].

    Examples
    --------
    >>> CutRow("left side", 1, 0.4191, 0.05715, 0.01905, "").width_m
    0.05715

    References
    ----------
    Common practice, no source.
    """

    name: str
    count: int
    length_m: float
    width_m: float
    thickness_m: float
    note: str


def side_height_m(depth_m, base_board_m=BOARD_M):
    """Height of a side that laps the edge of the base board.

    Parameters
    ----------
    depth_m : float or array
        Depth of the piece at its edge [m].
    base_board_m : float or array
        Thickness of the base board; 0 for sides that stand on it [m].

    Returns
    -------
    float or array
        Height to rip the sides to [m].

    Raises
    ------
    ValueError
        When the depth is not positive or the board negative.

    Examples
    --------
    >>> round(side_height_m(0.050800, 0.019050), 6)
    0.06985

    References
    ----------
    Derived: geometry.
    """
    depth = require("thickness", depth_m, 0, unit="m", low_open=True)
    return depth + require("base board", base_board_m, 0, unit="m")


def slab_thickness_m(height_m, base_board_m=BOARD_M):
    """Thickness of the piece that sides of a given height make, where they lap the base board.

    Parameters
    ----------
    height_m : float or array
        Height of the sides [m].
    base_board_m : float or array
        Thickness of the base board [m].

    Returns
    -------
    float or array
        Thickness of the piece [m].

    Raises
    ------
    ValueError
        When the sides are not higher than the base board is thick.

    Examples
    --------
    >>> round(slab_thickness_m(0.063500, 0.019050), 6)
    0.04445

    References
    ----------
    Derived: geometry.
    """
    height = require("side height", height_m, 0, unit="m", low_open=True)
    board = require("base board", base_board_m, 0, unit="m")
    if np.any(np.asarray(height) <= board):
        lowest, thickest = np.min(height), np.max(board)
        raise ValueError(f"side height: {lowest:g} m given; it must be more than the base board, {thickest:g} m thick")
    return height - board


def mass_on_table_kg(volume_m3, density_kg_m3=FRESH_DENSITY_KG_M3):
    """Mass of the fresh piece, for the table and its legs to carry.

    The form, and people leaning on it, come on top.

    Parameters
    ----------
    volume_m3 : float or array
        Volume of the piece [m3].
    density_kg_m3 : float or array
        Density of the fresh mix [kg/m3].

    Returns
    -------
    float or array
        Mass [kg].

    Raises
    ------
    ValueError
        When an entry is not positive.

    Examples
    --------
    >>> round(mass_on_table_kg(0.113267, 2403.0), 3)
    272.181

    References
    ----------
    Derived: volume times density.
    """
    volume = require("volume", volume_m3, 0, unit="m3", low_open=True)
    return volume * require("density", density_kg_m3, 0, unit="kg/m3", low_open=True)
