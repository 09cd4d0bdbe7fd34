"""The other side of a plant told by the first: "ten inches high and the same across".

Also "thirty tall and as wide as it's high"; not "as wide as it's high" with no figure said.
"""

from dataclasses import replace

from diary.linking.sizes.measured_what import Measured
from diary.reading.mentions import Mentions

_WITHIN = 8  # tokens after the figure


def _as_wide_as_high(mentions: Mentions, m: Measured) -> list[Measured]:
    """ "about as wide as it's high, that'd be 35 centimetres": the figure comes after."""
    talk = mentions.talk
    low = max(talk.sentence(m.length.start)[0], m.length.start - 2 * _WITHIN)
    before = mentions.vocabulary.size_again.find(talk.texts, low, m.length.start)
    if not before or m.length.start - before[-1].end > _WITHIN // 2:
        return []
    wide = m.trait == "plant_height"
    return [
        replace(
            m,
            length=replace(m.length, start=before[-1].start, end=before[-1].end, unit_said=False),
            subject="plant",
            dimension="across" if wide else "tall",
            dimension_end=before[-1].end,
            trait="plant_spread" if wide else "plant_height",
        )
    ]


def sizes_again(mentions: Mentions, measured: list[Measured]) -> list[Measured]:
    """The measured, with the other side of a plant set after the first."""
    told = list(measured)
    texts, vocabulary = mentions.talk.texts, mentions.vocabulary
    for n, m in enumerate(measured):
        if m.subject not in ("", "plant") or m.dimension not in ("tall", "across"):
            continue
        stop = measured[n + 1].length.start if n + 1 < len(measured) else len(texts)
        end = max(m.length.end, m.dimension_end)
        found = vocabulary.size_again.find(texts, end, min(stop, end + 2 * _WITHIN))
        found = [f for f in found if f.label != m.dimension and f.start - end <= _WITHIN]
        if not found and m.trait in ("plant_height", "plant_spread"):
            told += _as_wide_as_high(mentions, m)
        if not found or mentions.talk.between(end, found[0].start, (".", "?")):
            continue
        told.append(
            replace(
                m,
                length=replace(m.length, start=found[0].start, end=found[0].end, unit_said=False),
                subject="plant",
                dimension=found[0].label,
                dimension_end=found[0].end,
                trait="plant_height" if found[0].label == "tall" else "plant_spread",
            )
        )
    return sorted(told, key=lambda m: m.length.start)
