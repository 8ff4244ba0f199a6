"""Numbers that a learner measured at the bench, typed into the lesson and laid over the model's band."""

from shop_calc import units
from shop_calc.lesson.pictures.over_band import BenchNumber, OverBand
from shop_calc.lesson.practice import Said


def typed(value, kind, unit):
    """Read one measured number.

    Parameters
    ----------
    value : float or str
        A number in `unit`, a text with its unit, or the three dots of a blank [unit].
    kind : str
        A kind of `shop_calc.units` [-].
    unit : str
        Unit of a bare number [-].

    Returns
    -------
    float or None
        The number; None for a blank [SI unit of the kind].

    Raises
    ------
    ValueError
        When there is something that cannot be read; the message says what may be typed.

    Examples
    --------
    >>> typed(57.2, "temperature", "F"), typed("14 °C", "temperature", "F"), typed(..., "temperature", "F")
    (14.0, 14.0, None)

    References
    ----------
    Common practice, no source.
    """
    if value is None or value is Ellipsis or (isinstance(value, str) and value.strip(" .…_?") == ""):
        return None
    if not isinstance(value, (str, int, float)) or isinstance(value, bool):
        raise ValueError(f"measured number: {value!r} given; it must be one number, in {unit}, or a text with its unit")
    try:
        text = f"{float(value):.12g} {unit}"  # a bare number, whether it stands between quotes or not
    except ValueError:
        text = value
    return float(units.parse(text, kind, entry="measured number"))


def over_band(value, band, kind, unit, between, title, caption):
    """Lay a measured number over a band; a blank shows the band alone, and nothing typed stops the lesson.

    Parameters
    ----------
    value : float or str
        What was measured, see `typed` [unit].
    band : (float, float, float)
        Low, likely and high of the model [SI unit of the kind].
    kind : str
        A kind of `shop_calc.units` [-].
    unit : str
        Unit of a bare number [-].
    between : (float, float)
        Ends of the scale [SI unit of the kind].
    title, caption : str
        A line over the picture, and a sentence on what to see in it [-].

    Returns
    -------
    Still or Said
        Shown by the notebook [-].

    Examples
    --------
    >>> over_band(..., (12.0, 13.8, 15.5), "temperature", "F", (8.0, 24.0), "A wet rag", "The forecast.").alt
    'A wet rag. Model: 56.8 °F (13.8 °C), between 53.6 °F (12 °C) and 59.9 °F (15.5 °C). Nothing measured yet.'

    References
    ----------
    Common practice, no source.
    """
    try:
        measured = typed(value, kind, unit)
    except ValueError as error:
        return Said(f"This cannot be read: {error}")
    return BenchNumber(OverBand(*band, measured), kind, between, title).still(caption)
