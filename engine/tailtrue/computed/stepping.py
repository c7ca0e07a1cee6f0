"""What limits a size: the smallest, or the greatest, of several candidates, with its name."""


def least_of(*candidates: tuple[float, str]) -> tuple[float, str]:
    """The smallest candidate and its name: what limits.

    >>> least_of((300.0, "stock"), (280.0, "the lathe"))
    (280.0, 'the lathe')
    """
    return min(candidates, key=lambda candidate: candidate[0])


def greatest_of(*candidates: tuple[float, str]) -> tuple[float, str]:
    """The greatest candidate and its name: what asks for most.

    >>> greatest_of((25.0, "the bar"), (32.0, "the bond"))
    (32.0, 'the bond')
    """
    return max(candidates, key=lambda candidate: candidate[0])
