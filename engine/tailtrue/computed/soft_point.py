"""A soft headstock centre turned true where it sits, in the jaws or in the spindle taper: its metal, angle and speed."""

from tailtrue.calc.lengths import midway
from tailtrue.computed.holding import of_metal
from tailtrue.computed.operation import operation
from tailtrue.computed.registry import computed

of_metal("point", "crib.soft_centre_metal", "the soft centre", "no soft centre is entered for the crib")


@computed(
    "point.slide_angle",
    label="angle of the top slide from the line of the bed, for the point",
    unit="deg",
    rounding="angle",
    needs=("limit.centre_angle",),
    how="half of the angle of the point",
)
def slide_angle(point: float) -> float:
    return midway(0.0, point)


# Whatever drives the dog is on the nose already, and turns with the point.
operation(
    "point.turning", "turning the soft point", table="turn-finish", work="point", diameter="crib.soft_centre_diameter",
    tool="tool.material", caps=(("limit.between_centres_speed", "what drives the dog"),), fine=True,
)  # fmt: skip
