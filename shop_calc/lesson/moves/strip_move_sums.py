"""Lesson 06: the sums behind its questions, each with its working."""

from shop_calc import defaults, units
from shop_calc.science import strength_laws
from shop_calc.science.bending import carried_stress_pa
from shop_calc.science.loads import GRAVITY_M_S2, implied_density_kg_m3
from shop_calc.science.maturity import temperature_time_c_h
from shop_calc.trade.after.carrying import needed_strength_pa
from shop_calc.trade.after.seat_rule import SITTING_DOWN, seat_span_stress_pa
from shop_calc.trade.working import Step

DATUM_C = units.convert(14.0, "F", "C")
_BEAM, _RUPTURE = "elementary beam theory", "ACI 318-19 19.2.3, from memory"


def plank_pa(length_m, width_m, thickness_m, density_kg_m3):
    """Stress of a top carried flat by its ends, whatever its width.

    Parameters
    ----------
    length_m, width_m, thickness_m : float
        Sizes; the width does not count [m].
    density_kg_m3 : float
        Density [kg/m3].

    Returns
    -------
    float
        Tension of the underside at the middle [Pa].

    Examples
    --------
    >>> f"{plank_pa(2.4384, 0.635, 0.01905, 2402.769) / 6894.757:.2f}"
    '800.00'

    References
    ----------
    Derived: elementary beam theory, 0.75 rho g L^2/t.
    """
    return float(carried_stress_pa(length_m, thickness_m, density_kg_m3))


def _plank_steps(length_m, width_m, thickness_m, density_kg_m3):
    return (
        Step("stress_pa", "s", "0.75 * rho * g * L**2 / t",
             (("rho", density_kg_m3, "kg/m3"), ("g", GRAVITY_M_S2, "m/s2"), ("L", length_m, "m"),
              ("t", thickness_m, "m")),
             plank_pa(length_m, width_m, thickness_m, density_kg_m3), "Pa", "derived", _BEAM,
             "pull of its own weight; the width does not count"),
    )  # fmt: skip


def patio_pa(length_m, thickness_m, density_kg_m3):
    """Compressive strength that a square top asks for when it is carried flat by two opposite edges.

    Parameters
    ----------
    length_m, thickness_m : float
        Side and thickness [m].
    density_kg_m3 : float
        Density [kg/m3].

    Returns
    -------
    float
        Strength with jolt and scatter [Pa].

    Examples
    --------
    >>> f"{patio_pa(1.524, 0.01905, 2402.769) / 6894.757:.0f}"
    '15625'

    References
    ----------
    Beam theory; ACI 318-19 19.2.3, from memory; factors of data/defaults.csv.
    """
    return float(needed_strength_pa(carried_stress_pa(length_m, thickness_m, density_kg_m3)))


def _patio_steps(length_m, thickness_m, density_kg_m3):
    jolt, scatter = defaults.si("carry_factor"), defaults.si("flexure_scatter")
    stress = float(carried_stress_pa(length_m, thickness_m, density_kg_m3))
    return (
        Step("stress_pa", "s", "0.75 * rho * g * L**2 / t",
             (("rho", density_kg_m3, "kg/m3"), ("g", GRAVITY_M_S2, "m/s2"), ("L", length_m, "m"),
              ("t", thickness_m, "m")), stress, "Pa", "derived", _BEAM, "pull of its own weight"),
        Step("rupture_pa", "r", "k_jolt * k_scatter * s",
             (("k_jolt", jolt, "-"), ("k_scatter", scatter, "-"), ("s", stress, "Pa")), jolt * scatter * stress, "Pa",
             "judgement", "ours", "needed in bending"),
        Step("strength_pa", "f", "(r / k_r)**2",
             (("r", jolt * scatter * stress, "Pa"), ("k_r", strength_laws.RUPTURE_ROOT_PA, "Pa**0.5")),
             patio_pa(length_m, thickness_m, density_kg_m3), "Pa", "memory", _RUPTURE, "needed in compression"),
    )  # fmt: skip


def squared_pa(length_m, thickness_m, density_kg_m3, factor):
    """Compressive strength for the pull of a top carried flat by its ends, times any factor.

    Parameters
    ----------
    length_m, thickness_m : float
        Length and thickness [m].
    density_kg_m3 : float
        Density [kg/m3].
    factor : float
        On the pull [-].

    Returns
    -------
    float
        Strength [Pa].

    Examples
    --------
    >>> f"{squared_pa(1.524, 0.01905, 2402.769, 3.0) / 6894.757:.0f}"
    '15625'

    References
    ----------
    Beam theory; ACI 318-19 19.2.3, from memory.
    """
    stress = carried_stress_pa(length_m, thickness_m, density_kg_m3)
    return float(strength_laws.strength_for_rupture_pa(factor * stress))


def degree_days(time_h, temp_c, datum_c):
    """Temperature-time factor in degrees times days.

    Parameters
    ----------
    time_h : float
        How long [h].
    temp_c, datum_c : float
        Temperature, and the datum above which it counts [°C].

    Returns
    -------
    float
        Degrees times days [°C·d].

    Examples
    --------
    >>> degree_days(28 * 24.0, 15.0, -11.0)
    728.0

    References
    ----------
    Form of ASTM C1074.
    """
    return float(temperature_time_c_h(time_h, temp_c, datum_c)) / 24.0


def _degree_steps(time_h, temp_c, datum_c):
    return (
        Step("degrees_above", "d", "T - T_0", (("T", temp_c, "C"), ("T_0", datum_c, "C")), temp_c - datum_c, "-",
             "derived", "form of ASTM C1074", "degrees above the datum"),
        Step("degree_days", "M", "d * t / 24", (("d", temp_c - datum_c, "-"), ("t", time_h, "h")),
             degree_days(time_h, temp_c, datum_c), "-", "derived", "form of ASTM C1074", "in °C·days"),
    )  # fmt: skip


def degree_hours(time_h, temp_c):
    """Temperature-time factor over a datum of 14 °F.

    Parameters
    ----------
    time_h : float
        How long [h].
    temp_c : float
        Temperature [°C].

    Returns
    -------
    float
        Degrees times hours [°C·h].

    Examples
    --------
    >>> round(degree_hours(24.0, 10.0), 9)
    480.0

    References
    ----------
    Form of ASTM C1074.
    """
    return float(temperature_time_c_h(time_h, temp_c, DATUM_C))


def _hour_steps(time_h, temp_c):
    return (
        Step("degrees_above", "d", "T - T_0", (("T", temp_c, "C"), ("T_0", DATUM_C, "C")),
             temp_c - DATUM_C, "-", "derived", "form of ASTM C1074", "degrees Celsius above the datum"),
        Step("degree_hours", "M", "d * t", (("d", temp_c - DATUM_C, "-"), ("t", time_h, "h")),
             degree_hours(time_h, temp_c), "-", "derived", "form of ASTM C1074", "in °C·h"),
    )  # fmt: skip


def _density_steps(mass_kg_m2, thickness_m):
    return (
        Step("density_kg_m3", "rho", "m / t", (("m", mass_kg_m2, "kg/m2"), ("t", thickness_m, "m")),
             float(implied_density_kg_m3(mass_kg_m2, thickness_m)), "kg/m3", "derived", "geometry",
             "density that the page means"),
    )  # fmt: skip


def sitter_pa(span_m, width_m, thickness_m):
    """Stress of one person on the middle of a span, sitting down included.

    Parameters
    ----------
    span_m, width_m, thickness_m : float
        Span below 48 in, width up to 24 in, thickness [m].

    Returns
    -------
    float
        Tension below, the bench's own left out [Pa].

    Examples
    --------
    >>> f"{sitter_pa(1.016, 0.381, 0.0381) / 6894.757:.2f}"
    '888.89'

    References
    ----------
    Rule of this project, judgement; beam theory.
    """
    return float(seat_span_stress_pa(span_m, width_m, thickness_m, 2400.0)[1])


def _sitter_steps(span_m, width_m, thickness_m):
    force = SITTING_DOWN * defaults.si("seat_load") * GRAVITY_M_S2
    return (
        Step("force_n", "P", "k * m * g",
             (("k", SITTING_DOWN, "-"), ("m", defaults.si("seat_load"), "kg"), ("g", GRAVITY_M_S2, "m/s2")), force, "N",
             "judgement", "ours", "one person, sitting down"),
        Step("moment_n_m", "M", "P * L / 4", (("P", force, "N"), ("L", span_m, "m")), force * span_m / 4.0, "N*m",
             "derived", _BEAM, "bending moment at the middle"),
        Step("stress_pa", "s", "6 * M / (b * t**2)",
             (("M", force * span_m / 4.0, "N*m"), ("b", width_m, "m"), ("t", thickness_m, "m")),
             sitter_pa(span_m, width_m, thickness_m), "Pa", "derived", _BEAM, "pull of the person on the underside"),
    )  # fmt: skip


WORKING = {
    "plank": _plank_steps,
    "patio": _patio_steps,
    "datum": _degree_steps,
    "fourteen": _hour_steps,
    "claimed": _density_steps,
    "sitter": _sitter_steps,
}
