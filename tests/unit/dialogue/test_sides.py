"""A field told by its sides alone: feet or metres is asked, eleven times apart as they are."""

import pytest

from tests.talk import Phone


@pytest.mark.parametrize(("digit", "m2"), [("1", 464.52), ("2", 5000.0)])
def test_feet_or_metres_is_asked_and_the_answer_kept(digit: str, m2: float) -> None:
    """50 ft x 100 ft = 5,000 ft2 x 0.3048^2 = 464.52 m2, by the international foot."""
    phone = Phone.enrolled()
    phone.says("new")
    (asked,) = phone.hears("50 by 100")
    assert asked.splitlines()[1:] == ["1 Feet: 465 m2", "2 Metres: 5,000 m2"]
    phone.says(digit)
    assert phone.known.session is not None
    assert phone.known.session.answers["area"] == pytest.approx(m2)


def test_sides_with_their_unit_are_not_asked_about() -> None:
    phone = Phone.enrolled()
    phone.says("new")
    phone.says("50 by 100 feet")
    assert phone.known.session is not None
    assert phone.known.session.answers["area"] == pytest.approx(464.52)
