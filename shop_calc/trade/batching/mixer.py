"""The mixer: what it takes and how long a load lasts."""

from dataclasses import dataclass

from shop_calc import defaults
from shop_calc.science import portions
from shop_calc.science.checks import require

VESSELS = ("bucket and paddle", "drum", "tub by hand")


@dataclass(frozen=True)
class Mixer:
    """What the mix is made in, and how long a load takes.

    Parameters
    ----------
    vessel : str
        One of `VESSELS` [-].
    usable_m3 : float
        Volume that mixes without spilling [m3].
    load_interval_h : float
        Time from one load's water to the next [h].
    rest_h : float
        Rest after mixing, part of the interval [h].
    power_w : float or None
        Rated power, for the upper bound of the heat of mixing [W].

    Raises
    ------
    ValueError
        When a volume or a time is not possible, or the rest is longer than the load.

    Examples
    --------
    >>> Mixer("tub by hand", usable_m3=0.0300).usable_m3
    0.03

    References
    ----------
    Common practice, no source.
    """

    vessel: str = "bucket and paddle"
    usable_m3: float = 0.012
    load_interval_h: float = 20.0 / 60.0
    rest_h: float = 10.0 / 60.0
    power_w: float | None = None

    def __post_init__(self):
        if self.vessel not in VESSELS:
            raise ValueError(f"vessel: {self.vessel!r} given; it must be one of {', '.join(VESSELS)}")
        require("usable volume of the vessel", self.usable_m3, 0, unit="m3", low_open=True)
        require("time for one load", self.load_interval_h, 0, unit="h", low_open=True)
        require("rest after mixing", self.rest_h, 0, self.load_interval_h, unit="h")
        if self.power_w is not None:
            require("power of the mixer", self.power_w, 0, unit="W")


def mixer(
    vessel="bucket and paddle",
    *,
    usable_m3=None,
    rated_m3=None,
    drum_share=None,
    load_interval_h=None,
    rest_h=None,
    power_w=None,
):
    """Describe the mixer, with defaults for what is not said.

    Not for a mixer truck.

    Parameters
    ----------
    vessel : str
        "bucket and paddle", "drum" or "tub by hand" [-].
    usable_m3 : float or None
        Volume that mixes without spilling; goes before `rated_m3` [m3].
    rated_m3 : float or None
        Rated volume of a drum, of which a share is usable [m3].
    drum_share : float or None
        That share [-].
    load_interval_h : float or None
        Time from one load's water to the next [h].
    rest_h : float or None
        Rest after mixing; at most the interval [h].
    power_w : float or None
        Rated power [W].

    Returns
    -------
    Mixer
        The mixer [-].

    Raises
    ------
    ValueError
        When a number is not possible.

    Notes
    -----
    A drum is never full: 0.50 of its rated volume, 0.4 to 0.7.

    Examples
    --------
    >>> f"{mixer('drum', rated_m3=0.169901).usable_m3:.7f}"
    '0.0849505'

    References
    ----------
    Common practice, no source.
    """
    if usable_m3 is None and rated_m3 is not None:
        share = defaults.si("drum_share") if drum_share is None else drum_share
        usable_m3 = portions.usable_volume_m3(rated_m3, share)
    interval = defaults.si("minutes_per_load") if load_interval_h is None else load_interval_h
    rest = min(defaults.si("rest_after_mixing"), interval) if rest_h is None else rest_h
    usable = defaults.si("usable_volume") if usable_m3 is None else usable_m3
    return Mixer(vessel, usable, interval, rest, power_w)
