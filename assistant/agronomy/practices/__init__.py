"""Ways of raising seedlings. One file each; adding one needs no code (see `mat.toml`)."""

from assistant.agronomy.practices.mat import MAT, MAT_ONLY
from assistant.agronomy.practices.practice import (
    Anchor,
    Bed,
    Days,
    Labour,
    Piece,
    PieceKind,
    Planting,
    Point,
    Practice,
    TaskRule,
    Window,
)

__all__ = [
    "MAT",
    "MAT_ONLY",
    "Anchor",
    "Bed",
    "Days",
    "Labour",
    "Piece",
    "PieceKind",
    "Planting",
    "Point",
    "Practice",
    "TaskRule",
    "Window",
]
