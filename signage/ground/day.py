"""Which day it is where the programme runs."""

from datetime import date, datetime


def today() -> date:
    """The local day."""
    return datetime.now().astimezone().date()
