"""What limits a size: the smallest of several candidates, with its name."""


def least_of(*candidates: tuple[float, str]) -> tuple[float, str]:
    """The smallest candidate and its name: what limits.

    >>> least_of((300.0, "stock"), (280.0, "the lathe"))
    (280.0, 'the lathe')
    """
    return min(candidates, key=lambda candidate: candidate[0])
