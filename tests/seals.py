"""Signs alert messages for tests, as a weather service does, with keys made for them."""

from datetime import datetime, timedelta
from functools import lru_cache
from pathlib import Path

from cryptography import x509
from cryptography.hazmat.primitives.asymmetric import rsa
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.serialization import Encoding
from cryptography.x509.oid import NameOID
from lxml import etree
from signxml.signer import XMLSigner

Pair = tuple[rsa.RSAPrivateKey, x509.Certificate]


@lru_cache
def key_of(name: str, year: int = 2026) -> Pair:
    """A service's key and its certificate for a year."""
    key = rsa.generate_private_key(65537, 2048)
    called = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, name)])
    begins = datetime(year, 1, 1)
    certificate = (
        x509.CertificateBuilder()
        .subject_name(called)
        .issuer_name(called)
        .public_key(key.public_key())
        .serial_number(1)
        .not_valid_before(begins)
        .not_valid_after(begins + timedelta(days=365))
        .sign(key, SHA256())
    )
    return key, certificate


def kept(pair: Pair, folder: Path) -> str:
    """The certificate as a file that a setting can name."""
    path = folder / f"{pair[1].serial_number}-{hash(pair[1])}.pem"
    path.write_bytes(pair[1].public_bytes(Encoding.PEM))
    return str(path)


def signed(raw: bytes, pair: Pair) -> bytes:
    """The message with an enveloped signature (CAP 1.2, 3.3.4.1) at its end."""
    key, certificate = pair
    signer = XMLSigner(c14n_algorithm="http://www.w3.org/2001/10/xml-exc-c14n#")
    pem = certificate.public_bytes(Encoding.PEM).decode()
    return bytes(etree.tostring(signer.sign(etree.fromstring(raw), key=key, cert=[pem])))
