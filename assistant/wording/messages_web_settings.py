"""Texts of the page on which a programme is set."""

from collections.abc import Mapping

from assistant.wording.message import Message

SETTINGS = Message("Settings", note="Page: what the head of a programme can set.")
SETTINGS_WHY = Message(
    "Settings made here override the programme file, and the file overrides the settings "
    "of the server. They apply at once. What was done shows the earlier values.",
    note="At the top of the page. What was done: the page of that name.",
)
BY_PAGE = Message("set here", note="Who says a setting: this page.")
BY_FILE = Message("from the programme file", note="Who says a setting.")
BY_THE_MACHINE = Message("from the server", note="Who says a setting: its environment.")
BUILT_IN = Message("default", note="Who says a setting: nobody, it is built in.")
ORIGINS: Mapping[str, Message] = {
    "page": BY_PAGE,
    "file": BY_FILE,
    "machine": BY_THE_MACHINE,
    "built_in": BUILT_IN,
}
OUTSIDE = Message("Otherwise: {value}", note="Under a setting; a value.")
BACK = Message(
    "Clear this setting", note="Button: it is again as the file or the machine says."
)
CHANGE = Message("Change settings", note="Link to the page.")

HOURS = Message("When texts go out", note="Heading.")
SECOND_AT = Message(
    "Farmers who did not answer are asked again at", note="A setting; a time of day."
)
QUIET_FROM = Message("Quiet from", note="A setting; a time of day.")
QUIET_UNTIL = Message("Quiet until", note="A setting; a time of day.")
HOURS_HINT = Message(
    "In the time of each village. During quiet hours only warnings and answers go out. "
    "Texts already planned for today keep their time.",
    note="Under fields.",
)
LANGUAGES_HINT = Message(
    "Some people are written to in {languages}, so that stays.",
    note="Under boxes; names of languages.",
)
NAME = Message("Name of the programme and emergency contacts", note="Heading.")
PROGRAMME_NAME = Message("Name of the programme", note="Label of a field.")
HELPERS_HINT = Message(
    "For villages without numbers of their own. Ring each number yourself before you save it.",
    note="Under fields.",
)
CURRENCY = Message("Currency, three letters", note="Label of a field.")
SEASONS = Message("Months in which a season begins", note="Heading over boxes.")
LIMITS = Message("Spending limits", note="Heading.")
MONTH_MONEY = Message("Money per month", note="Label of a field.")
VILLAGE_SEGMENTS = Message("One village: segments per day", note="Label of a field.")
VILLAGE_MONEY = Message("One village: money per month", note="Label of a field.")
OFFICER_DAY = Message(
    "One officer: phones per day", note="Label of a field; how many they write to."
)
OFFICER_MONTH = Message(
    "One officer: phones per month", note="Label of a field; how many they write to."
)
STRANGERS_HOUR = Message(
    "Unknown numbers: answers per hour",
    note="Label of a field; to all of them together.",
)
LIMITS_HINT = Message("0 means no limit. Warnings always go out.", note="Under fields.")
EVENTS = Message("The weather service's words for rain", note="Label of a field.")
EVENTS_HINT = Message(
    "Separated by commas. One of them must appear in the event or the headline. Empty: "
    "any weather.",
    note="Under a field.",
)
ADDRESSES = Message(
    "Web addresses where alerts are read", note="Label of a field: web addresses."
)
ADDRESSES_HINT = Message(
    "In addition to those set on the server: https, one per line, at most 5.",
    note="Under a field.",
)
OF_MACHINE = Message("Settings of the server", note="Heading over what no page changes.")

KEPT = Message("Saved. It applies from now on.", note="Done.")
BAD_HOURS = Message(
    "Nothing was changed. Write hours such as 06:00, in the order of the day: quiet until, the "
    "day's text, asked again, quiet from.",
    note="Not done.",
)
BAD_LANGUAGES = Message("Nothing was changed. Choose a language.", note="Not done.")
STILL_SPOKEN = Message(
    "Nothing was changed. Some people are still written to in a language that you removed.",
    note="Not done.",
)
BAD_NUMBERS = Message(
    "Nothing was changed. The name has 1 to 40 letters. The emergency number and the vet "
    "need a phone number: at most 24 characters, the others 40.",
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
    "Nothing was changed. Enter at most 5 addresses that begin with https:// and a name, "
    "and choose from each list.",
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
