"""Texts of the talks about seed: its test, sorting it in salt water, soaking it.

Digits in a text are what the farmer may answer; keep them.
"""

from assistant.wording.message import Message

# --- the home test --------------------------------------------------------------------------
TEST_SEEDS = Message(
    "Seed test 1: take 100 seeds from all over the bag, not the best ones. Treated seed is poison: "
    "wash your hands.",
    note="First of three texts that explain the home test. Keep the caution.",
)
TEST_CLOTH = Message(
    "Seed test 2: lay them apart on a wet clean cloth, 10 rows of 10, roll it up. Keep it in the "
    "shade, out of reach of animals.",
    note="Second of three texts.",
)
TEST_COUNT = Message(
    "Seed test 3: wet the cloth each morning and evening. On day {test_days} count the seeds "
    "with root and shoot.",
    note="Third of three texts; choices with digits follow.",
)
BEGUN_TODAY = Message("Begun today", note="A choice: the seed test begins today.")
LATER = Message("Later", note="A choice: not now.")
HOW_TO_TEST = Message("How do I test?", note="A choice: explain the seed test.")
TWO_LOTS = Message("Two seed lots", note="A choice: seed from two bags in one bed.")
BEGUN = Message("Begun", note="A choice: the seed test was begun.")
HOW = Message("How?", note="A choice: explain the seed test.")
ASK_STAGE = Message(
    "{label}: seed test. Send the count, e.g. 83 of 100, or a digit:",
    note="Question; choices with digits follow.",
)
COUNTED = Message("I have the count", note="A choice: the seed test is counted.")
ASK_COUNT = Message(
    "{label}: how many sprouted? e.g. 83 of 100, or four lots: 81 79 85 80.",
    note="Question for the count of a seed test.",
)
AGAIN_COUNTED = Message(
    "Send how many sprouted of how many, e.g. 83 of 100.",
    note="The count of a seed test could not be read.",
)
AGAIN_TESTED = Message(
    "Send how many sprouted of how many, e.g. 83 of 100, or a digit from the list.",
    note="The count of a seed test could not be read.",
)
TEST_NOTED = Message(
    "{label}: good. Keep the cloth moist. On {date} I ask for the count.",
    note="The farmer began the seed test.",
)
TEST_AFTER_SOWING = Message(
    "That is too late for sowing on {sow}: seed is soaked before. Better wait for the count: CHANGE "
    "DATE.",
    note="The test ends after the day of soaking.",
)
TEST_LATER = Message(
    "{label}: not begun yet. Begin by {date}, then there is still time to buy other seed.",
    note="The farmer will test later.",
)
TESTED = Message(
    "{label}: {percent}% sprouted, {seeds} seeds tested. The whole bag is likely {low} to {high}%.",
    note="Result of a seed test with its honest range (95 of 100 such ranges are right).",
)
LOTS_AGREE = Message("The four lots agree.", note="Four lots of 100 seeds are alike enough.")
ASK_TEST_AGAIN = Message("Test again?", note="After lots that differ; choices follow.")
LOTS_DISAGREE = Message(
    "{label}: your lots differ by {spread} points; up to {most} is chance. The count is not safe: "
    "mix the seed and test again.",
    note="Four lots of 100 seeds differ more than the official table allows.",
)
TIME_TO_RETEST = Message(
    "There is time: get other seed and begin its test by {date}.",
    note="Weak seed; the sowing day leaves time for another test.",
)
NO_TIME_TO_RETEST = Message(
    "Testing other seed takes a week: then sow on {date} or later. To move it: CHANGE DATE.",
    note="Weak seed; another test needs a later sowing day.",
)

# --- a plan that is held --------------------------------------------------------------------
HELD = Message(
    "{label}: I hold this plan. Nothing is to be soaked or sown until other seed is there.",
    note="Too little of the seed sprouts. Other seed must be found; the plan stands still.",
)
FEW_SEEDS = Message(
    "{seeds} seeds are few: count 100 of the same seed before you give it up.",
    note="A small test forbids a seed that may still be good enough.",
)
LIFTED = Message(
    "{label}: this seed may be sown. Sowing is now {sow}; seed is soaked on {soak}. Other day: "
    "CHANGE DATE.",
    note="Other seed, or another test; the plan goes on. CHANGE DATE is sent.",
)
NEW_SEED_NOTED = Message(
    "{label}: other seed, counted as if {assumed} of 100 sprout. Test it too: 100 seeds in a "
    "wet cloth, {test_days} days.",
    note="The farmer has other seed in place of the bad one.",
)
TEST_BEGUN = Message("Test begun", note="A choice: the test of other seed was begun.")
NEW_SEED = Message("New seed", note="A choice: other seed is there, nobody tested it.")

# --- two lots in one bed --------------------------------------------------------------------
ASK_FIRST_LOT = Message(
    "First lot: how many of 100 sprouted?", note="Two seed lots; question for the first."
)
ASK_SECOND_LOT = Message(
    "Second lot: how many of 100 sprouted?", note="Two seed lots; question for the second."
)
ASK_SHARE = Message(
    "How much of all your seed is the first lot?", note="Choices with digits follow."
)
QUARTER = Message("A quarter", note="A share.")
HALF = Message("Half", note="A share.")
THREE_QUARTERS = Message("Three quarters", note="A share.")
MIXED = Message(
    "{label}: together {percent}%. Sow each lot on mats of its own, they come up on different "
    "days: {first} mats and {second} mats.",
    note="Two seed lots in one bed; {first} and {second} count the mats of each.",
)
MIXED_BAD = Message(
    "One lot is under {least} of 100: leave it out, it would only hide the gaps.",
    note="One of two seed lots is too weak to sow.",
)
