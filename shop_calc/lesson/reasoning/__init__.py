"""Questions to reason about: the wrong line of a sheet, the order of the steps, the sign that allows.

`find_wrong_line` takes the working of any question, plan or lesson and a slip of the cabinet, plants the slip in
one line and carries it on through the lines below. `order_steps` scrambles steps given in their right order.
`choose_cue` asks for the sign of a stage of the day, from the table that the plan itself is printed from. With a
student code each asks something of its own: other numbers, another planted line, another stage, the choices in
another order.
"""

from shop_calc.lesson.reasoning.cues import choose_cue
from shop_calc.lesson.reasoning.order import order_steps
from shop_calc.lesson.reasoning.wrong_line import find_wrong_line, plant

__all__ = ["choose_cue", "find_wrong_line", "order_steps", "plant"]
