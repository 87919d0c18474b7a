"""The command that plays seasons: what it prints, and how it ends."""

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from scenarios.__main__ import main

SIGN_UP = """\
title     A trial
zone      Africa/Nairobi
languages en
villages  Kijani
phone     Amani +447700900101
{more}
2026-06-01 09:00
  Amani texts   hello
"""


@pytest.fixture
def play(tmp_path: Path) -> "Play":
    return Play(tmp_path)


class Play:
    """Writes seasons to files and plays them by the command."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder

    def __call__(self, *lines: str, more: str = "") -> Result:
        path = self._folder / "trial.season"
        path.write_text(SIGN_UP.format(more=more) + "\n".join(lines), encoding="utf-8")
        return CliRunner().invoke(main, ["play", str(path)])


def test_a_season_is_printed_as_a_conversation_with_local_times(play: Play) -> None:
    """1 June 2026 is a Monday; the time is that of the season's zone."""
    result = play("  Amani hears Language")
    assert result.exit_code == 0
    assert "Mon  1 Jun 09:00  Amani -> assistant  hello\n" in result.output
    assert "Mon  1 Jun 09:00  assistant -> Amani (1 segment)  Language" in result.output
    assert "\033" not in result.output


def test_a_season_that_goes_otherwise_shows_the_difference(play: Play) -> None:
    """The line, what it expects, what came instead and when, and what is missing in it."""
    result = play("  Amani hears Language | 9 Klingon")
    assert result.exit_code == 1
    assert "trial.season:9: Amani hears Language | 9 Klingon" in result.output
    assert "expected: Language | 9 Klingon" in result.output
    assert "came: Mon  1 Jun 09:00  Language?" in result.output
    assert "not in it: 9 Klingon" in result.output
    assert "1 of 1 seasons went otherwise." in result.output


def test_a_text_that_never_comes_is_told_as_nothing(play: Play) -> None:
    """After what was sent was heard, there is no more."""
    result = play("  Amani hears Language", "  Amani hears village")
    assert result.exit_code == 1
    assert "came: nothing" in result.output


@pytest.mark.parametrize(
    ("lines", "complaint"),
    [
        (["  Amani hears nothing"], "expected: nothing"),
        (["  Amani sees Menu"], "came: no screen"),
        (["  Amani dials *555*7#", "  Amani sees the end"], "came: it is still open"),
        (["  Amani presses 1"], "cannot be done: no session is open"),
        (["  Amani switches off", "  Amani texts hello"], "cannot be done: +447700900101"),
    ],
)
def test_what_cannot_be_or_should_not_be_is_a_difference(
    play: Play, lines: list[str], complaint: str
) -> None:
    """Silence, screens, and what a phone cannot do."""
    result = play(*lines)
    assert result.exit_code == 1
    assert complaint in result.output


def test_a_strict_season_wants_every_text_heard(play: Play) -> None:
    """The first answer is heard by no line."""
    result = play("  Amani texts 1", "  Amani hears village", more="strict")
    assert result.exit_code == 1
    assert "Amani heard what no line expects" in result.output


def test_an_unreadable_file_ends_with_2_and_one_line(play: Play) -> None:
    """It says where and what to write."""
    result = play("  Amani sings")
    assert result.exit_code == 2
    assert result.stderr.count("\n") == 1
    assert "trial.season:9: no such act: 'sings'; write one of: texts" in result.stderr


def test_several_seasons_are_played_each_on_a_database_of_its_own(tmp_path: Path) -> None:
    """Both begin from nothing; one that goes otherwise does not keep the other from its end."""
    good, bad = tmp_path / "good.season", tmp_path / "bad.season"
    good.write_text(SIGN_UP.format(more="") + "  Amani hears Language", encoding="utf-8")
    bad.write_text(SIGN_UP.format(more="") + "  Amani hears village", encoding="utf-8")
    result = CliRunner().invoke(main, ["play", "--quiet", str(bad), str(good)])
    assert result.exit_code == 1
    assert "OTHERWISE" in result.output
    assert f"As written: A trial ({good})" in result.output
    assert "1 of 2 seasons went otherwise." in result.output
