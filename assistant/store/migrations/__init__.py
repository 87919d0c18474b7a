"""One module in `versions` for each change of the tables, run by `assistant.store.schema`.

A new one is called vNNNN_what_changes, names the one before as its `down_revision`, spells
out types of SQLAlchemy itself (never ours, which may change later), and changes existing
tables with `op.batch_alter_table`, since SQLite cannot alter a column. It has a `downgrade`;
those up to 0.2.0 have none, since the way down ends there. Rows that a new database begins with
are written by `assistant.store.making` too, which makes its tables from the models and goes
through none of these.
"""
