"""A page read as a person does: places, links, labels, forms."""

import pytest

from scenarios.page import (
    Node,
    PageError,
    button,
    field_of,
    filled,
    link,
    option_value,
    options,
    place,
    read_page,
)

PAGE = """<!doctype html><html><head><title>no words of the page</title></head><body>
<nav><a href="/morning">This morning</a> <a href="tel:+447700900101">+447700900101</a></nav>
<section><h2>Calls</h2>
<article><h3>Amani</h3><p>Ants &amp; rats<br>in the bed</p>
<form method="post" action="/calls/1"><input type="hidden" name="token" value="t1">
<label for="w1">Your answer</label><textarea id="w1" name="words">Dear</textarea>
<label><input type="checkbox" name="urgent"> Send at once</label>
<button>Send</button></form></article>
<article><h3>Baraka</h3><form><label for="v">Village</label>
<select id="v" name="village"><option value="">All</option><option value="2" selected>Kijani
</option></select><input name="day" value="7" aria-label="x">
<button>Show</button></form></article>
</section><script>var words = "none";</script></body></html>"""


@pytest.fixture
def page() -> Node:
    return read_page(PAGE)


def test_words_are_those_that_are_read(page: Node) -> None:
    """Not of the head, nor of scripts; signs as they look."""
    assert "Ants & rats in the bed" in page.text
    assert "none" not in page.text and "no words" not in page.text


def test_a_place_is_the_smallest_that_has_the_words(page: Node) -> None:
    """The card of a call, not all calls."""
    assert place(page, "ants").text.startswith("Amani")
    assert place(page, "Calls").tag == "section"
    with pytest.raises(PageError, match="no place"):
        place(page, "Zawadi")


def test_a_form_sends_what_stands_in_it_and_what_was_changed(page: Node) -> None:
    """Hidden fields too; an unticked box sends nothing."""
    card = place(page, "Ants")
    words, box = field_of(page, card, "your answer"), field_of(page, card, "Send at once")
    form = button(card, "Send").inside("form")
    assert form is not None
    assert filled(form, {}) == [("token", "t1"), ("words", "Dear")]
    changed: dict[Node, str | None] = {words: "Ash", box: "on"}
    assert filled(form, changed) == [("token", "t1"), ("words", "Ash"), ("urgent", "on")]


def test_a_list_sends_what_is_chosen(page: Node) -> None:
    """By its value, not by its words."""
    form = place(page, "Village").inside("form") or place(page, "Village")
    assert ("village", "2") in filled(form, {})
    village = field_of(page, page, "Village")
    assert [option_value(each) for each in options(village)] == ["", "2"]


def test_a_link_leads_to_a_page(page: Node) -> None:
    """A number to call does not."""
    assert link(page, "this morning") == "/morning"
    with pytest.raises(PageError, match="there are: This morning"):
        link(page, "+447700900101")


def test_what_is_not_there_is_told_with_what_is(page: Node) -> None:
    """So that the season can be mended."""
    with pytest.raises(PageError, match="there are: Your answer; Send at once; Village"):
        field_of(page, page, "Name")
    with pytest.raises(PageError, match="there are: Show"):
        button(place(page, "Baraka"), "Send")
