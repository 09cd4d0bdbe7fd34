"""`diary evaluate`: how well talk is understood, against answers or your own corrections."""

import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from diary.cli.context import diary_folder, folder_option, json_option
from diary.cli.listening import listening_options
from diary.cli.output import clock, echo_json, table

if TYPE_CHECKING:
    from diary.evaluation.corrected import CommonChange, Corrected
    from diary.evaluation.run import Evaluation
    from diary.speech.settings import SpeechSettings

_MOST_MISTAKES = 15


@click.command("evaluate")
@click.argument("folder", type=click.Path(path_type=Path), required=False, metavar="[FOLDER]")
@click.option(
    "--audio",
    type=click.Path(path_type=Path),
    metavar="DIR",
    help="Hear the scripts: DIR/ID.opus with DIR/ID.times.json.",
)
@listening_options
@click.option(
    "--vocabulary", type=click.Path(path_type=Path), help="Folder of vocabulary files of your own."
)
@click.option("--show", is_flag=True, help="List every mistake with its words.")
@folder_option
@json_option
def evaluate_command(
    folder: Path | None,
    audio: Path | None,
    speech: "SpeechSettings | None",
    vocabulary: Path | None,
    show: bool,
    diary: Path | None,
    as_json: bool,
) -> None:
    """How well is your talk understood?

    With FOLDER, every gold script in it (a walk-round written down with its answers) is
    read and scored. Without, your own corrections tell: how often a size, a colour or a
    plant had to be put right.

    \b
    Example:  diary evaluate tests/gold/dev --show
              diary evaluate
    """
    if folder is None:
        rows, common = _own(diary or diary_folder(click.get_current_context()))
        if as_json:
            echo_json({"corrected": [_with_share(row) for row in rows], "commonest": common})
        else:
            click.echo(_own_told(rows, common))
        return
    from diary.evaluation.run import evaluate

    outcome = evaluate(
        folder,
        audio=audio,
        speech=speech,
        vocabulary=vocabulary,
        report=_progress(audio is not None),
    )
    if as_json:
        echo_json(_figures(outcome))
    else:
        if show:
            click.echo(_every_mistake(outcome))
        click.echo(_told(outcome))
    for problem in outcome.problems:
        click.echo(f"Not scored: {problem}", err=True)
    if outcome.problems:
        raise click.exceptions.Exit(1)


def _progress(hearing: bool) -> Callable[[str, float | None], None]:
    """A line on a terminal while recordings are listened to; nothing else takes long."""
    if not hearing or not sys.stderr.isatty():
        return lambda script, share: None

    def report(script: str, share: float | None) -> None:
        done = f"{100 * share:3.0f} %" if share is not None else "      "
        click.echo(f"\rlistening to {script} {done} ", err=True, nl=False)

    return report


def _told(outcome: "Evaluation") -> str:
    """The figures in words and tables."""
    score = outcome.score
    rows = [
        [name, *(_hundred(x) for x in (t.precision, t.recall, t.f1)), f"{t.right:g} of {t.asked:g}"]
        for name, t in [*score.families.items(), ("all", score.all), ("link", score.link)]
    ]
    parts = [
        f"{len(outcome.scripts)} scripts. Of what was noticed so much is right, of what was said"
        " so much was noticed, and both in one figure (F1), in per cent:\n",
        table(["what", "right", "noticed", "F1", "answers"], rows),
        "\nlink: half seconds of talk given to the right plant.",
        *(
            f"{words}: {_hundred(one.share)} % ({one.right:g} of {one.of:g})"
            for words, one in (
                ("Clips that begin where they should", score.jumps),
                ("Days of clips", score.days),
                ("Shades of a colour (dark, pale ...)", score.modifiers),
            )
        ),
        "\nHow far it can be believed:\n",
        table(
            ["what", "said to be", "told", "wrong", "share", "at most"],
            [
                [
                    b.what,
                    _BANDS[b.band.value],
                    str(b.told),
                    str(b.wrong),
                    f"{_hundred(b.share)} %",
                    f"{_hundred(b.aim)} %",
                ]
                for b in outcome.bands
            ],
        ),
    ]
    if outcome.commonest:
        parts += [
            "\nThe commonest mistakes:\n",
            table(
                ["times", "what", "what went wrong", "rule", "for example"],
                [
                    [
                        str(c.times),
                        c.trait.replace("_", " "),
                        c.kind.value,
                        c.rule or "-",
                        c.example.words or f"{c.example.asked}, told as {c.example.told}",
                    ]
                    for c in outcome.commonest[:_MOST_MISTAKES]
                ],
            ),
        ]
    return "\n".join(parts)


_BANDS = {"sure": "sure", "likely": "likely", "unsure": "proposed"}


def _every_mistake(outcome: "Evaluation") -> str:
    rows = [
        [
            m.script,
            clock(m.at_ms),
            m.plant,
            m.trait.replace("_", " "),
            m.kind.value,
            m.asked or "-",
            m.told or "-",
            m.words,
        ]
        for m in outcome.mistakes
    ]
    return (
        table(
            ["script", "at", "plant", "what", "what went wrong", "said", "noticed", "words"], rows
        )
        + "\n"
    )


def _figures(outcome: "Evaluation") -> dict[str, Any]:
    """The figures for programs, shares of 1."""
    score = outcome.score
    named = [*score.families.items(), ("all", score.all), ("link", score.link)]
    figures: dict[str, Any] = {
        name: {
            "precision": round(t.precision, 4),
            "recall": round(t.recall, 4),
            "f1": round(t.f1, 4),
        }
        for name, t in named
    }
    for name, share in (
        ("jumps", score.jumps.share),
        ("dates", score.days.share),
        ("modifiers", score.modifiers.share),
    ):
        figures[name] = None if share is None else round(share, 4)
    return {
        "figures": figures,
        "scripts": {
            one.script: {"f1": round(one.score.all.f1, 3), "link": round(one.score.link.f1, 3)}
            for one in outcome.scripts
        },
        "bands": [_with_share(band) for band in outcome.bands],
        "commonest": outcome.commonest,
        "mistakes": outcome.mistakes,
        "problems": outcome.problems,
    }


def _own(folder: Path | None) -> "tuple[tuple[Corrected, ...], tuple[CommonChange, ...]]":
    """What the corrections of the diary say."""
    from diary.evaluation.corrected import corrected
    from diary.records.journal import journal
    from diary.records.recordings import clips, recordings
    from diary.records.store import open_store
    from diary.settings import settings

    store = open_store(settings(folder).folder, create=False)
    try:
        everything = [clip for one in recordings(store) for clip in clips(store, one.id)]
        applied = [e.correction for e in journal(store) if e.state == "applied"]
        return corrected(everything, applied)
    finally:
        store.close()


def _own_told(rows: "tuple[Corrected, ...]", common: "tuple[CommonChange, ...]") -> str:
    if not any(row.heard or row.added for row in rows):
        return "Nothing was heard yet in this diary. `diary add FILE` adds a recording."
    parts = [
        "What was heard in this diary, and how often you put it right:\n",
        table(
            ["what", "heard", "confirmed", "changed", "taken out", "put right", "added by you"],
            [
                [
                    row.what,
                    str(row.heard),
                    str(row.confirmed),
                    str(row.changed),
                    str(row.taken_out),
                    f"{_hundred(row.share)} %",
                    str(row.added),
                ]
                for row in rows
            ],
        ),
        "\nlink: clips, and the plant each was given to.",
    ]
    if common:
        parts += [
            "\nPut right most often:\n",
            table(
                ["times", "what", "rule", "for example"],
                [
                    [str(c.times), c.trait.replace("_", " "), c.rule or "-", c.example]
                    for c in common[:_MOST_MISTAKES]
                ],
            ),
        ]
    return "\n".join(parts)


def _with_share(row: Any) -> dict[str, Any]:
    """The fields of a row, and its share."""
    from diary.cli.output import plain

    share = row.share
    return {**plain(row), "share": None if share is None else round(share, 4)}


def _hundred(share: float | None) -> str:
    return "-" if share is None else f"{100 * share:.1f}"
