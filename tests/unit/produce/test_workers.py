"""Processes of one job end with it, and their loss is told."""

import os
import signal
import subprocess
import sys
import time

import pytest

from signage.ground.errors import MissingFromMachineError
from signage.produce.workers import work_through


def test_results_come_in_the_order_of_the_jobs():
    for jobs in (range(3), range(30)):
        assert list(work_through(pow, 2, jobs, workers=2)) == [2**job for job in jobs]


def end_at_once(status, _):
    os._exit(status)


def test_a_process_that_is_ended_from_outside_is_told_with_a_cure():
    with pytest.raises(MissingFromMachineError, match="memory"):
        list(work_through(end_at_once, 7, range(20), workers=2))


def test_processes_leave_ctrl_c_to_their_parent_and_end_with_it():
    script = (
        "import multiprocessing, threading, time\n"
        "from signage.produce.workers import work_through\n"
        "def wait(seconds, _): time.sleep(seconds)\n"
        "def tell():\n"
        "    while len(multiprocessing.active_children()) < 2: time.sleep(0.05)\n"
        "    time.sleep(1)\n"
        "    print(*(child.pid for child in multiprocessing.active_children()), flush=True)\n"
        "if __name__ == '__main__':\n"
        "    threading.Thread(target=tell).start()\n"
        "    list(work_through(wait, 60, range(8), workers=2))\n"
    )
    with subprocess.Popen([sys.executable, "-c", script], stdout=subprocess.PIPE, text=True) as parent:
        workers = [int(number) for number in parent.stdout.readline().split()]
        for worker in workers:
            os.kill(worker, signal.SIGINT)
        time.sleep(0.3)
        assert all(is_alive(worker) for worker in workers)
        parent.kill()
    end = time.monotonic() + 20
    while any(is_alive(worker) for worker in workers):
        assert time.monotonic() < end, "the processes outlive their parent"
        time.sleep(0.1)


def is_alive(process):
    """Whether a process runs; one that has ended may stay in the table until somebody asks for it."""
    done = subprocess.run(
        ["ps", "-o", "stat=", "-p", str(process)], capture_output=True, text=True, check=False
    )
    return done.stdout.strip()[:1] not in {"", "Z"}
