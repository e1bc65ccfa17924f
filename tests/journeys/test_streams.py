"""What a shell does to a command: pipes that close, streams that are none, encodings of old consoles."""

import json
import os
import signal
import subprocess
import sys

SIGNAGE = [sys.executable, "-m", "signage"]


def test_a_reader_that_leaves_is_no_problem_found(ward):
    for command in ("rehearse G1", "explain"):
        shown = subprocess.run(
            ["bash", "-c", f"{sys.executable} -m signage {command} | head -1; echo ${{PIPESTATUS[0]}}"],
            cwd=ward,
            capture_output=True,
            text=True,
            check=True,
        )
        *_, status = shown.stdout.split()
        assert status in {"0", "141"}, command
        assert not shown.stderr


def test_closed_and_full_outputs_are_told_by_their_status(ward):
    def status(command):
        done = subprocess.run(
            ["bash", "-c", f"{sys.executable} -m signage {command}"],
            cwd=ward,
            capture_output=True,
            text=True,
            check=False,
        )
        assert "Traceback" not in done.stderr
        return done.returncode, done.stderr

    assert status("rehearse G1 >&-")[0] == 0
    assert status("rehearse G1 >&- 2>&-")[0] == 0
    code, message = status("rehearse G1 > /dev/full")
    assert code == 3
    assert "No space left on device" in message


def test_an_old_console_gets_whole_json_and_readable_text(ward):
    def told(encoding, *words):
        done = subprocess.run(
            [*SIGNAGE, *words],
            cwd=ward,
            env={**os.environ, "PYTHONIOENCODING": encoding},
            capture_output=True,
            check=False,
        )
        assert done.returncode == 0, done.stderr
        return done.stdout.decode(encoding)

    arguments = ("draw", "--locale", "ar-XB", "--sheet", "step-cards", "--output", "إخراج")
    made = json.loads(told("cp1252", *arguments, "--format", "json"))
    assert made["sheets"][0]["path"].startswith("إخراج/ar-XB/")
    assert r"\u0625" in told("cp1252", *arguments)
    assert "1 \\xd7 gloves" in told("ascii", "rehearse", "G1")


def test_ctrl_c_says_that_it_stopped(demo):
    with subprocess.Popen(
        [*SIGNAGE, "check", "--fresh"],
        cwd=demo,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        start_new_session=True,
        bufsize=1,
        env={**os.environ, "PYTHONPROFILEIMPORTTIME": "1"},
        preexec_fn=take_interrupts,  # noqa: PLW1509 - it only sets a signal
    ) as running:
        for line in running.stderr:
            if "signage.project" in line:
                break
        os.killpg(running.pid, signal.SIGINT)
        _, said = running.communicate(timeout=60)
    assert running.returncode == 130, said
    assert "Stopped. Files that were finished are kept" in said
    assert "Traceback" not in said


def take_interrupts():
    """A shell lets what it starts in the background ignore them, tests and their children too."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)
