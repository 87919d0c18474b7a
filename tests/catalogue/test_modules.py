"""Every table of texts is in the list from which catalogues are made: a text that is missing
there is never translated, and nobody sees it but who reads another language."""

from pathlib import Path

from assistant import wording
from assistant.wording.texts import MODULES


def test_every_table_of_texts_is_listed() -> None:
    folder = Path(str(wording.__file__)).parent
    there = {path.stem for path in folder.glob("messages_*.py")}
    assert {module.__name__.rpartition(".")[2] for module in MODULES.values()} == there
