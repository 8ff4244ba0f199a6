"""How many bags a job takes: counted, so that none is missing and none is left."""

from shop_calc.trade.advice import Advice
from shop_calc.trade.batching.shopping import packs
from shop_calc.trade.mortar.recipe_types import Bag
from shop_calc.units import show


def bag_advice(chosen, batch):
    """Count the bags of a pre-blended mix.

    Parameters
    ----------
    chosen : Recipe or Bag
        What the mortar is made of [-].
    batch : Batch
        The batch [kg].

    Returns
    -------
    tuple of Advice
        One note for a bag, none for a recipe by parts [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> from shop_calc.trade.plan import make_plan
    >>> batch = make_plan(read_job(demo_job("round_table_cold_shop"))).batch
    >>> bag_advice(recipe("demo counter bag"), batch)[0].text
    'Buy 2 bags of 80 lb (36.3 kg), and count them as they are opened.'

    References
    ----------
    Arithmetic on the mass and the yield that the label gives.
    """
    if not isinstance(chosen, Bag):
        return ()
    needed_kg = sum(each.total_kg for each in batch.ingredients if each.name == chosen.name)
    made = packs(needed_kg, chosen.mass_kg)
    bags = "bag" if made.count == 1 else "bags"
    return (
        Advice(
            "note", "batch", f"Buy {made.count} {bags} of {show(chosen.mass_kg, 'mass')}, and count them as they are opened.",
            f"The batch takes {show(needed_kg, 'mass')}, {made.exact_count:.2f} bags by what a bag makes, "
            f"{show(chosen.yield_m3, 'volume')}; {show(made.left_over_kg, 'mass')} is left. The mass on a label is dry: "
            "wet mass over it buys too many.",
            "derived", "arithmetic on the label",
        ),
    )  # fmt: skip
