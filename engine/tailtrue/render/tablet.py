"""The script that shows a sheet one step at a time, and the policy that lets this script run and nothing be fetched."""

import base64
import hashlib
from dataclasses import dataclass
from functools import lru_cache

from markupsafe import Markup

from tailtrue.places import templates_folder


@dataclass(frozen=True)
class Script:
    """A script as it stands in the page, and the Content-Security-Policy that goes with it."""

    text: Markup
    policy: str


@lru_cache(maxsize=1)
def tablet_style() -> str:
    """How the sheet looks while one step is shown at a time: its letters are large in any print."""
    return (templates_folder() / "tablet.css").read_text(encoding="utf-8")


@lru_cache(maxsize=1)
def script() -> Script:
    """The script of the sheet. Its policy names it by its fingerprint: no other script runs, and no request leaves."""
    text = (templates_folder() / "tablet.js").read_text(encoding="utf-8")
    mark = base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()
    allowed = (
        "default-src 'none'", f"script-src 'sha256-{mark}'", "style-src 'unsafe-inline'", "img-src data:",
        "base-uri 'none'", "form-action 'none'",
    )  # fmt: skip
    return Script(Markup(text), "; ".join(allowed))
