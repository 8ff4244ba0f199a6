"""Every entry a job file may have: kind, default, range and meaning in one table."""

from dataclasses import dataclass

OUTLINES = ("rectangle", "L", "U", "circle", "racetrack", "polygon")
USES = ("top", "table", "seat", "wall-hung")
CUTOUT_SHAPES = ("rectangle", "circle", "racetrack", "polygon")
CEMENTS = ("rapid", "normal", "slow")
STANDS_ON = ("not said", "legs", "cabinet", "continuous", "wall")
OVERHANGS = ("ends", "side")
RAILS = ("front and back", "back", "none")
SEALERS = ("none", "reactive", "penetrating", "film", "oil")
VESSELS = ("bucket and paddle", "drum", "tub by hand")


@dataclass(frozen=True)
class Field:
    """One entry of a job file.

    Parameters
    ----------
    name : str
        As written in the file [-].
    kind : str
        A kind of units.KINDS, or choice, name, names, count, minutes, clock, humidity, edges, place,
        points, recipe, seen, stone [-].
    row : str
        Row of the defaults table that gives default and range; empty when there is none [-].
    default : object
        Default where no row gives it; None when the entry may be left out [-].
    required : bool
        True when the file must have it [-].
    choices : tuple of str
        Allowed words of a choice [-].
    words : str
        What it is, for messages and the documentation [-].

    Examples
    --------
    >>> FIELDS["layers"][0].name
    'face'

    References
    ----------
    Common practice, no source.
    """

    name: str
    kind: str
    row: str = ""
    default: object = None
    required: bool = False
    choices: tuple = ()
    words: str = ""


FIELDS = {
    "piece": (
        Field("outline", "choice", required=True, choices=OUTLINES, words="shape of the plan"),
        Field("length", "length", "piece_length", words="along the front edge"),
        Field("width", "length", "piece_width", words="from front to back"),
        Field("diameter", "length", words="of a round piece"),
        Field("notch_length", "length", words="missing corner of an L, opening of a U, along the front edge"),
        Field("notch_width", "length", words="missing corner of an L, opening of a U, from the back"),
        Field("notch_at", "length", words="opening of a U: distance from the left end"),
        Field("corner_radius", "length", words="rounding of all corners of a rectangle"),
        Field("points", "points", words="corners of a polygon, counter-clockwise, as pairs of sizes"),
        Field("thickness", "length", "slab_thickness", required=True, words="of the whole piece"),
        Field("exposed", "edges", default="all", words="edges that will be seen: names, all or none"),
        Field("use", "choice", default="top", choices=USES, words="what it will be used for"),
    ),
    "piece.drop": (
        Field("edge", "names", required=True, words="edge that is thicker than the rest, or a list of such edges"),
        Field("depth", "length", "drop_depth", required=True, words="of the drop edge, top to bottom"),
        Field("width", "length", required=True, words="of the return behind the drop edge"),
    ),
    "piece.cutout": (
        Field("shape", "choice", required=True, choices=CUTOUT_SHAPES, words="shape of the opening"),
        Field("name", "name", default="opening", words="sink, tap hole and the like"),
        Field("length", "length", words="along the front edge"),
        Field("width", "length", words="from front to back"),
        Field("diameter", "length", words="of a round opening"),
        Field("corner_radius", "length", words="rounding of all corners of a rectangle"),
        Field("points", "points", words="corners of a polygon, from the opening's own corner"),
        Field("at", "place", required=True, words="middle of the opening from the left front corner"),
        Field("exposed", "seen", default=False, words="true when its edge will be seen, or a list of edge names"),
    ),
    "layers": (
        Field("face", "length", "face_thickness", words="thickness of the face"),
        Field("face_allowance", "fraction", "face_allowance", words="extra face mortar, patch cup included"),
        Field("base_allowance", "fraction", "base_allowance", words="extra base mix"),
    ),
    "mix": (
        Field("recipe", "recipe", required=True, words="name of a recipe or bag, or a table of parts"),
        Field("stone", "stone", default="0", words="oven-dry stone in the base, as a mass per mass of binder or bag"),
        Field("coarse_sand", "stone", default="0", words="oven-dry coarse sand in the base, likewise"),
        Field("void_content", "fraction", words="voids of the dry-rodded stone"),
        Field("stone_material", "name", default="stone 3/8 in", words="which stone"),
        Field("sand_material", "name", default="coarse sand", words="which coarse sand"),
        Field("held_back", "fraction", "held_back_water", words="water added only if the mix needs it"),
        Field("strength_28d", "pressure", "strength_28d", words="compressive strength at 28 days, as tested"),
        Field("cement", "choice", choices=CEMENTS, words="how fast the cement is; left out: by the binder"),
    ),
    "materials": (
        Field("powder_temp", "temperature", "powder_temp", words="cement and other powders"),
        Field("sand_temp", "temperature", "powder_temp", words="sand, as stored"),
        Field("stone_temp", "temperature", "powder_temp", words="stone and coarse sand, as stored"),
        Field("liquids_temp", "temperature", "powder_temp", words="polymer and admixtures, as stored"),
        Field("water_temp", "temperature", "tap_water_temp", words="water from the tap"),
        Field("stone_moisture", "fraction", default=0.0, words="water in the stone, of its dry mass"),
        Field("fine_sand_moisture", "fraction", words="water in the recipe's sand; left out: as the recipe says"),
        Field("coarse_sand_moisture", "fraction", default=0.0, words="water in the coarse sand, of its dry mass"),
    ),
    "mixer": (
        Field("vessel", "choice", default="bucket and paddle", choices=VESSELS, words="what it is mixed in"),
        Field("usable", "volume", "usable_volume", words="volume that mixes without spilling"),
        Field("rated", "volume", words="rated volume of a drum"),
        Field("drum_share", "fraction", "drum_share", words="usable share of a drum"),
        Field("minutes_per_load", "minutes", "minutes_per_load", words="from one load's water to the next"),
        Field("rest", "minutes", "rest_after_mixing", words="rest after mixing, part of the load's minutes"),
        Field("power", "power", words="rated power of the mixer, for the heat it brings"),
    ),
    "day": (
        Field("water_in", "clock", required=True, words="date and time of the first water"),
        Field("wanted_mix_temp", "temperature", "wanted_mix_temp", words="temperature of the finished mix"),
        Field("hands", "count", "hands", words="people at work"),
    ),
    "place": (
        Field("on", "choice", default="not said", choices=STANDS_ON, words="what it will stand on"),
        Field("span", "length", words="between its supports, along its length"),
        Field("overhang", "length", words="beyond its supports"),
        Field("overhang_at", "choice", default="ends", choices=OVERHANGS, words="which edges hang over"),
        Field("rails", "choice", choices=RAILS, words="edges along the span that lie on a rail; left out: a cabinet has both"),
        Field("humidity", "humidity", "humidity", words="relative humidity in percent where it will stand"),
        Field("weighed", "mass", words="what the piece weighed on a scale"),
    ),
    "finish": (
        Field("polish_depth", "length", "polish_depth", words="depth that grinding and polishing take off"),
        Field("first_grit", "count", default=200.0, words="first grit"),
        Field("last_grit", "count", default=800.0, words="last grit"),
        Field("polish", "choice", default="wet", choices=("wet", "dry"), words="wet, or dry under a shroud"),
        Field("sealer", "choice", default="penetrating", choices=SEALERS, words="kind of sealer"),
        Field("solids", "fraction", "sealer_solids", words="solids of a film-forming sealer, by volume"),
        Field("film", "film_thickness", "sealer_film", words="dry film of one coat"),
        Field("coverage", "coverage", "sealer_coverage", words="area of one coat, as the label says"),
        Field("coats", "count", "sealer_coats", words="coats of sealer"),
    ),
    "log": (Field("file", "below", words="a shop log, a .csv file below the folder of the job file"),),
    "room": (
        Field("from", "clock", required=True, words="date and time from which this row holds"),
        Field("air", "temperature", "air_temp", required=True, words="air temperature"),
        Field("humidity", "humidity", "humidity", required=True, words="relative humidity in percent"),
        Field("wind", "speed", "wind", required=True, words="air speed over the piece"),
    ),
}

SECTIONS = ("piece", "layers", "mix", "materials", "mixer", "day", "room", "place", "finish", "cost", "log")
OWN_READERS = ("room", "cost")  # lists of rows, read apart
REQUIRED_SECTIONS = ("piece", "mix", "day", "room")

# Which sizes each outline needs; all others are refused, so that a size is never silently ignored.
SIZES = {
    "rectangle": ("length", "width"),
    "L": ("length", "width", "notch_length", "notch_width"),
    "U": ("length", "width", "notch_length", "notch_width", "notch_at"),
    "circle": ("diameter",),
    "racetrack": ("length", "width"),
    "polygon": ("points",),
}
OPTIONAL_SIZES = {"rectangle": ("corner_radius",)}
ALL_SIZES = (
    "corner_radius",
    "length", "width", "diameter", "notch_length", "notch_width", "notch_at", "points")
