"""With DIARY_NO_SKIPS set, a skipped test fails: `.ci/run` has installed what is needed.

Property tests draw the same examples on every run, so that a commit that passed passes again;
`pytest --hypothesis-profile soak` looks for new ones.
"""

import os
from collections.abc import Generator
from typing import Any

import pytest
from hypothesis import settings

settings.register_profile("repeatable", derandomize=True)
settings.register_profile("soak", max_examples=5000)
settings.load_profile("repeatable")

NO_SKIPS = bool(os.environ.get("DIARY_NO_SKIPS"))


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(
    item: pytest.Item, call: pytest.CallInfo[None]
) -> Generator[None, Any, Any]:
    report = yield
    if not hasattr(report, "wasxfail"):
        _allow_no_skip(report)
    return report


@pytest.hookimpl(wrapper=True)
def pytest_make_collect_report(collector: pytest.Collector) -> Generator[None, Any, Any]:
    report = yield
    _allow_no_skip(report)
    return report


def _allow_no_skip(report: pytest.TestReport | pytest.CollectReport) -> None:
    if NO_SKIPS and report.skipped:
        report.outcome = "failed"
        report.longrepr = f"Skipped, and no skip is allowed here: {report.longrepr}"
