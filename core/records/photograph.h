#pragma once

// Kinds 31 and 32: a photograph, whose bytes are kept beside the records under their SHA-256, and
// the marks drawn on it. A mark is [shape, [x, y] ..., text]: at least one point, the text last and
// only where there is one. x and y are 1/10,000 of width and height, from the upper left.

#include <optional>
#include <string>
#include <vector>

#include "core/records/provenance.h"

namespace kneerail {

enum class MediaType { jpeg = 1, png, webp };
enum class MarkShape { circle = 1, arrow, line, outline, number };
enum PhotographFlag : int { people_blurred = 1, location_removed = 2 };

struct MarkPoint {
  int x = 0;
  int y = 0;
  bool operator==(const MarkPoint&) const = default;
};
struct Mark {
  MarkShape shape = MarkShape::circle;
  std::vector<MarkPoint> points;
  std::optional<std::string> text;
  bool operator==(const Mark&) const = default;
};

inline constexpr int mark_points_max = 200;
inline constexpr int mark_text_max = 80;
inline constexpr int marks_max = 50;

cbor::Value to_value(const std::vector<Mark>& marks);
/// Errors: corrupt when it is no list of marks.
Result<std::vector<Mark>> marks_from(const cbor::Value& value);

/// Subject finding, component, post, bay, run or work.
struct Photograph {
  static constexpr int kind = 31;
  std::optional<Uuid> visit;
  Digest sha256{};
  std::int64_t size_bytes = 1;
  MediaType media_type = MediaType::jpeg;
  int width_pixels = 1;
  int height_pixels = 1;
  Digest preview_sha256{};
  std::int64_t preview_bytes = 1;
  std::optional<cbor::Value> marks;  ///< see marks_from()
  std::optional<Instant> taken;
  std::optional<std::string> caption;
  std::optional<int> flags;  ///< sum of PhotographFlag
  Provenance provenance;
  bool operator==(const Photograph&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.visit);
    each(2, self.sha256);
    each(3, self.size_bytes);
    each(4, self.media_type);
    each(5, self.width_pixels);
    each(6, self.height_pixels);
    each(7, self.preview_sha256);
    each(8, self.preview_bytes);
    each(9, self.marks);
    each(10, self.taken);
    each(11, self.caption);
    each(12, self.flags);
    Provenance::keys(self.provenance, each);
  }
};

/// Subject photograph.
struct MarksSet {
  static constexpr int kind = 32;
  cbor::Value marks = cbor::Array{};
  std::vector<Uuid> base;  ///< records whose marks the writer saw
  Provenance provenance;
  bool operator==(const MarksSet&) const = default;
  template <class Self, class Each>
  static void keys(Self& self, Each each) {
    each(1, self.marks);
    each(2, self.base);
    Provenance::keys(self.provenance, each);
  }
};

extern const KindInfo photograph_kind;
extern const KindInfo marks_set_kind;

}  // namespace kneerail
