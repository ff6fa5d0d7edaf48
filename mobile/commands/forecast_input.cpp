#include "mobile/commands/forecast_input.h"

#include <unistd.h>

#include <CLI/CLI.hpp>
#include <filesystem>
#include <fstream>
#include <optional>
#include <utility>

#include "mobile/commands/open_register.h"
#include "schema/machine.h"
#include "schema/store/portfolio_store.h"

namespace kneerail::commands {

namespace {

/// Where a file is written until it is whole, so that what stood there is kept until then: beside
/// it, or beside what a link points to. A device or a pipe is written directly.
struct Target {
  std::filesystem::path file;
  std::filesystem::path beside;

  explicit Target(const std::string& name) : file(name), beside(name) {
    std::error_code failed;
    const auto status = std::filesystem::status(file, failed);
    if (std::filesystem::is_symlink(file, failed)) {
      auto real = std::filesystem::canonical(file, failed);
      if (failed) return;
      file = std::move(real);
    }
    if (std::filesystem::exists(status) && !std::filesystem::is_regular_file(status)) return;
    beside = file.string() + ".unfinished-" + std::to_string(::getpid());
  }

  /// False where it could not be put in place; nothing is left beside it then.
  [[nodiscard]] bool put(bool written) const {
    if (beside == file) return written;
    std::error_code failed;
    if (written) std::filesystem::rename(beside, file, failed);
    if (written && !failed) return true;
    std::filesystem::remove(beside, failed);
    return false;
  }
};

/// To a file, or to standard output for "-".
Exit write_to(const std::string& file, const PrintTo& print, Console& console) {
  if (file == "-") {
    const auto done = print(console.out);
    return done ? Exit::done : report(done.error(), console);
  }
  const Target target(file);
  std::ofstream out(target.beside, std::ios::binary);
  const auto done = print(out);
  out.close();
  if (!target.put(done && !out.fail())) {
    if (!done) return report(done.error(), console);
    return report(fail(Fault::io, "The forecast could not be written to " + file +
                                      ". Is the folder there and writable, and is there room? The "
                                      "register is as it was, and so is what stood there."),
                  console);
  }
  console.err << "Written to " << file << ".\n";
  return Exit::done;
}

}  // namespace

Result<std::string> site_of(const std::string& asked,
                            const std::map<std::string, std::string>& sites) {
  if (asked.empty()) return std::string();
  std::string known;
  for (const auto& [id, name] : sites) {
    if (asked == id || asked == name) return id;
    known += (known.empty() ? "" : ", ") + name;
  }
  return fail(Fault::not_found,
              "There is no site '" + asked + "' in this register. There is: " + known + ".");
}

Result<> check_outputs(const AskedForecast& asked) {
  if (asked.csv == "-" && asked.json == "-")
    return fail(Fault::invalid_input,
                "--csv - and --json - both ask for standard output. Give one of them a file.");
  std::vector<std::string> files = asked.written;
  files.insert(files.end(), {asked.csv, asked.json});
  for (const std::string& file : files) {
    if (file.empty() || file == "-") continue;
    if (auto ok = check_outside(file, asked.folder); !ok) return ok;
  }
  return Done{};
}

std::string why_no_date(const std::string& text) {
  return date_from_text(text) ? std::string() : "'" + text + "' is no date: write it as 2026-06-30";
}

void add_input_options(CLI::App& command, AskedForecast& asked) {
  add_data_option(command, asked.folder);
  command.add_option("--as-of", asked.as_of, "Forecast from this day on; today if not given")
      ->type_name("DATE")
      ->check(why_no_date);
}

void add_file_options(CLI::App& command, AskedForecast& asked, const std::string& rows) {
  command.add_option("--csv", asked.csv, rows)->type_name("FILE");
  command.add_option("--json", asked.json, "The same and more as JSON; - for standard output")
      ->type_name("FILE");
}

void add_output_options(CLI::App& command, AskedForecast& asked, const std::string& rows) {
  add_file_options(command, asked, rows);
  command.add_option("--site", asked.site, "Show this site only; all sites still teach it")
      ->type_name("NAME");
}

void add_threads_option(CLI::App& command, AskedForecast& asked) {
  command.add_option("--threads", asked.threads, "0: as many as the machine has")
      ->capture_default_str()
      ->check(CLI::Range(0, 256))
      ->type_name("N");
}

Result<ForecastInput> read_forecast_input(const AskedForecast& asked, Console& console,
                                          const ReadAlso& also) {
  auto opened = open_register({.folder = asked.folder, .mode = Mode::read}, console);
  if (!opened) return fail(opened.error());
  if (auto ok = check_outputs(asked); !ok) return fail(ok.error());
  Database& tables = (*opened)->tables();
  // Reckoning takes its time, and the register's log would grow meanwhile: all is read first.
  const auto snapshot = Snapshot::begin(tables);
  if (!snapshot) return fail(snapshot.error());
  ForecastInput input;
  auto places = read_places(tables);
  if (!places) return fail(places.error());
  input.places = std::move(*places);
  auto site = site_of(asked.site, input.places.sites);
  if (!site) return fail(site.error());
  input.site = std::move(*site);
  auto days = organisation_days(tables);
  if (!days) return fail(days.error());
  input.days = std::move(*days);
  const Date as_of = asked.as_of.empty() ? input.days.zone.day(MachineClock().now())
                                         : *date_from_text(asked.as_of);
  PortfolioQuestion question;
  question.readings = asked.readings;
  auto portfolio = read_portfolio(tables, as_of, question);
  if (!portfolio) return fail(portfolio.error());
  input.portfolio = std::move(*portfolio);
  if (also)
    if (auto done = also(tables, input); !done) return fail(done.error());
  return input;
}

Exit write_outputs(const AskedForecast& asked, Console& console, const PrintTo& text,
                   const PrintTo& csv, const PrintTo& json) {
  if (asked.csv.empty() && asked.json.empty()) {
    const auto done = text(console.out);
    return done ? Exit::done : report(done.error(), console);
  }
  if (!asked.csv.empty())
    if (const Exit ended = write_to(asked.csv, csv, console); ended != Exit::done) return ended;
  return asked.json.empty() ? Exit::done : write_to(asked.json, json, console);
}

}  // namespace kneerail::commands
