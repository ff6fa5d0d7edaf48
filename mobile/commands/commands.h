#pragma once

// The commands of `kneerail`. Each adds itself to the command line; the one that was chosen leaves
// what it does in `chosen`.

#include <functional>

#include "mobile/commands/console.h"

namespace CLI {
class App;
}

namespace kneerail::commands {

using Chosen = std::function<Exit(Console&)>;

void add_import(CLI::App& app, Chosen& chosen);
void add_forecast(CLI::App& app, Chosen& chosen);
void add_export(CLI::App& app, Chosen& chosen);
void add_verify(CLI::App& app, Chosen& chosen);
void add_rebuild(CLI::App& app, Chosen& chosen);
void add_demo(CLI::App& app, Chosen& chosen);
void add_help(CLI::App& app, Chosen& chosen);

/// Reads the command line and runs what it asks for; returns the exit code.
int run(int argc, const char* const* argv, Console& console);

}  // namespace kneerail::commands
