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


OBJECTS = [
    pytest.param(plain, id=f"{name.removeprefix('shop_calc.')}.{item}")
    for name in MODULES
    for item, plain in own_public(name)
]
EACH = pytest.mark.parametrize("thing", OBJECTS)

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


@EACH
def test_the_first_line_stands_alone_and_ends_with_a_full_stop(thing):
    lines = inspect.cleandoc(thing.__doc__ or "").splitlines()
    assert lines and lines[0].endswith("."), "one summary line, ending in a full stop"
    assert len(lines) == 1 or lines[1] == "", "a blank line after the summary"


@EACH
def test_parameters_are_those_of_the_signature(thing):
    written = entries(sections(thing.__doc__).get("Parameters", []))
    if draws(thing) and not written:
        return
    names = [
        name.strip().lstrip("*") for header, _ in written for name in header.partition(" : ")[0].split(",")
    ]
    assert sorted(names) == sorted(parameters(thing))  # entries of one kind may stand together
    assert all(" : " in header for header, _ in written), "each parameter has a type"


@EACH
def test_every_parameter_and_return_ends_with_its_unit(thing):
    found = sections(thing.__doc__)
    written = entries(found.get("Parameters", []))
    if inspect.isfunction(thing):
        given = entries(found.get("Returns", []) or found.get("Yields", []))
        assert given or draws(thing) or not gives_something(thing), "say what is returned"
        written += given
    bare = [header for header, text in written if not UNIT_AT_END.search(text)]
    assert bare == []


@pytest.mark.parametrize("thing", [p for p in OBJECTS if not draws(p.values[0])])
def test_there_is_an_example_and_an_origin(thing):
    found = sections(thing.__doc__)
    assert any(">>>" in line for line in found.get("Examples", [])), "Examples with a doctest"
    assert any(line.strip() for line in found.get("References", [])), (
        "References, or the words that there is none"
    )


def significant_digits(text):
    return max((len(n.split("e")[0].replace(".", "").lstrip("0")) for n in NUMBER.findall(text)), default=0)


SCIENCE = [p for p in OBJECTS if p.id.startswith("science.") and not p.id.startswith("science.checks.")]


@pytest.mark.parametrize("thing", [p for p in SCIENCE if inspect.isfunction(p.values[0])])
def test_the_example_of_a_published_equation_shows_five_digits(thing):
    shown = [example.want for example in doctest.DocTestParser().get_examples(thing.__doc__ or "")]
    # a whole count or a yes has no digits to lose
    if any(re.fullmatch(r"(True|False|[0-9]+(\.0)?)\s*", want) for want in shown):
        return
    assert max(map(significant_digits, shown), default=0) >= 5, "three digits missed a planted slip of 2 %"


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
        return mass_kg

    with pytest.raises(AssertionError):
        test_every_parameter_and_return_ends_with_its_unit(no_unit)
    with pytest.raises(AssertionError):
        test_there_is_an_example_and_an_origin(no_unit)
    test_parameters_are_those_of_the_signature(no_unit)
