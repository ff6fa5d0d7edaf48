#include <CLI/CLI.hpp>
#include <memory>
#include <utility>

#include "mobile/commands/cautions.h"
#include "mobile/commands/commands.h"
#include "mobile/commands/open_register.h"

namespace kneerail::commands {

void add_open(CLI::App& app, Chosen& chosen, Opener opener) {
  CLI::App* command = app.add_subcommand("open", "Open the screens on a register");
  auto options = std::make_shared<OpenOptions>();
  add_data_option(*command, options->folder);
  command->footer(std::string(cautions()));
  command->callback([&chosen, options, opener = std::move(opener)] {
    chosen = [options, opener](Console& console) { return opener(*options, console); };
  });
}

}  // namespace kneerail::commands
