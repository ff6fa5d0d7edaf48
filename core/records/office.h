#pragma once

// Kinds 55, 56 and 57: stock on a shelf, reports issued, next visits agreed: what people acted on.

#include <optional>
#include <string>
#include <vector>

#include "core/records/provenance.h"

namespace kneerail {

enum class StockWhy { bought = 1, used, returned, scrapped, counted };
enum class ReportBlock {
  what_to_know = 1,
  run_as_it_stands,
  findings,
  grades,
  trends,
  due_dates,
  order_list,
  what_if,
  not_reached,
  strikes,
  corrections,
  method_and_limits,
  told_by_others,
  put_off
};
enum class VisitWhy { longest_interval = 1, forecast, event, finding, other };

/// Subject depot. "Counted" states the number on the shelf.
struct StockMoved {
  static constexpr int kind = 55;
  Uuid component_type;
  std::int64_t count = 0;  ///< signed
  StockWhy why = StockWhy::counted;
  std::optional<Uuid> work;
  std::optional<Date> day;
  Provenance provenance;
  bool operator==(const StockMoved&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.component_type);
    each(2, self.count);
    each(3, self.why);
    each(4, self.work);
    each(5, self.day);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject site.
struct ReportIssued {
  static constexpr int kind = 56;
  std::vector<Uuid> visits;
  std::vector<ReportBlock> blocks;
  Digest pdf_sha256{};
  std::optional<Date> day;
  std::optional<Digest> signed_copy;
  Provenance provenance;
  bool operator==(const ReportIssued&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.visits);
    each(2, self.blocks);
    each(3, self.pdf_sha256);
    each(4, self.day);
    each(5, self.signed_copy);
    Provenance::keys(self.provenance, each);
  }
};

struct FeedSequence {
  Uuid feed;
  std::int64_t last_seq = 0;
  bool operator==(const FeedSequence&) const = default;
  template <class Self, class Each>
  static void parts(Self& self, Each each) {
    each(self.feed);
    each(self.last_seq);
  }
};

/// Which program reckoned on which records.
struct Reckoned {
  std::string program_version;
  Date as_of;
  std::vector<FeedSequence> feeds;
  bool operator==(const Reckoned&) const = default;
  template <class Self, class Each>
  static void parts(Self& self, Each each) {
    each(self.program_version);
    each(self.as_of);
    each(self.feeds);
  }
};

/// Subject site.
struct NextVisitAgreed {
  static constexpr int kind = 57;
  Date day;
  VisitWhy why = VisitWhy::longest_interval;
  std::optional<std::string> note;
  std::optional<Date> proposed;
  std::optional<VisitWhy> proposed_why;
  std::optional<std::string> sentence_shown;
  std::optional<Reckoned> reckoned;
  Provenance provenance;
  bool operator==(const NextVisitAgreed&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.day);
    each(2, self.why);
    each(3, self.note);
    each(4, self.proposed);
    each(5, self.proposed_why);
    each(6, self.sentence_shown);
    each(7, self.reckoned);
    Provenance::keys(self.provenance, each);
  }
};

extern const KindInfo stock_moved_kind;
extern const KindInfo report_issued_kind;
extern const KindInfo next_visit_agreed_kind;

}  // namespace kneerail
