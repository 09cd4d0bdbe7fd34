"""The errors a person can meet, by what they can do about it.

DiaryError                exit code 1
  UsageError       2      the command was given something it cannot take
  MediaError       3      a recording that cannot be read
  ModelError       4      a speech model that is missing or damaged
  VocabularyError  5      a mistake in a vocabulary file
  StoreError       6      the diary's own folder cannot be used
  NotFound         7      no such seedling, clip or recording
  Cancelled      130      the user stopped a long step; what was finished is kept

A message says what happened, in which file, line or second, and what to do.
Messages are written where the error is raised; only bases live here.
"""


class DiaryError(Exception):
    """Anything that stops a command and can be explained in a line."""

    exit_code = 1


class UsageError(DiaryError):
    """The command was given something it cannot take."""

    exit_code = 2


class MediaError(DiaryError):
    """A recording, caption file or note that cannot be read."""

    exit_code = 3


class ModelError(DiaryError):
    """A speech model that is missing, damaged or unknown."""

    exit_code = 4


class VocabularyError(DiaryError):
    """A mistake in a vocabulary file, with its file and key."""

    exit_code = 5


class StoreError(DiaryError):
    """The diary's folder cannot be opened, written or migrated."""

    exit_code = 6


class NotFound(DiaryError):
    """No such seedling, clip, recording or cross in this diary."""

    exit_code = 7


class Cancelled(DiaryError):
    """The user stopped a long step; what was finished until then is kept."""

    exit_code = 130
