#include "schema/exchange/portfolio_import.h"

#include <algorithm>
#include <numeric>
#include <unordered_set>
#include <utility>

#include "schema/exchange/import_ids.h"
#include "schema/exchange/portfolio_entries.h"
#include "schema/store/organisation_days.h"

namespace kneerail::exchange {
namespace {

constexpr std::size_t entries_together = 4'000;

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
  Result<> put(FileNumber file, Entry entry);
  Result<> put_all(FileNumber file, std::vector<Entry> entries);
  Result<> flush();
  Result<bool> is_there(const Uuid& id);
  Result<> put_register(const PortfolioEntries& entries);
  Result<> put_visits(const PortfolioEntries& entries);
  Result<> put_readings(const PortfolioEntries& entries, std::int32_t visit);

  Register& register_;
  const ImportOptions& options_;
  CheckedPortfolio& portfolio_;
  std::optional<Statement> is_there_;
  std::vector<Entry> waiting_;
  std::vector<FileNumber> files_of_waiting_;
  std::int64_t done_ = 0;  ///< rows
  std::int64_t all_ = 0;
};

Result<> Writer::begin() {
  auto statement = register_.tables().prepare("SELECT 1 FROM journal WHERE id = ?");
  if (!statement) return fail(statement.error());
  is_there_ = std::move(*statement);
  return Done{};
}

Result<bool> Writer::is_there(const Uuid& id) {
  is_there_->reset();
  is_there_->bind(1, id);
  auto found = is_there_->step();
  is_there_->reset();
  return found;
}

Result<> Writer::put(FileNumber file, Entry entry) {
  waiting_.push_back(std::move(entry));
  files_of_waiting_.push_back(file);
  return waiting_.size() < entries_together ? Result<>(Done{}) : flush();
}

Result<> Writer::put_all(FileNumber file, std::vector<Entry> entries) {
  for (auto& entry : entries)
    if (auto ok = put(file, std::move(entry)); !ok) return ok;
  return Done{};
}

Result<> Writer::flush() {
  std::vector<Entry> fresh;
  std::unordered_set<Uuid> together;
  for (std::size_t i = 0; i < waiting_.size(); ++i) {
    FileCount& count = portfolio_.files[files_of_waiting_[i]];
    auto there = is_there(*waiting_[i].id);
    if (!there) return fail(there.error());
    const bool is_fresh = !*there && together.insert(*waiting_[i].id).second;
    ++(is_fresh ? count.records_made : count.already_there);
    if (is_fresh) fresh.push_back(std::move(waiting_[i]));
  }
  waiting_.clear();
  files_of_waiting_.clear();
  if (!fresh.empty())
    if (auto saved = register_.save(fresh); !saved)
      return fail(saved.error(), "Import stopped; what was written stays and is whole. ");
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
      {visits_number, &PortfolioEntries::instruments},
      {components_number, &PortfolioEntries::sites},
      {components_number, &PortfolioEntries::zones},
      {components_number, &PortfolioEntries::runs}};
  for (const auto& [file, make] : makes)
    if (auto ok = put_all(file, (entries.*make)()); !ok) return ok;
  for (std::size_t run = 0; run < portfolio_.runs.size(); ++run)
    if (auto ok = put_all(components_number, entries.posts_and_bays(run)); !ok) return ok;
  for (std::size_t i = 0; i < portfolio_.components.size(); ++i) {
    if (auto ok = put(components_number, entries.component(i)); !ok) return ok;
    ++done_;
  }
  for (const auto& work : portfolio_.works) {
    if (auto ok = put(interventions_number, entries.work(work)); !ok) return ok;
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

Result<> Writer::put_readings(const PortfolioEntries& entries, std::int32_t visit) {
  if (auto ok = portfolio_.readings->begin_visit(visit); !ok) return ok;
  std::vector<StagedReading> set;
  StagedReading next;
  while (true) {
    auto more = portfolio_.readings->next(next);
    if (!more) return fail(more.error());
    if (!set.empty() && (!*more || !is_same_set(set.back(), next))) {
      if (auto ok = put(readings_number, entries.reading(set)); !ok) return ok;
      set.clear();
    }
    if (!*more) return Done{};
    ++done_;
    set.push_back(next);
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
    if (auto ok = put_all(visits_number, entries.visit(place)); !ok) return ok;
    ++done_;
    if (auto ok = put_readings(entries, static_cast<std::int32_t>(place)); !ok) return ok;
  }
  return Done{};
}

Result<> Writer::run() {
  if (auto ok = begin(); !ok) return ok;
  const Uuid own = derived_id("organisation", {options_.organisation_name});
  const Uuid organisation = register_.organisation().is_zero() ? own : register_.organisation();
  // One that an import made is offered again, and counted as already there, as all else is.
  if (organisation == own) {
    auto made =
        put(components_number, PortfolioEntries::organisation(own, options_.organisation_name));
    if (!made) return made;
  }
  auto days = organisation_days(register_.tables());
  if (!days) return fail(days.error());
  const PortfolioEntries entries(portfolio_, organisation, std::move(days->zone));
  if (auto ok = put_register(entries); !ok) return ok;
  if (auto ok = put_visits(entries); !ok) return ok;
  return flush();
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
std::int64_t ImportReport::left_out() const {
  return sum_of(files, &FileCount::left_out);
}

Result<ImportReport> import_portfolio(Register& into, const ImportOptions& options) {
  auto checked = check_portfolio(options.folder, options.staging, options.progress);
  if (!checked) return fail(checked.error());
  CheckedPortfolio& portfolio = **checked;
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
