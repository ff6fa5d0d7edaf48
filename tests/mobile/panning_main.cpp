// Prints the frame times of a panned elevation; see panning.h for how to run it.

#include <QGuiApplication>
#include <QQuickWindow>
#include <QTextStream>

#include "tests/mobile/panning.h"

namespace {

int number(const QStringList& words, const QString& name, int otherwise) {
  const auto at = words.indexOf(name);
  return at >= 0 && at + 1 < words.size() ? words[at + 1].toInt() : otherwise;
}

}  // namespace

int main(int argc, char** argv) {
  const QGuiApplication app(argc, argv);
  const QStringList words = QGuiApplication::arguments();
  kneerail::tests::PanningRule rule;
  rule.posts = number(words, "--posts", rule.posts);
  rule.frames = number(words, "--frames", rule.frames);
  rule.denominator = number(words, "--scale", static_cast<int>(rule.denominator));
  rule.step_px = number(words, "--step", rule.step_px);
  rule.dark = words.contains("--dark");
  const auto picture = words.indexOf("--picture");
  if (picture >= 0 && picture + 1 < words.size()) rule.picture = words[picture + 1].toStdString();
  const auto panning = kneerail::tests::measure_panning(rule);
  QTextStream(stdout) << QString::fromStdString(panning.renderer) << ", " << rule.posts
                      << " posts, 1:" << rule.denominator << ", " << rule.frames
                      << " frames, ms: median " << panning.quantile_ms(0.5) << ", p99 "
                      << panning.quantile_ms(0.99) << ", longest " << panning.quantile_ms(1)
                      << "\n100,000 parts: a touch finds its part in "
                      << kneerail::tests::measure_picking_us(100000) << " us\n";
  return 0;
}
