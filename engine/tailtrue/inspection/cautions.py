"""Safety messages: each complete, its word right, and standing before what it protects."""

from collections.abc import Iterator

from tailtrue.inspection.activities import MARKS
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet, at
from tailtrue.parts import Caution, Signal, Text

_WORDS: dict[int, tuple[Signal, ...]] = {
    1: ("notice",),
    2: ("caution",),
    3: ("caution",),
    4: ("warning", "danger"),
    5: ("warning", "danger"),
}

_ONE_IN, _AT_ANY_LATHE = 10, 6


def before(sheet: Sheet, placed: Placed) -> Iterator[Caution]:
    """The cautions a reader has met in this phase when the hand comes to a step."""
    yield from sheet.procedure.job_cautions
    yield from placed.phase.cautions
    for step in placed.phase.steps[: placed.place + 1]:
        yield from step.cautions


def answered(sheet: Sheet) -> Iterator[Fault]:
    """Every activity is answered by a caution that stands before it."""
    for phase, steps in sheet.by_phase:
        met = {answer for caution in (*sheet.procedure.job_cautions, *phase.cautions) for answer in caution.answers}
        for placed in steps:
            met.update(answer for caution in placed.step.cautions for answer in caution.answers)
            for activity in placed.step.activities:
                if activity not in MARKS and activity not in met:
                    yield Fault(placed.where, f'no caution before this step answers the activity "{activity}"')


def must_say_said(sheet: Sheet) -> Iterator[Fault]:
    """What must be said of an activity in every shop is said by then, there or anywhere before."""
    said = {caution.id for caution in sheet.procedure.job_cautions}
    for placed in sheet.steps:
        said |= {caution.id for caution in (*placed.phase.cautions, *placed.step.cautions)}
        due = {name for activity in placed.step.activities for name in sheet.shop.must_say.get(activity, ())}
        for name in sorted(due - said):
            yield Fault(placed.where, f'the caution "{name}" must stand before this step and does not')


def danger_stands(sheet: Sheet) -> Iterator[Fault]:
    """Turning work kills, so a DANGER that answers it stands before it."""
    for placed in sheet.steps:
        if placed.step.machine != "turning":
            continue
        dangers = (caution for caution in before(sheet, placed) if caution.signal == "danger")
        if not any(set(caution.answers) & set(placed.step.activities) for caution in dangers):
            yield Fault(placed.where, "the spindle turns and no DANGER before this step answers what is done here")


def danger_is_rare(sheet: Sheet) -> Iterator[Fault]:
    """The gravest word is kept for few: a tenth of the unlike messages, on a short sheet those that kill at any lathe."""
    # What the shop added stands under its own name and reason.
    unlike = {caution.id: caution for _, caution in sheet.cautions if not caution.shop_rule}
    dangers = [caution for caution in unlike.values() if caution.signal == "danger"]
    most = max(len(unlike) // _ONE_IN, _AT_ANY_LATHE)
    if len(dangers) > most:
        yield Fault("whole sheet", f"{len(dangers)} unlike messages say DANGER, {most} of {len(unlike)} is the most")


def complete(sheet: Sheet) -> Iterator[Fault]:
    """A message names hazard, harm, way out, what it answers and where it is from."""
    for where, caution in sheet.cautions:
        lacks = {
            "a hazard": not caution.hazard.strip(),
            "a harm": not caution.harm.strip(),
            "a way to avoid it": not caution.avoid or any(_blank(line) for line in caution.avoid),
            "an activity that it answers": not caution.answers,
            "a source": not caution.sources,
        }
        for what, missing in lacks.items():
            if missing:
                yield Fault(where, f"this caution lacks {what}")


def _blank(text: Text) -> bool:
    return all(isinstance(piece, str) and not piece.strip() for piece in text)


def repeated_in_full(sheet: Sheet) -> Iterator[Fault]:
    """A message shortened to a line stands in full before it, where it points to. No DANGER is shortened."""
    full: dict[tuple[str, str], Caution] = {}
    for place, where, caution in _in_order(sheet):
        if not caution.again:
            full[place, caution.id] = caution
        elif caution.signal == "danger":
            yield Fault(where, f'the DANGER "{caution.id}" is shortened to a line')
        elif full.get((caution.again, caution.id)) != caution.model_copy(update={"again": ""}):
            yield Fault(where, f'the caution "{caution.id}" points to {caution.again}, where it does not stand in full')


def _in_order(sheet: Sheet) -> Iterator[tuple[str, str, Caution]]:
    yield from (("", f"front, caution {caution.id}", caution) for caution in sheet.procedure.job_cautions)
    for phase in sheet.procedure.phases:
        for caution in phase.cautions:
            yield phase.number, f"phase {phase.number}, caution {caution.id}", caution
        for step in phase.steps:
            for caution in step.cautions:
                yield step.number, f"{at(step)}, caution {caution.id}", caution


def signal_word(sheet: Sheet) -> Iterator[Fault]:
    """The signal word is the one that belongs to the severity."""
    for where, caution in sheet.cautions:
        allowed = _WORDS.get(caution.severity)
        if allowed is None:
            yield Fault(where, f"severity {caution.severity} is none of 1 to 5")
        elif caution.signal not in allowed:
            words = " or ".join(word.upper() for word in allowed)
            yield Fault(where, f"severity {caution.severity} asks for {words}, here {caution.signal.upper()}")


def few_enough(sheet: Sheet) -> Iterator[Fault]:
    """A pile of messages at one step is not read; what is left over from it is never a DANGER."""
    shop = sheet.shop
    for placed in sheet.steps:
        count = len(placed.step.cautions)
        if count > shop.messages_at_step:
            yield Fault(placed.where, f"{count} cautions stand at this step, {shop.messages_at_step} is the most")
    for phase in sheet.procedure.phases:
        if len(phase.cautions) > sheet.shop.messages_at_phase:
            what = f"{len(phase.cautions)} cautions open this phase, {sheet.shop.messages_at_phase} is the most"
            yield Fault(f"phase {phase.number}", what)
        lesser = [step for step in phase.steps if any(one.signal != "danger" for one in step.cautions)]
        for caution in phase.cautions:
            met = [step for step in lesser if caution.signal == "danger" and set(caution.answers) & set(step.activities)]
            if met:
                yield Fault(at(met[0]), f'the DANGER "{caution.id}" opens the phase and lesser words stand at this step')


def at_its_step(sheet: Sheet) -> Iterator[Fault]:
    """A message stands where its hazard is first met: at the step, at the start check right before, or at the opening."""
    for phase in sheet.procedure.phases:
        works = [set(step.activities) for step in phase.steps]
        for caution in phase.cautions:
            if not any(set(caution.answers) & work for work in works):
                yield Fault(f"phase {phase.number}", f'no step of this phase does what the caution "{caution.id}" is about')
        for place, step in enumerate(phase.steps):
            about = works[place].union(*(works[place + 1 : place + 2] if "start-check" in works[place] else ()))
            for caution in step.cautions:
                answers = set(caution.answers)
                met = next((at(one) for one, work in zip(phase.steps[:place], works, strict=False) if answers & work), None)
                if not answers & about:
                    yield Fault(at(step), f'this step does nothing that the caution "{caution.id}" is about')
                elif met:
                    yield Fault(at(step), f'the caution "{caution.id}" comes late: {met} does what it is about')


def no_gloves(sheet: Sheet) -> Iterator[Fault]:
    """Gloves are worn only while the lathe is isolated."""
    live = [placed.step for placed in sheet.steps if placed.step.machine != "isolated"]
    if live:
        for caution in sheet.procedure.job_cautions:
            yield from _gloves(caution, "front", "for the whole job, in which the spindle can turn")
    for phase in sheet.procedure.phases:
        first = next((step for step in phase.steps if step.machine != "isolated"), None)
        if first is not None:
            for caution in phase.cautions:
                yield from _gloves(caution, f"phase {phase.number}", f"while {at(first)} is not isolated")
    gloves = {need.id for need in sheet.procedure.needs if need.kind == "wear" and _glove(need.id, *need.name)}
    for step in live:
        for caution in step.cautions:
            yield from _gloves(caution, at(step), "at a step that is not isolated")
        for tool in step.tools:
            if tool in gloves or _glove(tool):
                yield Fault(at(step), f'"{tool}" is to be worn at a step that is not isolated')


def _gloves(caution: Caution, where: str, when: str) -> Iterator[Fault]:
    if _glove(*caution.protective_equipment):
        yield Fault(where, f'caution "{caution.id}" asks for gloves {when}')


def _glove(*pieces: object) -> bool:
    return any("glove" in str(piece).lower() for piece in pieces)
