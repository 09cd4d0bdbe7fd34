"""Words that stand for a kind of thing, so that one plant, colour or size speaks as any other."""

from diary.reading.mentions import Mentions


def kinds_of_words(mentions: Mentions) -> dict[int, str]:
    """The kind of thing that a token belongs to, where it is one."""
    kinds: dict[int, str] = {}
    for ref in mentions.refs:
        kinds |= dict.fromkeys(range(ref.start, ref.end), "NUMBER" if ref.is_number else "NAME")
    for kind, found in (
        ("COLOUR", mentions.colours),
        ("PART", mentions.parts),
        ("LENGTH", mentions.lengths),
    ):
        for one in found:
            for i in range(one.start, one.end):
                kinds.setdefault(i, kind)
    return kinds
