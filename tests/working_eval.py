"""Work a line of the working out again from its formula and its inputs, without running it as code."""

import ast
import math
import operator

_TWO = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
    ast.Pow: operator.pow,
}
_ONE = {ast.UAdd: operator.pos, ast.USub: operator.neg}
_FUNCTIONS = {"sqrt": math.sqrt, "exp": math.exp, "log": math.log}
_CONSTANTS = {"pi": math.pi}


def evaluate(formula, inputs):
    """Value of a formula in + - * / ** ( ), numbers, names, sqrt, exp, log and pi.

    `inputs` are the (symbol, value, unit) of a Step, or a dict of symbol to value. Anything else is refused.
    """
    names = dict(inputs) if isinstance(inputs, dict) else {symbol: value for symbol, value, _ in inputs}

    def work(node):
        if isinstance(node, ast.Expression):
            return work(node.body)
        if isinstance(node, ast.Constant) and isinstance(node.value, (int, float)):
            return node.value
        if isinstance(node, ast.Name) and node.id in names:
            return names[node.id]
        if isinstance(node, ast.Name) and node.id in _CONSTANTS:
            return _CONSTANTS[node.id]
        if isinstance(node, ast.BinOp) and type(node.op) in _TWO:
            return _TWO[type(node.op)](work(node.left), work(node.right))
        if isinstance(node, ast.UnaryOp) and type(node.op) in _ONE:
            return _ONE[type(node.op)](work(node.operand))
        if isinstance(node, ast.Call) and getattr(node.func, "id", None) in _FUNCTIONS and not node.keywords:
            return _FUNCTIONS[node.func.id](*map(work, node.args))
        raise ValueError(f"{formula!r}: {ast.unparse(node)!r} is not plain arithmetic in {', '.join(names)}")

    return work(ast.parse(formula, mode="eval"))


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
