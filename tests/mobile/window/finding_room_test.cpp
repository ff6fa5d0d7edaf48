// A finger finds something: on the pad of the Walk, with a photograph and a ring, made safe; and in
// the Findings room. The touches are counted.

#include <QEventLoop>
#include <QTemporaryDir>

#include "mobile/models/finding_pen.h"
#include "tests/mobile/made_pictures.h"
#include "tests/mobile/window/shown_window.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr int posts = 4;
constexpr double cross_mm = 550;
constexpr const char* open_hazards = "SELECT count(*) FROM finding WHERE hazard_state = 1";
constexpr const char* safe_hazards = "SELECT count(*) FROM finding WHERE hazard_state = 2";
constexpr const char* ringed =
    "SELECT count(*) FROM photograph AS p JOIN finding AS f ON f.record = p.subject WHERE p.marks "
    "IS NOT NULL AND p.voided_by IS NULL";

/// A tablet with one picture in its folder, and every touch counted.
class Hand {
 public:
  explicit Hand(ShownWindow& shown) : shown_(shown) {
    put_file(folder_.path(), "a.jpg", camera_jpeg({800, 600}, 1));
    shown.walk().finding()->pictures()->set_folder(folder_.path());
    wait();
  }

  void touch(const QString& name) {
    INFO(name.toStdString());
    CHECK(shown_.touch(name));
    ++touches_;
    wait();
  }
  void touch_cross() {
    shown_.touch_drawing(0, cross_mm);
    ++touches_;
    CHECK(shown_.walk().part_title().contains("cross"));
  }
  [[nodiscard]] int touches() const { return touches_; }

  /// The picture that is made ready, and the folder that is read.
  void wait() {
    FindingPen& pen = *shown_.walk().finding();
    while (pen.reads_picture() || pen.pictures()->busy()) {
      QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
      shown_.rooms().store().settle();
    }
    shown_.settle();
  }

 private:
  ShownWindow& shown_;
  QTemporaryDir folder_;
  int touches_ = 0;
};

}  // namespace

TEST_CASE("a finding with photograph and ring is six touches, made safe seven",
          "[mobile][window][finding]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  const bool safe = GENERATE(false, true);
  const Folder folder;
  ShownWindow shown(posts, folder.path() / "register");
  shown.resize(size);
  Hand hand(shown);
  hand.touch_cross();
  hand.touch("findingPad");
  hand.touch("picture0");
  shown.settle_pictures();
  hand.touch("pictureMarks");
  hand.touch("kind1");
  if (safe) hand.touch("measure1");
  hand.touch("keepFinding");
  CHECK(hand.touches() == (safe ? 7 : 6));
  CHECK(shown.count(ringed) == 1);
  CHECK(shown.count(safe ? safe_hazards : open_hazards) == 1);
  CHECK(shown.count("SELECT count(*) FROM draft") == 0);
  CHECK(shown.walk().post_label() == "119");
  CHECK(shown.find("keepFinding") == nullptr);
}

TEST_CASE("without a picture the pad says what to do, and nothing is kept of nothing",
          "[mobile][window][finding]") {
  ShownWindow shown(posts);
  const QTemporaryDir empty;
  shown.walk().finding()->pictures()->set_folder(empty.path());
  shown.touch_drawing(0, cross_mm);
  CHECK(shown.touch("findingPad"));
  while (shown.walk().finding()->pictures()->busy())
    QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  CHECK(shown.text_of("pictureTrouble") == "No camera. Keep the finding, add a picture later.");
  CHECK(shown.text_of("findingTitle").startsWith("F-1 · post 118"));
  CHECK(shown.text_of("keepFinding") == "Back to the walk");
  CHECK(shown.touch("keepFinding"));
  CHECK(shown.walk().pad() == WalkModel::GradePad);
  CHECK(shown.count("SELECT count(*) FROM finding") == 0);
}

TEST_CASE("the other kinds are on a second page", "[mobile][window][finding]") {
  ShownWindow shown(posts);
  shown.touch_drawing(0, cross_mm);
  CHECK(shown.touch("findingPad"));
  CHECK(shown.find("measure1") == nullptr);
  CHECK(shown.touch("turnKinds"));
  CHECK(shown.touch("kind11"));
  CHECK(shown.walk().finding()->grade() == 5);
  CHECK(shown.find("measure1") != nullptr);
  CHECK(shown.find("cannotWaitBoard") != nullptr);
  CHECK(shown.text_of("safeWords") == "Not made safe");
  CHECK(shown.touch("turnKinds"));
  CHECK(shown.text_of("turnKinds") == "Moves");
}

TEST_CASE("that it can wait is a sentence, however long it is pasted",
          "[mobile][window][finding]") {
  ShownWindow shown(posts);
  shown.touch_drawing(0, cross_mm);
  CHECK(shown.touch("findingPad"));
  CHECK(shown.touch("kind1"));
  CHECK(shown.touch("itCanWait"));
  QQuickItem* sentence = shown.find("sentence");
  REQUIRE(sentence != nullptr);
  CHECK(shown.text_of("saySentence") == "It cannot wait");
  sentence->setProperty("text", QString("long ").repeated(2000));
  shown.settle();
  CHECK(shown.find("saySentence")->property("secondLine").toString() ==
        "Only the first 300 characters are kept");
  sentence->setProperty("text", "A second rail holds");
  CHECK(shown.touch("saySentence"));
  CHECK(shown.text_of("safeWords") == "It can wait: A second rail holds");
  CHECK(shown.touch("keepFinding"));
  CHECK(
      shown.count("SELECT count(*) FROM finding WHERE can_wait = 'A second rail holds' AND hazard "
                  "= 0") == 1);
}

TEST_CASE("power cut between any two touches of a finding: it is found where it was",
          "[mobile][window][finding][trouble]") {
  const std::vector<QString> names = {"findingPad", "kind1", "measure1", "keepFinding"};
  const auto touches = GENERATE(range(1, 5));
  INFO("after touch " << touches);
  ShownWindow shown(posts);
  shown.touch_drawing(0, cross_mm);
  for (int i = 0; i < touches; ++i) CHECK(shown.touch(names[static_cast<std::size_t>(i)]));
  shown.cut_power(static_cast<std::uint64_t>(touches));
  CHECK(shown.count("SELECT count(*) FROM finding") == (touches > 1 ? 1 : 0));
  CHECK(shown.count(open_hazards) == (touches == 2 ? 1 : 0));
  CHECK(shown.count(safe_hazards) == (touches > 2 ? 1 : 0));
}

TEST_CASE("not made safe is said in every room until it is", "[mobile][window][finding]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  const bool across = size.width() > size.height();
  const QString untold = across ? "untoldCell" : "notSafeLine";
  const QString cell = across ? "notSafeCell" : "notSafeLine";
  const Folder folder;
  ShownWindow shown(posts, folder.path() / "register");
  shown.resize(size);
  CHECK(shown.find(untold) == nullptr);
  shown.touch_drawing(0, cross_mm);
  CHECK(shown.touch("findingPad"));
  CHECK(shown.touch("kind1"));
  CHECK(shown.touch("keepFinding"));
  for (const char* tag : {"sitesTag", "walkTag", "findingsTag", "forecastTag"}) {
    CHECK(shown.touch(tag));
    CHECK(shown.find(untold) != nullptr);
  }
  CHECK(shown.rooms().hazards().words() == "F-1: nobody told");
  CHECK(shown.touch(untold));
  CHECK(shown.touch("office0"));
  CHECK(shown.touch("closeTelling"));
  CHECK(shown.rooms().hazards().words().isEmpty());
  CHECK(shown.touch(cell));
  CHECK(shown.text_of("openTitle").startsWith("F-1 · post 118, mid-rail cross"));
  CHECK(shown.text_of("openDone").startsWith("not made safe"));
  CHECK(shown.touch("done0"));
  CHECK(shown.count(safe_hazards) == 1);
  CHECK(shown.find(cell) == nullptr);
  CHECK(shown.text_of("openDone").startsWith("closed off"));
  CHECK(shown.touch("stands2"));  // gone
  CHECK(shown.find(cell) != nullptr);
  CHECK(shown.text_of("openDone").startsWith("not made safe: closed off, reported, gone "));
  CHECK(shown.touch("done0"));  // closed off again
  CHECK(shown.count(safe_hazards) == 1);
  CHECK(shown.touch("stands2"));
  CHECK(shown.touch("ask0"));
  CHECK(shown.touch("stands1"));  // put back
  CHECK(shown.find(cell) == nullptr);
  CHECK(shown.touch("ask2"));
  CHECK(shown.touch("next3"));
  CHECK(shown.count(
            "SELECT count(*) FROM finding WHERE next_step = 3 AND mend_by_day IS NOT NULL") == 1);
  CHECK(shown.touch("undoFinding"));
  CHECK(shown.count("SELECT count(*) FROM finding WHERE next_step = 3") == 0);
  CHECK(shown.touch("walkThere"));
  CHECK(shown.walk().part_title() == "118 · mid-rail cross");
}

TEST_CASE("no ring is drawn before the picture is there", "[mobile][window][finding]") {
  ShownWindow shown(posts);
  Hand hand(shown);
  hand.touch_cross();
  hand.touch("findingPad");
  hand.touch("picture0");
  QQuickItem* picture = shown.find("photograph");
  REQUIRE(picture != nullptr);
  picture->setProperty("source", QUrl("file:///nowhere/picture.jpg"));
  hand.wait();
  shown.touch("pictureMarks");
  CHECK(shown.walk().finding()->marks().isEmpty());
}

TEST_CASE("the sentence why it can wait goes with the finding when it is kept, or left",
          "[mobile][window][finding]") {
  const QString leaves = GENERATE("keepFinding", "sitesTag");
  ShownWindow shown(posts);
  shown.touch_drawing(0, cross_mm);
  CHECK(shown.touch("findingPad"));
  CHECK(shown.touch("kind1"));
  CHECK(shown.touch("itCanWait"));
  REQUIRE(shown.find("sentence") != nullptr);
  shown.find("sentence")->setProperty("text", "A second rail holds");
  shown.settle();
  CHECK(shown.touch(leaves));
  CHECK(shown.count("SELECT count(*) FROM finding WHERE can_wait = 'A second rail holds' AND "
                    "hazard = 0") == 1);
  CHECK(shown.touch("walkTag"));
  shown.touch_drawing(1, cross_mm);
  CHECK(shown.touch("findingPad"));
  CHECK(shown.touch("kind1"));
  CHECK(shown.find("sentence") == nullptr);  // the next finding asks what was done
  CHECK(shown.find("measure1") != nullptr);
}

TEST_CASE("a finding of the walk is no reading of the Findings room that is not open",
          "[mobile][window][finding]") {
  const Folder folder;
  ShownWindow shown(posts, folder.path() / "register");
  CHECK(shown.touch("findingsTag"));
  int resets = 0;
  QObject::connect(&shown.rooms().findings(), &QAbstractItemModel::modelReset, [&] { ++resets; });
  CHECK(shown.touch("walkTag"));
  shown.touch_drawing(0, cross_mm);
  CHECK(shown.touch("findingPad"));
  CHECK(shown.touch("kind1"));
  CHECK(shown.touch("keepFinding"));
  CHECK(resets == 0);
  CHECK(shown.rooms().findings().not_safe_count() == "F-1 cannot wait");
  CHECK(shown.touch("findingsTag"));
  CHECK(resets == 1);
  CHECK(shown.rooms().findings().count() == 1);
}

TEST_CASE("findings hang in the order of what cannot wait", "[mobile][window][finding]") {
  const Folder folder;
  ShownWindow shown(posts, folder.path() / "register");
  CHECK(shown.touch("findingsTag"));
  CHECK(shown.find("nothingFound") != nullptr);
  CHECK(shown.rooms().findings().empty_words() == "Nothing found on this run.");
  CHECK(shown.rooms().findings().last_look().startsWith("Last look "));
  CHECK(shown.touch("newFinding"));
  CHECK(shown.touch("kind4"));
  CHECK(shown.touch("keepFinding"));
  shown.touch_drawing(0, cross_mm);
  CHECK(shown.touch("findingPad"));
  CHECK(shown.touch("kind1"));
  CHECK(shown.touch("keepFinding"));
  CHECK(shown.touch("findingsTag"));
  FindingsModel& findings = shown.rooms().findings();
  REQUIRE(findings.count() == 2);
  CHECK(findings.data(findings.index(0), FindingsModel::NumberRole).toString() == "F-2");
  CHECK(findings.data(findings.index(0), FindingsModel::BoardedRole).toBool());
  CHECK(findings.data(findings.index(1), FindingsModel::PartRole).toString() == "post 118");
  CHECK(findings.count_words() == "2 open, 1 cannot wait");
  CHECK(shown.touch("finding1"));
  CHECK(shown.text_of("openTitle") == "F-1 · post 118");
  CHECK(shown.touch("closeFinding"));
  CHECK(shown.find("finding0") != nullptr);
  CHECK(shown.touch("walkTag"));
  CHECK(shown.touch("undo"));  // F-2 was raised by mistake
  CHECK(shown.touch("findingsTag"));
  CHECK(findings.count() == 1);
  CHECK(shown.touch("endedToo"));
  CHECK(findings.count() == 2);
  CHECK(findings.data(findings.index(1), FindingsModel::DoneRole)
            .toString()
            .startsWith("raised by mistake"));
}
