"""Figures that stand in a text as digits are those of the trade: a number that is corrected in
one place is not forgotten in the other. Translations are held to the digits of English."""

import pytest

from assistant.agronomy import constants as c
from assistant.agronomy import constants_work as w
from assistant.agronomy.mat import dissolved_g
from assistant.agronomy.practices import MAT
from assistant.agronomy.work.loads import pail_of_mix_kg, wet_mat_kg
from assistant.wording import messages_care as care
from assistant.wording import messages_plan as plan
from assistant.wording import messages_practice as p
from assistant.wording import messages_talk as talk
from assistant.wording import messages_tasks as t

ROOTS = f"roots are {c.ROOT_LOW_MM.value:g}-{c.ROOT_HIGH_MM.value:g} mm"
COVER = f"cover with {c.COVER_LOW_MM.value:g}-{c.COVER_HIGH_MM.value:g} mm"
SIZE = f"{c.MAT_LENGTH_M.value * 100:g} x {c.MAT_WIDTH_M.value * 100:g} cm"
DEEP = f"{c.MAT_DEPTH_M.value * 100:g} cm deep"
PARTS = (c.SOIL_PARTS.value, c.MANURE_PARTS.value, c.HULL_PARTS.value)
SMALL = "{:g} of soil, {:g} of rotted manure, {:g} of rice hull".format(*PARTS)
PAIL = pail_of_mix_kg(20)
WATER = f"{c.FLOOD_DEPTH_M.value * 100:g} cm of water"
UREA = f"{dissolved_g(1.0, c.UREA_PERCENT.value):g} g urea in each litre"


@pytest.mark.parametrize(
    ("message", "words"),
    [
        (t.P_SOW, ROOTS),
        (p.P_SOW_TRAYS, ROOTS),
        (p.P_SOW_WET, ROOTS),
        (p.P_SOW_DRY, ROOTS),
        (t.P_MORE_SOW, ROOTS),
        (t.P_SOW, COVER),
        (p.P_SOW_TRAYS, COVER),
        (t.P_SOAK, f"{c.SOAK_H.value:g} h in clean water"),
        (t.P_DRAIN_SEED, f"covered {c.INCUBATE_H.value:g} h"),
        (t.P_SEED_TEST, f"for {c.SEED_TEST_COUNT_D.value:g} days"),
        (t.P_MIX, "Mix {:g} pails soil, {:g} rotted manure, {:g} rice hull".format(*PARTS)),
        (t.P_MIX_SMALL, SMALL),
        (t.P_MIX, f"20 L pail weighs {PAIL.low:g}-{PAIL.high:g} kg"),
        (t.P_UNCOVER, WATER),
        (t.P_KEEP_WATER, WATER),
        (talk.RESULT_MIX, DEEP),
        (talk.RESULT_SEED, SIZE),
        (plan.BED, SIZE),
        (plan.FRAME, DEEP),
        (care.UREA_CAN, UREA),
        (talk.UREA_ADVICE, UREA),
        (care.SALT_MIX, f"{w.BRINE_MINUTES.value:g} minutes"),
        (care.SALT_RINSE, f"Rinse what sank {w.BRINE_RINSES.value:g} times"),
    ],
)  # fmt: skip
def test_a_figure_in_a_text_is_that_of_the_trade(message, words):
    """Word for word."""
    assert words in message.text


def test_the_window_of_leaves_in_the_texts_for_mats():
    """Three to four open leaves, and some seven kilograms to lift."""
    window = MAT.window
    few, many = (int(leaves.value) for leaves in (window.leaves_first, window.leaves_last))
    assert (few, many) == (3, 4)
    assert (
        f"{few} or {few + 1}" in t.P_TRANSPLANT.text or f"{few}-{many}" in t.P_TRANSPLANT.text
    )
    assert "7 kg" in t.P_TRANSPLANT.text and round(wet_mat_kg()) == 7
