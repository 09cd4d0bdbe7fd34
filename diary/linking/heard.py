"""All that is heard in a talk before it is cut into clips: mentions, and what is stated."""

from dataclasses import dataclass

from diary.linking.colours.statements import find_colour_statements
from diary.linking.counts.counts import find_counts
from diary.linking.decisions.decisions import find_decisions
from diary.linking.likeness.likened import Likeness
from diary.linking.likeness.likeness import find_likenesses
from diary.linking.parents.parentage import find_parents
from diary.linking.sizes.measures import find_measurements
from diary.linking.statement import Statement
from diary.linking.traits.by_word import find_word_traits
from diary.reading.known import Known
from diary.reading.mentions import Mentions, find_mentions
from diary.reading.misheard.eye import eyes_respelt
from diary.reading.misheard.trade_words import respelt
from diary.reading.tokens import tokenise
from diary.reading.vocabulary import Vocabulary
from diary.speech.transcript import Transcript


@dataclass(frozen=True, slots=True, kw_only=True)
class Heard:
    """All that a talk mentions and states, of whatever plant; statements in order."""

    mentions: Mentions
    statements: tuple[Statement, ...]
    parents: tuple[Statement, ...]
    likenesses: tuple[Likeness, ...]

    @property
    def ends(self) -> list[int]:
        """The tokens at which something stated ends, in no order."""
        return [*(s.end for s in self.statements), *(x.end for x in self.likenesses)]


def hear(
    transcript: Transcript, vocabulary: Vocabulary, known: Known, *, year: int | None = None
) -> Heard | None:
    """What is mentioned and stated, before the talk is cut; None where no word is said."""
    talk = eyes_respelt(respelt(tokenise(transcript), vocabulary.trade), vocabulary)
    if not talk.tokens:
        return None
    mentions = find_mentions(talk, vocabulary, known, year=year)
    parents = find_parents(mentions)
    statements: list[Statement] = [
        *parents,
        *find_colour_statements(mentions),
        *find_word_traits(mentions),
        *find_measurements(mentions),
        *find_counts(mentions),
        *find_decisions(mentions),
    ]
    statements.sort(key=lambda s: s.start)
    return Heard(
        mentions=mentions,
        statements=tuple(statements),
        parents=parents,
        likenesses=find_likenesses(mentions),
    )
