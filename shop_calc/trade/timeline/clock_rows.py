"""The rows that the clock of a day steps: first and last load of the base, and the face."""

from dataclasses import replace

import numpy as np

from shop_calc.trade.timeline.cloud import cloud_at, deviations


def _layers(inputs):
    """Hour of its water and mix temperature of each layer that is stepped, the base first and the face last."""
    base = [(at_h, inputs.base_temp_c) for at_h in dict.fromkeys((inputs.base_loads_h[0], inputs.base_loads_h[-1]))]
    face = (inputs.face_load_h, inputs.mix_temp_c)
    if base == [face] and inputs.base_bands is None:  # one load for both: step it once
        return [face]
    return [*base, face]


def clock_rows(inputs):
    """Give start and mix temperature of the rows of the clock, each layer with and without evaporation.

    Parameters
    ----------
    inputs : DayInputs
        What the day depends on [as its fields].

    Returns
    -------
    tuple of ndarray of shape (rows, 1)
        Hours after the first water, temperatures [h, °C].

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> day = dict(base_temp_c=14.0, face_load_h=0.5, mix_temp_c=16.0, base_bands=None)
    >>> clock_rows(SimpleNamespace(base_loads_h=(0.0, 0.25, 0.5), **day))[0][:, 0].tolist()
    [0.0, 0.0, 0.5, 0.5, 0.5, 0.5]

    References
    ----------
    Derived: the loads between the first and the last of the base set between them.
    """
    return tuple(np.repeat(column, 2)[:, np.newaxis] for column in zip(*_layers(inputs), strict=True))


def days_of_rows(inputs, days):
    """Give the days as the rows of the clock need them: the base has values of its own where the log gave them.

    Parameters
    ----------
    inputs : DayInputs
        What the day depends on [as its fields].
    days : Cloud
        The days [as its fields].

    Returns
    -------
    Cloud
        Fields of shape (days,), or (rows, days) where the base has its own [as its fields].

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> days_of_rows(SimpleNamespace(base_bands=None), "as they are")
    'as they are'

    References
    ----------
    As shop_calc.trade.timeline.cloud.
    """
    if inputs.base_bands is None:
        return days
    base = cloud_at(deviations(days, inputs.bands), inputs.base_bands)
    names = ("initial_set_h", "exponent", "activation_energy_j_mol")
    counts = [2 * (len(_layers(inputs)) - 1), 2]
    own = {name: np.repeat([getattr(base, name), getattr(days, name)], counts, axis=0) for name in names}
    return replace(days, **own)
