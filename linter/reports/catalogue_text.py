"""The catalogue as a handbook: the list of checks by domain, and one check in full.

Everything on a page comes from the rule file; nothing is written here about any check.
"""

import textwrap
from collections.abc import Mapping, Sequence

from rich.console import Console, RenderableType
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from ..check import AtLeast, Case, Check, Constant, Lever, Words
from ..evaluation.catalogue import Catalogue, Entry
from ..judging.beyond_limit import DOMAIN as MEASUREMENTS
from ..judging.consistency import BUILT_IN
from ..judging.deviation import BUILT_IN as PERMISSIONS
from ..judging.deviation import DOMAIN as DEVIATIONS
from ..judging.stated import DOMAIN
from ..judging.unjudged import BUILT_IN as ON_SILENCE
from ..judging.unmeasured import on_readings
from .cautions import SIGNALS
from .phrases import cited

STAKES = {
    "safety": "safety: judged at the extreme corner",
    "rating": "rating: judged at the extreme corner",
    "performance": "performance: major only when root-sum-square misses it too",
}


def _built_in(catalogue: Catalogue) -> Mapping[str, Mapping[str, str]]:
    """The findings that need no rule file, by domain."""
    read = on_readings(catalogue.packages)
    return {DOMAIN: BUILT_IN | ON_SILENCE, DEVIATIONS: PERMISSIONS, MEASUREMENTS: read}


def print_list(catalogue: Catalogue, console: Console) -> None:
    """Print the checks by domain, one line each."""
    for folder, title in catalogue.domains.items():
        entries = [entry for entry in catalogue.entries if entry.domain == folder]
        _print_domain(title, [(entry.name, entry.check.title) for entry in entries], console)
    for domain, findings in _built_in(catalogue).items():
        members = [(name, text.split(": ")[0].split(". ")[0]) for name, text in findings.items()]
        _print_domain(domain.capitalize(), members, console)


def print_built_in(name: str, catalogue: Catalogue, console: Console) -> bool:
    """Print a finding that needs no rule file; False where there is none of this name."""
    known = _built_in(catalogue)
    domain = next((domain for domain, findings in known.items() if name in findings), None)
    if domain is None:
        return False
    text = known[domain][name]
    console.print(Text.assemble((name, "bold"), f"   {domain.capitalize()}"))
    console.print(Padding(Text(text), (1, 0, 0, 2)))
    return True


def print_entry(entry: Entry, catalogue: Catalogue, console: Console) -> None:
    """Print one check in full."""
    check = entry.check
    domain = catalogue.domains[entry.domain]
    console.print(Text.assemble((entry.name, "bold"), f"   {domain}"))
    console.print(Text(check.title, style="italic"))
    for paragraph in paragraphs(entry.prose):
        console.print(Padding(Text(paragraph), (1, 0, 0, 2)))
    _print_part("Figure", [Text(f"{check.formula}   [{check.unit}]", style="bold")], console)
    console.print(Padding(_inputs(check), (1, 0, 0, 2)))
    _print_part("Judged", [Text(text) for text in _scope(check)], console)
    _print_part("Limits", [Text(text) for text in limits(check)], console)
    _print_part("Can be changed", [Text(_lever(x)) for x in check.levers], console)
    _print_part("Cases", [Text(case_line(check, case)) for case in check.cases], console)
    _print_part("Sources", [Text(cited(source)) for source in check.sources], console)
    cautions = [Text.assemble((f"{c.signal}  ", SIGNALS[c.signal]), c.text) for c in check.cautions]
    _print_part("Cautions", cautions, console)
    _print_part("Fails on", [_fragment(check.fails)], console)
    _print_part("Meets on", [_fragment(check.passes)], console)


def paragraphs(prose: str) -> list[str]:
    """The paragraphs of a docstring, each on one line."""
    return [" ".join(part.split()) for part in prose.split("\n\n") if part.strip()]


def limits(check: Check) -> list[str]:
    """One line a threshold, with its basis."""
    return [
        f"{name}: {side} {text}; {cited(check.limits.basis[name])}"
        for name, side, text in thresholds(check)
    ]


def thresholds(check: Check) -> list[tuple[str, str, str]]:
    """Severity, side and number of each threshold."""
    side = "below" if isinstance(check.limits, AtLeast) else "above"
    stated = ((name, getattr(check.limits, name)) for name in ("critical", "major", "minor"))
    return [(name, side, text) for name, text in stated if text is not None]


def case_line(check: Check, case: Case) -> str:
    """A case as a line: result, inputs, origin."""
    given = ", ".join(f"{name} {value}" for name, value in case.inputs.items())
    return f"{given}: {case.gives} ({case.origin})"


def _scope(check: Check) -> list[str]:
    each = "for each channel" if check.each == "channel" else "once for the product"
    lines = [f"{each}; {STAKES[check.stake]}"]
    lines += _conditions(check.applies)
    if check.forbidden:
        lines.append("a bound of physics: a major finding holds at every milestone")
    if check.asked_from:
        lines.append(f"open from the {check.asked_from} milestone on when nothing is stated")
    return lines


def _conditions(words: Mapping[str, Words]) -> list[str]:
    """Words that must stand in the spec, each in a line of its own."""
    return [
        f"where {path} is {allowed if isinstance(allowed, str) else ' or '.join(allowed)}"
        for path, allowed in words.items()
    ]


def _lever(lever: Lever) -> str:
    """What can be changed, in which steps, and in which designs."""
    return ", ".join((f"{lever.path} ({_stock(lever.stock)})", *_conditions(lever.when)))


def _inputs(check: Check) -> RenderableType:
    table = Table.grid(padding=(0, 2))
    table.add_column(style="bold", no_wrap=True)
    table.add_column(no_wrap=True)
    table.add_column(ratio=1)
    for name, item in check.inputs.items():
        if isinstance(item, Constant):
            table.add_row(name, "constant", f"{item.meaning}: {item.value}; {cited(item.basis)}")
            continue
        unit = "" if item.unit in ("1", "word") else f" [{item.unit}]"
        about = f"{item.meaning}{unit}"
        if item.default is not None:
            about += f"; default: {item.default.value}, {item.default.leaning}"
        table.add_row(name, item.path, about)
    return table


def _print_domain(title: str, members: Sequence[tuple[str, str]], console: Console) -> None:
    console.print(Text(title, style="bold underline"))
    table = Table.grid(padding=(0, 2))
    table.add_column(no_wrap=True)
    table.add_column(ratio=1)
    for name, about in members:
        table.add_row(name, about)
    console.print(Padding(table, (0, 0, 1, 2)))


def _print_part(title: str, lines: Sequence[RenderableType], console: Console) -> None:
    if lines:
        console.print(Padding(Text(title, style="underline"), (1, 0, 0, 0)))
        for line in lines:
            console.print(Padding(line, (0, 0, 0, 2)))


def _fragment(text: str) -> RenderableType:
    return Padding(Text(textwrap.dedent(text).strip(), style="dim"), (0, 0, 0, 2))


def _stock(stock: str | tuple[str, ...]) -> str:
    if isinstance(stock, tuple):
        return ", ".join(stock)
    return f"series {stock} of IEC 60063" if stock.startswith("E") else f"in steps of {stock}"
