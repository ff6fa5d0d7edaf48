#include <CLI/CLI.hpp>

#include "mobile/commands/commands.h"
#include "mobile/commands/open_register.h"

namespace kneerail::commands {

namespace {

Exit rebuild(const std::string& folder, Console& console) {
  auto opened = open_register({.folder = folder, .mode = Mode::write}, console);
  if (!opened) return report(opened.error(), console);
  Progress progress(console, "Folded");
  const auto folded =
      (*opened)->rebuild([&](std::int64_t done, std::int64_t all) { return progress(done, all); });
  progress.clear();
  if (!folded) return report(folded.error(), console);
  console.out << "The tables were made again from " << counted(*folded, "record", "records")
              << ". No record was touched.\n";
  const std::int64_t missing = (*opened)->opening().records_missing;
  if (missing == 0) return Exit::done;
  console.out << counted(missing, "record is", "records are")
              << " missing: neither the damaged file nor the second copy held what could be read. "
                 "The damaged file was set aside.\n";
  return Exit::findings;
}

}  // namespace

void add_rebuild(CLI::App& app, Chosen& chosen) {
  CLI::App* command =
      app.add_subcommand("rebuild",
                         "Drop the tables of a register and make them again from its "
                         "records");
  auto folder = std::make_shared<std::string>();
  add_data_option(*command, *folder);
  command->footer("Records are never touched. Stopped with Ctrl-C, the old tables stay.");
  command->callback([&chosen, folder] {
    chosen = [folder](Console& console) { return rebuild(*folder, console); };
  });
}

}  // namespace kneerail::commands
