"""The words of the sheet that no plan changes: if and then, do not, protect yourself.

All of it is common practice of the trade unless a source stands beside it; numbers in it are listed in NUMBERS.
"""

# What to do when the sign is not as it should be. One line a stage: it has to be read with a tool in the hand.
IF_THEN = {
    "base": "If it is stiff: no water; tamp thin or throw it out.",
    "face": "If it moves: wait. If no print: score it, rub it in.",
    "float": "If the skin tears: light strokes, then cover it.",
    "look": "If dull but soft below: no steel; shade it, float.",
    "strip": "If the edge sags: push it back, wait, look again.",
    "first_steel": "If paste comes off: wait. Blisters: wood float.",
    "last_steel": "If it marks dark: flatter, lighter, or stop.",
    "stop": "If in doubt about another pass: no more.",
}

# What the hands do at a stage beyond its title.
HANDS = {
    "face": "A little proud; keep a covered cup for patching.",
    "strip": "Screws, sides, caulk, knock-outs; patch, ease the arris.",
}

DO_NOT = (
    "No water, no dry cement on the face.",
    "No steel before the thumb says so.",
    "No water beyond what is held back.",
    "No stone before the face is set aside.",
    "No sun, fan or draught on the face.",
    "No side pulled off: it slides.",
    "No bare plastic on the face.",
    "No slab left leaning.",
)

PROTECT = (
    ("Mixing", "Respirator before a bag is opened. Gloves, sleeves, glasses. Hands out of the mixer."),
    ("Stripping", "Gloves all day. Two people at a long side."),
    ("Grinding", "Wet, or shroud and vacuum; respirator, ears, apron; ground-fault breaker."),
    ("Eyes", "Rinse 20 minutes, get help. Children, pets out."),
)

# The full caution stands in the plan; beside the step a few words must do.
SHORT_CAUTION = {
    "weigh": "Dust: respirator on.",
    "first": "Hot water scalds.",
    "powder": "Hands and hair out; ground-fault breaker.",
    "scrape": "Caustic: gloves, sleeves, glasses.",
    "stone": "Heavy: half loads.",
    "face fibre": "Glass fibre: gloves, respirator.",
}

MARKS = (
    ("read", "in the named source"), ("unnamed", "read, publisher not recorded"), ("memory", "recalled, not re-read"),
    ("derived", "arithmetic anyone can repeat"), ("practice", "of the trade, no source"), ("judgement", "ours"),
    ("invented", "for the demonstration"),
)  # fmt: skip

TITLE = "Shop sheet"

FOOT = "The clock says when to look; the cue decides. Structure is for someone licensed; local code decides."

# Every number that stands in the words above or in the template, for the test that looks for strays.
NUMBERS = frozenset({"20", "1", "2"})
