// The codec against RFC 8949, appendix A. The vectors are written from memory of that table.

#include "core/records/cbor.h"

#include <catch2/catch.hpp>
#include <string>

#include "core/base/crc32c.h"

using namespace kneerail;
using namespace kneerail::cbor;

namespace {

Bytes from_hex(std::string_view hex) {
  Bytes bytes;
  for (std::size_t i = 0; i + 1 < hex.size(); i += 2)
    bytes.push_back(
        static_cast<std::uint8_t>(std::stoi(std::string(hex.substr(i, 2)), nullptr, 16)));
  return bytes;
}

std::string why_refused(std::string_view hex) {
  const Bytes bytes = from_hex(hex);
  const auto value = decode(bytes);
  if (value) return "accepted";
  CHECK(value.error().fault == Fault::corrupt);
  return value.error().message;
}

}  // namespace

TEST_CASE("values of the subset are written as RFC 8949 appendix A prints them",
          "[core][reference]") {
  const std::vector<std::pair<Value, const char*>> rows = {
      {0, "00"},
      {1, "01"},
      {10, "0a"},
      {23, "17"},
      {24, "1818"},
      {25, "1819"},
      {100, "1864"},
      {1000, "1903e8"},
      {1'000'000, "1a000f4240"},
      {std::int64_t{1'000'000'000'000}, "1b000000e8d4a51000"},
      {-1, "20"},
      {-10, "29"},
      {-100, "3863"},
      {-1000, "3903e7"},
      {false, "f4"},
      {true, "f5"},
      {Bytes{}, "40"},
      {Bytes{1, 2, 3, 4}, "4401020304"},
      {"", "60"},
      {"a", "6161"},
      {"IETF", "6449455446"},
      {"\"\\", "62225c"},
      {"\xC3\xBC", "62c3bc"},
      {"\xE6\xB0\xB4", "63e6b0b4"},
      {"\xF0\x90\x85\x91", "64f0908591"},
      {Array{}, "80"},
      {Array{1, 2, 3}, "83010203"},
      {Array{1, Array{2, 3}, Array{4, 5}}, "8301820203820405"},
      {Map{}, "a0"},
      {Map{{1, 2}, {3, 4}}, "a201020304"},
      {Map{{"a", 1}, {"b", Array{2, 3}}}, "a26161016162820203"},
      {Array{"a", Map{{"b", "c"}}}, "826161a161626163"},
  };
  for (const auto& [value, hex] : rows) {
    INFO(hex);
    CHECK(encode(value) == from_hex(hex));
    const auto back = decode(from_hex(hex));
    REQUIRE(back);
    CHECK(*back == value);
  }
}

TEST_CASE("whatever could be written two ways is refused", "[core]") {
  CHECK(why_refused("1817").find("shortest") != std::string::npos);
  CHECK(why_refused("190017").find("shortest") != std::string::npos);
  CHECK(why_refused("1a0000ffff").find("shortest") != std::string::npos);
  CHECK(why_refused("1b00000000ffffffff").find("shortest") != std::string::npos);
  CHECK(why_refused("580101").find("shortest") != std::string::npos);
  CHECK(why_refused("9fff").find("indefinite") != std::string::npos);
  CHECK(why_refused("bfff").find("indefinite") != std::string::npos);
  CHECK(why_refused("5f42010243030405ff").find("indefinite") != std::string::npos);
  CHECK(why_refused("7f657374726561646d696e67ff").find("indefinite") != std::string::npos);
  CHECK(why_refused("a203040102").find("out of order") != std::string::npos);
  CHECK(why_refused("a201020102").find("twice") != std::string::npos);
  CHECK(why_refused("a2616201616102").find("out of order") != std::string::npos);
}

TEST_CASE("what records do not use is refused, with the byte", "[core]") {
  CHECK(why_refused("f90000").find("float") != std::string::npos);
  CHECK(why_refused("fa47c35000").find("float") != std::string::npos);
  CHECK(why_refused("fb3ff199999999999a").find("float") != std::string::npos);
  CHECK(why_refused("f6").find("null") != std::string::npos);
  CHECK(why_refused("f7").find("undefined") != std::string::npos);
  CHECK(why_refused("f0").find("simple") != std::string::npos);
  CHECK(why_refused("f8ff").find("simple") != std::string::npos);
  CHECK(why_refused("c11a514b67b0").find("tag") != std::string::npos);
  CHECK(why_refused("c249010000000000000000").find("tag") != std::string::npos);
  CHECK(why_refused("1bffffffffffffffff").find("63 bits") != std::string::npos);
  CHECK(why_refused("3bffffffffffffffff").find("63 bits") != std::string::npos);
  CHECK(why_refused("1c").find("reserved") != std::string::npos);
  CHECK(why_refused("a1f501").find("key") != std::string::npos);
  CHECK(why_refused("a1410101").find("key") != std::string::npos);
  CHECK(why_refused("62c328") == "Byte 0: a text that is not UTF-8.");
  CHECK(why_refused("8201f6").substr(0, 7) == "Byte 2:");
}

TEST_CASE("lengths are believed only as far as bytes are left", "[core]") {
  CHECK(why_refused("").find("end") != std::string::npos);
  CHECK(why_refused("19").find("end inside") != std::string::npos);
  CHECK(why_refused("430102").find("longer") != std::string::npos);
  CHECK(why_refused("5b7fffffffffffffff").find("longer") != std::string::npos);
  CHECK(why_refused("7affffffff").find("longer") != std::string::npos);
  CHECK(why_refused("9b7fffffffffffffff").find("longer") != std::string::npos);
  CHECK(why_refused("bb7fffffffffffffff").find("longer") != std::string::npos);
  CHECK(why_refused("0000") == "Byte 1: bytes are left over after the value.");
}

TEST_CASE("eight levels are read and nine refused", "[core]") {
  CHECK(why_refused("818181818181818100") == "accepted");
  CHECK(why_refused("81818181818181818100").find("eight levels") != std::string::npos);
}

TEST_CASE("a map keeps its keys in the order of their bytes", "[core]") {
  Map map;
  for (const Value& key : {Value("b"), Value(-1), Value("aa"), Value(1000), Value("a"), Value(24),
                           Value(-2), Value(0)})
    map.set(key, 1);
  map.set(24, 2);
  CHECK(encode(Value(map)) == from_hex("a8000118180219"
                                       "03e8012001210161610161620162616101"));
  REQUIRE(map.find(24) != nullptr);
  CHECK(*map.find(24)->number() == 2);
  REQUIRE(map.find(Value("aa")) != nullptr);
  CHECK(map.find(Value("ab")) == nullptr);
  map.erase(24);
  CHECK_FALSE(map.has(24));
}

TEST_CASE("CRC-32C equals its published check values", "[core][reference]") {
  // RFC 3720, appendix B.4; the first is the customary check value of the polynomial.
  const std::string digits = "123456789";
  const Bytes nine(digits.begin(), digits.end());
  CHECK(crc32c(nine) == 0xE3069283U);
  CHECK(crc32c(Bytes(32, 0x00)) == 0x8A9136AAU);
  CHECK(crc32c(Bytes(32, 0xFF)) == 0x62A8AB43U);
  CHECK(crc32c(std::span(nine).subspan(4), crc32c(std::span(nine).first(4))) == 0xE3069283U);
}
