"""Texts between the assistant and an officer by SMS.

RAIN, COUNT, CLEAR, WHO, TEMP, ADD, TELL, SEEN are words that officers send; they are the same in every language.
"""

from assistant.wording.message import Message

OFFICER_HELP = Message(
    "RAIN code village 14-20 warns (add TOMORROW or 12/6). COUNT code village: answers. CLEAR code "
    "village: all-clear. WHO code: nurseries to see. TEMP code village 24: mean degrees C. ADD code "
    "number village name: enrols. TELL code number words: answers a farmer. SEEN code number: the call "
    "is done.",
    note="Help for officers. Capitals stay as they are; 'code' and 'village' are filled in.",
    segments=3,
)
NEED_CODE = Message(
    "Send your code too, e.g. RAIN 123456 {village} 14-20. Lost it? Ask your lead for a new one.",
    note="An officer's text came without the right code. RAIN stays.",
)
CODE_LOCKED = Message(
    "Too many wrong codes from this number. Send your text again with the 8 digits that I sent you "
    "in place of the code, or use the page. Not you? Tell your lead.",
    note="After five wrong codes in a day; the digits came a few minutes ago (the next text).",
)
CODE_WAY_BACK = Message(
    "Too many wrong codes from this number. Send your text again with {code} in place of your "
    "code, within 15 minutes. Not you? Tell your lead.",
    note="{code} is eight digits, sent to the officer's own phone.",
)
PAGE_CODE = Message(
    "{code} lets you past the lock at the officers' page, within 15 minutes. Tell it to nobody.",
    note="{code} is eight digits; an officer who is locked out asked for them.",
)
NEXT_CODE = Message(
    "Your new code: {code}. Use it from now on; the old one ends then. Delete this text once you know it.",
    note="{code} is six digits: an officer's code after a few uses.",
)
NO_SUCH_VILLAGE = Message(
    "I do not find that village among yours: {villages}. Send {example} again with its name.",
    note="{example} is RAIN, COUNT, CLEAR or WHO.",
    segments=2,
)
NO_HOURS = Message(
    "Say the hours, e.g. RAIN code {village} 14-20, or TOMORROW 6-12, or 12/6 6-12.",
    note="The hours of the rain could not be read. RAIN and TOMORROW stay.",
)
HOURS_PAST = Message(
    "{from_time} to {to_time} on {date} is over. Send the hours of the coming rain.",
    note="A warning for hours that have gone by.",
)
ASK_WARN = Message(
    "Warn {village}: rain {from_time} to {to_time} on {date}? Phones: {phones}. Nurseries on "
    "days 0-{guard_until}: {young}, about to sow: {soon}.",
    note="Shown back to the officer; '1 Yes 2 No' follows.",
    segments=2,
)
NOBODY_TO_WARN = Message(
    "No nursery of {village} is on days 0-{guard_until} or about to sow. Nothing to send.",
    note="A warning would reach nobody.",
)
WARNED = Message(
    "Going out now, phones: {phones}. COUNT code {village} shows answers, CLEAR code {village} ends "
    "it.",
    note="The officer said yes. COUNT and CLEAR stay.",
    segments=2,
)
TEMP_NOTED = Message(
    "{village}: mean of {degrees} C kept for {date}. Leaves are foretold by it. Wrong? Send TEMP "
    "again.",
    note="The officer entered a mean temperature. TEMP stays.",
)
NO_TEMP = Message(
    "Send the mean of day and night, {low} to {high} C, e.g. TEMP code {village} 24. For an earlier "
    "day add it, e.g. 12/6.",
    note="No temperature could be read, or it cannot be. TEMP stays.",
)
COUNTED = Message(
    "{village}, rain {from_time}-{to_time}: {asked} asked, {delivered} reached, {covered} covered, "
    "{help} need help.",
    note="The answers to a warning so far.",
)
NO_WARNING = Message("No warning stands for {village}.", note="Nothing to count or clear.")
CLEARED = Message("All-clear for {village} goes out now.", note="The officer ended a warning.")
NOBODY_TO_SEE = Message("Nobody needs a visit today.", note="Answer to WHO.")
SEE = Message(
    "{phone} nursery {label}, {village}: {reason}, since {date}.", note="One line of WHO."
)
SEE_WHO = Message(
    "{phone}, {village}: {reason}, since {date}.",
    note="One line of WHO: a call that is about no nursery.",
)
AND_MORE = Message("and {n} more.", plural="and {n} more.", note="The list of WHO was cut.")
OPEN_TASK = Message("no answer to '{what}'", note="Reason for a visit; {what} is a task.")
CALLED = Message(
    "called: {about}", note="Reason for a visit; {about} is a trouble, such as 'yellow leaves'."
)
CALLED_SAYING = Message(
    'called: {about}, "{words}"',
    note="The same with the farmer's own words, cut short.",
)
CALLER = Message(
    "{name} {phone}",
    note="A farmer's name and number in texts to an officer: Help wanted: Amina +447700900101, ...",
)
HELP_NOTICE = Message(
    'Help wanted: {phone}, {village}, nursery {label}: {about}. "{words}"',
    note="To the officer. {about} names the trouble, {words} is the farmer's own text.",
    segments=2,
)
HELP_NOTICE_BARE = Message(
    "Help wanted: {phone}, {village}, nursery {label}: {about}.",
    note="To the officer, where the farmer sent no words. {about} names the trouble.",
    segments=2,
)
LAST_NOTICE = Message(
    "More calls of this phone stand on the list only.",
    note="After HELP_NOTICE: somebody called very often.",
)
MORE_CALLS = Message(
    "More calls for help came from places without an officer. They are on the page.",
    note="To leads, an hour after a first notice.",
)
HELP_IN_RAIN = Message(
    "Help wanted in the rain: {phone}, {village}. Go only when it is safe.",
    note="To the officer: a farmer answered 2 to a warning.",
)
GO_SAFELY = Message(
    "Go only when it is safe.",
    note="To the officer, after a call for help in a flood or storm.",
)
ALERT_DRAFTED = Message(
    "Official alert for {villages}: {words}, {from_time} to {to_time} on {date}. No farmer is told "
    "yet: see Warnings on the page, or send RAIN.",
    note="To an officer. {words} is the weather service's own word for the danger. RAIN stays.",
    segments=2,
)
ALERT_SENT = Message(
    "Official alert for {villages}: {words}, {from_time} to {to_time} on {date}. The farmers are "
    "warned now. COUNT code village: answers.",
    note="To an officer. {words} is the weather service's own word for the danger. COUNT stays.",
    segments=2,
)
ALERT_DRAFTED_DAYS = Message(
    "Official alert for {villages}: {words}, {date} {from_time} to {last} {to_time}. No farmer is "
    "told yet: see Warnings on the page, or send RAIN.",
    note="As above, over several days. RAIN stays.",
    segments=2,
)
ALERT_SENT_DAYS = Message(
    "Official alert for {villages}: {words}, {date} {from_time} to {last} {to_time}. The farmers "
    "are warned now. COUNT code village: answers.",
    note="As above, over several days. COUNT stays.",
    segments=2,
)
ALERT_OVER = Message(
    "Official alert taken back for {villages}: {words}. Your warning still stands. When the sky is "
    "clear send CLEAR code village.",
    note="To an officer. {words} is the service's own word for the danger. CLEAR stays.",
    segments=2,
)
ALERT_CLEARED = Message(
    "Official alert taken back for {villages}: {words}. The farmers get the all-clear now.",
    note="To an officer. {words} is the service's own word for the danger.",
    segments=2,
)
FROM_OFFICER = Message(
    "From {officer}, your officer: {words} To answer, send OFFICER.",
    note="An officer's own words to a farmer; {officer} is a name. OFFICER is a word to send.",
    segments=2,
)
DATES_BY_OFFICER = Message(
    "{officer}, your officer, changed your plan:",
    note="To a farmer; the new days follow. {officer} is a name.",
)
VILLAGE_YOURS = Message(
    "{village} is in your care now: {farmers} farmers, {calls} calls for help open. The page "
    "tells its story.",
    note="To an officer who takes over a village.",
)
ABOUT_OFFICER = Message("wants you", note="What a call for help is about.")
ABOUT_YELLOW = Message("yellow leaves", note="What a call for help is about.")
ABOUT_NOT_UP = Message("few come up", note="What a call for help is about.")
ABOUT_SEED = Message("seed does not sprout", note="What a call for help is about.")
ABOUT_ANIMALS = Message("animals or insects", note="What a call for help is about.")
ABOUT_SPARE = Message("mats to spare", note="What a call is about.")
ABOUT_WATER = Message("water", note="What a call for help is about.")
ABOUT_OTHER = Message("other", note="What a call for help is about.")
ABOUT_RAIN = Message("help in the rain", note="What a call for help is about.")
ABOUT_WARNED = Message("help after a warning", note="What a call for help is about.")
ABOUT_FLOOD = Message("flood over the bed", note="What a call for help is about.")
ABOUT_DANGER = Message(
    "flood or storm", note="What a call for help is about: the farmer's own words tell of it."
)
ABOUT_RING = Message("rang you", note="What a call for help is about: a missed call.")
ABOUT_RING_RAIN = Message(
    "rang you, a warning stands",
    note="What a call for help is about: a missed call from a village that was warned.",
)
ABOUT_POISON = Message(
    "poison or spray", note="What a call for help is about: somebody swallowed or breathed it."
)
ABOUT_EYES = Message("something in the eyes", note="What a call for help is about.")
ABOUT_SNAKE = Message("bite or sting", note="What a call for help is about.")
ABOUT_LIGHTNING = Message("lightning", note="What a call for help is about.")
ABOUT_DROWNING = Message("somebody in the water", note="What a call for help is about.")
ABOUT_WIRE = Message("electric wire", note="What a call for help is about.")
ABOUT_WOUND = Message("wound or accident", note="What a call for help is about.")
ABOUT_SMOKE = Message("fire or smoke", note="What a call for help is about.")
ABOUT_ANIMAL = Message("an animal is sick or hurt", note="What a call for help is about.")
ABOUT_HURT = Message("somebody may be hurt", note="What a call for help is about.")
ABOUT_DIE = Message(
    "may want to die",
    note="What a call for help is about; only one officer and the lead see it.",
)
ABOUT_LOST = Message("bed or field lost or in danger", note="What a call for help is about.")
ABOUT_QUESTION = Message("has a question", note="What a call for help is about.")
ABOUT_VILLAGE = Message(
    "has a village that is not in the list", note="What a call for help is about."
)
ABOUT_REFUSED = Message(
    "may want no more texts",
    note="What a call is about: the farmer wrote something that may mean this.",
)
ABOUT_STOPPED = Message(
    "texts stopped, maybe forged",
    note="What a call is about: a text with this number stopped the farmer's texts; anybody can "
    "forge a number.",
)
ABOUT_ERASE = Message(
    "wants what is kept of them deleted",
    note="What a call is about: their name, number, answers.",
)
ABOUT_LEAVES = Message("leaf count", note="What a call for help is about.")
