"""After the pour: every decision with what it did, and what half an hour earlier or later would have done."""

from dataclasses import dataclass
from functools import cached_property, lru_cache

from shop_calc.trade.curing.cure import CHOICES
from shop_calc.trade.rehearsal.acts import act
from shop_calc.trade.rehearsal.damage import TRACE, damage_words
from shop_calc.trade.rehearsal.night import of_cover_overnight
from shop_calc.trade.rehearsal.replay import Instead, before, moved
from shop_calc.trade.rehearsal.reveal import true_stages, truth_lines
from shop_calc.trade.rehearsal.state import State
from shop_calc.trade.rehearsal.words import ACTS

HALF_HOUR_H = 0.5
_NIGHT = {f"cover {key}" for key in CHOICES if key not in ("open", "tent")} | {"leave"}


@dataclass(frozen=True)
class Decision:
    """One act that mattered.

    Parameters
    ----------
    state : State
        The pour, the morning after [as its fields].
    number : int
        Line of its diary, from 0 [-].
    stage : str
        The stage it belongs to, a key of the stages of the day [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> from shop_calc.trade.rehearsal.replay import play
    >>> Decision(play(begin("oak", "mild"), "spread; leave"), 0, "face").good
    False

    References
    ----------
    Computed anew on the same hidden day, and only when it is asked for.
    """

    state: State
    number: int
    stage: str

    @property
    def word(self):
        """The act, a key of ACTS."""
        return self.state.diary[self.number].word

    @property
    def at_h(self):
        """When it was done [h]."""
        return self.state.diary[self.number].hour_h

    @cached_property
    def damage(self):
        """What it did."""
        entry = self.state.diary[self.number]
        done = (item for item in self.state.damage if item.key in entry.harm)
        return tuple(item for item in done if abs(item.at_h - entry.hour_h) < 1e-6)

    @cached_property
    def earlier(self) -> Instead | None:
        """The same act half an hour earlier; None where an hour means nothing."""
        return self._moved(-HALF_HOUR_H)

    @cached_property
    def later(self) -> Instead | None:
        """The same act half an hour later; None where an hour means nothing."""
        return self._moved(HALF_HOUR_H)

    @cached_property
    def other(self):
        """What another cover would have done to the night; empty for every other act."""
        return _other_cover(self.state, self.number) if self.word == "leave" else ""

    def _moved(self, by_h):
        if self.word in _NIGHT or self.word == "sprinkle":
            return None
        return moved(self.state, self.number, by_h)

    @property
    def good(self):
        """True when nothing of it can be seen."""
        return not any(item.severity >= TRACE for item in self.damage)


@dataclass(frozen=True, eq=False)
class Debrief:
    """The account of a pour, with the hidden day uncovered.

    Parameters
    ----------
    state : State
        The pour, the morning after [as its fields].
    stages : tuple of Stage
        The stages as they really were [h].
    planned : tuple of Stage
        The stages as the plan on the wall had them [h].
    decisions : tuple of Decision
        In order of time [as its fields].
    looks : tuple of (str, float, bool)
        For each stage the last look that did not find its cue and the first that did: stage, hour, found [-, h, -].
    hidden : tuple of (str, str, str)
        What it is, the plan's value, the value of the day [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> from shop_calc.trade.rehearsal.policies import by_cues, work_through
    >>> debrief(work_through(begin("oak", "mild"), by_cues)).damage
    ()

    References
    ----------
    Common practice, no source.
    """

    state: State
    stages: tuple
    planned: tuple
    decisions: tuple
    looks: tuple
    hidden: tuple

    @property
    def damage(self):
        """What can be seen in the morning, the worst of each kind, in order of time."""
        worst = {}
        for item in self.state.kept:
            if item.key not in worst or item.severity > worst[item.key].severity:
                worst[item.key] = item
        return tuple(sorted(worst.values(), key=lambda item: item.at_h))

    @property
    def marks(self):
        """Acts for the ribbon: stage, hour, whether nothing of it can be seen."""
        return tuple((row.stage, row.at_h, row.good) for row in self.decisions)


@lru_cache(maxsize=8)  # the account, the half hours and the ribbon of one bench look back on the same pour
def debrief(state):
    """Look back on a pour.

    Parameters
    ----------
    state : State
        A pour; one that is not over yet is left as it lies first [as its fields].

    Returns
    -------
    Debrief
        The account [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> from shop_calc.trade.rehearsal.replay import play
    >>> end = play(begin("oak", "mild"), "step away; spread; screed; float; steel; leave")
    >>> [row.word for row in debrief(end).decisions]
    ['spread', 'screed', 'steel', 'leave']

    References
    ----------
    Common practice, no source.
    """
    state = state if state.over else act(state, "leave")
    decisions = tuple(Decision(state, number, stage) for number, stage in _decisive(state))
    return Debrief(
        state, true_stages(state), state.pour.wall.stages, decisions, _bracketing(state), truth_lines(state.pour)
    )


def _decisive(state):
    """Number in the diary and stage of every act that mattered; of several alike the first, and each that did harm."""
    found, seen = [], set()
    last_cover = max((n for n, e in enumerate(state.diary) if e.word in _NIGHT and e.word != "leave"), default=None)
    for number, entry in enumerate(state.diary):
        word, stage = entry.word, ""
        if ACTS[word].kind in ("look", "time") or (not entry.minutes and word != "leave"):
            continue
        if word == "spread":
            stage = "face"
        elif word == "screed":
            stage = "float"
        elif word in ("strip", "patch"):
            stage = "strip"
        elif word == "steel":
            stage = "first_steel" if "steel" not in seen else "last_steel"
        elif word == "leave" or (word in _NIGHT and (entry.harm or number == last_cover)):
            stage = "stop"
        elif word in ("float", "sprinkle") and entry.harm:
            stage = "look"
        if stage and (word not in seen or word in ("steel", "leave") or (entry.harm and word != "strip")):
            found.append((number, stage))
        seen.add(word)
    return found


def _other_cover(state, number):
    """The night under every other cover, in a few words."""
    left = before(state, number)
    if left.face_on_h is None:
        return ""
    words = {}
    for key in CHOICES:
        if key != left.cover:
            words.setdefault(damage_words(of_cover_overnight(left, key)), []).append(key)
    return "; ".join(f"under {', '.join(keys)}: {text}" for text, keys in words.items())


_CUES = {  # look and its cues: the stage that they speak of, and which of them say that it is there
    "edge": ("strip", ("keeps", "firm", "stiff")),
    "thumb": ("first_steel", ("faint", "nail", "hard", "past", "rings")),
    "sheen": ("last_steel", ("hard", "polished")),
}


def cue_of(sign):
    """Say which stage a look speaks of, and whether its cue was there.

    Parameters
    ----------
    sign : Sign
        The look [as its fields].

    Returns
    -------
    tuple of (str, bool)
        Key of the stage, empty when the look speaks of none; and True when the cue was there [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> from shop_calc.trade.rehearsal.signs import look
    >>> cue_of(look(begin("oak", "mild"), "edge"))
    ('face', False)

    References
    ----------
    Cues of shop_calc.trade.timeline.stages.
    """
    if sign.sign == "edge" and sign.cue in ("moves", "stays", "too stiff"):
        return "face", sign.cue != "moves"
    if sign.sign not in _CUES or sign.cue == "no face" or sign.words.startswith("On the base"):
        return "", False
    stage, there = _CUES[sign.sign]
    return stage, sign.cue in there


def _bracketing(state):
    """Of all looks at a cue the last that did not find it and the first that did."""
    found = {}
    for sign in state.seen:
        stage, there = cue_of(sign)
        if not stage or (stage, True) in found:
            continue
        found[stage, there] = sign.at_h
    return tuple(sorted(((stage, at_h, there) for (stage, there), at_h in found.items()), key=lambda row: row[1]))
