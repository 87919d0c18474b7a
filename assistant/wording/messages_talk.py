"""Texts of the farmer's talks: sign-up, the plan, the menu, dates, trouble.

Digits in a text are what the farmer may answer; keep them. Slots in braces stay as they are.
"""

from assistant.wording.message import Message

# --- small answers used everywhere ----------------------------------------------------------
YES = Message("Yes", note="A choice after a digit, as in '1 Yes'.")
NO = Message("No", note="A choice after a digit, as in '2 No'.")
MENU_HINT = Message("0 Menu", note="Last line of a screen: the digit 0 leads to the menu.")
BACK_HINT = Message("0 Back", note="Last line of a screen: the digit 0 goes one step back.")
MORE_HINT = Message("9 More", note="Last line of a long screen: the digit 9 shows the rest.")
NUMBERED = Message("{digit} {label}", note="One choice: its digit, then what it means.")
DID_NOT_UNDERSTAND = Message(
    "Sorry, I did not understand. Send MENU to see what I can do, or OFFICER to ask a person.",
    note="MENU and OFFICER are words to send; use the ones that farmers would type.",
)
ALL_RIGHT = Message(
    "Thank you. I text you when there is something to do.",
    note="Answers thanks, or an ok where nothing was asked.",
)
SORRY_TROUBLE = Message(
    "Sorry, something went wrong here. Your message is kept. Please send it again in a few "
    "minutes.",
    note="Our own fault, not the farmer's.",
)
MANY_TEXTS = Message(
    "You sent very many texts. I keep what you write and answer again at {time}. A cry for help "
    "I always answer.",
    note="To a phone that wrote dozens of texts within an hour. {time}: clock.",
    spoken=True,
)
KEPT_SO_FAR = Message("You were here:", note="Before an open question is asked again.")
HELP = Message(
    "I plan your rice nursery and remind you each day. Send MENU, TODAY, QUANTITIES, "
    "CHANGE DATE, PROBLEM, OFFICER, LANGUAGE. 0 = back. STOP ends the texts.",
    note="The words in capitals are sent by farmers; use this language's own.",
    segments=2,
)
STOPPED = Message(
    "Stopped. You get no more texts from me. Your plan is kept. Send START to begin again.",
    note="Answer to STOP.",
)
YOU_ARE_STOPPED = Message(
    "You asked me to stop, so I send nothing. Send START to begin again.",
    note="Answer to any text of somebody who had sent STOP.",
)
ONLY_WORK = Message(
    "From now on I write only on days with new work, and warn of rain. Do the daily work all the "
    "same. For a text every day send EVERY DAY.",
    note="Answer to WORK DAYS. EVERY DAY: words to send.",
)
EVERY_DAY = Message(
    "I write every day. For texts only on days with new work send WORK DAYS.",
    note="Answer to EVERY DAY. WORK DAYS: words to send.",
)
STARTED_AGAIN = Message("Welcome back. Your texts begin again.", note="Answer to START.")

# --- reading back ---------------------------------------------------------------------------
CONFIRM_READING = Message(
    "You mean {reading}?", note="{reading} is what was understood, such as '2 ha'."
)
WHICH_READING = Message(
    "Which do you mean?", note="Followed by choices with digits, such as '1 2 ha'."
)
IN_FEET = Message(
    "Feet: {area}",
    note="A choice: the sides of a field, such as 50 by 100, are in feet; {area} in m2.",
)
IN_METRES = Message(
    "Metres: {area}", note="A choice: the sides of a field are in metres; {area} in m2."
)
AGAIN_AREA = Message(
    "I could not read a field size. Send a number with its unit, e.g. 0.4 ha, 1 acre or "
    "50 x 20 m.",
    note="The answer to the question for the field's area could not be read.",
)
AGAIN_TWO_VALUES = Message(
    "I see more than one number. Send just one, with its unit.",
    note="The answer held two values or a range.",
)
AGAIN_UNMEASURED = Message(
    "I cannot turn steps into land. Send ha, acres or m2, or length x width in metres, "
    "e.g. 50 x 20 m.",
    note="The field was given in paces or another unit without a size.",
)
AGAIN_REGION_UNIT = Message(
    "That unit is not the same size everywhere. Send ha, acres or m2, or length x width in "
    "metres, e.g. 50 x 20 m.",
    note="The field was given in a unit such as bigha, whose size is not known here.",
)
AGAIN_GERMINATION = Message(
    "Send how many of 100 seeds sprouted, a number from 1 to 100, e.g. 85. Not tested: NO.",
    note="The answer on germination could not be read. NO is a word to send.",
)
AGAIN_DATE = Message(
    "I could not read a day. Send it like 10 June, 10/6, tomorrow or in 5 days.",
    note="The answer could not be read as a date.",
)
AGAIN_IMPOSSIBLE = Message(
    "That day is not in the calendar. Send it like 10 June, 10/6 or tomorrow.",
    note="For instance 31 June.",
)
AGAIN_LITRES = Message(
    "Send the litres your pail holds, e.g. 10. Or a digit from the list.",
    note="The pail's size could not be read.",
)
AGAIN_COUNT = Message("Send one number, e.g. 3.", note="A count could not be read.")
AGAIN_CHOICE = Message("Please answer with one of these digits.", note="The list follows.")
AGAIN_YES_NO = Message("Please answer 1 for yes or 2 for no.", note="Neither was understood.")
AGAIN_WORDS = Message("Please write it in a few words.", note="The text was empty.")
ABSURD_AREA = Message(
    "A field of {reading} is outside what I can plan (1 m2 to 1,000 ha). Send its size, "
    "e.g. 0.4 ha.",
    note="The size cannot be a farmer's field.",
)

# --- sign-up --------------------------------------------------------------------------------
ASK_LANGUAGE = Message("Language? Lugha?", note="First question to a new phone, two languages.")
ASK_VILLAGE = Message("Which is your village?", note="A list with digits follows.")
OTHER_VILLAGE = Message("Not in this list", note="Last choice of the list of villages.")
ASK_CONSENT = Message(
    "Rice nursery help by your farm office. My texts are free, yours cost an SMS at most. "
    "Its officer sees your answers. STOP ends it. Do you agree?",
    note="Consent: who runs the line, what it costs, who sees the answers. '1 Yes 2 No' follows.",
    segments=2,
)
NO_CONSENT = Message(
    "I will not text you. Send START if you change your mind.",
    note="Answer when the person does not agree.",
)
ENROLLED = Message("Welcome. Let us plan your nursery.", note="Consent was given.")

# --- the plan -------------------------------------------------------------------------------
ASK_AREA = Message(
    "How big is the field to plant? Send the number and unit, e.g. 0.4 ha, 1 acre, 50 x 20 m.",
    note="Question for the field's area.",
)
HELP_AREA = Message(
    "The field you will transplant into, not the seed bed. No measure? Walk it with a rope of "
    "10 m and send length x width, e.g. 50 x 20 m.",
    note="Help on the question for the field's area.",
)
ASK_GERMINATION = Message(
    "Of 100 seeds tested, how many sprouted? e.g. 85. Not tested: send NO.",
    note="Question for the germination. NO is a word to send.",
)
HELP_GERMINATION = Message(
    "Put 100 seeds in a wet cloth, keep it moist {test_days} days, count the sprouted ones "
    "and send the number. Not tested: send NO.",
    note="Help on the question for germination.",
)
UNTESTED = Message("Seed not tested. What now?", note="Choices with digits follow.")
PLAN_AT_80 = Message(
    "Plan as if {assumed} sprout",
    note="A choice: plan on an assumption.",
)
EXPLAIN_TEST = Message("How do I test?", note="A choice: explain the germination test.")
DO_NOT_SOW = Message(
    "Only {percent}% sprouted: do not sow this seed, too few plants would stand. Get other seed, "
    "test it and send its number.",
    note="Germination under 60 %.",
    segments=2,
)
WEAK_SEED = Message(
    "Weak seed ({percent}%): I count in more seed. Better seed, {assumed} or more, is safer.",
    note="Germination 60 to 79 %.",
)
WEAK_SEED_IN = Message(
    "Weak seed ({percent}%): more seed is counted in. Good seed has {least}% or more ({country}).",
    note="Germination of 60 % and more, but below what {country} (its name) asks for.",
)
ASSUMED_80 = Message(
    "Counted as if {assumed} of 100 sprout: an assumption. Test the seed, then send CHANGE "
    "DATE.",
    note="Nobody tested the seed.",
)
ASK_PAIL = Message(
    "How many litres does your pail hold? Send a digit, or the litres.",
    note="Choices 1 10 litres, 2 15 litres, 3 20 litres follow.",
)
LITRES = Message("{litres} litres", note="A pail's size.")
HELP_PAIL = Message(
    "Fill the pail with 1 litre bottles and count them. Not sure: send 1.",
    note="Help on the pail's size.",
)
ASK_SOWING = Message(
    "On which day will you sow the sprouted seed? e.g. 10 June, in 7 days. Sown already? Send "
    "that day. Not sure: send NO.",
    note="Question for the date of sowing. NO is a word to send.",
)
HELP_SOWING = Message(
    "Sow when roots are {root_low}-{root_high} mm: soak one day, keep moist and covered one "
    "day, then sow. Send the day, e.g. 10 June or in 7 days.",
    note="Help on the date of sowing.",
)
SOWN_THAT_DAY = Message("Did you sow on {date}?", note="The day is past. Yes or no follows.")
CHECK = Message(
    "Field {area}, germination {percent}%, pail {litres} L, sowing {date}. Is that right?",
    note="Summary before the answer; '1 Yes 2 Change' follows.",
)
CHECK_PRACTICE = Message(
    "Field {area}, {practice}, germination {percent}%, pail {litres} L, sowing {date}. Is that "
    "right?",
    note="The same where a village offers several kinds of bed; {practice} is such as 'wet bed'.",
)
CHANGE_IT = Message("Change it", note="A choice after the summary.")
WHAT_TO_CHANGE = Message("What shall I change?", note="A list with digits follows.")
THE_FIELD = Message("Field", note="A choice: change the field's area.")
THE_GERMINATION = Message("Germination", note="A choice.")
THE_PAIL = Message("Pail", note="A choice.")
THE_SOWING_DAY = Message("Sowing day", note="A choice.")

PLANNED = Message(
    "{label}: your plan is ready. First: {what}, {date}. I text you on each day of work. Amounts, "
    "mix, dates: send NEXT.",
    note="Answer to a new plan: what to do first and its day. {what} is a task, such as 'collect "
    "material'. NEXT is a word to send: all else comes one text at a time.",
)
RESULT_SEED = Message(
    "Nursery {label}: field {area}, germination {percent}%, {spacing} cm, {seedlings} a "
    "hill. Seed {seed} dry, {sprouted} sprouted. Bed {bed} m2, {mats} of {length} x {width} "
    "cm. Sprouted seed: {heaps}.",
    note="Main answer: what was understood and the seed and bed for it.",
    segments=2,
)
RESULT_MIX = Message(
    "Soil mix {mix} L, {thick} cm deep, {batches} pails of {litres} L: soil {soil}, rotted "
    "manure {manure}, rice hull {hull}. Sheet or banana leaves {sheet} m2. Urea {urea}, only "
    "if yellow: ask first. Half-fill pails, they are heavy.",
    note="Shopping list. Urea is only bought if leaves turn yellow.",
    segments=2,
)
RESULT_MIX_SMALL = Message(
    "Soil mix {mix} L, {thick} cm deep, with a tin or bowl: {parts}. Sheet or banana leaves "
    "{sheet} m2. Urea {urea}, only if yellow: ask first.",
    note="As before, for a bed too small for whole pails.",
    segments=2,
)
RESULT_DATES = Message(
    "{label}: soak {soak}, drain seed {drain}, sow {sow}, uncover and flood {uncover}, transplant "
    "{first} to {last}. I text you each day. Other day: CHANGE DATE.",
    note="The main dates. CHANGE DATE is a text to send.",
    segments=2,
)
RESULT_DATES_SOWN = Message(
    "{label}: sown {sow}, uncover and flood {uncover}, transplant {first} to {last}. I text you "
    "each day. Other day: CHANGE DATE.",
    note="The main dates when the seed was sown already.",
    segments=2,
)
DATES_PAST = Message(
    "Soaking for {sow} should have begun on {soak}. If the seed is not soaked, send CHANGE DATE.",
    note="The sowing day is too near for soaking and sprouting.",
)
PAST_WINDOW = Message(
    "That bed is {days} days old: transplant soon if there are {few} leaves or more.",
    note="The seed was sown more than 20 days ago.",
)

# --- menu and its answers -------------------------------------------------------------------
ASK_MENU = Message("Menu. Send a digit:", note="The list of choices follows.")
MENU_TODAY = Message("Today's work", note="A choice of the menu.")
MENU_QUANTITIES = Message("Quantities", note="A choice of the menu.")
MENU_DATE = Message("Change date or field", note="A choice of the menu.")
MENU_PROBLEM = Message("Problem", note="A choice of the menu.")
MENU_OFFICER = Message("Ask the officer", note="A choice of the menu.")
MENU_NEW = Message("New nursery", note="A choice of the menu.")
MENU_CLOSE = Message("Close a nursery", note="A choice of the menu.")
MENU_LANGUAGE = Message("Language", note="A choice of the menu.")
NO_NURSERY = Message(
    "You have no nursery here yet. Send NEW to plan one.",
    note="NEW is a word to send.",
)
NOTHING_TODAY = Message(
    "{label}: nothing to do today. Next: {what} on {date}.",
    note="{what} is a task, such as 'soak the seed'.",
)
NOTHING_LEFT = Message("{label}: nothing more is planned.", note="The season is over.")
ASK_NURSERY = Message("Which nursery?", note="The farmer has several; a list follows.")
NURSERY_LINE = Message("{label}: {area}, sown {date}", note="One nursery in a list.")
NURSERY_LINE_PLANNED = Message(
    "{label}: {area}, sowing {date}", note="One nursery in a list, not sown yet."
)
ASK_CLOSE = Message(
    "Close nursery {label} ({area})? I will send nothing more for it.",
    note="Yes or no follows.",
)
CLOSED = Message("Nursery {label} is closed.", note="Done at the farmer's wish.")
KEPT_OPEN = Message("Nothing changed.", note="The farmer said no to a change.")
LANGUAGE_SET = Message("From now on I write in English.", note="Name this language here.")

WORD_NEW = Message("NEW", note="The word that a farmer sends to plan one more nursery.")
WORD_TIN = Message("TIN", note="The word that a farmer sends to measure seed by a tin.")
WORD_CLOSE = Message("CLOSE", note="The word that a farmer sends to close a nursery.")
W_COVERED = Message("Covered", note="A farmer's answer 1 to a rain warning.")
W_HELP = Message("Need help", note="A farmer's answer 2 to a rain warning.")
WARNING_STANDS = Message(
    "RAIN WARNING stands. Keep people safe first. Is your nursery covered?",
    note="First screen while a warning is not answered; choices follow.",
)
CORRECTED = Message("Changed: {reading}.", note="An earlier answer was corrected.")
NOTED_EARLY = Message("Noted: {reading}.", note="An answer that came before its question.")

# --- dates ----------------------------------------------------------------------------------
ASK_WHICH_DATE = Message(
    "{label}: {area}, {percent}% sprout, sowing {sow}, transplanting {transplant}. What to change?",
    note="A list follows: sowing day, transplanting day, field, germination, pail, name.",
)
THE_NAME = Message("Its name", note="A choice: give the nursery a name.")
ASK_NAME = Message(
    "Which name shall {label} have? One or two short words, e.g. RIVER.",
    note="The farmer may name a nursery.",
)
NAMED = Message("Nursery {old} is now {label}.", note="The farmer gave it a name.")
AMENDED = Message("Changed. This is the plan now:", note="The new quantities follow.")
THE_TRANSPLANTING_DAY = Message("Transplanting day", note="A choice.")
ASK_NEW_SOWING = Message(
    "{label}: sowing is {sow}. Send the new day, e.g. 12 June or tomorrow.",
    note="Question for another date.",
)
ASK_TRANSPLANTING = Message(
    "{label}: on which day will you transplant? Best {first} to {last}. Send the day.",
    note="Question for the chosen day of transplanting.",
)
HELP_DATE = Message(
    "Send a day like 12 June, 12/6, tomorrow, Monday or in 3 days.",
    note="Help on any question for a date.",
)
SOWING_MOVED = Message(
    "{label}: sowing is now {sow}, uncover and flood {uncover}, transplant {first} to {last}.",
    note="A date was changed.",
)
TRANSPLANT_SET = Message(
    "{label}: transplanting {date}. Drain the bed on {drain}.",
    note="The farmer chose the day.",
)
TRANSPLANT_OUTSIDE = Message(
    "{date} is day {day} after sowing; best is day {low} to {high}, with {few} to {many} "
    "open leaves.",
    note="The chosen day is early or late; it is kept all the same.",
)
NOT_A_TRANSPLANT_DAY = Message(
    "{date} cannot be: {label} was or will be sown {sow}.",
    note="The wished transplanting day is before sowing, or far too early or late.",
)

# --- what the farmer did --------------------------------------------------------------------
DONE_NOTED = Message("{label}: {what} done. Good.", note="{what} is a task.")
SOWN_NOTED = Message(
    "{label}: sown {sow}. Water twice a day, keep covered until {uncover}. Other day: "
    "CHANGE DATE.",
    note="The farmer said that the seed is sown.",
)
SOWN_WEAK = Message(
    "Few of this seed will come up: look for other seed now. On {uncover} count the shoots: send "
    "PROBLEM, 2.",
    note="Sown although the seed was too weak to be sown. PROBLEM and 2 are sent.",
)
UNCOVERED_LATE = Message(
    "It was uncovered late: pale leaves are usual now. I ask for the colour on {date}. "
    "Planting stays {first} to {last}, until you count leaves.",
    note="Some days later than planned; {date} is for the colour, the others are for planting.",
)
NOT_YET_NOTED = Message(
    "{label}: {what} not done yet. I ask again on {date}.", note="{what} is a task."
)
NOT_UP_NOTED = Message(
    "{label}: keep it moist and covered. Look again tomorrow, {date}. Few or none up by then: "
    "send PROBLEM.",
    note="The shoots are not up on day 5. PROBLEM is a word to send.",
)
SOW_LATER_NOTED = Message(
    "{label}: sowing moved to {sow}. Keep the seed moist and covered; sow when roots are "
    "{root_low}-{root_high} mm. Other day: CHANGE DATE.",
    note="The seed is not sprouted or not sown yet.",
)
TRANSPLANTED_NOTED = Message(
    "{label}: transplanted. Well done! Keep a mat or two moist: fill gaps within {gap_days} "
    "days. I remind you and then ask how it went.",
    note="The seedlings are in the field.",
)
GREEN_NOTED = Message(
    "{label}: green, good. Keep {depth} cm of water.",
    note="Leaves are green.",
)
WHICH_TASK = Message("Which one?", note="Several tasks are open; a list follows.")
ASK_STATE = Message("Is it done?", note="Asked about one task; Done or Not yet follow.")
NOTHING_OPEN = Message(
    "I have no open task for you. Send TODAY for today's work.",
    note="Somebody sent DONE but nothing was asked.",
)
LEAVES_FEW = Message(
    "{label}: open leaves {count}, too early. In cool weather leaves come slowly. Transplant "
    "at {few} to {many}.",
    note="Fewer than 3 leaves.",
)
LEAVES_READY = Message(
    "{label}: {count} open leaves: right for transplanting.", note="3 to 4 leaves, in time."
)
LEAVES_SOON = Message(
    "{label}: {count} open leaves: transplant soon, before they grow old.",
    note="More than 4 leaves, or late.",
)
LEAVES_HILL = Message(
    "As the leaves are now, plant {n} in each hill.",
    note="The leaves that were counted say another number of seedlings a hill than the days did.",
)
LEAVES_SLOW = Message(
    "{label}: open leaves {count}, that is few for day {day}. I tell your officer.",
    note="Fewer than 3 leaves after day 20.",
)
LEAVES_ODD = Message(
    "{count} leaves on day {day} is unusual. Count only open leaves with a blade, on a few "
    "plants.",
    note="The count cannot be right.",
)
ASK_LEAVES = Message("{label}: how many open leaves? Send the number, e.g. 3.", note="Count.")

# --- trouble --------------------------------------------------------------------------------
ASK_PROBLEM = Message("What is wrong?", note="A list with digits follows.")
P_YELLOW = Message("Yellow leaves", note="A choice.")
P_NOT_UP = Message("Few or none come up", note="A choice: poor emergence.")
P_SEED = Message("Seed does not sprout", note="A choice: before sowing.")
P_ANIMALS = Message("Birds, rats, insects", note="A choice.")
P_WATER = Message("Flood, rain or no water", note="A choice.")
P_OTHER = Message("Something else", note="A choice.")
ASK_SIGNS = Message(
    "{label}: do you also see one of these?",
    note="Asked about yellow leaves; a list follows.",
)
S_SPOTS = Message("Spots or rust on leaves", note="A sign beside yellow leaves.")
S_INSECTS = Message("Insects", note="A sign.")
S_YOUNG = Message("Only young leaves yellow", note="A sign.")
S_COLD = Message("Cold nights", note="A sign.")
S_SALT = Message("Salty soil or water", note="A sign.")
S_WATER = Message("Deep standing water", note="A sign.")
S_NONE = Message("None of these", note="No other sign.")
S_UNSURE = Message("Not sure", note="The farmer cannot tell.")
UREA_ADVICE = Message(
    "{label}: often too little nitrogen. Once only, never stronger: {strength} g urea in "
    "each litre, {urea} in {water} L for your bed. Use a can with small holes, in the "
    "evening, not in the sun. Then rinse the leaves with clean water. Keep it off eyes and "
    "hands. Keep children and animals away. Wash hands after. Follow local rules; ask your "
    "officer.",
    note="0.5 % urea for yellow leaves. The cautions must stay in this text.",
    segments=3,
)
UREA_EARLY = Message(
    "{label}: it is only day {day}. Before day {colour_day} do not spray. Keep the bed "
    "moist; look again on {date}. I tell your officer.",
    note="Yellow leaves before day 7.",
)
TOLD_OFFICER = Message(
    "I have told your officer what you answered. Until then do not spray anything.",
    note="Yellow leaves with other signs.",
)
SEED_ADVICE = Message(
    "Keep the seed moist, warm and covered one day more; rinse it if it smells. Cool water "
    "or slow seed needs longer. Sow when roots are {root_low}-{root_high} mm. None after "
    "{no_sprout} more days: use other seed.",
    note="The seed does not sprout.",
    segments=2,
)
NOT_UP_ADVICE = Message(
    "Keep the bed moist and covered, not flooded, and look again tomorrow. Still bare? You may "
    "have to sow again: your officer will be told.",
    note="Few shoots come up.",
)
FIELD_ANIMALS = Message(
    "Guard the field at dawn and dusk, keep poultry and goats out. Snails: {low_cm} to {high_cm} cm "
    "of water, pick them by hand with gloves. No bait, no poison.",
    note="Rats, birds, livestock or snails eat the young plants in the field. Keep the cautions.",
)
NUDGE = Message(
    "You began here and did not finish. If you wish to go on, answer this. If not, do nothing: I "
    "do not ask again.",
    note="Once, two days after a sign-up was left open; the question follows in the same text.",
)
ANIMALS_ADVICE = Message(
    "Cover with leaves, straw or a net, fence off poultry, guard at dawn and dusk. Use no poison. "
    "Insects on leaves: I tell your officer.",
    note="Birds, poultry, rats, insects.",
)
RAIN_ADVICE_EARLY = Message(
    "Keep people safe first: stay in during lightning. Before rain cover the mats with sheet "
    "or leaves, weigh it down; let water run off. Days 0-{guard_until} are the weakest.",
    note="Rain on the young nursery.",
    segments=2,
)
RAIN_ADVICE_LATER = Message(
    "Keep people safe first: stay in during lightning. Open the drain so that water does not "
    "stand over the leaves, then bring it back to {depth} cm.",
    note="Rain or flood on the older nursery.",
)
ASK_WORDS = Message("Tell me in a few words what you need.", note="A person will read it.")
CALL_NOTED = Message(
    'Your officer will be told: "{words}". They will call or visit you.',
    note="{words} is what the farmer wrote, possibly cut.",
)
RING_NOTED = Message(
    "You rang. Your officer is told and will call or visit you. For the menu send MENU.",
    note="Answer to a missed call. MENU is a word to send.",
)

# --- rain warnings, the farmer's side -------------------------------------------------------
WARNING = Message(
    "RAIN WARNING {village}: heavy rain {from_time} to {to_time} on {date}. Keep people safe "
    "first. Cover nursery {labels} now, drain surplus water. Go in when it thunders.",
    note="From the officer to nurseries on days 0 to 5.",
    segments=2,
    spoken=True,
)
WARNING_WAIT = Message(
    "RAIN WARNING {village}: heavy rain {from_time} to {to_time} on {date}. Keep people safe "
    "first. Do not sow nursery {labels} before it is over; keep the seed moist.",
    note="From the officer to those about to sow.",
    segments=2,
    spoken=True,
)
WARNING_COVERED = Message(
    "Good, I noted it: covered, or sowing put off. Stay safe.",
    note="Answer to 1 or to covered after a warning.",
)
WARNING_HELP = Message(
    "Noted: you need help. Your officer is told now. Stay safe and do not go out in the storm.",
    note="Answer to 2 after a warning.",
)
ALL_CLEAR = Message(
    "{village}: the rain warning is over. Look at nursery {labels}: drain surplus water, mend the "
    "cover. Follow your calendar again.",
    note="From the officer when the danger is past.",
)
