"""Lesson 05: the first night in temperatures, evaporation against the book, a wet rag beside its forecast."""

from shop_calc import defaults
from shop_calc.lesson.bench import over_band, typed
from shop_calc.lesson.book import book
from shop_calc.lesson.pictures.slab import MortarTemperature, SlabDay
from shop_calc.lesson.practice import Said
from shop_calc.science.checks import require
from shop_calc.science.evaporation import menzel_rate_kg_m2_h
from shop_calc.science.moist_air import wet_bulb_c
from shop_calc.trade.timeline.drying import moving_air
from shop_calc.trade.timeline.room import room_at
from shop_calc.units import convert, show

THERMOMETER_K = 1.0  # judgement: two kitchen thermometers differ by this much
HYGROMETER_SHARE = 0.10  # judgement: so does a cheap hygrometer, ten percent of humidity either way
SHADE_K = 1.5  # judgement: a rag in a weak draught is warmed by the walls, and stays this much too warm
RAG_ENDS_C = (2.0, 32.0)
CAPTION = "A weak draught leaves the rag too warm, never too cold: the band is longer on that side."


def night_picture(plan, cover="fabric"):
    """Draw the temperatures of the first night, open and under a cover.

    Parameters
    ----------
    plan : Plan
        A plan [-].
    cover : str
        Key of the cover that keeps the air out [-].

    Returns
    -------
    MortarTemperature
        The picture [°C].

    Raises
    ------
    ValueError
        When there is no such cover.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> night_picture(make_plan(read_job(demo_job("garden_bench_top")))).alt[:9]
    'The first'

    References
    ----------
    Heat balance of shop_calc.science.slab_heat.
    """
    cure, room = plan.cure, plan.day.samples.inputs.room
    hours, open_c = cure.night("open")
    _, covered_c = cure.night(cover)
    air_c, humidity, _ = room_at(room, hours)
    night = SlabDay(hours, open_c, covered_c, air_c, wet_bulb_c(air_c, humidity))
    return MortarTemperature(night, plan.day.water_in, title="The first night")


def evaporation_book():
    """Lay Menzel's formula beside numbers of tables and charts.

    Returns
    -------
    Table
        A row a case, with the kind of number it is [lb/ft2/h].

    Examples
    --------
    >>> evaporation_book().rows[1][1]
    '0.162 lb/ft²·h'

    References
    ----------
    data/published/evaporation.csv names the source of each row.
    """
    cases = (
        ("warm slab 70 °F, air 70 °F, 50 %, 10 mph", "LE-08", (70, 70, 0.5, 10)),
        ("warm slab 70 °F, cold air 40 °F, 50 %, 10 mph", "LE-23", (70, 40, 0.5, 10)),
        ("all at 90 °F, 10 %, 10 mph", "LE-28", (90, 90, 0.1, 10)),
        ("concrete 87 °F, air 80 °F, 50 %, 12 mph", "EV-8a", (87, 80, 0.5, 12)),
    )
    return book(*((words, id, menzel_lb_ft2_h(*case)) for words, id, case in cases))


def paste_words():
    """Lay the drying of a measured thin paste beside the formula, in dead still air and as a still room moves.

    Returns
    -------
    Said
        Two lines [-].

    Examples
    --------
    >>> paste_words().text.splitlines()[0]
    'Air that does not move at all: 0.023 lb/ft²·h (0.112 kg/m²·h), too little.'

    References
    ----------
    NIST/DTU, Cement and Concrete Research 30 (2000) 1157: 23 °C, 50 % humidity, one face open.
    """
    still, room = (float(menzel_rate_kg_m2_h(23.0, 23.0, 0.50, speed)) for speed in (0.0, moving_air(0.0)))
    return Said(
        f"Air that does not move at all: {show(still, 'rate')}, too little.\n"
        f"Air at {show(float(moving_air(0.0)), 'speed')}, our still room: {show(room, 'rate')}."
    )


def menzel_lb_ft2_h(surface_f, air_f, rh_fraction, wind_mph):
    """Give Menzel's rate for entries as a US shop writes them.

    Parameters
    ----------
    surface_f, air_f : float
        Temperatures [°F].
    rh_fraction : float
        Humidity [-].
    wind_mph : float
        Air speed [mi/h].

    Returns
    -------
    float
        Rate [lb/ft2/h].

    Examples
    --------
    >>> f"{menzel_lb_ft2_h(70, 40, 0.5, 10):.5f}"
    '0.16414'

    References
    ----------
    Menzel 1954, from memory.
    """
    surface_c, air_c = (convert(value, "F", "C") for value in (surface_f, air_f))
    rate = menzel_rate_kg_m2_h(surface_c, air_c, rh_fraction, convert(wind_mph, "mph", "m/s"))
    return float(convert(rate, "kg/m2/h", "lb/ft2/h"))


def rag_band_c(air_c, rh_fraction):
    """Forecast the reading of a thermometer in a wet rag, with what instruments may be off.

    Parameters
    ----------
    air_c : float
        Air temperature [°C].
    rh_fraction : float
        Humidity [-].

    Returns
    -------
    tuple of float
        Low, likely, high [°C].

    Raises
    ------
    ValueError
        When the humidity is outside 0 to 1.

    Examples
    --------
    >>> [round(float(value), 3) for value in rag_band_c(21.1111, 0.5)]
    [12.266, 14.736, 18.635]

    Notes
    -----
    Wet bulb with the humidity off by HYGROMETER_SHARE and the thermometer by THERMOMETER_K; above, what a weak
    draught leaves of the warmth of the walls.

    References
    ----------
    Wet bulb: shop_calc.science.moist_air. Bands: judgement.
    """
    require("humidity", rh_fraction, 0, 1, unit="(as a fraction)")
    low, likely, high = (
        float(wet_bulb_c(air_c, min(max(rh_fraction + off, 0.0), 1.0)))
        for off in (-HYGROMETER_SHARE, 0.0, HYGROMETER_SHARE)
    )
    return low - THERMOMETER_K, likely, high + THERMOMETER_K + SHADE_K


def wet_rag(wet, air="70 F", humidity="50 %", caption=CAPTION):
    """Lay a wet-rag reading over its forecast; nothing that is typed stops the lesson.

    Parameters
    ----------
    wet : float or str
        Reading of the thermometer in the wet rag; a bare number is in °F, three dots for not yet [°F].
    air : str
        Reading of a dry thermometer beside it [-].
    humidity : str
        Humidity of the room [-].
    caption : str
        A sentence on what to see [-].

    Returns
    -------
    Still or Said
        Shown by the notebook [-].

    Examples
    --------
    >>> wet_rag("soaked")
    This cannot be read: ...

    References
    ----------
    As `rag_band_c`.
    """
    try:
        air_c, share = typed(air, "temperature", "F"), typed(humidity, "fraction", "%")
        if air_c is None or share is None:
            return Said("Write down the dry thermometer and the humidity first: both make the forecast.")
        band = rag_band_c(air_c, share)
    except ValueError as error:
        return Said(f"This cannot be read: {error}")
    return over_band(wet, band, "temperature", "F", RAG_ENDS_C, "A wet rag on a thermometer", caption)


def morning(plan):
    """Say the cover of the night and how old the piece is in the morning, as lesson 06 takes it over.

    Parameters
    ----------
    plan : Plan
        A plan [-].

    Returns
    -------
    Said
        Two lines [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> morning(make_plan(read_job(demo_job("garden_bench_top")))).text.splitlines()[0]
    'Cover: leave it open.'

    References
    ----------
    As shop_calc.trade.curing.cure.
    """
    cure = plan.cure
    until = f"{plan.day.clock(cure.until_h):%H:%M}"
    title = cure.picked.title
    lines = [
        f"Cover: {title[0].lower()}{title[1:]}.",
        f"At {until} it is {cure.picked.morning_age_h:.1f} h old, counted at "
        f"{show(defaults.si('reference_temp'), 'temperature')}; under damp fabric "
        f"{cure.choice('fabric').morning_age_h:.1f} h.",
    ]
    return Said("\n".join(lines))
