#include "schema/exchange/portfolio_import.h"

#include <algorithm>
#include <array>
#include <numeric>
#include <span>
#include <unordered_set>
#include <utility>

#include "core/records/visit.h"
#include "schema/exchange/import_ids.h"
#include "schema/exchange/mends.h"
#include "schema/exchange/portfolio_entries.h"
#include "schema/store/organisation_days.h"

namespace kneerail::exchange {
namespace {

constexpr std::size_t entries_together = 4'000;

struct DayOnLine {
  Date day;
  std::int64_t line = 0;
  auto operator<=>(const DayOnLine&) const = default;
};

class Writer {
 public:
  Writer(Register& into, const ImportOptions& options, CheckedPortfolio& portfolio)
      : register_(into), options_(options), portfolio_(portfolio) {
    all_ = static_cast<std::int64_t>(portfolio.components.size() + portfolio.visits.size() +
                                     portfolio.works.size()) +
           portfolio.readings->count();
  }

  Result<> run();

 private:
  Result<> begin();
  Result<> put(Offer offer);
  Result<> put_all(FileNumber file, std::int64_t line, std::vector<Entry> entries);
  Result<> flush();
  Result<> settle(const Offer& offer, const Standing& standing, std::vector<Entry>& mends);
  Result<bool> is_moved(const Entry& visit, const VisitRow& row);
  Result<> leave_out_readings(std::int32_t visit);
  Result<> put_register(const PortfolioEntries& entries);
  Result<> put_components(const PortfolioEntries& entries);
  Result<> put_visits(const PortfolioEntries& entries);
  Result<> put_readings(const PortfolioEntries& entries, std::int32_t visit);

  Register& register_;
  const ImportOptions& options_;
  CheckedPortfolio& portfolio_;
  std::optional<Mends> mends_;
  std::vector<Offer> waiting_;
  std::array<std::int64_t, file_count> changed_since_{};  ///< records, by file
  std::int64_t done_ = 0;                                 ///< rows
  std::int64_t all_ = 0;
};

Result<> Writer::put(Offer offer) {
  waiting_.push_back(std::move(offer));
  return waiting_.size() < entries_together ? Result<>(Done{}) : flush();
}

Result<> Writer::put_all(FileNumber file, std::int64_t line, std::vector<Entry> entries) {
  for (auto& entry : entries)
    if (auto ok = put({std::move(entry), file, line}); !ok) return ok;
  return Done{};
}

/// Counts what is there already, and tells what the file says otherwise.
Result<> Writer::settle(const Offer& offer, const Standing& standing, std::vector<Entry>& mends) {
  FileCount& count = portfolio_.files[offer.file];
  if (standing.changed_since) ++changed_since_[offer.file];
  for (const auto& one : standing.differences)
    portfolio_.bad.add({count.file, offer.line, one.column, one.value, one.reason});
  if (!standing.differences.empty()) ++count.left_out;
  ++(standing.mend ? count.corrected : count.already_there);
  if (standing.mend) mends.push_back(*standing.mend);
  return Done{};
}

Result<> Writer::flush() {
  std::vector<Entry> fresh;
  std::unordered_set<Uuid> together;
  for (Offer& offer : waiting_) {
    FileCount& count = portfolio_.files[offer.file];
    auto standing = mends_->compare(offer);
    if (!standing) return fail(standing.error());
    if (standing->there) {
      if (auto ok = settle(offer, *standing, fresh); !ok) return ok;
      continue;
    }
    const bool is_fresh = together.insert(*offer.entry.id).second;
    ++(is_fresh ? count.records_made : count.already_there);
    if (is_fresh) fresh.push_back(std::move(offer.entry));
  }
  waiting_.clear();
  if (!fresh.empty())
    if (auto saved = register_.save(fresh); !saved)
      return fail(saved.error(),
                  "Import stopped; what was written before these rows stays and is whole. ");
  if (options_.progress && !options_.progress(done_, all_, "writing"))
    return fail(Fault::cancelled, "Stopped after " + std::to_string(done_) + " of " +
                                      std::to_string(all_) +
                                      " rows. What was written stays and is whole; import again to "
                                      "complete it.");
  return Done{};
}

Result<> Writer::put_register(const PortfolioEntries& entries) {
  using Make = std::vector<Entry> (PortfolioEntries::*)() const;
  const std::pair<FileNumber, Make> makes[] = {
      {components_number, &PortfolioEntries::rule_sets},
      {components_number, &PortfolioEntries::component_types},
      {visits_number, &PortfolioEntries::people},
      {visits_number, &PortfolioEntries::instruments}};
  for (const auto& [file, make] : makes)
    if (auto ok = put_all(file, 0, (entries.*make)()); !ok) return ok;
  auto sites = entries.sites();
  for (std::size_t i = 0; i < sites.size(); ++i)
    if (auto ok = put({std::move(sites[i]), components_number, portfolio_.sites[i].line}); !ok)
      return ok;
  auto zones = entries.zones();
  for (std::size_t i = 0; i < zones.size(); ++i)
    if (auto ok = put({std::move(zones[i]), components_number, portfolio_.zones[i].line}); !ok)
      return ok;
  return put_components(entries);
}

Result<> Writer::put_components(const PortfolioEntries& entries) {
  if (auto ok = put_all(components_number, 0, entries.runs()); !ok) return ok;
  for (std::size_t run = 0; run < portfolio_.runs.size(); ++run)
    if (auto ok = put_all(components_number, 0, entries.posts_and_bays(run)); !ok) return ok;
  for (std::size_t i = 0; i < portfolio_.components.size(); ++i) {
    const ComponentRow& row = portfolio_.components[i];
    Offer offer{entries.component(i), components_number, row.line};
    offer.place = PlaceOnRun{id_of_reference("run", row.run), row.chainage_mm};
    if (auto ok = put(std::move(offer)); !ok) return ok;
    ++done_;
  }
  for (const auto& work : portfolio_.works) {
    if (auto ok = put({entries.work(work), interventions_number, work.row.line}); !ok) return ok;
    ++done_;
  }
  return Done{};
}

/// Whether a reading goes into the same record as the one before it.
bool is_same_set(const StagedReading& a, const StagedReading& b) {
  const bool one_value = a.row.quantity == forecast::Quantity::grade ||
                         a.row.quantity == forecast::Quantity::torque_nm;
  return !one_value && a.component == b.component && a.row.quantity == b.row.quantity &&
         a.row.spot == b.row.spot && a.record == b.record;
}

/// Whether no replicate is missing between the first and the last.
bool is_complete(const std::vector<StagedReading>& set) {
  return static_cast<std::size_t>(set.back().row.replicate) == set.size();
}

Result<> Writer::put_readings(const PortfolioEntries& entries, std::int32_t visit) {
  if (auto ok = portfolio_.readings->begin_visit(visit); !ok) return ok;
  std::vector<StagedReading> set;
  StagedReading next;
  while (true) {
    auto more = portfolio_.readings->next(next);
    if (!more) return fail(more.error());
    if (!set.empty() && (!*more || !is_same_set(set.back(), next))) {
      Offer offer{entries.reading(set), readings_number, set.front().row.line};
      offer.complete = is_complete(set);
      if (auto ok = put(std::move(offer)); !ok) return ok;
      set.clear();
    }
    if (!*more) return Done{};
    ++done_;
    set.push_back(next);
  }
}

/// Whether the register has this visit on another day: written again, all its readings would count
/// twice.
Result<bool> Writer::is_moved(const Entry& visit, const VisitRow& row) {
  auto day = mends_->other_day(*visit.id);
  if (!day) return fail(day.error());
  if (visit.kind != VisitOpened::kind || uuid_from_text(row.id) || !*day) return false;
  FileCount& count = portfolio_.files[visits_number];
  ++count.left_out;
  portfolio_.bad.add({count.file, row.line, "date", to_text(row.day),
                      "the register has this visit on " + to_text(**day) +
                          ". It stays, and so do its readings; those of the file are kept out."});
  return true;
}

Result<> Writer::leave_out_readings(std::int32_t visit) {
  if (auto ok = portfolio_.readings->begin_visit(visit); !ok) return ok;
  StagedReading next;
  while (true) {
    auto more = portfolio_.readings->next(next);
    if (!more) return fail(more.error());
    if (!*more) return Done{};
    ++done_;
    ++portfolio_.files[readings_number].left_out;
  }
}

/// In order of day, so that the register grows as it would have grown.
Result<> Writer::put_visits(const PortfolioEntries& entries) {
  std::vector<std::size_t> order(portfolio_.visits.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [this](std::size_t a, std::size_t b) {
    return portfolio_.visits[a].day < portfolio_.visits[b].day;
  });
  for (const auto place : order) {
    const VisitRow& row = portfolio_.visits[place];
    auto opened = entries.visit(place);
    auto moved = is_moved(opened.front(), row);
    if (!moved) return fail(moved.error());
    ++done_;
    if (*moved) {
      if (auto ok = leave_out_readings(static_cast<std::int32_t>(place)); !ok) return ok;
      continue;
    }
    if (auto ok = put_all(visits_number, row.line, std::move(opened)); !ok) return ok;
    if (auto ok = put_readings(entries, static_cast<std::int32_t>(place)); !ok) return ok;
  }
  return Done{};
}

Result<> Writer::run() {
  auto mends = Mends::prepare(register_.tables());
  if (!mends) return fail(mends.error());
  mends_ = std::move(*mends);
  const Uuid own = derived_id("organisation", {options_.organisation_name});
  const Uuid organisation = register_.organisation().is_zero() ? own : register_.organisation();
  // One that an import made is offered again, and counted as already there, as all else is.
  if (organisation == own) {
    auto made = put(
        {PortfolioEntries::organisation(own, options_.organisation_name), components_number, 0});
    if (!made) return made;
  }
  auto days = organisation_days(register_.tables());
  if (!days) return fail(days.error());
  const PortfolioEntries entries(portfolio_, organisation, std::move(days->zone));
  if (auto ok = put_register(entries); !ok) return ok;
  if (auto ok = put_visits(entries); !ok) return ok;
  if (auto ok = flush(); !ok) return ok;
  for (std::size_t i = 0; i < file_count; ++i)
    if (changed_since_[i] > 0)
      portfolio_.notes.push_back(portfolio_.files[i].file + ": " +
                                 std::to_string(changed_since_[i]) +
                                 " of the records have been corrected in the register since they "
                                 "were imported; that stays.");
  portfolio_.bad.sort();
  return Done{};
}

std::int64_t sum_of(const std::vector<FileCount>& files, std::int64_t FileCount::*part) {
  return std::accumulate(
      files.begin(), files.end(), std::int64_t{0},
      [part](std::int64_t sum, const FileCount& file) { return sum + file.*part; });
}

}  // namespace

std::int64_t ImportReport::records_made() const {
  return sum_of(files, &FileCount::records_made);
}
std::int64_t ImportReport::already_there() const {
  return sum_of(files, &FileCount::already_there);
}
std::int64_t ImportReport::corrected() const {
  return sum_of(files, &FileCount::corrected);
}
std::int64_t ImportReport::left_out() const {
  return sum_of(files, &FileCount::left_out);
}

namespace {

/// "visits.csv: 2 days are after 2026-06-30, the first of them 2028-05-10 on line 10 ...".
void note_after(Date today, std::string_view file, std::span<const DayOnLine> days,
                std::vector<std::string>& notes) {
  std::int64_t count = 0;
  std::optional<DayOnLine> first;
  for (const DayOnLine& one : days) {
    if (one.day <= today) continue;
    ++count;
    if (!first || one < *first) first = one;
  }
  if (count == 0) return;
  notes.push_back(std::string(file) + ": " + std::to_string(count) +
                  (count == 1 ? " row is" : " rows are") + " dated after today, " +
                  (count == 1 ? "" : "first ") + to_text(first->day) + " on line " +
                  std::to_string(first->line) +
                  ". Is the year right? No forecast as of an earlier day uses what it says.");
}

void note_future(Date today, CheckedPortfolio& portfolio) {
  std::vector<DayOnLine> visits;
  for (const VisitRow& row : portfolio.visits) visits.push_back({row.day, row.line});
  note_after(today, visits_file, visits, portfolio.notes);
  std::vector<DayOnLine> works;
  for (const CheckedWork& work : portfolio.works) works.push_back({work.row.day, work.row.line});
  note_after(today, interventions_file, works, portfolio.notes);
}

}  // namespace

Result<ImportReport> import_portfolio(Register& into, const ImportOptions& options) {
  auto checked = check_portfolio(options.folder, options.staging, options.progress);
  if (!checked) return fail(checked.error());
  CheckedPortfolio& portfolio = **checked;
  if (options.today) note_future(*options.today, portfolio);
  ImportReport report;
  report.imported = portfolio.bad.none() || options.good_rows;
  if (report.imported)
    if (auto written = Writer(into, options, portfolio).run(); !written)
      return fail(written.error());
  report.files.assign(portfolio.files.begin(), portfolio.files.end());
  report.bad = std::move(portfolio.bad);
  report.notes = std::move(portfolio.notes);
  return report;
}

}  // namespace kneerail::exchange
