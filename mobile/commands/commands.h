#pragma once

// The commands of `kneerail`. Each adds itself to the command line; the one that was chosen leaves
// what it does in `chosen`.

#include <functional>
#include <string>

#include "mobile/commands/console.h"
#include "mobile/demo/photographs.h"

namespace CLI {
class App;
}

namespace kneerail::commands {

using Chosen = std::function<Exit(Console&)>;

struct OpenOptions {
  std::string folder;
};
/// Shows the screens; given by the program that has them.
using Opener = std::function<Exit(const OpenOptions&, Console&)>;

void add_import(CLI::App& app, Chosen& chosen);
void add_forecast(CLI::App& app, Chosen& chosen);
void add_order(CLI::App& app, Chosen& chosen);
void add_spares(CLI::App& app, Chosen& chosen);
void add_cost(CLI::App& app, Chosen& chosen);
void add_visits(CLI::App& app, Chosen& chosen);
void add_export(CLI::App& app, Chosen& chosen);
void add_verify(CLI::App& app, Chosen& chosen);
void add_rebuild(CLI::App& app, Chosen& chosen);
void add_demo(CLI::App& app, Chosen& chosen, demo::DrawPhotograph draw);
void add_help(CLI::App& app, Chosen& chosen);
void add_open(CLI::App& app, Chosen& chosen, Opener opener);

/// Reads the command line and runs what it asks for; returns the exit code. Without an opener there
/// is no command `open`.
/// Without something to draw with the demo's findings have no photographs.
int run(int argc, const char* const* argv, Console& console, const Opener& opener = {},
        const demo::DrawPhotograph& draw = {});

}  // namespace kneerail::commands
