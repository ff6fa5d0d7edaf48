#include "core/fold/folding.h"

#include <algorithm>
#include <array>
#include <cstring>
#include <limits>
#include <tuple>
#include <utility>

namespace kneerail::fold {

std::optional<Folding::Recent>* Folding::recent_of(int table) {
  switch (table) {
    case table_clock_segment:
      return &recent_segment_;
    case table_clock_use:
      return &recent_use_;
    case table_visit_part:
      return &recent_part_;
    default:
      return nullptr;
  }
}

void Folding::forget_recent(int table) {
  if (auto* recent = recent_of(table)) recent->reset();
}

std::optional<Row> Folding::row(int table, std::initializer_list<Cell> key) {
  const std::span<const Cell> cells(key.begin(), key.size());
  auto* recent = recent_of(table);
  if (recent == nullptr) return store_.row(table, cells);
  if (!*recent || !std::equal(cells.begin(), cells.end(), (*recent)->key.begin())) {
    *recent = Recent{{cells.begin(), cells.end()}, store_.row(table, cells)};
  }
  return (*recent)->row;
}

std::vector<Row> Folding::rows(int table, int index, std::initializer_list<Cell> values) {
  return store_.rows(table, index, std::span(values.begin(), values.size()));
}

std::vector<Row> Folding::rows_of_key(int table, std::initializer_list<Cell> start) {
  return store_.rows_of_key(table, std::span(start.begin(), start.size()));
}

bool Folding::put(int table, Row row) {
  const int keys = tables()[static_cast<std::size_t>(table)].key_columns;
  const auto kept = store_.row(table, std::span(row).first(static_cast<std::size_t>(keys)));
  if (kept && *kept == row) return false;
  put_unseen(table, std::move(row));
  return true;
}

void Folding::put_unseen(int table, Row row) {
  forget_recent(table);
  store_.put(table, std::move(row));
}

bool Folding::erase(int table, std::initializer_list<Cell> key) {
  if (!row(table, key)) return false;
  forget_recent(table);
  store_.erase(table, std::span(key.begin(), key.size()));
  return true;
}

bool Folding::put_or_erase(int table, const std::optional<Row>& row,
                           std::initializer_list<Cell> key) {
  return row ? put(table, *row) : erase(table, key);
}

void Folding::touch(const Uuid& component) {
  if (touched_ != nullptr) touched_->components.push_back(component);
}

void Folding::widen(const Uuid& visit, std::int64_t t) {
  const bool fresh = last_span_ == nullptr || last_span_->first != visit;
  if (fresh) last_span_ = &*spans_.try_emplace(visit).first;
  Span& span = last_span_->second;
  span.first_t = std::min(span.first_t.value_or(t), t);
  span.last_t = std::max(span.last_t.value_or(t), t);
  if (fresh) ask({.stage = Stage::plain, .a = visit});
}

void Folding::respan(const Uuid& visit) {
  spans_[visit].again = true;
  ask({.stage = Stage::plain, .a = visit});
}

std::size_t SeenHash::operator()(const Seen& seen) const {
  // The ends of identifiers are random.
  std::array<std::size_t, 2> ends{};
  std::memcpy(&ends[0], &seen.subject.bytes[8], sizeof ends[0]);
  std::memcpy(&ends[1], &seen.visit.bytes[8], sizeof ends[1]);
  return ends[0] ^ (ends[1] * 31);
}

News& Folding::news_of(const Seen& seen) {
  if (last_news_ == nullptr || last_news_->first != seen) {
    last_news_ = &*news_.try_emplace(seen).first;
  }
  return last_news_->second;
}

News& Folding::news_of_row(const Uuid& post, const Uuid& visit) {
  ask({.stage = Stage::coverage, .a = post, .b = visit});
  return row_news_[{post, visit}];
}

News Folding::take_news_of_row(const Uuid& post, const Uuid& visit) {
  const auto taken = row_news_.extract({post, visit});
  return taken ? taken.mapped() : News{};
}

Folding::Span Folding::take_span(const Uuid& visit) {
  last_span_ = nullptr;
  const auto taken = spans_.extract(visit);
  return taken ? taken.mapped() : Span{};
}

Change Folding::change(const Uuid& record) {
  const auto kept = row(table_change, {record});
  return kept ? change_of(*kept) : Change{};
}

ClockOffset Folding::clock(const Uuid& dev, const Uuid& feed, std::int64_t g) {
  const auto kept = row(table_clock_segment, {dev, feed, g});
  return kept ? clock_of(*kept) : ClockOffset{};
}

Fact Folding::loaded(PlacedRecord placed) {
  Fact fact;
  fact.change = change(placed.record.id);
  fact.shown = corrected_body(placed.record, fact.change.corrected);
  fact.time =
      time_of(placed.record, fact.shown, clock(placed.device, placed.feed, placed.record.g));
  fact.key = merge_key(placed);
  fact.placed = std::move(placed);
  return fact;
}

std::optional<Fact> Folding::fact(const Uuid& id) {
  const auto kept = row(table_fact, {id});
  if (!kept) return std::nullopt;
  return loaded(placed_of_fact(*kept));
}

std::vector<Fact> Folding::facts_of(const Uuid& subject, int kind) {
  std::vector<Fact> facts;
  for (const Row& row : rows(table_fact, fact_by_subject, {subject, std::int64_t{kind}})) {
    facts.push_back(loaded(placed_of_fact(row)));
  }
  return facts;
}

std::vector<Fact> Folding::facts_about(const Uuid& about, int kind) {
  std::vector<Fact> facts;
  for (const Row& row : rows(table_fact, fact_by_about, {about, std::int64_t{kind}})) {
    facts.push_back(loaded(placed_of_fact(row)));
  }
  return facts;
}

bool replaces(const PlacedRecord& kept, const PlacedRecord& told) {
  const auto place = [](const PlacedRecord& one) {
    return std::tuple(one.feed, one.device, one.seq);
  };
  if (place(kept) == place(told)) return told.stamp && told.stamp != kept.stamp;
  const auto rank = [&place](const PlacedRecord& one) {
    return std::tuple(!one.stamp.has_value(), one.stamp ? one.stamp->hseq : 0, place(one));
  };
  return rank(told) < rank(kept);
}

void Folding::add(const PlacedRecord& placed) {
  if (!makes_rows(placed.record.kind)) return;
  ensure_clock(*this, placed);
  note_writer(placed);
  if (is_reading(placed.record.kind)) {
    add_reading(*this, placed);
  } else {
    add_fact(placed);
  }
}

void Folding::note_writer(const PlacedRecord& placed) {
  const std::pair writer(placed.record.who, placed.feed);
  if (writer.first.is_zero() || writer == last_writer_) return;
  last_writer_ = writer;
  if (row(table_feed_writer, {writer.first, writer.second})) return;
  store_.put(table_feed_writer, Row{writer.first, writer.second});
  ask_erased_objects(*this);
}

void Folding::add_fact(const PlacedRecord& placed) {
  if (const auto kept = row(table_fact, {placed.record.id})) {
    const PlacedRecord before = placed_of_fact(*kept);
    if (!replaces(before, placed)) return;
    store_.put(table_fact, fact_row(placed));
    if (before.device != placed.device || before.feed != placed.feed) {
      refresh(*this, before);
      if (const auto visit = visit_of(placed.record)) respan(*visit);
    }
  } else {
    store_.put(table_fact, fact_row(placed));
    const Fact fact = loaded(placed);
    if (const auto visit = visit_of(placed.record)) {
      widen(*visit, fact.time.t);
      if (is_counted(placed.record.kind)) {
        News& news = news_of({placed.record.subject, *visit});
        take_fact(fact, news.tally);
        news.not_reached = news.not_reached || placed.record.kind == kind::not_reached;
      }
    }
    refresh_but_coverage(*this, placed);
    return;
  }
  refresh(*this, placed);
}

void Folding::run() {
  while (run_some(std::numeric_limits<int>::max())) {
  }
}

void Folding::run_before(Stage stage) {
  while (!jobs_.empty() && jobs_.begin()->stage < stage)
    derive(jobs_.extract(jobs_.begin()).value());
}

bool Folding::run_some(int most) {
  for (int done = 0; done < most && !(jobs_.empty() && news_.empty()); ++done) {
    // Coverage comes last: by now every entity that came in has its row.
    if (!news_.empty() && (jobs_.empty() || jobs_.begin()->stage == Stage::coverage)) {
      last_news_ = nullptr;
      all_news_waits_ = false;
      ask_coverage_of(*this, std::exchange(news_, {}));
      continue;
    }
    derive(jobs_.extract(jobs_.begin()).value());
  }
  return !(jobs_.empty() && news_.empty());
}

void Folding::derive(const Job& job) {
  using Derive = void (*)(Folding&, const Job&);
  // In the order of Stage.
  constexpr Derive by_stage[] = {
      derive_segments,   derive_visit_group, derive_change, derive_entity,      derive_retirement,
      derive_seen_after, derive_twice,       derive_tag,    derive_life,        derive_latest,
      derive_visit_part, derive_stock,       derive_plain,  derive_next_visits, derive_object,
      derive_strike,     derive_closure,     derive_gap,    derive_finding,     derive_coverage};
  static_assert(std::size(by_stage) == static_cast<std::size_t>(Stage::coverage) + 1);
  by_stage[static_cast<std::size_t>(job.stage)](*this, job);
}

struct Batch::Inside {
  Folding folding;
};

Batch::Batch(TableStore& store, Touched* touched, Begins begins)
    : inside_(std::make_unique<Inside>(Inside{Folding(store, touched, begins)})) {}
Batch::~Batch() = default;

void Batch::add(const PlacedRecord& placed) {
  inside_->folding.add(placed);
}
void Batch::finish() {
  inside_->folding.run();
}
void Batch::settle() {
  inside_->folding.run_before(Stage::latest);
}
bool Batch::make(int rows_most) {
  return inside_->folding.run_some(rows_most);
}

void add(const PlacedRecord& placed, TableStore& store, Touched* touched) {
  Folding folding(store, touched);
  folding.add(placed);
  folding.run();
}

}  // namespace kneerail::fold
