#include <CLI/CLI.hpp>
#include <filesystem>
#include <memory>
#include <set>
#include <vector>

#include "mobile/commands/commands.h"
#include "mobile/commands/open_register.h"
#include "schema/exchange/portfolio_import.h"
#include "schema/exchange/register_csv.h"
#include "schema/machine.h"
#include "schema/store/organisation_days.h"

namespace kneerail::commands {

namespace {

struct ImportCommand {
  std::string folder;
  std::string data;
  bool good_rows = false;
  bool things = false;  ///< the register's own things, not readings
};

constexpr std::size_t rows_named = 100;

void print_bad_rows(const exchange::BadRows& bad, std::ostream& out) {
  const std::size_t named = std::min(rows_named, bad.kept().size());
  for (std::size_t i = 0; i < named; ++i) out << "  " << exchange::to_text(bad.kept()[i]) << "\n";
  const std::int64_t more = bad.count() - static_cast<std::int64_t>(named);
  if (more > 0) out << "  and " << with_commas(more) << " more like these\n";
}

void print_files(const exchange::ImportReport& report, std::ostream& out) {
  for (const exchange::FileCount& file : report.files) {
    if (file.rows_read == 0) continue;
    out << "  " << file.file << ": " << counted(file.rows_read, "row", "rows");
    if (file.records_made > 0) {
      out << ", " << counted(file.records_made, "record made", "records made");
    }
    if (file.already_there > 0) out << ", " << with_commas(file.already_there) << " already there";
    if (file.corrected > 0) out << ", " << with_commas(file.corrected) << " corrected";
    if (file.left_out > 0) out << ", " << counted(file.left_out, "row left out", "rows left out");
    out << "\n";
  }
}

Exit tell(const ImportCommand& command, const exchange::ImportReport& report, Console& console) {
  std::ostream& out = console.out;
  if (report.imported) {
    out << "Imported " << command.folder << " into " << command.data << ": "
        << counted(report.records_made(), "record made", "records made") << ", "
        << with_commas(report.already_there()) << " already there";
    if (report.corrected() > 0) out << ", " << with_commas(report.corrected()) << " corrected";
    out << ".\n";
  } else {
    out << "Nothing was imported from " << command.folder << ": "
        << counted(report.bad.count(), "row is", "rows are") << " not as it should be. Mend "
        << (report.bad.count() == 1 ? "it" : "them")
        << ", or give --good-rows to import the rest.\n";
  }
  print_files(report, out);
  for (const std::string& note : report.notes) out << note << "\n";
  if (report.bad.none()) return Exit::done;
  out << (report.imported ? "Kept out until a person has answered:\n" : "What is wrong:\n");
  print_bad_rows(report.bad, out);
  return Exit::findings;
}

/// Counts of the parts of an import, each under its own words.
class ImportProgress {
 public:
  explicit ImportProgress(Console& console) : console_(console) {}

  bool operator()(std::int64_t done, std::int64_t all, std::string_view what) {
    if (!line_ || what != what_) {
      line_.reset();
      what_ = what;
      line_ = std::make_unique<Progress>(console_, what_);
    }
    return (*line_)(done, all);
  }

 private:
  Console& console_;
  std::string what_;
  std::unique_ptr<Progress> line_;
};

/// Takes a register that this import made away again when nothing came into it.
class MadeFolder {
 public:
  explicit MadeFolder(const std::filesystem::path& folder) : folder_(folder) {
    std::error_code unseen;
    was_there_ = std::filesystem::exists(folder, unseen);
    for (const auto& entry : std::filesystem::directory_iterator(folder, unseen))
      before_.insert(entry.path().filename());
  }

  /// Closes the register first. One that was there before, or has a record, stays.
  void discard_if_empty(std::unique_ptr<Register>& opened) const {
    const auto records = opened->tables().number("SELECT count(*) FROM journal");
    const bool was_a_register = before_.contains("records.db") || before_.contains("unsent.copy");
    if (was_a_register || !records || *records > 0) return;
    opened.reset();
    std::error_code ignored;
    if (!was_there_) {
      std::filesystem::remove_all(folder_, ignored);
      return;
    }
    std::vector<std::filesystem::path> made;
    for (const auto& entry : std::filesystem::directory_iterator(folder_, ignored))
      if (!before_.contains(entry.path().filename())) made.push_back(entry.path());
    for (const auto& path : made) std::filesystem::remove_all(path, ignored);
  }

 private:
  std::filesystem::path folder_;
  bool was_there_ = false;
  std::set<std::filesystem::path> before_;
};

Exit import_folder(const ImportCommand& command, Console& console) {
  if (!std::filesystem::is_directory(command.folder)) {
    return report(fail(Fault::not_found,
                       "There is no folder " + command.folder + " to import. Nothing was changed."),
                  console);
  }
  const MadeFolder made(command.data);
  auto opened = open_register({.folder = command.data, .mode = Mode::create}, console);
  if (!opened) return report(opened.error(), console);
  exchange::ImportOptions options;
  options.folder = command.folder;
  options.staging = std::filesystem::path(command.data) / "import-staging";
  options.good_rows = command.good_rows;
  if (const auto days = organisation_days((*opened)->tables()))
    options.today = days->zone.day(MachineClock().now());
  auto progress = std::make_shared<ImportProgress>(console);
  options.progress = [progress](std::int64_t done, std::int64_t all, std::string_view what) {
    return (*progress)(done, all, what);
  };
  const auto imported = command.things ? exchange::import_register(**opened, options)
                                       : exchange::import_portfolio(**opened, options);
  options.progress = {};
  progress.reset();
  const bool lost = (*opened)->opening().records_missing > 0;  // told on opening
  if (!imported || !imported->imported) made.discard_if_empty(*opened);
  if (!imported && imported.error().fault == Fault::cancelled) {
    console.err << "Stopped; what was imported is whole; run again to go on.\n";
    return Exit::findings;
  }
  if (!imported) return report(imported.error(), console);
  const Exit ended = tell(command, *imported, console);
  return ended == Exit::done && lost ? Exit::findings : ended;
}

}  // namespace

void add_import(CLI::App& app, Chosen& chosen) {
  CLI::App* command = app.add_subcommand(
      "import", "Bring a folder of portfolio files (CSV) into a register, made if there is none");
  auto options = std::make_shared<ImportCommand>();
  command->add_option("FOLDER", options->folder, "Folder with components.csv and the others")
      ->required();
  add_data_option(*command, options->data);
  command->add_flag("--good-rows", options->good_rows,
                    "Import what is good and list what was left out; else all rows must be good");
  command->add_flag("--register", options->things,
                    "The folder holds sites, runs, posts and parts (sites.csv ...), no readings");
  command->footer(
      "Files: portfolio.csv, components.csv, visits.csv, readings.csv, interventions.csv.\n"
      "Importing the same folder again changes nothing; what was mended in it is corrected.\n"
      "Ctrl-C stops between two records.\n"
      "Exit code 1 when rows were kept out.");
  command->callback([&chosen, options] {
    chosen = [options](Console& console) { return import_folder(*options, console); };
  });
}

}  // namespace kneerail::commands
