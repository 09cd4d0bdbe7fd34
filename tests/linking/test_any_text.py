"""Whatever is said, the outcome is a sound document."""

import tomllib
from datetime import date
from importlib import resources

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from diary.evaluation.measure import measure
from diary.linking.document import Clip, Observation, PlantKind
from diary.linking.read import read_talk
from diary.reading.known import Known
from diary.reading.vocabulary import load_vocabulary
from diary.speech.transcript import Transcript, Word
from tests.reading.said import NAMES, NUMBERS, on_record, said

# Words that rules listen for, so that chance puts cues beside each other in every order.
_TALK = """
    this is next back to the one a an and no not it's isn't there's here's what's then
    came like sister of by times crossed
    with selfed sport bee-pollinated five four and half inches centimetres mm across tall
    about pink salmon pale dark blotch throat edge petals upper leaf zone eye double frilled
    compact keep bin cutting cuttings three heads buds seeds sown came up rust scented early
    twenty-three oh 23-04 23 04 2304 dash double label number lost wish if was last year
    second of May ninth ? . , — … well actually rather sorry between to two for 2p 50p
    Fenmarsh Lad Copper Lantern tilly marsh 1/2 ½ 3.5 99999999 0 £4.50 31° 10% it
"""


_WORDS = st.one_of(
    st.sampled_from(_TALK.split()),
    st.text(min_size=1, max_size=12).filter(lambda text: text.split() == [text]),
    st.integers(min_value=0, max_value=10**9).map(str),
    st.sampled_from(("x" * 5000, "-" * 60, "'", "''s", "n't", "½½", "٣٤", "ß", "́", "🌸")),
)
_PARTS = frozenset(
    tomllib.loads(resources.files("diary.data").joinpath("parts.toml").read_text(encoding="utf-8"))
)


@st.composite
def transcripts(draw: st.DrawFn) -> Transcript:
    """Odd words with times that never fall, cut into segments anywhere."""
    texts = draw(st.lists(_WORDS, max_size=60))
    words, now = [], draw(st.integers(min_value=0, max_value=5000))
    for text in texts:
        end = now + draw(st.integers(min_value=1, max_value=900))
        confidence = draw(st.none() | st.floats(min_value=0, max_value=1))
        words.append(Word(text=text, start_ms=now, end_ms=end, confidence=confidence))
        now = end + draw(st.sampled_from((0, 0, 0, 40, 2500)))
    cuts = draw(st.sets(st.integers(min_value=0, max_value=max(len(texts) - 1, 0))))
    starts = tuple(sorted({0, *cuts})) if texts else ()
    return Transcript(words=tuple(words), segment_starts=starts, duration_ms=now)


def _check(transcript: Transcript, known: Known, recorded: date | None) -> None:
    reading = read_talk(transcript, load_vocabulary(), known, recorded=recorded)
    end_ms, last = transcript.duration_ms or 0, 0
    for clip in reading.clips:
        assert last <= clip.start_ms <= clip.end_ms <= end_ms
        last = clip.end_ms
        _check_plant(clip)
        for o in (*clip.observations, *clip.proposals):
            assert clip.start_ms <= o.start_ms <= o.end_ms <= clip.end_ms
            assert o.text in transcript.text
            assert o.text == transcript.quote(o.first_word, o.last_word)
            assert 0 <= o.confidence <= 1
            _check_value(o)
    for suggestion in reading.suggestions:
        assert suggestion.text in transcript.text
        assert 0 <= suggestion.start_ms <= suggestion.end_ms <= end_ms


def _check_plant(clip: Clip) -> None:
    plant = clip.plant
    given_names = [name for name in (plant.number, plant.name, plant.label) if name is not None]
    assert len(given_names) == 1
    assert given_names[0]
    by_kind = {
        PlantKind.SEEDLING: plant.number,
        PlantKind.CULTIVAR: plant.name,
        PlantKind.UNNAMED: plant.label,
    }
    assert by_kind[plant.kind] == given_names[0]


def _check_value(o: Observation) -> None:
    scale = measure()
    assert o.trait in scale.family
    if o.trait == "colour":
        known_colours = set(_labels("colours"))
        assert o.value in known_colours
        assert set(o.modifiers) <= known_colours | set(_labels("modifiers"))
        assert o.part in _PARTS
    elif o.trait in scale.terms:
        assert o.value in scale.terms[o.trait]
    elif o.trait in scale.lengths:
        assert isinstance(o.value, int | float)
        assert o.value > 0
        assert o.unit == "mm"
    elif o.trait.startswith("count_"):
        assert isinstance(o.value, int)
        assert o.value >= 0
        assert o.unit == "count"
    else:  # a plant
        assert isinstance(o.value, str)
        assert o.value.strip()


def _labels(table: str) -> tuple[str, ...]:
    data = tomllib.loads(
        resources.files("diary.data").joinpath("colours.toml").read_text(encoding="utf-8")
    )
    return tuple(data["words" if table == "colours" else table])


_PATIENT = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow])


@_PATIENT
@given(transcripts())
def test_any_text_without_a_register_gives_a_sound_document(transcript: Transcript) -> None:
    _check(transcript, Known(), None)


@_PATIENT
@given(transcripts(), st.sampled_from(NUMBERS), st.none() | st.just(date(2031, 6, 2)))
def test_any_text_with_a_register_gives_a_sound_document(
    transcript: Transcript, number: str, recorded: date | None
) -> None:
    _check(transcript, on_record((number, *NUMBERS), NAMES), recorded)


@_PATIENT
@given(
    transcripts(), st.sampled_from(("R23/104", "17B", "2311", "24/6/3", "2029/14", "K12", "9.12"))
)
def test_any_text_with_any_format_of_number_gives_a_sound_document(
    transcript: Transcript, number: str
) -> None:
    _check(transcript, on_record((number,), NAMES), date(2031, 6, 2))


@pytest.mark.parametrize("digit", ["²", "①", "4²"])
def test_odd_digits_give_a_sound_document(digit: str) -> None:
    _check(said(f"This is {digit} and it is pink."), on_record(), None)


@pytest.mark.parametrize("size", ["1/2 0 inches", "0 0 mm", "1/0 inch", "0 to 0 cm across"])
def test_sizes_of_nothing_give_a_sound_document(size: str) -> None:
    _check(said(f"This is 23-04. {size}"), on_record(), None)
