#pragma once

// How one row of the tables changes one thing on a run's sheet: shared by who reads the whole run
// and who reads again what a few entries changed.

#include <optional>
#include <string_view>

#include "schema/store/run_store.h"

namespace kneerail {

/// Of `reading AS r`, as set_grade() takes them.
inline constexpr std::string_view columns_of_grade =
    "r.subject, r.v1, r.record, r.visit, r.who, r.t, r.carried, r.how";

/// The grade of a part that counts: of that visit it is `now`, else `last`.
void set_grade(SheetPart& part, const Statement& row, const Uuid& visit);

/// After set_grade(): what counted before this visit, and for how many visits it has been said
/// again as last time. Asks the tables only where that is not said yet, by one statement for all
/// parts: on a walked day they are hundreds.
class EarlierGrades {
 public:
  EarlierGrades(Database& tables, const Uuid& visit) : tables_(tables), visit_(visit) {}
  /// Errors: io, corrupt.
  Result<> read(SheetPart& part);

 private:
  Result<> ask(const SheetPart& part);

  Database& tables_;
  Uuid visit_;
  std::optional<Statement> statement_;
};

/// A row (subject, what) of the hand loads of the visit.
void add_look(SheetBay& bay, const Statement& row);

/// A row (subject, reason) of what the visit did not reach.
void add_skip(SheetPost& post, const Statement& row);

/// Seen: each of its parts and each bay after it has a look of this visit. From the parts and bays
/// as the sheet has them, and from why it was skipped.
void set_post_state(RunSheet& sheet, int post);

}  // namespace kneerail
