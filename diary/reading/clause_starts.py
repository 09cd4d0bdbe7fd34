"""Where a statement begins that no mark sets apart, going by the words alone.

Automatic captions have no punctuation: a subject and its verb, or a way of turning on ("next
door is", "oh back to"), show that another statement begins.
"""

# Where a clause begins without a mark: a subject and its verb, with the word that leads in.
_LEADS = frozenset(
    "and but so now right well oh then because cause except only okay ok anyway although though "
    "while if when which um uh er plus yes no where whereas".split()
)


_SUBJECTS = frozenset(
    "i it he she they we you that this there here these those who nobody everybody".split()
)


_VERBS = frozenset(
    "'s 'm 've 'll 'd 're is was are were has had have will would can could do does did might must "
    "should looks look goes opened got get put sowed paid make measured think wish want mean know "
    "never stands opens flowers smells wants needs counted stays started came hangs grows makes "
    "sits shows took reckon guess suppose bought saw might may lost gave".split()
)


# "i only wish i had | she's cream": no question ends in a shortened verb
_SHORTENED = frozenset({"'s", "'re", "'ve", "'ll", "'m"})


_NOUNS = frozenset(
    "flower flowers bloom blooms blume throat plant head heads leaf leaves bud buds "
    "edge eye petals "
    "truss stem stems foliage habit zone seed pollen mother father mum dad centre scent label "
    "ground veins".split()
)


_PEOPLE = frozenset(
    "mother father mam ma mum mom dad granny gran nan nana grandad grandfather grandmother aunt "
    "auntie uncle cousin sister brother daughter son wife husband grandson granddaughter neighbour "
    "neighbor friend mate missus boss lad lass knees knee back".split()
)
_PERSONS_DO = frozenset("used always never says said swore taught told reckons thinks".split())
_HELD_BY = frozenset("like says said is 's than and by for of to with from on off".split())


_DETERMINERS = frozenset("the its his her their each every".split())


_HOLD_ON = frozenset(
    "think say reckon suppose guess mean know see believe wish hope if which what that "
    "as than like "
    "because cause since when where while until till of on to in at for with from who and but so "
    "how whether the a an".split()
)


# Openings that move the talk on: "next door is", "oh back to", "and last one for today".
_OPENINGS = (
    ("oh",),
    ("okay",),
    ("ok",),
    ("anyway",),
    ("then",),
    ("next",),
    ("and", "then"),
    ("now", "then"),
    ("last", "one"),
    ("last", "up"),
    ("and", "last"),
    ("first", "up"),
    ("so", "the"),
    ("and", "the"),
    ("then", "the"),
    ("so", "first"),
    ("so", "starting"),
    ("so", "back"),
    ("right", "then"),
    ("and", "next"),
    ("and", "down"),
    ("and", "back"),
    ("moving", "on"),
    ("hang", "on"),
    ("hold", "on"),
    ("so", "next"),
    ("and", "on"),
    ("on", "to"),
    ("all", "right"),
    ("and", "over"),
    ("and", "up"),
    ("the", "one", "beside"),
    ("the", "one", "behind"),
    ("the", "one", "next"),
    ("the", "one", "after"),
    ("the", "one", "along"),
    ("its", "neighbour"),
    ("its", "neighbor"),
    ("this", "one", "'s"),
    ("that", "one", "'s"),
    ("this", "one", "has"),
    ("this", "one", "is"),
    ("i", "counted"),
    ("careful",),
    ("let", "me"),
    ("one", "more", "thing"),
    ("very", "like"),
    ("back", "to"),
    ("where", "was", "i"),
    ("and", "this", "one"),
    ("who", "are"),
    ("now", "the", "tag"),
    ("now", "the", "label"),
    ("oh", "and"),
    ("hm",),
    ("hmm",),
    ("and", "that", "no"),
    ("and", "that", "one"),
    ("see", "this"),
    ("so", "this"),
    ("and", "this"),
    ("now", "this"),
    ("wait", "now"),
    ("this", "one", "the"),
    ("that", "there"),
    ("so", "anyway"),
    ("this", "fella"),
    ("up", "on", "the"),
    ("down", "on", "the"),
    ("and", "behind"),
    ("and", "beside"),
    ("and", "one"),
    ("now", "the"),
    ("but", "the"),
    ("and", "here"),
    ("up", "on"),
    ("down", "on"),
)


_NO_OPENING_AFTER = frozenset(
    "the its his her very and so now right then back is 's was by up even only just "
    "since until till about a my that well than as like of "
    "who what which whether if how where 're are "
    "i move moving went go going along straight with this over carry keep keeping get got".split()
)


# A description that begins right after a statement has been rounded off with "that" or "it".
_DESCRIBING = frozenset(
    "good lovely nice compact soft pail pale glossy zoned masses very proper semi "
    "single quite white leaf flower leaves "
    "variegated healthy clean nothing bit flower's really beautiful".split()
)


_ROUNDED_OFF = frozenset({"that", "it", "before", "all", "mind", "though", "anyway", "there"})


# "call it compact", "keep it clean": what "it" is said to be belongs to the verb.
_MAKING = frozenset(
    "call called calling find found keep keeping keeps make makes making want wanted wants say "
    "like wish prefer name consider get gets stay leave left".split()
)


_SEASONS = frozenset(
    {"year", "season", "summer", "spring", "winter", "autumn", "time", "week", "month"}
)


_RANKED = frozenset(
    {"first", "next", "last", "one", "other", "end", "mother", "father", "seed", "pollen"}
)


_BREAKING = (("hang", "on"), ("hold", "on"), ("where", "was", "i"), ("where", "were", "we"))
_NO_BREAK_AFTER = frozenset(
    "i to 'll will can could just you must they it we and so but okay".split()
)
_STEPS = frozenset(
    "scooch scoot shuffle skip hop move step slide jump nip pop walk shimmy sidle budge".split()
)
_ALONG = frozenset("along down over up across on back".split())


def _steps(texts: tuple[str, ...], at: int) -> bool:
    """ "scooch down one", "hop over to"; not "i'll hop over", "it moves along"."""
    return texts[at] in _STEPS and texts[at + 1 : at + 2] != () and texts[at + 1] in _ALONG


def _turns_on(texts: tuple[str, ...], at: int) -> bool:
    breaks = any(texts[at : at + len(words)] == words for words in _BREAKING)
    if (breaks or _steps(texts, at)) and texts[at - 1] not in _NO_BREAK_AFTER:
        return True
    if texts[at - 1] in _NO_OPENING_AFTER:
        return False
    if texts[at] == "last" and texts[at + 1 : at + 2] and texts[at + 1] in _SEASONS:
        return texts[at + 2 : at + 3] != () and texts[at + 2] in _SUBJECTS
    for words in _OPENINGS:
        if texts[at : at + len(words)] == words:
            return not (
                words[-1] == "the" and texts[at + 2 : at + 3] and texts[at + 2] not in _RANKED
            )
    return False


def starts_clause(texts: tuple[str, ...], at: int) -> bool:
    """Whether a new statement begins at the token, going by the words alone."""
    if at == 0:
        return False
    if _turns_on(texts, at):
        return True
    if texts[at - 1] in _HOLD_ON:
        return False
    if texts[at] in _DESCRIBING and texts[at - 1] in _ROUNDED_OFF:
        return not (
            texts[at - 1] == "it" and texts[at - 2 : at - 1] != () and texts[at - 2] in _MAKING
        )
    if texts[at] == "looks" and texts[at - 1] not in _SUBJECTS | _NOUNS | _LEADS | {"one"}:
        return True
    i = at
    while i < len(texts) and i - at < 2 and texts[i] in _LEADS:
        i += 1
    if i + 1 >= len(texts):
        return False
    if texts[i] in _SUBJECTS and texts[i + 1] in _VERBS:
        held = texts[at - 1] in _VERBS - {"is", "was", "know", "mean"}
        return not (i == at and held) or (texts[i - 1] == "had" and texts[i + 1] in _SHORTENED)
    if texts[i] in ("my", "our") and texts[i + 1] in _PEOPLE and texts[at - 1] not in _HELD_BY:
        return texts[i + 2 : i + 3] != () and texts[i + 2] in _VERBS | _PERSONS_DO
    return (
        i + 2 < len(texts)
        and texts[i] in _DETERMINERS
        and texts[i + 1] in _NOUNS
        and texts[i + 2] in _VERBS
    )
