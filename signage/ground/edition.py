"""The date that finished files carry, the same on every run."""

import os
from datetime import UTC, datetime

DEFAULT_EDITION = datetime(2000, 1, 1, tzinfo=UTC)


def edition_date() -> datetime:
    """The pinned date: ``SOURCE_DATE_EPOCH`` where it is set (reproducible-builds.org), else a constant."""
    epoch = os.environ.get("SOURCE_DATE_EPOCH", "")
    return datetime.fromtimestamp(int(epoch), tz=UTC) if epoch.isdigit() else DEFAULT_EDITION
