"""The practice pour: a day at the bench with a hidden truth, to be worked through before a real one.

truth.py draws the hidden day from a code (weather.py: rooms); bench.py holds the piece and lets time pass; signs.py is
what eyes, thumb and rod find; acts.py what hands can do (words.py: the list); harm.py,
harm_of_water.py, night.py and damage.py what comes of it; debrief.py,
replay.py, reveal.py and account.py look back; rows.py writes shop-log rows; policies.py works pours through by
themselves; pooled.py lays a class side by side. Everything is pure: `act(state, word)` gives a new state.
"""
