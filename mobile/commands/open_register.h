#pragma once

#include <memory>
#include <string>

#include "core/base/result.h"
#include "mobile/commands/console.h"
#include "schema/store/register.h"

namespace CLI {
class App;
}

namespace kneerail::commands {

/// Adds the option that every command on a register has: --data DIR, the register's folder.
void add_data_option(CLI::App& command, std::string& folder);

/// Opens the register and tells what was found and mended on opening.
Result<std::unique_ptr<Register>> open_register(const Register::Options& options, Console& console);

/// What is written for a person goes elsewhere than into the register's own folder, by whatever
/// path it is named. Errors: invalid_input.
Result<> check_outside(const std::string& target, const std::string& folder);

}  // namespace kneerail::commands
