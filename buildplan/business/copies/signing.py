"""Signing sold copies with a certificate of one's own, so that any reader of PDF can check them.

The signature is that of ISO 32000-2, 12.8 (ETSI EN 319 142-1, PAdES baseline B), made by pyHanko.
It takes no room on any page, and is added after the file as it was sealed. It says when it was
made, so it is the one thing printed of which the bytes differ from time to time.
"""

from __future__ import annotations

import io
import logging
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from buildplan.language.messages import message
from buildplan.language.told import ToldError
from buildplan.source.bounded import bytes_within

FIELD = "Seller"
MOST_BYTES = 1024 * 1024


@dataclass(frozen=True)
class Signature:
    """Whose name a signature has, and whether it fits the whole file as it is."""

    name: str
    holds: bool


class NoSignerError(ToldError):
    """The file holds no certificate with its key, or the password does not open it."""

    def __init__(self, called: str) -> None:
        super().__init__(
            message(
                "{file} holds no certificate with its key (PKCS #12), or the password is another",
                file=called,
            )
        )


@dataclass(frozen=True)
class Signer:
    """The key and certificate of a PKCS #12 file (RFC 7292), read and opened; `called` is what its
    user calls the file, where that is not its path."""

    file: Path
    password: str
    called: str = ""

    def signed(self, pdf: bytes) -> bytes:
        """The file with a signature after it. Raises NoSignerError, and OSError."""
        from pyhanko.pdf_utils.incremental_writer import IncrementalPdfFileWriter
        from pyhanko.sign import signers

        signer = self._opened()
        out = io.BytesIO()
        meta = signers.PdfSignatureMetadata(field_name=FIELD)
        signers.sign_pdf(IncrementalPdfFileWriter(io.BytesIO(pdf)), meta, signer=signer, output=out)
        return out.getvalue()

    def check(self) -> None:
        """Raises NoSignerError where the file cannot be used to sign, and OSError."""
        self._opened()

    def _opened(self) -> Any:
        from pyhanko.sign import signers

        data = bytes_within(self.file, MOST_BYTES)
        try:
            load: Any = signers.SimpleSigner.load_pkcs12_data
            found = load(data, other_certs=set(), passphrase=self.password.encode())
        except Exception as error:  # files of many kinds are called .p12
            raise NoSignerError(self.called or str(self.file)) from error
        if found is None or found.signing_cert is None:
            raise NoSignerError(self.called or str(self.file))
        return found


def signatures_in(pdf: bytes) -> tuple[Signature, ...]:
    """The signatures of a PDF, judged against all of it but not against any list of whom to
    trust. One that cannot be read does not hold."""
    from pyhanko.pdf_utils.reader import PdfFileReader
    from pyhanko.sign.validation import validate_pdf_signature
    from pyhanko.sign.validation.status import SignatureCoverageLevel
    from pyhanko_certvalidator import ValidationContext

    logging.getLogger("pyhanko").addHandler(logging.NullHandler())  # what it says is told by us
    try:
        reader = PdfFileReader(io.BytesIO(pdf))
        fields = [field.get_object() for field in reader.root["/AcroForm"]["/Fields"]]
        embedded = reader.embedded_signatures
    except Exception:  # noqa: BLE001 - it raises errors of many kinds on broken ones
        return (Signature("", holds=False),)
    # those of a kind that it does not know it passes over
    unknown = sum("/V" in field for field in fields) - len(embedded)
    found = [Signature("", holds=False)] * max(0, unknown)
    for one in embedded:
        try:
            # whom to trust is the reader's to say: here its own certificate will do
            known = ValidationContext(trust_roots=[one.signer_cert])
            status = validate_pdf_signature(one, known)
            whole = status.coverage == SignatureCoverageLevel.ENTIRE_FILE
            name = str(one.signer_cert.subject.native.get("common_name", ""))
            found.append(Signature(name, status.intact and status.valid and whole))
        except Exception:  # noqa: BLE001 - it raises errors of many kinds on broken ones
            found.append(Signature("", holds=False))
    return tuple(found)
