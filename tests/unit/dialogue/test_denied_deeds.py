"""What was not done, or only in part, is never written down as done.

The words are how the project's drafters would type them; no native reviewer has signed them.
"""

from datetime import date

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.dialogue import values as v
from assistant.dialogue.turns import turn
from assistant.wording import messages_result as r
from tests.corpus.talk.moments import MOMENTS
from tests.talk import Phone, item, nursery
from tests.valley import like

PLANTED, ASKED = date(2026, 6, 19), date(2026, 6, 27)
TASKS = ("soak", "sow", "uncover", "transplant", "warning", "result")

NOT_DONE = [
    *(("en", said) for said in ("no we did not", "did not finish", "only half", "tomorrow")),
    *(("en", said) for said in ("not me, my brother", "never did it", "nothing done")),
    *(("sw", said) for said in ("hapana hatukufanya", "haikufanyika", "nusu tu", "haijaisha")),
    *(("fr", said) for said in ("non on ne l'a pas fait", "à moitié", "pas moi, mon frère")),
    *(("pt", said) for said in ("nao fizemos", "só metade", "não terminei", "amanhã")),
    *(("fil", said) for said in ("hindi pa tapos", "hindi nagawa", "kalahati lang", "bukas")),
    *(("hi", said) for said in ("नहीं हमने नहीं किया", "aadha hua hai", "maine nahi bhai ne")),
    *(("bn", said) for said in ("না আমরা করিনি", "ordhek hoise", "ami na amar bhai")),
    *(("id", said) for said in ("tidak, kami tidak melakukannya", "cuma setengah", "besok")),
    *(("vi", said) for said in ("không chúng tôi không làm", "moi xong mot nua", "chưa hết")),
]


# The house next door, another field, a cover that was put back, rain and children at play.
OF_OTHERS = [
    ("en", "sow", "next door sowed"),
    ("en", "transplant", "we transplanted the old field, this one on monday"),
    ("en", "uncover", "uncovered it and covered it again"),
    ("en", "uncover", "children uncovered the bed while playing"),
    ("en", "drain", "drained and then filled again"),
    ("sw", "uncover", "nimefunua nikafunika tena"),
    ("sw", "transplant", "tumepanda shamba la zamani, hili jumatatu"),
    ("fr", "uncover", "découvert puis recouvert"),
    ("pt", "uncover", "destapei e voltei a tapar"),
    ("pt", "sow", "o do lado já semeou"),
    ("hi", "sow", "bagal wale ne bo diya"),
    ("hi", "uncover", "khol ke phir dhak diya"),
    ("hi", "soak", "barish me beej bheeg gaya"),
    ("bn", "transplant", "purano jomi ruye felsi, eita sombar"),
    ("bn", "uncover", "khule abar dhaka disi"),
    ("id", "uncover", "sudah dibuka terus ditutup lagi"),
    ("fil", "uncover", "binuksan tapos tinakpan ulit"),
    ("fil", "transplant", "natamnan na ang lumang bukid, ito sa lunes"),
    ("vi", "sow", "nhà bên gieo rồi"),
    ("vi", "uncover", "mở ra rồi đậy lại"),
    ("fil", "soak", "nagbabad ako ng labada maghapon"),
]


@pytest.mark.parametrize(("language", "moment", "said"), OF_OTHERS)
def test_what_others_did_or_what_was_undone_is_no_deed(
    language: str, moment: str, said: str
) -> None:
    changes = turn(said, MOMENTS[moment](language)).changes
    kept = {change.answer for change in changes if isinstance(change, v.AnswerItem)}
    assert "done" not in kept


@pytest.mark.parametrize("moment", TASKS)
@pytest.mark.parametrize(("language", "said"), NOT_DONE)
def test_what_was_not_done_is_no_deed(language: str, said: str, moment: str) -> None:
    kept = {
        change.answer
        for change in turn(said, MOMENTS[moment](language)).changes
        if isinstance(change, v.AnswerItem | v.AnswerWarning)
    }
    assert kept <= {"not_yet"}


@pytest.mark.parametrize("said", ["no we did not", "no", "not done", "no i did not sow again"])
def test_no_we_did_not_is_no_where_a_deed_is_asked(said: str) -> None:
    """ "Did you have to sow this bed again?"; it was asked once more, as if unheard."""
    kept = nursery(sow=date(2026, 6, 1), sown=True, transplanted_on=PLANTED)
    phone = Phone.enrolled(kept).on(ASKED).asked(item(TaskCode.SEASON_RESULT, ASKED))
    phone.hears("1")
    phone.hears("27")
    assert phone.hears(said)[0] == like(r.RESULT_KEPT, r.SURPLUS)
