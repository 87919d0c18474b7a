"""Amounts in words: a weight in grams or kilograms, water in pails or litres, heaps of seed."""

from assistant.agronomy.practices import PieceKind, Practice
from assistant.agronomy.quantities import Quantities
from assistant.agronomy.rounding import Measure, measured
from assistant.agronomy.seed import G_PER_KG
from assistant.agronomy.told import heap_told_g, pails_told
from assistant.wording import messages_amounts as amounts
from assistant.wording.message import Say

_HANDFUL_KG = 0.1
_DIGITS = 6  # enough for any weight, too few to show float noise


def weight(grams: float) -> Say:
    """A weight as it is said: in grams, or from 1 kg on in kilograms."""
    if grams >= G_PER_KG:
        return amounts.KILOGRAMS(amount=round(grams / G_PER_KG, _DIGITS))
    return amounts.GRAMS(amount=round(grams, _DIGITS))


def seed_weight(dry_kg: float) -> Say:
    """Dry seed [kg] as it is weighed, in grams or kilograms."""
    return seed_told(measured(dry_kg, Measure.SEED_KG))


def seed_told(kg: float) -> Say:
    """Seed [kg] that was rounded before; in kilograms but for a handful."""
    if kg < _HANDFUL_KG:
        return weight(kg * G_PER_KG)
    return amounts.KILOGRAMS(amount=round(kg, _DIGITS))


def water(litres: float, pail_litres: float) -> Say:
    """Water in the person's own pails, to the half pail; in litres where that is too coarse."""
    pails = pails_told(litres, pail_litres)
    return _litres(litres) if pails is None else _pails(pails)


def water_at_length(litres: float, pail_litres: float) -> Say:
    """The same for paper: litres, and beside them the pails where they tell it well."""
    pails = pails_told(litres, pail_litres)
    if pails is None:
        return _litres(litres)
    told = measured(litres, Measure.WATER_L)
    return amounts.LITRES_AND_PAILS(litres=told, pails=_pails(pails))


def mats(practice: Practice, count: int) -> Say:
    """So many mats, or trays."""
    return (amounts.TRAYS if _has_trays(practice) else amounts.MATS)(n=count)


def more_mats(count: int) -> Say:
    """So many mats beside those there are."""
    return amounts.MORE_MATS(n=count)


def heaps(q: Quantities, practice: Practice) -> Say:
    """The sprouted seed in equal heaps, one a mat or tray."""
    said = amounts.HEAPS_TRAY if _has_trays(practice) else amounts.HEAPS_MAT
    return said(n=q.mats, grams=heap_told_g(q))


def _has_trays(practice: Practice) -> bool:
    piece = practice.bed.piece
    return piece is not None and piece.kind is PieceKind.TRAY


def _litres(litres: float) -> Say:
    return amounts.LITRES(amount=measured(litres, Measure.WATER_L))


def _pails(pails: float) -> Say:
    whole = round(pails)
    if whole != pails and pails in _SPELLED:
        return _SPELLED[pails]()
    return amounts.PAILS(n=whole) if whole == pails else amounts.HALF_PAILS(amount=pails)


# Below two, languages differ in whether a part is one or many ("1,5 seau").
_SPELLED = {0.5: amounts.HALF_A_PAIL, 1.5: amounts.PAIL_AND_HALF}
