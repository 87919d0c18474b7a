"""Ways of raising seedlings. One file each; adding one needs no code (see `mat.toml`)."""

from assistant.agronomy.practices.mat import MAT, MAT_ONLY
from assistant.agronomy.practices.practice import (
    Anchor,
    BedMake,
    DayPoint,
    Days,
    Labour,
    MatSize,
    PieceKind,
    Planting,
    Practice,
    TaskRule,
    Window,
)

__all__ = [
    "MAT",
    "MAT_ONLY",
    "Anchor",
    "BedMake",
    "Days",
    "Labour",
    "MatSize",
    "PieceKind",
    "Planting",
    "DayPoint",
    "Practice",
    "TaskRule",
    "Window",
]
