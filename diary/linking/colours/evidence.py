"""Whether anything says that a colour without a part is the flower's.

"Salmon, with a white eye." "She's come a right muddy pink." "I'd call it plum." are said of the
flower; "wash the brown off my hands" and "that purple is nothing to do with me" of no flower. A
colour is taken for the flower's where it begins a statement as a fragment, follows a copula whose
subject can be the flower, is what the flower is called, or goes on from a colour before it.
"""

from diary.linking.colours.subjects import SAID_OF_FLOWERS
from diary.linking.colours.words import FRAGMENT_LEADS, fragment_start
from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions
from diary.reading.tokens import COMMA, STOP, Talk

_ARTICLES = frozenset("a an this that such some your what".split())
_ANY_ADJECTIVES = 3  # "a dark velvety purple", "this mad pink"
_LEADS = FRAGMENT_LEADS | frozenset(
    "same old such some plain overall mainly mostly basically simply truly actually again still "
    "slightly somewhat definitely absolutely properly unmistakably plainly clearly honest ordinary "
    "this one another full completely entirely totally best finest truest better finer what "
    "something half".split()
)
_OPENERS = _LEADS | frozenset(
    "i mean say said well like yes no look so now then here there inside outside or neither either "
    "both right oh um uh er her his its being my yon put yet".split()
)
_BINDING = frozenset(
    "of in on at to from for with by into onto under over behind beside near off against beneath "
    "between through without about as than like my your his our their her its the that those "
    "these every each any".split()
)
_COPULAS = frozenset(
    "is 's are 're was were be been being came come comes coming turned turns turn gone went goes "
    "go going looks look looked seems seemed opened opens open opening stays stayed fades faded "
    "fading ended ends turning became becomes dries aged ages bleaches bleached has had have 've "
    "'m am got gets get deepens deepened settles settled reads flowers "
    "bloomed blooms flowered remains".split()
)
_WITH_COPULAS = frozenset(
    "up out off in down to into as on not now just all still always really only definitely "
    "more less nearer closer very quite almost nearly practically properly actually simply plainly "
    "mostly largely mainly both either never ever back probably perhaps maybe certainly clearly "
    "somewhere between the a an bit little rather pretty too so well um uh er honestly what we you "
    "i 'd would call say one that your this even lovely old like really".split()
)
_CAN_BE_THE_FLOWER = SAID_OF_FLOWERS | frozenset(
    "these colour color truss head heads shade body face tube skirt effect tone hue picture lad "
    "lass fella child baby ground today everything".split()
)


def said_of_flower(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "Salmon.", "it's a salmon", "put salmon"; not "wash the brown off my hands"."""
    start = _phrase_start(mentions, colour)
    if mentions.talk.texts[start - 1 : start + 1] == ("not", "the"):
        return False  # "not the white I was promised"
    if _ring(mentions, colour) or mentions.talk.texts[start - 2 : start] in _ASKING:
        return False
    return any(
        habit(mentions, colour, start)
        for habit in (_fragment, _told, _faded_to, _called, _joined, _in_it)
    )


def _ring(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "a white halo where the two meet": of a marking that has no name here."""
    talk, i = mentions.talk, colour.end
    of = colour.start - 1
    if of > 0 and talk.texts[of] == "of" and talk.texts[of - 1 : of] in _RINGS:
        return True  # "a ring of maroon round the nectaries"
    return talk.texts[i : i + 1] in _RINGS and not talk.tokens[i - 1].mark


_ASKING = (("is", "it"), ("was", "it"), ("is", "that"), ("is", "this"), ("is", "she"))
_RINGS = tuple((w,) for w in "halo halos ring rings band bands collar line lines bars rays".split())


def _phrase_start(mentions: Mentions, colour: ColourHeard) -> int:
    """Where the phrase of the colour begins: back over "a sort of", "a dark velvety"."""
    talk = mentions.talk
    low = talk.clause(colour.start)[0]
    start = _past_leads(talk, colour.start, low)
    for i in range(start - 1, max(low - 1, start - 2 - _ANY_ADJECTIVES), -1):
        if talk.tokens[i].mark and i < start - 1 and talk.tokens[i].mark != COMMA:
            break
        if talk.texts[i] in _ARTICLES:
            return _past_leads(talk, i, low)
        if talk.texts[i] == "of" and talk.texts[i - 1] in ("sort", "kind", "shade"):
            return _past_leads(talk, i - 1, low)  # "a sort of tawny | bronze"
        if talk.texts[i] in _BINDING | _COPULAS or mentions.parts_in(i, i + 1):
            break
    return start


def _past_leads(talk: Talk, at: int, low: int) -> int:
    start = max(low, min(at, fragment_start(talk, at)))
    while start > low and not talk.tokens[start - 1].mark:
        word = talk.texts[start - 1]
        same = word in ("the", "that") and talk.texts[start] == "same"
        if not same and word not in _LEADS and not word.endswith("ly"):
            break
        start -= 1
    over = talk.texts[start - 1 : start + 1] == ("at", "all")  # "no tag at all | peach"
    return start + over


def _fragment(mentions: Mentions, colour: ColourHeard, start: int) -> bool:
    """ "Salmon, with a white eye", "eight inches high | pale pink with a white eye"."""
    talk = mentions.talk
    if _pointed_at(mentions, colour):
        return False
    low = talk.clause(colour.start)[0]
    if set(talk.texts[low:start]) <= _OPENERS or talk.tokens[start - 1].mark:
        return True
    if _likened(mentions, max(low, start - 2), start) and start - low <= 2:
        return talk.punctuated and bool(talk.tokens[colour.end - 1].mark)  # "Candyfloss pink."
    if talk.punctuated:
        return False
    if start == colour.start and _with_a_part(mentions, colour):
        return True
    handled = mentions.vocabulary.classes["handled"] if start < colour.start else frozenset()
    return talk.texts[start - 1] not in _BINDING | handled or talk.texts[start - 2 : start] in _DONE


def _with_a_part(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "a plant i never cared for | salmon pink and a black blaze": a look is told at length."""
    talk, i = mentions.talk, colour.end
    if talk.texts[i : i + 1] not in (("with",), ("and",)):
        return False
    return any(p.label != "bloom" for p in mentions.parts_in(i + 1, i + 6))


def _likened(mentions: Mentions, start: int, end: int) -> bool:
    """Whether the words are for what a colour is like: "refrigerator | white"."""
    talk = mentions.talk
    known = _BINDING | _COPULAS | _WITH_COPULAS | mentions.vocabulary.things | SAID_OF_FLOWERS
    known |= mentions.vocabulary.classes["handled"]
    words = talk.texts[start:end]
    plain = all(w.isalpha() and w not in known for w in words)
    return plain and not mentions.parts_in(start, end) and not any(mentions.masked[start:end])


def _pointed_at(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "that purple is nothing to do with me", "the brown wants washing off"."""
    talk, i = mentions.talk, colour.start
    if talk.texts[i - 1 : i] not in (("the",), ("that",), ("those",)) or i == 0:
        return False
    after = talk.texts[colour.end : colour.end + 1]
    if talk.texts[i - 1] == "the" and after in (("is",), ("'s",)):
        return False  # "the pink's a bit muddy"
    return not talk.tokens[colour.end - 1].mark and after in _VERBS_AFTER


_DONE = (
    *((w, her) for w in ("at", "to", "on", "of", "for") for her in ("her", "that", "this")),
    ("at", "all"),
    ("of", "it"),
    ("on", "it"),
    ("for", "it"),
    ("with", "it"),
    ("like", "that"),
)
_SHOWN_ITSELF = frozenset("got have see came come opened appeared up out get here".split())
_VERBS_AFTER = tuple((w,) for w in "is 's was wants has comes came off belongs".split())


def _told(mentions: Mentions, colour: ColourHeard, start: int) -> bool:
    """ "she's a right muddy pink", "the flower turned peach"; not "the mother is scarlet"."""
    talk = mentions.talk
    low = talk.clause(colour.start)[0]
    verb = start
    while verb > low and talk.texts[verb - 1] in _WITH_COPULAS and not talk.tokens[verb - 1].mark:
        verb -= 1
    if verb == low or talk.texts[verb - 1] not in _COPULAS:
        return False
    if "the" in talk.texts[verb:start] and talk.texts[verb - 1] in _HAVING:
        return False  # "I've still got the pink from last year"
    if talk.texts[start : start + 1] == ("the",) and talk.texts[start - 1] in ("between", *_HAVING):
        return False  # "it's between the red and the tap"
    while verb > low and talk.texts[verb - 1] in _COPULAS | _WITH_COPULAS - _CAN_BE_THE_FLOWER:
        verb -= 1
    return _flower_ends(mentions, low, verb)


def _faded_to(mentions: Mentions, colour: ColourHeard, start: int) -> bool:
    """ "it has faded in the sun to a pale peach"; not "the label's faded to white"."""
    talk = mentions.talk
    start -= talk.texts[start - 1 : start] in (("a",), ("an",), ("the",))
    if talk.texts[start - 1 : start] not in (("to",), ("into",)):
        return False
    low = max(talk.clause(colour.start)[0], start - 7)
    verbs = [i for i in range(low, start) if talk.texts[i] in _CHANGING]
    if not verbs:
        return False
    verb = verbs[0]
    while verb > low and talk.texts[verb - 1] in _COPULAS | _WITH_COPULAS - _CAN_BE_THE_FLOWER:
        verb -= 1
    return _flower_ends(mentions, low, verb)


_CHANGING = frozenset(
    f"{stem}{end}"
    for stem in "fade pale darken deepen bleach soften lighten mature thin wash mellow warm cool "
    "clear colour shade age ripen".split()
    for end in ("", "s", "d", "ed", "ing")
) | frozenset("fading paling maturing bleaches washes coloured aging ageing".split())
_HAVING = frozenset("has have 've had got get gets".split())


def _flower_ends(mentions: Mentions, low: int, end: int) -> bool:
    """Whether the subject that ends before token `end` can be the flower."""
    talk = mentions.talk
    if end <= low:
        begin = talk.sentence(low)[0]
        classes = mentions.vocabulary.classes
        kin = classes["mother"] | classes["father"] | classes["person"]
        return not kin & set(talk.texts[begin : max(begin, low)][:3])
    last = end - 1
    of_a_thing = talk.texts[end - 3 : end - 2] and talk.texts[end - 3] in mentions.vocabulary.things
    if end - 2 > low and talk.texts[end - 2] in ("on", "of", "in", "to") and of_a_thing:
        return False  # "the label on it is yellow"
    word = talk.texts[last]
    if mentions.masked[last] or word in _CAN_BE_THE_FLOWER:
        return True
    if word in _SHOWN_ITSELF and "what" in talk.texts[max(low, last - 5) : last]:
        return True  # "what I've got | is a wishy-washy pink"
    if word in mentions.vocabulary.classes["plant_noun"]:
        return True
    return any(p.end == last + 1 for p in mentions.parts_in(last - 4, last + 1))


def _called(mentions: Mentions, colour: ColourHeard, start: int) -> bool:
    """ "I'd call it plum", "put it down as red"; not "you can see the green through it"."""
    if mentions.talk.texts[colour.start - 1 : colour.start] == ("the",):
        return False
    low = max(mentions.talk.clause(colour.start)[0], start - 9)
    named = mentions.vocabulary.colour_habits["naming"].find(mentions.talk.texts, low, colour.start)
    return any(
        start <= n.end <= colour.start
        or (start - n.end <= 2 and _likened(mentions, n.end, start))  # "I mean refrigerator white"
        for n in named
    )


def _joined(mentions: Mentions, colour: ColourHeard, start: int) -> bool:
    """ "violet and | white", "white with just | a hint of lilac", "pink going | to salmon"."""
    talk = mentions.talk
    before = mentions.colours_in(start - 7, start)
    if not before or talk.between(before[-1].end - 1, start, (STOP,)):
        return False
    between = talk.texts[before[-1].end : start]
    parts = mentions.parts_in(before[-1].end, start)
    if parts:
        between = (*between[: parts[0].start - before[-1].end], *talk.texts[parts[-1].end : start])
    if set(between) <= _JOINING | _LEADS:
        return True
    return "and" in (*between[-1:], talk.texts[start]) and said_of_flower(mentions, before[-1])


_JOINING = frozenset(
    "and or with to into on over against but then going shading fading turning through not maybe "
    "towards more than in it like".split()
)


def _in_it(mentions: Mentions, colour: ColourHeard, start: int) -> bool:
    """ "there's a bit of green in it", "a double in a warm peach"."""
    talk, after = mentions.talk, colour.end
    if talk.texts[after : after + 2] in _IN_IT:
        return True
    if talk.texts[start] == "of":
        start += 1
    if talk.texts[start - 1 : start] not in (("in",), ("of",)):
        return False
    if any(p.end == start - 1 for p in mentions.parts_in(start - 5, start)):
        return True  # "petals of a thick creamy white"
    low = talk.clause(colour.start)[0]
    begun = start - 1 == low or talk.texts[start - 2] in _IN_A_COLOUR
    palest = talk.texts[colour.start].endswith("est")  # "a single, in the palest pink"
    return begun and (palest or talk.texts[start] != "the")


_IN_IT = tuple((w, it) for w in ("in", "about", "through") for it in ("it", "her", "him"))
_IN_IT = (*_IN_IT, ("in", "there"), ("in", "that"))
_IN_A_COLOUR = frozenset(
    "double single flower flowers bloom blooms covered smothered dressed done one ones".split()
)
