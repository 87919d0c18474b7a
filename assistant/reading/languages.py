"""Which language a person names, and which one they seem to write in (offered, not imposed)."""

from collections import Counter
from collections.abc import Mapping
from functools import lru_cache

from assistant.reading.text.fold import TEXTS_IN_HAND, TokenKind, cut, fold
from assistant.reading.text.lexicon import Lexicon, Phrase

# Names by which any speaker may call any language, folded as replies are.
_NAMES: Mapping[str, str] = {
    "en": "English|Kiingereza|anglais|अंग्रेज़ी|angrezi|ইংরেজি|ingreji|"
    "Inggris|tiếng Anh|inglês|Ingles",
    "sw": "Kiswahili|Swahili|souahéli|स्वाहिली|সোয়াহিলি|suaíli",
    "fr": "Français|French|Kifaransa|फ़्रेंच|ফরাসি|Prancis|tiếng Pháp|francês|Pranses",
    "hi": "हिन्दी|हिंदी|Hindi|Kihindi|হিন্দি|tiếng Hindi",
    "bn": "বাংলা|Bangla|Bengali|Kibengali|बांग्ला|बंगाली|bengalês|tiếng Bengal",
    "id": "Bahasa Indonesia|Indonesia|Indonesian|indonésien|indonésio|tiếng Indonesia",
    "vi": "Tiếng Việt|Vietnamese|Việt|Việt Nam|vietnamien|vietnamita|Vietnam",
    "pt": "Português|Portuguese|Kireno|portugais|Portugis|tiếng Bồ Đào Nha",
    "fil": "Filipino|Tagalog|Pilipino|Wikang Filipino",
}
_MARGIN = 1


def language_named(text: str) -> str | None:
    """The code of the language whose name the text is, in whatever language it is said."""
    words = tuple(token.text for token in cut(fold(text)) if token.kind is TokenKind.WORD)
    return _names().get(words)


@lru_cache(maxsize=1)
def _names() -> Mapping[Phrase, str]:
    return {
        tuple(token.text for token in cut(fold(name))): code
        for code, names in _NAMES.items()
        for name in names.split("|")
    }


def guess_language(text: str, lexicons: Mapping[str, Lexicon]) -> str | None:
    """The language a text seems to be written in, or None where that is not clear."""
    by_script = _script(text)
    if by_script in lexicons:
        return by_script
    words = _words(text)
    scores = Counter(
        {code: len(words & lexicon.own) for code, lexicon in lexicons.items()}
    ).most_common(2)
    if not scores or scores[0][1] == 0:
        return None
    if len(scores) > 1 and scores[0][1] - scores[1][1] < _MARGIN:
        return None
    return scores[0][0]


@lru_cache(maxsize=TEXTS_IN_HAND)
def _words(text: str) -> frozenset[str]:
    return frozenset(token.text for token in cut(fold(text)) if token.kind is TokenKind.WORD)


@lru_cache(maxsize=TEXTS_IN_HAND)
def _script(text: str) -> str | None:
    devanagari = sum("\u0900" <= ch <= "\u097f" for ch in text)
    bengali = sum("\u0980" <= ch <= "\u09ff" for ch in text)
    if not devanagari and not bengali:
        return None
    return "hi" if devanagari > bengali else "bn"
