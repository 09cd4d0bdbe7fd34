"""The diary as tables: plants, observations, crosses and recordings, a row each. Pure."""

from diary.export.cells import Cell, Table
from diary.insight.overview import Overview
from diary.insight.progeny import progeny
from diary.records.beliefs import Belief
from diary.records.pages import PlantSummary
from diary.records.record import Record
from diary.records.recordings import Recording

TABLE_NAMES = ("plants", "observations", "crosses", "recordings")

_LENGTHS = ("bloom_diameter", "head_diameter", "plant_height", "plant_spread")
_WORDS = ("marking", "bloom_form", "bloom_size", "habit", "foliage", "flowering", "scent", "health")


def tables(overview: Overview) -> tuple[Table, ...]:
    """All tables, in the order of `TABLE_NAMES`."""
    return (
        _plants(overview),
        _observations(overview),
        _crosses(overview),
        _recordings(overview),
    )


def _plants(overview: Overview) -> Table:
    headings = (
        "plant", "kind", "name", "seed parent", "pollen parent", "cross", "sown", "first flower",
        "place", "decision", "decided on", "tasks", "colours", *_WORDS,
        *(f"{trait.replace('_', ' ')} mm" for trait in _LENGTHS),
        "clips", "first seen", "last seen",
    )  # fmt: skip
    rows = tuple(_plant_row(overview, plant) for plant in overview.plants)
    return Table(name="plants", headings=headings, rows=rows)


def _plant_row(overview: Overview, plant: PlantSummary) -> tuple[Cell, ...]:
    seedling = plant.seedling
    decisions = overview.decisions[plant.plant.key]
    fate = decisions.fate
    return (
        plant.plant.key,
        plant.plant.kind.value,
        seedling.name if seedling else None,
        plant.seed_parent,
        plant.pollen_parent,
        seedling.cross if seedling else None,
        seedling.sown if seedling else None,
        seedling.first_flower if seedling else None,
        seedling.place if seedling else None,
        fate.value if fate else None,
        fate.day.isoformat() if fate and fate.day else None,
        ", ".join(task.value for task in decisions.tasks),
        "; ".join(map(_colour, plant.values("colour"))),
        *(", ".join(str(one.value) for one in plant.values(trait)) for trait in _WORDS),
        *(_length(plant.values(trait)) for trait in _LENGTHS),
        plant.clips,
        plant.first_seen.isoformat() if plant.first_seen else None,
        plant.last_seen.isoformat() if plant.last_seen else None,
    )


def _colour(belief: Belief) -> str:
    shade = " ".join((*belief.modifiers, str(belief.value)))
    return f"{belief.part or 'bloom'}: {shade}"


def _length(beliefs: tuple[Belief, ...]) -> Cell:
    lengths = [one.value for one in beliefs if isinstance(one.value, int | float)]
    return lengths[0] if lengths else None


def _observations(overview: Overview) -> Table:
    headings = (
        "plant", "date", "recording", "from s", "to s", "trait", "part", "value", "modifiers",
        "unit", "hedged", "confidence", "band", "origin", "words",
    )  # fmt: skip
    rows = tuple(
        _record_row(walk.recording, record)
        for walk in overview.walks
        for clip in walk.clips
        for record in clip.records
        if not record.negated
    )
    return Table(name="observations", headings=headings, rows=rows)


def _record_row(recording: Recording, record: Record) -> tuple[Cell, ...]:
    moment = record.moment
    return (
        record.plant.key,
        moment.day.isoformat() if moment.day else None,
        recording.name,
        moment.start_ms / 1000,
        moment.end_ms / 1000,
        record.trait,
        record.part,
        record.value,
        " ".join(record.modifiers),
        record.unit,
        "yes" if record.hedged else None,
        round(record.confidence, 3),
        record.band.value,
        record.origin.value,
        moment.text,
    )


def _crosses(overview: Overview) -> Table:
    headings = (
        "code", "seed parent", "pollen parent", "seeds sown", "germinated", "seedlings",
        "flowered", "kept", "discarded",
    )  # fmt: skip
    rows = tuple(
        (
            cross.code,
            cross.seed_parent,
            cross.pollen_parent,
            cross.sown,
            cross.germinated,
            len(cross.plants),
            cross.flowered.count,
            cross.kept.count,
            cross.discarded.count,
        )
        for cross in progeny(overview)
    )
    return Table(name="crosses", headings=headings, rows=rows)


def _recordings(overview: Overview) -> Table:
    headings = (
        "name",
        "title",
        "kind",
        "recorded",
        "length s",
        "words from",
        "clips",
        "file",
        "sha-256",
    )
    rows = tuple(
        (
            one.name,
            one.title,
            one.kind,
            one.recorded.isoformat() if one.recorded else None,
            one.duration_ms / 1000 if one.duration_ms is not None else None,
            one.words_from,
            one.clips,
            str(one.path),
            one.id,
        )
        for one in (walk.recording for walk in overview.walks)
    )
    return Table(name="recordings", headings=headings, rows=rows)
