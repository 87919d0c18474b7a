"""Areas. Expected values: hectare 10,000 m2, are 100 m2 (SI Brochure 2019, table 8); acre
4,046.8564224 m2 and foot 0.3048 m (international definitions); local units as fixed by the
programme: see assistant/agronomy/units.py."""

import pytest

from assistant.reading import Outcome, Reason, read_area

ACRE = 4046.8564224


@pytest.mark.parametrize(
    ("language", "text", "m2"),
    [
        ("en", "2 acres", 2 * ACRE),
        ("en", "one and a half acres", 1.5 * ACRE),
        ("en", "2 1/2 acres", 2.5 * ACRE),
        ("en", "2½ acres", 2.5 * ACRE),
        ("en", "an acre and a half", 1.5 * ACRE),
        ("en", "half of one acre", 0.5 * ACRE),
        ("en", "three quarters of an acre", 0.75 * ACRE),
        ("en", "one point five acres", 1.5 * ACRE),
        ("en", "point 5 ha", 5000),
        ("en", "my field is 2 acres, germination 85%", 2 * ACRE),
        ("en", "2 acres (0.8 ha)", 2 * ACRE),
        ("en", "1 acre 20 decimals", 1.2 * ACRE),
        ("en", "1 ha 50 ares", 15000),
        ("en", "50 x 20 m", 1000),
        ("en", "50mx20m", 1000),
        ("en", "100 by 50 feet", 464.52),  # 5,000 ft2 to the hundredth of a square metre
        ("en", "1,500 m2", 1500),
        ("en", "1,00,000 sq ft", 9290.304),
        ("en", "two thousand square metres", 2000),
        ("en", "no, 2 acres", 2 * ACRE),
        ("sw", "ekari moja na nusu", 1.5 * ACRE),
        ("sw", "elfu mbili mia tano mita mraba", 2500),
        ("sw", "mita 50 kwa mita 20", 1000),
        ("fr", "un hectare et demi", 15000),
        ("fr", "quatre-vingt-dix ares", 9000),
        ("fr", "1 500 m2", 1500),
        ("fr", "1,5 ha", 15000),
        ("hi", "साढ़े तीन एकड़", 3.5 * ACRE),
        ("hi", "paune do acre", 1.75 * ACRE),
        ("hi", "१.५ एकड़", 1.5 * ACRE),
        ("bn", "আড়াই একর", 2.5 * ACRE),
        ("bn", "৩৩ শতক", 0.33 * ACRE),
        ("id", "satu setengah hektar", 15000),
        ("id", "dua puluh lima are", 2500),
        ("id", "1.500 m2", 1500),
        ("vi", "một héc ta rưỡi", 15000),
        ("vi", "tam muoi a", 8000),
        ("vi", "năm trăm mét vuông", 500),
        ("pt", "mil e quinhentos m2", 1500),
        ("pt", "um vírgula cinco hectares", 15000),
        ("fil", "isa't kalahating ektarya", 15000),
        ("fil", "dalawang libong metro kuwadrado", 2000),
    ],
)
def test_an_area_is_understood(lexicons, language, text, m2):
    """Numbers and units in any order and spelling, in nine languages."""
    reading = read_area(text, lexicons[language])
    assert reading.outcome is Outcome.UNDERSTOOD
    assert reading.value == pytest.approx(m2, rel=1e-9)


@pytest.mark.parametrize(
    ("language", "region", "text", "m2"),
    [
        ("en", "BD", "1 bigha", 33 * ACRE / 100),
        ("en", "NP", "1 bigha 5 katha", 72_900 * 0.3048**2 * 1.25),
        ("bn", "IN-WB", "৫ কাঠা", 5 * 720 * 0.3048**2),
        ("hi", "IN-MH", "10 गुंठा", 10 * ACRE / 40),
        ("en", "IN-TN", "25 cents", 25 * ACRE / 100),
        ("hi", "IN-PB", "2 किल्ला", 2 * ACRE),
        ("vi", "VN-N", "1 mẫu 2 sào", 12 * 360),
        ("en", "ZM", "2 lima", 5000),
        ("en", "TH", "2 rai 1 ngan", 3600),
    ],
)
def test_a_local_unit_has_the_size_of_its_region(lexicons, language, region, text, m2):
    """The programme's region settles it, and square metres are shown beside it."""
    reading = read_area(text, lexicons[language], region)
    assert reading.outcome is Outcome.UNDERSTOOD
    assert reading.value == pytest.approx(m2, rel=1e-9)
    assert "(" in reading.words


@pytest.mark.parametrize(
    ("text", "m2", "reason"),
    [
        ("19 m2", 19, Reason.TOO_SMALL),
        ("40 ha", 400_000, Reason.TOO_BIG),
        ("50 by 20", 1000, Reason.MISSING_UNIT),
        ("o.4 ha", 4000, Reason.SLIP),
        ("1O ha", 100_000, Reason.SLIP),
        ("٢ ha", 20_000, Reason.SLIP),
        ("1 500 m2", 1500, Reason.SLIP),
        ("2 acres no 3 acres", 3 * ACRE, Reason.CORRECTED),
        ("2 acres sorry 3", 3 * ACRE, Reason.CORRECTED),
        ("less than 2 acres", 2 * ACRE, Reason.ROUGH),
        ("nearly 2 acres", 2 * ACRE, Reason.ROUGH),
        ("2/3 acre", 2 * ACRE / 3, Reason.AMBIGUOUS),
        ("11/2 acres", 5.5 * ACRE, Reason.AMBIGUOUS),
        ("plot 3: 2 acres", 2 * ACRE, Reason.TWO_VALUES),
        ("+2 acres", 2 * ACRE, Reason.UNUSUAL),
        ("2 ares", 200, Reason.UNUSUAL),
        ("2 acres and a hlaf", 2 * ACRE, Reason.SLIP),
    ],
)
def test_an_unusual_area_is_read_back(lexicons, text, m2, reason):
    """Sure enough to be shown, not to be used without a yes."""
    reading = read_area(text, lexicons["en"])
    assert (reading.outcome, reading.reason) == (Outcome.CONFIRM, reason)
    assert reading.value == pytest.approx(m2)


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("", Reason.EMPTY),
        ("x" * 2001, Reason.TOO_LONG),
        ("2", Reason.MISSING_UNIT),
        ("half", Reason.MISSING_UNIT),
        ("there are 5", Reason.MISSING_UNIT),
        ("2 good", Reason.UNKNOWN_UNIT),
        ("acre", Reason.MISSING_NUMBER),
        ("20 paces", Reason.UNMEASURED_UNIT),
        ("60 paces by 40", Reason.UNMEASURED_UNIT),
        ("2 bigha", Reason.REGION_UNIT),
        ("500 m", Reason.LENGTH_ONLY),
        ("2-3 acres", Reason.TWO_VALUES),
        ("2 to 3 acres", Reason.TWO_VALUES),
        ("2 acres and 3 acres", Reason.TWO_VALUES),
        ("five six acres", Reason.TWO_VALUES),
        ("50 x 20 x 3 m", Reason.TWO_VALUES),
        ("1 half acre", Reason.AMBIGUOUS),
        ("25.000 m2", Reason.AMBIGUOUS),
        ("not 2 acres", Reason.NEGATED),
        ("2 acres no", Reason.NEGATED),
        ("-2 acres", Reason.IMPOSSIBLE),
        ("0 ha", Reason.IMPOSSIBLE),
        ("20000 ha", Reason.TOO_BIG),
        ("0.5 m2", Reason.TOO_SMALL),
        ("i dont know", Reason.NOT_KNOWN),
        ("1e5 m2", Reason.NOT_READ),
        ("1_000 m2", Reason.NOT_READ),
        ("1,2,3 ha", Reason.NOT_READ),
        ("9" * 500 + " ha", Reason.NOT_READ),
        ("nan ha", Reason.MISSING_NUMBER),
        ("😀", Reason.EMPTY),
    ],
)
def test_an_unsure_area_is_asked_again(lexicons, text, reason):
    """Nothing is guessed; the reason says what to ask for."""
    reading = read_area(text, lexicons["en"])
    assert (reading.outcome, reading.reason, reading.value) == (Outcome.AGAIN, reason, None)


@pytest.mark.parametrize(
    ("language", "region", "text", "words"),
    [
        ("en", None, "2", ["2 ha", "2 acres"]),
        ("en", None, "2000", ["2,000 m2"]),
        ("en", "BD", "5", ["5 bigha", "5 decimals", "5 acres", "5 katha"]),
        ("vi", "VN-N", "3", ["3 sào", "3 mẫu"]),
        ("sw", None, "heka 2", ["2 ekari", "2 ha"]),
    ],
)
def test_the_likely_units_are_offered(lexicons, language, region, text, words):
    """As choices for digits; only what makes a field."""
    reading = read_area(text, lexicons[language], region)
    assert [option.words for option in reading.options] == words


@pytest.mark.parametrize(
    ("language", "text"),
    [("id", "bukan 2 ha"), ("hi", "नहीं 2 एकड़"), ("vi", "không phải 2 ha"), ("pt", "não 2 ha")],
)
def test_a_no_that_may_be_a_not_is_read_back(lexicons, language, text):
    """Without a comma it may deny the number; with one it corrects what went before."""
    assert read_area(text, lexicons[language]).outcome is Outcome.CONFIRM


def test_french_pas_is_a_pace_after_a_number_and_a_not_before_it(lexicons):
    """20 pas are paces; pas 2 ha is not 2 ha."""
    assert read_area("20 pas", lexicons["fr"]).reason is Reason.UNMEASURED_UNIT
    assert read_area("pas 2 ha", lexicons["fr"]).reason is Reason.NEGATED


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("pt", "um hectare e maio"),
        ("fr", "1 hectare et dmi"),
        ("vi", "2 sào roỡi"),
        ("vi", "2 sào rưỡn"),
    ],
)
def test_what_may_be_a_half_with_a_slip_is_read_back(lexicons, language, text):
    """Also where the slip makes another word of the list: maio, for meio."""
    assert read_area(text, lexicons[language], "VN-N").outcome is Outcome.CONFIRM


@pytest.mark.parametrize(
    ("region", "text"),
    [("VN-N", "3 sào Trung Bộ"), ("VN-N", "3 sao trung bo"), ("VN-S", "5 công tầm lớn")],
)
def test_a_measure_of_another_part_of_the_country_is_asked_again(lexicons, region, text):
    """Its size is not that of the region spoken to."""
    assert read_area(text, lexicons["vi"], region).outcome is Outcome.AGAIN


def test_a_quarter_of_a_hectare_is_not_four_hectares(lexicons):
    reading = read_area("kwarto ektarya", lexicons["fil"], "PH")
    assert (reading.outcome, reading.value) == (Outcome.UNDERSTOOD, 2500)


@pytest.mark.parametrize("text", ["it has 3 goats", "my seed has 3 spots", "has 3"])
def test_what_a_thing_has_is_no_field(lexicons, text):
    """The verb is written as hectares are; behind the number they are meant."""
    assert read_area(text, lexicons["en"], "KE").outcome is Outcome.AGAIN
    assert read_area("2 has", lexicons["en"], "KE").value == 20_000


def test_ducks_are_no_hectares(lexicons):
    """Bengali in Latin letters writes them as hectares are written elsewhere."""
    assert read_area("2 ta has dhukse", lexicons["bn"], "BD").outcome is Outcome.AGAIN
