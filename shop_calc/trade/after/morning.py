"""What each cover leaves the piece by the morning: ages, maturity and strength, each with its reference."""

from dataclasses import dataclass

import numpy as np

from shop_calc import defaults
from shop_calc.science import maturity
from shop_calc.trade.after.strength_of_morning import piece_hardening, strength_28
from shop_calc.units import show


@dataclass(frozen=True)
class Morning:
    """The piece in the morning under one cover.

    Parameters
    ----------
    key, title : str
        The cover [-].
    hour_h : float
        The morning, hours after the first water [h].
    temp_c : float
        Temperature of the piece [°C].
    aci_age_h : float
        Equivalent age at `aci_reference_c` [h].
    en_age_h : float
        Temperature-adjusted age at 20 °C [h].
    maturity_c_h : float
        Temperature-time factor over `datum_c` [°C h].
    aci_reference_c, datum_c : float
        What the two are counted from [°C].
    aci_pa, en_pa : float
        Strength by each curve, from the likely strength at 28 days [Pa].
    likely_pa, low_pa, high_pa : float
        The lower of the two, and its band [Pa].

    Examples
    --------
    >>> row = Morning("open", "Leave it open", 24.0, 16.1, 18.4, 20.9, 653.0, 23.0, -10.0, 6.3e6, 1e7, 6.3e6, 4e6, 9e6)
    >>> row.lower
    'ACI 209'

    References
    ----------
    ACI 209R-92, from memory; EN 1992-1-1:2004; forms of ASTM C1074.
    """

    key: str
    title: str
    hour_h: float
    temp_c: float
    aci_age_h: float
    en_age_h: float
    maturity_c_h: float
    aci_reference_c: float
    datum_c: float
    aci_pa: float
    en_pa: float
    likely_pa: float
    low_pa: float
    high_pa: float

    @property
    def lower(self):
        """Which of the two curves is the lower one."""
        return "ACI 209" if self.aci_pa <= self.en_pa else "EN 1992"

    def words(self, system="both"):
        """Strength and maturity in one line, every reference named."""
        return (
            f"{show(self.likely_pa, 'pressure', system)}, {show(self.low_pa, 'pressure', system)} to "
            f"{show(self.high_pa, 'pressure', system)}, by {self.lower}, the lower of two; as old as "
            f"{self.aci_age_h:.1f} h at {self.aci_reference_c:g} °C (ACI 209) or {self.en_age_h:.1f} h at 20 °C (EN "
            f"1992); temperature-time factor {self.maturity_c_h:.0f} °C·h over a datum of "
            f"{show(self.datum_c, 'temperature', system)}"
        )


def mornings(day, cure, strength_at_28=None, cement="normal"):
    """Say what every cover leaves the piece by the morning.

    Not a test: a cast cylinder that lay beside the piece knows better.

    Parameters
    ----------
    day : Day
        The day [h].
    cure : Cure
        The night [as its fields].
    strength_at_28 : Strength28 or None
        Strength at 28 days; that of the table when left out [Pa].
    cement : str
        rapid, normal or slow [-].

    Returns
    -------
    tuple
        (tuple of Morning in the order of the covers, Hardening under the recommended cover) [as their fields].

    Raises
    ------
    ValueError
        When the cement is none of the three.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> len(mornings(plan.day, plan.cure)[0])
    6

    References
    ----------
    As `strength_of_morning.harden`.
    """
    at_28 = strength_28() if strength_at_28 is None else strength_at_28
    alike, rows = {}, []
    for choice in cure.choices:
        mark = (choice.morning_age_h, choice.morning_temp_c)
        if mark not in alike:  # covers that keep the air out leave one and the same piece
            alike[mark] = piece_hardening(day, cure, choice.key, cement)
        rows.append(_morning(choice, cure.until_h, alike[mark], at_28))
        if choice.key == cure.pick:
            picked = alike[mark]
    return tuple(rows), picked


def _morning(choice, hour_h, hardening, at_28):
    times = hardening.time_h
    until = np.searchsorted(times, hour_h - 1e-9, side="right") - 1
    (aci_age, en_age), (aci, en) = hardening.ages_at(hour_h), hardening.ratios_at(hour_h)
    lower, datum = min(aci, en), defaults.si("maturity_datum")
    times, temps = np.append(times[: until + 1], hour_h), hardening.temp_c[: until + 1]
    temps = np.append(temps, np.interp(hour_h, hardening.time_h, hardening.temp_c))
    last = times.size if times[-1] > times[-2] + 1e-9 else times.size - 1
    return Morning(
        choice.key,
        choice.title,
        hour_h,
        float(temps[-1]),
        aci_age,
        en_age,
        float(maturity.sampled_temperature_time_c_h(times[:last], temps[:last], datum)),
        defaults.si("strength_reference_temp"),
        datum,
        aci * at_28.likely_pa,
        en * at_28.likely_pa,
        lower * at_28.likely_pa,
        lower * at_28.low_pa,
        lower * at_28.high_pa,
    )
