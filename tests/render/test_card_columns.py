"""How the blocks of the card are shared out over its columns."""

from tailtrue.render.card_rows import Block, Row, side_by_side


def block(title: str, rows: int, label: str = "speed") -> Block:
    return Block(title, "1.1", tuple(Row((f"{label} {place}",), "1", "mm") for place in range(rows)))


def sizes(columns: tuple[tuple[Block, ...], ...]) -> list[list[tuple[str, int]]]:
    return [[(one.title, len(one.rows)) for one in column] for column in columns]


def test_blocks_that_share_out_evenly_stay_whole() -> None:
    made = tuple(block(title, 4) for title in "abcdef")
    assert sizes(side_by_side(made, 3)) == [[("a", 4), ("b", 4)], [("c", 4), ("d", 4)], [("e", 4), ("f", 4)]]


def test_a_block_is_split_only_when_that_saves_more_than_a_row() -> None:
    assert sizes(side_by_side((block("a", 3), block("b", 4), block("c", 3)), 3)) == [[("a", 3)], [("b", 4)], [("c", 3)]]
    long = sizes(side_by_side((block("a", 2), block("b", 20), block("c", 2)), 3))
    assert [title for column in long for title, _ in column] == ["a", "b", "b", "b", "c"]
    assert sum(rows for column in long for title, rows in column if title == "b") == 20


def test_least_and_most_of_one_size_are_not_parted() -> None:
    pair = (Row(("end A, at least",), "1", "mm", bound="least"), Row(("end A, at most",), "2", "mm", bound="most"))
    ends = Block("a", "1.1", (Row(("speed",), "1", "rev/min"), *pair))
    for more in range(4):
        columns = side_by_side((ends, block("b", more)), 2)
        assert any(set(pair) <= {row for one in column for row in one.rows} for column in columns)
