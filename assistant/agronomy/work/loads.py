"""What the work weighs, so that nobody lifts more than they should.

Weights come from volumes and published bulk densities; a pail is half-filled and shared.
"""

from typing import NamedTuple

from assistant.agronomy import constants_work as w
from assistant.agronomy.mat import L_PER_M3
from assistant.agronomy.practices import MAT, Practice


class WeightRange(NamedTuple):
    """A range of weights [kg]."""

    low: float
    high: float


def wet_mat_kg(practice: Practice = MAT) -> float:
    """One mat or tray of full depth, wet [kg]; some 7 kg; 0 without any."""
    piece, depth_m = practice.bed.piece, practice.bed.depth_m.value
    return piece.area_m2 * depth_m * L_PER_M3 * w.MIX_KG_PER_L.value if piece else 0.0


def square_metre_kg(practice: Practice = MAT) -> float:
    """A square metre of a bed of pieces, wet [kg]; of another kind, that of mats."""
    depth_m = (practice if practice.bed.piece else MAT).bed.depth_m.value
    return depth_m * L_PER_M3 * w.MIX_KG_PER_L.value


def pail_of_mix_kg(litres: float) -> WeightRange:
    """A pail with that many litres of mix in it [kg]."""
    low, high = w.MIX_KG_PER_L.low, w.MIX_KG_PER_L.high
    return WeightRange(litres * (low or 0.0), litres * (high or 0.0))


def paddy_litres(dry_kg: float) -> float:
    """The room dry seed takes in a tin or a pail [L]."""
    return dry_kg / w.PADDY_KG_PER_L.value
