"""A page as a person reads it: its words, its places, links, fields by their labels, buttons.

Read from the HTML by the standard library's parser. No script runs: the officers' pages work
without.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser

_IN_NUMBER = re.compile("(?<=[0-9])\u00a0(?=[0-9])")
_VOID = frozenset(
    {"input", "link", "meta", "br", "hr", "img", "rect", "line", "circle", "path"}
)
_SILENT = frozenset({"script", "style", "head", "svg", "title"})
# What can be looked at by itself: a card, a part of the page, a row of a table.
_PLACES = frozenset({"article", "section", "tr", "fieldset", "form"})
_FIELDS = frozenset({"input", "select", "textarea"})
_BUTTON_TYPES = frozenset({"submit", "button"})


class PageError(Exception):
    """What a line asks for is not on the page; the text says what is there instead."""


@dataclass(eq=False)
class Node:
    """One element; words stand in `children` as plain strings."""

    tag: str
    attributes: dict[str, str]
    parent: "Node | None" = None
    children: "list[Node | str]" = field(default_factory=list)

    def all(self) -> "Iterator[Node]":
        """This element and all in it, in their order."""
        yield self
        for child in self.children:
            if isinstance(child, Node):
                yield from child.all()

    @property
    def text(self) -> str:
        """Its words on one line; numbers of phones as they are dialled."""
        return " ".join(_IN_NUMBER.sub("", " ".join(self._words())).split())

    def _words(self) -> Iterator[str]:
        if self.tag in _SILENT:
            return
        for child in self.children:
            if isinstance(child, Node):
                yield from child._words()
            else:
                yield child

    def inside(self, tag: str) -> "Node | None":
        """The nearest element of a kind that this one is in."""
        node = self.parent
        while node is not None and node.tag != tag:
            node = node.parent
        return node


class _Builder(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.root = Node("page", {})
        self._open = self.root

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        node = Node(tag, {name: value or "" for name, value in attrs}, self._open)
        self._open.children.append(node)
        if tag not in _VOID:
            self._open = node

    def handle_endtag(self, tag: str) -> None:
        node: Node | None = self._open
        while node is not None and node.tag != tag:
            node = node.parent
        if node is not None and node.parent is not None:
            self._open = node.parent

    def handle_data(self, data: str) -> None:
        self._open.children.append(data)


def read_page(html: str) -> Node:
    """The page of an HTML text."""
    builder = _Builder()
    builder.feed(html)
    return builder.root


def place(page: Node, words: str) -> Node:
    """The smallest place that has these words.

    Raises:
        PageError: no place has them.
    """
    found = [node for node in page.all() if node.tag in _PLACES and _has(node, words)]
    if not found:
        raise PageError(f"no place on this page has: {words}")
    return min(found, key=lambda node: len(node.text))


def link(where: Node, words: str) -> str:
    """The address that a link leads to; by its whole words, else by a part of them."""
    links = [
        node
        for node in where.all()
        if node.tag == "a" and not node.attributes.get("href", "tel:").startswith("tel:")
    ]
    return _one(links, words, "link").attributes["href"]


def button(where: Node, words: str) -> Node:
    """A button, by its words."""
    buttons = [
        node
        for node in where.all()
        if node.tag == "button" and node.attributes.get("type", "submit") == "submit"
    ]
    return _one(buttons, words, "button")


def field_of(page: Node, where: Node, label: str) -> Node:
    """The field that a label names, within a place of the page."""
    labels = {node.attributes["for"]: node for node in page.all() if "for" in node.attributes}
    named: list[tuple[Node, Node]] = []
    for node in where.all():
        if node.tag in _FIELDS and node.attributes.get("type") not in ("hidden", "submit"):
            beside = node.inside("label") or labels.get(node.attributes.get("id", ""))
            if beside is not None:
                named.append((beside, node))
    chosen = _one([beside for beside, _ in named], label, "field")
    return next(node for beside, node in named if beside is chosen)


def _one(nodes: list[Node], words: str, kind: str) -> Node:
    """The node with just these words, else the first whose words hold them."""
    exact = [node for node in nodes if node.text.casefold() == words.casefold()]
    found = exact or [node for node in nodes if _has(node, words)]
    if not found:
        there = "; ".join(dict.fromkeys(node.text for node in nodes if node.text)) or "none"
        raise PageError(f"no {kind}: {words}; there are: {there[:300]}")
    return found[0]


def _has(node: Node, words: str) -> bool:
    return words.casefold() in node.text.casefold()


# --- what a form sends -----------------------------------------------------------------------


def options(select: Node) -> list[Node]:
    """The choices of a list."""
    return [node for node in select.all() if node.tag == "option"]


def filled(form: Node, changed: dict[Node, str | None]) -> list[tuple[str, str]]:
    """What a form sends: its fields as they stand, with what was changed in them.

    Args:
        changed: what was typed or chosen; None for a box that was unticked, "on" or its own
            value for one that was ticked
    """
    pairs = ((node, _value(node, changed)) for node in form.all() if node.tag in _FIELDS)
    return [
        (node.attributes["name"], value)
        for node, value in pairs
        if value is not None and "name" in node.attributes
    ]


def _value(node: Node, changed: dict[Node, str | None]) -> str | None:
    if node in changed:
        return changed[node]
    if node.tag == "textarea":
        return "".join(child for child in node.children if isinstance(child, str))
    if node.tag == "select":
        listed = options(node)
        chosen = [each for each in listed if "selected" in each.attributes] or listed[:1]
        return option_value(chosen[0]) if chosen else None
    if node.attributes.get("type") in ("checkbox", "radio"):
        return node.attributes.get("value", "on") if "checked" in node.attributes else None
    return node.attributes.get("value", "")


def option_value(option: Node) -> str:
    """What a choice sends."""
    return option.attributes.get("value", option.text)
