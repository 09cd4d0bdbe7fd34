"""Everything the insights look at, fetched from the store once.

The insights themselves are functions of an `Overview` and pure.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from diary.insight.decisions import Decisions, decided
from diary.insight.description import Description, describe
from diary.insight.pedigree import Parentage, Pedigree, build_pedigree
from diary.insight.sentences import sentence_at
from diary.insight.stems import presumed_parents, stem
from diary.linking.document import PlantKind
from diary.records.pages import PlantSummary, plants
from diary.records.record import Moment, PlantRef, Record, RecordClip
from diary.records.recordings import Recording, clips, recordings, transcript
from diary.records.register import Cross, NamedPlant, crosses, named_plants
from diary.records.store import Store
from diary.speech.transcript import Transcript


@dataclass(frozen=True, slots=True, kw_only=True)
class Walk:
    """One recording with its words and clips."""

    recording: Recording
    transcript: Transcript
    clips: tuple[RecordClip, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Overview:
    """The plants, walks, crosses and names of a diary.

    `records` and `decisions` are by plant key; `keys` leads from any name or former number,
    case folded, to the key of the plant; `titles` from the key to what to call it;
    `transcripts` are by recording, `groups` (pelargonium, dahlia) by plant key.
    """

    plants: tuple[PlantSummary, ...]
    walks: tuple[Walk, ...]
    crosses: tuple[Cross, ...]
    named: tuple[NamedPlant, ...]
    records: Mapping[str, tuple[Record, ...]]
    decisions: Mapping[str, Decisions]
    keys: Mapping[str, str]
    titles: Mapping[str, str]
    transcripts: Mapping[str, Transcript]
    groups: Mapping[str, str]

    def key(self, title: str | None) -> str | None:
        """The key of the plant that goes by this name or number; the title if it has none."""
        return None if title is None else self.keys.get(title.casefold(), title)

    def parents(self, plant: PlantSummary) -> tuple[str | None, str | None]:
        """Keys of the seed and the pollen parent; a selfed plant has the one as both."""
        seed, pollen = self.key(plant.seed_parent), self.key(plant.pollen_parent)
        if pollen is None and any(b.value == "selfed" for b in plant.values("pollination")):
            pollen = seed
        return seed, pollen

    def descriptions(self) -> tuple[Description, ...]:
        """Every plant of which something of its looks was said.

        A number that is not on record is taken for a sister where the breeder numbers by cross.
        """
        presumed = presumed_parents(
            {
                plant.plant.key: (seed, pollen)
                for plant in self.plants
                if plant.seedling is not None
                for seed, pollen in (self.parents(plant),)
                if seed is not None and pollen is not None
            }
        )
        found = (
            describe(
                plant.plant,
                plant.beliefs,
                parents=presumed.get(stem(plant.plant.key) or "", (None, None))
                if self.parents(plant) == (None, None)
                else self.parents(plant),
            )
            for plant in self.plants
        )
        return tuple(description for description in found if not description.empty)

    def pedigree(self) -> Pedigree:
        """Who came from whom: the register's parents, else those heard; named plants too."""
        rows = []
        for plant in self.plants:
            sports = plant.values("sport_of")
            seed, pollen = self.parents(plant)
            rows.append(
                Parentage(
                    plant=plant.plant.key,
                    seed_parent=seed,
                    pollen_parent=pollen,
                    sport_of=self.key(str(sports[0].value)) if sports else None,
                )
            )
        for named in self.named:
            rows.append(
                Parentage(
                    plant=self.keys.get(named.name.casefold(), named.name),
                    seed_parent=self.key(named.seed_parent),
                    pollen_parent=self.key(named.pollen_parent),
                )
            )
        return build_pedigree(rows)

    def sentence(self, moment: Moment) -> str:
        """The whole sentence in which something was said, of at most forty words."""
        words = self.transcripts.get(moment.recording)
        return moment.text if words is None else sentence_at(words, moment)

    def group(self, key: str) -> str | None:
        """The plant group of the recordings that show a plant, None if that is not known."""
        return self.groups.get(key)

    def title(self, key: str) -> str:
        """What to call the plant with this key."""
        return self.titles.get(key, key)


def overview(store: Store) -> Overview:
    """Look at the whole diary once."""
    walks = tuple(
        Walk(
            recording=recording,
            transcript=transcript(store, recording.id),
            clips=clips(store, recording.id),
        )
        for recording in recordings(store)
    )
    return assemble(plants(store), walks, crosses(store), named_plants(store))


def assemble(
    summaries: tuple[PlantSummary, ...],
    walks: tuple[Walk, ...],
    made: tuple[Cross, ...] = (),
    named: tuple[NamedPlant, ...] = (),
) -> Overview:
    """Put an overview together from its parts."""
    records: dict[str, list[Record]] = {}
    for walk in walks:
        for clip in walk.clips:
            records.setdefault(clip.plant.key, []).extend(clip.records)
    keys: dict[str, str] = {}
    for entry in named:
        for other in (entry.name, *entry.synonyms):
            keys.setdefault(other.casefold(), entry.name)
    for summary in summaries:
        for other in _names(summary.plant, summary):
            keys[other.casefold()] = summary.plant.key
    for entry in named:
        # a synonym of a seedling's name leads to the seedling
        for other in entry.synonyms:
            keys[other.casefold()] = keys[entry.name.casefold()]
    for summary in summaries:
        # a parent that is nowhere on record itself, written in capitals or not
        for parent in (summary.seed_parent, summary.pollen_parent):
            if parent is not None:
                keys.setdefault(parent.casefold(), parent)
    return Overview(
        plants=summaries,
        walks=walks,
        crosses=made,
        named=named,
        records={key: tuple(found) for key, found in records.items()},
        decisions={
            summary.plant.key: decided(records.get(summary.plant.key, ()), summary.seedling)
            for summary in summaries
        },
        keys=keys,
        titles={summary.plant.key: summary.plant.title for summary in summaries},
        groups={
            clip.plant.key: walk.recording.group
            for walk in walks
            if walk.recording.group is not None
            for clip in walk.clips
        },
        transcripts={walk.recording.id: walk.transcript for walk in walks},
    )


def _names(plant: PlantRef, summary: PlantSummary) -> tuple[str, ...]:
    if plant.kind is PlantKind.UNNAMED:
        return (plant.key,)
    seedling = summary.seedling
    if seedling is None:
        return (plant.key,)
    return (plant.key, *seedling.former, *((seedling.name,) if seedling.name else ()))
