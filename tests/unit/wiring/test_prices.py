"""A programme's price list is read whole, or every fault of it is told."""

from pathlib import Path

import pytest

import scenarios
from assistant.agronomy.work.costs import PriceList
from assistant.wiring.prices import PriceListError, open_prices, read_prices

GOOD = """
currency = "KES"
seed_per_kg = 150
soil_per_pail = 20
manure_per_pail = 30.5
rice_hull_per_pail = 0
sheet_per_m2 = 60
urea_per_kg = 90
labour_per_day = 500
"""


def _file(folder: Path, text: str) -> Path:
    path = folder / "prices.toml"
    path.write_text(text, encoding="utf-8")
    return path


def test_prices_are_numbers_in_one_money(tmp_path: Path) -> None:
    """A price may be nothing; pails are of 10 L unless the list says otherwise."""
    prices = open_prices(_file(tmp_path, GOOD))
    assert prices == PriceList("KES", 150, 20, 30.5, 0, 60, 90, 500, pail_litres=10)
    assert open_prices(_file(tmp_path, GOOD + "pail_litres = 20")).pail_litres == 20


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("currency", 5),
        ("currency", ""),
        ("currency", "x" * 50),
        ("seed_per_kg", "150"),
        ("seed_per_kg", -1),
        ("seed_per_kg", True),
        ("seed_per_kg", float("nan")),
        ("seed_per_kg", float("inf")),
        ("pail_litres", 0),
    ],
)
def test_what_is_no_price_is_shown_with_what_to_write(name, value):
    """Each fault names its line."""
    prices, faults = read_prices({"currency": "KES", name: value})
    assert prices is None
    assert any(
        fault.startswith(f"{name}: cannot take") and "write" in fault for fault in faults
    )


def test_all_faults_are_told_at_once(tmp_path: Path) -> None:
    """What is missing, what is unknown and what cannot be."""
    with pytest.raises(PriceListError) as told:
        open_prices(_file(tmp_path, "currency = 1\nseeds = 3"))
    for words in ("currency: cannot take 1", "seeds is not known", "labour_per_day is missing"):
        assert words in str(told.value)


@pytest.mark.parametrize("text", ["no TOML at all", None])
def test_a_file_that_cannot_be_read_is_named(tmp_path: Path, text: str | None) -> None:
    """Not there, or no TOML."""
    path = _file(tmp_path, text) if text else tmp_path / "nowhere.toml"
    with pytest.raises(PriceListError, match=path.name):
        open_prices(path)


def test_the_invented_district_has_a_price_list_to_copy():
    """It shows the form, and opens as it is."""
    district = Path(scenarios.__file__).parent / "district"
    assert open_prices(district / "prices.toml").currency == "KES"
