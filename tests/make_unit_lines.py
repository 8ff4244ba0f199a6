"""Write shop_calc/units/kept_lines.py again: pint's answers for the pairs of units that a shop meets.

    python tests/make_unit_lines.py

Run it after a unit, a kind of quantity or a default with a new unit was added; a test compares the file with pint.
"""

import sys
import textwrap
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))  # the package beside this file, whichever copy is installed

from shop_calc import defaults
from shop_calc.units import KINDS, factors
from shop_calc.units.words import canonical

ROOT = Path(__file__).parents[1]
FILE = ROOT / "shop_calc" / "units" / "kept_lines.py"
WIDTH = 112
WORKINGS = (("lb/ft2/h/psi", "kg/m2/h/Pa"),)  # units in which a working of a question goes by hand
HEAD = '''"""pint's answers for the pairs of units that a shop meets, kept so that a lesson opens half a second sooner.

Written by `python tests/make_unit_lines.py`; a test asks pint for every line again. Any other pair is asked of pint.
"""

LINES = {
'''


def pairs():
    """Units of every kind with its SI unit and those it is shown in, both ways; of the defaults table; of workings."""
    found = set()
    for kind in KINDS.values():
        si = canonical(kind.si_unit)
        shown = {si} | {canonical(unit) for _, unit in (*kind.us, *kind.si)}
        shown |= {canonical(kind.us_unit), canonical(kind.si_shown)}
        typed = shown | {canonical(name) for name in kind.words}
        found |= {pair for one in typed for other in shown if one != other for pair in ((one, other), (other, one))}
    for name in defaults.table():
        unit, si = canonical(defaults.get(name).unit), canonical(defaults.si_unit(name))
        if unit != si:
            found.add((unit, si))
    found |= {pair for one, other in WORKINGS for pair in ((one, other), (other, one))}
    return sorted(found)


def text():
    """The file as it must be."""
    lines = [f'("{one}", "{other}"): {factors.ask_pint(one, other)},' for one, other in pairs()]
    rows = textwrap.wrap("\n".join(line.replace(" ", "~") for line in lines), WIDTH, break_on_hyphens=False)
    return HEAD + "".join(f"    {row}\n" for row in rows).replace("~", " ") + "}  # fmt: skip\n"


if __name__ == "__main__":
    FILE.write_text(text(), encoding="utf-8")
    print(FILE)
