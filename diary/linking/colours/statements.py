"""Which part of the plant a colour belongs to, and markings without a colour.

In order: the noun right after it ("cream throat"), "a flash of maroon", the part before it
("the throat is white", "veined in cerise"), a part in a phrase after it ("mauve on the
bottom petals"), the part the sentence began with; else the flower as a whole.
"""

from dataclasses import replace

from diary.linking.colours.after import hemmed, in_phrase_after
from diary.linking.colours.attached import Attached
from diary.linking.colours.drawn import lined, marking_of
from diary.linking.colours.evidence import said_of_flower
from diary.linking.colours.leaves import of_variegated_leaf
from diary.linking.colours.lists import twin_of
from diary.linking.colours.markings import markings
from diary.linking.colours.of_others import is_not_meant
from diary.linking.colours.places import noun_after, part_before, petals_after
from diary.linking.colours.pointed import pointed_at
from diary.linking.colours.sequels import said_again_of_petals, sequel_of, the_rest
from diary.linking.colours.spoken_of import of_them, subject_of_sentence
from diary.linking.colours.topics import can_be, topic_of
from diary.linking.statement import Statement
from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions

_POINTING = frozenset({"one", "ones"})


DEFAULT_RULE = "a colour with no part: the flower"
PROPOSED_RULE = "a colour that nothing says is the flower's"


def find_colour_statements(mentions: Mentions) -> tuple[Statement, ...]:
    """Colours with their parts, and markings for which no colour is given."""
    statements: list[Statement] = []
    coloured: set[tuple[int, str]] = set()
    for colour, attached in _with_topics(mentions):
        coloured |= {(f.start, f.label) for f in mentions.parts_in(attached.start, attached.end)}
        statements.append(
            Statement(
                trait="colour",
                value=colour.value,
                part=attached.part,
                modifiers=colour.modifiers,
                on=attached.on,
                start=min(colour.start, attached.start),
                end=max(colour.end, attached.end),
                rule=attached.rule,
                score=attached.score,
            )
        )
    statements = [_with_hint(mentions, s, statements) for s in statements]
    statements += markings(mentions, coloured)
    return tuple(sorted(statements, key=lambda s: s.start))


def _with_topics(mentions: Mentions) -> list[tuple[ColourHeard, Attached]]:
    """Each colour of the plant with its part, in order."""
    ordered = mentions.colours
    shared: dict[int, Attached] = {}
    for n in range(len(ordered) - 1, -1, -1):
        attached = (
            None if is_not_meant(mentions, ordered[n]) else _attach(mentions, ordered, n, shared)
        )
        if attached is not None:
            shared[n] = attached
    told: list[tuple[ColourHeard, Attached]] = []
    for n in sorted(shared):
        colour, attached = ordered[n], shared[n]
        if attached.rule == DEFAULT_RULE:
            attached = (
                topic_of(mentions, colour)
                or _by_pronoun(mentions, colour)
                or subject_of_sentence(mentions, colour)
                or of_them(mentions, colour)
                or sequel_of(mentions, colour, told)
                or _if_said_of_flower(mentions, colour, attached)
            )
        if attached.part in ("upper petals", "lower petals") and attached.start == colour.start:
            attached = (
                of_them(mentions, colour) or attached
            )  # "the veins, they're red on the lowers"
        if said_again_of_petals(mentions, colour, attached, told):
            continue
        attached = of_variegated_leaf(mentions, colour, attached, told)
        told.append((colour, the_rest(mentions, told, attached)))
        twin = twin_of(mentions, attached)
        if twin is not None:
            told.append((colour, twin))
    return told


def _if_said_of_flower(mentions: Mentions, colour: ColourHeard, attached: Attached) -> Attached:
    """The flower's, or only proposed where nothing says that it is."""
    if said_of_flower(mentions, colour):
        return attached
    return replace(attached, rule=PROPOSED_RULE, score=0.5)


def _by_pronoun(mentions: Mentions, colour: ColourHeard) -> Attached | None:
    part = pointed_at(mentions, colour)
    if part is None or not can_be(part, colour):
        return None
    rule = "a colour of the part pointed at"
    return Attached(part=part, rule=rule, score=0.8, start=colour.start, end=colour.end)


def _with_hint(mentions: Mentions, s: Statement, statements: list[Statement]) -> Statement:
    """ "the bottom ones are white with just a hint of lilac": the hint is on the same part."""
    if s.rule != DEFAULT_RULE or "hint" not in s.modifiers:
        return s
    before = [o for o in statements if o.end <= s.start and s.start - o.end <= 4]
    between = mentions.talk.texts[before[0].end : s.start] if before else ()
    if before and before[0].part != "bloom" and set(between) <= {"with", "just", "and", "only"}:
        return replace(s, part=before[0].part)
    return s


def _attach(
    mentions: Mentions, colours: tuple[ColourHeard, ...], n: int, shared: dict[int, Attached]
) -> Attached | None:
    talk, colour = mentions.talk, colours[n]
    texts = talk.texts
    follows = texts[colour.end] if colour.end < len(texts) else ""
    marked = bool(talk.tokens[colour.end - 1].mark)
    line = lined(mentions, colour)
    if line is not None:
        return Attached(
            part=line,
            rule="a colour drawn as a line",
            score=0.85,
            start=colour.start,
            end=colour.end + 1,
            on=petals_after(mentions, colour.end + 1),
        )
    if not marked and follows in mentions.vocabulary.things and not hemmed(mentions, colour):
        return None
    if (
        not marked
        and follows in _POINTING
        and texts[colour.start - 1 : colour.start] in (("the",), ("that",), ("those",))
    ):
        return None
    direct = noun_after(mentions, colour)
    if direct is not None:
        return direct
    if _of_a_thing(mentions, colour):
        return None
    if not marked and follows in ("and", "or") and n + 1 < len(colours) and n + 1 in shared:
        nxt = colours[n + 1]
        if nxt.start == colour.end + 1 and shared[n + 1].rule == "a colour before its part":
            twin = shared[n + 1]
            return Attached(
                part=twin.part, rule=twin.rule, score=0.9, start=colour.start, end=twin.end
            )
    of = marking_of(mentions, colour)
    if of is not None:
        return of
    after = in_phrase_after(mentions, colour)
    if after is not None and hemmed(mentions, colour):
        return after
    before = part_before(mentions, colour)
    if after is not None and n and _placed_already(mentions, colours[n - 1], colour):
        return after
    if before is not None and after is not None and "bloom" in (before.part, after.part):
        return after if before.part == "bloom" else before  # "the throat's white right through"
    if before is not None and (after is None or before.score >= after.score):
        return before
    if after is not None:
        return after
    return Attached(
        part="bloom",
        rule=DEFAULT_RULE,
        score=0.76,
        start=colour.start,
        end=colour.end,
    )


def _placed_already(mentions: Mentions, first: ColourHeard, second: ColourHeard) -> bool:
    """ "burgundy in the top petals | a pale lilac in the bottom ones": two places."""
    placed = in_phrase_after(mentions, first)
    return placed is not None and placed.end <= second.start <= placed.end + 3


def _of_a_thing(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "the label is white": the colour of a thing that is no part of the plant."""
    texts, low = mentions.talk.texts, mentions.talk.clause(colour.start)[0]
    i = colour.start
    while i > low and texts[i - 1] in ("a", "very", "quite", "all", "bright"):
        i -= 1
    said = texts[i - 1 : i] in (("is",), ("'s",), ("are",), ("was",))
    return said and i - 2 >= low and texts[i - 2] in mentions.vocabulary.things
