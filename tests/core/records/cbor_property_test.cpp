// Random values come back byte for byte; random bytes are refused or come back too; and what is
// accepted here another reader accepts with the same meaning.

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "core/base/text.h"
#include "core/base/world.h"
#include "core/records/cbor.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using namespace kneerail::cbor;

namespace {

constexpr std::uint64_t own_seed = 7'119;

std::int64_t number(SplitMix64& random) {
  const auto bits = static_cast<unsigned>(random.between(0, 62));
  const auto value = static_cast<std::int64_t>(random.next() >> 1U) >> (62 - bits);
  return random.between(0, 1) == 0 ? value : -1 - value;
}

std::string text(SplitMix64& random) {
  static constexpr const char* parts[] = {"a",  "post",      "\xC3\xBC", "\xE6\xB0\xB4",
                                          "\n", "0123456789"};
  std::string words;
  for (std::int64_t i = random.between(0, 8); i > 0; --i) words += parts[random.between(0, 5)];
  return words;
}

Value value(SplitMix64& random, int depth) {
  switch (random.between(0, depth < depth_max ? 5 : 3)) {
    case 0:
      return number(random);
    case 1:
      return random.between(0, 1) == 1;
    case 2:
      return text(random);
    case 3: {
      Bytes bytes(static_cast<std::size_t>(random.between(0, 300)));
      random.fill(bytes);
      return bytes;
    }
    case 4: {
      Array items;
      for (std::int64_t i = random.between(0, 5); i > 0; --i)
        items.push_back(value(random, depth + 1));
      return items;
    }
    default: {
      Map map;
      for (std::int64_t i = random.between(0, 5); i > 0; --i) {
        Value key = random.between(0, 2) == 0 ? Value(text(random)) : Value(number(random));
        map.set(std::move(key), value(random, depth + 1));
      }
      return map;
    }
  }
}

bool same(const Value& ours, const nlohmann::json& theirs) {
  if (ours.number() != nullptr)
    return theirs.is_number_integer() && theirs.get<std::int64_t>() == *ours.number();
  if (ours.truth() != nullptr) return theirs.is_boolean() && theirs.get<bool>() == *ours.truth();
  if (ours.text() != nullptr)
    return theirs.is_string() && theirs.get<std::string>() == *ours.text();
  if (ours.bytes() != nullptr)
    return theirs.is_binary() && static_cast<const Bytes&>(theirs.get_binary()) == *ours.bytes();
  if (const auto* items = ours.array()) {
    if (!theirs.is_array() || theirs.size() != items->size()) return false;
    for (std::size_t i = 0; i < items->size(); ++i)
      if (!same((*items)[i], theirs[i])) return false;
    return true;
  }
  const auto& pairs = ours.map()->pairs();
  if (!theirs.is_object() || theirs.size() != pairs.size()) return false;
  for (const auto& [key, one] : pairs) {
    if (!theirs.contains(*key.text()) || !same(one, theirs[*key.text()])) return false;
  }
  return true;
}

/// The other reader takes text keys only.
bool only_text_keys(const Value& any) {
  if (const auto* items = any.array()) {
    for (const Value& item : *items)
      if (!only_text_keys(item)) return false;
  }
  if (any.map() == nullptr) return true;
  for (const auto& [key, one] : any.map()->pairs())
    if (key.text() == nullptr || !only_text_keys(one)) return false;
  return true;
}

void judge(const Value& ours, const Bytes& bytes, int& judged) {
  if (!only_text_keys(ours)) return;
  const auto theirs = nlohmann::json::from_cbor(bytes, true, false);
  CHECK(same(ours, theirs));
  ++judged;
}

}  // namespace

TEST_CASE("random values come back byte for byte, and another reader agrees", "[core][property]") {
  const std::uint64_t seed = test::seed_or(own_seed);
  INFO(test::reproduce(seed));
  SplitMix64 random(seed);
  int judged = 0;
  for (int round = 0; round < 1'000; ++round) {
    const Value any = value(random, 0);
    const Bytes bytes = encode(any);
    const auto back = decode(bytes);
    REQUIRE(back);
    CHECK(*back == any);
    CHECK(encode(*back) == bytes);
    judge(any, bytes, judged);
  }
  CHECK(judged > 100);
}

TEST_CASE("random bytes are refused or come back as they were", "[core][property]") {
  const std::uint64_t seed = test::seed_or(own_seed);
  INFO(test::reproduce(seed));
  SplitMix64 random(seed);
  int accepted = 0;
  int judged = 0;
  for (int round = 0; round < 20'000; ++round) {
    Bytes bytes(static_cast<std::size_t>(random.between(1, 12)));
    random.fill(bytes);
    const auto any = decode(bytes);
    if (!any) continue;
    ++accepted;
    CHECK(encode(*any) == bytes);
    judge(*any, bytes, judged);
  }
  CHECK(accepted > 100);
  CHECK(judged > 100);
}

TEST_CASE("a value with one byte changed is refused or comes back as it is", "[core][property]") {
  const std::uint64_t seed = test::seed_or(own_seed);
  INFO(test::reproduce(seed));
  SplitMix64 random(seed);
  for (int round = 0; round < 1'000; ++round) {
    Bytes bytes = encode(value(random, 0));
    const auto at =
        static_cast<std::size_t>(random.between(0, static_cast<std::int64_t>(bytes.size()) - 1));
    bytes[at] = static_cast<std::uint8_t>(random.next());
    const auto any = decode(bytes);
    if (any) CHECK(encode(*any) == bytes);
  }
}
