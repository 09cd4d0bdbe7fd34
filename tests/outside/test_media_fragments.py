"""Addresses of moments, against the W3C's Media Fragments URI 1.0 (25 September 2012).

The reader of fragments is first held against the W3C's own user-agent test cases (numbers
beside each; the medium is about 9.97 s long), then our addresses are put to it.
"""

from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diary.records.recordings import media_fragment
from tests.outside.fragments import fragment_time

LENGTH_S = 9.97
DAY_MS = 24 * 3600 * 1000

PLAYED = [
    ("t=3,7", 3, 7),  # TC0005
    ("t=3,15", 3, LENGTH_S),  # 0006
    ("t=15,20", LENGTH_S, LENGTH_S),  # 0009: beyond the end
    ("t=3", 3, LENGTH_S),  # 0011
    ("t=15", LENGTH_S, LENGTH_S),  # 0014
    ("t=,7", 0, 7),  # 0015
    ("t=,15", 0, LENGTH_S),  # 0017
    ("t=npt:3,7", 3, 7),  # 0024
    ("t=3%2C7", 3, 7),  # 0035
    ("t=%33", 3, LENGTH_S),  # 0036
    ("%74=3", 3, LENGTH_S),  # 0037
    ("t=7&t=3", 3, LENGTH_S),  # 0055
    ("t=3.", 3, LENGTH_S),  # 0072
    ("t=00:00:03,00:00:07", 3, 7),  # 0078
    ("t=3,00:00:07", 3, 7),  # 0079
    ("t=00:00.", 0, LENGTH_S),  # 0080
    ("t=0:00:00.", 0, LENGTH_S),  # 0081
    ("t=3,7&t=foo", 3, 7),  # 0085
    ("u=12&t=3", 3, LENGTH_S),
    ("&&t=3,7", 3, 7),
    ("t=3,7&&", 3, 7),
]
IGNORED = [
    "t=,",  # 0001
    "t=3,3",  # 0002
    "t=7,3",  # 0003
    "t=3,",  # 0012: a comma at the end
    "t=3,banana",  # 0028
    "t=3-7",  # 0030
    "t=3:7",  # 0031
    "t='3'",  # 0032
    "t=3,7,9",  # 0033
    "t%3D3",  # 0034
    "t=-1,3",  # 0044
    "T=3,7",  # 0058
    "t=0s",  # 0061 to 0070
    "t=1e-1",
    "t=.0",
    "t=",
    "t=0:0:0",  # 0073 to 0076
    "t=0:00:60",
    "t=0:60:00",
    "t=10%26",  # 0093
    "t=3,7,",  # 0094
]


@pytest.mark.parametrize(("fragment", "start", "end"), PLAYED)
def test_the_reader_plays_what_players_play(fragment: str, start: float, end: float) -> None:
    assert fragment_time(fragment, LENGTH_S) == (start, end)


@pytest.mark.parametrize("fragment", IGNORED)
def test_the_reader_ignores_what_players_ignore(fragment: str) -> None:
    assert fragment_time(fragment, LENGTH_S) is None


@given(
    start=st.integers(0, DAY_MS - 1),
    length=st.integers(1, 3_600_000),
)
def test_an_address_plays_exactly_its_clip(start: int, length: int) -> None:
    address = media_fragment(Path("/films/walk.mp4"), start, start + length)
    played = fragment_time(urlsplit(address).fragment, 2 * DAY_MS / 1000)
    assert played == (start / 1000, (start + length) / 1000)


@pytest.mark.parametrize(
    "name", ["walk.mp4", "june #2.mp4", "100% regal?.mp4", "gewächs haus & bench.mp4", "a=b,c.mp4"]
)
def test_an_address_leads_back_to_its_file(name: str) -> None:
    path = Path("/films") / name
    parts = urlsplit(media_fragment(path, 1500, 4250))
    assert Path(unquote(parts.path)) == path
    assert not parts.query
    assert fragment_time(parts.fragment, 60) == (1.5, 4.25)


def test_a_moment_without_length_still_plays() -> None:
    # t=3,3 is ignored by players (TC0002): only the start may be written then
    address = media_fragment(Path("/films/walk.mp4"), 3000, 3000)
    assert fragment_time(urlsplit(address).fragment, LENGTH_S) == (3, LENGTH_S)
