"""The piece on the bench at one moment: what has been done and seen, and what follows from it."""

from dataclasses import dataclass

from shop_calc import defaults
from shop_calc.science import build_up
from shop_calc.trade.rehearsal.pour import Pour, read_at

BEARING_FACTOR = 9.0  # resistance of a deep punch over shear strength; from memory of Skempton 1951
DULL, CRUSTED = 1.0, 1.5  # of the free water lost since the skin was last worked; the second a judgement


@dataclass(frozen=True)
class Done:
    """One line of the diary.

    Parameters
    ----------
    hour_h : float
        When, hours after the first water [h].
    word : str
        What was done, a key of ACTS [-].
    minutes : float
        How long it took [min].
    said : str
        What there was to say about it; empty for most [-].
    harm : tuple of str
        Keys of the consequences that it had; a person learns of them at the end [-].

    Examples
    --------
    >>> Done(0.5, "spread", 10.0).said
    ''

    References
    ----------
    Common practice, no source.
    """

    hour_h: float
    word: str
    minutes: float
    said: str = ""
    harm: tuple = ()


@dataclass(frozen=True, eq=False)
class State:
    """A practice pour at one moment; every act gives a new one.

    Parameters
    ----------
    pour : Pour
        The pour with its hidden day [as its fields].
    hour_h : float
        Now, hours after the first water [h].
    base_age_h, face_age_h : float
        Equivalent ages of the two layers [h].
    skin_kg_m2 : float
        Water the skin has lost since it was last worked or wetted [kg/m2].
    lost_kg_m2 : float
        Water that a wet face would have lost since it was spread [kg/m2].
    red_kg_m2 : float
        What the soft skin lost at more than the red limit since it was last worked, which closes cracks [kg/m2].
    cover : str
        What lies over it, a key of the covers; "open" for nothing [-].
    cover_from_h : float
        Since when [h].
    face_on_h, settled_h, screeded_h, float_h : float or None
        When the face was on, its last working before it was left alone, the screed, the last float [h].
    off, patched : tuple of str
        Sides taken off, sides whose edge was patched [-].
    steel : tuple of (float, float)
        Passes of steel, with the resistance each met [h, Pa].
    water_kg_m2 : float
        Water put on the face [kg/m2].
    stirred : bool
        True when the face share was turned over again [-].
    over : bool
        True from the morning after [-].
    diary : tuple of Done
        Everything done [h].
    seen : tuple of Sign
        Every look [h].
    damage : tuple of Damage
        What went wrong; hidden from the person until the end [-].
    path : tuple of (float, float, float)
        Hour, age of base and age of face wherever one of the histories was left [h].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> begin("oak").cover
    'open'

    References
    ----------
    Common practice, no source.
    """

    pour: Pour
    hour_h: float
    base_age_h: float
    face_age_h: float
    skin_kg_m2: float = 0.0
    lost_kg_m2: float = 0.0
    red_kg_m2: float = 0.0
    cover: str = "open"
    cover_from_h: float = 0.0
    face_on_h: float | None = None
    settled_h: float | None = None
    screeded_h: float | None = None
    float_h: float | None = None
    off: tuple = ()
    patched: tuple = ()
    steel: tuple = ()
    water_kg_m2: float = 0.0
    stirred: bool = False
    over: bool = False
    diary: tuple = ()
    seen: tuple = ()
    damage: tuple = ()
    path: tuple = ()

    def having(self, **changed):
        """Give the same pour with some fields changed; a third quicker than dataclasses.replace, and a day is 200 of them."""
        return State(**(vars(self) | changed))

    @property
    def face_pa(self):
        """Penetration resistance of the face; hidden [Pa]."""
        return self.pour.resistance_pa(self.face_age_h)

    @property
    def base_pa(self):
        """Penetration resistance of the base; hidden [Pa]."""
        return self.pour.resistance_pa(self.base_age_h)

    @property
    def rest_h(self):
        """How long the piece has rested since its last working or tapping [h]."""
        return self.hour_h - (self.pour.starts_h if self.settled_h is None else self.settled_h)

    @property
    def yield_pa(self):
        """Yield stress of the resting mix, by the early clock; hidden [Pa]."""
        start_pa, rate_pa_s = self.pour.build_up
        return start_pa + rate_pa_s * max(self.rest_h, 0.0) * 3600.0

    @property
    def edge_pa(self):
        """Yield stress that the edge needs to stand, with its safety factor [Pa]."""
        told = self.pour.told
        height_m = told.standing_m if self.face_on_h is None else told.thickness_m + told.drop_m
        return float(
            build_up.edge_demand_pa(
                height_m, defaults.si("slab_density"), safety_factor=defaults.get("edge_safety_factor").value
            )
        )

    @property
    def softer_pa(self):
        """Penetration resistance of the softer layer; hidden [Pa]."""
        return self.base_pa if self.face_on_h is None else min(self.base_pa, self.face_pa)

    @property
    def bears_pa(self):
        """Shear stress that the edge, or the base, bears: by the early clock, later by the late one; hidden [Pa]."""
        if self.softer_pa < defaults.si("power_law_from"):
            return self.yield_pa
        return max(self.yield_pa, self.softer_pa / BEARING_FACTOR)

    @property
    def stands(self):
        """True when base, or edge, keeps its shape; hidden."""
        rested = self.face_on_h is not None or self.rest_h >= defaults.si("base_ready_earliest") - 1e-9
        return rested and self.bears_pa >= self.edge_pa - 1e-9

    @property
    def dryness(self):
        """Water lost by the skin over what it can lose before it turns dull; hidden [-]."""
        return self.skin_kg_m2 / self.pour.free_water_kg_m2

    @property
    def crusted(self):
        """True when a dry skin lies over soft mortar; hidden."""
        soft = self.face_pa < defaults.si("first_steel_pr_low")
        return self.face_on_h is not None and soft and self.dryness >= CRUSTED

    @property
    def stiff_in_bucket(self):
        """True while the face share has gone stiff falsely and nobody has turned it over; hidden."""
        return self.pour.false_set and not self.stirred

    @property
    def gap_h(self):
        """Equivalent hours at 21 °C since the base was packed; hidden [h]."""
        return self.base_age_h - read_at(self.pour.ages_h["base", True], self.pour.starts_h)

    @property
    def kept(self):
        """Damage that can be seen and was not undone."""
        return tuple(damage for damage in self.damage if damage.stays)
