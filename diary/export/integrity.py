"""Is all well with a diary: the database, the recordings' files, corrections, the register."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from diary.errors import NotFound, UsageError
from diary.insight.overview import Overview, overview
from diary.media.probe import content_hash
from diary.records.journal import journal, unplaced
from diary.records.recordings import Recording, locate, recordings
from diary.records.store import Store
from diary.records.upkeep import problems


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One thing that is not as it should be.

    `kind` is "database", "media", "changed media", "unfinished", "unplaced" or "register";
    only the first three can mean a loss (`serious`).
    """

    kind: str
    text: str

    @property
    def serious(self) -> bool:
        """Whether something may be lost."""
        return self.kind in ("database", "media", "changed media")


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckReport:
    """What was looked at and what was found, serious things first."""

    recordings: int
    corrections: int
    plants: int
    findings: tuple[Finding, ...]

    @property
    def sound(self) -> bool:
        """Whether nothing serious was found."""
        return not any(finding.serious for finding in self.findings)


def check(
    store: Store, *, media: bool = False, on_recording: Callable[[str], None] = lambda name: None
) -> CheckReport:
    """Look the diary over. With `media`, every recording is read whole and its hash compared."""
    broken = [Finding(kind="database", text=text) for text in problems(store)]
    if broken:
        # what stands in a damaged database is not to be relied on
        return CheckReport(recordings=0, corrections=0, plants=0, findings=tuple(broken))
    filmed = recordings(store)
    look = overview(store)
    found = [
        *_media(store, filmed, media, on_recording),
        *_unfinished(filmed),
        *_unplaced(store),
        *_register(look),
    ]
    found.sort(key=lambda finding: not finding.serious)
    return CheckReport(
        recordings=len(filmed),
        corrections=len(journal(store)),
        plants=len(look.plants),
        findings=tuple(found),
    )


def _media(
    store: Store,
    filmed: tuple[Recording, ...],
    whole: bool,
    on_recording: Callable[[str], None],
) -> Iterator[Finding]:
    for one in filmed:
        on_recording(one.name)
        try:
            path = locate(store, one.id)
        except NotFound as error:
            yield Finding(kind="media", text=str(error))
            continue
        if whole and content_hash(path) != one.id:
            yield Finding(
                kind="changed media",
                text=f"{path} is no longer the file that was added as {one.name}: bring back the "
                "original, or add this one as a recording of its own.",
            )


def _unfinished(filmed: tuple[Recording, ...]) -> Iterator[Finding]:
    for one in filmed:
        if not one.complete:
            yield Finding(
                kind="unfinished",
                text=f"{one.name} has not been listened to to the end. Go on: diary add {one.path}",
            )


def _unplaced(store: Store) -> Iterator[Finding]:
    for correction in unplaced(store):
        what = type(correction.change).__name__
        where = ""
        if correction.span is not None:
            seconds = correction.span.start_ms // 1000
            where = f" at {seconds // 60}:{seconds % 60:02d} of {correction.span.recording[:8]}"
        yield Finding(
            kind="unplaced",
            text=f"Correction {correction.id} ({what}{where}) fits nowhere any more. It is kept; "
            "see it on the review list.",
        )


def _register(look: Overview) -> Iterator[Finding]:
    try:
        look.pedigree()
    except UsageError as error:
        yield Finding(kind="register", text=str(error))
    codes = {cross.code for cross in look.crosses}
    for plant in look.plants:
        code = plant.seedling.cross if plant.seedling else None
        if code is not None and codes and code not in codes:
            yield Finding(
                kind="register", text=f"{plant.plant.title} names cross {code}, not on record."
            )
    for cross in look.crosses:
        sown, came_up = cross.seeds_sown, cross.germinated
        if sown is not None and came_up is not None and came_up > sown:
            yield Finding(
                kind="register",
                text=f"Cross {cross.code}: {came_up} germinated of {sown} sown cannot be.",
            )
