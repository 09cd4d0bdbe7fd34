"""Late or shy, told by how long one has to wait for a flower.

"it didn't show me a thing until July", "nothing on it till August", "you'd wait all year for a
bloom". Leaves alone "I'm not sowing till August", "nothing on the bench till the heater's mended"
and "it won't be potted until spring".
"""

from collections.abc import Iterator

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions

_TILL = frozenset({"till", "until", "before", "til"})
_NONE = frozenset("not never nothing nowt no none wait waited waits waiting hardly".split())
_SHOWING = frozenset(
    "open opens opened opening show shows showed shown flower flowers flowered bloom blooms "
    "bloomed out start starts started come comes came coming do does did done give gives gave "
    "stir stirred budge budged move moved wake".split()
)
_WORK = frozenset(
    "sow sowed sowing sown pot potted potting plant planted planting water watered feed fed spray "
    "sprayed move cut pinch pinched take took taking go going went get got buy bought see sold "
    "sell send sent show_it back home heat heater ready know".split()
)
_LATE_IN = frozenset("autumn fall midsummer".split())
_WAIT = frozenset({"wait", "waited", "waiting", "waits", "hang"})
_SPANS = frozenset("year years summer season months weeks ages month forever ever long".split())
_BACK, _AHEAD, _FOR = 9, 6, 7


def waited_for(mentions: Mentions) -> Iterator[Statement]:
    """Every long wait for a flower."""
    for at, text in enumerate(mentions.talk.texts):
        if text in _TILL and (span := _nothing_till(mentions, at)) is not None:
            yield _statement("late", *span)
        elif text in _WAIT and (end := _long_wait(mentions, at)) is not None:
            yield _statement("shy", at, end)


def _statement(value: str, start: int, end: int) -> Statement:
    return Statement(
        trait="flowering",
        value=value,
        start=start,
        end=end,
        rule="a wait for a flower",
        score=0.87,
    )


def _nothing_till(mentions: Mentions, at: int) -> tuple[int, int] | None:
    """ "nothing on it till August", "it made me wait till the end of June for a flower"."""
    talk, classes = mentions.talk, mentions.vocabulary.classes
    texts = talk.texts
    months = classes["month"] | classes["feast"] | _LATE_IN
    time = next((i for i in range(at + 1, min(len(texts), at + _AHEAD)) if texts[i] in months), -1)
    if time < 0 or texts[at + 1] in ("i", "we", "you") or talk.between(at, time, (".", "?", ",")):
        return None
    low = max(talk.clause(at)[0], at - _BACK)
    none = [i for i in range(low, at) if texts[i] in _NONE]
    if not none:
        return None
    said = texts[none[0] : at]
    flower = classes["bloom"] | {"bud", "colour"}
    own = texts[max(0, none[0] - 2) : none[0]]
    if set(said) & _WORK and not set(said) & flower:
        return None
    if set(own) & {"i", "we", "you"} and not set(said) & flower:
        return None
    after = texts[time + 1 : time + 5]
    waits = set(said) & _WAIT and (set(after) & flower or set(said) & flower)
    on_it = any(said[i : i + 2] in _ON_IT for i in range(len(said)))
    alone = len(said) == 1 and none[0] == talk.clause(at)[0] and said[0] in ("nothing", "nowt")
    if not (set(said) & (_SHOWING | flower)) and not on_it and not waits and not alone:
        return None
    if any(said[i : i + 2] == ("out", "of") for i in range(len(said))):
        return None
    return none[0], time + 1


_ON_IT = tuple(("on", w) for w in ("it", "this", "him", "her"))


def _long_wait(mentions: Mentions, at: int) -> int | None:
    """ "you'd wait all year for a bloom"; not "I waited an hour for the bus"."""
    talk = mentions.talk
    bloom = mentions.vocabulary.classes["bloom"]
    stop = min(talk.sentence(at)[1], at + _FOR + 3)
    found = next((i for i in range(at + 1, stop) if talk.texts[i] in bloom), None)
    if found is None or "for" not in talk.texts[at:found]:
        return None
    between = talk.texts[at + 1 : found]
    if talk.texts[found - 1] in ("this", "that", "the") or not set(between) & _SPANS:
        return None
    return found + 1
