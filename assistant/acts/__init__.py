"""Which act a text is meant as: a small learned reader over pieces of words.

It routes (raises an alarm, asks, hands to a person) and never writes anything down: what is
exact (numbers, days, deeds, STOP) belongs to the room `reading`. At run time it is a table of
numbers; `nursery acts train` makes the table from `sentences/` (README.md there).
"""

from assistant.acts.act import Act
from assistant.acts.table import ActTable, TableError, Weights, read_table

__all__ = ["Act", "ActTable", "TableError", "Weights", "read_table"]
