"""Where a name is to be expected: after "the mother was", "crossed with", "a sport of".

There a mis-heard name ("with oh quill" for Widow Quill) need not be as close as elsewhere.
"""

from diary.reading.tokens import Talk
from diary.reading.vocabulary import Vocabulary

_JOINS = frozenset({"crossed", "times", "cross"})
_HANGING = frozenset({"of", "from", "off"})


def name_places(talk: Talk, vocabulary: Vocabulary) -> frozenset[int]:
    """The tokens at which a name may begin; none after a full stop."""
    texts, tokens = talk.texts, talk.tokens
    ends = {f.end for f in vocabulary.parent_cues.find(texts) if f.label.endswith(" before")}
    ends |= {
        f.end
        for f in vocabulary.cues["cross"].find(texts)
        if f.end - f.start > 1 or texts[f.start] in _JOINS
    }
    ends |= {f.end for f in vocabulary.cues["sport"].find(texts) if texts[f.end - 1] in _HANGING}
    return frozenset(end for end in ends if tokens[end - 1].mark not in (".", "?"))
