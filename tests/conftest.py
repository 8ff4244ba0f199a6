"""What a lesson writes goes into an empty folder of its own while tests run; how many examples are drawn."""

import atexit
import os
import shutil
import tempfile

import pytest
from hypothesis import HealthCheck, settings

# The kernels that run the notebooks inherit it.
os.environ["SHOP_CALC_WORK"] = tempfile.mkdtemp(prefix="shop-calc-tests-")
atexit.register(shutil.rmtree, os.environ["SHOP_CALC_WORK"], ignore_errors=True)

# A test that sets no number of its own draws this many examples. One that needs more or fewer sets a multiple or a share
# of settings().max_examples, so that all follow: about 2,500 in the whole suite with "ci", for every push and always the
# same ones, and about 100,000 with "slow", for a night: HYPOTHESIS_PROFILE=slow python -m pytest tests
_QUIET = {"deadline": None, "suppress_health_check": [HealthCheck.too_slow, HealthCheck.data_too_large]}
settings.register_profile("ci", max_examples=25, derandomize=True, **_QUIET)
settings.register_profile("slow", max_examples=1000, **_QUIET)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "ci"))


@pytest.fixture
def work_folder(monkeypatch, tmp_path):
    """An empty folder for one test."""
    monkeypatch.setenv("SHOP_CALC_WORK", str(tmp_path))
    return tmp_path
