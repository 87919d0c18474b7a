"""Writes every declared text into the catalogues: `python -m tests.catalogue.update [--check]`.

With `--lang fr,pt` only into those.

Translations are kept. A text whose English changed a little keeps its old translation, marked
fuzzy; the check fails until a translator has looked at it. What is no longer said is dropped.
The first lines of a file, up to the first blank line, are its own and are kept: there a native
reviewer signs (X-Reviewed-By). A new language: make its folder and run this.

English has no catalogue: the texts in the code are the English.
"""

import sys
from argparse import ArgumentParser
from collections.abc import Collection
from io import BytesIO
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.pofile import read_po, write_po

from assistant.alphabet import Encoding
from assistant.alphabet.counting import ALONE, JOINED
from assistant.wiring.catalogues import SOURCE, locales_folder
from assistant.wording.checks import UCS2_LANGUAGES, allowed
from assistant.wording.texts import Declared, declared

WIDTH = 96
# Each follows the cardinal categories of Unicode CLDR for whole numbers below a million.
PLURALS = {
    "bn": "nplurals=2; plural=(n > 1);",
    "fil": "nplurals=2; plural=(n % 10 == 4 || n % 10 == 6 || n % 10 == 9);",
    "fr": "nplurals=2; plural=(n > 1);",
    "hi": "nplurals=2; plural=(n > 1);",
    "id": "nplurals=1; plural=0;",
    "pt": "nplurals=2; plural=(n > 1);",
    "sw": "nplurals=2; plural=(n != 1);",
    "vi": "nplurals=1; plural=0;",
}
HEADER = """\
# Drafted by the project. A native reviewer has yet to sign it: X-Reviewed-By below.
# Slots in braces stay as they are. Digits that are answers keep their order.
# Words to send stand in capitals (in a script without capitals: in double quotes) and must be
# among the words of assistant/reading/words/{code}.toml. Terms: locales/glossary.md.
msgid ""
msgstr ""
"Project-Id-Version: nursery\\n"
"Language: {code}\\n"
"MIME-Version: 1.0\\n"
"Content-Type: text/plain; charset=utf-8\\n"
"Content-Transfer-Encoding: 8bit\\n"
"Plural-Forms: {plural}\\n"
"X-Reviewed-By: nobody yet\\n"
"""


def template(code: str) -> Catalog:
    """All texts without translations, with what a translator should know of each."""
    catalog = Catalog(locale=code)
    for text in declared():
        message = text.message
        key = (message.text, message.plural) if message.plural else message.text
        catalog.add(key, locations=[(text.place, 0)], auto_comments=notes(text, code))
    return catalog


def notes(text: Declared, code: str) -> list[str]:
    """The note of a text, its room and its slots."""
    room = f"Room with the widest slots: {characters(text, code)} characters."
    size = "On paper." if text.printed else room
    slots = f" Slots: {', '.join(sorted(text.slots))}." if text.slots else ""
    return [f"{text.message.note} {size}{slots}".strip()]


def characters(text: Declared, code: str) -> int:
    """How long a text may be, by its budget of segments."""
    encoding = Encoding.UCS2 if code in UCS2_LANGUAGES else Encoding.GSM7
    segments = allowed(text.message.segments, encoding)
    return ALONE[encoding] if segments == 1 else segments * JOINED[encoding]


def updated(code: str, before: str) -> str:
    """The text of a catalogue brought up to date."""
    head, _, _ = before.partition("\n\n")
    head = head or HEADER.format(code=code, plural=PLURALS[code]).rstrip()
    old = read_po(BytesIO((before or head).encode()), locale=code)
    new = template(code)
    old.update(new)
    body = BytesIO()
    write_po(body, old, width=WIDTH, omit_header=True, ignore_obsolete=True)
    for gone in old.obsolete.values():
        print(f"{code}: dropped {str(gone.id)[:60]!r} = {str(gone.string)[:60]!r}")
    return f"{head}\n\n{body.getvalue().decode()}"


def folders(only: Collection[str]) -> list[Path]:
    """The folders of the languages named, or of all; English is in the code."""
    found = sorted(path for path in locales_folder().iterdir() if path.is_dir())
    return [each for each in found if each.name != SOURCE and (not only or each.name in only)]


def main(check: bool, only: Collection[str] = ()) -> int:
    """Updates the files, or only tells which are behind; 1 if any was."""
    behind = 0
    for folder in folders(only):
        path = folder / "LC_MESSAGES" / "messages.po"
        before = path.read_text(encoding="utf-8") if path.exists() else ""
        after = updated(folder.name, before)
        if after != before:
            behind += 1
            print(f"{path}: {'is behind the texts' if check else 'updated'}")
            if not check:
                write(path, after)
    return int(bool(behind) and check)


def write(path: Path, text: str) -> None:
    """Writes one file, making its folder."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")


if __name__ == "__main__":
    parser = ArgumentParser(description="Brings the catalogues up to the texts of the code.")
    parser.add_argument("--check", action="store_true", help="only tell which are behind")
    parser.add_argument("--lang", default="", metavar="CODES", help="only these: fr,pt")
    given = parser.parse_args()
    sys.exit(main(given.check, [code for code in given.lang.split(",") if code]))
