"""What no job can reach is told."""

from dataclasses import replace

from tailtrue.advise import knowledge
from tailtrue.store.dead import dead_entries

# They stand on the back of the sheet beside what is chosen, and an earlier alternative always holds where they do.
NEVER_FIRST = {
    "alternative bar.hold: collet (row 4)",
    "alternative collar.hold: soft-jaws (row 4)",
    "alternative collar.hold: faceplate (row 5)",
    "alternative bore.make: reamed (row 4)",
    "alternative hole.way: trepanned (row 4)",
}


def test_nothing_is_dead_but_what_is_shown_beside_the_choice() -> None:
    assert set(dead_entries(knowledge())) <= NEVER_FIRST


def test_a_step_on_no_route_is_dead_and_so_is_what_only_it_uses() -> None:
    known = knowledge()
    routes = {name: route for name, route in known.routes.items() if name == "height-and-droop"}
    found = set(dead_entries(replace(known, routes=routes)))
    assert "step bond" in found
    assert "need compound" in found
    assert "rule bore-runs-into-the-chuck" in found


def test_an_alternative_that_no_example_makes_win_is_dead() -> None:
    known = knowledge()
    examples = {**known.decision_examples, "bore.gauge": known.decision_examples["bore.gauge"][:1]}
    found = set(dead_entries(replace(known, decision_examples=examples)))
    assert "alternative bore.gauge: telescoping (row 3)" in found
