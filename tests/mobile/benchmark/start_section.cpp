#include <QGuiApplication>
#include <QProcess>
#include <QQmlApplicationEngine>
#include <QQuickWindow>
#include <iostream>

#include "mobile/screens/rooms.h"
#include "tests/benchmark/section.h"
#include "tests/mobile/benchmark/sections.h"

namespace kneerail::benchmark {

namespace {

constexpr int longest_start_ms = 60'000;
constexpr const char* empty_window =
    "import QtQuick\nWindow { visible: true; width: Screen.width; height: Screen.height }";

struct Started {
  double ms;
  double memory_mb;
};

/// From the making of the process to its first line, which it prints at its first frame.
Result<Started> start(const QString& program, const QStringList& words) {
  QProcess process;
  const Stopwatch watch;
  process.start(program, words);
  if (!process.waitForReadyRead(longest_start_ms)) {
    process.kill();
    process.waitForFinished();
    return fail(Fault::io, program.toStdString() + ": It did not show its window. It said: " +
                               process.readAllStandardError().toStdString());
  }
  const Started started{watch.seconds() * 1000,
                        memory_peak_mb(std::to_string(process.processId()))};
  process.kill();
  process.waitForFinished();
  return started;
}

}  // namespace

int show_empty_window() {
  QQmlApplicationEngine engine;
  engine.loadData(empty_window);
  auto* window = qobject_cast<QQuickWindow*>(engine.rootObjects().value(0));
  if (window == nullptr) return 3;
  QObject::connect(
      window, &QQuickWindow::frameSwapped, window, [] { std::cout << "Open." << std::endl; },
      static_cast<Qt::ConnectionType>(Qt::QueuedConnection | Qt::SingleShotConnection));
  return QGuiApplication::exec();
}

Result<> measure_start(const std::filesystem::path& register_folder, const Times& times) {
  {
    const auto rooms = Rooms::open({.folder = register_folder});
    if (!rooms) return fail(rooms.error());
    (*rooms)->tablet().readCautions();  // the first start of all shows them instead of a walk
  }
  const QString data = QString::fromStdString(register_folder.string());
  std::vector<double> ours;
  std::vector<double> peers;
  double our_memory = 0;
  double peer_memory = 0;
  for (int round = 0; round < times.starts; ++round) {
    const auto peer = start(QCoreApplication::applicationFilePath(), {"--empty"});
    if (!peer) return fail(peer.error());
    const auto own = start(KNEERAIL_BIN_DIR "/kneerail", {"open", "--data", data});
    if (!own) return fail(own.error());
    peers.push_back(peer->ms);
    ours.push_back(own->ms);
    peer_memory = std::max(peer_memory, peer->memory_mb);
    our_memory = std::max(our_memory, own->memory_mb);
  }
  std::cout << "Start to the first frame of the walk, " << times.starts << " times, in turn\n";
  print({"start, p50", share_below(ours, 0.5), "empty window", share_below(peers, 0.5), "ms"});
  print({"memory at the first frame", our_memory, "empty window", peer_memory, "MB"});
  return Done{};
}

}  // namespace kneerail::benchmark
