"""Fits of the ways that go on by hand and are held by screws or pins."""

from tailtrue.computed.registry import computed
from tailtrue.tables import Table

_FIT = {"target": ("target_fit", "target_mm"), "least": ("window_fit", "least_mm"), "largest": ("window_fit", "largest_mm")}
_LABELS = {
    "target": "clearance wanted, on diameter",
    "least": "least clearance, on diameter",
    "largest": "largest clearance, on diameter",
}
_BOUNDS = {"target": "nearest", "least": "least", "largest": "most"}
_WAYS = {
    "set-screws": "for set screws",
    "radial-pin": "for a pin across",
    "split-clamp": "for a split collar",
}


def _fit(method: str, end: str) -> None:
    which, column = _FIT[end]

    @computed(f"joint.{method.replace('-', '_')}.{end}", label=f"{_LABELS[end]}, {_WAYS[method]}", unit="mm", rounding="fit",
              bound=_BOUNDS[end], needs=("bar.diameter",), tables=("joints/slip_fits", "fits/attachment_clearance"),
              how="from the table of clearances for ways of fixing a collar")  # fmt: skip
    def _row(diameter: float, fits: Table, clearances: Table) -> float:
        return clearances.within(diameter, "over_mm", "upto_mm", method=fits.one(method=method).text(which)).number(column)


for _method in _WAYS:
    for _end in _FIT:
        _fit(_method, _end)
