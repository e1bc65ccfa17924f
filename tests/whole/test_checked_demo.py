"""``signage check`` over the whole demo, as a person runs it."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


@pytest.mark.timeout(900)
def test_the_demo_is_clean():
    done = subprocess.run(
        [sys.executable, "-m", "signage", "check", "--format", "json"],
        check=False,
        cwd=ROOT,
        capture_output=True,
        text=True,
        encoding="utf-8",
        # a day on which the reviews of the demo are not late (reproducible-builds.org)
        env={**os.environ, "SOURCE_DATE_EPOCH": "1795651200"},
        timeout=880,
    )
    result = json.loads(done.stdout)
    assert done.returncode == 0
    assert result["counts"]["S1"] == result["counts"]["S2"] == 0
    # one wall slot of the demo is read from farther than any paper that fits it can carry, on purpose
    finished = [problem for problem in result["problems"] if not problem["in_work"]]
    assert {(p["code"], p["severity"]) for p in finished} <= {("SH-19", "S3")}
    # Bengali is in work and has a few faults on purpose
    assert {p["locale"] for p in result["problems"] if p["in_work"]} == {"bn"}
