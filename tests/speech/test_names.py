"""What the model is told, and when a name is believed."""

from diary.speech.hints import NO_HINTS, Hints
from diary.speech.likeness import sounds_like
from diary.speech.prompting import by_likelihood, examples, prompt_text
from diary.speech.second_look import candidates, suspects, weigh
from diary.speech.transcript import Word

NAMES = ("Inkwell Lane", "Merrowdown Silk", "Owlerby Clay", "Lady Wexcombe")


def heard(text: str, confidence: float = 0.4) -> tuple[Word, ...]:
    return tuple(
        Word(text=word, start_ms=n * 300, end_ms=n * 300 + 300, confidence=confidence)
        for n, word in enumerate(text.split())
    )


def count(text: str) -> int:
    return len(text.split())


def test_no_hints_no_text() -> None:
    assert prompt_text(NO_HINTS, said_before="anything", count=count) == ("", ())


def test_the_text_never_passes_the_limit_and_says_which_names_it_holds() -> None:
    hints = Hints(names=tuple(f"Cultivar Number{n}" for n in range(300)), numbers=("23-04",))
    for limit in (30, 60, 170):
        text, given = prompt_text(hints, said_before="", count=count, limit=limit)
        assert count(text) <= limit
        assert given == hints.names[: len(given)]
        assert all(name in text for name in given)


def test_names_said_in_this_tour_come_first() -> None:
    said = "first Owlerby Clay and then lady wexcombe"
    assert by_likelihood(NAMES, said)[:2] == ["Lady Wexcombe", "Owlerby Clay"]
    assert by_likelihood(NAMES, said)[2:] == ["Inkwell Lane", "Merrowdown Silk"]


def test_a_few_numbers_show_every_form_in_use() -> None:
    numbers = ("23-04", "23-05", "23-06", "23-07", "23-08", "23-09", "K12", "22-14A")
    assert examples(numbers) == ("23-04", "23-05", "23-06", "K12", "22-14A")


def test_names_as_base_hears_them_are_suspected() -> None:
    # What `base` wrote for these invented names, spoken by synthetic voices over fan noise.
    for text, name in (
        ("pollen was in quell lane again", "Inkwell Lane"),
        ("was narrowed down silk with", "Merrowdown Silk"),
        ("17 is Lady Wexcum with", "Lady Wexcombe"),
    ):
        found = suspects(heard(text), Hints(names=NAMES), given=())
        assert candidates(found)[0] == name


def test_sure_words_and_names_already_given_are_left_alone() -> None:
    hints = Hints(names=NAMES)
    assert suspects(heard("in quell lane", 0.95), hints, given=()) == ()
    assert suspects(heard("in quell lane"), hints, given=NAMES) == ()
    assert suspects(heard("it wants a bigger pot and some feed"), hints, given=()) == ()


def test_a_mishearing_is_suspected_wherever_it_occurs() -> None:
    hints = Hints(names=NAMES, mishearings=(("alibi clay", "Owlerby Clay"),))
    found = suspects(heard("very like alibi clay, in fact", 0.99), hints, given=NAMES)
    assert candidates(found) == ("Owlerby Clay",)


def test_a_name_is_taken_on_evidence_and_keeps_the_rest() -> None:
    first = heard("pollen was in quell lane, again")
    second = tuple(
        Word(text=text, start_ms=start, end_ms=end, confidence=0.5)
        for text, start, end in (
            ("pollen", 0, 300),
            ("was", 300, 600),
            ("Inkwell", 600, 1200),
            ("Lane", 1200, 1500),
            ("agen", 1500, 1800),
        )
    )
    words, swaps = weigh(first, second, ("Inkwell Lane",))
    assert " ".join(word.text for word in words) == "pollen was Inkwell Lane, again"
    assert (swaps[0].heard, swaps[0].taken) == ("in quell lane,", "Inkwell Lane")


def test_a_name_that_is_not_borne_out_is_not_taken() -> None:
    first = heard("pollen was in quell lane again", 0.9)
    unlike = (Word(text="Inkwell", start_ms=0, end_ms=300, confidence=0.6),)
    unlike += (Word(text="Lane", start_ms=300, end_ms=600, confidence=0.6),)
    words, swaps = weigh(first, unlike, ("Inkwell Lane",))
    assert words == first  # "pollen was" sounds like nothing of the sort
    assert swaps[0].taken == "pollen was"
    feeble = (Word(text="Inkwell", start_ms=600, end_ms=1200, confidence=0.001),)
    feeble += (Word(text="Lane", start_ms=1200, end_ms=1500, confidence=0.001),)
    assert weigh(first, feeble, ("Inkwell Lane",))[0] == first


def test_likeness_is_one_for_the_same_and_small_for_others() -> None:
    assert sounds_like("Inkwell Lane", "inkwell lane") == 1.0
    assert sounds_like("bigger pot", "Inkwell Lane") < 0.5
    assert sounds_like("", "Inkwell Lane") == 0.0
