"""Texts about people's own data: being forgotten."""

from assistant.wording.message import Message

WORD_DELETE = Message(
    "DELETE", note="The word to send. It is one of DELETE_WORDS in messages_privacy.py."
)
ERASE_SURE = Message(
    "To have all that I keep of you deleted, send DELETE within 3 days. Did you not ask? Then do "
    "nothing.",
    note="Somebody asked for it. DELETE is the word to send.",
)
ERASE_DUE = Message(
    "On {date} I delete your number, name, nurseries and words. START before then keeps them. "
    "Your officer knows.",
    note="Somebody sent DELETE. {date} is a week away. START stays.",
)
# The word in each of the nine languages; folded, with and without marks.
DELETE_WORDS = frozenset(
    {
        "delete",
        "futa",
        "supprimer",
        "apagar",
        "hapus",
        "burahin",
        "xoa",
        "xóa",
        "xoá",
        "मिटाएँ",
        "मिटाओ",
        "हटाओ",
        "মুছুন",
        "ডিলিট",
        "डिलीट",
    }
)
