"""How commands say where a thing was said: the recording's name, the time, the words."""

from typing import TYPE_CHECKING

from diary.cli.output import clock

if TYPE_CHECKING:
    from collections.abc import Mapping

    from diary.insight.overview import Overview
    from diary.records.record import Moment


def names_of(overview: "Overview") -> dict[str, str]:
    """The recordings' names by id."""
    return {walk.recording.id: walk.recording.name for walk in overview.walks}


def place(names: "Mapping[str, str]", moment: "Moment | None") -> str:
    """`walk@1:23`, what `diary play` takes; a dash where nothing was said."""
    if moment is None:
        return "-"
    name = names.get(moment.recording, moment.recording[:8])
    return f"{name}@{clock(moment.start_ms)}"


def quoted(text: str, *, longest: int = 96) -> str:
    """Words in quotes, cut where they are long."""
    words = " ".join(text.split())
    return f"“{words}”" if len(words) <= longest else f"“{words[: longest - 1].rstrip()}…”"
