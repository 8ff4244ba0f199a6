"""Time in the kernel from a moved slider to new words and picture; on request:

python -m pytest tests/benchmarks/bench_blocks.py --benchmark-columns=median,ops
"""

import json
import runpy
from pathlib import Path

import pytest

from shop_calc.lesson.blocks import Block, slider
from shop_calc.lesson.pictures.base import ROLES, Picture

WORKBOOKS = Path(__file__).parents[2] / "workbooks"


class Curve(Picture):
    """A picture of middling size: two lines, a band, a legend."""

    def build(self, axes):
        axes.set(xlim=(0, 8), ylim=(0, 500), xlabel="time since water (h)", ylabel="resistance (psi)")
        self.hours = [k / 50 for k in range(401)]
        (self.line,) = axes.plot(self.hours, [0] * 401, label="face")
        (self.other,) = axes.plot(self.hours, [0] * 401, "--", label="base")
        axes.axvspan(2, 3, color=ROLES["band"], alpha=0.3, hatch="//")
        axes.legend(loc="upper right")

    def update(self, result, system="both"):
        self.line.set_ydata([result * hour**2 for hour in self.hours])
        self.other.set_ydata([result * hour for hour in self.hours])
        self.alt = f"Two curves, {result:.2f}."


def house_block():
    row = slider("rate", label="Rate", value=5, low=1, high=20, unit="-")
    return Block(lambda rate: rate, lambda result, system: f"{result:.2f}", [row], picture=Curve())


def lesson_block(path, tmp_path):
    """Run a lesson's code as a script and hand its first block over."""
    cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
    script = tmp_path / f"{path.stem}.py"
    lines = ["".join(cell["source"]) for cell in cells if cell["cell_type"] == "code"]
    script.write_text("\n".join(lines), encoding="utf-8")
    made = []

    class Kept(Block):
        def __init__(self, *arguments, **options):
            made.append(self)
            super().__init__(*arguments, **options)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("shop_calc.lesson.blocks.Block", Kept)
        patch.chdir(path.parent)
        runpy.run_path(str(script))
    return made[0]


LESSONS = [path for path in sorted(WORKBOOKS.glob("*.ipynb")) if "Block(" in path.read_text(encoding="utf-8")]


@pytest.mark.parametrize("path", [None, *LESSONS], ids=lambda path: path.stem if path else "house")
def test_one_step_of_the_first_slider(benchmark, path, tmp_path):
    block = lesson_block(path, tmp_path) if path else house_block()
    row = next(row for row in block.rows.values() if hasattr(row, "knob"))
    low, high = row.knob.min, row.knob.max
    places = [low + (high - low) * k / 20 for k in (6, 8, 10, 12, 14, 11, 9, 7)]
    turn = iter(range(10**9))

    def step():
        row.knob.value = places[next(turn) % len(places)]

    benchmark(step)
