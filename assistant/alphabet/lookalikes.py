"""Typographers' characters exchanged for the plain ones that every phone has.

One curly quote turns 160 characters a segment into 70. Letters are never changed: their
accents belong to the language. Nothing here that carries a number (½, ², °) is touched.
"""

import re
import unicodedata

_GROUPS = {
    "'": "‘’‚‛′‹›`´ʹʻʼˈ",
    '"': "“”„‟″«»",
    "-": "‐‑‒–—―−•‣·∙▪●◦⁃",
    "...": "…",
    "/": "⁄∕",
    "x": "×",
    "->": "→",
    # no-break, en, em, thin, figure, hair, narrow, ideographic ... and the tab
    " ": "\t\u00a0\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a"
    "\u202f\u205f\u3000",
    "\n": "\u2028\u2029\x0b\x85",
    # soft hyphen, zero-width space, word joiner, byte order mark. The joiners U+200C and
    # U+200D stay: Indic scripts need them.
    "": "\u00ad\u200b\u2060\ufeff",
}

_PLAIN = str.maketrans({odd: good for good, odds in _GROUPS.items() for odd in odds})
_RETURNS = re.compile("\r+\n?")
_ACCENTED = re.compile("\\w[\u0300-\u036f]+")


def plain(text: str) -> str:
    """Exchange look-alike punctuation and spaces for their GSM equivalents.

    Accents typed apart are joined to their letter (e + U+0301 becomes é), so that the letter
    counts once. Safe to apply twice.
    """
    marked = _RETURNS.sub("\n", text.translate(_PLAIN))
    return _ACCENTED.sub(lambda found: unicodedata.normalize("NFC", found[0]), marked)
