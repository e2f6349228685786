"""Options of the whole suite."""

from __future__ import annotations

import os

import pytest
from hypothesis import settings

# An exception in the compiler fails the test that meets it, in a program that the test starts too; without this,
# it would be a finding of the recipe (`tamis.internal`).
os.environ["TAMIS_RAISE"] = "1"

# The same cases at every run and no clock: a law that fails must fail for everybody.
settings.register_profile("steady", derandomize=True, deadline=None)
settings.load_profile("steady")


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--rewrite", action="store_true", help="write what comes out as what the case files expect")


@pytest.fixture
def rewriting(request: pytest.FixtureRequest) -> bool:
    return bool(request.config.getoption("--rewrite"))
