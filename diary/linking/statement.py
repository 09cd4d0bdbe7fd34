"""What a rule has found, before it is given to a clip: a trait, its value and its words."""

from dataclasses import dataclass

from diary.linking.document import Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Statement:
    """One thing asserted at tokens start..end-1, with the rule that found it and its score.

    `about` is a plant's title where the statement is of another plant than the clip's;
    `firm` is False for what is only to be proposed for review.
    """

    trait: str
    value: Value
    start: int
    end: int
    rule: str
    score: float
    part: str | None = None
    unit: str | None = None
    modifiers: tuple[str, ...] = ()
    on: tuple[str, ...] = ()
    hedged: bool = False
    negated: bool = False
    firm: bool = True
    runner_up: str | None = None
    runner_up_score: float | None = None
