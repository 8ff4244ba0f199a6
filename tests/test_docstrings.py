"""Docstrings are contracts: units on all that goes in or comes out, an example that runs, an origin."""

import ast
import dataclasses
import doctest
import importlib
import inspect
import pkgutil
import re
import textwrap

import pytest

import shop_calc

MODULES = sorted(info.name for info in pkgutil.walk_packages(shop_calc.__path__, "shop_calc."))
UNIT_AT_END = re.compile(r"\[[^\[\]]+\]\.$")
NUMBER = re.compile(r"[0-9]+\.?[0-9]*(?:e[+-]?[0-9]+)?")


def own_public(module_name):
    """The functions and dataclasses that a module defines for others."""
    try:
        module = importlib.import_module(module_name)
    except ImportError:  # its own test below fails; the other modules are still checked
        return
    for name, value in sorted(vars(module).items()):
        if name.startswith("_") or not callable(value):
            continue
        plain = inspect.unwrap(value)
        is_ours = getattr(plain, "__module__", "") == module.__name__
        if is_ours and (
            inspect.isfunction(plain) or (inspect.isclass(plain) and dataclasses.is_dataclass(plain))
        ):
            yield name, plain


THINGS = {name: [plain for _, plain in own_public(name)] for name in MODULES}

# What draws computes nothing: its numbers come in finished, a doctest of a drawing shows nothing and there is no
# source to name. Its small helpers may be explained in one line; sections that are there must still be right.
DRAWING = ("shop_calc.lesson.pictures.", "shop_calc.lesson.blocks.")


def draws(thing):
    return thing.__module__.startswith(DRAWING)


def sections(docstring):
    """Split a numpydoc docstring into its underlined sections; the text before them is under ''."""
    found, current = {"": []}, ""
    lines = inspect.cleandoc(docstring or "").splitlines()
    for line, below in zip(lines, [*lines[1:], ""], strict=True):
        if line.strip() and re.fullmatch(r"-{3,}", below):
            current = line.strip()
            found[current] = []
        elif not re.fullmatch(r"-{3,}", line):
            found[current].append(line)
    return found


def entries(lines):
    """(header, description) of each entry of a Parameters or Returns section."""
    found = []
    for line in lines:
        if line and not line.startswith(" "):
            found.append([line.strip(), ""])
        elif line.strip() and found:
            found[-1][1] = f"{found[-1][1]} {line.strip()}".strip()
    return found


def parameters(thing):
    if inspect.isclass(thing):
        return [
            field.name for field in dataclasses.fields(thing) if field.init and not field.name.startswith("_")
        ]
    return [name for name in inspect.signature(thing).parameters if not name.startswith("_")]


def gives_something(function):
    """Whether the function itself, not one inside it, returns a value."""
    tree = ast.parse(textwrap.dedent(inspect.getsource(function))).body[0]
    waiting = list(tree.body)
    while waiting:
        node = waiting.pop()
        if isinstance(node, (ast.FunctionDef, ast.Lambda, ast.ClassDef)):
            continue
        if isinstance(node, ast.Return) and node.value is not None:
            return True
        waiting.extend(ast.iter_child_nodes(node))
    return False


def fault_of_the_first_line(thing):
    return fault_of_first_line_of(thing.__doc__ or "")


def fault_of_first_line_of(docstring):
    lines = inspect.cleandoc(docstring).splitlines()
    if not lines or not lines[0].endswith("."):
        return "one summary line, ending in a full stop"
    return None if len(lines) == 1 or lines[1] == "" else "a blank line after the summary"


def fault_of_parameters(thing):
    written = entries(sections(thing.__doc__).get("Parameters", []))
    if draws(thing) and not written:
        return None
    names = [name.strip().lstrip("*") for header, _ in written for name in header.partition(" : ")[0].split(",")]
    if sorted(names) != sorted(parameters(thing)):  # entries of one kind may stand together
        return f"written {sorted(names)}, in the signature {sorted(parameters(thing))}"
    return None if all(" : " in header for header, _ in written) else "each parameter has a type"


def fault_of_units(thing):
    found = sections(thing.__doc__)
    written = entries(found.get("Parameters", []))
    if inspect.isfunction(thing):
        given = entries(found.get("Returns", []) or found.get("Yields", []))
        if not given and not draws(thing) and gives_something(thing):
            return "say what is returned"
        written += given
    bare = [header for header, text in written if not UNIT_AT_END.search(text)]
    return f"no [unit] at the end of {bare}" if bare else None


def fault_of_example_and_origin(thing):
    if draws(thing):
        return None
    found = sections(thing.__doc__)
    if not any(">>>" in line for line in found.get("Examples", [])):
        return "Examples with a doctest"
    return None if any(line.strip() for line in found.get("References", [])) else "References, or that there is none"


def significant_digits(text):
    return max((len(n.split("e")[0].replace(".", "").lstrip("0")) for n in NUMBER.findall(text)), default=0)


def fault_of_digits(thing):
    """The example of an equation shows five digits: three missed a planted slip of 2 %."""
    is_science = thing.__module__.startswith("shop_calc.science.") and not thing.__module__.endswith(".checks")
    if not is_science or not inspect.isfunction(thing):
        return None
    shown = [example.want for example in doctest.DocTestParser().get_examples(thing.__doc__ or "")]
    # a whole count or a yes has no digits to lose
    if any(re.fullmatch(r"(True|False|[0-9]+(\.0)?)\s*", want) for want in shown):
        return None
    return None if max(map(significant_digits, shown), default=0) >= 5 else "five digits in the example"


FAULTS = (
    fault_of_the_first_line, fault_of_parameters, fault_of_units, fault_of_example_and_origin, fault_of_digits,
)  # fmt: skip


def test_every_docstring_is_a_contract():
    found = [
        (name, thing.__qualname__, fault)
        for name, things in THINGS.items() for thing in things for look in FAULTS if (fault := look(thing))
    ]  # fmt: skip
    assert found == []


def test_hundreds_of_docstrings_are_looked_at():
    assert sum(map(len, THINGS.values())) > 900  # an import that failed in silence would empty the list


@pytest.mark.parametrize("name", ["shop_calc", *MODULES])
def test_the_examples_run(name):
    module = importlib.import_module(name)
    result = doctest.testmod(module, optionflags=doctest.ELLIPSIS, report=True)
    assert result.failed == 0


def test_the_check_itself_sees_a_bad_docstring():
    def no_unit(mass_kg):
        """Do it.

        Parameters
        ----------
        mass_kg : float
            Mass.
        """

    def nothing_returned(mass_kg):
        """Do it."""
        return mass_kg

    assert "mass_kg : float" in fault_of_units(no_unit)
    assert "returned" in fault_of_units(nothing_returned)
    assert "mass_kg" in fault_of_parameters(nothing_returned) and fault_of_parameters(no_unit) is None
    assert "Examples" in fault_of_example_and_origin(no_unit)
    assert fault_of_first_line_of("Do it") and fault_of_first_line_of("Do it.\nAt once.")
    assert fault_of_first_line_of("Do it.\n\nAt once.") is None
