"""Work a line of the working out again from its formula and its inputs, without running it as code."""

import math

from shop_calc.lesson.formula import evaluate


def check_working(working, rel_tol=1e-9):
    """Assert that every line of a working gives its own value; return how many were arithmetic."""
    known, done = {}, 0
    for step in working:
        for symbol, value, _ in step.inputs:
            if symbol in known:
                assert math.isclose(value, known[symbol], rel_tol=rel_tol), f"{step.name}: {symbol} has changed"
        known[step.symbol] = step.value
        if step.formula.startswith("by "):
            continue
        again = evaluate(step.formula, step.inputs)
        assert math.isclose(again, step.value, rel_tol=rel_tol, abs_tol=1e-15), f"{step.name}: {again} for {step.value}"
        done += 1
    return done
