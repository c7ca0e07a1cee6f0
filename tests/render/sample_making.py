"""The phases of the sample that make the bar."""

from tailtrue.parts import Blank, Check, Limits, Setting
from tailtrue.procedure import Hold, Phase, Step

from .sample_pieces import caution, figure, mm, start_check


def making() -> tuple[Phase, ...]:
    """Face and bore."""
    return (_face(), _bore())


def _face() -> Phase:
    return Phase(
        id="face",
        number="1",
        title="Face and centre the bar",
        each=("headstock end", "tailstock end"),
        purpose=("Both ends get a true face and a centre hole.",),
        steps=(
            Step(
                id="face.grip",
                number="1.1",
                title="Grip the bar",
                machine="isolated",
                activities=("grip-in-chuck",),
                cautions=(
                    caution(
                        "bar-behind",
                        "danger",
                        "Bar behind the spindle whips",
                        "It can kill whoever stands there",
                        "Keep the bar inside the spindle.",
                        "Never run it without its guard.",
                    ),
                    caution(
                        "key-left-in",
                        "warning",
                        "The key left in the chuck is thrown",
                        "It strikes like a hammer",
                        "Take the key out before you let go of it.",
                    ),
                ),
                text=(
                    (
                        "Grip the bar with ",
                        mm("face.stick_out", 25, "length", "most"),
                        " outside the jaws.",
                    ),
                ),
                tools=("glasses",),
                boxes=("headstock end", "tailstock end"),
            ),
            start_check("1.2"),
            Step(
                id="face.cut",
                number="1.3",
                title="Face the end",
                machine="turning",
                activities=("turn",),
                text=(("Face until the whole end is bright.",),),
                settings=(
                    Setting(
                        label=("speed",),
                        value=(figure("face.speed", 460, "1/min", "speed", "most"),),
                        reason=("32 m/min was wanted; the next step is too fast",),
                    ),
                    Setting(label=("feed",), value=(figure("face.feed", 0.08, "mm/rev", "feed"),), reason=()),
                    Setting(
                        label=("depth by the dial",),
                        value=(mm("face.depth", 0.5, "depth"),),
                        reason=("10 divisions",),
                    ),
                ),
                boxes=("headstock end", "tailstock end"),
            ),
            Step(
                id="face.centre",
                number="1.4",
                title="Drill the centre hole",
                machine="turning",
                activities=("drill",),
                text=(
                    (
                        "Drill until the cone is ",
                        mm("centre_hole.cone_diameter", 6.7, "size"),
                        " wide.",
                    ),
                ),
                settings=(
                    Setting(
                        label=("centre drill",),
                        value=(figure("centre.drill", 3.15, "mm", "tool", marked="A 3.15"),),
                    ),
                    Setting(
                        label=("speed",),
                        value=(figure("centre.speed", 1250, "1/min", "speed", "most"),),
                        reason=("top speed of the lathe",),
                    ),
                ),
                why=("The cone carries the bar; the pilot must not.",),
                boxes=("headstock end", "tailstock end"),
            ),
        ),
    )


def _bore() -> Phase:
    return Phase(
        id="bore",
        number="2",
        title="Bore the collars to the bar",
        each=("collar 1", "collar 2"),
        cautions=(
            caution(
                "spacer",
                "warning",
                "The spacer behind the blank is loose",
                "It leaves the chuck like a thrown stone",
                "Take it out and put it where you can see it.",
            ),
        ),
        steps=(
            Step(
                id="bore.measure-bar",
                number="2.1",
                title="Measure the bar where the collars will sit",
                machine="stopped",
                activities=("measure-bar",),
                text=(("Measure two ways across, at both places.",),),
                checks=(
                    Check(
                        text=("Bar under each collar",),
                        instrument="micrometer-large",
                        resolution=mm("m.r", 0.01, "fit"),
                        uncertainty=mm("m.u", 0.0049, "fit", "least"),
                        limits=Limits(
                            low=mm("bar.low", 21.96, "fit", "least"),
                            high=mm("bar.high", 21.98, "fit", "most"),
                        ),
                        blanks=(
                            Blank(label="at collar 1", unit="mm", count=2),
                            Blank(label="at collar 2", unit="mm", count=2),
                        ),
                    ),
                ),
                hold=Hold(
                    text=("Another size of bar needs another bore. Plan again if it is outside.",),
                    releases="the person who measured",
                ),
            ),
            start_check("2.2"),
            Step(
                id="bore.drill",
                number="2.3",
                title="Drill through, in this order",
                machine="turning",
                activities=("drill",),
                cautions=(
                    caution(
                        "drill-grab",
                        "caution",
                        "The drill grabs as it breaks through",
                        "The blank is torn out",
                        "Feed slowly for the last turns.",
                    ),
                ),
                text=(("Drill each size right through.",), ("Clear chips with a brush, spindle stopped.",)),
                settings=tuple(
                    Setting(
                        label=(
                            "drill ",
                            figure("hole.drill", size, "mm", "tool", marked=f"{size:g}\u00a0mm"),
                        ),
                        value=(figure("hole.speed", 1250 - size * 20, "1/min", "speed", "most"),),
                        reason=(why,),
                    )
                    for size, why in (
                        (6, "wider than the chisel edge of the next"),
                        (13, "the largest drill in the crib"),
                    )
                ),
                tools=("boring-bar",),
                boxes=("collar 1", "collar 2"),
            ),
            Step(
                id="bore.size",
                number="2.4",
                title="Bore to size",
                machine="turning",
                activities=("bore",),
                text=(("Bore in equal passes, then take the last one twice.",),),
                settings=(
                    Setting(
                        label=("speed",),
                        value=(figure("bore.speed", 770, "1/min", "speed", "most"),),
                        reason=(
                            "overhang of the bar ",
                            figure("bore.overhang_ratio", 3.3333333, "1", "ratio"),
                            " times its shank; ",
                            figure("bore.surface_speed", 53.2, "m/min", "surface-speed"),
                        ),
                    ),
                    Setting(label=("feed",), value=(figure("bore.feed", 0.08, "mm/rev", "feed"),)),
                    Setting(
                        label=("depth a side",),
                        value=(mm("bore.depth_radial", 0.25, "depth"),),
                        reason=("on diameter ", mm("bore.depth_diametral", 0.5, "depth")),
                    ),
                    Setting(
                        label=("finished bore",),
                        value=(
                            mm("bore.least", 22.0, "fit", "least"),
                            " to ",
                            mm("bore.most", 22.04, "fit", "most"),
                        ),
                        reason=("room for the bond",),
                    ),
                    Setting(label=("tool",), value=("sharp, honed, a hair above centre",)),
                ),
                why=("A reamer would follow the tailstock that is being corrected.",),
                tools=("boring-bar",),
                boxes=("collar 1", "collar 2"),
            ),
            Step(
                id="bore.gauge",
                number="2.5",
                title="Gauge the bore",
                machine="isolated",
                activities=("gauge-bore",),
                who="supervised",
                text=(("Measure both ends of the bore, two ways across.",),),
                checks=(
                    Check(
                        text=("Diametral clearance on the bar",),
                        instrument="bore-gauge",
                        limits=Limits(high=mm("bore.clearance_diametral", 0.07, "fit", "most")),
                        blanks=(Blank(label="bore", unit="mm", count=2),),
                    ),
                    Check(text=("The bar slides in and does not rock.",), blanks=(Blank(label="initials"),)),
                ),
                boxes=("collar 1", "collar 2"),
            ),
        ),
    )
