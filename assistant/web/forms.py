"""Forms of the officers' pages: WTForms reads what was typed, its faults are in our own words.

A form says what can be typed into each field (`fields.py`); what the trade or the house forbids
the service says, and `refuse` puts it beside the rest. The token stands in every form by itself
and the guard looks at it before any route, so that no form here asks for it a second time.
"""

from typing import Any, Self, cast

from flask import request
from wtforms import Field, Form
from wtforms.meta import DefaultMeta

from assistant.wording.message import Message, Say


class OfficerForm(Form):
    """What every form of the pages has."""

    class Meta(DefaultMeta):
        """A field with a fault says so to a screen reader."""

        def render_field(self, field: Field, render_kw: Any) -> Any:
            wrong = {"aria_invalid": "true"} if field.errors else {}
            return super().render_field(field, {**wrong, **render_kw})

    @classmethod
    def sent(cls) -> Self:
        """The form as it was sent; what was typed stands in it when it is shown again."""
        return cls(request.form)

    def refuse(self, why: Message | Say) -> Self:
        """The form with what the service says against it."""
        said = why() if isinstance(why, Message) else why
        self.form_errors.append(cast(str, said))
        return self

    @property
    def faults(self) -> list[Say]:
        """All that is wrong with it, each once."""
        every = [*(each for field in self for each in field.errors), *self.form_errors]
        said = cast("list[Say]", every)
        return [each for at, each in enumerate(said) if each not in said[:at]]
