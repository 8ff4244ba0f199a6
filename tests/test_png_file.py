"""What is packed is a PNG that another library reads, pixel for pixel."""

import io

import numpy as np
import pytest
from matplotlib.image import imread

from shop_calc.lesson.pictures.base import LIVE_DPI, STILL_DPI, new_figure, png_bytes
from shop_calc.lesson.pictures.png_file import packed

RNG = np.random.default_rng(7)


@pytest.mark.parametrize("shape", [(1, 1, 3), (2, 5, 3), (5, 2, 4), (64, 300, 4)])
def test_every_pixel_comes_back(shape):
    pixels = RNG.integers(0, 256, shape, dtype=np.uint8)
    read = imread(io.BytesIO(packed(pixels)))
    assert np.array_equal(np.round(255 * read), pixels[:, :, :3])


def test_a_torn_file_is_seen_by_its_check_sums():
    whole = bytearray(packed(np.zeros((4, 4, 3), np.uint8)))
    whole[20] ^= 1  # in its width
    with pytest.raises(SyntaxError, match="IHDR"):
        imread(io.BytesIO(bytes(whole)))


@pytest.mark.parametrize("dpi", [LIVE_DPI, STILL_DPI])
def test_a_figure_is_what_matplotlib_would_save(dpi):
    """Reference: matplotlib's own `savefig`, which packs with Pillow."""
    figure, axes = new_figure()
    axes.plot([0, 1, 2], [0, 2, 1])
    axes.set_title("steel")
    theirs = io.BytesIO()
    figure.savefig(theirs, format="png", dpi=dpi)
    theirs.seek(0)
    ours = imread(io.BytesIO(png_bytes(figure, dpi)))
    assert np.array_equal(ours, imread(theirs)[:, :, :3])
    assert figure.dpi == LIVE_DPI


@pytest.mark.parametrize("pixels", [np.zeros((2, 2), np.uint8), np.zeros((2, 2, 2), np.uint8), np.zeros((2, 2, 3))])
def test_anything_else_is_refused(pixels):
    with pytest.raises(ValueError, match="must be uint8"):
        packed(pixels)
