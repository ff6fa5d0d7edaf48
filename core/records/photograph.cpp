#include "core/records/photograph.h"

#include "core/records/rules.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view media_words[] = {"JPEG", "PNG", "WebP"};
constexpr FieldInfo one_mark{.key = 0, .name = "mark", .shape = Shape::mark};
constexpr std::int64_t picture_bytes_max = 64 * 1024 * 1024;

constexpr FieldInfo photograph_fields[] = {
    id(1, "visit"),
    must(digest(2, "SHA-256")),
    must(number(3, "size", Unit::bytes, 1, picture_bytes_max)),
    must(code(4, "media type", media_words)),
    must(number(5, "width", Unit::pixels, 1, 65'535)),
    must(number(6, "height", Unit::pixels, 1, 65'535)),
    must(digest(7, "preview SHA-256")),
    must(number(8, "preview size", Unit::bytes, 1, picture_bytes_max)),
    list(9, "marks", 0, marks_max, one_mark),
    instant(10, "taken"),
    text(11, "caption", 300),
    count(12, "flags", 0, 3),
};
constexpr FieldInfo marks_fields[] = {must(list(1, "marks", 0, marks_max, one_mark)),
                                      must(ids(2, "marks seen"))};

std::string photograph_rule(const Record& record) {
  if (*rules::number(record, 8) > *rules::number(record, 3))
    return "the preview is larger than the photograph";
  return {};
}

cbor::Value mark_value(const Mark& mark) {
  cbor::Array items{static_cast<int>(mark.shape)};
  for (const MarkPoint& point : mark.points) items.emplace_back(cbor::Array{point.x, point.y});
  if (mark.text) items.emplace_back(*mark.text);
  return items;
}

std::optional<Mark> mark_from(const cbor::Value& value) {
  const auto* items = value.array();
  if (items == nullptr || items->empty()) return std::nullopt;
  Mark mark;
  if (!body_detail::take(items->front(), mark.shape)) return std::nullopt;
  for (std::size_t i = 1; i < items->size(); ++i) {
    const cbor::Value& item = (*items)[i];
    if (item.text() != nullptr && i + 1 == items->size()) {
      mark.text = *item.text();
      continue;
    }
    const auto* point = item.array();
    MarkPoint& at = mark.points.emplace_back();
    if (point == nullptr || point->size() != 2 || !body_detail::take((*point)[0], at.x) ||
        !body_detail::take((*point)[1], at.y))
      return std::nullopt;
  }
  return mark;
}

}  // namespace

cbor::Value to_value(const std::vector<Mark>& marks) {
  cbor::Array items;
  for (const Mark& mark : marks) items.push_back(mark_value(mark));
  return items;
}

Result<std::vector<Mark>> marks_from(const cbor::Value& value) {
  const auto* items = value.array();
  if (items == nullptr) return fail(Fault::corrupt, "Marks: no list.");
  std::vector<Mark> marks;
  for (const cbor::Value& item : *items) {
    auto mark = mark_from(item);
    if (!mark) return fail(Fault::corrupt, "Marks: one that is no shape with points.");
    marks.push_back(std::move(*mark));
  }
  return marks;
}

constexpr KindInfo photograph_kind{.kind = 31,
                                   .name = "photograph",
                                   .subject = "finding, component, post, bay, run or work",
                                   .fields = fields(photograph_fields),
                                   .time_key = 10,
                                   .rule = photograph_rule};
constexpr KindInfo marks_set_kind{.kind = 32,
                                  .name = "marks set",
                                  .subject = "photograph",
                                  .fields = fields(marks_fields),
                                  .time_key = key_seen_at};

}  // namespace kneerail
