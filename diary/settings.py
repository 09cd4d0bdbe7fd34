"""Where the diary is and which model it listens with: read once, handed down."""

import os
from dataclasses import dataclass
from pathlib import Path

HOME_VARIABLE = "DIARY_HOME"


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """`folder` is the diary's own; `model` a model's name or the path of its folder."""

    folder: Path
    model: str = "base"


def data_folder() -> Path:
    """The user's data folder for this program, by the platform's custom."""
    if os.name == "nt":
        base = Path(os.environ.get("LOCALAPPDATA") or Path.home() / "AppData" / "Local")
    elif (Path.home() / "Library" / "Application Support").is_dir():
        base = Path.home() / "Library" / "Application Support"
    else:
        # XDG Base Directory Specification 0.8: default of $XDG_DATA_HOME
        base = Path(os.environ.get("XDG_DATA_HOME") or Path.home() / ".local" / "share")
    return base / "seedling-diary"


def settings(folder: Path | None = None, model: str | None = None) -> Settings:
    """What was given, else the environment, else the user's data folder."""
    home = os.environ.get(HOME_VARIABLE)
    chosen = folder or (Path(home) if home else data_folder() / "diary")
    return Settings(folder=chosen.expanduser().absolute(), model=model or "base")


def demo_store() -> Path:
    """The folder of the demo's own diary: beside the breeder's, never in it."""
    home = os.environ.get(HOME_VARIABLE)
    return (Path(home).expanduser().absolute() / "demo") if home else data_folder() / "demo"
