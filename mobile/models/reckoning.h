#pragma once

// One reckoning of the whole register: its readings as they were known on a day, the fitted models,
// and what they say of every part. A cache: it can be thrown away and made again. Coatings come
// first, for they are soon known and what comes due is counted by them; walls, set screws and
// grades follow, from the same readings.

#include <atomic>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <set>
#include <unordered_map>
#include <vector>

#include "core/base/id.h"
#include "core/forecast/all_limits.h"
#include "core/forecast/decisions/next_visit.h"
#include "core/forecast/decisions/part_outlook.h"
#include "core/forecast/part_story.h"
#include "schema/database.h"
#include "schema/digest.h"

namespace kneerail {

/// Rows by part, each part's together.
struct PartRows {
  explicit PartRows(std::vector<forecast::LimitForecast> rows = {});
  std::vector<forecast::LimitForecast> rows;
  /// Those of one part, by limit; empty where there is none.
  [[nodiscard]] std::vector<forecast::LimitForecast> of(std::int32_t part) const;

 private:
  std::unordered_map<std::int32_t, std::size_t> first_;  ///< by part, place in rows
};

struct Reckoning {
  forecast::Portfolio portfolio;
  forecast::FittedCoating coating;
  std::vector<forecast::LimitForecast> coating_rows;   ///< their rows, by part id, then limit
  std::vector<Uuid> components;                        ///< by place in portfolio.parts
  std::unordered_map<Uuid, std::int32_t> part_places;  ///< the other way round
  Digest sealed{};                                     ///< visits that were sealed by then

  [[nodiscard]] Date as_of() const { return portfolio.as_of; }
};

/// What is reckoned beside the coatings. All rows are here, the coatings' too; without sentences,
/// which nobody reads of all parts.
struct OtherReckoning {
  forecast::OtherModels models;
  PartRows limits;
  std::set<forecast::Limit> read;  ///< limits of which some part has a reading
  /// Of parts with an answer, by what is likely to stop holding first; without words.
  std::vector<forecast::PartOutlook> outlooks;
  std::vector<Uuid> worst_first;  ///< their components
};

/// Reads all readings up to a day and fits their coatings, until it is stopped; a null flag never
/// stops it. Errors: not_estimable, with the reason in words; cancelled, io, corrupt.
Result<Reckoning> reckon(Database& tables, Date as_of, const std::atomic<bool>* stop = nullptr);

/// The rest of a reckoning. It is kept in the file for the next start, where one is named and can
/// be written (schema/exchange/forecast_cache.h). Errors: not_estimable, with the reason in words;
/// cancelled.
Result<OtherReckoning> reckon_others(const Reckoning& known,
                                     const std::atomic<bool>* stop = nullptr,
                                     const std::filesystem::path& kept_in = {});

/// A reckoning whose others may not be there yet.
struct Begun {
  Reckoning coatings;
  std::optional<OtherReckoning> others;
};
/// As reckon(); or all of it from the file, where it was made of the very same.
Result<Begun> reckon_or_kept(Database& tables, Date as_of, const std::filesystem::path& kept_in,
                             const std::atomic<bool>* stop = nullptr);

/// When somebody is to come to a site again by all that is known: of coatings alone, or of the
/// register's rules alone, where no more is reckoned yet.
forecast::NextVisit next_visit_of(const Reckoning* known, const OtherReckoning* others, Date today,
                                  const forecast::SiteVisits& visits);

/// What is said of one part.
struct PartTold {
  Result<forecast::PartStory> coating;           ///< or why there is no story to draw
  std::vector<forecast::LimitForecast> rows;     ///< of every limit that is reckoned, by limit
  bool whole = false;                            ///< false: coatings only, the rest is on its way
  std::optional<forecast::PartOutlook> outlook;  ///< of those rows; none: no limit is answered
};

/// From what is reckoned; `others` may be null.
PartTold told_of(const Reckoning& known, const OtherReckoning* others, std::int32_t part);

/// The same with what was entered since; what the parts share is held. Errors: not_found (no such
/// part yet), io, corrupt.
Result<PartTold> told_with_latest(Database& tables, const Reckoning& known,
                                  const OtherReckoning* others, const Uuid& site,
                                  const Uuid& component);

}  // namespace kneerail
