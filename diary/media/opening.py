"""Open a media file, or say in one line why it is none."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from diary.errors import MediaError


@contextmanager
def opened(path: Path) -> Iterator[Any]:
    """The PyAV container of `path`, closed afterwards. MediaError with the plain reason."""
    import av

    if not path.exists():
        raise MediaError(f"There is no file {path}.")
    if path.is_dir():
        raise MediaError(f"{path} is a folder, not a recording.")
    try:
        size = path.stat().st_size
        if size == 0:
            raise MediaError(f"{path} is empty (0 bytes): copy it from the camera again.")
        container = av.open(str(path), metadata_errors="ignore")
    except PermissionError as error:
        raise MediaError(f"{path} may not be read: no permission.") from error
    except (av.error.FFmpegError, EOFError, ValueError, OSError) as error:
        raise MediaError(
            f"{path} is not a recording that can be read: it is damaged, cut off, or no media "
            f"file ({_reason(error)})."
        ) from error
    try:
        yield container
    finally:
        container.close()


def _reason(error: BaseException) -> str:
    return str(getattr(error, "strerror", None) or error or type(error).__name__).rstrip(".")
