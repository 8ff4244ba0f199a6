"""Temperature, equivalent age and water loss of a thin slab in a changing room.

One temperature for the whole thickness: right for pieces a few centimetres thick (`biot_number` says how
right). Written for many slabs at once: one call steps thousands of samples or what-ifs through a day
together.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from shop_calc.science.checks import require
from shop_calc.science.crossing import crossing_time_h
from shop_calc.science.evaporation import menzel_coefficient_kg_m2_h_pa
from shop_calc.science.moist_air import LATENT_HEAT_J_KG, PSYCHROMETRIC_PA_K
from shop_calc.science.setting import REFERENCE_TEMP_C
from shop_calc.science.slab_inputs import Room, Slab
from shop_calc.science.slab_steps import LONGEST_PART_S, march

__all__ = [
    "THIN_BIOT_NUMBER",
    "SlabHistory",
    "biot_number",
    "convection_w_m2_k",
    "crossing_time_h",
    "slab_history",
]

#: Below this Biot number one temperature for the whole thickness is a fair picture [-]. Judgement.
THIN_BIOT_NUMBER = 0.3


@dataclass(frozen=True, eq=False)
class SlabHistory:
    """What happened to the slab, at the start and after every step.

    Parameters
    ----------
    time_h : array, shape (n_steps + 1,)
        Time since the start [h].
    temp_c : array, shape (n_steps + 1, ...)
        Temperature of the slab [°C].
    equivalent_age_h : array, shape (n_steps + 1, ...)
        Age at the reference temperature that would set it as far, counted from the start [h].
    demand_kg_m2 : array, shape (n_steps + 1, ...)
        Water that a surface staying wet, at this temperature, would have lost so far [kg/m2].
    free_water_kg_m2 : float or array, shape (...)
        Loss up to which the surface counts as wet [kg/m2].

    Examples
    --------
    >>> room = dict(air_temp_c=35.0, rh_fraction=0.2, wind_m_s=4.0, step_s=300, step_count=24)
    >>> day = slab_history(16.0, 0.0381, activation_energy_j_mol=36000.0, **room)
    >>> f"{day.demand_kg_m2[-1]:.6g} {day.water_lost_kg_m2[-1]:.6g} {day.evaporation_kg_m2_h[-1]:.6g}"
    '1.08548 0.61708 0.192384'

    References
    ----------
    As `slab_history`.
    """

    time_h: np.ndarray
    temp_c: np.ndarray
    equivalent_age_h: np.ndarray
    demand_kg_m2: np.ndarray
    free_water_kg_m2: float

    @cached_property
    def water_lost_kg_m2(self):
        """Water the surface has really lost [kg/m2], shape (n_steps + 1, ...)."""
        wet = self.free_water_kg_m2
        if not (self.demand_kg_m2[-1] > wet).any():
            return self.demand_kg_m2
        beyond = np.maximum(self.demand_kg_m2 / wet, 1.0)
        return np.minimum(self.demand_kg_m2, wet) + wet * np.log(beyond)

    @cached_property
    def demand_kg_m2_h(self):
        """Mean rate of a wet surface in each step [kg/m2/h], shape (n_steps, ...)."""
        return np.diff(self.demand_kg_m2, axis=0) / (self.time_h[1] - self.time_h[0])

    @cached_property
    def evaporation_kg_m2_h(self):
        """Mean rate of the drying surface in each step [kg/m2/h], shape (n_steps, ...)."""
        return np.diff(self.water_lost_kg_m2, axis=0) / (self.time_h[1] - self.time_h[0])


def convection_w_m2_k(wind_m_s):
    """Heat exchange between a surface and moving air, matched to Menzel's evaporation.

    Parameters
    ----------
    wind_m_s : float or array
        Wind over the surface [m/s].

    Returns
    -------
    float or array
        Heat transfer coefficient [W/m2/K].

    Raises
    ------
    ValueError
        When the wind is below 0 or above 60 m/s.

    Notes
    -----
    Psychrometric constant times latent heat times Menzel's coefficient, so that a wet slab without radiation
    settles at the wet bulb: 3.6 in still air, 17.3 at 16 km/h.

    Examples
    --------
    >>> f"{convection_w_m2_k(0.0):.6g}"
    '3.60675'

    References
    ----------
    Derived from `menzel_coefficient_kg_m2_h_pa` and the constants of `moist_air`.
    """
    return PSYCHROMETRIC_PA_K * LATENT_HEAT_J_KG * menzel_coefficient_kg_m2_h_pa(wind_m_s) / 3600


def biot_number(h_top_w_m2_k, thickness_m, conductivity_w_m_k):
    """Compare the way out through the surface with the way through the slab.

    Parameters
    ----------
    h_top_w_m2_k : float or array
        Heat transfer coefficient of the top, convection and radiation [W/m2/K].
    thickness_m : float or array
        Thickness of the slab [m].
    conductivity_w_m_k : float or array
        Thermal conductivity of the fresh mix [W/m/K].

    Returns
    -------
    float or array
        `h (d/2)/k`; above THIN_BIOT_NUMBER the middle lags behind the surface [-].

    Raises
    ------
    ValueError
        When an entry is not above 0.

    Examples
    --------
    >>> f"{biot_number(9.30675, 0.0381, 1.8):.6g}"
    '0.0984964'

    References
    ----------
    Heat transfer textbooks; derived.
    """
    film = require("heat transfer coefficient", h_top_w_m2_k, 0, unit="W/m2/K", low_open=True)
    half = require("thickness", thickness_m, 0, unit="m", low_open=True) / 2
    return film * half / require("conductivity", conductivity_w_m_k, 0, unit="W/m/K", low_open=True)


def slab_history(
    start_temp_c,
    thickness_m,
    air_temp_c,
    rh_fraction,
    wind_m_s,
    *,
    step_s,
    activation_energy_j_mol,
    step_count=None,
    density_kg_m3=2250.0,
    heat_capacity_j_kg_k=1000.0,
    h_bottom_w_m2_k=4.0,
    h_radiation_w_m2_k=5.7,
    free_water_kg_m2=0.25,
    evaporation_factor=1.0,
    evaporating=True,
    reference_temp_c=REFERENCE_TEMP_C,
    longest_part_s=LONGEST_PART_S,
):
    """Follow the temperature, the equivalent age and the water loss of a slab through a day.

    Not for thick or insulated work that warms itself: the heat of hydration is left out, and one temperature
    stands for the whole thickness (see `biot_number`).

    Parameters
    ----------
    start_temp_c : float or array, shape (...)
        Temperature of the mix as placed [°C].
    thickness_m : float or array, shape (...)
        Thickness of the slab [m].
    air_temp_c : float or array, shape (n_steps,) or (n_steps, ...)
        Air temperature in force during each step [°C].
    rh_fraction : float or array, shape (n_steps,) or (n_steps, ...)
        Relative humidity during each step, 0 to 1 [-].
    wind_m_s : float or array, shape (n_steps,) or (n_steps, ...)
        Wind over the surface during each step [m/s].
    step_s : float
        Length of a step; 300 is plenty [s].
    activation_energy_j_mol : float or array, shape (...)
        Activation energy of setting [J/mol].
    step_count : int or None
        Number of steps, needed only when the room is given by single numbers [-].
    density_kg_m3 : float or array, shape (...)
        Fresh density [kg/m3].
    heat_capacity_j_kg_k : float or array, shape (...)
        Heat capacity [J/kg/K].
    h_bottom_w_m2_k : float or array, shape (...)
        Heat exchange through the board below; the air below is the air of the room [W/m2/K].
    h_radiation_w_m2_k : float or array, shape (...)
        Heat exchange of the top by radiation with the room [W/m2/K].
    free_water_kg_m2 : float or array, shape (...)
        Loss w0 up to which the surface evaporates like water [kg/m2].
    evaporation_factor : float or array, shape (...)
        Factor on Menzel's rate, 0 for none [-].
    evaporating : bool or array, shape (n_steps,) or (n_steps, ...)
        False (0) while the slab lies covered [-].
    reference_temp_c : float or array, shape (...)
        Reference temperature of the equivalent age [°C].
    longest_part_s : float
        Longer steps are cut inside into parts of at most so long, and finer just after the start; above 300 nothing is
        cut finer at the start, for a slab that was placed hours ago [s].

    Returns
    -------
    SlabHistory
        At the start and after each step: times [h], temperatures [°C], equivalent ages [h], water [kg/m2].

    Raises
    ------
    ValueError
        When an entry cannot be, or when arrays for the room disagree on the number of steps.

    Notes
    -----
    `rho c d dT/dt = (h_top + h_bottom)(Ta - T) - f lambda W(T)`, `h_top = convection_w_m2_k + h_radiation`,
    W by Menzel. f is 1 until the water lost w reaches w0 and `exp(-(w - w0)/w0)` from there on; solved, that
    is `f = w0/demand`, the demand being the integral of W. Exchange exactly, evaporation by the midpoint
    rule; long steps are cut inside. Within 0.02 °C and 0.002 h of `scipy.integrate.solve_ivp`
    for slabs of 19 mm and more in wind up to 5 m/s. w0 (0.1 to 0.4) and h_bottom (2 to 8) are judgement; 5.7
    is a black body near 20 °C.

    Examples
    --------
    >>> room = dict(air_temp_c=21.0, rh_fraction=0.5, wind_m_s=0.0, step_s=300, step_count=36)
    >>> day = slab_history(16.0, 0.0381, activation_energy_j_mol=36000.0, **room)
    >>> f"{day.temp_c[-1]:.6g} {day.equivalent_age_h[-1]:.6g}"
    '17.6338 2.46579'

    References
    ----------
    Derived: heat balance of a thin slab; equivalent age in the form of ASTM C1074.
    """
    room = Room.checked(air_temp_c, rh_fraction, wind_m_s, evaporating)
    slab = Slab(
        start_c=require("mix temperature", start_temp_c, -50, 100, unit="°C"),
        storage_j_m2_k=require("density", density_kg_m3, 0, unit="kg/m3", low_open=True)
        * require("heat capacity", heat_capacity_j_kg_k, 0, unit="J/kg/K", low_open=True)
        * require("thickness", thickness_m, 0, 10, unit="m", low_open=True),
        fixed_exchange_w_m2_k=require("heat exchange below", h_bottom_w_m2_k, 0, unit="W/m2/K")
        + require("heat exchange by radiation", h_radiation_w_m2_k, 0, unit="W/m2/K"),
        free_water_kg_m2=require("free water", free_water_kg_m2, 0, unit="kg/m2", low_open=True),
        evaporation_factor=require("evaporation factor", evaporation_factor, 0),
        activation_energy_j_mol=require("activation energy", activation_energy_j_mol, 0, unit="J/mol"),
        reference_c=require("reference temperature", reference_temp_c, -50, 100, unit="°C"),
    )
    step = require("time step", step_s, 0, 3600, unit="s", low_open=True)
    steps = room.step_count(step_count)
    longest = require("longest part", longest_part_s, 0, 3600, unit="s", low_open=True)
    temp, age, demand = march(slab, room, steps, step, longest)
    return SlabHistory(
        time_h=np.arange(steps + 1) * (step / 3600),
        temp_c=temp,
        equivalent_age_h=age,
        demand_kg_m2=demand,
        free_water_kg_m2=slab.free_water_kg_m2,
    )
