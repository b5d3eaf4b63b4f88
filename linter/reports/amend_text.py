"""What an amendment does, for a person at a terminal: changes, verdict, difference."""

from collections.abc import Iterator
from difflib import SequenceMatcher

from rich.console import Console
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from ..judging.review import Review
from ..rewriting.amend import Amendment, effective, stated_text
from ..rewriting.yaml_text import flow
from .assess_head import print_weakened
from .phrases import clean
from .verdict import DISCLAIMER, counted, house_told

CONTEXT = 1


def print_amendment(amendment: Amendment, text: str, console: Console) -> None:
    """Print the changes with their reasons, the verdicts and the difference of the texts."""
    print_weakened(amendment.before, console)
    for told in house_told(amendment.before.criteria.house):
        console.print(Padding(Text(clean(told), style="dim"), (0, 1)))
    _print_verdicts(amendment, console)
    _print_changes(amendment, console)
    _print_list("LEFT AS IT IS", amendment.notes, console)
    old = amendment.before.spec.text
    if old != text:
        _print_heading("LINES THAT DIFFER", console)
        for line in _difference(old.splitlines(), text.splitlines()):
            console.print(line, soft_wrap=True)
    console.print(Padding(Text(DISCLAIMER, style="dim"), (1, 1, 0, 1)))


def _print_verdicts(amendment: Amendment, console: Console) -> None:
    before, after = amendment.before, amendment.after
    head = Text.assemble(" now ", _verdict(before), "  amended ", _verdict(after))
    head.append(f"  at the {after.verdict.milestone} milestone")
    console.print(Padding(head, (0, 1, 0, 0)))
    table = Table.grid(padding=(0, 2))
    for label, found in (("now", before), ("amended", after)):
        table.add_row(Text(label, style="dim"), counted(found))
    console.print(Padding(table, (0, 1)))


def _verdict(found: Review) -> tuple[str, str]:
    if found.verdict.released:
        return " RELEASED ", "bold reverse green"
    return " HELD ", "bold reverse red"


def _print_changes(amendment: Amendment, console: Console) -> None:
    changes = effective(amendment)
    _print_heading(f"AMENDMENTS  {len(changes)}", console)
    for path, change in changes.items():
        was = stated_text(amendment.before, path) or "not stated"
        head = Text(clean(path), style="bold")
        body = Text.assemble(
            f"{clean(was)} to ", (clean(flow(change.data)), "bold green"), f", {clean(change.why)}"
        )
        console.print(Padding(head, (0, 1)))
        console.print(Padding(body, (0, 1, 0, 3)))


def _print_list(title: str, texts: tuple[str, ...], console: Console) -> None:
    if texts:
        _print_heading(f"{title}  {len(texts)}", console)
    for text in texts:
        console.print(Padding(Text(clean(text)), (0, 1)))


def _print_heading(text: str, console: Console) -> None:
    console.print(Padding(Text(text, style="bold"), (1, 1, 0, 1)))


def _difference(old: list[str], new: list[str]) -> Iterator[Text]:
    """The lines that differ, with one line around them, under the number in the spec."""
    matcher = SequenceMatcher(None, old, new, autojunk=False)
    for group in matcher.get_grouped_opcodes(CONTEXT):
        yield Text(f" line {group[0][1] + 1}", style="dim")
        for kind, first, last, other, end in group:
            if kind == "equal":
                yield from (Text(f"     {clean(line)}", style="dim") for line in old[first:last])
                continue
            yield from (Text(f"   - {clean(line)}", style="red") for line in old[first:last])
            yield from (Text(f"   + {clean(line)}", style="green") for line in new[other:end])
