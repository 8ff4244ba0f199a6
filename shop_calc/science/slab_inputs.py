"""The slab and the room as `slab_steps` takes them: checked, and reduced to what a step needs."""

from dataclasses import dataclass

import numpy as np

from shop_calc.science.checks import require
from shop_calc.science.evaporation import menzel_coefficient_kg_m2_h_pa


@dataclass(frozen=True, eq=False)
class Slab:
    """What stays the same through the day.

    Parameters
    ----------
    start_c : float or array, shape (...)
        Temperature as placed [°C].
    storage_j_m2_k : float or array, shape (...)
        Heat for each degree and square metre: density, heat capacity and thickness multiplied [J/m2/K].
    fixed_exchange_w_m2_k : float or array, shape (...)
        Heat exchange that the wind does not change: below, and by radiation [W/m2/K].
    free_water_kg_m2 : float or array, shape (...)
        Loss up to which the surface counts as wet [kg/m2].
    evaporation_factor : float or array, shape (...)
        Factor on Menzel's rate [-].
    activation_energy_j_mol : float or array, shape (...)
        Activation energy of setting [J/mol].
    reference_c : float or array, shape (...)
        Reference temperature of the equivalent age [°C].

    Examples
    --------
    >>> Slab(np.full((500, 1), 16.0), np.full(4, 85725.0), 9.7, 0.25, 1.0, 36000.0, 21.0).shape
    (500, 4)

    References
    ----------
    Terms of the heat balance in `slab_heat.slab_history`.
    """

    start_c: float
    storage_j_m2_k: float
    fixed_exchange_w_m2_k: float
    free_water_kg_m2: float
    evaporation_factor: float
    activation_energy_j_mol: float
    reference_c: float

    @property
    def shape(self):
        """Common shape of all entries."""
        return np.broadcast_shapes(*(np.shape(entry) for entry in vars(self).values()))


@dataclass(frozen=True, eq=False)
class Room:
    """Air, humidity, wind and cover; arrays run along the steps first.

    Parameters
    ----------
    air_c : float or array, shape (n_steps, ...)
        Air temperature [°C].
    humidity_fraction : float or array, shape (n_steps, ...)
        Relative humidity [-].
    loss_kg_m2_h_pa : float or array, shape (n_steps, ...)
        Menzel's coefficient of the wind [kg/m2/h/Pa].
    open_share : float or array, shape (n_steps, ...)
        1 where the surface lies open, 0 under a cover [-].

    Examples
    --------
    >>> Room.checked([21.0, 22.0, 23.0], 0.5, 0.0, True).step_count(None)
    3

    References
    ----------
    Terms of the heat balance in `slab_heat.slab_history`.
    """

    air_c: np.ndarray
    humidity_fraction: np.ndarray
    loss_kg_m2_h_pa: np.ndarray
    open_share: np.ndarray

    @classmethod
    def checked(cls, air_temp_c, rh_fraction, wind_m_s, evaporating):
        """Check the entries of a room and keep what the steps need of them."""
        return cls(
            air_c=require("air temperature", air_temp_c, -50, 100, unit="°C"),
            humidity_fraction=require("relative humidity", rh_fraction, 0, 1, unit="(as a fraction)"),
            loss_kg_m2_h_pa=menzel_coefficient_kg_m2_h_pa(wind_m_s),
            open_share=require("uncovered (1) or covered (0)", np.asarray(evaporating, dtype=float), 0, 1),
        )

    def step_count(self, asked):
        """Number of steps: as asked, or as long as the arrays are."""
        given = {len(entry) for entry in vars(self).values() if np.ndim(entry) and len(entry) > 1}
        given |= {int(asked)} if asked is not None else set()
        given = given or {len(entry) for entry in vars(self).values() if np.ndim(entry)}
        if len(given) != 1 or min(given) < 1:
            raise ValueError(
                f"room: {sorted(given) or 'no'} steps given; air, humidity, wind and cover must agree on one "
                "number of steps, or step_count must be given"
            )
        return given.pop()

    def shape(self):
        """Shape of one step."""
        return np.broadcast_shapes(*(np.shape(entry)[1:] for entry in vars(self).values()))

    def rows(self, steps):
        """One row a step for each entry, and whether the air and the wind differ from the row before."""
        rows, fresh = [], []
        for entry in vars(self).values():
            row = np.broadcast_to(entry, (steps, *np.shape(entry)[1:]))
            new = np.zeros(steps, dtype=bool)
            new[0] = True
            if np.ndim(entry) and len(entry) > 1:
                new[1:] = (row[1:] != row[:-1]).reshape(steps - 1, -1).any(axis=1)
            rows.append(row)
            fresh.append(new)
        return rows, fresh[0] | fresh[1], fresh[2] | fresh[3]
