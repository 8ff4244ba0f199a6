"""Reading a drawn picture: which words stand where, and what fills what."""

from matplotlib.text import Text

from shop_calc.lesson.pictures.stamps import Stamp

LEAN_PX = 4  # boxes of type hold room for accents and tails: two lines may share that much


def words_drawn(figure):
    """Every text that really reaches the picture, with its box in pixels."""
    main, found = figure.canvas.get_renderer(), {}
    plain, stamped = Text.draw, Stamp.draw

    def note(draw):
        def drawn(self, renderer):
            if renderer is main and self.get_visible() and self.get_text().strip():
                found[id(self)] = self
            return draw(self, renderer)

        return drawn

    Text.draw, Stamp.draw = note(plain), note(stamped)
    try:
        figure.canvas.draw()
    finally:
        Text.draw, Stamp.draw = plain, stamped
    return [(text, text.get_window_extent(main)) for text in found.values()]


def off_the_sheet(figure, drawn=None):
    """Texts that hang over an edge of the picture."""
    wide, tall = figure.bbox.width, figure.bbox.height
    return [
        text.get_text()
        for text, box in drawn or words_drawn(figure)
        if box.x0 < -1 or box.y0 < -1 or box.x1 > wide + 1 or box.y1 > tall + 1
    ]


def unreadable(figure):
    """Texts that hang over an edge of the picture, and pairs of texts whose boxes overlap; drawn once for both."""
    drawn = words_drawn(figure)
    found = off_the_sheet(figure, drawn)
    for number, (text, box) in enumerate(drawn):
        for other, there in drawn[:number]:
            across = min(box.x1, there.x1) - max(box.x0, there.x0)
            up = min(box.y1, there.y1) - max(box.y0, there.y0)
            if across > 1 and up > LEAN_PX:
                found.append((text.get_text(), other.get_text()))
    return found


def said(figure):
    """All words of a picture."""
    return [text.get_text() for text, _ in words_drawn(figure)]
