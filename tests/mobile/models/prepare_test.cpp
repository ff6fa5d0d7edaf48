// A day that is prepared: what comes first, what fits into the time, what is taken, and that the
// choice is on the walk after the power was off.

#include <QCoreApplication>
#include <QSignalSpy>

#include "mobile/models/day_words.h"
#include "mobile/models/prepare_model.h"
#include "mobile/models/walk_model.h"
#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr std::int64_t hour_ms = 60LL * 60 * 1000;
constexpr std::int64_t day_ms = 24 * hour_ms;
constexpr int posts = 12;
using Sign = PrepareRows::Sign;

/// A site whose tees were measured once, two years ago, and what is added to it.
class Prepared {
 public:
  explicit Prepared(const std::vector<Entry>& more = {}) {
    auto opened = taken(Register::open(world_.options(path(), Mode::create)));
    taken(opened->save(site_.things()));
    taken(opened->save(site_.last_year()));
    world_.clock.move_on(2 * 365 * day_ms);
    if (!more.empty()) taken(opened->save(more));
    opened.reset();
    start();
  }

  void start() {
    stop();
    store_ = taken(StoreLink::open(world_.options(path(), Mode::write)));
    worker_ = std::make_unique<ForecastWorker>(path(), world_.clock);
    model_ = std::make_unique<PrepareModel>(path(), *store_, *worker_, world_.clock);
    worker_->reckon();
    settle();
    model_->prepare(site_.site);
    settle();
  }
  void stop() {
    model_.reset();
    worker_.reset();
    store_.reset();
  }
  void settle() const {
    while (model_->busy() || worker_->busy())
      QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  }
  /// Kept and answered.
  void walk_it() const {
    model_->walkIt();
    store_->settle();
    QCoreApplication::processEvents();
  }

  [[nodiscard]] PrepareModel& model() const { return *model_; }
  [[nodiscard]] StoreLink& store() const { return *store_; }
  [[nodiscard]] const QList<PrepareRows::Row>& lines() const { return model_->lines()->rows(); }
  [[nodiscard]] std::vector<Sign> signs() const {
    std::vector<Sign> signs;
    for (const auto& row : lines()) signs.push_back(static_cast<Sign>(row.sign));
    return signs;
  }
  [[nodiscard]] const WalkedSite& site() const { return site_; }
  [[nodiscard]] std::filesystem::path path() const { return folder_.path() / "register"; }
  World& world() { return world_; }

 private:
  Folder folder_;
  World world_;
  WalkedSite site_{posts};
  std::unique_ptr<StoreLink> store_;
  std::unique_ptr<ForecastWorker> worker_;
  std::unique_ptr<PrepareModel> model_;
};

/// The clock of every register here when its day is prepared.
std::int64_t today_ms() {
  return SteadyClock().wall_ms + 2 * 365 * day_ms;
}

Date today() {
  return Date{static_cast<std::int32_t>(today_ms() / day_ms)};
}

std::vector<Entry> troubles(const WalkedSite& site) {
  const std::int64_t now = today_ms();
  return {{site.site,
           38,
           site.posts[3],
           site.person,
           {{1, now - hour_ms}, {2, 1}, {3, "rail moves near the ladder"}, {6, true}},
           {}},
          {site.site, 9, site.site, site.person, {{1, 2}, {2, now - 3 * day_ms}}, {}},
          {site.site,
           42,
           site.bays[5],
           site.person,
           {{1, 2}, {2, now - 9 * day_ms}, {4, 1}, {5, now - 2 * day_ms}},
           {}},
          {site.site, 30, site.tees[7], site.person, {{2, 2}, {3, 3}, {4, false}, {7, 1}}, {}}};
}

}  // namespace

TEST_CASE("what cannot be left comes first, then every post, then the readings", "[prepare]") {
  const Prepared prepared(troubles(WalkedSite(posts)));
  const auto signs = prepared.signs();
  REQUIRE(signs.size() >= 6);
  CHECK(std::vector<Sign>(signs.begin(), signs.begin() + 6) ==
        std::vector<Sign>{Sign::Told, Sign::Event, Sign::Closure, Sign::Finding, Sign::Look,
                          Sign::Coating});
  const auto& lines = prepared.lines();
  CHECK(lines[0].name == "Told by the public");
  CHECK(lines[0].where == "post 121");
  CHECK(lines[0].why.contains("rail moves near the ladder. Nobody has looked yet."));
  CHECK(lines[0].figure == "5 min");
  CHECK(lines[1].name == "Flood");
  CHECK(lines[1].why.endsWith("nobody has come: each part gets a look of its own."));
  CHECK(lines[2].why.startsWith("Was to be looked at by "));
  CHECK(lines[3].name.startsWith("F-1 "));
  CHECK(lines[4].name == "12 posts to look at");
  CHECK(lines[4].figure == "15 min");  // each part by itself: 75 s a post
  CHECK(lines[4].where == "posts 118 to 129");
}

TEST_CASE("less time leaves out the readings first, then posts, and says so", "[prepare]") {
  const Prepared prepared;
  PrepareModel& model = prepared.model();
  CHECK(model.minutes() < 60);  // as much as is asked for
  CHECK(model.left_out_words() == "Nothing that is asked for is left out.");
  model.set_minutes(480);
  const std::size_t all = model.chosen().parts.size();
  REQUIRE(all > 3);
  CHECK(model.left_out_words().startsWith("Nothing is left out; "));
  CHECK(model.posts_words().endsWith(" of 12 posts with an instrument, the rest by eye"));
  QSignalSpy chosen(&model, &PrepareModel::chosenChanged);
  std::size_t before = all;
  std::vector<ChosenPart> last = model.chosen().parts;
  for (int minutes = 475; minutes >= 0; minutes -= PrepareModel::step_minutes) {
    model.set_minutes(minutes);
    const auto parts = model.chosen().parts;
    REQUIRE(parts.size() <= before);
    REQUIRE(std::equal(parts.begin(), parts.end(), last.begin()));  // from the front
    before = parts.size();
    last = parts;
  }
  CHECK(chosen.count() == 96);
  CHECK(model.chosen().parts.empty());
  CHECK(model.left_out_words().startsWith("Left out: 12 posts to look at, "));
  CHECK(prepared.lines()[0].figure == "left out");
  model.set_minutes(5);  // seven posts by eye
  CHECK(model.posts_words() == "7 of 12 posts looked at, the rest not reached");
  CHECK(prepared.lines()[0].name == "7 posts to look at");
  CHECK(prepared.lines()[0].why.endsWith("5 more left out."));
  CHECK(model.runs()->picture(0).marked().empty());
  model.set_minutes(480);
  CHECK(model.runs()->picture(0).marked().size() == all);
}

TEST_CASE("what was chosen is marked on the walk after a restart, until it is read", "[prepare]") {
  Prepared prepared;
  prepared.model().set_minutes(15);
  prepared.model().carry(0);
  const PreparedDay chosen = prepared.model().chosen();
  REQUIRE(chosen.parts.size() >= 2);
  QSignalSpy walk_wanted(&prepared.model(), &PrepareModel::walkWanted);
  QSignalSpy kept(&prepared.model(), &PrepareModel::kept);
  prepared.walk_it();
  CHECK(kept.count() == 1);
  CHECK(walk_wanted.count() == 1);
  prepared.start();
  CHECK(prepared.model().minutes() == 15);
  SplitMix64 chance(7);
  const auto marked = [&] {
    WalkModel walk(prepared.store(), prepared.world().clock, chance);
    walk.open(prepared.site().run);
    std::vector<Uuid> ids;
    for (const int part : walk.run()->marked())
      ids.push_back(walk.run()->sheet()->parts[static_cast<std::size_t>(part)].id);
    return ids;
  };
  CHECK(marked().size() == chosen.parts.size());
  const Uuid first = chosen.parts.front().component;
  CHECK(chosen.parts.front().what == ToRead::coating);
  const Uuid visit = id_of(20, 90);
  const cbor::Array read{std::int64_t{700}, std::int64_t{710}};
  bool saved = false;
  prepared.store().save(
      {{prepared.site().site, 10, prepared.site().site, prepared.site().person, {{1, 1}}, visit},
       {prepared.site().site,
        21,
        first,
        prepared.site().person,
        {{1, visit}, {2, prepared.site().gauge}, {3, read}, {4, 1}, {98, first}},
        {}}},
      {}, [&](const Result<>& done) { saved = done.has_value(); });
  prepared.store().settle();
  QCoreApplication::processEvents();
  REQUIRE(saved);
  const auto left = marked();
  CHECK(left.size() == chosen.parts.size() - 1);
  CHECK(std::find(left.begin(), left.end(), first) == left.end());
}

TEST_CASE("an instrument out of date stays behind, and each gauge takes one foil", "[prepare]") {
  const WalkedSite site(posts);
  const Uuid other = id_of(9, 3);
  const Prepared prepared(
      {created(site.organisation, other, 9, site.organisation, {{1, 1}, {2, "B1"}, {3, 10}}),
       {site.organisation,
        51,
        other,
        site.person,
        {{1, today().days - 400}, {2, today().days - 1}},
        {}},
       {site.organisation,
        51,
        site.gauge,
        site.person,
        {{1, today().days - 10}, {2, today().days}},
        {}}});
  const auto& rows = prepared.model().instruments()->rows();
  REQUIRE(rows.size() == 3);
  CHECK(rows[0].name == "Coating gauge A2");
  CHECK(rows[0].on);
  CHECK(rows[0].why.startsWith("in date to "));
  CHECK(rows[1].name == "Coating gauge B1");
  CHECK_FALSE(rows[1].on);
  CHECK(rows[1].why.startsWith("out of date since "));
  CHECK(rows[1].figure == "leave");
  CHECK(rows[2].why == "no certificate is written down");
  CHECK(prepared.model().take_words() ==
        "Take: coating gauge A2 with one check foil, torque wrench W7.");
}

TEST_CASE("hours of access limit the tape and are named", "[prepare]") {
  const WalkedSite site(posts);
  const auto hours = [&](int from, int to) {
    return cbor::Array{cbor::Array{std::int64_t{weekday(today())}, from, to}};
  };
  const Uuid steps = id_of(4, 9);
  const Uuid slip = id_of(4, 10);
  const cbor::Array never{cbor::Array{std::int64_t{weekday(Date{today().days + 1})},
                                      std::int64_t{0}, std::int64_t{60}}};
  std::vector<Entry> more{created(site.site, steps, 4, site.zone,
                                  {{1, "Steps"}, {13, hours(360, 600)}, {14, "low tide"}}),
                          created(site.site, id_of(5, 900), 5, steps, {{1, "S1"}, {2, 0}, {3, 0}}),
                          created(site.site, slip, 4, site.zone, {{1, "Slip"}, {13, never}}),
                          created(site.site, id_of(5, 901), 5, slip, {{1, "L1"}, {2, 0}, {3, 0}})};
  {
    const Prepared prepared(more);
    CHECK(prepared.model().most_minutes() == 480);  // the wall has no hours
    CHECK(prepared.model().access_words() ==
          "Hours of access: Steps from 06:00 to 10:00 (low tide), Slip not today");
    CHECK(prepared.model().posts_words().contains("13 posts"));  // nobody goes to the slip
    bool named = false;
    for (const auto& row : prepared.lines()) named = named || row.where.contains("06:00 to 10:00");
    CHECK(named);
  }
  more.push_back({site.site,
                  2,
                  site.run,
                  site.person,
                  {{1, cbor::Array{cbor::Array{std::int64_t{13}, hours(480, 600), cbor::Array{}}}}},
                  {}});
  const Prepared prepared(more);
  CHECK(prepared.model().most_minutes() == 240);
  prepared.model().set_minutes(300);
  CHECK(prepared.model().minutes() == 240);
}

TEST_CASE("a day that could not be kept says so and stays on the screen", "[prepare]") {
  Prepared prepared;
  const auto tables = taken(
      Database::open({(prepared.path() / "records.db").string(), Database::Access::write, {}}));
  auto& held = const_cast<Database&>(tables);
  taken(held.run("ALTER TABLE setting RENAME TO setting_away"));
  QSignalSpy walk_wanted(&prepared.model(), &PrepareModel::walkWanted);
  prepared.walk_it();
  CHECK(prepared.model().message().startsWith("Not kept: "));
  CHECK(walk_wanted.isEmpty());
  taken(held.run("ALTER TABLE setting_away RENAME TO setting"));
  prepared.walk_it();
  CHECK(prepared.model().message().isEmpty());
  CHECK(walk_wanted.count() == 1);
}

TEST_CASE("sites to carry have their bytes on this disk", "[prepare]") {
  const Prepared prepared;
  const auto& rows = prepared.model().carried()->rows();
  REQUIRE(rows.size() == 1);
  CHECK(rows[0].on);
  const std::int64_t bytes = prepared.model().day().begins.sites.front().bytes;
  CHECK(bytes > 1000);
  CHECK(rows[0].figure == day_words::size(bytes));
  prepared.model().carry(0);
  CHECK_FALSE(prepared.model().carried()->rows()[0].on);
  CHECK(prepared.model().carry_words() == "0 kB");
}

TEST_CASE("times and sizes are said in few figures", "[prepare]") {
  CHECK(day_words::time(0) == "0 min");
  CHECK(day_words::time(61) == "2 min");
  CHECK(day_words::time(3600) == "1 h");
  CHECK(day_words::time(19'800) == "5 h 30");
  CHECK(day_words::size(38'400'000) == "38 MB");
  CHECK(day_words::size(419'900) == "420 kB");
  CHECK(weekday(date_from_civil(2031, 5, 13)) == 2);
  CHECK(weekday(date_from_civil(1969, 12, 28)) == 7);
}
