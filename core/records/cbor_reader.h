#pragma once

// Reads canonical CBOR from front to back. A record's envelope is read straight into its struct
// with it, without a value in between; decode() reads everything else.

#include <cstdint>
#include <span>
#include <string>

#include "core/base/id.h"
#include "core/base/result.h"
#include "core/records/cbor.h"

namespace kneerail::cbor {

/// Each call reads one thing and returns whether it was there and canonical; after the first
/// false, error() says at which byte and why, and nothing more may be read.
class Reader {
 public:
  explicit Reader(std::span<const std::uint8_t> bytes) : bytes_(bytes) {}

  bool value(Value& out) { return value_at(out, 0); }
  /// The head of an array of just so many; its items are read one by one after it.
  bool array_of(std::size_t count);
  /// A whole number in [least, greatest].
  bool number(std::int64_t& out, std::int64_t least, std::int64_t greatest);
  /// Sixteen bytes.
  bool id(Uuid& out);
  /// A map at a depth: 0 when nothing is around it.
  bool map(Map& out, int depth);
  /// Whether all bytes are used up.
  bool end();

  /// Where the next byte would be read.
  [[nodiscard]] std::size_t place() const { return at_; }
  [[nodiscard]] Error error() const;

 private:
  bool refuse(std::size_t place, const char* why);
  bool head(int& major, std::uint64_t& argument);
  bool length_fits(std::uint64_t length, std::uint64_t bytes_each, const char* why);
  bool value_at(Value& out, int depth);
  bool key(Value& out);
  bool integer(int major, std::uint64_t argument, std::int64_t& out);
  bool text(std::uint64_t length, std::string& out);
  bool array_items(std::uint64_t count, Array& out, int depth);
  bool map_pairs(std::uint64_t count, Map& out, int depth);

  std::span<const std::uint8_t> bytes_;
  std::size_t at_ = 0;
  std::size_t item_ = 0;  ///< where the head read last began
  std::size_t wrong_at_ = 0;
  const char* why_ = nullptr;
};

}  // namespace kneerail::cbor
