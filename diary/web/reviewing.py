"""The review list: one question after another, dearest first, each answered by one key."""

from dataclasses import dataclass

from starlette.requests import Request
from starlette.responses import Response

from diary.errors import NotFound, UsageError
from diary.linking.document import PlantKind
from diary.records.corrections import (
    Change,
    Confirm,
    Dismiss,
    MergePlants,
    Reject,
    RemoveClip,
    Seen,
    Withdraw,
)
from diary.records.journal import correct
from diary.records.record import Moment, Span
from diary.records.review import ReviewItem
from diary.records.store import Store
from diary.records.suggestions import accept
from diary.web.desk import as_json, desk_of, json_of
from diary.web.events import asked
from diary.web.shown import shelf_of

AT_ONCE = 40  # questions sent to the page: nobody answers more without a pause


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """One way to answer: `say` is what the page posts, `key` the key that does it."""

    key: str
    say: str
    words: str
    choice: str = ""


def answers(item: ReviewItem) -> tuple[Answer, ...]:
    """The answers to offer, likeliest first; every question can be left or needs none."""
    found: list[Answer] = []
    if item.kind == "plant":
        for number, choice in enumerate(item.choices[:4], start=1):
            found.append(Answer(key=str(number), say="plant", words=choice, choice=choice))
        other = "another plant …" if item.choices else "its number or name …"
        found.append(Answer(key="g", say="other plant", words=other))
        found.append(Answer(key="x", say="no clip", words="no plant at all"))
    elif item.kind == "same":
        found.append(Answer(key="y", say="same", words="the same plant"))
        found.append(Answer(key="x", say="leave", words="two plants"))
    elif item.kind in ("decision", "value"):
        found.append(Answer(key="y", say="right", words="right"))
        found.append(Answer(key="x", say="wrong", words="not so"))
        found.append(Answer(key="v", say="other value", words="something else …"))
    elif item.kind == "conflict":
        found.append(Answer(key="y", say="leave", words=f"leave it at {item.choices[0]}"))
        if item.other is not None:
            found.append(Answer(key="x", say="reject other", words="the other is wrong"))
        found.append(Answer(key="z", say="reject this", words="this is wrong"))
    elif item.kind in ("number", "register"):
        found.append(Answer(key="y", say="accept", words="put it on record"))
        if item.kind == "number":
            found.append(Answer(key="g", say="other plant", words="another plant …"))
    elif item.kind == "unplaced":
        found.append(Answer(key="x", say="withdraw", words="take the correction back"))
    if not any(answer.say == "leave" for answer in found):
        found.append(Answer(key="q", say="leave", words="no answer needed"))
    return tuple(found)


def page(request: Request) -> Response:
    """The list; empty, it says so."""
    desk = desk_of(request)
    with desk.store() as store:
        items = desk.review(store)
        shown = items[:AT_ONCE]
        moments = [m for item in shown for m in (item.moment, item.other)]
        shelf = shelf_of(store, moments)
    return desk.page(
        request,
        "review.html",
        items=[(item, answers(item)) for item in shown],
        total=len(items),
        shelf=shelf,
    )


def answer(request: Request) -> Response:
    """Take one answer: {"id": ..., "say": ..., "choice": ...}."""
    body = json_of(request)
    desk = desk_of(request)
    with desk.store() as store:
        items = desk.review(store)
        item = next((one for one in items if one.id == body.get("id")), None)
        if item is None:
            raise NotFound("That question has been answered already.")
        _answer(store, item, str(body.get("say")), str(body.get("choice") or ""))
        left = len(desk.review(store))
    return as_json({"left": left})


def _answer(store: Store, item: ReviewItem, say: str, choice: str) -> None:
    if say == "leave":
        correct(store, Dismiss(question=item.id))
    elif say == "accept" and item.suggestion is not None:
        accept(store, item.suggestion.id)
    elif say == "withdraw" and item.correction is not None:
        correct(store, Withdraw(of=item.correction.id))
    elif say in ("plant", "other plant") and item.moment is not None:
        _give(store, item, choice)
    else:
        change, moment = _change(item, say)
        record = item.record
        trait = record.trait if record else None
        if record is None and item.kind == "conflict":
            trait = item.id.split(":")[2]  # conflict:PLANT:TRAIT:PART:TEXT
        seen = Seen(
            trait=trait,
            value=record.value if record else None,
            part=record.part if record else None,
            plant=item.plant.title if item.plant else None,
        )
        correct(store, change, at=_span(moment), seen=seen)


def _give(store: Store, item: ReviewItem, title: str) -> None:
    """The clip's plant: said to be right, or given to another; an unnumbered one gets a name."""
    clip = item.clip
    moment = clip.moment if clip is not None else item.moment
    if moment is None:
        raise UsageError("This question has no place in a recording.")
    plant = item.plant
    if plant is not None and title in (plant.title, plant.key):
        correct(store, Confirm(), at=_span(moment), seen=Seen(plant=plant.title))
        return
    follows = plant is not None and plant.kind is PlantKind.UNNAMED
    event = {"kind": "NamePlant" if follows else "SetSeedling", "change": {"title": title}}
    seen = Seen(plant=plant.title if plant else None)
    correct(store, asked(store, event).change, at=_span(moment), seen=seen)


def _change(item: ReviewItem, say: str) -> tuple[Change, Moment]:
    moment, other = item.moment, item.other
    if moment is not None:
        if say == "right":
            return Confirm(), moment
        if say in ("wrong", "reject this"):
            return Reject(), moment
        if say == "no clip":
            return RemoveClip(), item.clip.moment if item.clip else moment
        if say == "same" and other is not None:
            return MergePlants(other=_span(other)), moment
    if say == "reject other" and other is not None:
        return Reject(), other
    raise UsageError(f"{say!r} is no answer to this question.")


def _span(moment: Moment) -> Span:
    return Span(recording=moment.recording, start_ms=moment.start_ms, end_ms=moment.end_ms)
