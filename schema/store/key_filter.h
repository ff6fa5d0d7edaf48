#pragma once

// Which keys a set may hold: a Bloom filter of two bits a key. What it does not know is not in the
// set; of a million keys that are not there, it takes about one in 300 to be.

#include <array>
#include <cstdint>
#include <functional>
#include <string_view>
#include <vector>

namespace kneerail {

class KeyFilter {
 public:
  void add(std::string_view key) {
    for (const std::size_t bit : bits_of(key)) words_[bit / 64] |= std::uint64_t{1} << (bit % 64);
  }
  [[nodiscard]] bool may_hold(std::string_view key) const {
    for (const std::size_t bit : bits_of(key)) {
      if ((words_[bit / 64] >> (bit % 64) & 1) == 0) return false;
    }
    return true;
  }

 private:
  static constexpr int bits_log2 = 25;  // 4 MiB

  static std::array<std::size_t, 2> bits_of(std::string_view key) {
    constexpr std::size_t mask = (std::size_t{1} << bits_log2) - 1;
    const std::size_t hash = std::hash<std::string_view>{}(key);
    return {hash & mask, (hash >> 32) & mask};
  }

  std::vector<std::uint64_t> words_ = std::vector<std::uint64_t>(std::size_t{1} << (bits_log2 - 6));
};

}  // namespace kneerail
