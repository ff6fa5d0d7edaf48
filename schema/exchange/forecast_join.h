#pragma once

// The parts of a forecast put together as a stream: part of the register after part, ascending by
// id, whatever file and site each is in. In memory are the heads, a few kilobytes for each site,
// and one part's rows; files are opened one at a time. Every byte is checked twice: each file
// against its digest before anything is said, and each site against its own while it is read again.

#include <cstdint>
#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/forecast/limit.h"
#include "schema/exchange/forecast_files.h"

namespace kneerail {

/// That a forecast speaks of a part the register does not have: conflict.
Error unknown_part(const std::string& id);

/// One part of the register with what is said of it.
struct JoinedPart {
  forecast::Part part;
  std::optional<forecast::SiteLimits> limits;  ///< of its site
  forecast::ForecastRows rows;                 ///< LimitForecast::part is 0
};

class ForecastJoin {
 public:
  /// Looks at all files, one after the other. Errors: as join_shards().
  static Result<std::unique_ptr<ForecastJoin>> open(
      const std::vector<std::filesystem::path>& files);

  /// Of part 1; records: the fewest of all.
  [[nodiscard]] const ShardHead& head() const { return head_; }
  /// Limits of which some part has a reading.
  [[nodiscard]] const std::set<forecast::Limit>& limits_read() const { return limits_read_; }
  [[nodiscard]] bool screws_answered() const { return screws_answered_; }

  /// How many parts of each site of the register no file speaks of, by site. Of the register one
  /// site is read at a time. Errors: conflict (a part the register does not have), and those of the
  /// register.
  Result<std::map<std::string, std::int64_t>> not_in_it(PortfolioSites& sites) const;

  /// Ascending by id; may be called again. Errors: corrupt, and what `each` returns.
  Result<> each_part(const std::function<Result<>(const JoinedPart&)>& each) const;

 private:
  /// Where a site's bytes lie.
  struct SitePlace {
    std::filesystem::path file;
    std::uint64_t first = 0;
    std::uint64_t size = 0;
    Digest digest{};
    std::optional<forecast::SiteLimits> limits;
  };
  /// A part file and what it says of itself and of its sites.
  struct Looked;
  class Cursor;

  ForecastJoin() = default;
  static Result<> check_shards(const std::vector<Looked>& shards);
  Result<Looked> look_at(const std::filesystem::path& file);
  Result<> look_at_site(Looked& looked, std::uint64_t first, std::string_view bytes);

  ShardHead head_;
  std::map<std::string, SitePlace> sites_;
  std::set<forecast::Limit> limits_read_;
  bool screws_answered_ = false;
};

}  // namespace kneerail
