#include "tests/benchmark/peer_r.h"

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <string>

#include "tests/support/made_grades.h"

namespace kneerail::benchmark {

bool msm_is_there() {
  if (std::system("Rscript -e 'library(msm)' >/dev/null 2>&1") == 0) return true;
  std::cout << "  R with msm is not installed: no peer\n";
  return false;
}

Result<> run_r(const std::filesystem::path& script, std::string_view text,
               std::initializer_list<std::filesystem::path> arguments) {
  std::ofstream(script) << text;
  std::string command = "Rscript '" + script.string() + "'";
  for (const auto& argument : arguments) command += " '" + argument.string() + "'";
  command += " >/dev/null 2>&1";
  if (std::system(command.c_str()) != 0)
    return fail(Fault::io, "R could not do " + script.filename().string() + ".");
  return Done{};
}

forecast::Portfolio graded_parts(std::uint64_t seed, int parts) {
  forecast::GradeRecipe recipe;
  recipe.seed = seed;
  recipe.zones = 5;
  recipe.parts = std::clamp(parts / 25, 1, 100);
  recipe.sites = std::max(1, parts / (recipe.zones * recipe.parts));
  recipe.graded = 0.7;
  return forecast::made_grades(recipe).portfolio;
}

}  // namespace kneerail::benchmark
