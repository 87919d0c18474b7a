"""The number by which a phone is locked."""

from hashlib import blake2b


def lock_number(phone: str) -> int:
    """A number of 64 bits that every process finds for the same phone."""
    return int.from_bytes(blake2b(phone.encode(), digest_size=8).digest(), signed=True)
