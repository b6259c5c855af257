"""What `verify` says of every single change that a PDF can carry, of signatures, damaged files and
texts that would pass for its own words.

References: ISO 32000-1 (the keys that are changed); ISO 32000-2, 12.8, and RFC 5652 (the signature,
checked here by OpenSSL and by pyHanko's own validator against the certificate that made it).
"""

from __future__ import annotations

import random
import shutil
import subprocess
from functools import cache
from pathlib import Path
from typing import Any

import pikepdf
import pypdf
import pytest
from asn1crypto import core  # type: ignore[import-untyped]
from conftest import Call
from forgeries import SEEN, UNSEEN, meta, verdict
from forging import opened
from pyhanko.keys import load_cert_from_pemder
from pyhanko.pdf_utils.reader import PdfFileReader
from pyhanko.sign.validation import validate_pdf_signature
from pyhanko_certvalidator import ValidationContext
from raw_forgeries import SEEN_IN_BYTES, UNREAD_IN_BYTES, UNSEEN_IN_BYTES
from seldom_forged import SEEN_SELDOM, UNREAD
from sold_copies import BUYER, sold_book, sold_copy

from buildplan.booklet.editions import copy_of, print_booklet
from buildplan.business.copies.serial import NoSerialError, seal
from buildplan.business.copies.signing import NoSignerError, Signer
from buildplan.business.copies.verified_words import verified_lines
from buildplan.business.copies.verifying import DamagedFileError, Verdict, verify
from buildplan.language.shown import shown
from buildplan.language.voice import Voice

KEY = b"a key of the seller's own"
PASSWORD = "open, lamp"
PASSPHRASE = f"pass:{PASSWORD}"


@pytest.mark.parametrize("name", SEEN)
def test_what_changes_what_a_reader_sees_is_found(name: str) -> None:
    assert verdict(SEEN[name](sold_copy())) == Verdict.NOT_GOOD.value


@pytest.mark.parametrize(
    "name",
    [
        "programs of two fonts",
        "drawings exchanged",
        "order of the tags",
        "page behind a page",
        "title in the metadata alone",
        "title in another language",
        "publisher in the metadata",
        "buyer twice in the metadata",
        "the file's own word",
        "link that leads nowhere",
        "bookmark that leads nowhere",
        "note that calls itself signature",
        "stamp that calls itself signature",
        "signature made up",
    ],
)
def test_what_is_less_often_thought_of_is_found(name: str) -> None:
    assert verdict(SEEN_SELDOM[name](sold_copy())) == Verdict.NOT_GOOD.value


@pytest.mark.parametrize("name", SEEN_IN_BYTES)
def test_what_readers_take_from_elsewhere_is_found(name: str) -> None:
    assert verdict(SEEN_IN_BYTES[name](sold_copy())) == Verdict.NOT_GOOD.value


@pytest.mark.parametrize("name", UNREAD_IN_BYTES)
def test_what_readers_read_in_two_ways_is_not_judged(name: str) -> None:
    """ISO 32000-1: 7.3.7 (no key twice), 7.3.8 (a stream's length), 7.5.2 and annex H (where a file
    begins and ends), 7.7.3.2 (how many pages a tree has)."""
    assert verdict(UNREAD_IN_BYTES[name](sold_copy())) == "damaged"


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("table of objects lost", "is no PDF, or a damaged one"),
        ("opens with a password", "opens with a password: save it without one"),
        ("printed anew", "on its pages, but its seal is gone"),
    ],
)
def test_what_cannot_be_judged_is_told_as_it_is(
    name: str, said: str, call: Call, tmp_path: Path
) -> None:
    file = tmp_path / "copy.pdf"
    file.write_bytes(UNREAD[name](sold_copy()))
    status, out, told = call("verify", file)
    assert (status, out) == (2, "")
    assert said in told


@pytest.mark.parametrize("name", UNSEEN | UNSEEN_IN_BYTES)
def test_what_a_reader_sees_nothing_of_is_called_whole(name: str) -> None:
    assert verdict((UNSEEN | UNSEEN_IN_BYTES)[name](sold_copy())) == Verdict.WHOLE.value


def test_what_changed_beside_the_pages_is_named(tmp_path: Path) -> None:
    file = tmp_path / "copy.pdf"
    for name, said in (
        ("bookmark", "bookmarks"),
        ("attachment", "attachments"),
        ("title", "title"),
    ):
        file.write_bytes(SEEN[name](sold_copy()))
        lines = verified_lines(verify(file), Voice())
        assert any(line.startswith("Beside") and said in line for line in lines)


@cache
def keyed() -> bytes:
    return print_booklet(sold_book(), KEY)


def test_whether_a_key_sealed_it_is_told_as_it_is(tmp_path: Path) -> None:
    assert verdict(keyed(), KEY) == Verdict.GOOD.value
    assert verdict(keyed()) == Verdict.NEEDS_KEY.value
    assert verdict(keyed(), b"a key of somebody else's") == Verdict.NOT_GOOD.value
    assert verdict(sold_copy(), KEY) == Verdict.KEYLESS.value

    def sealed_again(pdf: pikepdf.Pdf) -> None:
        pdf.pages[3].contents_add(b" 0 0 80 80 re f", prepend=False)
        seal(pdf, copy_of(sold_book(), keyed=True), b"a key of somebody else's")

    assert verdict(opened(sealed_again)(keyed()), KEY) == Verdict.NOT_GOOD.value
    file = tmp_path / "copy.pdf"
    file.write_bytes(sold_copy())
    told = " ".join(verified_lines(verify(file), Voice()))
    assert "who made it is not proved" in told
    assert "This proves that no page" not in told


def test_what_a_file_says_of_itself_cannot_pass_for_a_verdict(tmp_path: Path) -> None:
    file = tmp_path / "copy.pdf"
    name = BUYER.replace("&", "\\n\\nGood.\\u202e")
    file.write_bytes(opened(meta("bpcopy:fields", BUYER, name))(sold_copy()))
    lines = verified_lines(verify(file), Voice())
    assert "Good." not in lines
    assert any("<U+000A><U+000A>Good.<U+202E>" in line for line in lines)
    assert lines[0].startswith("NOT GOOD")


def test_only_signs_that_are_not_seen_are_shown_by_number() -> None:
    """Unicode Standard Annex 9, section 2: the direction signs."""
    assert shown("a\u202eb\u2067\nc\u2028") == "a<U+202E>b<U+2067><U+000A>c<U+2028>"
    for plain in ("Zoë 5 × 3", "שָׁלוֹם", "نور\u200cها", "灯り", "naïve\u00adly"):
        assert shown(plain) == plain


def test_a_damaged_file_is_called_damaged_and_never_a_fault(tmp_path: Path) -> None:
    dice, data, ends = random.Random(17), sold_copy(), set()
    file = tmp_path / "copy.pdf"
    for number in range(40):
        broken = bytearray(data)
        if number % 4 == 0:
            del broken[dice.randrange(1, len(data)) :]
        for _ in range(dice.choice((1, 30, 1000))):
            broken[dice.randrange(len(broken))] = dice.randrange(256)
        file.write_bytes(bytes(broken))
        try:
            ends.add(verify(file).verdict.value)
        except (DamagedFileError, NoSerialError) as error:
            ends.add(type(error).__name__)
    assert Verdict.NOT_GOOD.value in ends
    assert "DamagedFileError" in ends or "NoSerialError" in ends


@pytest.fixture(scope="module")
def certificate(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    """A certificate of an invented seller, made by OpenSSL: as PKCS #12, and alone."""
    if shutil.which("openssl") is None:
        pytest.skip("no openssl here")
    folder = tmp_path_factory.mktemp("certificate")
    pem, key, p12 = (folder / name for name in ("cert.pem", "key.pem", "seller.p12"))
    made = "req -x509 -newkey rsa:2048 -nodes -days 3650 -addext keyUsage=digitalSignature"
    calls = (
        [*made.split(), "-subj", "/CN=Lantern Street (invented)", "-keyout", key, "-out", pem],
        ["pkcs12", "-export", "-in", pem, "-inkey", key, "-out", p12, "-passout", PASSPHRASE],
    )
    for call in calls:
        subprocess.run(["openssl", *map(str, call)], check=True, capture_output=True)
    return p12, pem


def test_a_signature_is_one_that_others_can_check(
    certificate: tuple[Path, Path], tmp_path: Path
) -> None:
    p12, pem = certificate
    data = Signer(p12, PASSWORD).signed(sold_copy())
    file = tmp_path / "copy.pdf"
    file.write_bytes(data)
    assert data.startswith(sold_copy())  # the sealed file is in it as it was

    load: Any = load_cert_from_pemder
    trusted = ValidationContext(trust_roots=[load(str(pem))])
    with file.open("rb") as stream:
        (signature,) = PdfFileReader(stream).embedded_signatures
        status = validate_pdf_signature(signature, trusted)
    assert status.bottom_line

    (field,) = pypdf.PdfReader(file).get_fields().values()  # type: ignore[union-attr]
    first, length, second, rest = field["/V"]["/ByteRange"]
    assert second + rest == len(data)
    (tmp_path / "signed").write_bytes(data[first:length] + data[second : second + rest])
    whole = bytes(field["/V"]["/Contents"].original_bytes)
    (tmp_path / "signature").write_bytes(core.Any.load(whole).dump())
    call = ["openssl", "cms", "-verify", "-binary", "-inform", "DER", "-purpose", "any"]
    call += ["-in", str(tmp_path / "signature"), "-content", str(tmp_path / "signed")]
    call += ["-CAfile", str(pem), "-out", str(tmp_path / "told")]
    subprocess.run(call, check=True, capture_output=True)

    found = verify(file)
    assert found.whole
    assert [one.name for one in found.signatures] == ["Lantern Street (invented)"]
    assert "Lantern Street" in " ".join(verified_lines(found, Voice()))


def test_a_broken_or_covered_signature_is_found(
    certificate: tuple[Path, Path], tmp_path: Path
) -> None:
    data = Signer(certificate[0], PASSWORD).signed(sold_copy())
    assert verdict(SEEN["revision appended"](data)) == Verdict.NOT_GOOD.value
    assert verdict(data.replace(b"/BPLN_Number 4", b"/BPLN_Number 5", 1)) == "not good"

    saved_again = tmp_path / "copy.pdf"
    saved_again.write_bytes(opened(lambda _: None)(data))
    first, *_, last = verified_lines(verify(saved_again), Voice())
    assert first.startswith("NOT GOOD: the signature does not hold. Pages")
    assert last.split()[:2] == ["Signed", "BROKEN:"]


def test_a_password_that_does_not_open_is_told(certificate: tuple[Path, Path]) -> None:
    with pytest.raises(NoSignerError):
        Signer(certificate[0], "another").check()
    with pytest.raises(NoSignerError):
        Signer(Path(__file__), PASSWORD).check()
