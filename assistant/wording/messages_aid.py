"""The closed table of emergency texts, and what is said where a bed or a person is in danger.

Fixed, never composed. Every sentence stands with its source in agronomy/SOURCES.md ("First
aid"). They only say what to do: none says "not", so that a text that loses a word in a
translation turns into no harm. No health worker or vet has signed them yet, in any language.
"""

from collections.abc import Mapping
from types import MappingProxyType

from assistant.wording.message import Message

_NOTE = (
    "EMERGENCY, fixed: no health worker has signed this translation yet. Translate each sentence "
    "whole, keep their order, add nothing. {emergency} is a phone number, {health_post} a name "
    "and number."
)

POISON = Message(
    "Call {emergency} now or go to {health_post} at once. Take the packet along, or its name. "
    "Everybody out of the spray, into fresh air. Take off clothes with poison on them and wash the "
    "skin with much water.",
    note=_NOTE,
    segments=2,
)
EYES = Message(
    "Call {emergency} now, or let another call while you rinse. Eyes: rinse gently with clean "
    "water for 15 minutes. Skin: take off the wet clothes and wash with much water. Then go to "
    "{health_post} and take the packet along.",
    note=_NOTE,
    segments=2,
)
SNAKE = Message(
    "Call {emergency} now or go to {health_post} at once. Get everybody away from the snake. The "
    "person must keep still and calm: carry them. Take rings and bracelets off the bitten arm or "
    "leg.",
    note=_NOTE,
    segments=2,
)
LIGHTNING = Message(
    "Call {emergency} now. The person who was hit is safe to hold and help. While it thunders, "
    "keep everybody in a house. Get the person to {health_post} as soon as the way is safe.",
    note=_NOTE,
    segments=2,
)
DROWNING = Message(
    "Call {emergency} now and shout for people. Stay out of the water, well back from the edge. "
    "From there throw something that floats. A person who came out goes to {health_post} at once.",
    note=_NOTE,
    segments=2,
)
WIRE = Message(
    "Call {emergency} now. Keep everybody very far from the wire and from the person and all "
    "things on it. Go near only when the electric company says the power is off. The hurt person "
    "then goes to {health_post}.",
    note=_NOTE,
    segments=2,
)
WOUND = Message(
    "Call {emergency} now or go to {health_post} at once. Press a clean cloth hard on the wound "
    "and keep pressing. If a thing sticks in the wound, leave it in and press beside it.",
    note=_NOTE,
    segments=2,
)
SMOKE = Message(
    "Go out now, all of you, and stay out. Outside, call {emergency} and say who is still inside. "
    "Anyone who breathed smoke needs fresh air, then {health_post}.",
    note=_NOTE,
    segments=2,
)
ANIMAL = Message(
    "Call {vet} now. Keep people and other animals away from this animal and from any poison. "
    "Have the packet ready for the vet.",
    note="EMERGENCY, fixed: no vet has signed this translation yet. {vet} is a name and number.",
    segments=2,
)
HURT = Message(
    "Go away from the danger. Call {emergency} now or go to {health_post} at once. Take the "
    "packet along if there is one.",
    note=_NOTE,
    segments=2,
)
HURT_HERE = Message(
    "Go away from the danger. Go to the nearest health post at once, or call for people who can "
    "bring you. Take the packet along if there is one.",
    note="EMERGENCY, where the programme gave no number. Translate each sentence whole.",
)
DIE = Message(
    "We care about you and what you tell us. You are not alone. Please call {emergency} now. You "
    "can also talk with {person}, or with someone you trust.",
    note="To somebody who wants to die. Warm, plain words; no word on how. {person} is a name "
    "and number. No health worker has signed this translation yet.",
    segments=2,
)
DIE_HURT = Message(
    "We care about you. You are not alone. Please call {emergency} now or go to {health_post} "
    "with someone you trust. You can also talk with {person}.",
    note="To somebody who wants to die and is hurt already. No word on how. {person} is a name "
    "and number. No health worker has signed this translation yet.",
    segments=2,
)
DIE_HERE = Message(
    "We care about you and what you tell us. You are not alone. Please go to someone you trust "
    "now, or to the nearest health post.",
    note="To somebody who wants to die, where the programme gave no number. No word on how.",
)

BY_KIND: Mapping[str, Message] = MappingProxyType(
    {
        "poison": POISON,
        "eyes": EYES,
        "snake": SNAKE,
        "lightning": LIGHTNING,
        "drowning": DROWNING,
        "wire": WIRE,
        "wound": WOUND,
        "smoke": SMOKE,
        "animal": ANIMAL,
        "hurt": HURT,
    }
)
"""One text a kind; "hurt" is the neutral one, where the kind is not sure."""

ASK_IF_HURT = Message(
    "Is a person or an animal hurt or in danger?",
    note="Asked where words may tell of it; the choices 'Somebody is hurt' and 'Nobody' follow.",
)
SOMEBODY = Message("Somebody is hurt", note="A choice after a digit.")
NOBODY = Message("Nobody", note="A choice after a digit: nobody is hurt.")
GOOD_NOBODY = Message("Good. I keep your words.", note="Answer to: nobody is hurt.")

# --- the bed or the field ---------------------------------------------------------------------
DANGER_TOLD = Message(
    "I have sent your words to {person}. Life first: stay in a safe high place, far from water, "
    "bunds, trees and wires. The bed is for after. When it is over send PROBLEM.",
    note="A flood or storm told in own words. {person} is a name and number, or 'your officer'. "
    "PROBLEM is a word to send. Nobody may be sent outside.",
    segments=2,
)
LOST_TOLD = Message(
    "I have sent your words to {person}. Keep the seedlings that are left. For what to do next "
    "send PROBLEM.",
    note="The bed is eaten, dead, stolen, dried out, told in own words. {person} is a name and "
    "number, or 'your officer'. PROBLEM is a word to send.",
)
ASK_IF_LOST = Message(
    "Is your nursery in danger or lost?",
    note="Asked where words may tell of it; Yes and No follow.",
)
YOUR_OFFICER = Message(
    "your farm officer", note="Stands for the name of the officer inside a sentence."
)

# --- no more texts ----------------------------------------------------------------------------
ASK_STOP = Message(
    "Shall I stop all texts to you? For texts only on days with new work, send WORK DAYS.",
    note="Asked where words may be a wish for no more texts; Yes and No follow. WORK DAYS: words "
    "to send.",
)
GO_ON = Message("Good, I go on.", note="Answer to: do not stop the texts.")
ERASE_TOLD = Message(
    "I have stopped all texts and told {person} that you want your number and answers deleted.",
    note="Somebody wants what is kept of them deleted; another text asks it back. {person} is a "
    "name and number.",
    segments=2,
)

# --- answers that may be meant for another question -------------------------------------------
WHICH_OF_TWO = Message(
    "More than one question is open. Please answer each in words:",
    note="A bare digit came where two things were asked; the questions follow, with words to send.",
)
UP_SO_UNCOVER = Message(
    "{label}: good, the shoots are up. Have you taken the cover off and let in {depth} cm of "
    "water?",
    note="The farmer said yes to 'Shoots up?'; the choices done and not yet follow.",
)

# --- not understood ---------------------------------------------------------------------------
PASSED_ON = Message(
    "I do not understand this yet, so I have passed your words to {person}. A person will see "
    "them.",
    note="A text that was not understood, the second time. {person} is a name and number.",
)
TROUBLE_PASSED = Message(
    "I have passed your words to {person}.",
    note="Before the list of troubles. {person} is a name and number.",
)
