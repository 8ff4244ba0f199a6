"""The only place where inches, pounds, °F and quarts become SI and come back."""

from shop_calc.units.factors import convert
from shop_calc.units.kinds import KINDS, Kind
from shop_calc.units.names import parse_quantity, suffix_unit
from shop_calc.units.one_system import one_system
from shop_calc.units.reading import basis, parse
from shop_calc.units.showing import plain_number, shop_fraction, show

__all__ = [
    "KINDS",
    "Kind",
    "basis",
    "convert",
    "one_system",
    "parse",
    "parse_quantity",
    "plain_number",
    "shop_fraction",
    "show",
    "suffix_unit",
]
