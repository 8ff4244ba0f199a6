"""Jobs of people that went wrong, or nearly: each planned as its planner would have planned it."""

import copy
import tomllib
from datetime import datetime

from shop_calc.trade.jobs.job import check_job
from shop_calc.trade.plan import make_plan

# One plain job in still, mild air; every case below changes what its own story needs.
PLAIN = tomllib.loads("""
format = 1
name = "Plain"
piece = { outline = "rectangle", length = "60 in", width = "15 in", thickness = "1 1/2 in", exposed = "all" }
layers = { face_allowance = "15 %", base_allowance = "5 %" }
mix = { recipe = "demo mortar", stone = "1.2 lb per lb binder", coarse_sand = "0.6 lb per lb binder" }
materials = { powder_temp = "70 F", water_temp = "60 F" }
mixer = { vessel = "drum", rated = "6 ft3" }
day = { water_in = 2026-05-04T08:00:00, hands = 2 }

[[room]]
from = 2026-05-04T08:00:00
air = "70 F"
humidity = 50
wind = "0 mph"
""")


def recipe_of(parts=None, doses=None, w_cm=0.33, **more):
    """An own recipe: cement and as much sand, with what a case puts into it."""
    parts = parts or {"portland cement": 100, "fine silica sand": {"amount": 100, "state": "oven-dry"}}
    table = {"w_cm": w_cm, "air": "4 %", "parts": parts, **more}
    return table if doses is None else {**table, "doses": doses}


BAG = {"mass": "80 lb", "water": "2 1/2 qt", "yield": "0.60 ft3", "largest_particle": "1/16 in",
       "cement_share": ["12 %", "16 %", "20 %"]}  # fmt: skip
NO_STONE = {"mix__stone": "0", "mix__coarse_sand": "0"}
SUGAR, YELLOW = "sugar, as a retarder", "iron-oxide pigment yellow"


def own(table, **more):
    """A mix without stone from a table of its own."""
    return {"mix__recipe": table, **NO_STONE, **more}


def bag(**more):
    return own({"kind": "bag", **BAG, **more})


# What each story changes: piece__length="5 ft" changes [piece] length, None takes the entry out.
CHANGES = {
    "plain": {},
    "V01": {
        "piece__length": "84 in", "piece__width": "26 in", "piece__thickness": "2 1/2 in", "mixer__rated": "3 ft3",
        "piece__cutout": [{"shape": "rectangle", "name": "sink", "length": "29 1/2 in", "width": "17 1/2 in",
                           "at": ["42 in", "13 in"]}],
    },
    "V03": {"piece__length": "8 ft", "piece__width": "4 ft"},
    "V12": {"piece__outline": "racetrack", "piece__length": "96 in", "piece__width": "32 in", "piece__thickness": "2 in"},
    "V13": {"piece__length": "36 in", "piece__width": "36 in", "piece__thickness": "1 3/4 in"},
    "V16": bag() | {
        "piece__length": "72 in", "piece__width": "30 in", "mixer__vessel": "tub by hand", "mixer__rated": None,
        "mixer__usable": "5 L", "mixer__minutes_per_load": 25, "day__hands": 1,
        "day__water_in": "2026-05-04T18:30:00", "room__from": "2026-05-04T18:00:00",
    },
    "V17": bag() | {
        "piece__length": "15 ft", "piece__width": "10 ft", "piece__thickness": "5 in", "piece__exposed": "none",
        "mixer__minutes_per_load": 15, "day__hands": 1, "room__air": "80 F",
    },
    "W02": {"piece__length": "48 in", "piece__width": "24 in", "piece__thickness": "3/4 in", "place__weighed": "96 lb"},
    "W05": {"piece__length": "96 in", "piece__width": "48 in", "place__on": "cabinet", "place__weighed": "600 lb"},
    "H01": {"piece__length": "60 in", "piece__width": "60 in", "piece__thickness": "3/4 in"},
    "H02": {"piece__length": "96 in", "piece__width": "25 in", "piece__thickness": "3/4 in"},
    "M07": own(recipe_of(w_cm=0.532)),
    "M10 too much": bag(doses={SUGAR: "18 g per bag"}),
    "M10 right": bag(doses={SUGAR: "3 g per bag"}),
    "M11": own(recipe_of(doses={YELLOW: "9 % of binder"})),
    "M11 pale": own(recipe_of(doses={YELLOW: "0.8 % of binder"})),
    "M12": bag(doses={YELLOW: "5 % of bag"}),
    "M18": own(recipe_of(face={"AR glass fibre": "0.13 % of total mass"})),
    "M19": own(recipe_of(w_cm=0.45)),
    "M22": own(recipe_of(w_cm=2.0)),
    "T06": {"room__air": "100 F"},
    "T11": {"room__air": "85 F", "room__humidity": 30, "room__wind": "12 mph", "materials__powder_temp": "80 F"},
    "T13": {"room__air": "28 F"},
    "T14": {"materials__powder_temp": "35 F", "day__wanted_mix_temp": "75 F"},
    "E01": {"room__air": "80 F", "room__humidity": 50, "room__wind": "12 mph", "day__wanted_mix_temp": "85 F",
            "materials__powder_temp": "87 F", "materials__water_temp": "70 F"},
    "E04": {"room__air": "70 F", "room__humidity": 45, "room__wind": "11 mph", "day__wanted_mix_temp": "70 F",
            "materials__water_temp": "70 F"},
    "E07": {"room__air": "85 F", "room__humidity": 20, "room__wind": "10 mph", "day__wanted_mix_temp": "55 F"},
    "E08": own(recipe_of(w_cm=0.60)) | {"piece__length": "20 ft", "piece__width": "10 ft", "room__wind": "8 mph"},
    "F04": own(recipe_of({"white portland cement": 100, "fine silica sand": {"amount": 150, "state": "oven-dry"}}, w_cm=0.37)),
    "F09": own(recipe_of(face={"AR glass fibre": "0.5 % of total mass"})) | {"finish__polish_depth": "3/64 in"},
    "S09": {"room__air": "40 F"},
    "S11": {"finish__sealer": "film"},
    "S15": {"finish__polish": "dry"},
}  # fmt: skip


def entries(case):
    """The entries of a case, as its file would give them."""
    table = copy.deepcopy(PLAIN)
    for place, value in CHANGES[case].items():
        *way, last = place.split("__")
        here = table
        for step in way:
            here = here.setdefault(step, {})
            here = here[0] if isinstance(here, list) else here
        if value is None:
            here.pop(last, None)
        else:
            here[last] = datetime.fromisoformat(value) if last in ("water_in", "from") else value
    table["name"] = f"Case {case}"
    return table


def plan_of(case):
    """The plan of a case; raises Problems where the job is refused."""
    return make_plan(check_job(entries(case)))
