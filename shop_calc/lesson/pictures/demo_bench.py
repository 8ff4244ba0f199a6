"""Pictures of experiments at the bench, to look at. All numbers here are invented."""

from datetime import datetime

import numpy as np

from shop_calc.lesson.pictures.over_band import BenchNumber, OverBand
from shop_calc.lesson.pictures.set_curve import SetCurve, StiffeningCurve

PSI_PA = 6894.757
_HOURS = np.linspace(1.5, 5.5, 81)
_CUP_PA = 500 * PSI_PA * (_HOURS / 4.1) ** 7
_WINDOWS = tuple(
    (name, low * PSI_PA, high * PSI_PA)
    for name, low, high in (
        ("sides off, patch", 10, 40), ("first steel", 60, 150), ("last steel", 250, 500), ("stop", 1000, 1000),
    )
)  # fmt: skip
CUP = SetCurve(
    _HOURS, 0.35 * _CUP_PA, _CUP_PA, 3.2 * _CUP_PA, _WINDOWS,
    tuple((at, psi * PSI_PA, thick) for at, psi, thick in ((2.5, 20, True), (3.0, 75, True), (3.6, 260, False))),
)  # fmt: skip
RAG = OverBand(12.3, 14.7, 18.6, 15.4)

BENCH = {
    "rod in a cup": lambda: StiffeningCurve(CUP, datetime(2026, 5, 4, 8), title="How stiff the cup gets (invented)"),
    "number from the bench": lambda: BenchNumber(RAG, "temperature", (2.0, 32.0), "A wet rag (invented)"),
}
BENCH_UPDATES = {"rod in a cup": lambda: CUP, "number from the bench": lambda: RAG}
