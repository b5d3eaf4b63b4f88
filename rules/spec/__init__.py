"""The spec file of an amplifier: its sections as models, with the root of them all."""

from .amplifier import Amplifier

ROOT = Amplifier
TITLE = "spec of a class-D amplifier"

__all__ = ["ROOT", "TITLE"]
