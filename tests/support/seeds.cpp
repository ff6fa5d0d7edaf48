#define CATCH_CONFIG_EXTERNAL_INTERFACES  // for the listener below
#include "tests/support/seeds.h"

#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <numeric>
#include <optional>
#include <set>
#include <string_view>

#include "core/base/text.h"

namespace kneerail::test {

namespace {

constexpr std::string_view reproduce_word = "reproduce: ";

std::optional<std::uint64_t> named_seed() {
  const char* text = std::getenv("KNEERAIL_SEED");
  if (text == nullptr) return std::nullopt;
  const auto number = int_from_text(text);
  INFO("KNEERAIL_SEED is '" << text << "': it must be a whole number from 0");
  REQUIRE((number && *number >= 0));
  return static_cast<std::uint64_t>(*number);
}

/// A test's name as Catch2 takes it on a command line, in single quotes for the shell.
std::string asked_for(const std::string& name) {
  std::string text = "'";
  for (const char letter : name) {
    if (letter == ',' || letter == '[' || letter == '\\') text += '\\';
    text += letter == '\'' ? std::string("'\\''") : std::string(1, letter);
  }
  return text + "'";
}

/// Catch2 breaks messages at 80 letters; what is to be typed is printed once more in one piece, on
/// stderr, below the test that failed.
class Reproduce : public Catch::TestEventListenerBase {
 public:
  using TestEventListenerBase::TestEventListenerBase;

  bool assertionEnded(const Catch::AssertionStats& stats) override {
    if (stats.assertionResult.isOk()) return true;
    for (const Catch::MessageInfo& said : stats.infoMessages) {
      const std::string line = said.message.substr(0, said.message.find('\n'));
      if (line.starts_with(reproduce_word)) lines_.insert(line);
    }
    return true;
  }

  void testCaseEnded(const Catch::TestCaseStats&) override {
    for (const std::string& line : lines_) std::cerr << line << "\n";
    lines_.clear();
  }

 private:
  std::set<std::string> lines_;
};

CATCH_REGISTER_LISTENER(Reproduce)

}  // namespace

std::vector<std::uint64_t> seeds(std::uint64_t first, std::uint64_t last) {
  if (const auto named = named_seed()) return {*named};
  std::vector<std::uint64_t> all(last - first + 1);
  std::iota(all.begin(), all.end(), first);
  return all;
}

Catch::Generators::GeneratorWrapper<std::uint64_t> each_seed(std::uint64_t first,
                                                             std::uint64_t last) {
  return Catch::Generators::from_range(seeds(first, last));
}

std::uint64_t seed_or(std::uint64_t own) {
  return named_seed().value_or(own);
}

std::string reproduce(std::uint64_t seed) {
  std::error_code unknown;
  const auto program = std::filesystem::read_symlink("/proc/self/exe", unknown);
  return std::string(reproduce_word) + "KNEERAIL_SEED=" + std::to_string(seed) + " " +
         program.string() + " " + asked_for(Catch::getResultCapture().getCurrentTestName());
}

}  // namespace kneerail::test
