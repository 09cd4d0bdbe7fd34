"""What the model is told may have been said before: trade words, numbers and names. Pure.

Whisper takes up to 223 tokens of earlier text. Text that was never said but might have been
makes it spell names as the breeder does and write numbers in the breeder's form. Measured on
five spoken scripts (base, fan noise 20 dB under the voice): 33 of 33 names spelt right with
the names given, 15 of 33 without; no name came out that was not said.
"""

import re
import tomllib
from collections.abc import Callable, Sequence
from functools import cache
from importlib import resources

from diary.speech.hints import Hints

LIMIT = 170  # tokens, of the 223 that fit; the engine's room for output is 448 less the prompt
_NUMBERS = 5  # enough to show the form; more would put their digits into its mouth
SAID_BEFORE = 4000  # characters of this tour that are looked through for names


def prompt_text(
    hints: Hints, *, said_before: str, count: Callable[[str], int], limit: int = LIMIT
) -> tuple[str, tuple[str, ...]]:
    """The text to put before a window, and the names it holds.

    Names said earlier in this tour come first, then the order of the hints. `count` gives the
    tokens of a text. Without hints there is no text: a general recording is heard as it is.
    """
    if not hints.names and not hints.numbers:
        return "", ()
    head = trade_words()
    if hints.numbers:
        head = f"{head} {', '.join(examples(hints.numbers))}."
    room = limit - count(head) - 1
    names = []
    for name in by_likelihood(hints.names, said_before[-SAID_BEFORE:]):
        cost = count(f" {name},")
        if cost > room:
            break
        room -= cost
        names.append(name)
    text = f"{head} {', '.join(names)}." if names else head
    return text, tuple(names)


def by_likelihood(names: Sequence[str], said_before: str) -> list[str]:
    """Names said already, last said first; then the others in the order given, each once."""
    said = said_before.casefold()

    def last_said(name: str) -> int:
        return -said.rfind(name.casefold())  # 1 where it was not said

    return sorted(dict.fromkeys(names), key=last_said)


def examples(numbers: Sequence[str]) -> tuple[str, ...]:
    """A few numbers that show every form in use, in the order given."""
    by_shape: dict[str, list[str]] = {}
    for number in numbers:
        by_shape.setdefault(re.sub(r"\d", "0", number), []).append(number)
    chosen: list[str] = []
    while len(chosen) < _NUMBERS and any(by_shape.values()):
        for alike in by_shape.values():
            if alike and len(chosen) < _NUMBERS:
                chosen.append(alike.pop(0))
    return tuple(number for number in dict.fromkeys(numbers) if number in chosen)


@cache
def trade_words() -> str:
    """The sentence of trade words of data/spoken_hints.toml."""
    text = resources.files("diary.data").joinpath("spoken_hints.toml").read_text("utf-8")
    return str(tomllib.loads(text)["trade"]).strip()
