#pragma once

// Skerrymouth as it stands: sites, zones, runs, posts, bays and the parts that age, laid out by
// rule from the tables. Nothing here is by chance; what ages how fast is in weather.h.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/date.h"
#include "core/base/id.h"
#include "mobile/demo/tables.h"

namespace kneerail::demo {

struct PlannedSite {
  TableRow row;
  std::string code;
  std::string name;
  Uuid id;
};

struct PlannedZone {
  TableRow row;
  std::string code;
  int site = 0;
  Uuid id;
};

struct PlannedRun {
  TableRow row;
  std::string code;
  int site = 0;
  int zone = 0;
  int first_post = 0;
  int posts = 0;
  int first_bay = 0;  ///< bays of a run: posts - 1
  Date in_service;
  bool seasonal = false;
  std::string finish;  ///< zinc, paint, aluminium
  Uuid id;
};

struct PlannedPost {
  int run = 0;
  int number = 0;  ///< in walking order of the site, from 1; printed on the post
  std::int64_t chainage_mm = 0;
  int first_part = 0;  ///< its own parts, then those of the bay after it
  int parts = 0;
  Uuid id;
};

struct PlannedBay {
  int run = 0;
  int from = 0;       ///< place of the post before it
  bool gate = false;  ///< a gate stands in it
  Uuid id;
};

struct PlannedType {
  TableRow row;
  std::string code;
  Uuid id;
};

struct PlannedPart {
  int run = 0;
  int post = 0;  ///< the post it stands at, or the post before its bay
  int bay = -1;  ///< place of its bay, or -1 for a part of the post
  std::string_view role;
  int type = 0;
  std::int64_t along_mm = 0;
  std::int64_t up_mm = 0;
  int screws = 0;
  int spots = 1;   ///< reference areas
  int whole = -1;  ///< place of the welded section it belongs to, or -1
  Uuid id;
};

struct Plan {
  std::vector<PlannedSite> sites;
  std::vector<PlannedZone> zones;
  std::vector<PlannedRun> runs;
  std::vector<PlannedPost> posts;
  std::vector<PlannedBay> bays;
  std::vector<PlannedType> types;
  std::vector<PlannedPart> parts;  ///< in walking order

  [[nodiscard]] int run(std::string_view code) const;
  [[nodiscard]] int type(std::string_view code) const;
  [[nodiscard]] int site(std::string_view code) const;
  /// The post with that number at that site.
  [[nodiscard]] int post(std::string_view site_code, int number) const;
  /// The n-th part of that role at a post, counted from 0.
  [[nodiscard]] int part_at(int post, std::string_view role, int nth = 0) const;
  [[nodiscard]] bool is_zinc(const PlannedPart& part) const;
};

Plan skerrymouth_plan();

}  // namespace kneerail::demo
