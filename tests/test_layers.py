"""Imports go one way: a module uses only its own stage and earlier ones."""

import ast
from pathlib import Path

import pytest

import diary

PACKAGE = Path(diary.__file__).parent

# In order of the flow. What stands on one line are stages that know nothing of each other;
# `errors` and `settings` are for everyone.
ORDER = (
    ("errors", "data", "settings"),
    ("media",),
    ("speech",),
    ("reading",),
    ("linking",),
    ("records",),
    ("insight",),
    ("export",),
    ("pipeline",),
    ("extraction",),
    ("evaluation",),
    ("web",),
    ("cli", "__main__"),
)
RANK = {name: rank for rank, names in enumerate(ORDER) for name in names}
PURE = ("reading", "linking")
LONGEST = 400  # lines of a module
# what a pure stage must not touch: files, databases, models, the clock
IMPURE = {
    "sqlite3",
    "sqlite_utils",
    "av",
    "faster_whisper",
    "subprocess",
    "socket",
    "urllib.request",
}


def modules() -> list[Path]:
    return sorted(path for path in PACKAGE.rglob("*.py") if path.name != "__init__.py")


def imported(path: Path) -> set[str]:
    names: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: imports are written in full"
            names.add(node.module or "")
            names |= {f"{node.module}.{alias.name}" for alias in node.names}
    return names


def stage(module: str) -> str | None:
    parts = module.split(".")
    return parts[1] if parts[0] == "diary" and len(parts) > 1 else None


@pytest.mark.parametrize("path", modules(), ids=lambda path: str(path.relative_to(PACKAGE)))
def test_a_module_imports_only_its_own_stage_and_earlier_ones(path: Path) -> None:
    own = path.relative_to(PACKAGE).parts[0].removesuffix(".py")
    used = {stage(name) for name in imported(path)} - {None, "__version__"}
    later = {name for name in used if name in RANK and RANK[name] > RANK[own]}
    beside = {name for name in used if name in RANK and RANK[name] == RANK[own]} - {own}
    assert not later, f"{own} is before {later}"
    assert not beside - {"errors", "cli"}, f"{own} beside {beside}"


def test_every_stage_is_in_the_order() -> None:
    found = {path.relative_to(PACKAGE).parts[0].removesuffix(".py") for path in modules()}
    assert found - set(RANK) == set()


@pytest.mark.parametrize("name", PURE)
def test_reading_and_linking_touch_no_file_database_or_model(name: str) -> None:
    for path in sorted((PACKAGE / name).rglob("*.py")):
        assert not imported(path) & IMPURE, path


def test_no_module_takes_everything() -> None:
    long = {
        str(path.relative_to(PACKAGE)): len(path.read_text(encoding="utf-8").splitlines())
        for path in modules()
    }
    assert {name: lines for name, lines in long.items() if lines > LONGEST} == {}


def test_only_records_speaks_sql() -> None:
    for path in modules():
        own = path.relative_to(PACKAGE).parts[0].removesuffix(".py")
        if own != "records":
            assert not imported(path) & {"sqlite3", "sqlite_utils"}, path
            assert ".db.execute" not in path.read_text(encoding="utf-8"), path
