"""Numbers named in one breath: a list tells of several plants and turns to none of them.

"23-20, 23-21 and 23-22 I sowed as one lot", "I've a pair here, 23-20 and 23-21". Leaves alone
"this is 23-20 and 23-21 is next", "23-20 and then 23-21, white".
"""

from diary.reading.mentions import Mentions, Ref

_JOINS = frozenset({"and", "or", "to", "through"})
_SEVERAL = frozenset(
    "pair two three four both these those between brothers sisters siblings twins them together "
    "trio".split()
)
_OF_ALL = frozenset(
    "i we they are were have both all 're 've do did look come came went will neither none is_not "
    "make share differ for".split()
)
_MOST = 12


def in_list(mentions: Mentions, ref: Ref) -> bool:
    """Whether the number is one of a list that is told of together."""
    run = _run(mentions, ref)
    if len(run) < 2 or any(r.title == ref.title for r in run[run.index(ref) + 1 :]):
        return False  # "now S240, and S140 and S240 are easily mixed up"
    talk, first, last = mentions.talk, run[0], run[-1]
    if len(run) > 2:
        return True
    start = talk.sentence(first.start)[0] if talk.punctuated else max(0, first.start - _MOST)
    if _SEVERAL & set(talk.texts[max(start, first.start - _MOST) : first.start]):
        return True
    ended = talk.tokens[last.end - 1].mark in (".", "?")
    after = () if ended else talk.texts[last.end : last.end + 1]
    return after != () and after[0] in _OF_ALL


def _run(mentions: Mentions, ref: Ref) -> list[Ref]:
    """The numbers joined with it, by commas and at least one "and"."""
    run, joined = [ref], False
    while (before := _before(mentions, run[0])) is not None:
        joined = joined or before.end < run[0].start
        run.insert(0, before)
    while (after := _after(mentions, run[-1])) is not None:
        joined = joined or run[-1].end < after.start
        run.append(after)
    return run if joined else [ref]


def _before(mentions: Mentions, ref: Ref) -> Ref | None:
    at = ref.start - (mentions.talk.texts[ref.start - 1] in _JOINS if ref.start else 0)
    other = mentions.ref_ending(at)
    return other if other is not None and _joins(mentions, other, ref) else None


def _after(mentions: Mentions, ref: Ref) -> Ref | None:
    at = ref.end + (
        mentions.talk.texts[ref.end : ref.end + 1] != () and mentions.talk.texts[ref.end] in _JOINS
    )
    other = mentions.ref_at(at)
    return other if other is not None and _joins(mentions, ref, other) else None


def _joins(mentions: Mentions, one: Ref, two: Ref) -> bool:
    """Both are numbers, in one sentence, with a comma or a word between that joins."""
    mark = mentions.talk.tokens[one.end - 1].mark
    if not (one.is_number and two.is_number) or mark in (".", "?") or one.title == two.title:
        return False
    return one.end < two.start or mark == "," or not mentions.talk.punctuated
