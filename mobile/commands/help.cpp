#include <CLI/CLI.hpp>

#include "mobile/commands/commands.h"

namespace kneerail::commands {

void add_help(CLI::App& app, Chosen& chosen) {
  CLI::App* command = app.add_subcommand("help", "What a command does and how it is called");
  auto name = std::make_shared<std::string>();
  command->add_option("COMMAND", *name, "import, forecast, export, verify, rebuild or demo");
  command->callback([&app, &chosen, name] {
    chosen = [&app, name](Console& console) {
      if (name->empty()) {
        console.out << app.help("", CLI::AppFormatMode::Normal);
        return Exit::done;
      }
      const auto asked =
          app.get_subcommands([&](const CLI::App* one) { return one->check_name(*name); });
      if (asked.empty()) {
        console.err << "There is no command '" << *name
                    << "'. `kneerail help` lists the commands.\n";
        return Exit::misuse;
      }
      console.out << asked.front()->help();
      return Exit::done;
    };
  });
}

}  // namespace kneerail::commands
