"""Kills and faults against the whole service, counted at the simulated phones.

    python -m tests.chaos --kills 100 --seed 7

Processes of the service, and what stands before its operator, are killed with SIGKILL; the
database server is killed or the file is held, or takes no writing, as on a full disk; clocks
jump; the operator is gone, slow, or refuses; rows are spoilt; a copy is put back.
Meanwhile phones text and tasks fall due. At the end everything is well again, and what the
phones wrote and what they show is held against each other: nothing lost, nothing double.

The stated gap: a process that was killed between the hand-over of a text and the note of it
hands the text over again under the same id, which an operator drops (WIRE.md). How often that
happened is printed. Power cuts are not made here: they need root.
"""
