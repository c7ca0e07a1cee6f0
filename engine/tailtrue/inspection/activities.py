"""Names of activities that the inspection knows by itself."""

# Marks that the order is judged by; none of them is a hazard of its own.
MARKS = frozenset(
    {
        "start-check", "measure-bar", "re-clamp", "verify-tailstock", "grip-on-band", "read-skims", "cut-collar", "cut-work",
        "prove-guard",
    }
)  # fmt: skip

# Hands are at the work or the chuck, so nothing may turn.
HANDS_IN = frozenset(
    {
        "grip-in-chuck", "mount-between-centres", "chuck-change", "heavy-part", "spacer-behind-work", "taper-shank-drill",
        "measure", "measure-bar", "gauge-bore", "move-tailstock", "re-clamp", "verify-tailstock", "deburr", "fit-centre",
        "handle-stock", "clear-chips", "inspect-bar", "marking-blue", "sweep", "level-machine", "set-back", "grip-in-collet",
        "jaw-change", "plug-in-jaws", "plug-out", "grip-in-soft-jaws", "mount-on-stub", "set-bar-true", "short-in-collet",
        "hold-arm", "clamp-to-faceplate",
    }
)  # fmt: skip

# What holds the work, or the lathe itself, is taken apart; or gloves are worn. Nothing may be able to start.
POWER_OFF = frozenset(
    {
        "bar-through-spindle", "chuck-change", "chuck-key", "grip-on-band", "grip-uneven", "heavy-part", "steady-rest",
        "spacer-behind-work", "move-tailstock", "re-clamp", "verify-tailstock", "set-back", "level-machine", "sweep",
        "bond", "degrease", "cure-wait", "heat-part", "cool-part", "press", "pour-metal", "saw-stock", "saw-collar-stock",
        "drill-press", "hand-saw", "pin", "set-screw", "tap", "ream-by-hand", "inspect-bar", "clean-up",
        "grind-tool", "grip-in-collet", "jaw-change", "plug-in-jaws", "plug-out", "grip-in-soft-jaws", "mount-on-stub",
        "grip-in-chuck", "mount-between-centres", "fit-centre", "set-bar-true", "short-in-collet",
        "centre-on-press", "upright-bar", "centre-punch", "hold-arm",
        "start-of-still-work", "look-at-still-lathe", "wipe-down", "clamp-to-faceplate",
    }
)  # fmt: skip

# How a collar may be fixed, and the activity whose hold says that it is.
RELEASED_BY = {
    "bond": "cure-wait",
    "press": "joint-check",
    "heat-part": "joint-check",
    "set-screw": "joint-check",
    "pin": "joint-check",
}
# Fixed with a bore smaller than the bar.
BY_INTERFERENCE = frozenset({"press", "heat-part"})
