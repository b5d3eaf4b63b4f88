"""``python -m ampreview.linter``: the same program as the console script."""

import sys

from .cli import program

sys.exit(program())
