"""Practice pours and pieces whose hidden numbers are chosen, so that what comes of an act can be worked by hand."""

from dataclasses import replace

import numpy as np

from shop_calc.trade.rehearsal.bench import State
from shop_calc.trade.rehearsal.truth import open_pour

PSI = 6894.757293168361  # by definition of the pound and the inch
LEAST = 1e-3  # a tenth of a percent to either side of a limit


def a_pour(**hidden):
    """The bench top of the lessons on its middle day, some hidden quantities as given."""
    pour = open_pour()
    return replace(pour, hidden=replace(pour.hidden, **{name: np.array([value]) for name, value in hidden.items()}))


def piece(pour=None, psi=20.0, base_psi=None, **fields):
    """A piece with its face on since the first hour, both layers at a penetration resistance in psi, left alone since."""
    pour = pour or a_pour()
    ages = (pour.age_at_h((psi if base_psi is None else base_psi) * PSI), pour.age_at_h(psi * PSI))
    return State(pour, 3.0, *ages).having(**({"face_on_h": 1.0, "settled_h": 1.0} | fields))


def worst(found, key):
    """The worst severity of one kind."""
    return max((item.severity for item in found if item.key == key), default=0.0)
