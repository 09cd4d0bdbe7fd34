"""An open diary in a folder of its own."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from diary.records.store import Store, open_store


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    opened = open_store(tmp_path / "diary")
    yield opened
    opened.close()
