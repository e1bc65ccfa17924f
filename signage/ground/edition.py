"""The date that finished files carry, the same on every run."""

import os
from datetime import UTC, datetime

from signage.ground.errors import WrongUsageError

DEFAULT_EDITION = datetime(2000, 1, 1, tzinfo=UTC)


def pinned_time() -> datetime | None:
    """The time of ``SOURCE_DATE_EPOCH`` (reproducible-builds.org); None where it is not set or empty.

    Raises WrongUsageError for what is no number of seconds in the years 1970 to 9999.
    """
    epoch = os.environ.get("SOURCE_DATE_EPOCH", "")
    if not epoch:
        return None
    try:
        if epoch.isascii() and epoch.isdigit() and len(epoch) <= 12:
            return datetime.fromtimestamp(int(epoch), tz=UTC)
    except (OverflowError, ValueError, OSError):
        pass
    shown = epoch if len(epoch) <= 30 else f"{epoch[:29]}…"
    raise WrongUsageError(
        f"SOURCE_DATE_EPOCH is '{shown}'; a whole number of seconds since 1970 was wanted, "
        "such as 1795651200. Set it so, or delete the variable."
    )


def edition_date() -> datetime:
    """The pinned time, else a constant."""
    return pinned_time() or DEFAULT_EDITION
