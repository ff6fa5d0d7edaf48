// benchmark: how long the things take that a person waits for, each beside a peer measured in the
// same run.

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <cstdlib>
#include <iostream>

#include "tests/benchmark/section.h"

namespace {

using namespace kneerail;
using namespace kneerail::benchmark;

/// A folder of this run below the one named, removed at the end.
class RunFolder {
 public:
  explicit RunFolder(const std::filesystem::path& below) {
    std::string name = (below / "kneerail-benchmark-XXXXXX").string();
    if (::mkdtemp(name.data()) != nullptr) path_ = name;
  }
  RunFolder(const RunFolder&) = delete;
  RunFolder& operator=(const RunFolder&) = delete;
  ~RunFolder() {
    std::error_code ignored;
    if (!path_.empty()) std::filesystem::remove_all(path_, ignored);
  }
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

struct Section {
  const char* name;
  const char* what;
  Result<> (*measure)(const Plan&);
};
// The import comes first: a forked child starts with the memory its parent holds.
constexpr std::array sections{
    Section{"import", "import a folder of portfolio files", measure_import},
    Section{"save", "save one reading", measure_save},
    Section{"fold", "fold the journal again", measure_fold},
    Section{"forecast", "forecast the coating of a portfolio", measure_forecast},
    Section{"scale", "forecast the coating of ever more parts", measure_scale},
    Section{"grades", "forecast the condition grades of a portfolio", measure_grades},
    Section{"hidden", "fit grades as a hidden chain, beside R", measure_hidden},
};

int run(Plan plan, const std::vector<std::string>& wanted, const std::filesystem::path& below) {
  const RunFolder folder(below);
  if (folder.path().empty()) {
    std::cerr << "benchmark: no folder can be made in " << below.string() << ".\n";
    return 2;
  }
  plan.folder = folder.path();
  for (const auto& section : sections) {
    if (!wanted.empty() && std::ranges::find(wanted, section.name) == wanted.end()) continue;
    if (auto done = section.measure(plan); !done) {
      std::cerr << "benchmark " << section.name << ": " << done.error().message << "\n";
      return 1;
    }
  }
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app{"Measures what a person waits for, each figure beside a peer of the same run."};
  Plan plan;
  std::vector<std::string> wanted;
  std::string below = std::filesystem::temp_directory_path().string();
  std::vector<std::string> names;
  for (const auto& section : sections) names.emplace_back(section.name);
  app.add_option("sections", wanted, "which; all when none is named")->check(CLI::IsMember(names));
  app.add_option("--folder", below, "on the disk to be measured")->check(CLI::ExistingDirectory);
  app.add_option("--portfolio", plan.portfolio, "of portfolio files, whose grades `hidden` fits")
      ->check(CLI::ExistingDirectory);
  app.add_option("--seed", plan.seed, "of everything generated");
  app.add_option("--saves", plan.saves, "readings saved one by one")->check(CLI::PositiveNumber);
  app.add_option("--folded", plan.folded, "readings folded again")->check(CLI::PositiveNumber);
  app.add_option("--imported", plan.imported, "readings imported")->check(CLI::PositiveNumber);
  app.add_option("--parts", plan.parts, "parts forecast")->check(CLI::PositiveNumber);
  app.add_option("--scale-parts", plan.scale_parts, "parts of the largest portfolio of scale")
      ->check(CLI::Range(10'000, 10'000'000));
  app.add_option("--peer-parts", plan.peer_parts, "parts forecast beside R")
      ->check(CLI::PositiveNumber);
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? 0 : 2;
  }
  return run(plan, wanted, below);
}
