"""An amount as it is spoken: no figure runs over a full stop or a comma.

"I sowed all twenty. Three came" holds twenty and three, not twenty-three.
"""

from diary.reading.numerals import Quantity, quantity
from diary.reading.tokens import COMMA, QUERY, STOP, Talk


def amount_at(talk: Talk, at: int) -> Quantity | None:
    """The longest amount that begins at the token and ends before the next mark."""
    amount = quantity(talk.texts, at)
    if amount is None or amount.end - at < 2:
        return amount
    for i in range(at, amount.end - 1):
        if talk.tokens[i].mark in (STOP, QUERY, COMMA):
            return quantity(talk.texts[: i + 1], at)
    return amount
