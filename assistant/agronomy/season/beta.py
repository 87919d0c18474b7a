"""The Beta distribution: what is believed of a share between none and all.

No statistics library is among what the program needs at run time; scipy checks this in tests.
"""

import math

_STEPS = 300
_TINY = 1e-300
_CLOSE = 1e-14


def beta_cdf(x: float, a: float, b: float) -> float:
    """The chance that the share is below `x` (regularised incomplete beta function)."""
    if x <= 0 or x >= 1:
        return 0.0 if x <= 0 else 1.0
    front = math.exp(
        math.lgamma(a + b) - math.lgamma(a) - math.lgamma(b)
        + a * math.log(x) + b * math.log1p(-x)
    )  # fmt: skip
    # The fraction converges fast only on this side of the middle; the rest is its mirror.
    if x < (a + 1) / (a + b + 2):
        return front * _fraction(x, a, b) / a
    return 1 - front * _fraction(1 - x, b, a) / b


def beta_point(share: float, a: float, b: float) -> float:
    """The share of which the chance to lie below it is `share`, by halving."""
    low, high = 0.0, 1.0
    while high - low > _CLOSE:
        middle = (low + high) / 2
        if beta_cdf(middle, a, b) < share:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def _fraction(x: float, a: float, b: float) -> float:
    """The continued fraction of the incomplete beta function, evaluated after Lentz."""
    above, below = 1.0, 1 / _away(1 - (a + b) * x / (a + 1))
    value = below
    for n in range(1, _STEPS):
        even = n * (b - n) * x / ((a + 2 * n - 1) * (a + 2 * n))
        odd = -(a + n) * (a + b + n) * x / ((a + 2 * n) * (a + 2 * n + 1))
        for term in (even, odd):
            below = 1 / _away(1 + term * below)
            above = _away(1 + term / above)
            value *= above * below
        if abs(above * below - 1) < _CLOSE:
            break
    return value


def _away(value: float) -> float:
    """Never nothing, so that it can be divided by."""
    return value if abs(value) > _TINY else _TINY
