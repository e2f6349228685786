"""Options of the whole suite."""

from __future__ import annotations

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--rewrite", action="store_true", help="write what comes out as what the case files expect")


@pytest.fixture
def rewriting(request: pytest.FixtureRequest) -> bool:
    return bool(request.config.getoption("--rewrite"))
