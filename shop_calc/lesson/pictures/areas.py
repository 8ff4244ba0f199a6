"""Where the axes of a picture lie on its page, in inches."""


def plot_area(axes, width_in, height_in, left_in, right_in, below_in, top_in):
    """Size a page and lay its axes between four lines, the upper one counted from the top."""
    axes.figure.set_size_inches(width_in, height_in)
    wide, tall = right_in - left_in, height_in - top_in - below_in
    axes.set_position([left_in / width_in, below_in / height_in, wide / width_in, tall / height_in])


def whole_page(axes, width_in, height_in):
    """Size a page and count its axes, which nobody sees, in inches from its lower left corner."""
    axes.figure.set_size_inches(width_in, height_in)
    axes.set_position([0, 0, 1, 1])
    axes.set(xlim=(0, width_in), ylim=(0, height_in))
    axes.set_axis_off()
