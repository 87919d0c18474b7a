"""What pydantic refuses, told in our words: where it stands and what to write instead."""

from collections.abc import Collection
from difflib import get_close_matches
from typing import Any

from pydantic import ValidatorFunctionWrapHandler, WrapValidator


def said(words: str) -> WrapValidator:
    """Beside a type: what it refuses is told by these words; `{value}` is what was given."""

    def check(value: Any, inner: ValidatorFunctionWrapHandler) -> Any:
        try:
            return inner(value)
        except ValueError:
            raise ValueError(words.format(value=value)) from None

    return WrapValidator(check)


def not_known(entry: str, known: Collection[str]) -> str:
    """A mistyped entry, with the nearest that there is: it would be passed over in silence."""
    near = get_close_matches(entry, known, 1)
    hint = f"write {near[0]}" if near else f"known are {', '.join(known)}"
    return f"{entry} is not known; {hint}"
