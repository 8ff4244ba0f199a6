"""What the day depends on, and the same day with another mortar or another start."""

from dataclasses import dataclass, fields, replace
from datetime import datetime

import numpy as np

from shop_calc.science import checks
from shop_calc.trade.timeline.cloud import Cloud, middle_day
from shop_calc.trade.timeline.room import Room, shifted


@dataclass(frozen=True)
class DayInputs:
    """What the day depends on.

    Parameters
    ----------
    water_in : datetime
        Clock time at which water first meets powder [-].
    room : Room
        Air over the piece, hours counted from the first water [as its fields].
    mix_temp_c : float
        Temperature of the mortar when it leaves the mixer; the face has it [°C].
    thickness_m : float
        Thickness of the piece [m].
    base_depth_m : float
        Depth of the base layer [m].
    area_m2 : float
        Top surface [m2].
    base_loads_h : tuple of float
        When each load that goes into the base meets water, hours after the first [h].
    face_load_h : float
        When the load that gives the face share meets water [h].
    minutes_per_load : float
        From one load's water until it is placed [min].
    hands : float
        People at work [-].
    base_mix_temp_c : float or None
        Temperature of the base when stone has gone in; that of the mortar when left out [°C].
    bands : dict or None
        Bands that a shop's own log gives, see cloud.day_cloud [SI].
    base_bands : dict or None
        Bands of the base where the log has its own; those of `bands` if left out [SI].
    base_follows : float
        Degrees that the base gets warmer where the mortar leaves the mixer one degree warmer: less than one, because
        the stone stays as warm as it lies [-].
    drop_m : float
        How far the deepest dropped edge hangs below the rest; 0 without one [m].

    Examples
    --------
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> inputs.face_load_h
    0.0

    References
    ----------
    Common practice, no source.
    """

    water_in: datetime
    room: Room
    mix_temp_c: float
    thickness_m: float
    base_depth_m: float
    area_m2: float
    base_loads_h: tuple = (0.0,)
    face_load_h: float = 0.0
    minutes_per_load: float = 20.0
    hands: float = 1.0
    base_mix_temp_c: float | None = None
    bands: dict | None = None
    base_bands: dict | None = None
    base_follows: float = 1.0
    drop_m: float = 0.0

    def __post_init__(self):
        checks.require("mix temperature", self.mix_temp_c, 0, 40, unit="°C")
        checks.require("base mix temperature", self.base_temp_c, 0, 40, unit="°C")
        checks.require("thickness", self.thickness_m, 0, unit="m", low_open=True)
        checks.require("base depth", self.base_depth_m, 0, self.thickness_m, unit="m", low_open=True)
        checks.require("minutes per load", self.minutes_per_load, 0, 180, unit="min", low_open=True)
        checks.require("base follows", self.base_follows, 0, 1)
        checks.require("dropped edge", self.drop_m, 0, unit="m")
        checks.require("load times", np.asarray(self.base_loads_h), 0, unit="h")

    @property
    def base_temp_c(self):
        """Temperature of the base after mixing [°C]."""
        return self.mix_temp_c if self.base_mix_temp_c is None else self.base_mix_temp_c

    @property
    def standing_m(self):
        """Height of base that has to stand alone: its depth, and that of the deepest dropped edge [m]."""
        return self.base_depth_m + self.drop_m

    def middle_day(self):
        """Give the day on which all that is uncertain has its middle, a log's where there is one; each field a number."""
        day = middle_day(self.bands)
        return Cloud(**{field.name: float(getattr(day, field.name)[0]) for field in fields(Cloud)})

    def mixed_at(self, mix_temp_c):
        """Give the same day with another mortar; the stone of the base stays as warm as it lies."""
        if self.base_mix_temp_c is None:
            return replace(self, mix_temp_c=mix_temp_c)
        base_c = self.base_mix_temp_c + self.base_follows * (mix_temp_c - self.mix_temp_c)
        return replace(self, mix_temp_c=mix_temp_c, base_mix_temp_c=min(max(base_c, 0.0), 40.0))  # as the entry allows

    def started_at(self, water_in):
        """Give the same day with its first water at another moment; the air keeps to the clock on the wall."""
        later_h = (water_in - self.water_in).total_seconds() / 3600.0
        return replace(self, water_in=water_in, room=shifted(self.room, later_h))
