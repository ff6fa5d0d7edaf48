// Closing a visit: what is looked over before the seal, the seal, and what it fixes.

#include <QCoreApplication>
#include <QElapsedTimer>
#include <catch2/catch.hpp>
#include <memory>

#include "core/records/finding.h"
#include "mobile/models/visit_close.h"
#include "schema/digest.h"
#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

/// A site in a folder, for a thread of its own reads it beside the walk.
class Closing {
 public:
  Closing() {
    world_.clock.wall_ms += 400LL * 24 * 60 * 60 * 1000;
    switch_on();
  }
  ~Closing() { switch_off(); }

  void switch_on() {
    Register::Options options = folder_.options();
    options.clock = &world_.clock;
    options.random = &chance_;
    store_ = taken(StoreLink::open(options));
    walk_ = std::make_unique<WalkModel>(*store_, world_.clock, chance_);
    walk_->open(folder_.site().run);
    close_ = std::make_unique<VisitClose>(folder_.path(), *walk_, world_.clock);
    settle();
  }
  void switch_off() {
    close_.reset();
    walk_.reset();
    store_.reset();
  }
  /// Everything that was asked has been answered.
  void settle() {
    for (int round = 0; round < 3; ++round) {
      store_->settle();
      QCoreApplication::processEvents();
    }
    QElapsedTimer waited;
    waited.start();
    while (close_->busy() && waited.elapsed() < 60'000)
      QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents, 10);
    QCoreApplication::processEvents();
  }
  void look_over() {
    close_->open();
    settle();
  }
  void seal(const QByteArray& signature = "PNG of a name") {
    close_->seal(signature);
    settle();
  }
  /// Every part of a post graded, and its bay looked at.
  void grade_post(int post, int grade) {
    walk_->choosePost(post);
    for (int part = 0; part < 2; ++part) {
      walk_->choosePart(2 * post + part);
      walk_->chooseGrade(grade);
      settle();
    }
  }

  WalkModel& walk() { return *walk_; }
  VisitClose& close() { return *close_; }
  StoreLink& store() { return *store_; }
  SteadyClock& clock() { return world_.clock; }
  const WalkedSite& site() const { return folder_.site(); }
  std::int64_t count(const std::string& sql) {
    return taken(store_->reader().tables().number(sql));
  }
  QVariant of_run(VisitClose::Role role) { return close_->data(close_->index(0), role); }

 private:
  SiteFolder folder_{true};
  World world_;
  SplitMix64 chance_{77};
  std::unique_ptr<StoreLink> store_;
  std::unique_ptr<WalkModel> walk_;
  std::unique_ptr<VisitClose> close_;
};

}  // namespace

TEST_CASE("before anything is entered there is no visit to close", "[mobile][close]") {
  Closing at;
  at.look_over();
  CHECK_FALSE(at.close().known());
  CHECK(at.close().message() == "Nothing was entered in this visit yet.");
  at.seal();
  CHECK(at.count("SELECT count(*) FROM visit_part WHERE sealed NOT NULL") == 0);
}

TEST_CASE("a visit is looked over with what is missing and why", "[mobile][close]") {
  Closing at;
  at.walk().choosePost(0);
  at.walk().asLastTime(true);
  at.settle();
  at.walk().choosePost(1);
  at.walk().skip(WalkModel::Blocked, 2);
  at.settle();
  at.look_over();
  REQUIRE(at.close().known());
  CHECK(at.close().title().startsWith("Visit 2 · North Mole · "));
  CHECK(at.close().figures() == QStringList{"1", "0", "0", "0"});
  CHECK(at.close().figure_words().front() == "of 4 posts seen");
  CHECK(at.close().grades() == QList<int>{2, 0, 0, 0, 0});
  CHECK(at.of_run(VisitClose::NameRole).toString() == "Ferry Slip");
  CHECK(at.of_run(VisitClose::FromRole).value<QList<int>>() == QList<int>{1});
  CHECK(at.of_run(VisitClose::ToRole).value<QList<int>>() == QList<int>{2});
  CHECK(at.of_run(VisitClose::WhyRole).toStringList() == QStringList{"119 to 120 blocked"});
  const QStringList asks = at.close().asks();
  CHECK(asks.contains("1 post without a look and without a reason, first 121 on Ferry Slip."));
  CHECK(asks.contains("2 posts not reached: reasons given. They stay open and due."));
  CHECK(at.close().ask_signs().front() == VisitClose::Hollow);
}

TEST_CASE("readings of today are counted, and an old zero is said", "[mobile][close]") {
  Closing at;
  at.walk().choosePart(0);
  at.walk().set_pad(WalkModel::CoatingPad);
  for (const char* value : {"76", "71", "74"}) at.walk().typed(value);
  at.look_over();  // the set that was begun becomes a record first
  CHECK(at.close().figures().at(1) == "3");
  CHECK(at.close().seal_words().startsWith("Fixes 1 entry under"));
  CHECK(at.close().about().contains("A2"));
  CHECK(at.close().asks().contains("Gauge A2 was never zeroed: 1 reading set has a wider error."));
}

TEST_CASE("a finding that cannot wait is asked about first", "[mobile][close]") {
  Closing at;
  at.walk().choosePost(0);
  at.walk().asLastTime(true);
  at.settle();
  Finding split;
  split.visit = at.walk().pen().visit();
  split.what = FindingKind::split;
  split.grade = 5;
  split.hazard = true;
  split.number = 3;
  WalkPen::Act act;
  act.words = "F-3";
  act.component = at.site().crosses[0];
  act.entries.push_back(at.walk().pen().entry(at.site().crosses[0], split));
  at.walk().pen().write(std::move(act));
  at.settle();
  at.look_over();
  CHECK(at.close().asks().front() == "F-3 post 118, split: not made safe. Nobody told yet.");
  CHECK(at.close().ask_signs().front() == VisitClose::Board);
  CHECK(at.close().figures().back() == "1");
}

TEST_CASE("a seal closes the visit; what comes later is of another", "[mobile][close]") {
  Closing at;
  at.walk().choosePost(0);
  at.walk().asLastTime(true);
  at.settle();
  const Uuid visit = at.walk().pen().visit();
  at.look_over();
  CHECK(at.close().digest().size() == 21);
  at.seal();
  REQUIRE(at.close().sealed());
  CHECK(at.close().message().isEmpty());
  CHECK(at.count("SELECT count(*) FROM visit_part WHERE sealed NOT NULL") == 1);
  CHECK(at.count("SELECT count(*) FROM visit WHERE complete = 1 AND sealed_t NOT NULL") == 1);
  CHECK(at.walk().pen().visit() != visit);
  CHECK_FALSE(at.walk().visit_opened());
  CHECK(at.walk().undo_words().isEmpty());  // nothing before a seal is taken back
  at.walk().choosePost(1);
  at.walk().asLastTime(true);
  at.settle();
  CHECK(at.count("SELECT count(*) FROM visit_part WHERE after_seal > 0") == 0);
  CHECK(at.count("SELECT count(*) FROM visit") == 3);
  at.switch_off();
  at.switch_on();
  CHECK(at.walk().pen().visit() != visit);
  const auto verified = taken(at.store().reader().verify());
  for (const std::string& problem : verified.problems) UNSCOPED_INFO(problem);
  CHECK(verified.problems.empty());
}

TEST_CASE("a signature is kept beside the records, a seal without one too", "[mobile][close]") {
  Closing at;
  at.walk().choosePost(0);
  at.walk().asLastTime(true);
  at.settle();
  at.look_over();
  const QByteArray name = "PNG of a name";
  at.seal(name);
  const Digest sha = sha256(
      {reinterpret_cast<const std::uint8_t*>(name.data()), static_cast<std::size_t>(name.size())});
  const auto kept = taken(at.store().reader().object(sha));
  CHECK(QByteArray(reinterpret_cast<const char*>(kept.data()),
                   static_cast<qsizetype>(kept.size())) == name);
  at.walk().choosePost(1);
  at.walk().asLastTime(false);
  at.settle();
  at.look_over();
  at.seal({});
  CHECK(at.close().sealed());
  CHECK(at.count("SELECT count(*) FROM visit_part WHERE sealed NOT NULL") == 2);
}
