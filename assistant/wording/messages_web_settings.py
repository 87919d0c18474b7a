"""Texts of the page on which a programme is set."""

from collections.abc import Mapping

from assistant.wording.message import Message

SETTINGS = Message("Settings", note="Page: what the head of a programme can set.")
SETTINGS_WHY = Message(
    "What you set here goes before the programme file, and the file goes before the settings of "
    "the machine. It holds at once. What was done keeps what it was before.",
    note="At the top of the page. What was done: the page of that name.",
)
BY_PAGE = Message("set here", note="Who says a setting: this page.")
BY_FILE = Message("from the programme file", note="Who says a setting.")
BY_THE_MACHINE = Message("from the machine", note="Who says a setting: its environment.")
BUILT_IN = Message("as it comes", note="Who says a setting: nobody, it is built in.")
ORIGINS: Mapping[str, Message] = {
    "page": BY_PAGE,
    "file": BY_FILE,
    "machine": BY_THE_MACHINE,
    "built_in": BUILT_IN,
}
OUTSIDE = Message("Without this page: {value}", note="Under a setting; a value.")
BACK = Message("Set nothing here", note="Button: it is again as the file or the machine says.")
CHANGE = Message("Change settings", note="Link to the page.")

HOURS = Message("Hours of texts", note="Heading.")
SECOND_AT = Message("Who did not answer is asked again at", note="A setting; a time of day.")
QUIET_FROM = Message("Quiet from", note="A setting; a time of day.")
QUIET_UNTIL = Message("Quiet until", note="A setting; a time of day.")
HOURS_HINT = Message(
    "In the time of each village. Only warnings and answers leave in the quiet hours. Today's "
    "texts keep their old hour.",
    note="Under fields.",
)
LANGUAGES_HINT = Message(
    "Somebody is written to in {languages}: that stays.",
    note="Under boxes; names of languages.",
)
NAME = Message("Name of the programme, and whom to turn to", note="Heading.")
PROGRAMME_NAME = Message("Name of the programme", note="Label of a field.")
HELPERS_HINT = Message(
    "For each village that has no number of its own. Ring each number yourself before you save "
    "it.",
    note="Under fields.",
)
CURRENCY = Message("Currency, three letters", note="Label of a field.")
SEASONS = Message("Months in which a season begins", note="Heading over boxes.")
LIMITS = Message("The most that may be spent", note="Heading.")
MONTH_MONEY = Message("Money a month", note="Label of a field.")
VILLAGE_SEGMENTS = Message("One village: segments a day", note="Label of a field.")
VILLAGE_MONEY = Message("One village: money a month", note="Label of a field.")
OFFICER_DAY = Message(
    "One officer: phones a day", note="Label of a field; how many they write to."
)
OFFICER_MONTH = Message(
    "One officer: phones a month", note="Label of a field; how many they write to."
)
STRANGERS_HOUR = Message(
    "Unknown numbers: answers an hour",
    note="Label of a field; to all of them together.",
)
LIMITS_HINT = Message("0 is no limit. Warnings leave in any case.", note="Under fields.")
EVENTS = Message("The weather service's words for rain", note="Label of a field.")
EVENTS_HINT = Message(
    "With commas between. One of them must stand in its event or headline. Empty: any weather.",
    note="Under a field.",
)
ADDRESSES = Message("Addresses where alerts are read", note="Label of a field: web addresses.")
ADDRESSES_HINT = Message(
    "Beside those of the machine: https, one a line, at most 5.", note="Under a field."
)
OF_MACHINE = Message("Settings of the machine", note="Heading over what no page changes.")

KEPT = Message("It is set and holds from now on.", note="Done.")
BAD_HOURS = Message(
    "Nothing was changed. Write hours such as 06:00, in the order of the day: quiet until, the "
    "day's text, asked again, quiet from.",
    note="Not done.",
)
BAD_LANGUAGES = Message("Nothing was changed. Choose a language.", note="Not done.")
STILL_SPOKEN = Message(
    "Nothing was changed. Somebody is still written to in a language that you took away.",
    note="Not done.",
)
BAD_NUMBERS = Message(
    "Nothing was changed. The name has 1 to 40 letters. The emergency number and the vet need a "
    "number: 24 signs at most, the others 40.",
    note="Not done.",
)
BAD_PRICE = Message(
    "Nothing was changed. Write a price such as 0.5 and a currency such as KES.",
    note="Not done.",
)
BAD_SEASONS = Message("Nothing was changed. Choose a month.", note="Not done.")
BAD_LIMITS = Message(
    "Nothing was changed. Write whole numbers, 0 for no limit. Money needs a price of a segment "
    "first.",
    note="Not done.",
)
BAD_ALERTS = Message(
    "Nothing was changed. Write at most 5 addresses that begin with https:// and a name, and "
    "choose a word in each list.",
    note="Not done.",
)
UNFIT: Mapping[str, Message] = {
    "hours": BAD_HOURS,
    "languages": BAD_LANGUAGES,
    "name": BAD_NUMBERS,
    "price": BAD_PRICE,
    "seasons": BAD_SEASONS,
    "limits": BAD_LIMITS,
    "alerts": BAD_ALERTS,
}
ACT_SETTING_CHANGED = Message("changed a setting", note="What was done.")
