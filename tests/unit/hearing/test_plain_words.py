"""How people put it: bare words that refuse, somebody unwell, and the twins that are none.

The texts are the project's own; no native reviewer has signed them.
"""

import pytest

from assistant.acts import Act
from assistant.hearing import Certainty, Understood, understand
from assistant.wiring.hearing import open_ears

EARS = open_ears()


def heard(language: str, text: str) -> Understood:
    """A text as the ears of this project hear it."""
    return understand(text, EARS, language)


OBEYED = [
    *(("en", text) for text in ("remove me", "do not disturb", "had enough of this")),
    *(("sw", text) for text in ("msinitumie tena", "niacheni jamani", "naomba mnitoe")),
    *(("fr", text) for text in ("laissez-moi tranquille svp", "je ne veux plus", "marre")),
    *(("pt", text) for text in ("não me incomodem", "tô fora", "nao quero mais mensagem")),
    *(("fil", text) for text in ("ayoko na po", "tigilan nyo ako", "sawa na ako")),
    *(("hi", text) for text in ("परेशान मत करो", "naam kaat do", "tang aa gaya hu")),
    *(("bn", text) for text in ("আর পাঠাইয়েন না", "amake bad den", "birokto koiren na")),
    *(("id", text) for text in ("jangan ganggu", "hapus nomor saya", "tidak tertarik")),
    *(("vi", text) for text in ("dung lam phien", "hủy đăng ký", "phiền quá")),
]
ASKED = [
    *(("en", text) for text in ("enough", "not for us", "wrong number", "I sold my field")),
    *(("en", text) for text in ("who gave you my number", "you write too much")),
    *(("sw", text) for text in ("inatosha", "sitaki", "mmekosea namba", "mimi si mkulima")),
    *(("fr", text) for text in ("basta", "j'ai vendu ma rizière", "qui a donné mon numéro")),
    *(("pt", text) for text in ("pare", "chega", "número errado", "não sou agricultor")),
    *(("fil", text) for text in ("ayoko", "tama na", "maling number po", "ayaw ko")),
    *(("hi", text) for text in ("बस", "nahi chahiye", "गलत नंबर", "kheti chhod di")),
    *(("bn", text) for text in ("lagbe na", "ভুল নাম্বার", "জমি বেচে দিছি")),
    *(("id", text) for text in ("cukup", "batal", "salah sambung", "bukan buat kami")),
    *(("vi", text) for text in ("thôi", "khỏi cần", "nham so roi", "bán ruộng rồi")),
]
NO_REFUSAL = [
    *(
        ("en", text)
        for text in ("enough water in the bed", "we had enough trouble", "cukup air")
    ),
    *(("sw", text) for text in ("maji yanatosha", "mvua inatosha sasa", "sawa")),
    *(("fr", text) for text in ("il y a assez d'eau", "la semence suffit")),
    *(("pt", text) for text in ("chega água no canteiro", "já basta de chuva")),
    *(("fil", text) for text in ("tama na ang tubig", "oo pare", "tama po ang sukat")),
    *(("hi", text) for text in ("bas thoda paani diya", "बस पानी दे दिया")),
    *(("bn", text) for text in ("আর পানি লাগবে না", "jothesto pani ase")),
    *(("id", text) for text in ("cukup airnya", "sudah", "selesai")),
    *(("vi", text) for text in ("thôi để mai làm", "nước đủ rồi", "hom qua lam r")),
]


@pytest.mark.parametrize(("language", "text"), OBEYED)
def test_a_plain_refusal_is_said(language: str, text: str) -> None:
    assert heard(language, text).certainty(Act.REFUSE) is Certainty.SAID


@pytest.mark.parametrize(("language", "text"), ASKED)
def test_what_may_be_a_refusal_is_asked_about(language: str, text: str) -> None:
    found = heard(language, text)
    assert found.certainty(Act.REFUSE) is Certainty.HALF
    assert found.is_by_rule(Act.REFUSE)


@pytest.mark.parametrize(("language", "text"), NO_REFUSAL)
def test_the_same_word_within_other_talk_refuses_nothing(language: str, text: str) -> None:
    assert not heard(language, text).is_by_rule(Act.REFUSE)


HURT = [
    *(("en", text) for text in ("my wife is not well", "my child in the pail")),
    *(("sw", text) for text in ("mke wangu si mzima", "mwanangu ndani ya ndoo")),
    *(("fr", text) for text in ("ma femme ne va pas bien", "mon fils dans le seau")),
    *(("pt", text) for text in ("minha mulher não está bem", "meu filho no balde")),
    *(("fil", text) for text in ("masama pakiramdam ng asawa ko", "nasa timba ang anak ko")),
    *(("hi", text) for text in ("मेरी पत्नी ठीक नहीं है", "bachcha balti me", "maa behosh")),
    *(("bn", text) for text in ("আমার স্ত্রী ভালো নেই", "বাচ্চা বালতির মধ্যে")),
    *(("id", text) for text in ("istri saya kurang sehat", "anak saya di dalam ember")),
    *(("vi", text) for text in ("vợ tôi không khỏe", "con toi trong xo", "má xỉu rồi")),
]
WELL = [
    *(("en", text) for text in ("my wife is well", "the seed is in the bucket since 6")),
    *(("en", text) for text in ("my son put seed in the bucket", "my wife is very happy")),
    *(("sw", text) for text in ("mke wangu ni mzima", "mbegu ziko ndani ya ndoo tangu saa 12")),
    *(("sw", text) for text in ("mtoto yuko ndani ya nyumba", "mtoto yuko shuleni")),
    *(("fr", text) for text in ("ma femme va bien", "la semence est dans le seau")),
    *(("pt", text) for text in ("minha mulher está bem", "a semente está no balde")),
    *(("fil", text) for text in ("nasa timba ang binhi", "okay naman asawa ko")),
    *(("hi", text) for text in ("मेरी बीवी ठीक है", "beej balti me hai")),
    *(("bn", text) for text in ("amar bou valo ase", "বীজ বালতির মধ্যে")),
    *(("id", text) for text in ("istri saya sehat", "benih di dalam ember")),
    *(("vi", text) for text in ("vợ tôi khỏe", "hạt giống trong xô", "con ngâm trong thùng")),
]


@pytest.mark.parametrize(("language", "text"), HURT)
def test_somebody_unwell_is_heard(language: str, text: str) -> None:
    assert heard(language, text).certainty(Act.HARM) is Certainty.SAID


@pytest.mark.parametrize(("language", "text"), WELL)
def test_somebody_well_and_seed_in_a_pail_ring_nothing(language: str, text: str) -> None:
    assert heard(language, text).kind(Act.HARM) is None


DARK = [
    *(("en", text) for text in ("tired of living", "goodbye forever")),
    *(("en", text) for text in ("my debts are too many i will end everything",)),
    *(("sw", text) for text in ("nimechoka kuishi", "watakuwa bora bila mimi")),
    *(("fr", text) for text in ("adieu pour toujours", "ils seront mieux sans moi")),
    *(("pt", text) for text in ("cansado de viver", "ficam melhor sem mim")),
    *(("fil", text) for text in ("wala nang dahilan para mabuhay", "paalam sa inyong lahat")),
    *(("hi", text) for text in ("जीने की इच्छा नहीं", "mere bina sab khush rahenge")),
    *(("bn", text) for text in ("বাঁচতে ইচ্ছা করে না", "ami na thakle sobai valo thakbe")),
    *(("id", text) for text in ("capek hidup", "mereka lebih baik tanpa aku")),
    *(("vi", text) for text in ("chán sống rồi", "vĩnh biệt", "khong muon song nua")),
]
BEDS = [
    *(("en", text) for text in ("my seedlings want to die", "the plants are going to die")),
    *(("sw", text) for text in ("miche inataka kufa",)),
    *(("fr", text) for text in ("mes semis vont mourir",)),
    *(("pt", text) for text in ("as mudas querem morrer",)),
    *(("fil", text) for text in ("gusto nang mamatay ng punla",)),
    *(("hi", text) for text in ("paudhe marna chahte hain",)),
    *(("bn", text) for text in ("চারা মরে যাচ্ছে",)),
    *(("id", text) for text in ("bibit mau mati",)),
    *(("vi", text) for text in ("mạ muốn chết",)),
]


@pytest.mark.parametrize(("language", "text"), DARK)
def test_wanting_to_die_is_heard_behind_a_veil(language: str, text: str) -> None:
    assert heard(language, text).certainty(Act.DIE) is Certainty.SAID


@pytest.mark.parametrize(("language", "text"), BEDS)
def test_seedlings_that_want_to_die_are_a_bed(language: str, text: str) -> None:
    assert heard(language, text).kind(Act.DIE) is None


def test_a_bare_word_of_another_language_is_asked_about_at_most() -> None:
    """ "Ayoko" from somebody enrolled in English."""
    found = heard("en", "ayoko")
    assert found.certainty(Act.REFUSE) is Certainty.HALF
    assert not found.is_by_rule(Act.REFUSE)
