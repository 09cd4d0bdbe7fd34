"""A plant shown by where it stands, with no number or name: "down at your feet there's a seedling".

A place at the head of the sentence, then "there's a", "that's a", "stands a" and a word for a
plant. "Down at the base there's a flush" and "in the corner there's a tap" show none.
"""

from diary.linking.document import Plant, PlantKind
from diary.linking.turns.lead_ins import LeadIns
from diary.linking.turns.unnumbered import FAR_NUMBER, new_unnamed, told_soon
from diary.linking.turns.walk import UNSAID, Turn, Walk
from diary.reading.mentions import Mentions

_LEADS = frozenset("and now then oh but so right well also here".split())
_PLACES = frozenset(
    "down up over out in on at by behind beside under below above near inside across round "
    "beyond between next further just right tucked squeezed squashed wedged hidden hiding "
    "lurking".split()
)
_SHOWS = (
    ("there", "'s"), ("there", "is"), ("that", "'s"), ("we", "have"), ("we", "'ve"), ("i", "have"),
    ("i", "'ve"), ("you", "'ll"), ("stands", "a"), ("sits", "a"), ("is", "a"), ("is", "another"),
    ("lives", "a"), ("is", "one"), ("is", "this"), ("comes", "a"), ("is", "some"),
    ("is", "something"), ("'s", "something"), ("sits", "something"), ("stands", "something"),
)  # fmt: skip
_A = frozenset({"a", "an", "another", "one", "this", "some"})
_PLANTS = frozenset(
    "seedling sport plant youngster oddment stranger self-sown fellow fella chap creature "
    "mongrel sister brother sibling newcomer beauty latecomer runt giant monster offshoot "
    "offset orphan seedlings sprig scrap fancy thing fuchsia pelargonium geranium dahlia angel "
    "zonal regal stellar foundling oddity curiosity".split()
)
_HOLES = frozenset("tucked squeezed squashed wedged hidden hiding lurking".split())
_NOUNS = frozenset({"one", "something", "single", "double"})
_NEAR, _MOST_PLACE = 6, 9


def shown_in_place(mentions: Mentions) -> dict[int, int]:
    """Tokens where a plant is shown by its place, with the tokens where that begins."""
    talk = mentions.talk
    found: dict[int, int] = {}
    for at in range(1, len(talk.texts) - 2):
        if talk.texts[at : at + 2] not in _SHOWS:
            continue
        start = _place_before(mentions, at)
        if start is not None and _plant_after(mentions, at):
            found[at] = start
        elif _come_up(mentions, at):
            found[at] = talk.sentence(at)[0]
    return found


_COMING = frozenset("came come grew seeded sprang popped turned appeared i we nobody".split())


def _come_up(mentions: Mentions, at: int) -> bool:
    """ "Then there's one that came up where I'd tipped the compost"; not "then there's one bud"."""
    texts = mentions.talk.texts
    lead = texts[max(0, at - 1) : at]
    if lead[:1] not in (("then",), ("next",), ("now",), ("and",)) or texts[at] != "there":
        return False
    words = texts[at + 2 : at + 9]
    if words[:1] == () or words[0] not in _A:
        return False
    which = next((n for n, w in enumerate(words) if w in ("that", "which", "i", "we")), None)
    plant = (words[0] == "one" and which == 1) or bool(_PLANTS & set(words[:which]))
    return which is not None and plant and bool(_COMING & set(words[which : which + 2]))


def _place_before(mentions: Mentions, at: int) -> int | None:
    """Where "and down at your feet there" begins, if no more than that stands before."""
    talk = mentions.talk
    start = talk.sentence(at)[0]
    if start == at and not talk.punctuated and at > 0:
        start = talk.sentence(at - 1)[0]  # captions: "there's" begins a sentence of its own
    i = start
    while i < at and talk.texts[i] in _LEADS:
        i += 1
    if i == at or at - i > _MOST_PLACE or talk.texts[i] not in _PLACES:
        return None
    words = talk.texts[i:at]
    if {"is", "'s", "was", "has", "i", "he", "she"} & set(words):
        return None
    if any(w == "it" and talk.texts[i + n - 1] not in _BY for n, w in enumerate(words)):
        return None
    under = talk.texts[i] in _HOLES  # "tucked under the leaves of that"
    if (any(True for _ in mentions.parts_in(i, at)) and not under) or mentions.refs_in(i, at):
        return None
    return start


def _plant_after(mentions: Mentions, at: int) -> bool:
    talk = mentions.talk
    stop = min(talk.sentence(at + 1)[1], at + 3 + _NEAR)
    words = talk.texts[at + 1 : stop]
    if not _A & set(words[:3]) and not {"no", "something"} & set(words[:3]):
        return False
    noun = next(
        (n for n, w in enumerate(words) if w in _PLANTS or (w in _NOUNS and _told(words[n + 1 :]))),
        None,
    )
    return noun is not None and not any(True for _ in mentions.parts_in(at + 1, at + 1 + noun))


_TELLING = frozenset("that which with without i we nobody no not just whose of".split())
_BY = frozenset("by behind beside under below above near to beyond round against of".split())


def _told(after: tuple[str, ...]) -> bool:
    """ "There's a white one I never potted up"; not "there's one bud", "one of its heads"."""
    return after[:1] != () and after[0] in _TELLING and after[1:2] not in _OF_IT


_OF_IT = (("its",), ("them",), ("these",), ("the",), ("those",), ("his",), ("her",))


def stands_there(
    mentions: Mentions, at: int, start: int, leads: LeadIns, taken: set[int], walk: Walk
) -> Turn | None:
    """The turn to a plant shown by its place, or none where its number follows."""
    if mentions.scopes.habits(at) & UNSAID or told_soon(mentions, at, leads, taken, FAR_NUMBER):
        return None
    if walk.turns and start <= walk.turns[-1].said:
        return None
    current = walk.current
    if current is not None and current.kind is PlantKind.UNNAMED:
        last = walk.turns[-1]
        if leads.told_before(at) <= last.said + 1:
            return None  # "this one has no label. Tucked in there's a seedling": the same
    plant: Plant = new_unnamed(walk)
    return Turn(at=start, said=at, plant=plant, score=0.72, rule="a plant shown by its place")
