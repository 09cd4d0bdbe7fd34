"""How alike two stretches of speech sound, judged by their spelling. Pure.

Half the score is letters, half a sound code: the code alone finds "in quell lane" for Inkwell
Lane and far too much else, letters alone miss it.
"""

import re
from functools import lru_cache

import jellyfish
from rapidfuzz.fuzz import ratio


def sounds_like(heard: str, name: str) -> float:
    """0 (nothing alike) to 1 (the same), for stretches of about the same length."""
    letters_a, sound_a = _forms(heard)
    letters_b, sound_b = _forms(name)
    if not letters_a or not letters_b:
        return 0.0
    return (ratio(letters_a, letters_b) + ratio(sound_a, sound_b)) / 200


@lru_cache(maxsize=20_000)
def _forms(text: str) -> tuple[str, str]:
    """Letters without gaps, and their Metaphone code (Philips 1990) as one word."""
    plain = re.sub(r"['\u2019]s\b", "s", text.lower())
    letters = re.sub(r"[^a-z0-9]", "", plain)
    return letters, jellyfish.metaphone(letters)
