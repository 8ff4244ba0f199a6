"""Bending stress of thin plain pieces under their own weight and a load.

All elementary beam theory, M y / I of an uncracked rectangle. Loads are given as the mass that
makes them, for people weigh loads. Steel and fibre are never credited.
"""

import numpy as np

from shop_calc.science.checks import require
from shop_calc.science.loads import GRAVITY_M_S2

# Two supports this share of the length in from the ends make the moment over them and the moment
# in the middle equal: the best place to hold a strip. (sqrt 2 - 1)/2, derived.
BEST_SUPPORT_RATIO = (2.0**0.5 - 1.0) / 2.0


def section_modulus_m3(width_m, depth_m):
    """Section modulus of a rectangle.

    Not for layered pieces of unlike stiffness.

    Parameters
    ----------
    width_m, depth_m : float or array
        Width, and depth in the direction of the load [m].

    Returns
    -------
    float or array
        Section modulus, b d^2 / 6 [m3].

    Raises
    ------
    ValueError
        When a size is not positive.

    Examples
    --------
    >>> round(section_modulus_m3(1.0, 0.1524), 9)
    0.00387096

    References
    ----------
    Derived: elementary beam theory.
    """
    width = require("width", width_m, 0, unit="m", low_open=True)
    return width * require("depth", depth_m, 0, unit="m", low_open=True) ** 2 / 6.0


def bending_stress_pa(moment_n_m, width_m, depth_m):
    """Stress at the skin of a rectangle.

    Parameters
    ----------
    moment_n_m : float or array
        Bending moment [N·m].
    width_m, depth_m : float or array
        Width, and depth in the direction of the load [m].

    Returns
    -------
    float or array
        Largest tension, 6 M / (b d^2) [Pa].

    Raises
    ------
    ValueError
        When a size is not positive.

    Notes
    -----
    Not after a crack: then nothing of a plain piece is left.

    Examples
    --------
    >>> round(bending_stress_pa(11000.0, 1.0, 0.150), 1)
    2933333.3

    References
    ----------
    Derived: elementary beam theory.
    """
    return require("moment", moment_n_m, unit="N·m") / section_modulus_m3(width_m, depth_m)


def span_moment_n_m(length_m, line_load_kg_m, load_kg=0.0):
    """Largest moment of a strip on two end supports.

    Parameters
    ----------
    length_m : float or array
        Distance between the supports [m].
    line_load_kg_m : float or array
        Mass per length that the strip carries, its own included [kg/m].
    load_kg : float or array
        Mass set down at the middle [kg].

    Returns
    -------
    float or array
        Moment at the middle, g (w L^2 / 8 + P L / 4) [N·m].

    Raises
    ------
    ValueError
        When the length is not positive or a load is negative.

    Notes
    -----
    Ends free to turn. A jolt is not in it: multiply.

    Examples
    --------
    >>> round(span_moment_n_m(5.0, 360.0), 3)
    11032.481

    References
    ----------
    Derived: elementary beam theory.
    """
    length = require("length", length_m, 0, unit="m", low_open=True)
    line = require("line load", line_load_kg_m, 0, unit="kg/m")
    return GRAVITY_M_S2 * (line * length**2 / 8.0 + require("load", load_kg, 0, unit="kg") * length / 4.0)


def carried_stress_pa(length_m, depth_m, density_kg_m3, support_ratio=0.0):
    """Self-weight stress of a strip held at two places, flat or on edge.

    Flat, the depth is the thickness; on edge it is the width. Static: carrying jolts it.

    Parameters
    ----------
    length_m, depth_m : float or array
        Length, and size in the direction of the weight [m].
    density_kg_m3 : float or array
        Density [kg/m3].
    support_ratio : float or array
        How far each support is in from its end, as a share of the length; 0 is by the ends [-].

    Returns
    -------
    float or array
        Largest tension, over a support or at the middle [Pa].

    Raises
    ------
    ValueError
        When a size is not positive or the supports are outside 0 to 1/2.

    Notes
    -----
    rho g L^2/d times the larger of 3 a^2 and 0.75 |1 - 4a|: 0.75 by the ends, 0.1287 at
    `BEST_SUPPORT_RATIO` (0.2071), 0.75 when balanced on the middle.

    Examples
    --------
    >>> round(float(carried_stress_pa(2.4384, 0.0381, 2402.769)), 1)
    2757902.3

    References
    ----------
    Derived: elementary beam theory.
    """
    ratio = require("place of the supports", support_ratio, 0, 0.5)
    share = np.maximum(3.0 * np.square(ratio), 0.75 * np.abs(1.0 - 4.0 * ratio))
    return share * _gl2_d_pa(length_m, depth_m, density_kg_m3)


def simple_span_stress_pa(length_m, width_m, depth_m, density_kg_m3, load_kg=0.0):
    """Stress of a strip on two end supports under its weight and a load at the middle.

    Not for a top that sits on a full base.

    Parameters
    ----------
    length_m : float or array
        Distance between the supports [m].
    width_m, depth_m : float or array
        Width that shares the load, and thickness [m].
    density_kg_m3, load_kg : float or array
        Density, and mass set down at the middle [kg/m3, kg].

    Returns
    -------
    float or array
        Largest tension, at the middle below [Pa].

    Raises
    ------
    ValueError
        When a size is not positive or the load is negative.

    Notes
    -----
    0.75 rho g L^2/t + 1.5 g P L/(b t^2). The same formula is the rail beside an opening with ends
    that can turn (`fixed_rail_stress_pa` when they cannot).

    Examples
    --------
    >>> round(simple_span_stress_pa(0.8382, 0.0762, 0.0381, 2402.769, 45.359237))
    5382040

    References
    ----------
    Derived: elementary beam theory.
    """
    own = require("density", density_kg_m3, 0, unit="kg/m3", low_open=True) * width_m * depth_m
    return bending_stress_pa(span_moment_n_m(length_m, own, load_kg), width_m, depth_m)


def fixed_rail_stress_pa(length_m, width_m, depth_m, density_kg_m3, load_kg=0.0):
    """Stress of a narrow rail beside an opening whose ends cannot turn.

    Only where wide concrete holds both ends; the truth lies between this and `simple_span_stress_pa`.

    Parameters
    ----------
    length_m : float or array
        Length of the opening [m].
    width_m, depth_m : float or array
        Width and thickness of the rail [m].
    density_kg_m3, load_kg : float or array
        Density, and mass set down at the middle [kg/m3, kg].

    Returns
    -------
    float or array
        Largest tension, at the ends above [Pa].

    Raises
    ------
    ValueError
        When a size is not positive or the load is negative.

    Notes
    -----
    0.5 rho g L^2/t + 0.75 g P L/(b t^2), from w L^2/12 + P L/8 at the ends.

    Examples
    --------
    >>> round(fixed_rail_stress_pa(0.8382, 0.0762, 0.0381, 2402.769, 45.359237))
    2745334

    References
    ----------
    Derived: elementary beam theory.
    """
    load = require("load", load_kg, 0, unit="kg")
    own = _gl2_d_pa(length_m, depth_m, density_kg_m3) / 2.0
    return own + bending_stress_pa(GRAVITY_M_S2 * load * length_m / 8.0, width_m, depth_m)


def cantilever_stress_pa(overhang_m, width_m, depth_m, density_kg_m3, load_kg=0.0):
    """Stress over the support of an overhang under its weight and a load at its end.

    It gives no safe span. Not for a seat without the checks of the job, and not for pieces whose
    other end can lift.

    Parameters
    ----------
    overhang_m : float or array
        Length beyond the support [m].
    width_m, depth_m : float or array
        Width that shares the load, and thickness [m].
    density_kg_m3, load_kg : float or array
        Density, and mass on the very end [kg/m3, kg].

    Returns
    -------
    float or array
        Largest tension, over the support above [Pa].

    Raises
    ------
    ValueError
        When a size is not positive or the load is negative.

    Notes
    -----
    3 rho g L^2/t + 6 g P L/(b t^2).

    Examples
    --------
    >>> round(cantilever_stress_pa(0.254, 0.635, 0.0381, 2402.769, 90.718474))
    1590582

    References
    ----------
    Derived: elementary beam theory.
    """
    load = require("load", load_kg, 0, unit="kg")
    own = 3.0 * _gl2_d_pa(overhang_m, depth_m, density_kg_m3)
    return own + bending_stress_pa(GRAVITY_M_S2 * load * overhang_m, width_m, depth_m)


def _gl2_d_pa(length_m, depth_m, density_kg_m3):
    length = require("length", length_m, 0, unit="m", low_open=True)
    density = require("density", density_kg_m3, 0, unit="kg/m3", low_open=True)
    return density * GRAVITY_M_S2 * length**2 / require("depth", depth_m, 0, unit="m", low_open=True)
