"""What the processes of a test run make once and not once a test.

A real start has one database engine and one web application, whose statements and templates are
compiled once. A test has its own of both; compiled alike each time, that was a third of the
suite. Nothing that a test could change is shared: only what is made from the sources.
"""

from collections.abc import Callable
from typing import Any

from flask import Flask
from jinja2 import BytecodeCache
from jinja2.bccache import Bucket
from sqlalchemy import Engine, create_engine
from werkzeug.routing import Rule

import assistant.store.engine as engines


class Templates(BytecodeCache):
    """Compiled templates of this process, by the checksum of their source."""

    def __init__(self) -> None:
        self._kept: dict[tuple[str, str], bytes] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        """Gives what was kept of the same source."""
        code = self._kept.get((bucket.key, bucket.checksum))
        if code is not None:
            bucket.bytecode_from_string(code)

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keeps it."""
        self._kept[bucket.key, bucket.checksum] = bucket.bytecode_to_string()


def share() -> None:
    """From now on this process compiles each template, statement for SQLite and address of a
    page once."""
    Rule._compile_builder = _once(Rule._compile_builder)  # type: ignore[method-assign]
    Flask.jinja_options = {**Flask.jinja_options, "bytecode_cache": Templates()}
    vars(engines)["create_engine"] = _sharing(create_engine)


def _sharing(create: Callable[..., Engine]) -> Callable[..., Engine]:
    """Engines whose statements are compiled by the first one's dialect, into its cache."""
    first: list[Engine] = []

    def create_engine(url: Any, **options: Any) -> Engine:
        if "timeout" in options.get("connect_args", {}):  # of SQLite: a machine at work is slow
            options = options | {"connect_args": {"timeout": 60.0}}
        engine = create(url, **options)
        if engine.dialect.name != "sqlite":
            return engine
        first.append(engine) if not first else None
        engine.dialect = first[0].dialect
        engine._compiled_cache = first[0]._compiled_cache
        return engine

    return create_engine


def _once(make: Callable[..., Any]) -> Callable[..., Any]:
    """How addresses of a rule are built: a function made from the rule alone, of no state."""
    made: dict[tuple[object, ...], Any] = {}

    def builder(rule: Rule, append_unknown: bool = True) -> Any:
        if rule.defaults:
            return make(rule, append_unknown)
        key = rule.rule, tuple(rule._trace), append_unknown
        if key not in made:
            made[key] = make(rule, append_unknown)
        return made[key]

    return builder
