"""How sure a share is when only a few seedlings were seen: the Wilson score interval. Pure."""

from dataclasses import dataclass
from math import sqrt

# two-sided 95 %: the 0.975 quantile of the standard normal distribution
Z_95 = 1.959963984540054


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """`count` out of `total`, and the bounds (0..1) of its 95 % interval.

    With nothing seen (`total` 0) the share is unknown: `share` is None, the bounds 0 and 1.
    """

    count: int
    total: int
    low: float
    high: float

    @property
    def share(self) -> float | None:
        """The observed share, 0..1."""
        return self.count / self.total if self.total else None

    def __str__(self) -> str:
        if not self.total:
            return "none seen"
        return f"{self.count} of {self.total} ({self.low:.0%} to {self.high:.0%})"


def wilson(count: int, total: int, *, z: float = Z_95) -> Share:
    """The score interval of E. B. Wilson (J. Am. Stat. Assoc. 22, 1927, 209-212).

    Unlike the textbook normal interval it stays within 0..1 and is of use for ten seedlings.
    Raises ValueError unless 0 <= count <= total.
    """
    if not 0 <= count <= total:
        raise ValueError(f"{count} of {total} is no share")
    if total == 0:
        return Share(count=0, total=0, low=0.0, high=1.0)
    share, square = count / total, z * z
    centre = (share + square / (2 * total)) / (1 + square / total)
    reach = z * sqrt(share * (1 - share) / total + square / (4 * total * total))
    half = reach / (1 + square / total)
    # at 0 and at total the bound is exact; rounding would leave 1e-17
    low = 0.0 if count == 0 else centre - half
    high = 1.0 if count == total else centre + half
    return Share(count=count, total=total, low=low, high=high)
