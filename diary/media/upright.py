"""Pictures the right way up: phones film sideways and leave a note in the file."""

from typing import Any

import numpy as np


def quarter_turns(frame: Any) -> int:
    """How many quarter turns against the clock bring the picture upright, 0 to 3."""
    return round(int(getattr(frame, "rotation", 0) or 0) / 90) % 4


def upright(frame: Any) -> Any:
    """The picture turned upright; the same frame where it is so already."""
    import av

    turns = quarter_turns(frame)
    if not turns:
        return frame
    turned = np.ascontiguousarray(np.rot90(frame.to_ndarray(format="rgb24"), turns))
    fresh: Any = av.VideoFrame.from_ndarray(turned, format="rgb24")
    fresh.pts, fresh.time_base = frame.pts, frame.time_base
    return fresh
