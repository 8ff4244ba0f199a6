"""Plan and cut in words: labels of the edges, and the alt text."""

from shop_calc.lesson.pictures.lettering import listing, sentence
from shop_calc.units import show


def edge_wordings(name, length_m, faced, system="both"):
    """What to write at an edge, longest first.

    Parameters
    ----------
    name : str
        What the shop calls it [-].
    length_m : float
        Its length [m].
    faced : bool
        Whether the face wraps round it [-].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    list of str
        Two lines, one line, the name [-].

    Examples
    --------
    >>> edge_wordings("front", 1.524, True)
    ['front, faced\\n5\\'-0" (1524 mm)', 'front 5\\'-0" (1524 mm)', 'front']
    """
    size = show(length_m, "length", system)
    return [f"{name}, {'faced' if faced else 'wall'}\n{size}", f"{name} {size}", name]


def sections_alt(plan, system="both", exaggeration=None):
    """Plan and cut in full sentences.

    Parameters
    ----------
    plan : PiecePlan
        What is shown [as its fields].
    system : str
        "us", "si" or "both" [-].
    exaggeration : float, optional
        How many times larger the thickness is drawn in the cut [-].

    Returns
    -------
    str
        Alt text [-].
    """
    low_x, low_y, high_x, high_y = plan.outline.bounds
    size = lambda metres: show(metres, "length", system)  # noqa: E731
    said = [
        f"Plan and cut of a piece {size(high_x - low_x)} long and {size(high_y - low_y)} wide, "
        f"{size(plan.thickness_m)} thick: face {size(plan.face_m)}, base {size(plan.thickness_m - plan.face_m)}."
    ]
    faced = [name for name, *_ in plan.named_edges if name in plan.exposed]
    walls = [name for name, *_ in plan.named_edges if name not in plan.exposed]
    lengths = {name: size(length_m) for name, _, length_m in plan.named_edges}
    if faced:
        said.append(sentence(f"faced edges: {listing(f'{name} {lengths[name]}' for name in faced)}"))
        said.append("The base stops one face thickness short of them and of the top.")
    if walls:
        said.append(sentence(f"against a wall, not faced: {listing(f'{name} {lengths[name]}' for name in walls)}"))
    for names, depth_m, width_m, _ in plan.drops:
        said.append(sentence(f"dropped to {size(depth_m)}, returning {size(width_m)} under it: {listing(names)}"))
    for (name, is_faced), ring in zip(plan.holes, plan.outline.interiors, strict=False):
        left, low, right, top = ring.bounds
        said.append(
            sentence(f"{name}: {size(right - left)} by {size(top - low)}, {'faced' if is_faced else 'not faced'}")
        )
    if exaggeration is not None and exaggeration != 1:
        said.append(f"In the cut the thickness is drawn {exaggeration:g} times as large as the width.")
    return " ".join(said)
