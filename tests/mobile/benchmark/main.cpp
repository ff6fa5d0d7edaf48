// screen-benchmark --data DIR [SECTION...]
// How long the screens take: start, walk, prepare, large, frames. DIR is a register that `kneerail
// demo` made; it is copied and left as it is.

#include <QCommandLineParser>
#include <QGuiApplication>
#include <QTemporaryDir>
#include <iostream>

#include "mobile/screens/before_start.h"
#include "mobile/theme/language.h"
#include "tests/mobile/benchmark/sections.h"

namespace {

using namespace kneerail;

Result<std::filesystem::path> copied(const std::string& data, const QTemporaryDir& below) {
  const std::filesystem::path copy = std::filesystem::path(below.path().toStdString()) / "register";
  std::error_code error;
  std::filesystem::copy(data, copy, std::filesystem::copy_options::recursive, error);
  if (error) {
    return fail(Fault::io, data + ": The register could not be copied: " + error.message() +
                               ". Nothing was measured.");
  }
  return copy;
}

Result<> measured(const QStringList& wanted, const std::filesystem::path& folder,
                  const benchmark::Times& times) {
  const auto asked = [&wanted](const char* name) {
    return wanted.isEmpty() || wanted.contains(QLatin1String(name));
  };
  // The walk comes before the start, which stands where the walker was.
  if (asked("walk") || asked("start")) {
    if (auto done = benchmark::measure_walk(folder, times); !done) return done;
  }
  if (asked("start")) {
    if (auto done = benchmark::measure_start(folder, times); !done) return done;
  }
  if (asked("prepare")) {
    if (auto done = benchmark::measure_prepare(folder, times); !done) return done;
  }
  if (asked("large")) {
    if (auto done = benchmark::measure_large(folder.parent_path(), times); !done) return done;
  }
  if (asked("frames")) benchmark::measure_frames(times.frames);
  return Done{};
}

}  // namespace

int main(int argc, char** argv) {
  before_start();  // as the program does
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM") && qEnvironmentVariableIsEmpty("DISPLAY"))
    qputenv("QT_QPA_PLATFORM", "offscreen");
  QGuiApplication app(argc, argv);
  install_language(app, kneerail::Language::english);
  QCommandLineParser line;
  line.setApplicationDescription("How long the screens take, beside peers of the same run.");
  line.addHelpOption();
  line.addOptions({{"data", "A register that `kneerail demo` made.", "DIR"},
                   {"frames", "Frames of each panned run.", "N", "600"},
                   {"quick",
                    "Each thing once or twice: whether it can be measured, not how long it "
                    "takes."},
                   {"empty", "Shows an empty window: the peer of the start."}});
  line.addPositionalArgument("section",
                             "start, walk, prepare, large or frames; all when none is named");
  line.process(app);
  if (line.isSet("empty")) return benchmark::show_empty_window();
  if (!line.isSet("data")) {
    std::cerr << "Which register? Name its folder with --data DIR.\n";
    return 2;
  }
  benchmark::Times times;
  if (line.isSet("quick")) times = {1, 1, 3, 10, 1000, false};
  if (line.isSet("frames")) times.frames = line.value("frames").toInt();
  const QTemporaryDir below;
  const auto folder = copied(line.value("data").toStdString(), below);
  const auto done = folder ? measured(line.positionalArguments(), *folder, times)
                           : Result<>(fail(folder.error()));
  if (!done) std::cerr << "screen-benchmark: " << done.error().message << "\n";
  return done ? 0 : 3;
}
