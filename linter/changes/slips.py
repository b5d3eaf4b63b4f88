"""Slips: stated values that look like a slipped prefix, put right before anything else.

What a slip spoils needs no change of the design; and what else is proposed must hold for
the design that was meant, not for the slip.
"""

from dataclasses import replace

from ..declare import usual_bounds
from ..finding import Finding, Remedy
from ..judging.consistency import BUILT_IN, SLIPS, built_in_findings
from ..quantities.quantity import Value
from .effect import doubt, settled
from .rerun import CONTRADICTS, Rerun, Reruns
from .solve import in_proportion

MOST_LEAVES = 6


class Slips:
    """The slips of one spec, each with what comes out when it is put right."""

    def __init__(self, reruns: Reruns) -> None:
        self.reruns = reruns
        found: dict[tuple[str, ...], Rerun] = {}
        for item in reruns.review.findings:
            if item.check in BUILT_IN and item.check != CONTRADICTS and item.advice.follows:
                right = dict.fromkeys(item.evidence.leaves, item.advice.follows)
                rerun = reruns.whole(right)
                if rerun is not None:
                    found.setdefault(tuple(path for path, _ in rerun.changes), rerun)
        self.reruns_right = tuple(found.values())
        whole = {path: data for rerun in self.reruns_right for path, data in rerun.changes}
        self.all_right = reruns.whole(whole) if whole else None

    @property
    def paths(self) -> tuple[str, ...]:
        """The paths of all slips."""
        return tuple(path for path, _ in self.all_right.changes) if self.all_right else ()

    def settling(self, finding: Finding) -> tuple[Remedy, ...]:
        """The slip that settles a finding when it is put right; all of them where none alone."""
        rights = self.reruns_right + ((self.all_right,) if self.all_right else ())
        for rerun in rights:
            if self._settles(rerun, finding):
                return (self._remedy(rerun, finding),)
        return self._of_contradiction(finding) if finding.check == CONTRADICTS else ()

    def _remedy(self, rerun: Rerun, finding: Finding) -> Remedy:
        effects = self.reruns.effects(rerun, (finding.check, finding.subject))
        return replace(effects, kind="slip")

    def _settles(self, rerun: Rerun, finding: Finding) -> bool:
        """Whether a finding is gone; several doubts of one kind are told apart by place."""
        if finding.check not in BUILT_IN:
            return settled(rerun.answers.get((finding.check, finding.subject)))
        left = built_in_findings(rerun.run.spec, rerun.run.graph)
        return doubt(finding) not in {doubt(item) for item in left}

    def _of_contradiction(self, finding: Finding) -> tuple[Remedy, ...]:
        """A slipped prefix in one of the values from which something else follows."""
        stated = finding.place.path if finding.place else ""
        spec = self.reruns.review.spec
        paths = [place.path for place in finding.related if place.path != stated]
        for path in paths[:MOST_LEAVES]:
            value, field = spec.values.get(path), spec.schema.field_of(path)
            bounds = usual_bounds(field)
            if not isinstance(value, Value) or bounds is None:
                continue
            for factor in SLIPS:
                number = float(f"{value.nominal * factor:.12g}")
                if bounds[0] <= number <= bounds[1]:
                    guess = {"value": in_proportion(value, number, field.unit), "from": "estimate"}
                    rerun = self.reruns.whole({path: guess}) if value.form != "line" else None
                    if rerun is not None and self._settles(rerun, finding) and not rerun.doubts:
                        return (self._remedy(rerun, finding),)
        return ()
