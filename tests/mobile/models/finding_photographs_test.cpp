// Photographs of a finding: made ready beside the touches, kept with what was found, and never lost
// by a cut, a full disk or a hand that walks on.

#include <QCoreApplication>
#include <QEventLoop>
#include <QFile>
#include <QTemporaryDir>
#include <catch2/catch.hpp>

#include "mobile/models/finding_pen.h"
#include "tests/mobile/made_pictures.h"
#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr int split = 1, rust = 4;
constexpr const char* photographs = "SELECT count(*) FROM photograph WHERE voided_by IS NULL";
constexpr const char* of_findings =
    "SELECT count(*) FROM photograph AS p JOIN finding AS f ON f.record = p.subject WHERE "
    "p.voided_by IS NULL";
constexpr const char* marked = "SELECT count(*) FROM photograph WHERE marks IS NOT NULL";
const QString circle = QStringLiteral("circle 4200 5000 5200 5000");

class Shot {
 public:
  Shot()
      : file_(QUrl::fromLocalFile(put_file(folder_.path(), "a.jpg", camera_jpeg({640, 480}, 6)))) {}
  [[nodiscard]] const QUrl& file() const { return file_; }
  [[nodiscard]] QString folder() const { return folder_.path(); }

 private:
  QTemporaryDir folder_;
  QUrl file_;
};

FindingPen& at_finding(Walking& walking) {
  walking.walk().choosePart(walking.cross(0));
  walking.walk().openPad(WalkModel::FindingPad);
  return *walking.walk().finding();
}

void wait(Walking& walking) {
  while (walking.walk().finding()->reads_picture()) {
    QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
    walking.store().settle();
  }
  walking.settle();
}

}  // namespace

TEST_CASE("a picture, a ring, a kind, kept: a photograph of the finding, ringed",
          "[mobile][finding][picture]") {
  const Shot shot;
  Walking walking;
  FindingPen& pen = at_finding(walking);
  pen.takePicture(shot.file());
  CHECK(pen.reads_picture());
  wait(walking);
  CHECK(pen.photographs() == 1);
  CHECK(pen.photograph_caption() == "Photo 1 of 1");
  pen.mark(circle);
  CHECK(pen.marks() == circle);
  pen.chooseKind(split);
  pen.keep();
  walking.settle();
  CHECK(walking.count(of_findings) == 1);
  CHECK(walking.count(marked) == 1);
  CHECK(walking.count("SELECT count(*) FROM draft") == 0);
  CHECK(walking.count("SELECT width FROM photograph") == 480);
  CHECK(walking.count("SELECT count(*) FROM photograph WHERE taken_ms IS NOT NULL") == 1);
  walking.walk().undo();
  walking.settle();
  CHECK(walking.count(photographs) == 0);
  walking.walk().redo();
  walking.settle();
  CHECK(walking.count("SELECT count(*) FROM photograph AS p JOIN finding AS f ON f.record = "
                      "p.subject WHERE p.voided_by IS NULL AND f.hazard_state = 1") == 1);
}

TEST_CASE("power cut after any touch of a finding with a photograph: nothing kept is lost",
          "[mobile][finding][picture][trouble]") {
  constexpr int touches_most = 5;
  const int touches = GENERATE(range(1, touches_most + 1));
  const bool kind_first = GENERATE(false, true);
  INFO("after touch " << touches << (kind_first ? ", kind first" : ""));
  const Shot shot;
  Walking walking;
  FindingPen& pen = at_finding(walking);
  const auto touch = [&](int place) {
    if (place == (kind_first ? 1 : 0)) pen.takePicture(shot.file());
    if (place == (kind_first ? 2 : 1)) pen.mark(circle);
    if (place == (kind_first ? 0 : 2)) pen.chooseKind(rust);
    if (place == 3) pen.takePicture(shot.file());
    if (place == 4) pen.keep();
    wait(walking);
  };
  for (int i = 0; i < touches; ++i) touch(i);
  walking.cut_power(static_cast<std::uint64_t>(touches) + 1);
  const int taken = (touches > (kind_first ? 1 : 0) ? 1 : 0) + (touches > 3 ? 1 : 0);
  const bool found = touches > (kind_first ? 0 : 2);
  CHECK(walking.count(photographs) == taken);
  CHECK(walking.count(of_findings) == (found ? taken : 0));
  CHECK(walking.count(marked) == (touches > (kind_first ? 2 : 1) ? 1 : 0));
  CHECK(walking.count("SELECT count(*) FROM finding") == (found ? 1 : 0));
  CHECK(walking.count("SELECT count(*) FROM draft") == 0);
}

TEST_CASE("a broken picture is said, and the finding goes on", "[mobile][finding][picture]") {
  const Shot shot;
  Walking walking;
  FindingPen& pen = at_finding(walking);
  pen.takePicture(QUrl::fromLocalFile(put_file(shot.folder(), "broken.jpg", "FFD8 not quite")));
  pen.chooseKind(split);
  wait(walking);
  CHECK(pen.photographs() == 0);
  CHECK(pen.picture_trouble().contains("broken.jpg"));
  CHECK(pen.kind() == split);
  pen.takePicture(shot.file());
  CHECK(pen.picture_trouble().isEmpty());
  wait(walking);
  CHECK(pen.photographs() == 1);
}

TEST_CASE("a disk that takes no picture is said, and the file is where it was",
          "[mobile][finding][picture][trouble]") {
  const Shot shot;
  Walking walking;
  FindingPen& pen = at_finding(walking);
  pen.chooseKind(split);
  walking.settle();
  walking.disk().set_read_only(true);
  pen.takePicture(shot.file());
  wait(walking);
  CHECK(pen.photographs() == 0);
  CHECK(pen.picture_trouble().startsWith("Not kept"));
  walking.disk().set_read_only(false);
  pen.takePicture(shot.file());
  wait(walking);
  CHECK(pen.photographs() == 1);
  pen.keep();
  walking.settle();
  CHECK(walking.count(of_findings) == 1);
}

TEST_CASE("a picture that is ready when the walk has gone on is of what it was taken for",
          "[mobile][finding][picture]") {
  const bool found = GENERATE(false, true);
  const Shot shot;
  Walking walking;
  FindingPen& pen = at_finding(walking);
  pen.takePicture(shot.file());
  if (found) pen.chooseKind(rust);
  walking.walk().choosePart(walking.tee(1));
  wait(walking);
  CHECK(walking.count(photographs) == 1);
  CHECK(walking.count(of_findings) == (found ? 1 : 0));
  CHECK(pen.photographs() == 0);
}

TEST_CASE("a picture that fails when the walk has gone on is said where the person is",
          "[mobile][finding][picture][trouble]") {
  const bool broken = GENERATE(true, false);
  const Shot shot;
  Walking walking;
  FindingPen& pen = at_finding(walking);
  pen.takePicture(broken ? QUrl::fromLocalFile(put_file(shot.folder(), "broken.jpg", "FFD8 no"))
                         : shot.file());
  walking.walk().choosePart(walking.tee(1));
  if (!broken) walking.disk().set_read_only(true);
  wait(walking);
  CHECK(walking.walk().message().startsWith("Photograph of post 118, mid-rail cross: "));
  CHECK(walking.walk().message().contains(broken ? "broken.jpg" : "Not kept"));
  CHECK(pen.picture_trouble().isEmpty());
}

TEST_CASE("a picture that is late is of the visit and the site it was taken at",
          "[mobile][finding][picture]") {
  const bool other_site = GENERATE(false, true);
  INFO((other_site ? "another site" : "sealed"));
  const Shot shot;
  Walking walking;
  const Uuid site = id_of(2, 2), zone = id_of(3, 2), run = id_of(4, 2), post = id_of(5, 200);
  walking.switch_off();
  walking.write_down({created(site, site, 2, walking.site().organisation, {{1, "Lock Island"}}),
                      created(site, zone, 3, site, {{1, "Lock"}, {2, 3}}),
                      created(site, run, 4, zone, {{1, "Gates"}, {5, 1100}}),
                      created(site, post, 5, run, {{1, "1"}, {2, 0}, {3, 0}, {6, 1100}})});
  walking.switch_on();
  FindingPen& pen = at_finding(walking);
  pen.chooseKind(rust);
  pen.keep();
  walking.settle();
  at_finding(walking);
  pen.takePicture(shot.file());
  const Uuid visit = walking.walk().pen().visit();
  if (other_site) {
    walking.walk().open(run);
    REQUIRE(walking.walk().pen().site() == site);
  } else {
    walking.walk().pen().seal({}, [](const QString& why_not) { CHECK(why_not.isEmpty()); });
    walking.settle();
  }
  REQUIRE(walking.walk().pen().visit() != visit);
  wait(walking);
  REQUIRE(walking.count(photographs) == 1);
  auto row = taken(
      walking.store().reader().tables().prepare("SELECT feed, visit, subject FROM photograph"));
  REQUIRE(taken(row.step()));
  CHECK(row.uuid(0) == walking.site().site);
  CHECK(row.uuid(1) == visit);
  CHECK(row.uuid(2) == walking.site().crosses[0]);
}

TEST_CASE("pictures that are under way when everything ends are kept",
          "[mobile][finding][picture]") {
  const Shot shot;
  Walking walking;
  FindingPen& pen = at_finding(walking);
  pen.chooseKind(split);
  pen.takePicture(shot.file());
  pen.takePicture(shot.file());
  walking.walk().end();
  walking.store().close();
  walking.switch_off();
  walking.switch_on();
  CHECK(walking.count(of_findings) == 2);
  CHECK(walking.count("SELECT count(*) FROM draft") == 0);
}

TEST_CASE("the newest pictures of the tablet come first", "[mobile][finding][picture]") {
  const Shot shot;  // a.jpg
  put_file(shot.folder() + "/deeper", "b.png", "x");
  put_file(shot.folder(), "c.jpg", "x");
  put_file(shot.folder(), "notes.txt", "x");
  const auto date = [&](const QString& name, int day) {
    QFile file(shot.folder() + name);
    REQUIRE(file.open(QIODevice::ReadWrite));
    REQUIRE(file.setFileTime({{2031, 5, day}, {10, 0}}, QFileDevice::FileModificationTime));
  };
  date("/a.jpg", 12);
  date("/deeper/b.png", 14);
  date("/c.jpg", 13);
  DevicePictures pictures;
  pictures.set_folder(shot.folder());
  while (pictures.busy()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  QStringList names;
  for (int i = 0; i < pictures.count(); ++i)
    names << pictures.data(pictures.index(i), DevicePictures::NameRole).toString();
  CHECK(names == QStringList{"b.png", "c.jpg", "a.jpg"});
  pictures.set_folder(shot.folder() + "/nowhere");
  while (pictures.busy()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  CHECK(pictures.count() == 0);
}
