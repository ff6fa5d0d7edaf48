#include "mobile/models/sites_model.h"

#include <QFontMetricsF>
#include <QLocale>
#include <QQmlEngine>
#include <algorithm>
#include <tuple>
#include <utility>

#include "mobile/models/part_words.h"
#include "schema/store/organisation_days.h"
#include "schema/store/visit_plan_store.h"

using kneerail::Database;
using kneerail::Result;
using kneerail::RunSheet;
using kneerail::SiteBand;
using kneerail::SiteDue;
using kneerail::SiteRun;
using kneerail::Uuid;
using kneerail::forecast::RunComing;

namespace {

/// "post 61, base flange"; what the portfolio calls it where it stands nowhere.
QString part_words(Database& tables, const Uuid& component, const std::string& otherwise) {
  auto row = tables.prepare(
      "SELECT place.parent FROM entity AS part JOIN entity AS place ON place.id = part.parent "
      "WHERE part.id = ?1");
  if (row) row->bind(1, component);
  const auto found = row ? row->step() : Result<bool>(kneerail::fail(row.error()));
  if (!found || !*found || row->is_null(0)) return QString::fromStdString(otherwise);
  const auto sheet = kneerail::read_run(tables, row->uuid(0));
  if (!sheet) return QString::fromStdString(otherwise);
  for (std::size_t i = 0; i < sheet->parts.size(); ++i)
    if (sheet->parts[i].id == component)
      return kneerail::post_and_part(*sheet, static_cast<int>(i));
  return QString::fromStdString(otherwise);
}

}  // namespace

SitesModel::SitesModel(std::filesystem::path folder, ForecastWorker& worker, kneerail::Clock& clock,
                       QObject* parent)
    : QAbstractListModel(parent), worker_(worker), clock_(clock), reading_(std::move(folder)) {
  connect(&worker, &ForecastWorker::reckoned, this, &SitesModel::read);
  connect(&worker, &ForecastWorker::othersReckoned, this, &SitesModel::read);
}

SitesModel::~SitesModel() = default;

int SitesModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(bands_.size());
}

QVariant SitesModel::data(const QModelIndex& index, int role) const {
  const auto row = static_cast<std::size_t>(index.row());
  if (!index.isValid() || row >= bands_.size()) return {};
  const SiteBand& band = bands_[row];
  const auto tag = [&] { return kneerail::tag_words(dues_[row], zone_.day(clock_.now())); };
  switch (role) {
    case NameRole:
      return QString::fromStdString(band.name);
    case AirRole:
      return kneerail::air_words(band);
    case CountsRole:
      return kneerail::count_words(band.posts, band.fittings);
    case LastVisitRole:
      return kneerail::last_visit_words(band);
    case SentenceRole:
      return sentence_of(row);
    case TagCaptionRole:
      return tag().caption;
    case TagDayRole:
      return tag().day;
    case TagSoonRole:
      return tag().soon;
    case SpokenRole:
      return spoken(row);
    case RunsRole:
      return QVariant::fromValue(runs_[row].get());
    default:
      return {};
  }
}

QHash<int, QByteArray> SitesModel::roleNames() const {
  return {{NameRole, "name"},         {AirRole, "air"},
          {CountsRole, "counts"},     {LastVisitRole, "lastVisit"},
          {SentenceRole, "sentence"}, {TagCaptionRole, "tagCaption"},
          {TagDayRole, "tagDay"},     {TagSoonRole, "tagSoon"},
          {SpokenRole, "spoken"},     {RunsRole, "runs"}};
}

QString SitesModel::count_words() const {
  std::int64_t posts = 0;
  for (const SiteBand& band : bands_) posts += band.posts;
  return tr("%1 · %2").arg(tr("%Ln site(s)", nullptr, static_cast<int>(bands_.size())),
                           tr("%Ln post(s)", nullptr, static_cast<int>(posts)));
}

QString SitesModel::kept_words() const {
  return tr("%Ln entries", nullptr, static_cast<int>(entries_));
}

kneerail::SiteForecast SitesModel::forecast_of(std::size_t site) const {
  kneerail::SiteForecast forecast;
  if (!reckoned_.coatings) {
    forecast.why_not = worker_.busy() ? tr("Reckoning what comes due.") : worker_.trouble();
    return forecast;
  }
  forecast.known = true;
  const SiteDue& due = dues_[site];
  forecast.by_now = due.what != SiteDue::What::nothing && due.day <= reckoned_.coatings->as_of();
  forecast.runs = coming_[site];
  if (!reckoned_.others)
    forecast.rest = worker_.others_trouble().isEmpty()
                        ? tr("Reckoning walls, set screws and grades.")
                        : worker_.others_trouble();
  return forecast;
}

QString SitesModel::sentence_of(std::size_t site) const {
  return kneerail::band_sentence(bands_[site], dues_[site], forecast_of(site));
}

QString SitesModel::spoken(std::size_t site) const {
  const SiteBand& band = bands_[site];
  const auto tag = kneerail::tag_words(dues_[site], zone_.day(clock_.now()));
  return tr("%1, %2, %3 %4. %5")
      .arg(QString::fromStdString(band.name), kneerail::count_words(band.posts, band.fittings),
           tag.caption, tag.day, sentence_of(site));
}

Result<SitesModel::Found> SitesModel::find(Database& tables, const Known& known,
                                           kneerail::Instant now) {
  Found found;
  auto days = kneerail::organisation_days(tables);
  if (!days) return kneerail::fail(days.error());
  found.zone = std::move(days->zone);
  auto bands = kneerail::read_sites(tables, found.zone);
  if (!bands) return kneerail::fail(bands.error());
  found.bands = std::move(*bands);
  auto entries = tables.number("SELECT count(*) FROM journal");
  if (!entries) return kneerail::fail(entries.error());
  found.entries = *entries;
  auto owner = tables.prepare("SELECT name FROM entity WHERE type = 1 ORDER BY id LIMIT 1");
  if (!owner) return kneerail::fail(owner.error());
  auto there = owner->step();
  if (!there) return kneerail::fail(there.error());
  if (*there) found.owner = owner->text(0);
  if (auto done = find_dues(tables, known, found.zone.day(now), found); !done)
    return kneerail::fail(done.error());
  return found;
}

/// When somebody is to come to each site and what comes due by then; the site where somebody has to
/// be first stands first, without a day last.
Result<> SitesModel::find_dues(Database& tables, const Known& known, kneerail::Date today,
                               Found& found) {
  const auto as_of = known.coatings ? known.coatings->as_of() : today;
  auto visits = kneerail::read_site_visits(tables, found.zone, as_of, found.bands);
  if (!visits) return kneerail::fail(visits.error());
  std::vector<std::pair<SiteBand, SiteDue>> order;
  for (std::size_t i = 0; i < found.bands.size(); ++i) {
    const auto visit =
        kneerail::next_visit_of(known.coatings.get(), known.others.get(), as_of, (*visits)[i]);
    SiteDue due = kneerail::site_due(found.bands[i], visit);
    if (due.why && due.why->part >= 0) {
      const auto part = static_cast<std::size_t>(due.why->part);
      due.part = part_words(tables, known.coatings->components[part],
                            known.coatings->portfolio.parts[part].id);
    }
    order.emplace_back(std::move(found.bands[i]), std::move(due));
  }
  std::stable_sort(order.begin(), order.end(), [](const auto& a, const auto& b) {
    const auto place = [](const std::pair<SiteBand, SiteDue>& one) {
      return std::tuple(one.second.what == SiteDue::What::nothing, one.second.day, one.first.name);
    };
    return place(a) < place(b);
  });
  found.bands.clear();
  for (auto& [band, due] : order) {
    if (known.coatings) {
      kneerail::forecast::ComingQuestion question;
      question.chance = band.chance;
      if (due.what != SiteDue::What::nothing)
        question.years = std::max(0.0, kneerail::years_between(as_of, due.day));
      found.coming.push_back(kneerail::forecast::coming_due(
          known.coatings->portfolio, known.coatings->coating_rows, band.reference, question));
    }
    found.bands.push_back(std::move(band));
    found.dues.push_back(std::move(due));
  }
  return kneerail::Done{};
}

void SitesModel::refresh() {
  worker_.catch_up();
  read();
}

void SitesModel::read() {
  Known known{worker_.reckoning(), worker_.others()};
  // A new reckoning is half there: no day goes back and forth meanwhile.
  if (!known.others && worker_.others_trouble().isEmpty() && reckoned_.others) known = reckoned_;
  reading_.ask<Found>([known, now = clock_.now()](Database& tables,
                                                  const auto&) { return find(tables, known, now); },
                      [this, known](Result<Found> found) {
                        if (found) return take(std::move(*found), known);
                        trouble_ = QString::fromStdString(found.error().message);
                        emit changed();
                      });
}

void SitesModel::take(Found found, const Known& known) {
  const bool same = std::equal(found.bands.begin(), found.bands.end(), bands_.begin(), bands_.end(),
                               [](const SiteBand& a, const SiteBand& b) { return a.id == b.id; });
  if (!same) beginResetModel();
  bands_ = std::move(found.bands);
  zone_ = std::move(found.zone);
  dues_ = std::move(found.dues);
  coming_ = std::move(found.coming);
  reckoned_ = known;
  owner_name_ = QString::fromStdString(found.owner);
  entries_ = found.entries;
  trouble_.clear();
  known_ = true;
  if (!same) {
    drawn_.clear();
    runs_.clear();
    for (std::size_t i = 0; i < bands_.size(); ++i) {
      runs_.push_back(std::make_unique<SiteRunsModel>());
      QQmlEngine::setObjectOwnership(runs_.back().get(), QQmlEngine::CppOwnership);
    }
  }
  for (std::size_t i = 0; i < bands_.size(); ++i) runs_[i]->show(bands_[i].runs);
  if (!same) {
    endResetModel();
  } else if (!bands_.empty()) {
    emit dataChanged(index(0), index(static_cast<int>(bands_.size()) - 1));
    for (const int site : drawn_) read_drawings(site);
  }
  emit changed();
}

void SitesModel::inView(int site) {
  if (site < 0 || site >= rowCount() || !drawn_.insert(site).second) return;
  read_drawings(site);
}

void SitesModel::read_drawings(int site) {
  for (const SiteRun& run : bands_[static_cast<std::size_t>(site)].runs) {
    const kneerail::Uuid id = run.id;
    reading_.ask<RunSheet>(
        [id](Database& tables, const auto&) { return kneerail::read_band(tables, id); },
        [this, id](Result<RunSheet> sheet) {
          if (sheet) {
            for (const auto& runs : runs_) runs->show_drawing(id, *sheet);
            return;
          }
          // It went meanwhile: the next reading leaves it out.
          if (sheet.error().fault == kneerail::Fault::not_found) return;
          const auto why = QString::fromStdString(sheet.error().message);
          for (const auto& runs : runs_) runs->cannot_draw(id, why);
        });
  }
}

void SitesModel::openRun(int site, int run) {
  if (site < 0 || site >= rowCount()) return;
  const auto& runs = bands_[static_cast<std::size_t>(site)].runs;
  if (run < 0 || run >= static_cast<int>(runs.size())) return;
  emit runOpened(runs[static_cast<std::size_t>(run)].id);
}

void SitesModel::prepareDay(int site) {
  if (site < 0 || site >= rowCount()) return;
  emit dayWanted(bands_[static_cast<std::size_t>(site)].id);
}

void SitesModel::openSite(int site) {
  if (site < 0 || site >= rowCount()) return;
  emit siteOpened(bands_[static_cast<std::size_t>(site)].id);
}

qreal SitesModel::pixelsPerMetre(qreal width_px, qreal beside_px, qreal least, qreal most,
                                 const QFont& names) const {
  const QFontMetricsF metrics(names);
  const auto length_m = [](const SiteRun& run) { return static_cast<qreal>(run.length_mm) / 1000; };
  const auto row_px = [&](const SiteBand& band, qreal scale) {
    qreal row = 0;
    for (const SiteRun& run : band.runs)
      row += beside_px + std::max(length_m(run) * scale,
                                  metrics.horizontalAdvance(QString::fromStdString(run.name)));
    return row;
  };
  qreal scale = most;
  for (const SiteBand& band : bands_) {
    qreal low = least;  // a row grows with the scale: halve between the two
    if (row_px(band, scale) <= width_px) continue;
    for (int i = 0; i < 20; ++i) {
      const qreal middle = (low + scale) / 2;
      (row_px(band, middle) <= width_px ? low : scale) = middle;
    }
    scale = low;
  }
  for (const SiteBand& band : bands_)
    for (const SiteRun& run : band.runs)
      if (length_m(run) * scale > width_px - beside_px && width_px > beside_px)
        scale = (width_px - beside_px) / length_m(run);
  return scale;
}

int SitesModel::roundMetres(qreal width_px, qreal pixels_per_metre) {
  int metres = 1;
  if (pixels_per_metre <= 0) return metres;
  for (int power = 1; power <= 10'000; power *= 10)
    for (const int times : {1, 2, 5})
      if (times * power * pixels_per_metre <= width_px) metres = times * power;
  return metres;
}
