#include <CLI/CLI.hpp>

#include "mobile/commands/commands.h"
#include "mobile/commands/open_register.h"

namespace kneerail::commands {

namespace {

Exit verify(const std::string& folder, Console& console) {
  auto opened = open_register({.folder = folder, .mode = Mode::read}, console);
  if (!opened) return report(opened.error(), console);
  Progress progress(console, "Checked");
  const auto checked =
      (*opened)->verify([&](std::int64_t done, std::int64_t all) { return progress(done, all); });
  progress.clear();
  if (!checked) return report(checked.error(), console);
  const bool objects = checked->objects > 0;
  std::string what = counted(checked->records, "record", "records") + " in " +
                     counted(checked->chains, "chain", "chains");
  if (objects) what += " and " + counted(checked->objects, "object", "objects");
  if (checked->problems.empty()) {
    console.out << what << ": whole. File, chains, second copy"
                << (objects ? ", tables and objects" : " and tables") << " agree.\n";
    return Exit::done;
  }
  console.out << what << ": not whole.\n";
  for (const std::string& problem : checked->problems) console.out << "  " << problem << "\n";
  return Exit::findings;
}

}  // namespace

void add_verify(CLI::App& app, Chosen& chosen) {
  CLI::App* command = app.add_subcommand("verify",
                                         "Check a register: file, chains, seals, second copy, "
                                         "tables against the records, photographs");
  auto folder = std::make_shared<std::string>();
  add_data_option(*command, *folder);
  command->footer("Nothing is changed. Exit code 1 when something is not whole.");
  command->callback([&chosen, folder] {
    chosen = [folder](Console& console) { return verify(*folder, console); };
  });
}

}  // namespace kneerail::commands
