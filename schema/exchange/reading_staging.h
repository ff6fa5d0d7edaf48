#pragma once

// Checked readings between the two passes over readings.csv: kept in a database of their own, on
// disk, so that a million of them need no memory and rows of one set may stand apart in the file.

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>

#include "core/base/result.h"
#include "schema/database.h"
#include "schema/exchange/portfolio_rows.h"

namespace kneerail::exchange {

/// A reading whose part and visit are known by their places.
struct StagedReading {
  std::int32_t component = 0;
  std::int32_t visit = 0;
  ReadingRow row;
  Uuid record;  ///< named by the reading's own identifier; zero: none
};

class ReadingStaging {
 public:
  /// An empty path keeps them in memory. A file that is there is written anew; it is removed with
  /// the staging. Errors: io.
  static Result<std::unique_ptr<ReadingStaging>> open(std::filesystem::path file);
  ~ReadingStaging();

  Result<> add(const StagedReading& reading);

  struct Twice {
    std::int64_t line;
    std::int64_t first_line;
    std::string id;
    bool same_id;  ///< else: another identifier for the same replicate of the same spot
  };
  /// Ends adding. Rows that say a thing twice are taken out, the first stays; each is told.
  Result<> settle(const std::function<void(const Twice&)>& told);

  /// Readings of one visit by part, quantity, spot, record and replicate.
  Result<> begin_visit(std::int32_t visit);
  Result<bool> next(StagedReading& reading);

  [[nodiscard]] std::int64_t count() const { return count_; }

 private:
  explicit ReadingStaging(std::filesystem::path file, Database database);
  Result<> prepare();
  Result<> take_out(std::string_view sql, bool same_id,
                    const std::function<void(const Twice&)>& told);

  std::filesystem::path file_;
  std::optional<Database> database_;
  std::optional<Statement> insert_;
  std::optional<Statement> of_visit_;
  std::int64_t count_ = 0;
};

}  // namespace kneerail::exchange
