"""The sample sentences of samples.yaml by language; unverified, to set in type only."""

from pathlib import Path

import yaml

SAMPLES: dict[str, str] = yaml.safe_load(Path(__file__).with_name("samples.yaml").read_text(encoding="utf-8"))
