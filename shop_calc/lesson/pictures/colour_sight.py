"""What becomes of colours in a one-colour print, and in the eyes of colour-blind readers."""

import numpy as np

# Dichromacy is severity 1.0 of the anomaly. Machado, Oliveira and Fernandes, "A physiologically-based model for
# simulation of color vision deficiency", IEEE Transactions on Visualization and Computer Graphics 15 (6), 2009,
# 1291-1298, matrices of severity 1.0 (read, in the copy that the package colorspacious 1.1.2 carries). They act
# on linear RGB.
MATRICES = {
    "deuteranopia": np.array(
        [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]]
    ),
    "protanopia": np.array(
        [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]]
    ),
}
# Luminance of linear RGB: ITU-R BT.709 (from memory of the standard).
LUMINANCE = np.array([0.2126, 0.7152, 0.0722])
SIGHTS = ("colour", "grey", *MATRICES)


def to_linear(rgb):
    """From the stored values of a picture to light.

    Parameters
    ----------
    rgb : ndarray of shape (..., 3)
        sRGB, 0 to 1 [-].

    Returns
    -------
    ndarray of shape (..., 3)
        Linear light, 0 to 1 [-].

    Examples
    --------
    >>> round(float(to_linear(np.array([0.5, 0.5, 0.5]))[0]), 6)
    0.214041

    References
    ----------
    IEC 61966-2-1 (sRGB); from memory of the standard.
    """
    rgb = np.asarray(rgb, dtype=float)
    return np.where(rgb <= 0.04045, rgb / 12.92, ((rgb + 0.055) / 1.055) ** 2.4)


def from_linear(light):
    """From light back to the stored values of a picture; clipped to what can be shown.

    Parameters
    ----------
    light : ndarray of shape (..., 3)
        Linear light [-].

    Returns
    -------
    ndarray of shape (..., 3)
        sRGB, 0 to 1 [-].

    Examples
    --------
    >>> round(float(from_linear(np.array([0.214041140]))[0]), 6)
    0.5

    References
    ----------
    IEC 61966-2-1 (sRGB); from memory of the standard.
    """
    light = np.clip(light, 0.0, 1.0)
    return np.where(light <= 0.0031308, 12.92 * light, 1.055 * light ** (1 / 2.4) - 0.055)


def luminance(rgb):
    """How light a colour is in a one-colour print, 0 to 1.

    Parameters
    ----------
    rgb : ndarray of shape (..., 3)
        sRGB, 0 to 1 [-].

    Returns
    -------
    ndarray of shape (...)
        Relative luminance [-].

    Examples
    --------
    >>> round(float(luminance(np.array([1.0, 1.0, 1.0]))), 6)
    1.0
    """
    return to_linear(rgb) @ LUMINANCE


def contrast(first, second):
    """Contrast ratio of two colours, 1 to 21.

    Parameters
    ----------
    first, second : ndarray of shape (3,)
        sRGB, 0 to 1 [-].

    Returns
    -------
    float
        Ratio [-].

    Examples
    --------
    >>> round(contrast(np.zeros(3), np.ones(3)), 4)
    21.0

    References
    ----------
    WCAG 2.1, contrast ratio; from memory of the recommendation.
    """
    low, high = sorted((float(luminance(first)), float(luminance(second))))
    return (high + 0.05) / (low + 0.05)


def seen_as(rgb, sight):
    """A picture as another reader, or a one-colour printer, has it.

    Parameters
    ----------
    rgb : ndarray of shape (..., 3)
        sRGB, 0 to 1 [-].
    sight : str
        One of SIGHTS [-].

    Returns
    -------
    ndarray of shape (..., 3)
        sRGB, 0 to 1 [-].

    Raises
    ------
    ValueError
        When there is no such sight.

    Examples
    --------
    >>> bool(np.allclose(seen_as(np.ones(3), "protanopia"), 1.0, atol=1e-6))
    True
    """
    if sight not in SIGHTS:
        raise ValueError(f"sight: {sight!r} given; must be one of {', '.join(SIGHTS)}")
    rgb = np.asarray(rgb, dtype=float)
    if sight == "colour":
        return rgb
    light = to_linear(rgb)
    if sight == "grey":
        return from_linear(np.repeat((light @ LUMINANCE)[..., None], 3, axis=-1))
    return from_linear(light @ MATRICES[sight].T)
