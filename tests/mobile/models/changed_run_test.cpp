// A run that stands is changed by touches: said first, then kept, and what goes keeps its history.

#include <QSignalSpy>

#include "mobile/models/changed_run.h"
#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

class Changing {
 public:
  Changing()
      : change_(walking_.store(), walking_.clock(), chance_,
                [this] { return walking_.site().person; }) {
    change_.begin(walking_.site().run);
    REQUIRE(change_.is_open());
  }
  ChangedRun* operator->() { return &change_; }
  Walking& walking() { return walking_; }

  bool choose(const QString& words) {
    const auto at = change_.choices()->index(0);
    const auto names = change_.choices()->data(at, SentenceChoices::NamesRole).toStringList();
    if (!names.contains(words)) return false;
    change_.choose(0, static_cast<int>(names.indexOf(words)));
    return true;
  }
  void type(const QString& digits) {
    for (const QChar digit : digits) change_.digit(digit.digitValue());
  }
  void keep() {
    change_.keep();
    walking_.settle();
  }
  std::vector<std::string> labels() {
    std::vector<std::string> found;
    for (const SheetPost& post : change_.run()->sheet()->posts) found.push_back(post.label);
    return found;
  }

 private:
  Walking walking_;
  SplitMix64 chance_{3};
  ChangedRun change_;
};

}  // namespace

TEST_CASE("a post comes in where a bay is touched, in its middle or where somebody says",
          "[changed-run]") {
  Changing change;
  const auto before = change.labels();
  change->chooseBay(1);
  REQUIRE(change.choose("a post"));
  CHECK(change->sentence() ==
        QString("Post %1A comes in, 0.75 m after %1.").arg(QString::fromStdString(before[1])));
  change.type("40");
  CHECK(change->sentence().contains("0.40 m after"));
  CHECK(change.labels() == before);  // not before it is kept
  change.keep();
  auto then = before;
  then.insert(then.begin() + 2, before[1] + "A");
  CHECK(change.labels() == then);
  CHECK(change->run()->sheet()->posts[2].chainage_mm == 1900);
  CHECK_FALSE(change->can_keep());
}

TEST_CASE("what cannot be is said and not kept", "[changed-run]") {
  Changing change;
  const auto before = change.labels();
  change->choosePost(0);
  REQUIRE(change.choose("it is taken out"));
  CHECK(change->message().contains("ends the run"));
  CHECK_FALSE(change->can_keep());
  change->chooseBay(0);
  CHECK(change->message().isEmpty());
  REQUIRE(change.choose("a post"));
  change.type("5");
  CHECK(change->message().contains("at least 0.10 m"));
  change.keep();
  CHECK(change.labels() == before);
}

TEST_CASE("a post is moved, another is taken out, and what was read on it stays", "[changed-run]") {
  Changing change;
  const auto before = change.labels();
  change->choosePost(1);
  REQUIRE(change.choose("it moves"));
  change.type("180");
  change.keep();
  CHECK(change->run()->sheet()->posts[1].chainage_mm == 1800);
  const auto readings = change.walking().count("SELECT count(*) FROM reading");
  change->choosePost(2);
  REQUIRE(change.choose("it is taken out"));
  CHECK(change->means().contains("stays in the register"));
  const QSignalSpy kept(change.operator->(), &ChangedRun::kept);
  change.keep();
  CHECK(kept.count() == 1);
  auto then = before;
  then.erase(then.begin() + 2);
  CHECK(change.labels() == then);
  CHECK(change.walking().count("SELECT count(*) FROM reading") == readings);
}

TEST_CASE("a disk that takes nothing is said, and the change can be tried again", "[changed-run]") {
  Changing change;
  change->chooseBay(0);
  REQUIRE(change.choose("a gate"));
  change.walking().disk().set_read_only(true);
  change.keep();
  CHECK(change->not_kept());
  CHECK(change->message().startsWith("Not kept: "));
  CHECK(change->run()->sheet()->bays[0].kind == BayKind::rails);
  change.walking().disk().set_read_only(false);
  change.keep();
  CHECK(change->run()->sheet()->bays[0].kind == BayKind::gate);
}
