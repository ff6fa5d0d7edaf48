#pragma once

// What an import offers, against what stands in the register under the same identifier. A record is
// one set of replicates, and a file mended after it was imported says something else of it.
//
// Each value is looked at three times: what the file says now, what it said when it was last
// brought in, and what stands. As it stands: already there. The file is as it was: somebody
// corrected the register meanwhile, and that stays. The register is as the file had it: the file
// was mended, and a correction (kind 70) or a set (kind 2) brings it in, with what it saw as its
// base. All three differ: two people say two things, and a person has to answer. A replicate that
// is gone from a file is no correction: its row may have been kept out.

#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "schema/database.h"
#include "schema/store/register.h"

namespace kneerail::exchange {

/// Where along which run a part stands by its file.
struct PlaceOnRun {
  Uuid run;
  std::int64_t chainage_mm = 0;
};

struct Offer {
  Entry entry;  ///< with an id
  std::size_t file = 0;
  std::int64_t line = 0;
  bool complete = true;  ///< false: replicates between the first and the last are missing
  std::optional<PlaceOnRun> place{};  ///< of a component
};

/// A value that is not taken over: the column, what the file says, and the sentence.
struct Differing {
  std::string column;
  std::string value;
  std::string reason;
};

struct Standing {
  bool there = false;
  bool changed_since = false;          ///< somebody corrected it after it was imported
  std::optional<Entry> mend;           ///< brings in what was mended
  std::vector<Differing> differences;  ///< what cannot be brought in
};

class Mends {
 public:
  /// The tables of the register imported into; they outlive this. Errors: io.
  static Result<Mends> prepare(Database& tables);

  Result<Standing> compare(const Offer& offer);
  /// Another day on which the register has the visit, whose own id is not there. An identifier that
  /// an import makes of a visit holds its day.
  Result<std::optional<Date>> other_day(const Uuid& visit);

 private:
  struct Values;
  Result<bool> read(const Uuid& id, Values& values);
  Result<> read_corrections(const Uuid& id, Values& values);
  Result<> read_edits(const Uuid& id, Values& values);
  Result<bool> is_import_set(const Uuid& record);
  static void compare_record(const Offer& offer, const Values& values, Standing& standing);
  Result<> compare_thing(const Offer& offer, const Values& values, Standing& standing);
  Result<> compare_place(const Offer& offer, const Values& values, Standing& standing);
  Result<std::optional<PlaceOnRun>> place_of(const Uuid& parent, std::int64_t along_mm);
  Result<std::int64_t> post_mm(const Uuid& post);

  Statement journal_, change_, corrections_, edits_, entity_;
  std::unordered_map<Uuid, Uuid> visits_;  ///< by what their day does not change
};

}  // namespace kneerail::exchange
