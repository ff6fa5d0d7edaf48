#include <CLI/CLI.hpp>
#include <utility>

#include "mobile/commands/cautions.h"
#include "mobile/commands/commands.h"
#include "mobile/commands/open_register.h"
#include "mobile/demo/skerrymouth.h"

namespace kneerail::commands {

namespace {

struct DemoOptions {
  std::string folder;
  std::uint64_t seed = demo::default_seed;
};

Exit make_demo(const DemoOptions& options, const demo::DrawPhotograph& draw, Console& console) {
  Progress progress(console, "Making Skerrymouth: records");
  const auto made =
      demo::make_skerrymouth({.folder = options.folder, .seed = options.seed, .draw = draw},
                             [&](std::int64_t done) { return progress(done, 0); });
  progress.clear();
  if (!made) return report(made.error(), console);
  console.out << "Skerrymouth is in " << options.folder << ": "
              << counted(made->sites, "site", "sites") << ", "
              << counted(made->posts, "post", "posts") << ", "
              << counted(made->fittings, "fitting", "fittings") << ", "
              << counted(made->parts, "part", "parts") << " in all, "
              << counted(made->visits, "visit", "visits") << ", "
              << counted(made->photographs, "photograph", "photographs") << ", "
              << counted(made->records, "record", "records") << ". Seed " << options.seed << ".\n"
              << (draw ? "" : "This program was built without what draws photographs.\n")
              << "Everything in it is invented. Its last day is " << to_text(demo::as_of())
              << ":\n  kneerail forecast --data " << options.folder << " --as-of "
              << to_text(demo::as_of()) << "\n";
  return Exit::done;
}

}  // namespace

void add_demo(CLI::App& app, Chosen& chosen, demo::DrawPhotograph draw) {
  CLI::App* command = app.add_subcommand(
      "demo", "Make the invented register of Skerrymouth, a harbour authority with four sites");
  auto options = std::make_shared<DemoOptions>();
  add_data_option(*command, options->folder);
  command->add_option("--seed", options->seed, "The same seed makes the same register")
      ->capture_default_str()
      ->type_name("N");
  command->footer(std::string(cautions()));
  command->callback([&chosen, options, draw = std::move(draw)] {
    chosen = [options, draw](Console& console) { return make_demo(*options, draw, console); };
  });
}

}  // namespace kneerail::commands
