#include "mobile/commands/open_register.h"

#include <CLI/CLI.hpp>

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

}  // namespace kneerail::commands
