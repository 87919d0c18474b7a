"""The reviewer's sheet: one row a text, as it would arrive."""

import csv
import io

import pytest
from click.testing import CliRunner

from assistant.commands.catalogue import COLUMNS, command
from assistant.wiring.review import catalogues
from assistant.wording.texts import declared


def sheet(*options: str) -> list[dict[str, str]]:
    """The rows that the command prints."""
    printed = CliRunner().invoke(command, options)
    assert printed.exit_code == 0, printed.output
    return list(csv.DictReader(io.StringIO(printed.stdout)))


@pytest.mark.parametrize("code", catalogues())
def test_the_sheet_has_every_text_with_its_slots_filled(code: str) -> None:
    """Nothing that a reviewer reads holds a brace."""
    rows = sheet("--lang", code)
    assert {row["id"].partition("[")[0] for row in rows} == {t.place for t in declared()}
    phones = [row for row in rows if row["allowed segments"]]
    assert [row["id"] for row in phones if "{" in row["translation"] + row["english"]] == []


def test_the_sheet_is_ready_to_be_marked() -> None:
    """Its last columns are empty; faults have a column of their own."""
    rows = sheet("--lang", "sw")
    assert tuple(rows[0]) == COLUMNS
    assert {row["ok?"] + row["remark"] + row["fault"] for row in rows} == {""}


def test_the_sheet_counts_what_a_usual_and_a_wide_text_cost() -> None:
    """A Hindi text of one English segment: UCS-2, and never more segments than allowed."""
    rows = {row["id"]: row for row in sheet("--lang", "hi")}
    asked = rows["talk.ASK_AREA"]
    assert (asked["encoding"], asked["segments"]) == ("ucs2", "2")
    assert all(
        int(row["segments"]) <= int(row["most segments"]) <= int(row["allowed segments"])
        for row in rows.values()
        if row["allowed segments"]
    )


def test_a_text_with_plurals_has_a_row_for_each_form() -> None:
    """French counts 0 and 1 alike, and says 'autres' from 2 on (Unicode CLDR)."""
    rows = {row["id"]: row for row in sheet("--lang", "fr")}
    assert rows["officer.AND_MORE[0]"]["translation"] == "et 1 autre."
    assert rows["officer.AND_MORE[1]"]["translation"] == "et 2 autres."


def test_the_check_tells_faults_and_fails() -> None:
    """Without a language it checks them all, and is silent when all is well."""
    checked = CliRunner().invoke(command, ["--check"])
    assert (checked.exit_code, checked.output) == (0, "")


def test_a_sheet_without_a_language_is_asked_for() -> None:
    """The answer says what to write."""
    refused = CliRunner().invoke(command, [])
    assert refused.exit_code == 2
    assert "--lang sw" in refused.output
