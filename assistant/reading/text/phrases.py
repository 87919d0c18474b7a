"""Phrases by the tens of thousands, packed: what may stand beside a deed ("with my wife").

A static trie (marisa-trie, in memory) holds such a list in about a fortieth of what a dict of
tuples takes, and tells in one look which of its phrases begin at a word.
"""

from collections.abc import Iterable, Iterator, Mapping

from marisa_trie import Trie

_Words = tuple[str, ...]  # folded, or with their accents
_BETWEEN = "\t"  # a phrase and how it is spelt with its accents; in no word


def as_said(words: Iterable[str]) -> str:
    """Words as a trie has them: a space behind each, so that no phrase ends within a word."""
    return " ".join(words) + " "


class PackedPhrases(Mapping[_Words, str]):
    """A set of phrases as a mapping to no key, as phrases of other sorts are mapped to theirs.

    `spelt`: each phrase with each of its spellings, in a language whose accents make words.
    first: the words with which they begin
    """

    __slots__ = ("_spelt", "_trie", "first")

    def __init__(self, trie: Trie, spelt: Trie, first: frozenset[str]) -> None:
        self._trie, self._spelt, self.first = trie, spelt, first

    @classmethod
    def of(
        cls, phrases: Iterable[_Words], spelt: Iterable[tuple[_Words, _Words]] = ()
    ) -> "PackedPhrases":
        """Packs phrases, and pairs of a phrase and its spelling with accents."""
        pairs = (f"{as_said(plain)}{_BETWEEN}{as_said(marked)}" for plain, marked in spelt)
        listed = tuple(phrases)
        first = frozenset(phrase[0] for phrase in listed)
        return cls(Trie(map(as_said, listed)), Trie(pairs), first)

    def packed(self) -> tuple[bytes, bytes, frozenset[str]]:
        """What `unpacked` makes it from."""
        return self._trie.tobytes(), self._spelt.tobytes(), self.first

    @classmethod
    def unpacked(cls, trie: bytes, spelt: bytes, first: frozenset[str]) -> "PackedPhrases":
        """What was packed, without packing it again."""
        return cls(Trie().frombytes(trie), Trie().frombytes(spelt), first)

    def __getitem__(self, phrase: _Words) -> str:
        if as_said(phrase) not in self._trie:
            raise KeyError(phrase)
        return ""

    def __iter__(self) -> Iterator[_Words]:
        return (tuple(said.split()) for said in self._trie.iterkeys())

    def __len__(self) -> int:
        return len(self._trie)

    def lengths(self, said: str) -> tuple[int, ...]:
        """How many words the phrases have with which a text `as_said` begins."""
        return tuple(found.count(" ") for found in self._trie.prefixes(said))

    def spellings(self, phrase: _Words) -> tuple[_Words, ...]:
        """A phrase with its accents, in all ways that were listed."""
        pairs = self._spelt.keys(f"{as_said(phrase)}{_BETWEEN}")
        return tuple(tuple(pair.partition(_BETWEEN)[2].split()) for pair in pairs)

    def all_spellings(self) -> Iterator[tuple[_Words, _Words]]:
        """Each phrase with each of its spellings."""
        for pair in self._spelt.iterkeys():
            plain, _, marked = pair.partition(_BETWEEN)
            yield tuple(plain.split()), tuple(marked.split())
