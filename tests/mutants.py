"""The mutants of a file of rules, and how one is put in place of the module in use."""

import dataclasses
import difflib
import re
import sys
from pathlib import Path
from types import FunctionType, ModuleType
from typing import Any

import parso
from cosmic_ray.ast import ast_nodes
from cosmic_ray.operators.operator import Operator
from cosmic_ray.plugins import get_operator

ROOT = Path(__file__).parent.parent
BINARY = (
    "Add_Sub",
    "Sub_Add",
    "Mul_Div",
    "Div_Mul",
    "Mul_Add",
    "Div_Sub",
    "Pow_Mul",
    "FloorDiv_Div",
    "Mod_Div",
)
COMPARISON = (
    "Lt_LtE",
    "LtE_Lt",
    "Gt_GtE",
    "GtE_Gt",
    "Lt_Gt",
    "Gt_Lt",
    "LtE_GtE",
    "GtE_LtE",
    "Eq_NotEq",
    "NotEq_Eq",
    "Is_IsNot",
    "IsNot_Is",
)
OTHERS = (
    "NumberReplacer",
    "ReplaceUnaryOperator_Delete_USub",
    "ReplaceUnaryOperator_Delete_Not",
    "ReplaceTrueWithFalse",
    "ReplaceFalseWithTrue",
    "ReplaceAndWithOr",
    "ReplaceOrWithAnd",
    "ReplaceBreakWithContinue",
    "ReplaceContinueWithBreak",
    "AddNot",
    "ZeroIterationForLoop",
)
CORE = (
    *(f"ReplaceBinaryOperator_{name}" for name in BINARY),
    *(f"ReplaceComparisonOperator_{name}" for name in COMPARISON),
    *OTHERS,
)
NUMBER = re.compile(r"""^(["'])(-?[0-9.]+(?:e-?[0-9]+)?)( [^"']*)?["']$""")
LEFT_OUT = ("Case", "Lever", "dataclass")
COUNTS = (
    "parallel",
    "series",
    "rail_count",
    "n_legs",
    "channel_count",
    "contacts",
    "packs",
    "count",
)


class TextNumber(Operator):
    """Changes the number of a limit, an assumption or a constant by a tenth."""

    def mutation_positions(self, node: Any) -> Any:
        """Texts like ``"10 ns"`` that stand where a verdict comes from."""
        if node.type == "string" and NUMBER.match(node.value) and self._counts(node):
            yield (node.start_pos, node.end_pos)

    def mutate(self, node: Any, index: int) -> Any:
        """``"10 ns"`` becomes ``"11 ns"``, zero becomes one."""
        match = NUMBER.match(node.value)
        assert match
        number = float(match[2])
        changed = f"{number * 1.1:.9g}" if number else "1"
        node.value = f'"{changed}{match[3] or ""}"'
        return node

    @classmethod
    def examples(cls) -> Any:
        """None; the class is not registered."""
        return ()

    @staticmethod
    def _counts(node: Any) -> bool:
        parent = node.parent
        if parent.type == "argument":
            return parent.children[0].value in ("critical", "major", "minor", "value", "threshold")
        called = parent.type == "arglist" and parent.children[0] is node
        return called and _call_name(parent) in ("Assumption", "Constant")


class CountAsOne(Operator):
    """Takes a count in a formula as one: parallel devices, rails, legs, loudspeakers."""

    def mutation_positions(self, node: Any) -> Any:
        """Where the name stands for its value, in a function."""
        if node.type == "name" and node.value in COUNTS and self._is_value(node):
            yield (node.start_pos, node.end_pos)

    def mutate(self, node: Any, index: int) -> Any:
        """``parallel * q`` becomes ``1 * q``."""
        node.value = "1"
        return node

    @classmethod
    def examples(cls) -> Any:
        """None; the class is not registered."""
        return ()

    @staticmethod
    def _is_value(node: Any) -> bool:
        above, inside = node.parent, node.search_ancestor("funcdef") is not None
        is_keyword = above.type == "argument" and above.children[0] is node
        is_attribute = above.type == "trailer" and above.children[0] == "."
        is_parameter = node.search_ancestor("param") is not None
        return inside and not (is_keyword or is_attribute or is_parameter)


class OneOfTwo(Operator):
    """Takes one argument of ``smaller`` or ``larger`` without looking at the other one."""

    def mutation_positions(self, node: Any) -> Any:
        """Each call, once for either argument."""
        called = node.children[0] if node.type in ("atom_expr", "power") else None
        if called is not None and called.get_code().strip() in ("smaller", "larger"):
            yield (node.start_pos, node.end_pos)
            yield (node.start_pos, node.end_pos)

    def mutate(self, node: Any, index: int) -> Any:
        """``smaller(a, b)`` becomes ``(a)`` or ``(b)``."""
        chosen = node.children[1].children[1].children[2 * index]
        changed = parso.parse(f"({chosen.get_code().strip()})").children[0]
        changed.get_first_leaf().prefix = node.get_first_leaf().prefix
        return changed

    @classmethod
    def examples(cls) -> Any:
        """None; the class is not registered."""
        return ()


def _call_name(node: Any) -> str:
    """The name of the call whose arguments a node is."""
    call = node.parent.parent if node.parent is not None else None
    return call.children[0].get_code().strip() if call is not None and call.children else ""


OWN: tuple[Operator, ...] = (TextNumber(), CountAsOne(), OneOfTwo())
OPERATORS = {name: get_operator(f"core/{name}")() for name in CORE}
OPERATORS |= {type(operator).__name__: operator for operator in OWN}


@dataclasses.dataclass(frozen=True)
class Mutant:
    """One change: operator, node of the file and variant; line counted from 1."""

    file: Path
    line: int
    operator: str
    node: int
    index: int

    def source(self) -> str:
        """The text of the file with the change."""
        if not self.operator:
            return self.file.read_text()
        tree = parso.parse(self.file.read_text())
        node = list(ast_nodes(tree))[self.node]
        parent, changed = node.parent, OPERATORS[self.operator].mutate(node, self.index)
        if changed is not node:
            parent.children = [changed if x is node else x for x in parent.children]
        return str(tree.get_code())

    def show(self) -> str:
        """File, line and what became of the line."""
        before = self.file.read_text().splitlines()
        lines = difflib.unified_diff(before, self.source().splitlines(), n=0, lineterm="")
        changed = [x[1:].strip() for x in lines if x[:1] == "+" and x[:3] != "+++"]
        place = f"{self.file.relative_to(ROOT)}:{self.line}"
        return f"{place}: {before[self.line - 1].strip()}  ->  {' '.join(changed)}"


def mutants_of(file: Path) -> list[Mutant]:
    """Every mutant of a file; worked cases, shop values and decorators are left out."""
    found = []
    for number, node in enumerate(ast_nodes(parso.parse(file.read_text()))):
        if _is_left_out(node):
            continue
        for name, operator in OPERATORS.items():
            for index, (start, _) in enumerate(operator.mutation_positions(node)):
                found.append(Mutant(file, start[0], name, number, index))
    return found


def _is_left_out(node: Any) -> bool:
    """Whether a node is test data, a step of a remedy or a flag of the language."""
    argument = node.parent if node.parent is not None else node
    if argument.type == "argument" and argument.children[0].get_code().strip() == "strict":
        return True
    while node is not None:
        if node.type in ("atom_expr", "power", "decorator"):
            called = node.children[1 if node.type == "decorator" else 0]
            if called.get_code().strip() in LEFT_OUT:
                return True
        node = node.parent
    return False


def module_of(file: Path) -> ModuleType:
    """The module that was imported from a file."""
    return sys.modules[".".join(("ampreview", *file.relative_to(ROOT).with_suffix("").parts))]


def apply(mutant: Mutant) -> None:
    """Run the changed source beside the module and put everything it defines in place."""
    old = module_of(mutant.file)
    new = ModuleType(old.__name__)
    new.__package__, new.__file__ = old.__package__, old.__file__
    exec(compile(mutant.source(), str(mutant.file), "exec"), new.__dict__)
    for name, value in list(vars(new).items()):
        if not name.startswith("__") and name in vars(old):
            _graft(old, name, vars(old)[name], value)


def _graft(module: ModuleType, name: str, old: Any, new: Any) -> None:
    """Let what a module defined behave like its changed copy, wherever it is already in use."""
    if old is new:
        return
    if isinstance(new, FunctionType):
        old.__code__, old.__defaults__ = new.__code__, new.__defaults__
    elif dataclasses.is_dataclass(new) and not isinstance(new, type):
        for field in dataclasses.fields(new):
            object.__setattr__(old, field.name, getattr(new, field.name))
    elif isinstance(new, tuple) and new and all(map(dataclasses.is_dataclass, new)):
        for before, after in zip(old, new, strict=True):
            _graft(module, name, before, after)
    elif not isinstance(new, type) and old != new:
        for user in list(sys.modules.values()):
            if vars(user).get(name) is old:
                setattr(user, name, new)
