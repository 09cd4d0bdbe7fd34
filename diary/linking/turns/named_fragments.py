"""A sentence without a verb that ends in a name and shows that plant.

"Behind that one, Tin Whistle.", "Then old faithful, Tin Whistle.", "A shop plant now, for
contrast: Tin Whistle." Leaves alone "Pink, like its mother, Tin Whistle.", "No, Tin Whistle."
"""

from diary.linking.turns.lead_ins import LeadIns
from diary.reading.mentions import Mentions, Ref

_OPENING = frozenset(
    "and now then so right well oh here but the old okay ok next first last".split()
)
_VERBS = frozenset(
    "is 's are 're was were am 'm has have had 've do does did will 'll would 'd can could might "
    "may must shall should be been being got get gets go goes went come comes came make makes made "
    "say says said call calls called think reckon know knows see saw want wants remind reminds "
    "take takes took give gave put set threw beats beat like likes prefer blame ask".split()
)
_NO_SHOWING = frozenset(
    "mother father mum mam mom dad sire dam parent parents pollen seed pod cross crossed times "
    "like than double image ringer twin spit similar alike same reminiscent not no never nor "
    "neither unlike bar except possibly perhaps maybe or either by from out off of with for as "
    "half via selfed sport blood shades echo echoes name names".split()
)
_PLACING = frozenset(
    "behind beside next under above below opposite left right corner end front back top bottom "
    "shelf floor step bench staging door basket pot window sill table gravel path tray".split()
)
_SHORT, _SHORTEST = 10, 5


def ends_fragment(mentions: Mentions, ref: Ref) -> bool:
    """ "In the corner, Tin Whistle."; not after a question, nor where a parent is told."""
    talk = mentions.talk
    start, stop = talk.sentence(ref.start)
    lead = talk.texts[start : ref.start]
    if not talk.punctuated or not lead or len(lead) > _SHORT:
        return False
    if talk.between(start - 1, start, ("?",)) or not _closes(mentions, ref, stop):
        return False
    if set(lead) <= _OPENING:
        return stop == ref.end
    placed = bool(_PLACING & set(lead))
    barred = _NO_SHOWING - {"by", "of", "off", "out", "from", "for"} if placed else _NO_SHOWING
    barred = barred - {"not", "of", "for"} if _contrasted(lead) else barred
    if talk.tokens[ref.start - 1].mark != "," or set(lead) & (_VERBS | barred):
        return False
    if mentions.colours_in(start, ref.start) or any(
        True for _ in mentions.parts_in(start, ref.start)
    ):
        return False
    return not mentions.refs_in(start, ref.start)


_CONTRASTS = frozenset(
    "now next comparison contrast shop bought finally lastly stranger scale interest mine this then"
    .split()
)  # fmt: skip


def _contrasted(lead: tuple[str, ...]) -> bool:
    """ "Now for something I did not raise", "not one of mine, this"."""
    return bool(_CONTRASTS & set(lead))


def _closes(mentions: Mentions, ref: Ref, stop: int) -> bool:
    """The sentence ends at the name, or a clause of its own follows: ", and it's red"."""
    talk = mentions.talk
    if stop == ref.end:
        return True
    after = talk.texts[ref.end : ref.end + 2]
    return talk.tokens[ref.end - 1].mark == "," and (
        after in (("and", "it"), ("and", "she"), ("and", "he"), ("and", "that"), ("and", "this"))
        or after[:1] in (("which",), ("who",), ("not",), ("bought",))
    )


def clause_to_name(mentions: Mentions, ref: Ref, leads: LeadIns) -> bool:
    """In captions: "then old faithful tin whistle", "behind that one tin whistle"."""
    talk = mentions.talk
    start, stop = talk.clause(ref.start)
    start = max(start, leads.told_before(ref.start))
    lead = talk.texts[start : ref.start]
    if talk.punctuated or not lead or len(lead) > _SHORTEST or stop != ref.end:
        return False
    begins = lead[0] in ("then", "now", "next", "and", "a") or lead[0] in _PLACING
    shows = begins and (len(lead) > 1 or lead[0] == "then")
    return shows and not set(lead) & (_VERBS | _NO_SHOWING)


_SPEAKING = frozenset("speaking talking".split())


def here_it_is(mentions: Mentions, ref: Ref) -> bool:
    """ "You all know Tin Whistle, and here it is."; not "Tin Whistle is in here somewhere"."""
    talk = mentions.talk
    stop = talk.sentence(ref.start)[1] if talk.punctuated else len(talk.texts)
    led = talk.texts[max(0, ref.start - 4) : ref.start]
    rest = talk.texts[ref.end : min(ref.end + 6, stop)]
    if not talk.punctuated and not _SPEAKING & set(led):
        rest = rest[:4]
    return any(
        rest[n] in ("here", "there") and rest[n + 1] in ("it", "she", "he") and rest[n + 2] in _IS
        for n in range(len(rest) - 2)
    )


_IS = frozenset({"is", "'s", "stands", "sits", "comes"})
