"""A seller's key and certificate for tests, made up."""

from __future__ import annotations

import datetime
from pathlib import Path

from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import rsa
from cryptography.hazmat.primitives.serialization import pkcs12
from cryptography.x509.oid import NameOID


def seller(file: Path, password: str) -> None:
    """A key and a certificate signed by itself (RFC 7292, by pyca/cryptography)."""
    key = rsa.generate_private_key(public_exponent=65537, key_size=2048)
    name = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, "Lantern Street (invented)")])
    start = datetime.datetime(2026, 1, 1, tzinfo=datetime.UTC)
    made = x509.CertificateBuilder().subject_name(name).issuer_name(name)
    made = made.public_key(key.public_key()).serial_number(7)
    made = made.not_valid_before(start).not_valid_after(start.replace(year=2090))
    certificate = made.sign(key, hashes.SHA256())
    locked = serialization.BestAvailableEncryption(password.encode())
    file.write_bytes(pkcs12.serialize_key_and_certificates(b"", key, certificate, None, locked))
