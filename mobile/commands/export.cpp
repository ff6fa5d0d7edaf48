#include "schema/exchange/portfolio_export.h"

#include <CLI/CLI.hpp>

#include "mobile/commands/commands.h"
#include "mobile/commands/open_register.h"
#include "schema/exchange/register_csv.h"

namespace kneerail::commands {

namespace {

struct ExportCommand {
  std::string folder;
  std::string data;
  bool things = false;  ///< the register's own things, not readings
};

Result<std::vector<exchange::FileCount>> export_readings(const ExportCommand& command,
                                                         Database& tables, Console& console) {
  Progress progress(console, "Exported");
  return exchange::export_portfolio(
      tables, {.folder = command.folder,
               .as_of = std::nullopt,
               .sites = {},
               .progress = [&](std::int64_t done, std::int64_t all, std::string_view) {
                 return progress(done, all);
               }});
}

Exit export_folder(const ExportCommand& command, Console& console) {
  auto opened = open_register({.folder = command.data, .mode = Mode::read}, console);
  if (!opened) return report(opened.error(), console);
  if (const auto ok = check_outside(command.folder, command.data); !ok)
    return report(ok.error(), console);
  const auto written = command.things
                           ? exchange::export_register((*opened)->tables(), command.folder)
                           : export_readings(command, (*opened)->tables(), console);
  if (!written) return report(written.error(), console);
  console.out << "Exported " << command.data << " to " << command.folder << ":\n";
  for (const exchange::FileCount& file : *written) {
    console.out << "  " << file.file << ": " << counted(file.rows_read, "row", "rows") << "\n";
  }
  return Exit::done;
}

}  // namespace

void add_export(CLI::App& app, Chosen& chosen) {
  CLI::App* command =
      app.add_subcommand("export", "Write the readings of a register as a folder of CSV files");
  auto asked = std::make_shared<ExportCommand>();
  command->add_option("FOLDER", asked->folder, "Where the files go; made if it is not there")
      ->required();
  add_data_option(*command, asked->data);
  command->add_flag("--register", asked->things,
                    "Sites, runs, posts and parts (sites.csv ...) in place of readings");
  command->footer("The folder can be imported again: it gives the same tables in a new register.");
  command->callback([&chosen, asked] {
    chosen = [asked](Console& console) { return export_folder(*asked, console); };
  });
}

}  // namespace kneerail::commands
