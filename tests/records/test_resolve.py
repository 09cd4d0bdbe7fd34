"""Corrections laid over readings: what wins, what finds its place, what is never dropped."""

import itertools

from hypothesis import given
from hypothesis import strategies as st

from diary.linking.document import Band, Clip, Observation, PlantKind, Reading
from diary.records.corrections import (
    Add,
    AddClip,
    Change,
    Confirm,
    Correction,
    GiveName,
    Join,
    MergePlants,
    Mishearing,
    NamePlant,
    Reject,
    RemoveClip,
    Renumber,
    Seen,
    SetDate,
    SetPart,
    SetSeedling,
    SetSpan,
    SetTrait,
    SetUnit,
    SetValue,
    Split,
    Withdraw,
    from_line,
    live,
    to_line,
)
from diary.records.record import Origin, Record, RecordClip, Span
from diary.records.resolve import Resolved, resolve
from diary.speech.transcript import Transcript
from tests.records.making import (
    JUNE_20,
    RECORDING,
    clip,
    event,
    observation,
    seedling,
    talk,
    unnamed,
)

SIZE = observation("bloom_diameter", 80, 2000, 4000, unit="mm", text="eight centimetres")
BLOTCH = observation("colour", "maroon", 5000, 6000, part="blotch", modifiers=("dark",))
ONE = clip(seedling("23-04"), 0, 10_000, SIZE, BLOTCH)
TWO = clip(seedling("23-05"), 10_000, 20_000, observation("decision", "keep", 12_000, 13_000))
READING = Reading(clips=(ONE, TWO))
WORDS = talk("word " * 40)


def laid(reading: Reading, *events: Correction, words: Transcript = WORDS) -> Resolved:
    return resolve(reading, events, recording=RECORDING, transcript=words)


def records(resolved: Resolved) -> list[Record]:
    return [record for one in resolved.clips for record in one.records]


def size(resolved: Resolved) -> Record:
    return next(one for one in records(resolved) if one.trait == "bloom_diameter")


def plants(resolved: Resolved) -> list[str]:
    return [one.plant.key for one in resolved.clips]


def test_without_corrections_the_reading_stands() -> None:
    resolved = laid(READING)
    assert plants(resolved) == ["23-04", "23-05"]
    assert [one.origin for one in records(resolved)] == [Origin.HEARD] * 3
    assert resolved.clips[0].moment.text == " ".join(["word"] * 20)


def test_a_corrected_value_keeps_what_was_heard() -> None:
    resolved = laid(READING, event(1, SetValue(value=45), 2000, 4000))
    assert size(resolved).value == 45
    assert size(resolved).heard is not None
    assert size(resolved).heard.value == 80  # type: ignore[union-attr]
    assert size(resolved).origin is Origin.CORRECTED
    assert size(resolved).corrections == ("000001",)
    assert resolved.applied == ("000001",)


def test_the_last_word_per_field_wins_whatever_order_events_come_in() -> None:
    first, second = (
        event(1, SetValue(value=45), 2000, 4000),
        event(2, SetValue(value=50), 2000, 4000),
    )
    other = event(3, SetTrait(trait="head_diameter"), 2000, 4000)
    resolved = laid(READING, second, other, first)
    changed = records(resolved)[0]
    assert (changed.trait, changed.value) == ("head_diameter", 50)


def test_undo_is_an_event_and_redo_undoes_it() -> None:
    change = event(1, SetValue(value=45), 2000, 4000)
    undo, redo = event(2, Withdraw(of="000001")), event(3, Withdraw(of="000002"))
    assert size(laid(READING, change, undo)).value == 80
    assert size(laid(READING, change, undo, redo)).value == 45


def test_correction_follows_its_observation_when_borders_move() -> None:
    moved = Reading(
        clips=(
            clip(
                seedling("23-04"),
                0,
                10_000,
                observation("bloom_diameter", 80, 2500, 4600, unit="mm"),
                observation("colour", "maroon", 4700, 6000, part="blotch"),
            ),
        )
    )
    resolved = laid(moved, event(1, SetValue(value=45), 2000, 4000))
    assert size(resolved).value == 45


def test_what_the_screen_showed_decides_between_equals() -> None:
    same_words = Reading(
        clips=(
            clip(
                seedling("23-04"),
                0,
                10_000,
                observation("count_seeds_sown", 12, 2000, 4000, unit="count"),
                observation("count_germinated", 1, 2000, 4000, unit="count"),
            ),
        )
    )
    seen = Seen(trait="count_germinated", value=1)
    changed = laid(same_words, event(1, SetValue(value=2), 2000, 4000, seen=seen))
    assert [(one.trait, one.value) for one in records(changed)] == [
        ("count_seeds_sown", 12),
        ("count_germinated", 2),
    ]
    assert not any(one.doubtful for one in records(changed))
    blind = laid(same_words, event(1, SetValue(value=2), 2000, 4000))
    assert any(one.doubtful for one in records(blind))


def test_a_value_nobody_hears_any_more_becomes_a_record_of_its_own() -> None:
    silent = Reading(clips=(clip(seedling("23-04"), 0, 10_000),))
    seen = Seen(trait="bloom_diameter", value=80)
    resolved = laid(silent, event(1, SetValue(value=45), 2000, 4000, seen=seen))
    assert [(one.trait, one.value, one.origin) for one in records(resolved)] == [
        ("bloom_diameter", 45, Origin.ADDED)
    ]


def test_what_fits_nowhere_is_listed() -> None:
    resolved = laid(READING, event(1, Reject(), 60_000, 61_000))
    assert (resolved.applied, resolved.unplaced) == ((), ("000001",))


def test_an_addition_outside_every_clip_needs_a_plant() -> None:
    add = Add(trait="scent", value="scented")
    assert laid(READING, event(1, add, 30_000, 31_000)).unplaced == ("000001",)
    placed = laid(READING, event(1, add, 30_000, 31_000, seen=Seen(plant="23-09")))
    assert plants(placed) == ["23-04", "23-05", "23-09"]


def test_a_rejected_observation_is_gone_and_can_be_confirmed_again() -> None:
    gone = laid(READING, event(1, Reject(), 5000, 6000))
    assert [one.trait for one in records(gone)] == ["bloom_diameter", "decision"]
    back = laid(
        READING,
        event(1, Reject(), 5000, 6000),
        event(2, Confirm(), 5000, 6000, seen=Seen(trait="colour")),
    )
    assert "colour" in [one.trait for one in records(back)]


def test_a_confirmed_proposal_counts() -> None:
    proposal = observation("scent", "scented", 7000, 8000, band=Band.UNSURE)
    reading = Reading(clips=(clip(seedling("23-04"), 0, 10_000, proposals=(proposal,)),))
    assert records(laid(reading)) == []
    confirmed = laid(reading, event(1, Confirm(), 7000, 8000, seen=Seen(trait="scent")))
    assert [(one.value, one.band) for one in records(confirmed)] == [("scented", Band.SURE)]


def test_inches_taken_for_centimetres() -> None:
    # the international inch: 25.4 mm exactly (yard and pound agreement of 1959)
    heard = observation("bloom_diameter", 30, 2000, 4000, unit="mm", text="three centimetres")
    reading = Reading(clips=(clip(seedling("23-04"), 0, 10_000, heard),))
    assert size(laid(reading, event(1, SetUnit(unit="in"), 2000, 4000))).value == 76.2
    told = laid(reading, event(1, SetUnit(unit="in", was="mm"), 2000, 4000))
    assert size(told).value == 762


def test_clip_events() -> None:
    other = PlantKind.SEEDLING
    assert plants(laid(READING, event(1, SetSeedling(kind=other, title="23-09"), 0, 10_000))) == [
        "23-09",
        "23-05",
    ]
    assert plants(laid(READING, event(1, RemoveClip(), 0, 10_000))) == ["23-05"]
    split = laid(READING, event(1, Split(at_ms=4500, kind=other, title="23-09"), 0, 10_000))
    assert plants(split) == ["23-04", "23-09", "23-05"]
    assert [one.trait for one in split.clips[1].records] == ["colour"]
    joined = laid(READING, event(1, Join(), 0, 20_000))
    assert [(one.moment.start_ms, one.moment.end_ms) for one in joined.clips] == [(0, 20_000)]
    added = laid(READING, event(1, AddClip(kind=other, title="23-09"), 3000, 5000))
    assert plants(added) == ["23-04", "23-09", "23-04", "23-05"]
    dated = laid(READING, event(1, SetDate(day=JUNE_20), 0, 10_000))
    assert dated.clips[0].records[0].moment.day == JUNE_20
    moved = laid(READING, event(1, SetSpan(start_ms=0, end_ms=14_000), 0, 10_000))
    assert [one.trait for one in moved.clips[0].records] == ["bloom_diameter", "colour", "decision"]


def test_a_split_that_is_read_by_now_is_no_second_split() -> None:
    split = event(1, Split(at_ms=10_400, kind=PlantKind.SEEDLING, title="23-09"), 0, 20_000)
    assert plants(laid(READING, split)) == ["23-04", "23-09"]


def test_naming_an_unnumbered_plant_names_all_its_clips() -> None:
    reading = Reading(
        clips=(
            clip(unnamed("pink one"), 0, 5000),
            clip(seedling("23-05"), 5000, 9000),
            clip(unnamed("pink one"), 9000, 12_000),
            clip(unnamed("white one"), 12_000, 15_000),
        )
    )
    name = NamePlant(kind=PlantKind.SEEDLING, title="23-77")
    assert plants(laid(reading, event(1, name, 9000, 12_000))) == [
        "23-77",
        "23-05",
        "23-77",
        "?aaaaaaaa/white one",
    ]


TRAITS = st.sampled_from(["colour", "bloom_diameter", "decision", "habit"])
TIMES = st.integers(0, 40_000)


@st.composite
def observations(draw: st.DrawFn, start: int, end: int) -> Observation:
    first = draw(st.integers(start, end - 1))
    last = draw(st.integers(first + 1, end))
    value = draw(st.sampled_from(["red", "keep", 45, 80]))
    return observation(draw(TRAITS), value, first, last, text="three inches")


@st.composite
def readings(draw: st.DrawFn) -> Reading:
    borders = sorted(draw(st.sets(TIMES, max_size=8)))
    clips: list[Clip] = []
    for start, end in itertools.pairwise(borders):
        if draw(st.booleans()):
            plant = draw(st.sampled_from([seedling("1-1"), seedling("1-2"), unnamed("a")]))
            said = draw(st.lists(observations(start, end), max_size=3))
            some = draw(st.lists(observations(start, end), max_size=1))
            clips.append(clip(plant, start, end, *said, proposals=tuple(some)))
    return Reading(clips=tuple(clips))


def changes(count: int) -> st.SearchStrategy[Change]:
    seedlings = st.just(PlantKind.SEEDLING)
    titles = st.sampled_from(["1-1", "1-2", "1-3"])
    return st.one_of(
        st.builds(SetSeedling, kind=seedlings, title=titles),
        st.builds(SetTrait, trait=TRAITS),
        st.builds(SetPart, part=st.sampled_from([None, "throat"])),
        st.builds(SetUnit, unit=st.sampled_from(["mm", "in", "league"])),
        st.builds(SetValue, value=st.sampled_from(["pink", 12])),
        st.builds(SetSpan, start_ms=TIMES, end_ms=TIMES),
        st.builds(Reject),
        st.builds(Confirm),
        st.builds(Add, trait=TRAITS, value=st.just("red")),
        st.builds(Split, at_ms=TIMES, kind=seedlings, title=titles),
        st.builds(Join),
        st.builds(AddClip, kind=seedlings, title=titles),
        st.builds(RemoveClip),
        st.builds(SetDate, day=st.just(JUNE_20)),
        st.builds(NamePlant, kind=seedlings, title=titles),
        st.builds(MergePlants, into=titles),
        st.builds(Mishearing, heard=st.just("fend marsh"), meant=st.just("Fenmarsh Lad")),
        st.builds(Renumber, number=titles, to=titles),
        st.builds(GiveName, number=titles, name=st.just("Quill Harbour")),
        st.builds(Withdraw, of=st.integers(0, count).map(lambda n: f"{n:06d}")),
    )


@st.composite
def journals(draw: st.DrawFn) -> tuple[Correction, ...]:
    count = draw(st.integers(0, 8))
    made = []
    for number in range(count):
        start, end = sorted((draw(TIMES), draw(TIMES)))
        seen = draw(
            st.builds(
                Seen,
                trait=st.sampled_from([None, "colour", "habit"]),
                value=st.sampled_from([None, "red", 45]),
                plant=st.sampled_from([None, "1-1"]),
            )
        )
        placed = draw(st.booleans()) or None
        made.append(event(number, draw(changes(count)), placed and start, end, seen=seen))
    return tuple(made)


@given(readings(), readings(), journals())
def test_each_live_event_is_applied_or_unplaced_and_never_both(
    first: Reading, again: Reading, journal: tuple[Correction, ...]
) -> None:
    standing = {one.id for one in live(journal)}
    for reading in (first, again):
        resolved = laid(reading, *journal)
        assert sorted([*resolved.applied, *resolved.unplaced]) == sorted(standing)
        assert_clips_in_order(resolved.clips)


def assert_clips_in_order(clips: tuple[RecordClip, ...]) -> None:
    for before, after in itertools.pairwise(clips):
        assert before.moment.start_ms < before.moment.end_ms
        assert before.moment.end_ms <= after.moment.start_ms


@given(readings(), journals())
def test_export_then_import_gives_the_same_records(
    reading: Reading, journal: tuple[Correction, ...]
) -> None:
    carried = [from_line(to_line(one)) for one in journal]
    assert carried == list(journal)
    assert laid(reading, *carried) == laid(reading, *journal)


def test_span_overlap() -> None:
    span = Span(recording=RECORDING, start_ms=1000, end_ms=2000)
    assert (span.overlap(1500, 5000), span.overlap(2000, 3000)) == (500, 0)
