"""The plant sheet: the order of variety descriptions, names and crosses as written, a real PDF."""

import io
import re
from dataclasses import replace
from datetime import date

import pytest
from PIL import Image
from pypdf import PdfReader

from diary.export.sheet import PlantSheet, plant_sheet
from diary.export.sheet_page import Picture, sheet_html, sheet_pdf
from diary.insight.overview import Overview
from diary.records.pages import PlantPage
from diary.records.register import Seedling
from tests.insight.say import season, shown

NAMES = {"a" * 64: "walk"}
CLIPS = (
    shown(
        "24-11A",
        "habit - compact",
        "foliage - zoned",
        "head_diameter - 110",
        "bloom_form - frilled",
        "bloom_diameter - 50",
        "colour upper_petals wine deep",
        "colour lower_petals mauve pale",
        "colour blotch black",
        "marking - feathering",
        "colour edge white",
        "colour throat white",
        "scent - none",
        "health - clean",
        "decision - keep",
        "decision - repot",
        said="Upper petals deep wine, lower petals pale mauve, and a white throat.",
    ),
)
ENTRY = Seedling(
    number="24-11A", seed_parent="Merrowdown Silk", pollen_parent="21-06A", sown="2029-09"
)


def page_of(overview: Overview, key: str) -> PlantPage:
    summary = next(one for one in overview.plants if one.plant.key == key)
    clips = tuple(clip for clip in overview.walks[0].clips if clip.plant.key == key)
    return PlantPage(
        plant=summary.plant,
        seedling=summary.seedling,
        named=None,
        cross=None,
        clips=clips,
        records=tuple(record for clip in clips for record in clip.records),
        beliefs=summary.beliefs,
        conflicts=(),
    )


@pytest.fixture
def sheet() -> PlantSheet:
    overview = season(*CLIPS, seedlings=(ENTRY,))
    return plant_sheet(overview, page_of(overview, "24-11A"))


def test_the_order_is_that_of_variety_descriptions(sheet: PlantSheet) -> None:
    # CFIA descriptions of regal and zonal pelargoniums (1998-2011): plant, stem, leaf,
    # inflorescence, floret, upper petal, lower petal, zone at the base
    assert [section.organ for section in sheet.sections] == [
        "Plant",
        "Leaf",
        "Inflorescence",
        "Flower",
        "Upper petals",
        "Lower petals",
        "Markings",
        "Base of the petals",
        "Scent",
        "Health",
    ]
    markings = next(one for one in sheet.sections if one.organ == "Markings")
    assert [(line.label, line.state) for line in markings.lines] == [
        ("blotch", "black"),
        ("feathering", "present"),
        ("margin", "white"),
    ]
    upper = next(one for one in sheet.sections if one.organ == "Upper petals")
    assert [(line.label, line.state) for line in upper.lines] == [("colour", "deep wine")]


def test_a_marking_goes_with_the_petals_it_lies_on() -> None:
    overview = season(*CLIPS, seedlings=(ENTRY,))
    page = page_of(overview, "24-11A")
    records = tuple(
        replace(record, on=("upper petals",)) if record.part == "blotch" else record
        for record in page.records
    )
    sheet = plant_sheet(overview, replace(page, records=records))
    upper = next(one for one in sheet.sections if one.organ == "Upper petals")
    assert [line.label for line in upper.lines] == ["marking: blotch", "colour"]


def test_parentage_has_the_seed_parent_first(sheet: PlantSheet) -> None:
    # ICN Rec. H.2A.1 (female first), Art. H.2.1 (the sign); ICNCP Art. 14 (single quotes)
    assert sheet.parentage == "'Merrowdown Silk' \u00d7 21-06A"
    assert ("Decision", "keep (2031-05-18)") in sheet.facts
    assert ("Also", "repot") in sheet.facts


@pytest.mark.parametrize(
    ("rows", "entry", "parentage"),
    [
        (("sport_of - Nettlefold",), None, "sport of 'Nettlefold'"),
        (("pollination - open", "seed_parent - Nettlefold"), None, "'Nettlefold', open pollinated"),
        (("pollination - selfed", "seed_parent - Nettlefold"), None, "'Nettlefold' selfed"),
        ((), None, "parents unknown"),
    ],
)
def test_other_origins(rows: tuple[str, ...], entry: None, parentage: str) -> None:
    overview = season(shown("9.2", *rows))
    assert plant_sheet(overview, page_of(overview, "9.2")).parentage == parentage


def test_a_named_seedling_has_its_name_in_single_quotes() -> None:
    overview = season(*CLIPS, seedlings=(replace(ENTRY, name="Quill Harbour"),))
    assert plant_sheet(overview, page_of(overview, "24-11A")).title == "'Quill Harbour' (24-11A)"


def test_two_sizes_are_both_shown() -> None:
    overview = season(
        shown("7", "bloom_diameter - 45", day=date(2031, 6, 2)),
        shown("7", "bloom_diameter - 80", day=date(2031, 6, 3)),
    )
    sheet = plant_sheet(overview, page_of(overview, "7"))
    (line,) = sheet.sections[0].lines
    assert line.doubt is not None
    assert "45" in line.doubt
    assert "80" in line.doubt


def jpeg() -> bytes:
    out = io.BytesIO()
    Image.new("RGB", (64, 48), "#722f37").save(out, "JPEG")
    return out.getvalue()


def test_the_pdf_holds_the_words_and_the_pictures(sheet: PlantSheet) -> None:
    picture = Picture(jpeg=jpeg(), caption="2031-05-18")
    html = sheet_html(sheet, NAMES, (picture,) * 3)
    reader = PdfReader(io.BytesIO(sheet_pdf(html, sheet.title)))
    text = " ".join(" ".join(page.extract_text() for page in reader.pages).split())
    assert "24-11A" in text
    assert "'Merrowdown Silk' \u00d7 21-06A" in text
    assert "deep wine" in text
    assert "walk 0:00" in text
    assert "Upper petals deep wine, lower petals pale mauve, and a white throat." in text
    assert len(reader.pages[0].images) >= 1
    # the standard page of ISO 216, in points
    assert [round(float(side)) for side in reader.pages[0].mediabox[2:]] == [595, 842]


def test_the_pdf_carries_its_own_fonts(sheet: PlantSheet) -> None:
    reader = PdfReader(io.BytesIO(sheet_pdf(sheet_html(sheet, NAMES), sheet.title)))
    fonts = reader.pages[0]["/Resources"]["/Font"]
    assert all("FiraSans" in fonts[name]["/BaseFont"] for name in fonts)


def test_odd_characters_and_markup_are_text() -> None:
    odd = "\u00c9t\u00e9 <b>& \u017dofie</b> \u6885 \U0001f338 " + "long" * 100
    overview = season(shown(odd, "habit - compact", said=odd))
    sheet = plant_sheet(overview, page_of(overview, odd))
    html = sheet_html(sheet, NAMES)
    assert "<b>& " not in html
    reader = PdfReader(io.BytesIO(sheet_pdf(html, sheet.title)))
    text = "".join(page.extract_text() for page in reader.pages)
    assert re.search(r"\u00c9t\u00e9 <b>&\s\u017dofie</b>", text)


def test_a_plant_never_seen_has_a_sheet_too() -> None:
    overview = season(seedlings=(ENTRY,))
    sheet = plant_sheet(overview, page_of(overview, "24-11A"))
    assert sheet.sections == ()
    reader = PdfReader(io.BytesIO(sheet_pdf(sheet_html(sheet, NAMES), sheet.title)))
    assert "Not seen in any recording yet" in reader.pages[0].extract_text()
