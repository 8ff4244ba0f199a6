"""What would let a person kneel on a top where nobody may: rails, or a thicker piece. No safe span among them."""

from dataclasses import dataclass

from shop_calc.trade.after.use_rule import BACK_RAIL, BOTH_RAILS, overhang_use, span_use
from shop_calc.units import convert, show

THICKER_STEP_M = convert(0.25, "in", "m")  # judgement: forms are cut to a quarter inch
THICKEST_M = convert(4.0, "in", "m")  # judgement: thicker than that nobody casts a top for it


@dataclass(frozen=True)
class Mend:
    """One change after which a person may kneel down slowly.

    Parameters
    ----------
    words : str
        The change [-].
    stress_pa : float
        Its own weight and the person, after it [Pa].

    Examples
    --------
    >>> Mend("a rail across under its middle", 1.2e6).stress_pa
    1200000.0

    References
    ----------
    As `use_rule`.
    """

    words: str
    stress_pa: float


def _kneeling_pa(use):
    return use.own_pa + use.kneel_pa


def _thicker(use_at, thickness_m, limit_pa):
    """The least thickness in quarter inches that is enough, up to the thickest; none when that is not."""
    first = int(thickness_m / THICKER_STEP_M + 1e-6) + 1
    for quarters in range(first, round(THICKEST_M / THICKER_STEP_M) + 1):
        thick = quarters * THICKER_STEP_M
        stress = _kneeling_pa(use_at(thick))
        if stress <= limit_pa:
            return [Mend(f"{show(thick, 'length')} of thickness", stress)]
    return []


def span_mends(span_m, width_m, thickness_m, density_kg_m3, rails, limit_pa):
    """Changes that let a person kneel down slowly between two supports.

    Parameters
    ----------
    span_m, width_m, thickness_m : float
        Span, width along the supports, thickness [m].
    density_kg_m3 : float
        Density [kg/m3].
    rails : str
        The rails there are: front and back, back, or none [-].
    limit_pa : float
        What it may have [Pa].

    Returns
    -------
    tuple of Mend
        The simplest first; empty when only support under all of it would do [Pa].

    Examples
    --------
    >>> [mend.words for mend in span_mends(0.6096, 0.635, 0.0381, 2322.68, "back", 2.04e6)]
    ['a rail under its front edge', '2" (50.8 mm) of thickness']

    References
    ----------
    As `use_rule`.
    """
    sides = "a rail under its front edge" if rails == BACK_RAIL else "a rail under its front and one under its back edge"
    across = "a rail across under its middle"
    changes = [] if rails == BOTH_RAILS else [(sides, span_m, BOTH_RAILS)]
    changes.append((across, span_m / 2, rails))
    if rails != BOTH_RAILS:
        changes.append((f"{sides}, and {across}", span_m / 2, BOTH_RAILS))
    found = []
    for words, span, carried in changes:
        stress = _kneeling_pa(span_use(span, width_m, thickness_m, density_kg_m3, carried))
        if stress <= limit_pa and not (found and words.startswith(found[0].words)):
            found.append(Mend(words, stress))
    return tuple(found + _thicker(
        lambda thick: span_use(span_m, width_m, thick, density_kg_m3, rails), thickness_m, limit_pa
    ))  # fmt: skip


def overhang_mends(overhang_m, edge_m, thickness_m, density_kg_m3, limit_pa):
    """Changes that let a person kneel down slowly on an overhang, brackets apart.

    Parameters
    ----------
    overhang_m, edge_m, thickness_m : float
        Length beyond the support, edge that overhangs, thickness [m].
    density_kg_m3 : float
        Density [kg/m3].
    limit_pa : float
        What it may have [Pa].

    Returns
    -------
    tuple of Mend
        One thickness, or none [Pa].

    Examples
    --------
    >>> [mend.words for mend in overhang_mends(0.254, 0.635, 0.0381, 2322.68, 2.04e6)]
    ['2 1/2" (63.5 mm) of thickness']

    References
    ----------
    As `use_rule`.
    """
    return tuple(_thicker(
        lambda thick: overhang_use(overhang_m, edge_m, thick, density_kg_m3), thickness_m, limit_pa
    ))  # fmt: skip
