"""Why no change is offered: out of reach, or what it would break."""

from ..check import Lever
from ..declare import local_path
from ..evaluation.catalogue import Entry
from ..finding import CLEAR, Finding, Status
from ..judging.weighing import rank
from .conflict import conflict
from .effect import Key, gravity, in_text
from .levers import Levers

NO_LEVER = "no single change fixes this; it needs a different part or topology"
EITHER = "which of these values is wrong, only the drawing or the data sheet can tell"
MOST_REASONS = 3
MOST_NAMES = 3


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
            return EITHER
        needs = f"it needs {entry.check.otherwise}" if entry.check.otherwise else ""
        levers = [item for item in self.levers.of(entry, finding) if not self._is_claim(item[1])]
        reasons = [self._reason(entry, finding, *item) for item in levers[:MOST_REASONS]]
        return "; ".join([*reasons, *([needs] if needs else [])]) or NO_LEVER

    def _is_claim(self, path: str) -> bool:
        return self.review.spec.schema.nature_of(path) == "claim"

    def _reason(self, entry: Entry, finding: Finding, lever: Lever, path: str) -> str:
        found = self.levers.solved(entry, finding, lever, path)
        if not found:
            lacking = self._lacking(
                entry, finding, path, self.review.spec.schema.field_of(path).example
            )
            return lacking or f"no usual value of {path} works"
        key = (finding.check, finding.subject)
        text = in_text(found[0].text)
        rerun = self.reruns.run_with({path: found[0].text}, key)
        if rerun is None:
            lacking = self._lacking(entry, finding, path, found[0].text)
            return lacking or f"{path} at {text} still fails at the worst case"
        spoilt = self.reruns.spoilt_by(rerun, key, gravity(finding))
        apart = conflict(self.reruns.run, lever, path, (entry, finding), self._entries(spoilt))
        return apart or f"{path} at {text} fixes it, but {self._news(spoilt)}"

    def _news(self, spoilt: list[Key]) -> str:
        """What a change brings about, then what it makes worse."""
        new = [x for x in spoilt if rank(self.reruns.answers.get(x)) == CLEAR]
        worse = [x for x in spoilt if x not in new]
        told = zip(("introduces ", "worsens "), (_names(new), _names(worse)), strict=True)
        return " and ".join(word + text for word, text in told if text) or "contradicts the rest"

    def _lacking(self, entry: Entry, finding: Finding, path: str, value: object) -> str:
        """What a change leaves open, where that is why it cannot be shown to be a cure."""
        run = self.reruns.variant(path, value)
        after = run.judge(entry, finding.subject) if run else None
        if after is None or after.status is not Status.OPEN:
            return ""
        names = ", ".join(dict.fromkeys(local_path(item.path) for item in after.advice.missing[:4]))
        lacks = f"{names} missing" if names else "not certain without more data"
        return f"{path} at {in_text(value)} leaves it open: {lacks}"

    def _entries(self, keys: list[Key]) -> list[tuple[Entry, Finding]]:
        found = []
        for check, subject in keys:
            entry = self.review.catalogue.entry(check)
            if entry is not None:
                found.append((entry, self.reruns.answers[check, subject]))
        return found


def _names(keys: list[Key]) -> str:
    names = [f"{check} ({subject})" for check, subject in keys]
    more = f" and {len(names) - MOST_NAMES} more" if len(names) > MOST_NAMES else ""
    return ", ".join(names[:MOST_NAMES]) + more
