"""What a lesson writes goes into an empty folder of its own while tests run."""

import os
import tempfile

import pytest

# The kernels that run the notebooks inherit it.
os.environ["SHOP_CALC_WORK"] = tempfile.mkdtemp(prefix="shop-calc-tests-")


@pytest.fixture
def work_folder(monkeypatch, tmp_path):
    """An empty folder for one test."""
    monkeypatch.setenv("SHOP_CALC_WORK", str(tmp_path))
    return tmp_path
