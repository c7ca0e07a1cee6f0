"""Templates compiled to plain attributes and plain calls: pages are typed, so nothing else is asked for."""

from typing import Any

from jinja2 import nodes
from jinja2.compiler import CodeGenerator, Frame

# The name under which a template has its page: what it calls there are methods, which want nothing handed over.
_PAGE = "page"
# Methods of pages whose texts are markup already: nothing of them is escaped again.
MARKED = frozenset({"text", "names", "instrument", "sources"})


class PlainCode(CodeGenerator):
    """Code that reads `a.b` as Python does; what is not there is an error, as a name that is not there."""

    def visit_Getattr(self, node: nodes.Getattr, frame: Frame) -> None:  # noqa: N802
        """An attribute, never a key."""
        self.visit(node.node, frame)
        self.write(f".{node.attr}")

    def visit_Getitem(self, node: nodes.Getitem, frame: Frame) -> None:  # noqa: N802
        """What stands at a place that is told by its number; under a name it may be a key or an attribute."""
        if not (isinstance(node.arg, nodes.Const) and isinstance(node.arg.value, int)):
            super().visit_Getitem(node, frame)
            return
        self.visit(node.node, frame)
        self.write(f"[{node.arg.value}]")

    def visit_CondExpr(self, node: nodes.CondExpr, frame: Frame) -> None:  # noqa: N802
        """One thing if it holds; without another, nothing."""
        if node.expr2 is None:
            node.expr2 = nodes.Const("")
        super().visit_CondExpr(node, frame)

    def visit_Call(self, node: nodes.Call, frame: Frame, forward_caller: bool = False) -> None:  # noqa: N802
        """A method of the page as it is; anything else through the one place that knows macros."""
        if node.kwargs or node.dyn_args or node.dyn_kwargs or forward_caller:
            super().visit_Call(node, frame, forward_caller=forward_caller)
            return
        if _method(node):
            self.visit(node.node, frame)
            self.write("(")
        else:
            self.write("context.call(")
            self.visit(node.node, frame)
            self.write(", " if node.args else "")
        for place, given in enumerate(node.args):
            self.write(", " if place else "")
            self.visit(given, frame)
        self.write(")")

    def _output_child_pre(self, node: nodes.Expr, frame: Frame, finalize: Any) -> None:
        if _method(node) in MARKED and frame.eval_ctx.autoescape and not frame.eval_ctx.volatile:
            self.write("(")
        else:
            super()._output_child_pre(node, frame, finalize)


def _method(node: nodes.Node) -> str:
    """The method of the page that is called; nothing where something else is."""
    called = node.node if isinstance(node, nodes.Call) else None
    whose = called.node if isinstance(called, nodes.Getattr) else None
    named = isinstance(called, nodes.Getattr) and isinstance(whose, nodes.Name) and whose.name == _PAGE
    return called.attr if named and isinstance(called, nodes.Getattr) else ""
