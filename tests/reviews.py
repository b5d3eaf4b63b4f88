"""The spec files of the project, each read and reviewed once for all tests of a process."""

from functools import cache
from pathlib import Path

from ampreview.linter.changes.stages import with_remedies
from ampreview.linter.check import Milestone
from ampreview.linter.judging.review import Review, review_file
from ampreview.linter.reading.loading import Spec, load_file

ROOT = Path(__file__).parents[1]
SAMPLES = ROOT / "sample_specs"
PUBLISHED = ROOT / "tests" / "published"
FILES = tuple(
    path
    for folder in (SAMPLES, PUBLISHED / "designs", PUBLISHED / "failures")
    for path in sorted(folder.glob("*.amp.yaml"))
)


def name_of(path: Path) -> str:
    """What a test is called after."""
    return path.name.partition(".")[0]


@cache
def spec_of(path: Path) -> Spec:
    loaded = load_file(path)
    assert loaded.spec is not None, loaded.refusals
    return loaded.spec


def reviewed(path: Path, milestone: Milestone | None = None) -> Review:
    """The review at a milestone, or at the spec's own."""
    return _reviewed(path, milestone or spec_of(path).milestone)


@cache
def _reviewed(path: Path, milestone: Milestone) -> Review:
    found = review_file(path, milestone)
    assert isinstance(found, Review), found
    return found


@cache
def advised(path: Path) -> Review:
    """The review with the changes that it proposes."""
    return with_remedies(reviewed(path))
