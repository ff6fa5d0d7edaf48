// Who reads and reckons away from the screens: nobody waits for what nobody wants, and what was
// entered since is reckoned when it is asked for.

#include <QCoreApplication>
#include <QSignalSpy>
#include <atomic>
#include <fstream>
#include <future>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <sstream>

#include "mobile/commands/commands.h"
#include "mobile/models/forecast_words.h"
#include "mobile/models/sites_model.h"
#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr std::int64_t day_ms = 24LL * 60 * 60 * 1000;
constexpr std::int64_t year_ms = 365 * day_ms;
constexpr int posts = 12;

/// A statement without an end.
Result<int> count_for_ever(Database& tables) {
  auto counted = tables.number(
      "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT count(*) FROM n");
  if (!counted) return fail(counted.error());
  return 0;
}

/// A site whose tees were measured for two years as their class says.
class MeasuredSite {
 public:
  MeasuredSite() {
    auto opened = taken(Register::open(world_.options(path(), Mode::create)));
    taken(opened->save(site_.things()));
    measure(*opened, 880);
    world_.clock.move_on(2 * year_ms);
    measure(*opened, 820);
    agreed_ = Date{today().days + 7 * 365};
    taken(opened->save(
        Entry{site_.site, 57, site_.site, site_.person, {{1, agreed_.days}, {2, 1}}, {}}));
    world_.clock.move_on(3 * year_ms);
  }

  [[nodiscard]] std::filesystem::path path() const { return folder_.path() / "register"; }
  [[nodiscard]] const WalkedSite& site() const { return site_; }
  [[nodiscard]] Date agreed() const { return agreed_; }
  [[nodiscard]] Date today() { return Date{static_cast<std::int32_t>(clock().now().ms / day_ms)}; }
  SteadyClock& clock() { return world_.clock; }

  void save(const std::vector<Entry>& entries) {
    auto opened = taken(Register::open(world_.options(path(), Mode::write)));
    taken(opened->save(entries));
  }
  void measure_today(std::int64_t tenth_um) {
    auto opened = taken(Register::open(world_.options(path(), Mode::write)));
    measure(*opened, tenth_um);
  }

 private:
  void measure(Register& opened, std::int64_t tenth_um) {
    const Uuid visit = id_of(20, ++visits_);
    std::vector<Entry> entries = {{site_.site, 10, site_.site, site_.person, {{1, 1}}, visit}};
    for (std::size_t i = 0; i < site_.tees.size(); ++i) {
      const std::int64_t read = tenth_um + 5 * static_cast<std::int64_t>(i);
      entries.push_back({site_.site,
                         21,
                         site_.tees[i],
                         site_.person,
                         {{1, visit},
                          {2, site_.gauge},
                          {3, cbor::Array{read, read + 12, read - 7}},
                          {4, 1},
                          {98, site_.tees[i]}},
                         {}});
    }
    taken(opened.save(entries));
  }

  Folder folder_;
  World world_;
  WalkedSite site_{posts};
  std::uint32_t visits_ = 1;
  Date agreed_;
};

}  // namespace

TEST_CASE("closing does not wait for a statement that never ends", "[worker]") {
  const SiteFolder folder(false);
  std::promise<void> begun;
  std::atomic<bool> second_begun = false;
  std::optional<Fault> ended_with;
  {
    ReadingThread thread(folder.path());
    thread.ask<int>(
        [&](Database& tables, const auto&) -> Result<int> {
          begun.set_value();
          auto counted = count_for_ever(tables);
          if (!counted) ended_with = counted.error().fault;
          return counted;
        },
        [](const Result<int>&) { FAIL("nobody is there to be told"); });
    thread.ask<int>(
        [&](Database&, const auto&) -> Result<int> {
          second_begun = true;
          return 0;
        },
        [](const Result<int>&) { FAIL("nobody is there to be told"); });
    begun.get_future().wait();
    CHECK(thread.busy());
  }
  CHECK(ended_with == Fault::cancelled);
  CHECK_FALSE(second_begun);
}

TEST_CASE("work that is left off is told as cancelled, and the next is done", "[worker]") {
  const SiteFolder folder(false);
  ReadingThread thread(folder.path());
  std::optional<Fault> first;
  std::optional<int> second;
  const auto stop =
      thread.ask<int>([](Database& tables, const auto&) { return count_for_ever(tables); },
                      [&](const Result<int>& told) {
                        if (!told) first = told.error().fault;
                      });
  thread.ask<int>([](Database&, const auto&) -> Result<int> { return 7; },
                  [&](const Result<int>& told) {
                    if (told) second = *told;
                  });
  stop->store(true);
  while (thread.busy()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  CHECK(first == Fault::cancelled);
  CHECK(second == 7);
}

TEST_CASE("a reckoning that is stopped says so, and a newer one takes its place", "[worker]") {
  MeasuredSite made;
  {
    auto opened = taken(Register::open({.folder = made.path(), .mode = Mode::read}));
    const std::atomic<bool> stop = true;
    const auto reckoned = reckon(opened->tables(), made.today(), &stop);
    REQUIRE_FALSE(reckoned);
    CHECK(reckoned.error().fault == Fault::cancelled);
  }
  ForecastWorker worker(made.path(), made.clock());
  QSignalSpy told(&worker, &ForecastWorker::reckoned);
  worker.reckon();
  worker.reckon();
  while (worker.busy()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  CHECK(told.count() == 1);
  CHECK(worker.trouble().isEmpty());
  CHECK(worker.reckoning() != nullptr);
}

TEST_CASE("coatings are told first, then every other limit; closing waits for neither",
          "[worker]") {
  MeasuredSite made;
  std::optional<ForecastWorker> worker(std::in_place, made.path(), made.clock());
  QSignalSpy coatings(&*worker, &ForecastWorker::reckoned);
  QSignalSpy others(&*worker, &ForecastWorker::othersReckoned);
  worker->reckon();
  while (coatings.isEmpty()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  CHECK(others.isEmpty());
  CHECK(worker->busy());
  CHECK(worker->others() == nullptr);
  while (worker->busy()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  REQUIRE(others.count() == 1);
  REQUIRE(worker->others() != nullptr);
  const auto& known = *worker->reckoning();
  std::set<forecast::Limit> limits;
  for (const auto& row : worker->others()->limits.rows) limits.insert(row.limit);
  CHECK(limits.contains(forecast::Limit::torque_minimum));
  CHECK(limits.contains(forecast::Limit::grade_5));
  CHECK(limits.contains(forecast::Limit::coating_exhausted));
  CHECK_FALSE(worker->others()->worst_first.empty());
  const auto told = told_of(known, worker->others().get(), 0);
  CHECK(told.whole);
  CHECK(told.outlook);
  // The rest of a reckoning is left off with a newer one, and with who asked for it.
  const std::atomic<bool> stop = true;
  const auto stopped = reckon_others(known, &stop);
  REQUIRE_FALSE(stopped);
  CHECK(stopped.error().fault == Fault::cancelled);
  std::filesystem::remove(made.path() / "forecast.kept");
  worker->reckon();
  while (coatings.count() < 2) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  worker.reset();
  CHECK(others.count() == 1);
}

TEST_CASE("a grade just given is in every limit's row of its part", "[worker]") {
  MeasuredSite made;
  auto opened =
      taken(Register::open({.folder = made.path(), .mode = Mode::write, .clock = &made.clock()}));
  const Reckoning known = taken(reckon(opened->tables(), made.today()));
  const OtherReckoning others = taken(reckon_others(known));
  const Uuid& tee = made.site().tees.front();
  const auto grade_row = [&] {
    const auto told =
        taken(told_with_latest(opened->tables(), known, &others, made.site().site, tee));
    CHECK(told.whole);
    for (const auto& row : told.rows)
      if (row.limit == forecast::Limit::grade_5) return row;
    FAIL("no row of the grade");
    return forecast::LimitForecast{};
  };
  const auto before = grade_row();
  const auto whole = told_of(known, &others, known.part_places.at(tee));
  CHECK(whole.rows.back().p_by == before.p_by);
  const Uuid visit = id_of(20, 77);
  taken(opened->save(std::vector<Entry>{
      {made.site().site, 10, made.site().site, made.site().person, {{1, 1}}, visit},
      {made.site().site,
       20,
       tee,
       made.site().person,
       {{1, visit}, {2, 3}, {5, 1}, {98, tee}},
       {}}}));
  const auto after = grade_row();
  CHECK(after.readings_used == before.readings_used + 1);
  CHECK(after.p_by[3] > before.p_by[3]);
}

TEST_CASE("what was reckoned is kept for the next start, and of other readings thrown away",
          "[worker]") {
  MeasuredSite made;
  const auto begun = [&] {
    auto opened = taken(Register::open({.folder = made.path(), .mode = Mode::read}));
    return taken(
        reckon_or_kept(opened->tables(), made.today(), made.path() / "forecast.kept", nullptr));
  };
  CHECK_FALSE(begun().others);
  {
    ForecastWorker worker(made.path(), made.clock());
    worker.reckon();
    while (worker.busy()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
    const Begun kept = begun();
    REQUIRE(kept.others);
    const auto same = [](const std::vector<forecast::LimitForecast>& a,
                         const std::vector<forecast::LimitForecast>& b) {
      return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const auto& x, const auto& y) {
        return x.part == y.part && x.limit == y.limit && x.p_by == y.p_by &&
               x.answered == y.answered;
      });
    };
    CHECK(same(kept.coatings.coating_rows, worker.reckoning()->coating_rows));
    CHECK(same(kept.others->limits.rows, worker.others()->limits.rows));
    CHECK(kept.others->worst_first == worker.others()->worst_first);
  }
  ForecastWorker next(made.path(), made.clock());
  QSignalSpy told(&next, &ForecastWorker::reckoned);
  bool at_once = false;
  QObject::connect(&next, &ForecastWorker::reckoned, &next,
                   [&] { at_once = next.others() != nullptr; });
  next.reckon();
  while (next.busy()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  CHECK(told.count() == 1);
  CHECK(at_once);
  made.measure_today(500);
  CHECK_FALSE(begun().others);
  next.reckon();
  while (next.busy()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  CHECK_FALSE(at_once);
  std::ofstream(made.path() / "forecast.kept", std::ios::app) << "x";
  CHECK_FALSE(begun().others);
}

TEST_CASE("the due tag says the day and the reason that the command visits says",
          "[worker][sites]") {
  MeasuredSite made;
  const WalkedSite& site = made.site();
  const cbor::Map limits{{2, 300}, {3, 800}, {14, cbor::Map{{1, 50}}}};
  const auto changed = [](std::int64_t field, cbor::Value value) {
    return cbor::Map{{1, cbor::Array{cbor::Array{field, std::move(value), cbor::Array{}}}}};
  };
  const Uuid visit = id_of(20, 90);
  made.save({{site.site, 2, site.run, site.person, changed(15, std::int64_t{1}), {}},
             {site.organisation, 2, site.rules, site.person, changed(3, limits), {}},
             {site.site, 10, site.site, site.person, {{1, 1}}, visit},
             {site.site,
              20,
              site.tees.front(),
              site.person,
              {{1, visit}, {2, 4}, {5, 1}, {98, site.tees.front()}},
              {}}});
  ForecastWorker worker(made.path(), made.clock());
  SitesModel sites(made.path(), worker, made.clock());
  const auto settle = [&] {
    while (sites.busy() || worker.busy())
      QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  };
  const auto says = [&](SitesModel::Role role) {
    return sites.data(sites.index(0), role).toString();
  };
  worker.reckon();
  settle();
  REQUIRE(worker.others() != nullptr);
  std::ostringstream out;
  std::ostringstream err;
  commands::Console console{.out = out, .err = err};
  const std::string folder = made.path().string();
  const std::string as_of = to_text(made.today());
  const char* words[] = {"kneerail", "visits",      "--data", folder.c_str(),
                         "--as-of",  as_of.c_str(), "--json", "-"};
  REQUIRE(commands::run(static_cast<int>(std::size(words)), words, console) == 0);
  const auto said = nlohmann::json::parse(out.str()).at("visits").at(0);
  INFO(said.dump(1));
  INFO(says(SitesModel::SentenceRole).toStdString());
  CHECK(said.at("brought_forward") == true);
  CHECK(said.at("proposals").at(0).at("reason") == "due_part");  // no rule of the register alone
  const auto day = date_from_text(said.at("day").get<std::string>());
  REQUIRE(day);
  CHECK(says(SitesModel::TagDayRole).toStdString() == whole_day(*day).toStdString());
  CHECK(says(SitesModel::SentenceRole).startsWith("Brought forward from "));
  CHECK(says(SitesModel::SentenceRole).contains("your chance of 5 % for "));
}

TEST_CASE("today's readings bring the next visit forward", "[worker][sites]") {
  MeasuredSite made;
  ForecastWorker worker(made.path(), made.clock());
  SitesModel sites(made.path(), worker, made.clock());
  const auto settle = [&] {
    while (sites.busy() || worker.busy())
      QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  };
  const auto says = [&](SitesModel::Role role) {
    return sites.data(sites.index(0), role).toString();
  };
  worker.reckon();
  settle();
  REQUIRE(worker.reckoning() != nullptr);
  CHECK(says(SitesModel::SentenceRole)
            .startsWith("Brought forward from " + month_and_year(made.agreed()) +
                        ": one more reading of post 118, top-rail tee would tell its rate"));
  QSignalSpy reckoned(&worker, &ForecastWorker::reckoned);
  sites.refresh();
  settle();
  CHECK(reckoned.isEmpty());  // nothing was entered

  made.measure_today(500);
  for (const Uuid& tee : made.site().tees) worker.entered(tee);
  sites.refresh();
  settle();
  CHECK(reckoned.count() == 1);
  INFO(says(SitesModel::SentenceRole).toStdString());
  INFO(says(SitesModel::TagDayRole).toStdString());
  CHECK(says(SitesModel::TagDayRole).toStdString() ==
        whole_day(Date{made.today().days + 365}).toStdString());
  CHECK(says(SitesModel::SentenceRole)
            .startsWith("Brought forward from " + month_and_year(made.agreed()) +
                        ": the coating goes faster than its class."));
  sites.refresh();
  settle();
  CHECK(reckoned.count() == 1);
}
