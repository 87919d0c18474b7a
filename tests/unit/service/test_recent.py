"""What took long to find is kept for some minutes; what is little is found anew."""

from datetime import UTC, datetime, timedelta

from assistant.service.recent import KEPT_FOR, MOST, Recent

NOW = datetime(2026, 6, 15, 6, tzinfo=UTC)


def test_what_is_large_is_kept_for_some_minutes() -> None:
    recent, found = Recent(), iter((7, 8))
    assert recent.find("sums", NOW, lambda: next(found), lambda _: True) == (NOW, 7)
    later = NOW + KEPT_FOR - timedelta(seconds=1)
    assert recent.find("sums", later, lambda: next(found), lambda _: True) == (NOW, 7)
    after = NOW + KEPT_FOR
    assert recent.find("sums", after, lambda: next(found), lambda _: True) == (after, 8)


def test_what_is_little_is_found_anew() -> None:
    recent, found = Recent(), iter((7, 8))
    for expected in (7, 8):
        assert recent.find("sums", NOW, lambda: next(found), lambda n: n > 10)[1] == expected


def test_no_more_is_kept_than_has_room() -> None:
    recent = Recent()
    for number in range(MOST + 1):
        recent.find(number, NOW, lambda: "first", lambda _: True)
    assert recent.find(0, NOW, lambda: "again", lambda _: True)[1] == "again"
    assert recent.find(MOST, NOW, lambda: "again", lambda _: True)[1] == "first"
