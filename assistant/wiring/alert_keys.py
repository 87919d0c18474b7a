"""The keys by which official alerts are checked, and the check itself.

signxml (W3C XML Signature, with lxml and cryptography) is only needed where keys are set. What
it says is signed is read as an alert of its own, and has to say all that the message says:
nothing counts that stands beside what was signed.
"""

import logging
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import Any

from assistant.alerts import Alert, read_alert
from assistant.service.house import CheckAlert
from assistant.settings import Settings, SettingsError

log = logging.getLogger(__name__)

EXTRA = "pip install 'nursery[signatures]'"
Key = tuple[str, Any]  # whose it is, and their certificate


def open_alert_keys(settings: Settings) -> CheckAlert | None:
    """The check of signatures; None where no keys are set.

    Raises:
        SettingsError: a file holds no certificate, or the libraries are not installed.
    """
    if not settings.alerts_keys:
        return None
    keys = [key for path in settings.alerts_keys for key in _keys(Path(path))]
    return lambda raw, now: signer_of(raw, keys, now)


def signer_of(raw: bytes, keys: Sequence[Key], now: datetime) -> str | None:
    """Whose key signed a whole message, their certificate being valid; None for nobody's."""
    return next((name for name, key in keys if _is_signed(raw, key, now)), None)


def _is_signed(raw: bytes, key: Any, now: datetime) -> bool:
    from signxml.verifier import SignatureConfiguration, XMLVerifier

    wanted = SignatureConfiguration(location="./", expect_references=1, verification_time=now)
    try:
        signed = XMLVerifier().verify(raw, x509_cert=key, expect_config=wanted)
    except Exception as fault:  # three libraries in bytes that nobody vouches for
        log.warning("a signature is not right: %s", fault)
        return False
    whole, part = read_alert(raw), read_alert(getattr(signed, "signed_data", b""))
    return isinstance(whole, Alert) and replace(whole, signed=False) == part


def _keys(path: Path) -> list[Key]:
    try:
        import signxml  # noqa: F401  # told of at the start, not with the first alert
        from cryptography.x509 import load_pem_x509_certificates
    except ImportError as fault:
        raise SettingsError(f"NURSERY_ALERTS_KEYS checks signatures; {EXTRA}") from fault
    try:
        found = load_pem_x509_certificates(path.read_bytes())
    except (OSError, ValueError) as fault:
        raise SettingsError(
            f"NURSERY_ALERTS_KEYS={path}: {fault}; name files of certificates (PEM) of the "
            "services that sign their alerts"
        ) from fault
    return [(_name(each), each) for each in found]


def _name(certificate: Any) -> str:
    """The common name of whom it is for."""
    from cryptography.x509.oid import NameOID

    names = certificate.subject.get_attributes_for_oid(NameOID.COMMON_NAME)
    return str(names[0].value) if names else str(certificate.subject.rfc4514_string())
