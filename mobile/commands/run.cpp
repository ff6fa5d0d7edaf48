#include <CLI/CLI.hpp>

#include "mobile/commands/cautions.h"
#include "mobile/commands/commands.h"

namespace kneerail::commands {

namespace {

constexpr const char* opening_words =
    "Kneerail keeps what inspectors of guard-rails enter, and says from repeated readings which\n"
    "parts go first, how sure that is, and why.";

int ended_by_the_command_line(const CLI::App& app, const CLI::ParseError& error, Console& console) {
  if (app.exit(error, console.out, console.err) == 0) return 0;  // help or version was asked for
  return static_cast<int>(Exit::misuse);
}

}  // namespace

int run(int argc, const char* const* argv, Console& console, const Opener& opener,
        const demo::DrawPhotograph& draw) {
  CLI::App app{opening_words, "kneerail"};
  app.set_version_flag("--version", "kneerail " KNEERAIL_VERSION);
  app.require_subcommand(0, 1);
  Chosen chosen;
  if (opener) add_open(app, chosen, opener);
  add_import(app, chosen);
  add_forecast(app, chosen);
  add_visits(app, chosen);
  add_order(app, chosen);
  add_spares(app, chosen);
  add_cost(app, chosen);
  add_export(app, chosen);
  add_verify(app, chosen);
  add_rebuild(app, chosen);
  add_demo(app, chosen, draw);
  add_help(app, chosen);
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return ended_by_the_command_line(app, error, console);
  }
  if (!chosen) {
    console.out << app.help() << "\n" << cautions();
    return static_cast<int>(Exit::misuse);
  }
  const Exit ended = chosen(console);
  console.out.flush();
  if (!console.out) {
    console.err << "The output could not be written: is the disk full, or was the pipe closed?\n";
    return static_cast<int>(Exit::machine);
  }
  return static_cast<int>(ended);
}

}  // namespace kneerail::commands
