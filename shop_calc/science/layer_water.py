"""Water of one layer and what the air takes of it."""

from shop_calc.science.checks import require


def water_share_lost(loss_kg_m2, thickness_m, water_kg_m3):
    """Share of a layer's water that has evaporated.

    Parameters
    ----------
    loss_kg_m2 : float or array
        Water lost from the surface [kg/m2].
    thickness_m : float or array
        Thickness of the layer that loses it [m].
    water_kg_m3 : float or array
        Water in the fresh layer [kg/m3].

    Returns
    -------
    float or array
        Share lost; above 1 when more left than the layer held, that is from the layer below [-].

    Raises
    ------
    ValueError
        When the loss is below 0 or thickness or water not above 0.

    Examples
    --------
    >>> f"{water_share_lost(0.7, 0.00635, 207.65):.6g}"
    '0.530875'

    References
    ----------
    Derived: mass balance of one layer.
    """
    loss = require("water lost", loss_kg_m2, 0, unit="kg/m2")
    thickness = require("layer thickness", thickness_m, 0, unit="m", low_open=True)
    return loss / (thickness * require("water in the mix", water_kg_m3, 0, unit="kg/m3", low_open=True))
