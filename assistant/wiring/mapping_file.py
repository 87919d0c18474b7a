"""A mapping file: how a provider's HTTP looks -> the values that the line works with."""

import tomllib
from dataclasses import replace
from pathlib import Path
from urllib.parse import urlsplit, urlunsplit

from assistant.gateways.mapping import Provider
from assistant.settings import SettingsError
from assistant.wiring.filled import Faults, filled


class MappingError(SettingsError, ValueError):
    """A mapping file that cannot be used; the text names every fault and what to write."""


def open_mapping(path: Path, address: str = "") -> Provider:
    """The provider of a file; at another address than it says, where one is given.

    Raises:
        MappingError: lists every fault.
    """
    try:
        table = tomllib.loads(path.read_text(encoding="utf-8"))
        provider = filled(Provider, table)
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        raise MappingError(f"{path} cannot be read ({error}); write a TOML file") from error
    except (Faults, ValueError) as fault:
        raise MappingError(f"{path}: {fault}") from fault
    if not address:
        return provider
    there, here = urlsplit(address), urlsplit(provider.send.url)
    url = urlunsplit((there.scheme, there.netloc, here.path, here.query, ""))
    return replace(provider, send=replace(provider.send, url=url))
