"""Which day it is where the programme runs."""

from datetime import date, datetime

from signage.ground.edition import pinned_time


def today() -> date:
    """The local day, or the day that ``SOURCE_DATE_EPOCH`` pins."""
    return (pinned_time() or datetime.now().astimezone()).date()
