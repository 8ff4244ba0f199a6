"""Prices of a job file: what a pack holds and what it costs, in the shop's own currency."""

from dataclasses import dataclass

from shop_calc import units
from shop_calc.trade.jobs.job_entries import shown

LONGEST_CURRENCY = 4
DEAREST = 1e6  # judgement: a dearer pack is a slip of the comma
MOST_PRICES = 60
_PACKS = "a mass or a volume, as in \"94 lb\" or \"1 qt\""


@dataclass(frozen=True)
class Price:
    """One price.

    Parameters
    ----------
    what : str
        The material, "sealer", or anything that is counted [-].
    price : float
        Price of a pack, or of one piece [currency].
    pack_kg, pack_m3 : float or None
        What a pack holds, one of the two [kg, m3].
    count : float or None
        How many pieces the job takes, for what is counted [-].

    Examples
    --------
    >>> Price("form board", 34.0, count=2).count
    2

    References
    ----------
    Common practice, no source.
    """

    what: str
    price: float
    pack_kg: float | None = None
    pack_m3: float | None = None
    count: float | None = None


def read_costs(found, table):
    """Check the [cost] part of a job file.

    Parameters
    ----------
    found : Collector
        Where problems go [-].
    table : object
        The part as the file has it [as typed].

    Returns
    -------
    dict
        currency, and prices as a tuple of Price [-].

    Examples
    --------
    >>> from shop_calc.trade.problems import Collector
    >>> rows = {"currency": "$", "prices": {"fine silica sand": {"pack": "50 lb", "price": 9}}}
    >>> read_costs(Collector(), rows)["prices"][0].price
    9.0

    References
    ----------
    Form of the file: data/README.md.
    """
    result = {"currency": "", "prices": ()}
    if not isinstance(table, dict):
        found.add("[cost]", shown(table), "a part of the file with entries below it")
        return result
    for key in table:
        if key not in result:
            found.say(f"cost.{str(key)[:60]}: no such entry; [cost] may have: {', '.join(result)}")
    currency = table.get("currency", "")
    if not isinstance(currency, str) or len(currency.strip()) > LONGEST_CURRENCY or not currency.isprintable():
        found.add("cost.currency", shown(currency), f"a sign of at most {LONGEST_CURRENCY} letters, as in currency = "
        "\"$\"")
        currency = ""
    prices = table.get("prices", {})
    if not isinstance(prices, dict) or len(prices) > MOST_PRICES:
        found.add("[cost.prices]", shown(prices), f"at most {MOST_PRICES} materials, each with pack and price")
        prices = {}
    rows = []
    for what, row in prices.items():
        entry = f"cost.prices.{str(what)[:60]}"
        with found.catch(entry):
            rows.append(_price(str(what).strip(), row, entry))
    return {"currency": currency.strip(), "prices": tuple(rows)}


def _price(what, row, entry):
    if not isinstance(row, dict) or "price" not in row or len(row) != 2 or not set(row) <= {"pack", "count", "price"}:
        raise ValueError(
            f'{entry}: {shown(row)} given; it must be {{ pack = "94 lb", price = 18.5 }} or {{ count = 2, price = 34 }}'
        )
    price = _number(row["price"], f"{entry}.price", DEAREST)
    if "count" in row:
        return Price(what, price, count=_number(row["count"], f"{entry}.count", 1000.0))
    pack = row["pack"]
    found = {}
    for kind, name in (("mass", "pack_kg"), ("liquid", "pack_m3")):
        try:
            found[name] = units.parse(pack, kind, f"{entry}.pack")
            break
        except ValueError:
            continue
    if not found or min(found.values()) <= 0:
        raise ValueError(f"{entry}.pack: {shown(pack)} given; it must be {_PACKS}")
    return Price(what, price, **found)


def _number(value, entry, most):
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not 0 <= value <= most:
        raise ValueError(f"{entry}: {shown(value)} given; it must be a plain number from 0 to {most:g}, without a sign")
    return float(value)
