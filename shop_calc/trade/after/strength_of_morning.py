"""Strength by the morning after and later: two curves over the temperatures of this day and night."""

from dataclasses import dataclass

import numpy as np

from shop_calc import defaults
from shop_calc.science import crossing, maturity, setting, strength
from shop_calc.science.checks import require
from shop_calc.trade.after.later_temps import temps_after

DAY_H = 24.0
# Cement by how fast it is: constants of ACI 209 (hours, -) and s of EN 1992, which names them R, N, S. ACI 209 has
# nothing for slow cements: the ones of Type I stand in, and EN is the lower of the two there.
CEMENTS = {
    "rapid": (strength.ACI_209_DAYS["moist", "III"], strength.EN_S_FACTOR["R"]),
    "normal": (strength.ACI_209_DAYS["moist", "I"], strength.EN_S_FACTOR["N"]),
    "slow": (strength.ACI_209_DAYS["moist", "I"], strength.EN_S_FACTOR["S"]),
}


@dataclass(frozen=True)
class Strength28:
    """Compressive strength at 28 days as the plan counts with it.

    Parameters
    ----------
    likely_pa, low_pa, high_pa : float
        Likely value and its band [Pa].
    tested : bool
        True when the job gave it, False for the default of the table [-].

    Examples
    --------
    >>> strength_28(None).tested
    False

    References
    ----------
    Row strength_28d of data/defaults.csv.
    """

    likely_pa: float
    low_pa: float
    high_pa: float
    tested: bool

    @property
    def counted_pa(self):
        """What moves and supports are checked with: the test, or the low end where nobody tested."""
        return self.likely_pa if self.tested else self.low_pa


def strength_28(given_pa=None):
    """Take the strength at 28 days from the job, or from the table with its band.

    Parameters
    ----------
    given_pa : float or None
        What a test of this mix gave; None when nobody tested [Pa].

    Returns
    -------
    Strength28
        Likely value and band [Pa].

    Raises
    ------
    ValueError
        When it is outside what the table allows.

    Examples
    --------
    >>> f"{strength_28().likely_pa / 6894.757:.1f}"
    '5000.0'

    References
    ----------
    Row strength_28d of data/defaults.csv; the band of a tested mix is the scatter of single mixes in
    data/open/concrete_1030.csv, 15 %, a judgement here.
    """
    if given_pa is None:
        low, likely, high = defaults.si_band("strength_28d")
        return Strength28(likely, low, high, False)
    given = require("strength at 28 days", given_pa, 0, unit="Pa", low_open=True)
    return Strength28(given, 0.85 * given, 1.15 * given, True)


@dataclass(frozen=True, eq=False)
class Hardening:
    """How far a piece has hardened at each hour, as a share of its strength at 28 days.

    Parameters
    ----------
    time_h : ndarray of shape (n,)
        Hours after the first water; the first is the face's own water [h].
    temp_c : ndarray of shape (n,)
        Temperature of the piece [°C].
    aci_age_h : ndarray of shape (n,)
        Equivalent age for ACI 209, at the reference temperature of the table [h].
    en_age_h : ndarray of shape (n,)
        Temperature-adjusted age of EN 1992, at 20 °C [h].
    aci_ratio, en_ratio : ndarray of shape (n,)
        Share of the 28-day strength by each curve, 0 before final set [-].
    final_set_h : float
        When it sets for good, hours after the first water [h].
    cement : str
        rapid, normal or slow [-].
    activation_energy_j_mol : float
        What the age for ACI 209 was counted with [J/mol].

    Examples
    --------
    >>> steps = np.linspace(0.0, 72.0, 289)
    >>> round(harden(steps, np.full_like(steps, 23.0)).ratio_at(72.0), 5)
    0.45802

    References
    ----------
    ACI 209R-92, from memory; EN 1992-1-1:2004, 3.1.2(6) and B.1(3).
    """

    time_h: np.ndarray
    temp_c: np.ndarray
    aci_age_h: np.ndarray
    en_age_h: np.ndarray
    aci_ratio: np.ndarray
    en_ratio: np.ndarray
    final_set_h: float
    cement: str
    activation_energy_j_mol: float

    @property
    def ratio(self):
        """The lower of the two shares at every hour."""
        return np.minimum(self.aci_ratio, self.en_ratio)

    def ages_at(self, hour_h):
        """Ages for ACI 209 and EN 1992 at an hour after the first water."""
        return tuple(float(np.interp(hour_h, self.time_h, age)) for age in (self.aci_age_h, self.en_age_h))

    def ratios_at(self, hour_h):
        """Share of the 28-day strength by ACI 209 and by EN 1992 at an hour after the first water."""
        if not hour_h >= self.final_set_h:
            return 0.0, 0.0
        return tuple(float(ratio) for ratio in _ratios(*self.ages_at(hour_h), self.cement))

    def ratio_at(self, hour_h):
        """The lower of the two shares at an hour after the first water."""
        return min(self.ratios_at(hour_h))

    def hour_at(self, ratio):
        """Hour at which a share is reached, or None within 28 days."""
        hour = float(crossing.crossing_time_h(self.time_h, self.ratio, ratio))
        return None if np.isnan(hour) else hour


def harden(time_h, temp_c, cement="normal", clock_day=None):
    """Follow the two strength curves along a record of temperatures.

    Not for frost, nor for a face that has dried out: dry concrete stops gaining whatever the clock says.

    Parameters
    ----------
    time_h : array of shape (n,)
        Rising hours; the first is when water met cement [h].
    temp_c : array of shape (n,)
        Temperature of the piece at these hours [°C].
    cement : str
        rapid, normal or slow [-].
    clock_day : Cloud, optional
        The day whose initial set, exponent and activation energy count, DayInputs.middle_day() of a plan; that of the
        defaults if left out [as its fields].

    Returns
    -------
    Hardening
        Ages and shares at every hour [h, -].

    Raises
    ------
    ValueError
        When the cement is none of the three or the times do not rise.

    Notes
    -----
    Each curve has its own age: ACI 209 that of the set clock with its reference moved to 23 °C, at which its tests
    were kept; EN 1992 its own, 20 °C. No strength counts before final set, 4000 psi of the set clock: that of the
    plan, which a shop's own log has moved. Below one day (ACI) and three days (EN) both are carried beyond what they
    were made for.

    Examples
    --------
    >>> hours = np.linspace(0.0, 24.0, 97)
    >>> f"{harden(hours, np.full_like(hours, 15.0)).aci_age_h[-1]:.4f}"
    '15.9929'

    References
    ----------
    ACI 209R-92 Table 2.2.1, from memory; EN 1992-1-1:2004, 3.1.2(6) and (B.10); ASTM C1074 form of the age.
    """
    if cement not in CEMENTS:
        raise ValueError(f"cement: {cement!r} given; it must be one of {', '.join(CEMENTS)}")
    times, temps = np.asarray(time_h, dtype=float), np.asarray(temp_c, dtype=float)
    reference_c = defaults.si("strength_reference_temp")
    rows = ("set_time_initial", "set_exponent", "activation_energy")
    initial_h, exponent, energy = map(defaults.si, rows) if clock_day is None else (
        clock_day.initial_set_h, clock_day.exponent, clock_day.activation_energy_j_mol
    )  # fmt: skip
    aci_age = setting.equivalent_age_h(times, temps, energy, reference_c)
    rate = maturity.en_rate_factor(temps)
    en_age = np.concatenate(([0.0], np.cumsum(np.diff(times) * (rate[1:] + rate[:-1]) / 2.0)))
    final_age = setting.age_at_resistance_h(setting.FINAL_SET_PA, initial_h, exponent) / float(
        setting.rate_factor(reference_c, energy, defaults.si("reference_temp"))
    )
    final_set = float(crossing.crossing_time_h(times, aci_age, final_age))
    hard = aci_age >= final_age
    aci, en = (np.where(hard, ratio, 0.0) for ratio in _ratios(aci_age, en_age, cement))
    return Hardening(times, temps, aci_age, en_age, aci, en, final_set, cement, energy)


def _ratios(aci_age_h, en_age_h, cement):
    (a_days, b_factor), s_factor = CEMENTS[cement]
    aci = strength.aci_strength_ratio(aci_age_h, a_days * DAY_H, b_factor)
    return aci, strength.en_strength_ratio(en_age_h, s_factor)


def piece_hardening(day, cure, cover, cement="normal"):
    """Follow a piece from its face's water through the day, the night under a cover, and 28 days of its room.

    Parameters
    ----------
    day : Day
        The day [h].
    cure : Cure
        The night with its histories [as its fields].
    cover : str
        Key of a cover [-].
    cement : str
        rapid, normal or slow [-].

    Returns
    -------
    Hardening
        At every step [h, °C, -].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> piece_hardening(plan.day, plan.cure, "open").final_set_h > 4
    True

    References
    ----------
    As `harden`; the day and the night as in the set clock and in the cure.
    """
    inputs, own = day.samples.inputs, cure.before
    night_h, night_c = cure.night(cover)
    later_h, later_c = temps_after(inputs.room, inputs.thickness_m, float(night_c[-1]), float(night_h[-1]))
    own_h = own.time_h + inputs.face_load_h
    kept = own_h < night_h[0] - 1e-6
    time_h = np.concatenate((own_h[kept], night_h[:-1], later_h))
    temp_c = np.concatenate((own.temp_c[kept], night_c[:-1], later_c))
    return harden(time_h, temp_c, cement, inputs.middle_day())
