"""A plant sheet as HTML, and that HTML as a PDF to print, with stills from the recordings."""

import base64
import logging
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING

from diary.errors import MediaError, NotFound
from diary.export.fonts import font_files
from diary.export.sheet import PlantSheet, plant_sheet
from diary.insight.overview import Overview, overview
from diary.records.pages import PlantPage, plant_page
from diary.records.record import Moment
from diary.records.recordings import locate
from diary.records.store import Store

if TYPE_CHECKING:
    from jinja2 import Template

_PICTURES = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A still on the sheet: JPEG bytes, and when it was."""

    jpeg: bytes
    caption: str

    @property
    def source(self) -> str:
        """The picture as a data URI, so that the page needs no other file."""
        return "data:image/jpeg;base64," + base64.b64encode(self.jpeg).decode("ascii")


def sheet_html(
    sheet: PlantSheet, names: Mapping[str, str], pictures: tuple[Picture, ...] = ()
) -> str:
    """The sheet as a piece of HTML. `names` are the recordings' names by id."""
    return _template().render(sheet=sheet, pictures=pictures, names=names)


@cache
def _template() -> "Template":
    from jinja2 import Environment, StrictUndefined, pass_context
    from jinja2.runtime import Context

    @pass_context
    def place(context: Context, moment: Moment) -> str:
        name = context["names"].get(moment.recording, moment.recording[:8])
        seconds = moment.start_ms // 1000
        return f"{name} {seconds // 60}:{seconds % 60:02d}"

    environment = Environment(autoescape=True, undefined=StrictUndefined)
    environment.filters["place"] = place
    source = (files("diary") / "export" / "templates" / "sheet.html").read_text("utf-8")
    return environment.from_string(source)


def sheet_pdf(html: str, title: str) -> bytes:
    """The page as PDF (A4), with the font inside: nothing but Python packages is needed."""
    from fpdf import FPDF
    from fpdf.fonts import FontFace

    # a letter that the font lacks is printed as a box: no news for the breeder's terminal
    logging.getLogger("fpdf").setLevel(logging.ERROR)
    document = FPDF(format="A4")
    document.set_title(title)
    document.set_creator("diary")
    for style, path in font_files().items():
        document.add_font("Sheet", style, path)
    document.set_font("Sheet", size=10)
    document.set_auto_page_break(True, margin=15)
    document.add_page()
    document.write_html(
        html,
        font_family="Sheet",
        table_line_separators=True,
        tag_styles={
            "h1": FontFace(color="#333333", size_pt=20),
            "h2": FontFace(color="#333333", size_pt=13),
        },
    )
    return bytes(document.output())


def pictures_of(store: Store, page: PlantPage) -> tuple[Picture, ...]:
    """The sharpest still of each of its first clips on film; lost recordings are passed over."""
    from diary.media.stills import sharpest_still

    found: list[Picture] = []
    for clip in page.clips:
        if len(found) == _PICTURES:
            break
        moment = clip.moment
        try:
            path = locate(store, moment.recording)
            still = sharpest_still(path, moment.start_ms, moment.end_ms)
        except (MediaError, NotFound):
            continue
        if still is not None:
            day = moment.day.isoformat() if moment.day else "no date"
            found.append(Picture(jpeg=still.jpeg, caption=day))
    return tuple(found)


def make_sheet(
    store: Store, which: str, *, look: Overview | None = None, pictures: bool = True
) -> tuple[PlantSheet, str]:
    """The sheet of a plant and its HTML; `sheet_pdf` prints it. Raises NotFound."""
    page = plant_page(store, which)
    seen = look or overview(store)
    sheet = plant_sheet(seen, page)
    names: dict[str, str] = {walk.recording.id: walk.recording.name for walk in seen.walks}
    stills = pictures_of(store, page) if pictures else ()
    return sheet, sheet_html(sheet, names, stills)


def file_stem(title: str) -> str:
    """A plant's title as the name of a file: "R23/104" gives "R23-104"."""
    kept = "".join(letter if letter.isalnum() or letter in "-_. '" else "-" for letter in title)
    return kept.strip(" .-") or "plant"
