"""Days of virtual time with thousands of phones, counted at the phones.

    python -m tests.soak --phones 3000 --days 14 --seed 1

The whole service in one process on a clock of its own, before an operator in memory. Farmers
answer, or not, at any hour; they stop, begin again, cry for help. The line is away for hours,
busy, or broken off between a hand-over and its record; receipts are late, twice or lost; the
service stands still for half a day and is opened anew. After each day, and at the end, what the
phones show is held against what the service kept. What each day takes and how much memory the
process has is printed: neither may grow with the days.
"""
