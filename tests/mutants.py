"""Small faults that could stand in a formula: every one that a test ought to notice, made in a syntax tree."""

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

RULES = """\
Not tried, by rule: documentation, annotations, types, imports; texts that end in a message (handed to a check of the range or
standing in a `raise`): tests hold a fragment of a message, not its wording. The figures in a message are tried."""

_CHECKS = {  # the texts handed to them end in messages
    node.name
    for node in ast.parse((Path(__file__).parents[1] / "engine/tailtrue/calc/validity.py").read_text(encoding="utf-8")).body
    if isinstance(node, ast.FunctionDef) and not node.name.startswith("_")
}
_NEVER = {"annotation", "returns", "decorator_list", "bases", "type_params", "ctx", "format_spec", "type_comment"}
_OPERATORS: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.Pow: ast.Mult,
    ast.FloorDiv: ast.Div, ast.Mod: ast.Mult, ast.MatMult: ast.Mult, ast.BitOr: ast.BitAnd, ast.BitAnd: ast.BitOr,
}  # fmt: skip
_COMPARISONS: dict[type[ast.cmpop], tuple[type[ast.cmpop], ...]] = {
    ast.Lt: (ast.LtE, ast.Gt), ast.LtE: (ast.Lt, ast.Gt), ast.Gt: (ast.GtE, ast.Lt), ast.GtE: (ast.Gt, ast.Lt),
    ast.Eq: (ast.NotEq,), ast.NotEq: (ast.Eq,), ast.In: (ast.NotIn,), ast.NotIn: (ast.In,),
    ast.Is: (ast.IsNot,), ast.IsNot: (ast.Is,),
}  # fmt: skip
_OTHER_CALL = {
    "min": "max", "max": "min", "floor": "ceil", "ceil": "floor", "any": "all", "all": "any", "sin": "cos", "cos": "sin",
    "positive": "finite",
}  # fmt: skip
_LEFT_OUT = {"abs", "sqrt", "radians", "degrees", "round"}  # f(x) becomes x
_SMALL = 1e-6  # below it a number only allows for rounding
_LARGE = 100  # from it on a whole number is moved by a share


@dataclass(frozen=True)
class Mutant:
    """One fault: `new` in place of `old`, which stands in `field` (and there at `index`, where it is a row) of `parent`."""

    function: str  # the outermost function or class it stands in; "" on the level of the module
    parent: ast.AST
    field: str
    index: int | None
    old: ast.AST
    new: ast.AST

    @property
    def line(self) -> int:
        """Line of the file on which the fault begins."""
        return int(getattr(self.old, "lineno", 0))

    def put(self) -> None:
        """Put the fault into the tree."""
        ast.fix_missing_locations(ast.copy_location(self.new, self.old))
        if self.index is None:
            setattr(self.parent, self.field, self.new)
        else:
            getattr(self.parent, self.field)[self.index] = self.new

    def text(self) -> str:
        """What stood there and what stands there now, on one line."""
        return " ".join(f"{ast.unparse(self.old)}  ->  {ast.unparse(self.new)}".split("\n"))


def mutants(tree: ast.Module) -> list[Mutant]:
    """Every fault to be tried, in the order of the lines.

    >>> tree = ast.parse("def half(a: float) -> float:\\n    positive(a, 'a', 'mm')\\n    return a / 2")
    >>> for fault in mutants(tree):
    ...     print(fault.line, fault.function, fault.text())
    2 half positive(a, 'a', 'mm')  ->  pass
    2 half positive(a, 'a', 'mm')  ->  finite(a, 'a', 'mm')
    3 half a / 2  ->  a * 2
    3 half 2  ->  3
    3 half 2  ->  1
    """
    return sorted(_below(tree, "", in_message=False), key=lambda fault: fault.line)


def _below(node: ast.AST, function: str, in_message: bool) -> Iterator[Mutant]:
    """The faults of whatever hangs below a node."""
    for field, value in ast.iter_fields(node):
        if field in _NEVER or (isinstance(node, ast.Call) and field == "func"):
            continue
        for index, child in enumerate(value) if isinstance(value, list) else [(None, value)]:
            if not isinstance(child, ast.AST) or isinstance(child, ast.Import | ast.ImportFrom):
                continue
            if isinstance(child, ast.Expr) and isinstance(child.value, ast.Constant):  # documentation
                continue
            if isinstance(child, ast.Subscript) and isinstance(child.value, ast.Name) and child.value.id == "Literal":
                continue
            of = function or (child.name if isinstance(child, ast.FunctionDef | ast.ClassDef) else "")
            message = in_message or isinstance(child, ast.Raise) or _called(child) in _CHECKS
            for new in _instead(child, message):
                yield Mutant(of, node, field, index, child, new)
            yield from _below(child, of, message)


def _called(node: ast.AST) -> str:
    return node.func.id if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) else ""


def _instead(node: ast.AST, in_message: bool) -> Iterator[ast.AST]:
    """What can stand by mistake in the place of a node."""
    match node:
        case ast.Expr(value=ast.Call()):
            yield ast.Pass()
        case ast.If(test=test, orelse=[]):
            yield ast.If(ast.UnaryOp(ast.Not(), test), node.body, [])
            yield ast.Pass()
        case ast.If(test=test):
            yield ast.If(test, node.orelse, node.body)
        case ast.IfExp():
            yield ast.IfExp(node.test, node.orelse, node.body)
        case ast.Break():
            yield ast.Continue()
        case ast.Continue():
            yield ast.Break()
        case ast.AugAssign(op=op) if type(op) in _OPERATORS:
            yield ast.AugAssign(node.target, _OPERATORS[type(op)](), node.value)
        case ast.comprehension(ifs=[_, *_]):
            yield ast.comprehension(node.target, node.iter, [], node.is_async)
        case ast.BinOp(op=op) if type(op) in _OPERATORS and not isinstance(node.left, ast.Constant | ast.JoinedStr):
            yield ast.BinOp(node.left, _OPERATORS[type(op)](), node.right)
        case ast.BinOp(left=ast.Constant(value=int() | float()), op=op) if type(op) in _OPERATORS:
            yield ast.BinOp(node.left, _OPERATORS[type(op)](), node.right)
        case ast.UnaryOp(op=ast.USub() | ast.Not()):
            yield node.operand
        case ast.BoolOp(op=op, values=values):
            yield ast.BoolOp(ast.Or() if isinstance(op, ast.And) else ast.And(), values)
            for left_out in range(len(values)):
                rest = [value for at, value in enumerate(values) if at != left_out]
                yield rest[0] if len(rest) == 1 else ast.BoolOp(op, rest)
        case ast.Compare(ops=ops):
            for at, sign in enumerate(ops):
                for other in _COMPARISONS[type(sign)]:
                    yield ast.Compare(node.left, [*ops[:at], other(), *ops[at + 1 :]], node.comparators)
        case ast.Call():
            yield from _calls_instead(node)
        case ast.Constant(value=value):
            yield from (ast.Constant(other) for other in _values_instead(value, in_message))


def _calls_instead(node: ast.Call) -> Iterator[ast.AST]:
    name = _called(node)
    if name in _OTHER_CALL:
        yield ast.Call(ast.Name(_OTHER_CALL[name], ast.Load()), node.args, node.keywords)
    if name == "up_to":
        yield ast.Call(ast.Name("between", ast.Load()), [node.args[0], ast.Constant(0), *node.args[1:]], node.keywords)
    if name in _LEFT_OUT:
        yield node.args[0]


def _values_instead(value: object, in_message: bool) -> list[bool | int | float | str]:
    match value:
        case bool():
            return [not value]
        case int() if abs(value) < _LARGE:
            return [value + 1, value - 1]
        case int():
            return [value + value // 100, value - value // 100]
        case float() if value == 0:
            return [0.01]
        case float() if abs(value) < _SMALL:
            return [0.0, value * 1000]
        case float():
            return [value * 1.01, value * 0.99]
        case str() if value and not in_message:
            return [value + "?"]
    return []
