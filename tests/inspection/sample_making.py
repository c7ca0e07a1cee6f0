"""Phases of the sample in which the bar is made."""

from tailtrue.parts import Blank, Check, Limits, Setting
from tailtrue.procedure import Hold, Phase, Step

from .sample_pieces import caution, depth, figure, hand_feed, mm, power_feed, speed, start_check, written

# The dial opens the bore by more than the room between its two sizes: an indicator on the slide is told.
FINE = Setting(label=("one step of the last cut opens the bore by",), value=(mm("bore.fine_step", 0.02, "depth"),))


def making() -> tuple[Phase, ...]:
    """Face the bar, bore the collars, bond them."""
    return (_ends(), _collars(), _bond())


def _ends() -> Phase:
    return Phase(
        id="bar-ends",
        number="1",
        title="Face both ends",
        each=("end A", "end B"),
        steps=(
            Step(
                id="hold-bar",
                number="1.1",
                title="Grip the bar",
                machine="isolated",
                activities=("grip-in-chuck", "bar-through-spindle"),
                cautions=(
                    caution("bar-behind", "danger", "bar-through-spindle"),
                    caution("key-left-in", "warning", "grip-in-chuck"),
                ),
                text=(("Unlock the saddle. Run the carriage back. Slide the bar into the spindle. Tighten the chuck.",),),
                settings=(
                    Setting(label=("not above",), value=(figure("chuck.speed_limit", 1800, "1/min", "speed"),)),
                    Setting(
                        label=("standing out",), value=(mm("bar.short_overhang", 30),), reason=("so that it cannot whip",)
                    ),
                ),
                checks=(written("Rear of the spindle: nothing stands out.", "seen by"),),
                hold=Hold(
                    text=("No work before the safety review, SW-L2-014, is signed.",),
                    releases="whoever accepts it",
                    go_back_to="hold-bar",
                ),
                tools=("chuck",),
                boxes=("end A", "end B"),
            ),
            start_check("1.2"),
            Step(
                id="face-bar",
                number="1.3",
                title="Face the end",
                machine="turning",
                activities=("turning",),
                cautions=(caution("digs-in", "warning", "turning"),),
                text=(("Feed from the rim to the middle.",),),
                settings=(speed("bar.speed", 800), hand_feed("bar.pace", 0.083), depth("bar.depth", 0.25)),
                tools=("turning-tool",),
                boxes=("end A", "end B"),
            ),
        ),
    )


def _collars() -> Phase:
    drill = Setting(
        label=("Drill ", mm("hole.ladder.size", 20.0, "tool")),
        value=(figure("hole.ladder.speed", 500, "1/min", "speed"),),
        reason=("feed about ", figure("hole.ladder.hand_feed", 0.11, "mm/rev", "feed")),
    )
    return Phase(
        id="collars",
        number="2",
        title="Bore the collars",
        each=("collar 1", "collar 2"),
        steps=(
            Step(
                id="hold-blank",
                number="2.1",
                title="Grip the blank",
                machine="isolated",
                activities=("grip-in-chuck",),
                cautions=(caution("short-grip", "warning", "grip-in-chuck"),),
                text=(
                    (
                        "Isolate the lathe. Unlock the saddle. Run the carriage back. Seat the blank for collar 1 as in step 1.1.",
                    ),
                ),
                tools=("chuck",),
            ),
            start_check("2.2"),
            Step(
                id="drill-blank",
                number="2.3",
                title="Drill through",
                machine="turning",
                activities=("drill",),
                cautions=(caution("drill-grabs", "warning", "drill"),),
                text=(("Feed in pecks.",), ("Repeat until it is through, ten times at most.",)),
                settings=(drill,),
                tools=("drills",),
            ),
            Step(
                id="measure-bar",
                number="2.4",
                title="Measure the bar",
                machine="stopped",
                activities=("measure", "measure-bar"),
                cautions=(caution("lever-bumped", "warning", "measure"),),
                text=(("Take the drill out of the quill. Measure at three places.",),),
                checks=(Check(text=("Three places.",), blanks=(Blank(label="bar", unit="mm", count=3),)),),
                hold=Hold(text=("Go on only with three readings.",), releases="the operator", go_back_to="measure-bar"),
                tools=("micrometer-bar",),
            ),
            start_check("2.5"),
            Step(
                id="bore-finish",
                number="2.6",
                title="Bore to size",
                machine="turning",
                activities=("bore", "turning"),
                cautions=(caution("bar-hits-chuck", "warning", "bore", "turning"),),
                text=(("Take ", figure("bore.cuts", 3, "1", "count"), " equal light cuts."),),
                settings=(speed("bore.speed", 500), power_feed("bore.feed", 0.05), depth("bore.depth", 0.1), FINE),
                tools=("boring-bar",),
            ),
            Step(
                id="gauge-bore",
                number="2.7",
                title="Gauge the bore",
                machine="stopped",
                activities=("gauge-bore",),
                cautions=(caution("finger-in-bore", "warning", "gauge-bore"),),
                text=(("Gauge both ends of the bore. Run the carriage back.",),),
                checks=(
                    Check(
                        text=("Bore.",),
                        limits=Limits(low=mm("bore.head_low", 22.03, "fit"), high=mm("bore.head_high", 22.09, "fit")),
                        instrument="bore-gauge",
                        uncertainty=mm("bore.gauge_uncertainty", 0.012, "fit"),
                        blanks=(Blank(label="bore", unit="mm"),),
                    ),
                ),
                tools=("bore-gauge",),
            ),
        ),
    )


def _bond() -> Phase:
    return Phase(
        id="bond",
        number="3",
        title="Bond the collars",
        cautions=(caution("compound-on-skin", "caution", "bond", "cure-wait", wear=("nitrile gloves",)),),
        steps=(
            Step(
                id="bond",
                number="3.1",
                title="Bond both collars",
                machine="isolated",
                activities=("bond",),
                text=(("Isolate the lathe. Push each collar on with a slow twist.",),),
                settings=(
                    Setting(
                        label=("torque each bond carries",),
                        value=(figure("joint.torque", 30000, "N mm", "torque"),),
                        reason=("a catch asks ", figure("joint.catch_torque", 20000, "N mm", "torque")),
                    ),
                ),
                tools=("compound", "nitrile-gloves"),
            ),
            Step(
                id="cure",
                number="3.2",
                title="Let the bond cure",
                machine="isolated",
                activities=("cure-wait",),
                text=(("Lay the bar level for ", figure("joint.cure_wait", 86400, "s", "time"), "."),),
                checks=(written("Start and end of the wait.", "bonded at", "may be cut from"),),
                hold=Hold(
                    text=("No cut before this time: wait on. IF it was not written down, THEN begin the wait again.",),
                    releases="whoever bonded them",
                ),
            ),
        ),
    )
