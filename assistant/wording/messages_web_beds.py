"""Texts of a village's page about its beds: the kinds that are offered, and the warmth."""

from collections.abc import Mapping

from assistant.wording.message import Message

BEDS = Message("Kinds of bed offered here", note="Heading on a village's page.")
BEDS_HINT = Message(
    "If more than one is offered, the phone asks which one, mats first.",
)
KEEP_BEDS = Message("Offer these", note="Button.")
BEDS_KEPT = Message("Offered from now on: {names}.", note="{names} are kinds of bed.")
WARMTH = Message("Mean temperature", note="Heading on a village's page.")
WARMTH_HINT = Message(
    "The mean of day and night, {low} to {high} C. Together with a farmer's leaf count it"
    " is used to predict the day of the next leaves, for {n} days.",
    note="Under the field; from published leaf rates.",
)
DEGREES = Message("Degrees C", note="Label of a field.")
ON = Message("Day", note="Label of a field with a date.")
KEEP_WARMTH = Message("Save", note="Button: keep the temperature.")
WARMTH_NOW = Message("{degrees} C for {date}.", note="The latest mean temperature.")
NO_WARMTH = Message("None recently: leaves are predicted at their usual pace.")
WARMTH_KEPT = Message("{village}: mean of {degrees} C saved for {date}.", note="Done.")
NO_DEGREES = Message(
    "Enter the mean temperature as a number, {low} to {high} C.", note="It was not kept."
)
NO_DAY = Message("Enter a day, today or earlier.", note="A temperature was not kept.")
ACT_PRACTICES = Message("Kinds of bed set", note="A line of the trail.")
CLIMATE = Message(
    "Mean temperature of each month", note="Heading on a village's page: temperatures."
)
CLIMATE_HINT = Message(
    "Twelve means of day and night in degrees C, January first, from your weather "
    "service. The days of the beds follow them. Leave it empty if nobody knows.",
    note="Under the field.",
)
CLIMATE_LABEL = Message("Twelve temperatures, separated by spaces", note="Label of a field.")
KEEP_CLIMATE = Message(
    "Save the twelve temperatures", note="Button: keep temperatures of the months."
)
CLIMATE_KEPT = Message("{village}: the beds now follow these temperatures.", note="Done.")
CLIMATE_NONE = Message(
    "{village}: the temperatures of the months are removed.", note="Done: taken away."
)
NO_CLIMATE = Message(
    "Write twelve temperatures in degrees C, January first, separated by spaces.",
    note="They were not kept.",
)
ACT_CLIMATE = Message("Temperatures of the months set", note="A line of the trail.")
ACT_WARMTH = Message("Temperature entered", note="A line of the trail.")
BED_ACTS: Mapping[str, Message] = {
    "practices_set": ACT_PRACTICES,
    "warmth_kept": ACT_WARMTH,
    "climate_set": ACT_CLIMATE,
}
