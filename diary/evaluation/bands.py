"""How far the bands can be believed: what share of each was wrong."""

from collections.abc import Iterable
from dataclasses import dataclass

from diary.evaluation.matching import Told, fits, scored
from diary.evaluation.measure import measure
from diary.evaluation.score import Scored
from diary.evaluation.sides import ToldClip
from diary.evaluation.stretches import rightly_linked
from diary.linking.document import Band

# At most so much of a band may be wrong; what is only proposed may be anything.
AIMS: dict[Band, float | None] = {Band.SURE: 0.03, Band.LIKELY: 0.15, Band.UNSURE: None}


@dataclass(frozen=True, slots=True, kw_only=True)
class BandShare:
    """So many wrong of so many told in one band; `aim` is the most that is good."""

    what: str  # "observations" or "links"
    band: Band
    told: int
    wrong: int
    aim: float | None

    @property
    def share(self) -> float | None:
        """The share that was wrong; None where nothing was told."""
        return self.wrong / self.told if self.told else None


def band_shares(results: Iterable[Scored]) -> tuple[BandShare, ...]:
    """Observations and links of each band, of all scripts together."""
    observations = {band: [0, 0] for band in Band}
    links = {band: [0, 0] for band in Band}
    for one in results:
        matching = one.matching
        right = [*(hit.told for hit in matching.hits), *matching.repeated]
        for told, wrong in [*((r, 0) for r in right), *((f, 1) for f in matching.false)]:
            _count(observations, told.observation.band, wrong)
        for told in _proposed(one):
            _count(observations, told.observation.band, int(not _right(told, one)))
        for clip in one.told:
            _count(links, clip.band, int(not rightly_linked(clip, one.asked)))
    return tuple(
        BandShare(what=what, band=band, told=told, wrong=wrong, aim=AIMS[band])
        for what, table in (("observations", observations), ("links", links))
        for band, (told, wrong) in table.items()
    )


def _count(table: dict[Band, list[int]], band: Band, wrong: int) -> None:
    table[band][0] += 1
    table[band][1] += wrong


def _proposed(one: Scored) -> list[Told]:
    only = [_of_proposals(clip) for clip in one.told]
    return scored(tuple(only), measure())


def _of_proposals(clip: ToldClip) -> ToldClip:
    return ToldClip(
        plant=clip.plant,
        title=clip.title,
        start_ms=clip.start_ms,
        end_ms=clip.end_ms,
        day=clip.day,
        band=clip.band,
        rule=clip.rule,
        observations=clip.proposals,
        proposals=(),
    )


def _right(told: Told, one: Scored) -> bool:
    return any(
        answer.plant == told.plant and fits(told.observation, answer, measure())
        for clip in one.asked
        for answer in clip.answers
    )
