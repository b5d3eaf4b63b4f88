"""The kept factors and dimensions are those that pint gives, and spare an ordinary run pint."""

import subprocess
import sys
from pathlib import Path

from .write_known_units import TABLE, table

SAMPLE = Path(__file__).parents[3] / "sample_specs" / "choir-portable.amp.yaml"


def test_every_row_is_what_pint_gives_today() -> None:
    assert TABLE.read_text("utf-8") == table(), "run tests/linter/quantities/write_known_units.py"


def test_an_ordinary_review_loads_neither_pint_nor_numpy() -> None:
    program = (
        "import sys; from ampreview.linter.cli import main;"
        f"main(['assess', '--remedies', 'none', {str(SAMPLE)!r}]);"
        "sys.exit(','.join({'pint', 'numpy'} & sys.modules.keys()))"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, check=False)
    assert done.stderr.decode().strip() == ""
