"""The recipes of the data folder, by name; `recipe_file` says how a file looks."""

import difflib
import tomllib
from functools import cache

from shop_calc.defaults import data_folder
from shop_calc.trade.mortar.recipe_file import recipe_from_table


@cache
def recipes():
    """Read every recipe of the data folder once.

    Returns
    -------
    dict of str to Recipe or Bag
        The recipes by name [-].

    Examples
    --------
    >>> recipes()["demo mortar"].w_cm
    0.33

    References
    ----------
    Invented for the demonstration.
    """
    found = {}
    for path in sorted((data_folder() / "recipes").glob("*.toml")):
        with open(path, "rb") as file:
            each = recipe_from_table(tomllib.load(file), path.stem)
        found[each.name] = each
    return found


def recipe(name, entry="recipe"):
    """Look a recipe up by name.

    Parameters
    ----------
    name : str
        Name; capitals do not matter [-].
    entry : str
        The entry as the message will call it [-].

    Returns
    -------
    Recipe or Bag
        The recipe [-].

    Raises
    ------
    ValueError
        When there is no such recipe; the message lists those there are, the nearest first.

    Examples
    --------
    >>> recipe("Demo Mortar").air_fraction
    0.04

    References
    ----------
    Invented for the demonstration.
    """
    by_case = {each.casefold(): each for each in recipes()}
    wanted = " ".join(str(name).split()).casefold()
    if wanted in by_case:
        return recipes()[by_case[wanted]]
    near = difflib.get_close_matches(wanted, by_case, n=1, cutoff=0.5)
    ordered = [by_case[low] for low in [*near, *(each for each in by_case if each not in near)]]
    raise ValueError(
        f"{entry}: {str(name)[:40]!r} given; it must be one of {', '.join(ordered)}, or a table of parts"
    )
