"""A bare figure that takes the place of the size before it: the speaker has looked again.

"Five centimetres. Get the ruler, then. All right, four and a half", "I'd have sworn to five
centimetres, but the ruler says four and a half", "an inch. Is it? Let's see. Two". Leaves alone
"five centimetres, four heads", "last year it was four and a half" and "the leaf is two".
"""

from diary.linking.mended import mends_in
from diary.linking.sizes.beside_amounts import broken, is_over, no_other_thing
from diary.reading.habits.scope import Habit
from diary.reading.lengths import Length
from diary.reading.mentions import Mentions
from diary.reading.numerals import Quantity
from diary.reading.tokens import QUERY

_REACH = 24
_MOST_SENTENCES = 3
_STRAY = frozenset("after at past by for with of than every in since until till to".split())
_ELSEWHEN = frozenset({Habit.HISTORY, Habit.WISH, Habit.HYPOTHETICAL, Habit.REPORTED})
_INSTRUMENTS = frozenset(
    "ruler rule tape calipers callipers caliper calliper gauge measured measure measuring "
    "measurement measures paper guess guessed guessing sworn eye looks".split()
)
_GUESSES = frozenset("guessed thought expected sworn hoped feared reckoned wanted asked".split())
_OTHER_WAY = frozenset("wider broader taller higher longer".split())
_DOUBTS = frozenset("again closer nearer actually honestly truth fact exact exactly".split())
_LEADS = frozenset(
    "did done let see wait hang hold sorry "
    "it this that they she he is 's are 're was be all right well now so but and no yes aye oh "
    "ooh er um says said say reads gives makes make making call more like nearer closer only just "
    "about nearly around barely good full at to the a its due give in fact honest properly i we "
    "'d put on by with my old new better then okay ok fine correction measured really comes out "
    "as exactly actually rather got get of say for tell truth there bare scant".split()
)


def looked_again(mentions: Mentions, amount: Quantity, previous: Length) -> bool:
    """Whether the amount, which names nothing that it measures, is the size before told anew."""
    talk = mentions.talk
    if talk.texts[amount.end : amount.end + 1] in (("'s",), ("is",), ("was",)):
        return False  # "no, eighteen's the long way, it's fourteen wide"
    if mentions.vocabulary.dimensions.at(talk.texts, amount.end) is not None:
        return False
    lead = talk.texts[max(previous.end, amount.start - 5) : amount.start]
    if _GUESSES & set(lead) or _OTHER_WAY & set(talk.texts[previous.end : amount.start]):
        return False  # "though I'd guessed fifty", "she's wider than that, call it thirty-one"
    over = is_over(mentions, amount.end) or no_other_thing(mentions, amount)
    if amount.start - previous.end > _REACH or not over:
        return False
    if talk.sentence_number(amount.start) - talk.sentence_number(previous.start) > _MOST_SENTENCES:
        return False
    if mentions.scopes.habits(amount.start) & _ELSEWHEN or _another_thing(
        mentions, previous.end, amount.start
    ):
        return False
    if not _led_to(mentions, amount, previous.end):
        return False
    return broken(amount) or _doubted(mentions, previous, amount.start)


def _another_thing(mentions: Mentions, low: int, at: int) -> bool:
    """Whether a plant, a part or a thing counted is named between."""
    vocabulary, texts = mentions.vocabulary, mentions.talk.texts
    plants = any(r.cut is None for r in mentions.refs_in(low, at))
    if plants or vocabulary.counted.find(texts, low, at):
        return True
    own = vocabulary.subjects.at(texts, low + (texts[low] in ("the", "that", "each")))
    low = own.end if own is not None and mentions.talk.tokens[own.end - 1].mark else low
    named = vocabulary.subjects.find(texts, low, at)  # not the flower of "forty, the flower"
    return any(f.label != "nothing" for f in named) or bool(mentions.lengths_in(low, at))


def _led_to(mentions: Mentions, amount: Quantity, low: int) -> bool:
    """Whether but few words lead to the figure: "all right", "it's", "the ruler says"."""
    talk, at = mentions.talk, amount.start
    if not talk.punctuated and broken(amount):
        return talk.texts[at - 1] not in _STRAY
    if any(mended[1] == at for mended in mends_in(mentions, max(low, at - 5), at)):
        return True
    low = max(low, talk.clause(at)[0]) if talk.punctuated else at - 1
    return set(talk.texts[low:at]) <= _LEADS | _INSTRUMENTS


def _doubted(mentions: Mentions, previous: Length, at: int) -> bool:
    """Whether the first was a guess, or something between takes it back or asks after it."""
    talk = mentions.talk
    between = talk.texts[previous.end : at]
    guessed = talk.texts[max(0, previous.start - 6) : previous.start]
    return (
        bool(mends_in(mentions, previous.end, at))
        or bool(_INSTRUMENTS & {*between, *guessed})
        or bool(_DOUBTS & set(between))
        or talk.between(previous.end, at, (QUERY,))
    )
