"""Several processes for one job. They end with their parent, leave Ctrl-C to it, and their loss is told."""

from __future__ import annotations

import multiprocessing
import os
import signal
import threading
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from typing import Any, TypeVar

from signage.ground.errors import MissingFromMachineError

Job = TypeVar("Job")
Result = TypeVar("Result")


def map_in_processes(
    do: Callable[[Job], Result],
    jobs: Sequence[Job],
    workers: int,
    prepare: Callable[..., None],
    arguments: tuple[Any, ...],
    chunk: int = 1,
) -> Iterator[Result]:
    """The results in the order of the jobs; ``prepare`` runs once in every process before its first job.

    Raises MissingFromMachineError where a process was ended from outside. After Ctrl-C no job is finished:
    each gives up at once and clears away what it was writing.
    """
    pool = ProcessPoolExecutor(workers, initializer=_begin, initargs=(prepare, arguments))
    try:
        yield from pool.map(do, jobs, chunksize=chunk)
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


def _begin(prepare: Callable[..., None], arguments: tuple[Any, ...]) -> None:
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    signal.signal(signal.SIGTERM, _give_up)
    threading.Thread(target=_end_with_parent, daemon=True).start()
    prepare(*arguments)


def _give_up(*_: object) -> None:
    raise SystemExit(1)


def _end_with_parent() -> None:
    parent = multiprocessing.parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)
