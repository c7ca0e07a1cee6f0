"""A diagnosis in words: lines of the page, each part in its place. Every sentence comes from the knowledge."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from tailtrue.diagnosis.answer import AXIS, NO_FAULT, Diagnosis
from tailtrue.diagnosis.judging import Judged
from tailtrue.diagnosis.knowing import Cause
from tailtrue.parts import Bound, Figure, Text
from tailtrue.wording import Place, Wording

PARTS = ("answer", "ranks", "explains", "first", "found", "do", "next", "careful", "limits")

TOWARD = "toward you"
AWAY = "away from you"
_NO_FAULT = "no fault at all"
_K = 2.0
_THOU_PER_FT = 12.0  # in one mm/m
_MOST_EXPLAINED = 4  # rivals


@dataclass(frozen=True)
class Line:
    """One thing that is said: which part it belongs to, which entry of the knowledge says it."""

    id: str
    part: str
    text: Text


class Teller:
    """Says one diagnosis."""

    def __init__(self, found: Diagnosis) -> None:
        self.found = found
        self.causes = found.knowledge.causes
        self.over = found.knowledge.figures[f"over_{found.setup.dials}"]

    def lines(self) -> tuple[Line, ...]:
        """Everything that is said, part by part."""
        return tuple(
            Line(one.id, one.part, one.text)
            for part, of in (
                ("answer", self._answer), ("ranks", self._ranks), ("explains", self._explains),
                ("first", self._left_out), ("found", self._findings),
                ("do", self._corrections), ("next", self._next), ("careful", self._careful), ("limits", self._limits),
            )
            for one in of(part)
        )  # fmt: skip

    def rivals(self, ids: tuple[str, ...], joined: str = "or") -> str:
        """Causes by name in a row."""
        names = [_NO_FAULT if one == NO_FAULT else self.causes[one].name for one in ids]
        return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} {joined} {names[-1]}"

    def earlier(self) -> tuple[str, ...]:
        """Causes that keep the tailstock where it is until they are mended."""
        found, mine = self.found, self.causes["tailstock"].order
        bad = [one for one, judged in found.judged.items() if judged.verdict == "bad"]
        blocking = [one for one in found.named if self.causes[one].order < mine and self._verdict(one) != "good"]
        blocking += [one for one in ("bed-twist",) if one in bad and one not in blocking]
        if AXIS in bad and not {"bed-twist", "headstock"} & set(blocking):
            blocking.append("headstock" if "headstock" in found.estimates else "bed-twist")
        if self._loose() and "clamping" not in blocking:
            blocking.append("clamping")
        return tuple(sorted(blocking, key=lambda one: self.causes[one].order))

    def _verdict(self, cause: str) -> str:
        name = AXIS if cause == "headstock" else cause
        return self.found.judged[name].verdict if name in self.found.judged else ""

    def _loose(self) -> bool:
        found = self.found.clamping
        return found is not None and found.clamped_deviation_mm > self._clamp_limit()

    def _clamp_limit(self) -> float:
        return self.found.knowledge.figures["clamp_share"] * self.found.setup.limit_mm

    def _answer(self, part: str) -> Iterator[Line]:
        found = self.found
        if found.answer in ("nothing", "unexplained"):
            yield self._said(found.answer, part)
        elif found.answer == "named":
            for number, one in enumerate(found.named):
                words = {"the.cause": _begun(self.causes[one].name) if not number else self.causes[one].name}
                yield self._said("also" if number else "named", part, {**words, "the.share": _share(found.weights[one])})
        elif len(found.rivals) > 1:
            first, rest = self.rivals(found.rivals[:1]), self.rivals(found.rivals[1:])
            yield self._said("cannot_tell", part, {"the.rivals": f"{first} from {rest}"})
        else:
            yield self._said("unsure", part)
        rivals = tuple(one for one in found.rivals if one != NO_FAULT)
        if rivals and (found.answer in ("named", "nothing") or len(found.rivals) == 1):
            yield self._said("might_be", part, {"the.rivals": self.rivals(rivals)})

    def _ranks(self, part: str) -> Iterator[Line]:
        """Every cause heavy enough to be a rival: its rank, its weight, and what it leaves over by itself."""
        found = self.found
        if found.answer == "unexplained":
            return
        weights = {**found.weights, NO_FAULT: found.alone[NO_FAULT].weight}
        heavy = {one: weight for one, weight in weights.items() if weight >= found.knowledge.figures["rival_from"]}
        shown = {one: int(_share(weight)) for one, weight in heavy.items()}
        for one in sorted(heavy, key=lambda one: -heavy[one]):
            alone = found.alone[one]
            words = {
                # Causes whose shares read the same have the same rank.
                "the.rank": str(1 + sum(share > shown[one] for share in shown.values())),
                "the.cause": self.rivals((one,)),
                "the.share": str(shown[one]),
            }
            if one != NO_FAULT and not alone.sizes:
                yield self._said("ranked_by_repeats", part, words)
                continue
            words |= {"the.misfit": f"{alone.chi_squared:.1f}", "the.spare": str(alone.freedom or "none")}
            yield self._said("ranked_no_fault" if one == NO_FAULT else "ranked", part, words)
        if len(heavy) > 1:
            yield self._said("ranks_read", part)

    def _explains(self, part: str) -> Iterator[Line]:
        found = self.found
        if found.answer in ("nothing", "unexplained"):
            return
        rivals = tuple(one for one in found.rivals if one != NO_FAULT)
        for one in (*found.named, *rivals[:_MOST_EXPLAINED]):
            yield Line(one, part, (self.causes[one].explains,))
        worse = found.best.chance_of_worse
        if worse is None:
            yield self._said("no_spare", part)
        else:
            yield self._said("good_fit" if worse >= found.knowledge.figures["good_fit_from"] else "poor_fit", part)

    def _left_out(self, part: str) -> Iterator[Line]:
        for kind, size in self.found.left_out.items():
            name = {"sweep": "left_out_sweep", "indicator_on_collars": "left_out_indicator"}.get(kind, "left_out_slip")
            words = {"the.test": self.found.knowledge.tests[kind].name}
            yield self._said(name, part, words, {"it.size": self._length(size)})

    def _findings(self, part: str) -> Iterator[Line]:
        found = self.found
        for cause in sorted(self.causes.values(), key=lambda one: one.order):
            judged, estimate = found.judged.get(cause.id), found.estimates.get(cause.id)
            if estimate is not None:
                yield self._estimate(cause, estimate.value, _K * estimate.standard_uncertainty, part)
            if judged is not None:
                yield self._limit(cause.id, judged, part)
        if AXIS in found.estimates:
            yield from self._axis(part)
        if found.clamping is not None:
            yield from self._clamping(part)

    def _axis(self, part: str) -> Iterator[Line]:
        found, judged = self.found, self.found.judged[AXIS]
        estimate = found.estimates[AXIS]
        figures = {
            "it.size": self._length(abs(estimate.value) * self.over),
            "it.doubt": self._length(_K * estimate.standard_uncertainty * self.over, "least"),
            "it.over": self._span(),
        }
        sign = abs(judged.value) > judged.doubt
        yield self._said("path_by_axis" if sign else "path_along_axis", part, {"the.way": _way(estimate.value)}, figures)
        yield self._limit(AXIS, judged, part)
        if judged.verdict == "bad":
            apart = estimate.value * found.setup.span_mm
            doubt = _K * estimate.standard_uncertainty * found.setup.span_mm
            figures = {"it.size": self._length(abs(apart)), "it.doubt": self._length(doubt, "least")}
            yield self._said("disagree", part, {"the.way": _way(apart)}, figures)

    def _clamping(self, part: str) -> Iterator[Line]:
        found = self.found.clamping
        if found is None:
            return
        figures = {
            "it.size": self._length(found.clamped_deviation_mm),
            "it.limit": self._length(self._clamp_limit(), "most"),
        }
        yield self._said("scatter" if self._loose() else "scatter_good", part, figures=figures)
        doubt = _K * found.shift_deviation_mm / (found.degrees_of_freedom + 1) ** 0.5
        if abs(found.mean_shift_mm) > doubt:
            way = "into" if found.mean_shift_mm > 0 else "away from"
            figures = {"it.size": self._length(abs(found.mean_shift_mm)), "it.doubt": self._length(doubt, "least")}
            yield self._said("shift", part, {"the.way": way}, figures)

    def _estimate(self, cause: Cause, value: float, doubt: float, part: str) -> Line:
        times = self.over if cause.kind == "slope" else 1.0
        figures = {
            "it.size": self._length(abs(value) * times),
            "it.doubt": self._length(doubt * times, "least"),
            "it.over": self._span(),
        }
        if abs(value) <= doubt:
            name = "no_sign_slope" if cause.kind == "slope" else "no_sign"
            return self._said(name, part, {"the.cause": cause.name}, figures)
        text = cause.plus if value >= 0 or not cause.minus else cause.minus
        return self._filled(cause.id, part, text, {}, figures)

    def _limit(self, name: str, judged: Judged, part: str) -> Line:
        if judged.row is None:
            figures = {"it.limit": self._length(judged.limit, "most")}
            return self._said(f"tailstock_{judged.verdict}", part, figures=figures)
        row = judged.row
        limit: Text
        if row.text("unit") == "mm/m":
            limit = (level_words(judged.limit, self.found.setup.dials),)
        elif row.text("over_mm"):
            limit = (self._length(judged.limit, "most"), " over ", self._span())
        else:
            limit = (self._length(judged.limit, "most"),)
        words: dict[str, Text] = {
            "the.limit": limit,
            "the.allowed": (row.text("condition"),),
            "the.document": (row.text("specification"),),
        }
        return self._filled(f"{name}-limit", part, self.found.knowledge.says[judged.verdict], words, {})

    def _corrections(self, part: str) -> Iterator[Line]:
        found = self.found
        if found.answer == "unexplained":
            return
        earlier = self.earlier()
        for one in sorted({*found.named, *earlier} - {"tailstock"}, key=lambda one: self.causes[one].order):
            if self._verdict(one) != "good":
                yield Line(one, part, (self.causes[one].action,))
        moving = list(self._tailstock(part, earlier))
        first = {"bed-twist", "headstock"}
        in_doubt = first & set(found.not_settled) and any(not one.id.startswith("leave") for one in moving)
        if first & {*found.named, *earlier} or in_doubt:
            yield self._said("order", part)
        yield from moving

    def _tailstock(self, part: str, earlier: tuple[str, ...]) -> Iterator[Line]:
        judged = self.found.judged.get("tailstock")
        if judged is None:
            return
        if judged.verdict == "good":
            yield self._said("leave_in_limits", part)
        elif abs(judged.value) <= judged.doubt:
            yield self._said("leave_in_doubt", part)
        elif earlier:
            yield self._said("tailstock_later", part, {"the.cause": self.rivals(earlier, "and")})
        elif self.found.answer == "cannot-tell" or "tailstock" in self.found.rivals:
            yield self._said("tailstock_open", part)
        elif judged.verdict == "close":
            yield self._said("tailstock_again", part)
        else:
            figures = {"it.size": self._length(abs(judged.value)), "it.doubt": self._length(judged.doubt, "least")}
            name = "move" if self.found.setup.has_screws else "no_screws"
            yield self._said(name, part, {"the.way": _way(-judged.value)}, figures)

    def _next(self, part: str) -> Iterator[Line]:
        test = self.found.next_test
        if test is not None:
            words = {"the.test": test.name, "the.minutes": str(test.minutes), "the.needs": test.needs}
            yield self._said("next", part, words)
            yield Line(test.id, part, (test.shows,))
            yield Line(test.id, "careful", (test.caution,))
            if test.id == "chucked_bar":
                most = {"the.most": f"{self.found.setup.most_overhang:g}"}
                yield self._said("stick_out", "careful", most)
        elif self.found.answer == "cannot-tell":
            yield self._said("next_none", part)

    def _careful(self, part: str) -> Iterator[Line]:
        made = self.found.made
        if "chucked_bar" in made:
            out, across = (float(made["chucked_bar"][key]) for key in ("stick_out", "bar_diameter"))
            if out > self.found.setup.most_overhang * across:
                words = {"the.times": f"{out / across:.1f}", "the.most": f"{self.found.setup.most_overhang:g}"}
                yield self._said("overhang", part, words, {"it.size": self._length(out, rounding="length")})
        yield self._said("spindle", part)

    def _limits(self, part: str) -> Iterator[Line]:
        if {"bed-twist", "headstock"} <= set(self.found.not_settled):
            yield self._said("bed_or_headstock", part)
        if self.found.not_settled:
            yield self._said("not_seen", part, {"the.rivals": self.rivals(self.found.not_settled, "and")})
        for kind in self.found.made.tests:
            yield Line(
                kind, part, (f"{_begun(self.found.knowledge.tests[kind].name)}: ", self.found.knowledge.tests[kind].cannot)
            )

    def _said(
        self, name: str, part: str, words: Mapping[str, str] | None = None, figures: Mapping[str, Figure] | None = None
    ) -> Line:
        texts = {key: (value,) for key, value in (words or {}).items()}
        return self._filled(name, part, self.found.knowledge.says[name], texts, figures or {})

    def _filled(self, name: str, part: str, text: Wording, words: Mapping[str, Text], figures: Mapping[str, Figure]) -> Line:
        def value(place: Place) -> Text:
            return words[place.name] if place.name in words else (figures[place.name],)

        return Line(name, part, text.fill(value))

    def _length(self, size_mm: float, bound: Bound = "nearest", rounding: str = "difference") -> Figure:
        return Figure.model_validate(
            {"fact": "diagnosis", "value": size_mm, "unit": "mm", "rounding": rounding, "bound": bound}
        )

    def _span(self) -> Figure:
        return self._length(self.over, rounding="length")


def level_words(mm_per_m: float, dials: str) -> str:
    """A slope as a level shows it.

    >>> level_words(0.04, "metric"), level_words(0.04, "inch")
    ('0.04 mm/m', '0.5 thou/ft')
    """
    return f"{mm_per_m:.2f} mm/m" if dials == "metric" else f"{mm_per_m * _THOU_PER_FT:.1f} thou/ft"


def _way(value: float) -> str:
    return TOWARD if value >= 0 else AWAY


def _share(weight: float) -> str:
    return f"{min(99, max(1, round(100 * weight)))}"


def _begun(text: str) -> str:
    return text[0].upper() + text[1:]
