// The Sites room: what its bands say, and that a register of any size is read away from the screen.

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QFont>
#include <QSignalSpy>

#include "mobile/models/sites_model.h"
#include "tests/schema/register_fixture.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

/// A register in a folder, and the room's model on it.
struct Room {
  explicit Room(const std::vector<Entry>& entries) {
    auto opened = taken(Register::open(world.options(folder.path(), Mode::create)));
    if (!entries.empty()) taken(opened->save(entries));
    opened.reset();
    worker = std::make_unique<ForecastWorker>(folder.path(), world.clock);
    model = std::make_unique<SitesModel>(folder.path(), *worker, world.clock);
  }

  /// Until every answer has come.
  void settle() const {
    while (model->busy() || worker->busy())
      QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  }
  void read() const {
    model->refresh();
    settle();
  }
  [[nodiscard]] QString says(int site, SitesModel::Role role) const {
    return model->data(model->index(site), role).toString();
  }
  [[nodiscard]] const SiteRunsModel& runs(int site) const {
    return *model->data(model->index(site), SitesModel::RunsRole).value<SiteRunsModel*>();
  }

  Folder folder;
  World world;
  std::unique_ptr<ForecastWorker> worker;
  std::unique_ptr<SitesModel> model;
};

/// Sites with one run each, of posts with so many parts.
std::vector<Entry> made_sites(int sites, int posts, int parts) {
  const Site names;
  std::vector<Entry> all = {
      created(names.organisation, names.organisation, 1, {}, {{1, "Skerrymouth Harbour"}})};
  std::uint32_t part = 0;
  for (int s = 0; s < sites; ++s) {
    const auto n = static_cast<std::uint32_t>(s);
    const Uuid site = id_of(2, n);
    const Uuid zone = id_of(3, n);
    const Uuid run = id_of(4, n);
    all.push_back(created(names.organisation, site, 2, names.organisation,
                          {{1, "Quay " + std::to_string(s)}}));
    all.push_back(created(site, zone, 3, site, {{1, "Sea side"}, {2, 5}, {3, 3}}));
    all.push_back(created(site, run, 4, zone, {{1, "Wall " + std::to_string(s)}, {5, 1100}}));
    for (int p = 0; p < posts; ++p) {
      const Uuid post = id_of(5, n * 100'000 + static_cast<std::uint32_t>(p));
      all.push_back(created(site, post, 5, run,
                            {{1, std::to_string(p + 1)}, {2, std::int64_t{1500} * p}, {3, p}}));
      for (int i = 0; i < parts; ++i)
        all.push_back(created(site, id_of(7, part++), 7, post, {{1, 5}, {4, 2}}));
    }
  }
  return all;
}

SiteBand band_with_runs() {
  SiteBand band;
  band.name = "North Mole";
  band.posts = 1;
  band.fittings = 4;
  band.runs.resize(2);
  band.runs[0].name = "Quay walk";
  band.runs[0].reference = "NM-A";
  band.runs[1].name = "Sea wall";
  band.runs[1].reference = "NM-B";
  return band;
}

Date day_of(int year, unsigned month, unsigned day) {
  return date_from_civil(year, month, day);
}

}  // namespace

TEST_CASE("a register without a site says so, and does not wait for a forecast", "[sites]") {
  const Room room({});
  CHECK_FALSE(room.model->known());
  room.read();
  CHECK(room.model->known());
  CHECK(room.model->empty());
  CHECK(room.model->rowCount() == 0);
  CHECK(room.model->trouble().isEmpty());
}

TEST_CASE("a folder that is no register says why nothing is shown", "[sites]") {
  const Folder folder;
  World world;
  ForecastWorker worker(folder.path() / "nothing", world.clock);
  SitesModel model(folder.path() / "nothing", worker, world.clock);
  model.refresh();
  while (model.busy()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  CHECK_FALSE(model.known());
  CHECK_FALSE(model.trouble().isEmpty());
}

TEST_CASE("a site of one post has its band, and its run can be walked", "[sites]") {
  const Room room(entries_of(Site()));
  room.read();
  REQUIRE(room.model->rowCount() == 1);
  CHECK(room.says(0, SitesModel::NameRole) == "North Mole");
  CHECK(room.says(0, SitesModel::CountsRole) == "1 post · 3 fittings");
  CHECK(room.says(0, SitesModel::TagCaptionRole) == "no day");
  CHECK(room.model->count_words() == "1 site · 1 post");
  CHECK(room.model->kept_words().toStdString() == "13 entries");  // the device's own among them
  room.model->inView(0);
  room.settle();
  CHECK(room.runs(0).picture(0).posts() == 1);
  Uuid opened;
  QObject::connect(room.model.get(), &SitesModel::runOpened, room.model.get(),
                   [&](const Uuid& run) { opened = run; });
  room.model->openRun(0, 1);
  CHECK(opened.is_zero());
  room.model->openRun(0, 0);
  CHECK(opened == Site().run);
}

TEST_CASE("drawings are read only of sites that are in view, and read again when asked",
          "[sites]") {
  const Room room(made_sites(3, 4, 1));
  room.read();
  REQUIRE(room.model->rowCount() == 3);
  room.model->inView(1);
  room.settle();
  CHECK(room.runs(0).picture(0).posts() == 0);
  CHECK(room.runs(1).picture(0).posts() == 4);
  {
    World later;
    later.clock.move_on(1000);
    auto opened = taken(Register::open(later.options(room.folder.path(), Mode::write)));
    const Uuid site = id_of(2, 1);
    taken(
        opened->save(created(site, id_of(5, 999), 5, id_of(4, 1), {{1, "5"}, {2, 6000}, {3, 4}})));
  }
  room.read();
  CHECK(room.runs(1).picture(0).posts() == 5);
  CHECK(room.says(1, SitesModel::CountsRole) == "5 posts · 4 fittings");
}

TEST_CASE("one scale fits the longest row, and a run of any length", "[sites]") {
  const Room small(made_sites(1, 11, 1));  // 15 m
  small.read();
  const QFont font;
  CHECK(small.model->pixelsPerMetre(800, 30, 1.2, 4, font) == Approx(4));
  const Room large(made_sites(1, 1001, 1));  // 1,500 m
  large.read();
  const qreal scale = large.model->pixelsPerMetre(800, 30, 1.2, 4, font);
  CHECK(scale * 1500 <= 770.01);
  CHECK(scale > 0);
  CHECK(SitesModel::roundMetres(150, 2.1) == 50);
  CHECK(SitesModel::roundMetres(150, 0.5) == 200);
  CHECK(SitesModel::roundMetres(150, 400) == 1);
}

TEST_CASE("a forecast that fails says why in the band", "[sites]") {
  const Room room(made_sites(1, 1, 0));
  room.worker->reckon();
  room.settle();
  room.read();
  CHECK_FALSE(room.worker->trouble().isEmpty());
  CHECK(room.says(0, SitesModel::SentenceRole).contains(room.worker->trouble()));
}

TEST_CASE("100,000 parts are read without holding the screen", "[.slow][sites]") {
  const Room room(made_sites(20, 500, 10));
  QElapsedTimer held;
  held.start();
  room.model->refresh();
  const bool at_once = !room.model->known();
  qint64 longest_ms = held.elapsed();
  while (room.model->busy()) {
    held.restart();
    QCoreApplication::processEvents(QEventLoop::AllEvents);
    longest_ms = std::max(longest_ms, held.elapsed());
  }
  CHECK(at_once);
  CHECK(room.model->rowCount() == 20);
  CHECK(room.model->count_words() == "20 sites · 10,000 posts");
  WARN("the screen was held " << longest_ms << " ms at most");
}

TEST_CASE("the tag says the day that stands, and the sentence why it moved", "[sites]") {
  SiteBand band = band_with_runs();
  CHECK(site_due(band, {}).what == SiteDue::What::nothing);
  forecast::NextVisit visit;
  visit.day = visit.agreed = day_of(2031, 8, 20);
  CHECK(site_due(band, visit).day == day_of(2031, 8, 20));
  CHECK(band_sentence(band, site_due(band, visit), {}) == "Nobody has graded a part yet.");
  const auto sentence = [&](forecast::VisitProposal why) {
    visit.proposals = {std::move(why)};
    visit.day = visit.proposals.front().day;
    visit.brought_forward = visit.agreed.has_value();
    SiteDue due = site_due(band, visit);
    due.part = "post 61, base flange";
    CHECK(due.day == visit.proposals.front().day);
    CHECK(due.moved_from == visit.agreed);
    return band_sentence(band, due, {}).replace(" Nobody has graded a part yet.", "");
  };
  using Why = forecast::VisitReason;
  const Date day = day_of(2031, 2, 1);
  CHECK(sentence({day, Why::faster_than_class, -1, "", {.zone = "sea"}}) ==
        "Brought forward from Aug 2031: the coating goes faster than its class.");
  CHECK(sentence(
            {day_of(2031, 8, 2), Why::longest_interval, -1, "", {.longest_interval_days = 365}}) ==
        "Brought forward from 20 Aug 2031: the owner's longest interval of 365 days ends.");
  CHECK(sentence({day,
                  Why::due_part,
                  3,
                  "",
                  {.limit = forecast::Limit::torque_minimum,
                   .owners_chance = 0.05,
                   .chance_now = 0.4,
                   .past = 3}}) ==
        "Brought forward from Aug 2031: post 61, base flange is past your chance of 5 % for loose "
        "set screws already, with 40 %; 2 more parts as well.");
  CHECK(
      sentence({day,
                Why::due_part,
                3,
                "",
                {.limit = forecast::Limit::wall_limit,
                 .owners_chance = 0.05,
                 .comes_up = day_of(2032, 2, 1)}}) ==
      "Brought forward from Aug 2031: post 61, base flange comes up to your chance of 5 % for its "
      "wall on 1 Feb 2032; half of that time is over.");
  visit.agreed.reset();
  CHECK(sentence(
            {day, Why::event, -1, "", {.event = "near miss", .event_day = day_of(2031, 1, 30)}}) ==
        "Proposed: nobody has come since the near miss of 30 Jan 2031.");
  CHECK(sentence({day, Why::event, -1, "", {.event = "crowd", .event_day = day_of(2031, 2, 2)}}) ==
        "Proposed: a look before the crowd of 2 Feb 2031.");
  CHECK(sentence({day, Why::narrows_a_rate, 3, "", {}}) ==
        "Proposed: one more reading of post 61, base flange would tell its rate by then.");
  CHECK(sentence({day, Why::longest_interval, -1, "", {.never_visited = true}}) ==
        "Proposed: nobody has looked at the whole of it yet.");
  SiteStrike strike;
  strike.re_erect_by = day_of(2031, 1, 1);
  band.strikes.push_back(strike);
  CHECK(site_due(band, visit).what == SiteDue::What::re_erect);
}

TEST_CASE("the tag turns to ink within sixty days and says when the day is past", "[sites]") {
  SiteDue due{SiteDue::What::visit, day_of(2031, 6, 2)};
  CHECK(tag_words(due, day_of(2031, 3, 1)).caption == "due");
  CHECK(tag_words(due, day_of(2031, 3, 1)).day == "2 Jun 2031");
  CHECK_FALSE(tag_words(due, Date{due.day.days - 61}).soon);
  CHECK(tag_words(due, Date{due.day.days - 60}).soon);
  CHECK(tag_words(due, day_of(2031, 6, 3)).caption == "was due");
  due.what = SiteDue::What::re_erect;
  CHECK(tag_words(due, day_of(2031, 3, 1)).caption == "re-erect by");
}

TEST_CASE("one is said of one and many of many", "[sites]") {
  SiteBand band = band_with_runs();
  CHECK(count_words(band.posts, band.fittings) == "1 post · 4 fittings");
  band.bays_closed = 1;
  band.hazards_open = 2;
  band.runs[1].grades = {0, 0, 0, 0, 1, 0};
  CHECK(band_sentence(band, {}, {}) ==
        "2 findings cannot wait and are not made safe. 1 bay closed off. 1 part at grade 4, on Sea "
        "wall.");
  SiteStrike strike;
  strike.run_name = "Slip wall";
  strike.since = day_of(2030, 11, 4);
  strike.posts_to_put_back = 26;
  strike.screws_to_sign = 1;
  band.strikes.push_back(strike);
  CHECK(band_sentence(band, {}, {})
            .startsWith(
                "Slip wall is down since 4 Nov 2030: 26 posts to put back and 1 screw to sign."));
}

TEST_CASE("the sentence says what the forecast expects by the day, and where most", "[sites]") {
  SiteBand band = band_with_runs();
  SiteForecast forecast;
  forecast.why_not = "Reckoning what comes due.";
  CHECK(band_sentence(band, {}, forecast).startsWith("Reckoning what comes due."));
  forecast.known = true;
  forecast.runs = {{"NM", "NM-A", 40, 1, 5}, {"NM", "NM-B", 60, 8, 30}};
  CHECK(band_sentence(band, {}, forecast)
            .startsWith(
                "By then 9 parts will likely be without zinc, most on Sea wall; 26 more may be."));
  forecast.runs = {{"NM", "NM-A", 40, 0, 0}, {"NM", "NM-B", 60, 0, 1}};
  CHECK(band_sentence(band, {}, forecast)
            .startsWith("By then 1 part may be without zinc, on Sea wall."));
  forecast.runs = {{"NM", "NM-A", 40, 0, 0}};
  forecast.by_now = true;
  CHECK(band_sentence(band, {}, forecast).startsWith("By now no part will be without zinc."));
  forecast.runs.clear();
  CHECK(band_sentence(band, {}, forecast).startsWith("No part of it can be reckoned yet."));
}

TEST_CASE("a reading that fails later leaves the bands and is said until it succeeds", "[sites]") {
  const Room room(made_sites(1, 4, 1));
  room.read();
  room.model->inView(0);
  room.settle();
  REQUIRE(room.model->known());
  REQUIRE(room.model->trouble().isEmpty());
  const auto rename = [&](const char* from, const char* to) {
    auto tables = taken(Database::open(
        {(room.folder.path() / "records.db").string(), Database::Access::write, {}}));
    taken(tables.run(std::string("ALTER TABLE ") + from + " RENAME TO " + to));
  };
  rename("journal", "journal_away");
  room.read();
  CHECK(room.model->rowCount() == 1);
  CHECK_FALSE(room.model->trouble().isEmpty());
  rename("journal_away", "journal");
  room.read();
  CHECK(room.model->trouble().isEmpty());
}

TEST_CASE("a run that cannot be drawn says why until it is", "[sites]") {
  SiteRunsModel runs;
  SiteRun run;
  run.id = id_of(4, 1);
  runs.show({run});
  const auto trouble = [&] {
    return runs.data(runs.index(0), SiteRunsModel::TroubleRole).toString();
  };
  CHECK(trouble().isEmpty());
  runs.cannot_draw(run.id, "The disk does not answer.");
  CHECK(trouble() == "The disk does not answer.");
  runs.show({run});  // the same runs, read again: still not drawn
  CHECK(trouble() == "The disk does not answer.");
  RunSheet sheet;
  sheet.id = run.id;
  runs.show_drawing(run.id, sheet);
  CHECK(trouble().isEmpty());
}
