"""The font that comes as a package: Fira Sans, under the SIL Open Font License."""

from importlib.resources import files
from pathlib import Path

_FACES = {"": "Regular", "B": "Bold", "I": "Italic", "BI": "BoldItalic"}


def font_files() -> dict[str, Path]:
    """The four faces by style: "", "B", "I", "BI"."""
    folder = Path(str(files("fontpkg_fira_sans"))) / "files"
    return {style: folder / f"FiraSans-{face}.ttf" for style, face in _FACES.items()}
