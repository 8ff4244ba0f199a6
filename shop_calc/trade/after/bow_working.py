"""The working of shrinkage and curl, line by line."""

from shop_calc import defaults
from shop_calc.trade.working import Step

_PICKETT = "Pickett 1956, from memory"


def bow_working(bow, layers, mix):
    """Write the working of a bow.

    Parameters
    ----------
    bow : Bow
        The numbers [as its fields].
    layers : Layers
        The two layers [m].
    mix : Mix
        Mortar and base [kg].

    Returns
    -------
    tuple of Step
        In the order they follow from one another [as named].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> bow_working(plan.bow, plan.layers, plan.mix)[0].name
    'shrinkage_en_ratio'

    References
    ----------
    Sources stand in each Step.
    """
    n, share = defaults.si("pickett_n"), defaults.si("one_face_share")
    face, base = layers.face_thickness_m, layers.base_depth_m
    e_face, e_base = defaults.si("modulus_face"), defaults.si("modulus_base")
    two, one = bow.two_layer, bow.one_face
    m = face / base
    r_e = e_face / e_base
    diagonal = ("L_diag", bow.diagonal_m, "m")
    shape = 6.0 * (1.0 + m) ** 2 / (3.0 * (1.0 + m) ** 2 + (1.0 + m * r_e) * (m**2 + 1.0 / (m * r_e)))
    return (
        Step("shrinkage_en_ratio", "eps_en", "by the drying and the autogenous part of EN 1992",
             (("RH", bow.rh_fraction, "-"), ("f_28", bow.strength_28d_pa, "Pa"), ("T", layers.thickness_m, "m")),
             bow.en_strain, "-", "read", "EN 1992-1-1:2004, 3.1.4(6) and B.2", "shrinkage of the base in the end, "
             "EN 1992"),
        Step("shrinkage_aci_ratio", "eps_aci", "by the standard shrinkage and a factor for each departure from it",
             tuple((f"aci_{key}", value, "-") for key, value in bow.recipe.items()), bow.aci_strain, "-", "memory",
             "ACI 209R-92 section 2.5, from memory", "shrinkage of the base in the end, ACI 209"),
        Step("shrinkage_base_ratio", "eps_base", "(eps_en + eps_aci) / 2",
             (("eps_en", bow.en_strain, "-"), ("eps_aci", bow.aci_strain, "-")), bow.base_strain, "-", "judgement",
             "mean of two codes", "shrinkage of the base in the end, likely"),
        Step("restraint_ratio", "r_s", "phi**n_s", (("phi", mix.phi, "-"), ("n_s", n, "-")), bow.restraint_ratio, "-",
             "memory", _PICKETT, "shrinkage of the base over that of the face"),
        Step("shrinkage_face_ratio", "eps_face", "eps_base / r_s",
             (("eps_base", bow.base_strain, "-"), ("r_s", bow.restraint_ratio, "-")), bow.face_strain, "-", "memory",
             _PICKETT, "shrinkage of the face in the end, likely"),
        Step("layer_shape_factor", "k_layers", "6 * (1 + q_t)**2 / (3 * (1 + q_t)**2 + (1 + q_t * q_e) * (q_t**2 + "
             "1 / (q_t * q_e)))", (("q_t", m, "-"), ("q_e", r_e, "-")), shape, "-", "memory", "Timoshenko 1925, "
             "from memory",
             "how two layers of unlike thickness and stiffness bend; 1.5 for equal ones"),
        Step("bow_two_layer_m", "bow_2", "k_layers * (eps_face - eps_base) / (t_face + t_base) * L_diag**2 / 8",
             (("k_layers", shape, "-"), ("eps_face", bow.face_strain, "-"), ("eps_base", bow.base_strain, "-"),
              ("t_face", face, "m"), ("t_base", base, "m"), diagonal), two.likely_m, "m", "memory",
             "Timoshenko 1925, from memory", "bow when both faces dry alike, at most"),
        Step("bow_one_face_m", "bow_1", "k_lead * eps_base / (t_face + t_base) * L_diag**2 / 8 + k_lead * bow_2",
             (("k_lead", share, "-"), ("eps_base", bow.base_strain, "-"), ("t_face", face, "m"), ("t_base", base, "m"),
              diagonal, ("bow_2", two.likely_m, "m")), one.likely_m, "m", "judgement", "plane sections; share ours",
             "bow when only the top dries"),
        Step("bow_one_face_lying_m", "lie_1", "by beam theory with contact, its weight counted",
             (("bow_1", one.likely_m, "m"),),
             one.lying_m, "m", "derived", "elementary beam theory", "height of the ends over a flat bed, only the "
             "top dry"),
        Step("bow_two_layer_lying_m", "lie_2", "by beam theory with contact, its weight counted",
             (("bow_2", two.likely_m, "m"),), two.lying_m, "m", "derived", "elementary beam theory",
             "height of the ends over a flat bed, both faces dry"),
    )  # fmt: skip
