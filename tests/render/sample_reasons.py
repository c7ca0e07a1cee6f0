"""What the sample uses, and how some of its numbers came about."""

from tailtrue.procedure import Derivation, Need

from .sample_pieces import LITERAL_LABEL, bar_length, figure, mm


def needs() -> tuple[Need, ...]:
    """What the sample uses."""
    return (
        Need(
            id="boring-bar",
            kind="tool",
            name=("boring bar, ", mm("boring_bar.shank", 12, "size"), " shank"),
            in_shop=True,
            used_at=("bore.drill", "bore.size"),
        ),
        Need(
            id="dog",
            kind="tool",
            name=("lathe dog",),
            detail=("to take the bar",),
            in_shop=True,
            used_at=("skim.mount",),
        ),
        Need(
            id="micrometer-large",
            kind="instrument",
            name=("micrometer for the collars",),
            detail=(mm("mike.low", 50, "length"), " to ", mm("mike.high", 75, "length")),
            in_shop=True,
            used_at=("read.measure",),
        ),
        Need(
            id="bore-gauge",
            kind="instrument",
            name=("telescoping gauge",),
            in_shop=True,
            used_at=("bore.size",),
        ),
        Need(
            id="bar-stock",
            kind="stock",
            name=(LITERAL_LABEL,),
            detail=("cold drawn",),
            in_shop=True,
            used_at=("face.grip",),
        ),
        Need(
            id="bond",
            kind="consumable",
            name=("retaining compound",),
            detail=("within its date",),
            in_shop=False,
            used_at=("bond.join",),
        ),
        Need(
            id="glasses",
            kind="wear",
            name=("safety glasses with side shields",),
            in_shop=True,
            used_at=("face.grip", "bore.drill", "skim.mount"),
        ),
    )


def derivations() -> tuple[Derivation, ...]:
    """How a few of the numbers came about."""
    return (
        Derivation(
            fact="bar.length",
            label="bar length",
            value=(bar_length(),),
            how="longest that leaves room for the centres",
            limited_by=("distance between centres",),
            sources=("memory",),
            weakest="memory",
        ),
        Derivation(
            fact="bore.speed",
            label="speed for boring",
            value=(figure("bore.speed", 770, "1/min", "speed", "most"),),
            how="largest step at or below the wanted speed",
            read=("bar.length", "bore.surface_speed"),
            limited_by=(
                "overhang of the boring bar ",
                figure("bore.overhang_ratio", 3.3333333, "1", "ratio"),
            ),
            sources=("lathe-safety-guide:table 2", "common-practice"),
            weakest="common-practice",
        ),
        Derivation(
            fact="bore.surface_speed",
            label="surface speed for boring",
            value=(figure("bore.surface_speed", 53.2, "m/min", "surface-speed"),),
            how="table of the material",
            sources=("common-practice",),
            weakest="common-practice",
        ),
        Derivation(
            fact="skim.force",
            label="cutting force of the skim",
            value=(figure("skim.force", 41.7, "N", "force"),),
            how="specific force times area of the chip",
            sources=("gum:3",),
            weakest="published",
        ),
        Derivation(
            fact="skim.torque",
            label="torque on a collar",
            value=(figure("skim.torque", 1251.0, "N mm", "torque"),),
            how="force times half the diameter",
            read=("skim.force",),
            sources=("gum:3",),
            weakest="published",
        ),
        Derivation(
            fact="bond.strength",
            label="strength of the bond",
            value=(figure("bond.strength", 7.44, "MPa", "pressure"),),
            how="of the data sheet, cut down",
            sources=("memory",),
            weakest="memory",
        ),
        Derivation(
            fact="skim.power",
            label="power of the skim",
            value=(figure("skim.power", 60.3, "W", "power"),),
            how="force times speed",
            sources=("gum:3",),
            weakest="published",
        ),
        Derivation(
            fact="bar.mass",
            label="mass of the bar",
            value=(figure("bar.mass", 1.134, "kg", "mass"),),
            how="volume times density",
            sources=("gum:3",),
            weakest="said",
        ),
        Derivation(
            fact="room.temperature",
            label="room",
            value=(figure("room.temperature", 20, "degC", "temperature"),),
            how="as given",
            sources=("memory",),
            weakest="said",
        ),
        Derivation(
            fact="hole.count",
            label="drills",
            value=(figure("hole.count", 3, "1", "count"),),
            how="counted",
            sources=("memory",),
            weakest="decided",
        ),
        Derivation(
            fact="centre.angle",
            label="angle of the centre",
            value=(figure("centre.angle", 60, "deg", "angle"),),
            how="of the standard",
            sources=("gum:1",),
            weakest="published",
        ),
    )
