"""What each job at the desk takes: the table that `tests.benchmarks clicks` prints, of a small
valley."""

import shutil
from pathlib import Path

from tests.benchmarks.clicks import MOST, done
from tests.benchmarks.desk_valley import settle


def test_no_job_takes_more_than_five_clicks_and_none_is_impossible(
    _sqlite_tables: Path, tmp_path: Path
) -> None:
    """For one, or for all that are ticked; without the time that a page takes."""
    path = shutil.copy(_sqlite_tables, tmp_path)
    valley = settle(f"sqlite:///{path}", farmers=144)
    taken = list(done(valley))
    valley.house.store.close()
    assert [(each.job.name, each.why) for each in taken if each.why] == []
    assert [each.job.name for each in taken if each.clicks > MOST] == []
