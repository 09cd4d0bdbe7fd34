"""The recordings of a diary: what they are, when they were made, where they lie now."""

import os
import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any
from urllib.parse import quote

from diary.errors import NotFound, UsageError
from diary.linking.document import Suggestion
from diary.media.probe import content_hash
from diary.records.readings import clips as clips
from diary.records.readings import load_reading, refresh, walk_of
from diary.records.record import RecordingId
from diary.records.store import Store, now
from diary.records.words import load_transcript
from diary.speech.transcript import Transcript


@dataclass(frozen=True, slots=True, kw_only=True)
class Recording:
    """One file added to the diary. `name` is short and unique: what commands take.

    `kind` is "video", "audio", "captions" or "note". `recorded_from` says who told the day:
    "given", "container", "file name" or "corrected". `words_from` is "captions", "note" or
    the model's name. `done_ms` is how far recognition has come; it is read when `complete`.
    `reader` is the reader's version, None before it was read.
    """

    id: RecordingId
    name: str
    title: str
    path: Path
    kind: str
    duration_ms: int | None
    recorded: date | None
    recorded_from: str | None
    group: str | None
    joins: RecordingId | None  # this file goes on where that one ended
    added_at: str  # ISO 8601, UTC
    words_from: str | None
    done_ms: int
    complete: bool
    reader: str | None
    removed: bool
    clips: int
    plants: int


_QUERY = """
SELECT g.id, g.name, g.title, g.path, g.kind, g.duration_ms, g.recorded, g.recorded_from,
       g.plant_group, g.joins, g.added_at, t.words_from,
       (SELECT coalesce(max(b.end_ms), 0) FROM blocks b WHERE b.recording = g.id),
       t.recording IS NOT NULL, r.reader, g.removed_at IS NOT NULL,
       (SELECT count(*) FROM clips c WHERE c.recording = g.id),
       (SELECT count(DISTINCT k.key) FROM clips c JOIN plant_keys k ON k.own_key = c.own_key
        WHERE c.recording = g.id)
FROM recordings g
LEFT JOIN transcripts t ON t.recording = g.id
LEFT JOIN readings r ON r.recording = g.id
"""


def _recording(row: tuple[Any, ...]) -> Recording:
    return Recording(
        id=RecordingId(row[0]),
        name=row[1],
        title=row[2],
        path=Path(row[3]),
        kind=row[4],
        duration_ms=row[5],
        recorded=date.fromisoformat(row[6]) if row[6] else None,
        recorded_from=row[7],
        group=row[8],
        joins=RecordingId(row[9]) if row[9] else None,
        added_at=row[10],
        words_from=row[11],
        done_ms=row[12] if not row[13] else (row[5] or row[12]),
        complete=bool(row[13]),
        reader=row[14],
        removed=bool(row[15]),
        clips=row[16],
        plants=row[17],
    )


def recordings(store: Store, *, removed: bool = False) -> tuple[Recording, ...]:
    """All recordings, oldest walk first; those without a date last."""
    where = "" if removed else "WHERE g.removed_at IS NULL"
    order = "ORDER BY g.recorded IS NULL, g.recorded, g.added_at, g.name"
    return tuple(_recording(row) for row in store.db.execute(f"{_QUERY} {where} {order}"))


def recording(store: Store, which: str) -> Recording:
    """The recording with this name, title, file name, or start of its id. Raises NotFound."""
    everything = recordings(store, removed=True)
    wanted = which.casefold()
    for fits in (
        [one for one in everything if one.name.casefold() == wanted or one.id == which],
        [one for one in everything if wanted in (one.title.casefold(), one.path.name.casefold())],
        [one for one in everything if len(which) >= 4 and one.id.startswith(wanted)],
    ):
        standing = [one for one in fits if not one.removed] or fits
        if len(standing) == 1:
            return standing[0]
        if standing:
            names = ", ".join(one.name for one in standing)
            raise UsageError(f"{which!r} may be any of these recordings: {names}. Name one.")
    raise NotFound(f"No recording {which!r} in this diary. `diary recordings` lists them.")


def enter_recording(
    store: Store,
    path: Path,
    *,
    recording_id: RecordingId,
    kind: str,
    duration_ms: int | None,
    recorded: date | None,
    recorded_from: str | None,
    title: str | None = None,
    group: str | None = None,
) -> Recording:
    """Put a file into the diary, or back into it, or note where it lies now."""
    path = path.absolute()
    with store.db.atomic():
        known = store.db.execute("SELECT 1 FROM recordings WHERE id = ?", [recording_id]).fetchone()
        if known:
            store.db.execute(
                "UPDATE recordings SET path = ?, removed_at = NULL WHERE id = ?",
                [str(path), recording_id],
            )
        else:
            store.db["recordings"].insert(  # type: ignore[union-attr]
                {
                    "id": recording_id,
                    "name": _free_name(store, path.stem),
                    "title": title or path.stem,
                    "path": str(path),
                    "bytes": path.stat().st_size,
                    "kind": kind,
                    "duration_ms": duration_ms,
                    "recorded": recorded.isoformat() if recorded else None,
                    "recorded_from": recorded_from,
                    "plant_group": group,
                    "joins": None,
                    "added_at": now(),
                    "removed_at": None,
                }
            )
    return recording(store, recording_id)


def _free_name(store: Store, stem: str) -> str:
    base = re.sub(r"[^\w.-]+", "-", stem).strip("-") or "recording"
    taken = {name.casefold() for (name,) in store.db.execute("SELECT name FROM recordings")}
    name, count = base, 1
    while name.casefold() in taken:
        count += 1
        name = f"{base}-{count}"
    return name


def change_recording(
    store: Store,
    recording_id: RecordingId,
    *,
    recorded: date | None = None,
    title: str | None = None,
    group: str | None = None,
    joins: RecordingId | None = None,
) -> Recording:
    """Set what is given, leave the rest. Read it again afterwards if day or walk changed."""
    if joins is not None and recording_id in _chain(store, joins):
        raise UsageError("A recording cannot join itself, or one that already joins it.")
    fields: dict[str, str] = {}
    if recorded is not None:
        fields |= {"recorded": recorded.isoformat(), "recorded_from": "corrected"}
    if title is not None:
        fields["title"] = title
    if group is not None:
        fields["plant_group"] = group
    if joins is not None:
        fields["joins"] = joins
    if fields:
        sets = ", ".join(f"{field} = ?" for field in fields)
        with store.db.atomic():
            store.db.execute(
                f"UPDATE recordings SET {sets} WHERE id = ?", [*fields.values(), recording_id]
            )
    return recording(store, recording_id)


def _chain(store: Store, recording_id: RecordingId) -> set[RecordingId]:
    chain = {recording_id}
    while True:
        row = store.db.execute(
            "SELECT joins FROM recordings WHERE id = ?", [recording_id]
        ).fetchone()
        if row is None or row[0] is None or row[0] in chain:
            return chain
        recording_id = RecordingId(row[0])
        chain.add(recording_id)


def walk(store: Store, recording_id: RecordingId) -> tuple[Recording, ...]:
    """All recordings of the walk this one is a part of, in the order they were joined."""
    first = walk_of(store, recording_id)
    everything = {one.id: one for one in recordings(store)}
    parts = [everything[first]] if first in everything else []
    while True:
        following = [one for one in everything.values() if parts and one.joins == parts[-1].id]
        if not following or following[0] in parts:
            return tuple(parts)
        parts.append(following[0])


def remove_recording(store: Store, recording_id: RecordingId) -> None:
    """Take a recording out of the diary. Its corrections are kept, as is the file itself."""
    with store.db.atomic():
        store.db.execute("UPDATE recordings SET removed_at = ? WHERE id = ?", [now(), recording_id])
        store.db.execute("UPDATE recordings SET joins = NULL WHERE joins = ?", [recording_id])
        refresh(store, [])


def locate(store: Store, recording_id: RecordingId) -> Path:
    """Where the file is now; a moved one is looked for by its content. Raises NotFound.

    Looked through are the folders of all recordings and what lies beneath them.
    """
    row = store.db.execute(
        "SELECT path, bytes FROM recordings WHERE id = ?", [recording_id]
    ).fetchone()
    if row is None:
        raise NotFound(f"No recording {recording_id[:8]} in this diary.")
    path, size = Path(row[0]), row[1]
    if path.is_file():
        return path
    others = [Path(p).parent for (p,) in store.db.execute("SELECT path FROM recordings")]
    nearest_first = dict.fromkeys([path.parent, *others, path.parent.parent])
    for found in _files([folder for folder in nearest_first if folder.is_dir()]):
        if found.stat().st_size == size and content_hash(found) == recording_id:
            with store.db.atomic():
                store.db.execute(
                    "UPDATE recordings SET path = ? WHERE id = ?", [str(found), recording_id]
                )
            return found
    raise NotFound(
        f"{path}: the recording is no longer there, nor near it. "
        "Bring it back, or add it from where it is now: diary add FILE"
    )


MOST_FILES = 20_000  # a search that would go through a whole disk stops here


def _files(folders: list[Path]) -> Iterator[Path]:
    seen: set[str] = set()
    for folder in folders:
        for root, inner, names in os.walk(folder):
            inner[:] = sorted(name for name in inner if not name.startswith("."))
            if root in seen:
                inner.clear()
                continue
            seen.add(root)
            for name in sorted(names):
                if len(seen) > MOST_FILES:
                    return
                yield Path(root) / name


def transcript(store: Store, recording_id: RecordingId) -> Transcript:
    """All words of a recording (empty before recognition)."""
    return load_transcript(store, recording_id) or Transcript(words=())


def suggestions_heard(store: Store, recording_id: RecordingId) -> tuple[Suggestion, ...]:
    """What the reader heard in this recording that belongs into the register."""
    return load_reading(store, recording_id).suggestions


def media_fragment(path: Path, start_ms: int, end_ms: int) -> str:
    """`file#t=start,end` in seconds (W3C Media Fragments URI 1.0, 4.2.1, npt)."""
    end = f",{_seconds(end_ms)}" if end_ms > start_ms else ""  # players ignore t=3,3
    return f"{quote(str(path))}#t={_seconds(start_ms)}{end}"


def _seconds(milliseconds: int) -> str:
    whole, rest = divmod(milliseconds, 1000)
    return f"{whole}.{rest:03d}".rstrip("0").rstrip(".") if rest else str(whole)
