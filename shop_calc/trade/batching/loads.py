"""In which loads the mortar is mixed: equal ones, the face share out of the last."""

from dataclasses import dataclass

from shop_calc.science import portions
from shop_calc.science.checks import require

LOADS_HIGHEST = 500  # judgement: more loads than this is a slip of units, or a job for ready-mixed concrete


@dataclass(frozen=True)
class Portion:
    """One load by volume.

    Parameters
    ----------
    name : str
        "base 1", "base 2 and face", "face 1" [-].
    mortar_m3 : float
        Mortar mixed in it [m3].
    face_m3 : float
        Of that, set aside for the face [m3].

    Examples
    --------
    >>> last = Portion("base and face", 0.0224335, 0.0123960)
    >>> f"{last.mortar_m3 - last.face_m3:.7f}"  # stretched to base
    '0.0100375'

    References
    ----------
    Common practice, no source.
    """

    name: str
    mortar_m3: float
    face_m3: float


def split_loads(face_share_m3, base_m3, phi, usable_m3):
    """Split the mortar into equal loads; the face share comes out of the last one, or gets loads of its own.

    Not by ingredients: see `batch.build_batch`.

    Parameters
    ----------
    face_share_m3 : float
        Mortar to set aside for the face [m3].
    base_m3 : float
        Base mix to make [m3].
    phi : float
        Share of mortar in the base [-].
    usable_m3 : float
        Volume that the vessel mixes without spilling, stone included [m3].

    Returns
    -------
    tuple of (tuple of Portion, str)
        The loads in the order they are mixed, and why they are split so [m3].

    Raises
    ------
    ValueError
        When there is nothing to mix, or it takes more than 500 loads.

    Notes
    -----
    Every load gets the same mortar, so that one weigh sheet serves all. If that mortar is less than the face
    share, the face is mixed last in loads of its own, so that its set begins when it is needed.

    Examples
    --------
    >>> loads, why = split_loads(0.012396, 0.051864, 0.62608, 0.040)
    >>> [(load.name, f"{load.mortar_m3:.5f}") for load in loads]
    [('base 1', '0.02243'), ('base 2 and face', '0.02243')]

    References
    ----------
    Common practice, no source.
    """
    face = require("face share", face_share_m3, 0, unit="m3")
    base = require("base mix", base_m3, 0, unit="m3")
    usable = require("usable volume of the vessel", usable_m3, 0, unit="m3", low_open=True)
    mortar = face + require("phi, mortar share of the base", phi, 0, 1, low_open=True) * base
    if mortar <= 0:
        raise ValueError("volumes: 0 m3 of face and 0 m3 of base given; there must be something to mix")
    if max(mortar, base) <= usable * (1 + portions.WHOLE_COUNT_SLACK):
        name = "base and face" if base and face else "base" if base else "face"
        return (Portion(name, mortar, face),), "Everything fits into one load."
    count = _count(mortar / phi, usable)
    if face <= mortar / count and base > 0:
        each = mortar / count
        loads = [Portion(f"base {number}", each, 0.0) for number in range(1, count)]
        last = f"base {count} and face" if face > 0 else f"base {count}"
        return (*loads, Portion(last, each, face)), (
            f"{count} equal loads" + (", the face share out of the last one." if face > 0 else ".")
        )
    bases = _count(base, usable) if base > 0 else 0
    faces = _count(face, usable)
    loads = [Portion(_name("base", n, bases), phi * base / bases, 0.0) for n in range(1, bases + 1)]
    loads += [Portion(_name("face", n, faces), face / faces, face / faces) for n in range(1, faces + 1)]
    why = (
        "There is no base."
        if not base
        else (
            "The face share does not fit into one equal load, so the face is mixed last, "
            + ("in a load of its own." if faces == 1 else f"in {faces} loads of its own.")
        )
    )
    return tuple(loads), why


def face_alone(loads):
    """Say whether the face is mixed in loads of its own.

    Parameters
    ----------
    loads : sequence of Portion or Load
        The loads [m3].

    Returns
    -------
    bool
        False where it comes out of a load that becomes base too [-].

    Examples
    --------
    >>> face_alone(split_loads(0.012396, 0.051864, 0.62608, 0.040)[0])
    False

    References
    ----------
    As `split_loads`.
    """
    faces = [load for load in loads if load.face_m3 > 0]
    return bool(faces) and all(load.face_m3 == load.mortar_m3 for load in faces)


def _name(layer, number, count):
    return layer if count == 1 else f"{layer} {number}"


def _count(volume, usable):
    count = int(portions.whole_units_count(volume, usable))
    if count > LOADS_HIGHEST:
        raise ValueError(
            f"usable volume of the vessel: {usable * 1000:.3g} L given; that is {count} loads, "
            f"it must be enough for at most {LOADS_HIGHEST}"
        )
    return count
