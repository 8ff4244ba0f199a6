"""Practice pours and pieces whose hidden numbers are chosen, so that what comes of an act can be worked by hand; a class."""

from dataclasses import replace
from functools import cache

import numpy as np

from shop_calc.trade.rehearsal.acts import act
from shop_calc.trade.rehearsal.bench import begin, let_pass
from shop_calc.trade.rehearsal.policies import work_through
from shop_calc.trade.rehearsal.replay import play
from shop_calc.trade.rehearsal.signs import look
from shop_calc.trade.rehearsal.state import State
from shop_calc.trade.rehearsal.truth import draw_pour, open_pour

PSI = 6894.757293168361  # by definition of the pound and the inch
LEAST = 1e-3  # a tenth of a percent to either side of a limit


def a_pour(**hidden):
    """The bench top of the lessons on its middle day, some hidden quantities as given."""
    pour = open_pour()
    return replace(pour, hidden=replace(pour.hidden, **{name: np.array([value]) for name, value in hidden.items()}))


@cache
def class_pour(number):
    """A pour as somebody of a class would draw it."""
    return draw_pour(f"class {number}")


def piece(pour=None, psi=20.0, base_psi=None, **fields):
    """A piece with its face on since the first hour, both layers at a penetration resistance in psi, left alone since."""
    pour = pour or a_pour()
    ages = (pour.age_at_h((psi if base_psi is None else base_psi) * PSI), pour.age_at_h(psi * PSI))
    return State(pour, 3.0, *ages).having(**({"face_on_h": 1.0, "settled_h": 1.0} | fields))


def worst(found, key):
    """The worst severity of one kind."""
    return max((item.severity for item in found if item.key == key), default=0.0)


@cache
def _end(policy, number):
    return work_through(begin(class_pour(number)), policy)


def ends(policy, count=40):
    """How the first pours of the class end when all are worked through in one way."""
    return [_end(policy, number) for number in range(count)]


def severity(state, word, key):
    """Worst of one kind that an act adds."""
    after = act(state, word)
    return max((item.severity for item in after.damage[len(state.damage) :] if item.key == key), default=0.0)


def floated(start):
    """The face put on as soon as the base stays, screeded, floated."""
    state = act(start, "stir")
    while look(state, "edge").cue == "moves":
        state = act(state, "wait 5")
    return play(state, "spread; screed; float")


def at_psi(number, psi):
    """A face floated once, at a resistance."""
    state = floated(begin(class_pour(number)))
    age_h = state.pour.age_at_h(psi * PSI)
    low, high = 0.0, 20.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if let_pass(state, middle).face_age_h < age_h else (low, middle)
    return let_pass(state, high)
