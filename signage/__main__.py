"""``python -m signage``."""

from signage.cli.main import run

if __name__ == "__main__":
    run()
