"""The shop sheet: one plan on two pages of paper, black on white, to pin to the wall.

Facts (numbers as printed) come from the plan, drawings are made from the same numbers, the words that stay stand
in words.py, and the template only puts them in their places.
"""

from shop_calc.lesson.sheet.build import sheet_html
from shop_calc.lesson.sheet.inline import show_sheet
from shop_calc.lesson.sheet.save import save_sheet

__all__ = ["save_sheet", "sheet_html", "show_sheet"]
