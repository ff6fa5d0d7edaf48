// The benchmark of the screens runs and says figures that can be.

#include <QProcess>
#include <QRegularExpression>

#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

QString said_by_benchmark(const QStringList& words) {
  QProcess program;
  QProcessEnvironment around = QProcessEnvironment::systemEnvironment();
  around.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
  program.setProcessEnvironment(around);
  program.start(KNEERAIL_BIN_DIR "/screen-benchmark", words);
  REQUIRE(program.waitForFinished(300'000));
  INFO(program.readAllStandardError().toStdString());
  REQUIRE(program.exitCode() == 0);
  return QString::fromUtf8(program.readAllStandardOutput());
}

/// Ours and the peer's of "  WHAT: 1.2 ms; PEER: 0.8 ms; ratio 1.50".
std::vector<double> figures_of(const QString& said, const QString& what) {
  const QRegularExpression line(
      QStringLiteral("^  ") + QRegularExpression::escape(what) +
          QStringLiteral(": ([0-9.]+) (?:ms|MB); .*: ([0-9.]+) (?:ms|MB); "
                         "ratio [0-9.]+$"),
      QRegularExpression::MultilineOption);
  const auto found = line.match(said);
  if (!found.hasMatch()) return {};
  return {found.captured(1).toDouble(), found.captured(2).toDouble()};
}

}  // namespace

TEST_CASE("the benchmark of the screens measures a small register", "[mobile][window]") {
  const SiteFolder folder(true);
  const QString said =
      said_by_benchmark({"--quick", "--data", QString::fromStdString(folder.path().string())});
  INFO(said.toStdString());
  for (const char* what :
       {"touch to first frame, p50", "touch to first frame, p99", "reading to drawn as kept, p50",
        "reading to drawn as kept, p99", "start, p50", "memory at the first frame", "opened",
        "from part to part, p99", "grade to kept, p99", "the tape moved, p99"}) {
    INFO(what);
    const auto figures = figures_of(said, QString::fromLatin1(what));
    REQUIRE(figures.size() == 2);
    for (const double figure : figures) {
      CHECK(figure > 0);
      CHECK(figure < 60'000);
    }
  }
  CHECK(said.contains("Walk, 10 touches and 5 readings"));
  CHECK(said.contains("Panning 620 posts"));
}
