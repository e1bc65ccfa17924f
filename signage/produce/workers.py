"""Several processes for one job. They end with their parent, leave Ctrl-C to it, and their loss is told."""

from __future__ import annotations

import multiprocessing
import os
import signal
import threading
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from functools import partial
from typing import Any, TypeVar

from signage.ground.errors import MissingFromMachineError
from signage.ground.garbage import collect_rarely

Job = TypeVar("Job")
Result = TypeVar("Result")
Shared = TypeVar("Shared")

_FEWEST = 8
"""Jobs below which a second process takes longer to begin than it saves."""
_CHUNKS_A_WORKER = 8


def work_through(
    do: Callable[[Shared, Job], Result], shared: Shared, jobs: Sequence[Job], workers: int | None = None
) -> Iterator[Result]:
    """``do(shared, job)`` for each job, in their order; few jobs in this process, many on all processors.

    ``shared`` is what all jobs need, such as a project: each process gets it once, as it is now, so that
    files which change meanwhile change nothing. Raises MissingFromMachineError where a process was ended
    from outside. After Ctrl-C no job is finished: each gives up at once and clears away what it was writing.
    """
    workers = min(workers or os.cpu_count() or 1, len(jobs))
    if workers <= 1 or len(jobs) < _FEWEST:
        for job in jobs:
            yield do(shared, job)
        return
    chunk = max(1, len(jobs) // (workers * _CHUNKS_A_WORKER))
    pool = ProcessPoolExecutor(workers, initializer=_begin, initargs=(do, shared))
    try:
        yield from pool.map(_do, jobs, chunksize=chunk)
    except BrokenProcessPool as error:
        raise MissingFromMachineError(
            "A process of this run was ended from outside, most often because the memory of this machine was "
            "full. What was finished before is whole. Close other programmes, or ask for less at a time "
            "(such as one protocol or one language), and run the command again."
        ) from error
    except KeyboardInterrupt:
        for process in multiprocessing.active_children():
            process.terminate()
        raise
    finally:
        pool.shutdown(wait=True, cancel_futures=True)


class _Work:
    """What this process was started for; a pool hands a process nothing else to remember it by."""

    do: Callable[[Any], Any]


def _begin(do: Callable[[Shared, Job], Result], shared: Shared) -> None:
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    signal.signal(signal.SIGTERM, _give_up)
    collect_rarely()
    threading.Thread(target=_end_with_parent, daemon=True).start()
    _Work.do = partial(do, shared)


def _do(job: Any) -> Any:
    return _Work.do(job)


def _give_up(*_: object) -> None:
    raise SystemExit(1)


def _end_with_parent() -> None:
    parent = multiprocessing.parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)
