"""Season files: what is read from them, and what is said where one cannot be read."""

from datetime import datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from scenarios import season as s
from scenarios.errors import SeasonError
from scenarios.reading import parse, read_season

HEAD = """\
title     A trial
zone      Africa/Nairobi
villages  Mto Mwanga, Kijani (Asia/Manila)
phone     Amani +447700900101
officer   Juma +447700900201 code 246813 of Kijani in sw
"""
FULL = (
    HEAD
    + """
# A remark.
2026-06-01 09:00
  Amani texts   hello
  Amani hears   Language | but not village
09:30
  Amani texts   "  "
  Amani writes  25 characters of rice
  Amani dials   *555*7#
  Amani sees    the end
  Amani waits   40 seconds
  Amani hears nothing until 20:00
  network delays texts to Amani by 10 minutes
  network is well
"""
)


def acts(text: str) -> list[object]:
    return [step.act for block in parse(text, "f").blocks for step in block.steps]


def test_the_head_says_who_takes_part_and_where() -> None:
    """Villages may have a zone of their own; an officer is a phone too."""
    season = parse(FULL, "f")
    assert season.title == "A trial"
    assert season.zones == ("Africa/Nairobi", "Asia/Manila")
    assert season.villages == (
        s.SeasonVillage("Mto Mwanga"),
        s.SeasonVillage("Kijani", "Asia/Manila"),
    )
    assert list(season.people) == ["Amani", "Juma"]
    assert season.officers == (s.SeasonOfficer("Juma", "246813", ("Kijani",), "sw"),)
    assert not season.strict


def test_times_are_local_and_may_leave_out_the_day() -> None:
    """09:30 after 2026-06-01 09:00 is half an hour later, in the programme's zone."""
    first, second = parse(FULL, "f").blocks
    assert first.at == datetime(2026, 6, 1, 9, 0, tzinfo=ZoneInfo("Africa/Nairobi"))
    assert second.at - first.at == timedelta(minutes=30)


def test_each_line_becomes_one_act() -> None:
    """Quotes keep a text as it is; a long text is made from a short one."""
    found = acts(FULL)
    assert found[0] == s.SendsText("hello")
    assert found[2:6] == [
        s.SendsText("  "),
        s.SendsText("rice rice rice rice rice "),
        s.Dials("*555*7#"),
        s.Ends(),
    ]
    assert found.pop(6) == s.Waits(timedelta(seconds=40))
    until = datetime(2026, 6, 1, 20, 0, tzinfo=ZoneInfo("Africa/Nairobi"))
    assert found[6] == s.HearsNothing(until)
    fault = s.NetworkFault("delays", ("to_phone",), "+447700900101", timedelta(minutes=10))
    assert found[7:] == [s.NetworkChange(fault), s.NetworkChange(None)]


BAD = {
    "titel x": ("f:6: ", "no such line: 'titel'"),
    "zone Kenya/Nairobi": ("f:6: ", "write one like Africa/Nairobi"),
    "phone Beni +254712345678": ("f:6: ", "might belong to somebody"),
    "phone Amani +447700900102": ("f:6: ", "choose another name"),
    "phone Beni +447700900101": ("f:6: ", "choose another number"),
    "phone Beni": ("f:6: ", "phone Amani +447700900101"),
    "officer Sefu +447700900202 code 1 of Nowhere": ("f:6: ", "no village Nowhere"),
    "officer Sefu +447700900202": ("f:6: ", "write: officer"),
    "strict please": ("f:6: ", "alone on its line"),
    "9:00": ("f:6: ", "the first time needs its day"),
    "2026-06-31 09:00": ("f:6: ", "no such time"),
    "2026-06-01 09:00\n2026-06-01 08:00": ("f:7: ", "times go forward"),
    "2026-06-01 09:00\nBeni texts 1": ("f:7: ", "nobody is called 'Beni'"),
    "2026-06-01 09:00\nAmani sings": ("f:7: ", "write one of: texts"),
    "2026-06-01 09:00\nAmani hangs up now": ("f:7: ", "nothing may follow"),
    "2026-06-01 09:00\nAmani dials": ("f:7: ", "dials *555*7#"),
    "2026-06-01 09:00\nAmani writes a lot": ("f:7: ", "2000 characters of"),
    "2026-06-01 09:00\nAmani hears exactly": ("f:7: ", "the whole text"),
    "2026-06-01 09:00\nAmani waits long": ("f:7: ", "waits 5 minutes"),
    "2026-06-01 09:00\nAmani hears nothing soon": ("f:7: ", "until 20:00"),
    "2026-06-01 09:00\nnetwork eats texts": ("f:7: ", "write: network loses"),
    "2026-06-01 09:00\nnetwork loses texts to Beni": ("f:7: ", "nobody is called Beni"),
    "2026-06-01 09:00\nnetwork delays texts to Amani": ("f:7: ", "by 10 minutes"),
    "2026-06-01 09:00\nJuma mends a.csv: 12": ("f:7: ", "mends a.csv: 12 -> 0770"),
    "": ("f: ", "no time in it"),
}


@pytest.mark.parametrize("line", BAD)
def test_a_line_that_cannot_be_read_is_named_with_what_to_write(line: str) -> None:
    """The file, the number of the line, and the way out."""
    where, way_out = BAD[line]
    with pytest.raises(SeasonError) as refused:
        parse(HEAD + line, "f")
    assert str(refused.value).startswith(where)
    assert way_out in str(refused.value)
    assert "\n" not in str(refused.value)


def test_a_file_that_is_no_text_is_refused(tmp_path: Path) -> None:
    """Neither a picture nor a file that is not there is a season."""
    picture = tmp_path / "phone.png"
    picture.write_bytes(b"\x89PNG\xff")
    for path in (picture, tmp_path / "not there"):
        with pytest.raises(SeasonError, match="cannot be read as a text"):
            read_season(path)


AT_PAGE = {
    "Juma signs in": s.SignsIn(),
    "Juma opens This morning": s.Opens("This morning"),
    "Juma looks at the page": s.LooksAt("the page"),
    "Juma fills Your answer, sent as a text: At ten: I come.": s.Fills(
        "Your answer, sent as a text", "At ten: I come."
    ),
    "Juma unticks Sown": s.Ticks("Sown", on=False),
    "Juma adds to a.csv: Phone;Name": s.AddsTo("a.csv", "Phone;Name"),
    "Juma mends a.csv: 12;Elia -> 0770;Elia": s.Mends("a.csv", "12;Elia", "0770;Elia"),
    "Juma sends File: a.csv": s.SendsFile("File", "a.csv"),
    "Juma chooses Village: Kijani": s.Chooses("Village", "Kijani"),
}


@pytest.mark.parametrize(("line", "act"), AT_PAGE.items())
def test_what_an_officer_does_at_the_page_is_read(line: str, act: s.Act) -> None:
    """The first colon parts a field from what is put into it."""
    season = parse(f"phone Juma +447700900201\n2026-06-01 08:00\n{line}\n", "x")
    assert season.blocks[0].steps[0].act == act


def test_a_field_without_words_is_told() -> None:
    """With how to write it."""
    with pytest.raises(SeasonError, match="the name of a field, a colon"):
        parse("phone Juma +447700900201\n2026-06-01 08:00\nJuma fills Day\n", "x")
