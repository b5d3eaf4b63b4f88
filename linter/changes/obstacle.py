"""Why no change is offered: out of reach, or what it would break."""

from ..check import Lever
from ..evaluation.catalogue import Entry
from ..finding import CLEAR, Finding
from ..judging.beyond_limit import DOMAIN as MEASUREMENTS
from ..judging.weighing import rank
from .conflict import conflict
from .effect import in_text, label_of
from .following import spoiler
from .levers import Levers

NO_LEVER = "no single change fixes this; it needs a different part or topology"
EITHER = "which of these values is wrong, only the drawing or the data sheet can tell"
ON_THE_BENCH = "read it again, or find out on the bench why the board differs from the spec"
MOST_REASONS = 3


class Obstacles:
    """What stands in the way of the levers of a finding."""

    def __init__(self, levers: Levers) -> None:
        self.levers = levers
        self.reruns = levers.reruns
        self.review = levers.review

    def obstacle(self, finding: Finding) -> str:
        """Why no change of the levers is offered: out of reach, or what it would break."""
        entry = self.review.catalogue.entry(finding.check)
        if entry is None:
            return ON_THE_BENCH if finding.domain == MEASUREMENTS else EITHER
        needs = f"it needs {entry.check.otherwise}" if entry.check.otherwise else ""
        levers = [item for item in self.levers.of(entry, finding) if not self._is_claim(item[1])]
        reasons = [self._reason(entry, finding, *item) for item in levers[:MOST_REASONS]]
        return "; ".join([*reasons, *([needs] if needs else [])]) or NO_LEVER

    def _is_claim(self, path: str) -> bool:
        return self.review.spec.schema.nature_of(path) == "claim"

    def _reason(self, entry: Entry, finding: Finding, lever: Lever, path: str) -> str:
        found = self.levers.solved(entry, finding, lever, path)
        if not found:
            return f"no usual value of {path} works"
        text = in_text(found[0].text)
        spoilt = spoiler(self.reruns, finding, {path: found[0].text})
        if spoilt is None:
            return f"{path} at {text} does not do it in the worst case"
        other = self.review.catalogue.entry(spoilt[0])
        old = self.reruns.answers[spoilt]
        apart = ""
        if other is not None:
            apart = conflict(self.reruns.run, lever, path, (entry, finding), [(other, old)])
        told = "introduces" if rank(old) == CLEAR else "worsens"
        return apart or f"{path} at {text} fixes it, but {told} {label_of(spoilt)}"
