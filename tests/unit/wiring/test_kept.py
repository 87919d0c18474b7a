"""What is kept for the next start: made once, anew when in doubt, never trusted blindly."""

import os
import pickle
from pathlib import Path
from types import MappingProxyType

import pytest

from assistant.people import LANGUAGES
from assistant.reading.text.phrases import PackedPhrases
from assistant.reading.text.rules import RULE_VALUES, bound, read_rule
from assistant.wiring import catalogues, hearing, kept, lexicons


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder of a user who has none yet."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    return tmp_path / "cache" / "nursery"


class Made:
    """Something that is made, and how often it was."""

    def __init__(self, value: object = "value") -> None:
        self.value, self.times = value, 0

    def __call__(self) -> object:
        """Makes it."""
        self.times += 1
        return self.value


def test_it_is_made_once(folder: Path) -> None:
    """The next start reads it, from a file that only its owner may read or write."""
    made = Made()
    assert [kept.kept("a", "1", made, ()) for _ in range(2)] == ["value", "value"]
    assert made.times == 1
    (file,) = folder.iterdir()
    assert (folder.stat().st_mode & 0o777, file.stat().st_mode & 0o777) == (0o700, 0o600)


def test_other_sources_make_it_anew(folder: Path) -> None:
    """And what was kept of the earlier ones is gone."""
    first, second = Made("first"), Made("second")
    assert kept.kept("a", "1", first, ()) == "first"
    assert kept.kept("a", "2", second, ()) == "second"
    assert kept.kept("a", "2", first, ()) == "second"
    assert len(list(folder.iterdir())) == 1


@pytest.mark.parametrize("mode", [0o770, 0o777])
def test_a_folder_that_others_can_write_is_left_alone(folder: Path, mode: int) -> None:
    """Neither read nor written."""
    made = Made()
    kept.kept("a", "1", made, ())
    folder.chmod(mode)
    assert kept.kept("a", "1", made, ()) == "value"
    assert kept.kept("b", "1", made, ()) == "value"
    assert made.times == 3
    assert len(list(folder.iterdir())) == 1


def test_a_file_that_others_can_write_is_made_anew(folder: Path) -> None:
    """So is one that only points elsewhere."""
    made = Made()
    kept.kept("a", "1", made, ())
    (file,) = folder.iterdir()
    file.chmod(0o666)
    kept.kept("a", "1", made, ())
    assert file.stat().st_mode & 0o777 == 0o600
    elsewhere = folder.parent / "elsewhere"
    file.rename(elsewhere)
    file.symlink_to(elsewhere)
    kept.kept("a", "1", made, ())
    assert made.times == 3
    assert not file.is_symlink()


def test_without_a_folder_the_start_makes_what_it_needs(folder: Path) -> None:
    """A disk that cannot be written, no home."""
    folder.parent.write_text("no folder")
    made = Made()
    assert [kept.kept("a", "1", made, ()) for _ in range(2)] == ["value", "value"]
    assert made.times == 2


def test_sources_that_cannot_be_read_are_not_kept_of(folder: Path) -> None:
    """Who opens them tells the fault."""
    assert kept.digest_of([folder / "away.toml"]) == ""
    kept.kept("a", "", Made(), ())
    assert not folder.exists()


@pytest.mark.parametrize("cut", [0, 10, 40, -1])
def test_a_file_that_was_cut_off_is_made_anew(folder: Path, cut: int) -> None:
    """As by a machine that went out."""
    made = Made()
    kept.kept("a", "1", made, ())
    (file,) = folder.iterdir()
    file.write_bytes(file.read_bytes()[:cut])
    assert kept.kept("a", "1", made, ()) == "value"
    assert made.times == 2


class Evil:
    """What a pickle can be made to do."""

    def __reduce__(self) -> tuple[object, tuple[str]]:
        return os.mkdir, (os.environ["XDG_CACHE_HOME"] + "/done",)


def test_nothing_is_called_that_is_no_value(folder: Path) -> None:
    """Even from a file of our own."""
    made = Made()
    kept.kept("a", "1", made, ())
    (file,) = folder.iterdir()
    file.write_bytes(file.read_bytes()[:32] + pickle.dumps(Evil()))
    assert kept.kept("a", "1", made, ()) == "value"
    assert made.times == 2
    assert not (folder.parent / "done").exists()


def test_what_nobody_wrote_for_long_goes(folder: Path) -> None:
    """Files of checkouts that are gone."""
    kept.kept("a", "1", Made(), ())
    (old,) = folder.iterdir()
    os.utime(old, (0, 0))
    kept.kept("b", "1", Made(), ())
    assert old not in folder.iterdir()


def test_values_come_back_as_they_were() -> None:
    """Those that pickle does not know by itself too."""
    rules = [("one", read_rule("snake/viper + bit*")), ("two", read_rule("= enough"))]
    made = Made(
        MappingProxyType({"book": bound(rules), "packed": PackedPhrases.of([("my", "wife")])})
    )
    first, again = (kept.kept("a", "1", made, RULE_VALUES) for _ in range(2))
    assert made.times == 1
    assert isinstance(again, MappingProxyType) and isinstance(first, MappingProxyType)
    assert vars(again["book"]) == vars(first["book"])
    assert dict(again["packed"]) == {("my", "wife"): ""}


def test_an_edit_is_seen(folder: Path) -> None:
    """However long the text stays, and whenever it was."""
    source = folder.parent.parent / "list.toml"
    source.write_text("a = 1")
    before = kept.digest_of([source])
    assert kept.digest_of([source]) == before
    source.write_text("a = 2")
    os.utime(source, (0, 0))
    assert kept.digest_of([source]) != before


def test_the_words_that_are_kept_are_those_of_the_lists(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """English stands for all: the lists are long."""
    lexicons._open.cache_clear()
    made = lexicons.open_lexicons(("en",))["en"]
    lexicons._open.cache_clear()
    monkeypatch.setattr(lexicons, "read_word_list", _never)
    again = lexicons.open_lexicons(("en",))["en"]
    lexicons._open.cache_clear()
    assert again is not made
    for name, value in vars(made).items():
        same = vars(again)[name]
        assert vars(same) == vars(value) if name == "told" else same == value, name


def _never(*given: object) -> None:
    raise AssertionError("a list was read again")


def test_what_is_heard_is_kept_whole(monkeypatch: pytest.MonkeyPatch) -> None:
    """The next start reads no list of it."""
    hearing.open_ears.cache_clear()
    made = hearing.open_ears()
    hearing.open_ears.cache_clear()
    monkeypatch.setattr(hearing, "_made", _never)
    again = hearing.open_ears()
    hearing.open_ears.cache_clear()
    assert set(again.by_language) == set(LANGUAGES)
    for code, ear in again.by_language.items():
        assert vars(ear.book) == vars(made.by_language[code].book)
    assert again.questions.rows == made.questions.rows
    assert (again.labels, again.office) == (made.labels, made.office)


def test_a_catalogue_is_compiled_once_and_again_after_an_edit(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Translators run no command."""
    file = tmp_path / "sw" / "LC_MESSAGES" / "messages.po"
    file.parent.mkdir(parents=True)
    monkeypatch.setattr(catalogues, "locales_folder", lambda: tmp_path)

    def said(text: str) -> str:
        file.write_text(
            f'msgid ""\nmsgstr "Content-Type: text/plain; charset=UTF-8\\n"\n\n'
            f'msgid "yes"\nmsgstr "{text}"\n',
            encoding="utf-8",
        )
        catalogues._parsed.cache_clear()
        return catalogues.open_catalogue("sw").translations.gettext("yes")

    assert said("ndiyo") == "ndiyo"
    assert said("ndivyo") == "ndivyo"
    monkeypatch.setattr(catalogues, "_compiled", _never)
    assert said("ndivyo") == "ndivyo"
