"""Templates compiled to plain attributes and plain calls of the page: pages are typed, so nothing else is asked for."""

from jinja2 import nodes
from jinja2.compiler import CodeGenerator, Frame

# The name under which a template has its page: what it calls there are methods, which want nothing handed over.
_PAGE = "page"


class PlainCode(CodeGenerator):
    """Code that reads `a.b` as Python does; what is not there is an error, as a name that is not there."""

    def visit_Getattr(self, node: nodes.Getattr, frame: Frame) -> None:  # noqa: N802
        """An attribute, never a key."""
        self.visit(node.node, frame)
        self.write(f".{node.attr}")

    def visit_Call(self, node: nodes.Call, frame: Frame, forward_caller: bool = False) -> None:  # noqa: N802
        """A method of the page as it is; anything else as templates call it."""
        called = node.node
        whose = called.node if isinstance(called, nodes.Getattr) else None
        plain = not (node.kwargs or node.dyn_args or node.dyn_kwargs or forward_caller)
        if not (plain and isinstance(whose, nodes.Name) and whose.name == _PAGE):
            super().visit_Call(node, frame, forward_caller=forward_caller)
            return
        self.visit(called, frame)
        self.write("(")
        for place, given in enumerate(node.args):
            self.write(", " if place else "")
            self.visit(given, frame)
        self.write(")")
