"""Weight of a flat piece and the push of fresh concrete on a side."""

from shop_calc.science.checks import require

GRAVITY_M_S2 = 9.80665  # standard gravity, by definition, CGPM 1901: scales and the pound-force are made by it
CEMENT_MIX_DENSITY_KG_M3 = (1762.0, 2483.0)  # 110-155 lb/ft3: what a cement mix can weigh (judgement)


def area_mass_kg_m2(thickness_m, density_kg_m3):
    """Mass of a flat piece per unit of area.

    Not for pieces with dropped edges: use the volume.

    Parameters
    ----------
    thickness_m : float or array
        Thickness [m].
    density_kg_m3 : float or array
        Density as it lies [kg/m3].

    Returns
    -------
    float or array
        Mass per area [kg/m2].

    Raises
    ------
    ValueError
        When an entry is not positive.

    Notes
    -----
    Thickness times density. 1-1/2 in at 150 lb/ft3 is 18.75 lb/ft2.

    Examples
    --------
    >>> round(area_mass_kg_m2(0.0381, 2402.769), 4)
    91.5455

    References
    ----------
    Derived: geometry.
    """
    thickness = require("thickness", thickness_m, 0, unit="m", low_open=True)
    return thickness * require("density", density_kg_m3, 0, unit="kg/m3", low_open=True)


def implied_density_kg_m3(mass_kg_m2, thickness_m):
    """Density that a claimed weight per area amounts to.

    A way to catch impossible claims, not to measure density.

    Parameters
    ----------
    mass_kg_m2 : float or array
        Claimed mass per area [kg/m2].
    thickness_m : float or array
        Claimed thickness [m].

    Returns
    -------
    float or array
        Density; `CEMENT_MIX_DENSITY_KG_M3` is what a cement mix can have [kg/m3].

    Raises
    ------
    ValueError
        When an entry is not positive.

    Notes
    -----
    "3/4 in weighs 10 to 12 lb/ft2" is 160 to 192 lb/ft3: heavier than any sand and cement.

    Examples
    --------
    >>> round(implied_density_kg_m3(48.8243, 0.01905), 3)
    2562.955

    References
    ----------
    Derived: geometry.
    """
    mass = require("mass per area", mass_kg_m2, 0, unit="kg/m2", low_open=True)
    return mass / require("thickness", thickness_m, 0, unit="m", low_open=True)


def liquid_head_pa(depth_m, density_kg_m3):
    """Largest sideways pressure of fresh concrete on a form: that of a liquid.

    For low forms filled in one go. Tall, slowly filled forms see less; a pump sees more.

    Parameters
    ----------
    depth_m : float or array
        Depth below the top of the pour [m].
    density_kg_m3 : float or array
        Density of the fresh mix [kg/m3].

    Returns
    -------
    float or array
        Pressure [Pa].

    Raises
    ------
    ValueError
        When the depth is negative or the density not positive.

    Notes
    -----
    rho g h, the full head, without any credit for stiffening.

    Examples
    --------
    >>> round(liquid_head_pa(0.0381, 2402.769), 3)
    897.755

    References
    ----------
    ACI 347 as explained by M.K. Hurd: full liquid head.
    """
    depth = require("depth", depth_m, 0, unit="m")
    return require("density", density_kg_m3, 0, unit="kg/m3", low_open=True) * GRAVITY_M_S2 * depth


def liquid_head_push_kg_m(depth_m, density_kg_m3):
    """Total sideways push on a form side, as the weight it equals per length of side.

    As `liquid_head_pa`.

    Parameters
    ----------
    depth_m : float or array
        Depth of the pour [m].
    density_kg_m3 : float or array
        Density of the fresh mix [kg/m3].

    Returns
    -------
    float or array
        Weight per length that the push equals; it acts a third of the depth up [kg/m].

    Raises
    ------
    ValueError
        When the depth is negative or the density not positive.

    Notes
    -----
    rho h^2 / 2: it grows with the square, so a 36 in panel pushes 576 times as hard as a 1-1/2 in top.

    Examples
    --------
    >>> round(liquid_head_push_kg_m(0.0381, 2402.769), 5)
    1.74394

    References
    ----------
    Derived: the triangle under the full liquid head.
    """
    depth = require("depth", depth_m, 0, unit="m")
    return require("density", density_kg_m3, 0, unit="kg/m3", low_open=True) * depth**2 / 2.0


def spread_rate_m2_m3(solids_fraction, film_thickness_m):
    """Area that a volume of coating covers at a dry film thickness.

    Not for penetrating sealers, which build no film: they go by what the surface drinks.

    Parameters
    ----------
    solids_fraction : float or array
        Solids by volume [-].
    film_thickness_m : float or array
        Thickness of the dry film [m].

    Returns
    -------
    float or array
        Area per volume, without losses [m2/m3].

    Raises
    ------
    ValueError
        When the solids are not between 0 and 1 or the film is not positive.

    Notes
    -----
    In US units 1604.17 times the solids over the film in mils, ft2 per gallon.

    Examples
    --------
    >>> round(spread_rate_m2_m3(0.25, 38.1e-6), 3)
    6561.68

    References
    ----------
    Derived: geometry.
    """
    solids = require("solids by volume", solids_fraction, 0, 1, low_open=True)
    return solids / require("film thickness", film_thickness_m, 0, unit="m", low_open=True)
