#pragma once

// A site's rows as they stand in a part file: part by part, so that they can be read one by one.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/archive.h"
#include "core/base/date.h"
#include "core/forecast/whole/kept_input.h"
#include "core/forecast/whole/kept_models.h"
#include "schema/digest.h"

namespace kneerail {

/// The first line of a part file.
std::string shard_line();

/// What stands in a part file before its rows; what is said of the whole, in part 1 alone.
struct KeptHead {
  Digest key{};
  std::int32_t part = 1;
  std::int32_t of = 1;
  Date as_of;
  std::optional<Date> on;
  std::vector<std::string> sites;
  std::string forecast;
  std::int64_t records = 0;
};

template <class Archive, OrConst<KeptHead> T>
void fields(Archive& archive, T& head) {
  auto& [key, part, of, as_of, on, sites, forecast, records] = head;
  archive(key, part, of, as_of, on, sites, forecast, records);
}

/// What stands before a site's rows.
struct SiteBlockHead {
  std::string site;
  std::optional<forecast::SiteLimits> limits;
  std::uint64_t parts = 0;
};

template <class Archive, OrConst<SiteBlockHead> T>
void fields(Archive& archive, T& head) {
  auto& [site, limits, parts] = head;
  archive(site, limits, parts);
}

/// One part with its rows, whose place is 0.
struct PartBlock {
  forecast::Part part;
  std::string rows;  ///< forecast::bytes_of()
};

template <class Archive, OrConst<PartBlock> T>
void fields(Archive& archive, T& block) {
  auto& [part, rows] = block;
  archive(part, rows);
}

/// The bytes of a site: its head and its parts ascending by id, each as text with its length.
std::string site_block(const forecast::Portfolio& site, const forecast::ForecastRows& rows);

}  // namespace kneerail
