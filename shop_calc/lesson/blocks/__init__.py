"""Slider blocks: ipywidgets is imported nowhere else."""

from shop_calc.lesson.blocks.block import Block
from shop_calc.lesson.blocks.rows import choice, slider
from shop_calc.lesson.blocks.switch import UnitSwitch

__all__ = ["Block", "UnitSwitch", "choice", "slider"]
