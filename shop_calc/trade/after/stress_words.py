"""Stresses and strengths of a piece as people compare them: one unit down a column, no figure that means nothing."""

from shop_calc.units import convert, plain_number, show

NO_CONCRETE_PA = 138e6  # judgement: 20,000 psi, more than any mix that is worked by hand


def stress(value_pa, system="both"):
    """Write a stress in psi however small it is, so that a column of them can be compared.

    Not for the push of wet mix on a form: that is a weight on an area.

    Parameters
    ----------
    value_pa : float
        The stress [Pa].
    system : str
        us, si or both [-].

    Returns
    -------
    str
        Text with unit [-].

    Examples
    --------
    >>> stress(4730.0), stress(1102000.0, "us")
    ('0.7 psi (4.73 kPa)', '160 psi')

    References
    ----------
    Common practice, no source.
    """
    psi, si = convert(value_pa, "Pa", "psi"), show(value_pa, "pressure", "si")
    if psi >= 1.0 or psi == 0.0:
        return show(value_pa, "pressure", system)
    us = f"{plain_number(psi, 3, 1)} psi"
    return {"us": us, "si": si, "both": f"{us} ({si})"}[system]


def no_concrete(strength_pa):
    """Whether a strength is more than any concrete has, so that its figure says nothing.

    Parameters
    ----------
    strength_pa : float
        Compressive strength that would be needed [Pa].

    Returns
    -------
    bool
        True above 20,000 psi [-].

    Examples
    --------
    >>> no_concrete(24.1e6), no_concrete(3.3e9)
    (False, True)

    References
    ----------
    Judgement.
    """
    return strength_pa > NO_CONCRETE_PA
