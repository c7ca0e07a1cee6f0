"""What does not fit together in the knowledge of the safety review is found when it is loaded."""

import pytest

from planted import Planted, each, is_told, refused_at_load

# What is found while the files are read; then nothing is checked yet.
UNREADABLE: list[Planted] = [
    # file, what stands there, what is written instead, the place that must be told, what must be said of it
    ("safety/wear.toml", '["isolated"]', '["asleep"]', 'safety/wear.toml: id = "isolated"', "machine.0: input should be 'isolated', 'stopped' or 'turning'"),
    ("safety/checks.toml", "killer = true", "kiler = true", 'safety/checks.toml: id = "rear"', "rear: kiler: unknown field 'kiler'"),
    ("safety/eliminations.toml", "crib.dog_kind is safety", "crib.dog_kind is safe", 'safety/eliminations.toml: id = "no-sleeve-at-dog"', "'safe' is none"),
    ("safety/signatures.toml", 'part = "accepts"', 'part = "allows"', 'safety/signatures.toml: id = "accepts-shared"', "part: input should be 'accepts' or 'sign'"),
    ("cautions/start.toml", 'when = ["lathe.chuck_guard is interlocked"]', 'when = ["lathe.guard is yes"]', 'cautions/start.toml: id = "chuck-guard-open"', "no fact is named 'lathe.guard'"),
]  # fmt: skip
# What the check of the whole finds.
UNSOUND: list[Planted] = [
    ("safety/matrix.toml", "high = 16", "high = 15", "safety/matrix.toml", "class: the score 16 lies in no class or in two"),
    ("safety/matrix.toml", "low = 10", "low = 9", "safety/matrix.toml", "class: the score 9 lies in no class or in two"),
    ("safety/matrix.toml", "instruct = 1", "instruct = 2", "safety/matrix.toml", "lowers.instruct: an instruction or a thing worn lowers by more than one step"),
    ("safety/matrix.toml", "protect = 1\n", "", "safety/matrix.toml", "lowers: does not name each kind of control"),
    ("safety/matrix.toml", '"mil-std-882e"', '"hearsay"', "safety/matrix.toml", "matrix: source 'hearsay' is not in sources.toml"),
    ("safety/activities.toml", '"chuck-key", ', "", "steps/try-soft-jaws.md:1", "chuck-key: no part of the safety review holds this activity"),
    ("safety/activities.toml", '["skim", "power-feed"]', '["skim", "bore"]', "safety/activities.toml", "bore: stands in E and in I"),
    ("safety/chemicals.toml", 'id = "grease"', 'id = "tallow"', "safety/chemicals.toml", "tallow: is not in needs.toml"),
    ("safety/checks.toml", "{{ lathe.slowest }}", "{{ lathe.slowset }}", 'safety/checks.toml: id = "slow-start"', "slow-start: no fact is named 'lathe.slowset'"),
    ("safety/lines.toml", '"hse-indg73"', '"hearsay"', 'safety/lines.toml: id = "check-in"', "check-in: source 'hearsay' is not in sources.toml"),
    ("steps/measure-bar.md", 'machine = "stopped"', 'machine = "turning"', "steps/measure-bar.md:1", "measure: is done isolated or stopped, this step is turning"),
    ("steps/move-tailstock.md", 'machine = "isolated"', 'machine = "stopped"', "steps/move-tailstock.md:1", "move-tailstock: is done isolated, this step is stopped"),
    ("steps/hold-blank-jaws.md", 'machine = "isolated"', 'machine = "turning"', "steps/hold-blank-jaws.md:1", "grip-in-chuck: is done isolated, this step is turning"),
    ("steps/check-centre.md", 'machine = "isolated"', 'machine = "turning"', "steps/check-centre.md:1", "measure: is done isolated or stopped, this step is turning"),
    ("safety/states.csv", "deburr,isolated stopped,", "deburr,isolated asleep,", "safety/states.csv: deburr,", "isolated asleep: is no list of states of the machine"),
    ("safety/states.csv", "chuck-key,isolated", "bond,isolated", "safety/states.csv: bond,isolated,osha-1910-147", "bond: stands in two rows"),
    ("safety/not_met.toml", 'row = "GR-07"', 'row = "GR-08"', "safety/not_met.toml", "GR-08: is said not to be met, and a caution answers it"),
    ("cautions/grinding.toml", 'row = "GR-02"', 'row = "GR-01"', "safety/hazard_groups.csv: GR,", "GR-02: no caution answers this hazard"),
    ("safety/hazards.csv", "MC-01,", "MC-99,", "safety/hazards.csv", "MC-01: is not in the list of hazards"),
    ("safety/hazards.csv", "; gear-cover-open,", "; lead-screw-bare,", "safety/hazards.csv: MC-04,", "MC-04: names other cautions than those that answer this row"),
    ("cautions/grinding.toml", 'expect = "unknown"', 'expect = "silent"', 'cautions/grinding.toml: id = "soft-metal-on-the-wheel"', "soft-metal-on-the-wheel: has no example that is unknown"),
    ("stops/safety.toml", 'expect = "unknown"', 'expect = "silent"', 'stops/safety.toml: id = "chuck-guard-missing"', "chuck-guard-missing: has no example that is unknown"),
    ("cautions/tailstock.toml", 'held_at = "verify-tailstock"', 'held_at = "re-clamp"', 'cautions/tailstock.toml: id = "tailstock-worked-under-power"', "re-clamp: is no step with a hold"),
]  # fmt: skip
# What stands in the way of a fault above.
UNSOUND_TOO: list[Planted] = [
    ("safety/states.csv", "deburr,isolated", "debur,isolated", "steps/check-centre.md:1", "deburr: nothing says in which state this may be done"),
    ("safety/not_met.toml", 'row = "GR-07"', 'row = "GR-09"', "safety/not_met.toml", "GR-09: is no row of the list of hazards"),
    ("safety/hazards.csv", "MC-02,", "MC-01,", "safety/hazards.csv: MC-01,", "MC-01: is named before"),
]  # fmt: skip


@pytest.mark.parametrize(("fault", "group"), each(UNREADABLE, UNSOUND, UNSOUND_TOO))
def test_a_fault_is_told_with_its_place(fault: Planted, group: tuple[Planted, ...]) -> None:
    is_told(refused_at_load, fault, group)
