#include "core/records/cbor_reader.h"

#include <algorithm>
#include <limits>
#include <utility>

#include "core/base/text.h"

namespace kneerail::cbor {
namespace {

// Room made ahead of reading is bounded, so that a short text cannot claim much memory.
constexpr std::uint64_t reserved_max = 32;

}  // namespace

bool Reader::refuse(std::size_t place, const char* why) {
  wrong_at_ = place;
  why_ = why;
  return false;
}

Error Reader::error() const {
  return fail(Fault::corrupt, "Byte " + std::to_string(wrong_at_) + ": " +
                                  (why_ == nullptr ? "nothing is wrong here" : why_) + ".");
}

bool Reader::end() {
  return at_ == bytes_.size() || refuse(at_, "bytes are left over after the value");
}

bool Reader::head(int& major, std::uint64_t& argument) {
  item_ = at_;
  if (at_ == bytes_.size()) return refuse(at_, "the bytes end where a value should begin");
  const std::uint8_t first = bytes_[at_++];
  major = first >> 5U;
  const unsigned code = first & 0x1FU;
  if (code < 24) {
    argument = code;
    return true;
  }
  if (code == 31) return refuse(item_, "an indefinite length");
  if (code > 27) return refuse(item_, "a reserved length code");
  if (major == 7) return refuse(item_, "a float, null, undefined or other simple value");
  const std::size_t more = std::size_t{1} << (code - 24);
  if (bytes_.size() - at_ < more) return refuse(item_, "the bytes end inside a number or length");
  argument = 0;
  for (std::size_t i = 0; i < more; ++i) argument = (argument << 8U) | bytes_[at_++];
  const std::uint64_t least = more == 1 ? 24 : std::uint64_t{1} << (4 * more);
  return argument >= least || refuse(item_, "a number or length not written in its shortest form");
}

bool Reader::length_fits(std::uint64_t length, std::uint64_t bytes_each, const char* why) {
  return length <= (bytes_.size() - at_) / bytes_each || refuse(item_, why);
}

bool Reader::integer(int major, std::uint64_t argument, std::int64_t& out) {
  if (argument > static_cast<std::uint64_t>(std::numeric_limits<std::int64_t>::max()))
    return refuse(item_, "a whole number beyond 63 bits");
  const auto size = static_cast<std::int64_t>(argument);
  out = major == 0 ? size : -1 - size;
  return true;
}

bool Reader::text(std::uint64_t length, std::string& out) {
  if (!length_fits(length, 1, "a text longer than what is left")) return false;
  const auto part = bytes_.subspan(at_, static_cast<std::size_t>(length));
  out.assign(part.begin(), part.end());
  if (!is_utf8(out)) return refuse(item_, "a text that is not UTF-8");
  at_ += part.size();
  return true;
}

bool Reader::array_items(std::uint64_t count, Array& out, int depth) {
  if (depth >= depth_max) return refuse(item_, "more than eight levels deep");
  if (!length_fits(count, 1, "an array longer than what is left")) return false;
  out.reserve(static_cast<std::size_t>(std::min(count, reserved_max)));
  for (std::uint64_t i = 0; i < count; ++i) {
    if (!value_at(out.emplace_back(), depth + 1)) return false;
  }
  return true;
}

bool Reader::key(Value& out) {
  int major = 0;
  std::uint64_t argument = 0;
  if (!head(major, argument)) return false;
  if (major == 3) {
    std::string words;
    if (!text(argument, words)) return false;
    out = Value(std::move(words));
    return true;
  }
  std::int64_t whole = 0;
  if (major > 1) return refuse(item_, "a map key that is neither a whole number nor text");
  if (!integer(major, argument, whole)) return false;
  out = Value(whole);
  return true;
}

bool Reader::map_pairs(std::uint64_t count, Map& out, int depth) {
  if (depth >= depth_max) return refuse(item_, "more than eight levels deep");
  if (!length_fits(count, 2, "a map longer than what is left")) return false;
  std::vector<Map::Pair> pairs;
  pairs.reserve(static_cast<std::size_t>(std::min(count, reserved_max)));
  for (std::uint64_t i = 0; i < count; ++i) {
    auto& [name, one] = pairs.emplace_back();
    if (!key(name)) return false;
    if (i > 0 && !key_before(pairs[pairs.size() - 2].first, name))
      return refuse(item_, "a map key out of order, or there twice");
    if (!value_at(one, depth + 1)) return false;
  }
  out = Map::from_sorted(std::move(pairs));
  return true;
}

bool Reader::value_at(Value& out, int depth) {
  int major = 0;
  std::uint64_t argument = 0;
  if (!head(major, argument)) return false;
  switch (major) {
    case 0:
    case 1: {
      std::int64_t whole = 0;
      if (!integer(major, argument, whole)) return false;
      out = Value(whole);
      return true;
    }
    case 2: {
      if (!length_fits(argument, 1, "bytes longer than what is left")) return false;
      const auto part = bytes_.subspan(at_, static_cast<std::size_t>(argument));
      at_ += part.size();
      out = Value(Bytes(part.begin(), part.end()));
      return true;
    }
    case 3: {
      std::string words;
      if (!text(argument, words)) return false;
      out = Value(std::move(words));
      return true;
    }
    case 4: {
      Array items;
      if (!array_items(argument, items, depth)) return false;
      out = Value(std::move(items));
      return true;
    }
    case 5: {
      Map map;
      if (!map_pairs(argument, map, depth)) return false;
      out = Value(std::move(map));
      return true;
    }
    case 6:
      return refuse(item_, "a tag");
    default:
      break;
  }
  if (argument != 20 && argument != 21)
    return refuse(item_, "a float, null, undefined or other simple value");
  out = Value(argument == 21);
  return true;
}

bool Reader::array_of(std::size_t count) {
  int major = 0;
  std::uint64_t argument = 0;
  if (!head(major, argument)) return false;
  return (major == 4 && argument == count) || refuse(item_, "not an array of the right length");
}

bool Reader::number(std::int64_t& out, std::int64_t least, std::int64_t greatest) {
  int major = 0;
  std::uint64_t argument = 0;
  if (!head(major, argument)) return false;
  if (major > 1) return refuse(item_, "not a whole number");
  if (!integer(major, argument, out)) return false;
  return (out >= least && out <= greatest) || refuse(item_, "a number out of its range");
}

bool Reader::id(Uuid& out) {
  int major = 0;
  std::uint64_t argument = 0;
  if (!head(major, argument)) return false;
  if (major != 2 || argument != 16) return refuse(item_, "not sixteen bytes");
  if (!length_fits(argument, 1, "bytes longer than what is left")) return false;
  const auto part = bytes_.subspan(at_, 16);
  std::copy(part.begin(), part.end(), out.bytes.begin());
  at_ += 16;
  return true;
}

bool Reader::map(Map& out, int depth) {
  int major = 0;
  std::uint64_t argument = 0;
  if (!head(major, argument)) return false;
  if (major != 5) return refuse(item_, "not a map");
  return map_pairs(argument, out, depth);
}

}  // namespace kneerail::cbor
