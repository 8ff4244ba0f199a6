"""Predicted and seen, with numbers to look at; all invented."""

from datetime import datetime

from shop_calc.lesson.pictures.predicted_seen import PredictedSeen, SeenRow

SEEN = (
    SeenRow("sides off", (1.8, 2.4, 3.3), (1.8, 2.1, 2.8), 1.75, 2.25),
    SeenRow("first steel", (2.4, 3.0, 3.9), (2.4, 2.8, 3.2), 2.7, 3.0),
    SeenRow("last steel", (2.9, 3.7, 4.7), (3.0, 3.5, 4.0), None, 3.7),
)
# name: how to build it, and what to update it with
LOG = {
    "predicted and seen": lambda: PredictedSeen(SEEN, (1.4, 5.2), "A pour (invented)", datetime(2026, 5, 4, 8)),
}
LOG_UPDATES = {"predicted and seen": lambda: SEEN}
