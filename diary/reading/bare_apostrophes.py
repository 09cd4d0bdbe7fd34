"""Contractions whose apostrophe is left out and that are words of their own: "its", "ill", "well".

In captions without an apostrophe anywhere "its going nowhere" is "it's going nowhere" and
"ill keep it" is "I'll keep it"; "its leaf" and "it looks ill" stay. Where the captions do
write apostrophes, "its" is the pronoun. ("thats" and "dont" are no words, and always opened.)
"""

from collections.abc import Sequence

_SIGNS = frozenset(
    "thats dont ive im isnt wont doesnt cant theres hes shes whats didnt wasnt youre".split()
)
_AFTER_IS = frozenset(
    "a an the not no got been gone come had won all just only so too very quite really still "
    "always never about almost nearly like one my your our his in on at for to out up over down "
    "back off lost made that this there here what where because as hardly barely definitely "
    "probably obviously certainly straight worth more twice half around roughly supposed "
    "had given taken shown nice lovely hopeless useless".split()
)
_AFTER_WILL = frozenset(
    "see have give keep say know let try put take be do get find make leave call name show use "
    "never not just definitely probably go come bin chuck root strike split pot repot cross "
    "hang hold wait start begin need want move bring tell look".split()
)
# What ends like a doing and belongs to the plant: "its feathering".
_NO_DOINGS = frozenset(
    "feathering veining marking edging flowering netting colouring branching breeding spring "
    "sibling seedling string standing training bedding opening timing nothing something "
    "anything evening morning growing".split()
)
_IS = {"its": ("it", "'s"), "heres": ("here", "'s"), "were": ("we", "'re")}
_WILL = {
    "ill": ("i", "'ll"),
    "well": ("we", "'ll"),
    "hell": ("he", "'ll"),
    "shell": ("she", "'ll"),
    "lets": ("let", "'s"),
}


def bare_contractions(words: Sequence[str]) -> dict[int, tuple[str, ...]]:
    """The tokens of each word that is a contraction without its apostrophe, by its index."""
    lower = [word.lower() for word in words]
    if any("'" in word or "’" in word for word in lower) or not _SIGNS & set(lower):  # noqa: RUF001
        return {}
    return {
        at: opened
        for at, word in enumerate(lower[:-1])
        if (opened := _opened(word, lower[at + 1])) is not None
    }


def _opened(word: str, after: str) -> tuple[str, ...] | None:
    if word in _WILL:
        return _WILL[word] if after in _AFTER_WILL else None
    if word not in _IS:
        return None
    doing = after.endswith("ing") and len(after) > 4 and after not in _NO_DOINGS
    followed = doing if word == "were" else doing or after in _AFTER_IS
    return _IS[word] if followed else None
