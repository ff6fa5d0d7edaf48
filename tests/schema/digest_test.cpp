#include "schema/digest.h"

#include <catch2/catch.hpp>
#include <string_view>
#include <vector>

#include "schema/journal/crc32c.h"

using namespace kneerail;

namespace {

std::vector<std::uint8_t> from_hex(std::string_view text) {
  std::vector<std::uint8_t> bytes;
  for (std::size_t i = 0; i + 1 < text.size(); i += 2) {
    bytes.push_back(
        static_cast<std::uint8_t>(std::stoi(std::string(text.substr(i, 2)), nullptr, 16)));
  }
  return bytes;
}

}  // namespace

TEST_CASE("SHA-256 equals the published vectors", "[schema][reference]") {
  // FIPS 180-4's example messages (NIST, "SHA256" example values).
  CHECK(to_hex(Sha256().add(std::string_view("abc")).finish()) ==
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  CHECK(to_hex(Sha256()
                   .add(std::string_view("abcdbcdecdefdefgefghfghighij"))
                   .add(std::string_view("hijkijkljklmklmnlmnomnopnopq"))
                   .finish()) ==
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  CHECK(to_hex(Sha256().finish()) ==
        "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST_CASE("a digest begins anew after it was taken", "[schema]") {
  Sha256 digest;
  const auto first = digest.add(std::string_view("abc")).finish();
  CHECK(digest.add(std::string_view("abc")).finish() == first);
  CHECK(Sha256().add(std::uint64_t{0x0102030405060708}).finish() ==
        sha256(std::vector<std::uint8_t>{1, 2, 3, 4, 5, 6, 7, 8}));
}

TEST_CASE("Ed25519 equals the published vectors", "[schema][reference]") {
  // RFC 8032, 7.1, TEST 2: a message of one byte.
  const auto secret = from_hex("4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb");
  const std::vector<std::uint8_t> message{0x72};
  const auto key = signing_key(std::span<const std::uint8_t, 32>(secret));
  CHECK(to_hex(key.shown) == "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c");
  auto signature = sign(key, message);
  CHECK(to_hex(signature) ==
        "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da"
        "085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00");
  CHECK(is_signed(key.shown, message, signature));
  const std::vector<std::uint8_t> other{0x73};
  CHECK_FALSE(is_signed(key.shown, other, signature));
  signature[5] ^= 1;
  CHECK_FALSE(is_signed(key.shown, message, signature));
}

TEST_CASE("CRC-32C equals the published vectors", "[schema][reference]") {
  // RFC 3720, B.4: 32 bytes of zeros, of ones, and counting up.
  std::vector<std::uint8_t> bytes(32, 0);
  CHECK(crc32c(bytes) == 0x8a9136aa);
  bytes.assign(32, 0xff);
  CHECK(crc32c(bytes) == 0x62a8ab43);
  for (std::size_t i = 0; i < bytes.size(); ++i) bytes[i] = static_cast<std::uint8_t>(i);
  CHECK(crc32c(bytes) == 0x46dd794e);
  // Not a multiple of eight bytes: the check value of the usual catalogues.
  const std::string_view digits = "123456789";
  CHECK(crc32c({reinterpret_cast<const std::uint8_t*>(digits.data()), digits.size()}) ==
        0xe3069283);
}
