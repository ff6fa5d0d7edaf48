#include "mobile/commands/open_register.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <filesystem>

#include "schema/store/organisation_days.h"

namespace kneerail::commands {

void add_data_option(CLI::App& command, std::string& folder) {
  command.add_option("--data", folder, "Folder of the register")->required()->type_name("DIR");
}

Result<std::unique_ptr<Register>> open_register(const Register::Options& options,
                                                Console& console) {
  auto opened = Register::open(options);
  if (!opened) {
    Error error = std::move(opened).error();
    if (error.fault == Fault::not_found) {
      error.message += " `kneerail import` and `kneerail demo` make one.";
    }
    return error;
  }
  for (const std::string& note : (*opened)->opening().notes) console.err << note << "\n";
  if (const auto days = organisation_days((*opened)->tables()); days && !days->trouble.empty()) {
    console.err << days->trouble << "\n";
  }
  return opened;
}

Result<> check_outside(const std::string& target, const std::string& folder) {
  namespace fs = std::filesystem;
  std::error_code unseen;
  const auto real = [&](const std::string& path) {
    auto found = fs::weakly_canonical(fs::absolute(path, unseen), unseen);
    return found.has_filename() ? found : found.parent_path();
  };
  const fs::path own = real(folder);
  const fs::path asked = real(target);
  const auto inside = std::mismatch(own.begin(), own.end(), asked.begin(), asked.end());
  if (own.empty() || inside.first != own.end()) return Done{};
  return fail(Fault::invalid_input,
              target + " is in the folder of the register, " + folder +
                  ", where only the register writes. Nothing was written; name another place.");
}

}  // namespace kneerail::commands
