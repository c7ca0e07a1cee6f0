"""Templates compiled to plain attributes and plain calls: pages are typed, so nothing else is asked for."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import partial
from typing import Any, Generic, TypeVar

from jinja2 import nodes
from jinja2.compiler import CodeGenerator, Frame
from jinja2.utils import missing
from markupsafe import Markup, escape

_Thing = TypeVar("_Thing")

# Names a text markup without asking first whether it is markup already.
marked: Callable[[str], Markup] = partial(str.__new__, Markup)
# The name under which a template has its page.
_PAGE = "page"
# Methods of pages whose texts are markup already: nothing of them is escaped again.
MARKED = frozenset({"text", "names", "instrument", "sources"})


class Loop(Generic[_Thing]):
    """Where a loop is among its things."""

    __slots__ = ("_things", "index0")

    def __init__(self, things: Sequence[_Thing]) -> None:
        self._things = things
        self.index0 = 0

    @property
    def index(self) -> int:
        """The number of the thing, from one."""
        return self.index0 + 1

    @property
    def length(self) -> int:
        """How many things there are."""
        return len(self._things)

    @property
    def first(self) -> bool:
        """Whether this is the first thing."""
        return not self.index0

    @property
    def last(self) -> bool:
        """Whether this is the last thing."""
        return self.index0 + 1 == len(self._things)

    @property
    def nextitem(self) -> _Thing:
        """The thing after this one. IndexError behind the last."""
        return self._things[self.index0 + 1]


def _loop(things: Iterable[_Thing], _: object) -> Iterator[tuple[_Thing, Loop[_Thing]]]:
    loop = Loop(tuple(things))
    for loop.index0, thing in enumerate(loop._things):  # noqa: B020
        yield thing, loop


def _macro(_: object, written: Any, __: str, takes: Sequence[str], *___: object) -> Any:
    """A macro is the function that it was compiled to; what is not handed over is missing, as the function asks."""
    written.__defaults__ = (missing,) * len(takes)
    return written


# What compiled templates find under names of the template engine.
PLAIN_NAMES: Mapping[str, Any] = {"LoopContext": _loop, "Macro": _macro, "Markup": marked}


class PlainCode(CodeGenerator):
    """Code that reads `a.b` and calls `a(b)` as Python does; what is not there is an error, as a name that is not there."""

    def visit_Template(self, node: nodes.Template, frame: Frame | None = None) -> None:  # noqa: N802
        """A whole template. What it is handed is looked up once, not in each macro anew."""
        from jinja2.meta import find_undeclared_variables

        self._macros = {one.name for one in node.find_all(nodes.Macro)}
        self._imports = {one.target for one in node.find_all(nodes.Import)}
        handed = [nodes.ExprStmt(nodes.Name(name, "load")) for name in sorted(find_undeclared_variables(node))]
        node.body[:0] = handed
        super().visit_Template(node, frame)

    def visit_Getattr(self, node: nodes.Getattr, frame: Frame) -> None:  # noqa: N802
        """An attribute, never a key."""
        self.visit(node.node, frame)
        self.write(f".{node.attr}")

    def visit_Getitem(self, node: nodes.Getitem, frame: Frame) -> None:  # noqa: N802
        """What stands at a place, never an attribute."""
        self.visit(node.node, frame)
        self.write("[")
        self.visit(node.arg, frame)
        self.write("]")

    def visit_CondExpr(self, node: nodes.CondExpr, frame: Frame) -> None:  # noqa: N802
        """One thing if it holds; without another, nothing."""
        if node.expr2 is None:
            node.expr2 = nodes.Const("")
        super().visit_CondExpr(node, frame)

    def visit_Call(self, node: nodes.Call, frame: Frame, forward_caller: bool = False) -> None:  # noqa: N802
        """A call as it is: nothing that is called asks for what else the template knows."""
        if node.dyn_args or node.dyn_kwargs or forward_caller:
            self.fail("a call in a template hands over one thing after the other", node.lineno)
        self.visit(node.node, frame)
        self.write("(")
        for given in node.args:
            self.visit(given, frame)
            self.write(", ")
        for named in node.kwargs:
            self.write(f"{named.key}=")
            self.visit(named.value, frame)
            self.write(", ")
        self.write(")")

    def return_buffer_contents(self, frame: Frame, force_unescaped: bool = False) -> None:
        """What a macro has written is markup, whoever calls it."""
        del force_unescaped
        super().return_buffer_contents(frame)

    def _output_child_pre(self, node: nodes.Expr, frame: Frame, finalize: Any) -> None:
        if self._marked(node) and frame.eval_ctx.autoescape and not frame.eval_ctx.volatile:
            self.write("(")
        else:
            super()._output_child_pre(node, frame, finalize)

    def _marked(self, node: nodes.Node) -> bool:
        """Whether this is markup for certain: what a macro gives, or such a method of the page, or letters typed here."""
        if isinstance(node, nodes.CondExpr):
            either = (node.expr1, node.expr2 or nodes.Const(""))
            return all(isinstance(one, nodes.Const) and escape(one.value) == one.value for one in either)
        called = node.node if isinstance(node, nodes.Call) else None
        if isinstance(called, nodes.Name):
            return called.name in self._macros
        if isinstance(called, nodes.Getattr) and isinstance(called.node, nodes.Name):
            return called.node.name in self._imports or (called.node.name == _PAGE and called.attr in MARKED)
        return False
