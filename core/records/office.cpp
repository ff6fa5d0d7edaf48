#include "core/records/office.h"

#include "core/records/rules.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view stock_words[] = {"bought", "used", "returned", "scrapped", "counted"};
constexpr std::string_view block_words[] = {
    "what to know", "run as it stands",  "findings",       "grades",      "trends",
    "due dates",    "order list",        "what-if",        "not reached", "strikes",
    "corrections",  "method and limits", "told by others", "put off"};
constexpr std::string_view why_words[] = {"longest interval", "forecast", "event", "finding",
                                          "other"};

constexpr FieldInfo stock_fields[] = {
    must(id(1, "component type")),
    must(count(2, "count", -1'000'000, 1'000'000)),
    must(code(3, "why", stock_words)),
    id(4, "work"),
    day(5, "day"),
};
constexpr FieldInfo one_block = code(0, "block", block_words);
constexpr FieldInfo report_fields[] = {
    must(ids(1, "visits")),
    must(list(2, "blocks", 0, 14, one_block)),
    must(digest(3, "SHA-256 of the PDF")),
    day(4, "day"),
    digest(5, "signed copy"),
};
constexpr FieldInfo reckoned_parts[] = {
    must(text(1, "program version", 40)),
    must(day(2, "as of")),
    must(list(3, "feeds' last sequences", 0, 1'000, one_feed_sequence)),
};
constexpr FieldInfo agreed_fields[] = {
    must(day(1, "day")),
    must(code(2, "why", why_words)),
    text(3, "note", 500),
    day(4, "proposed"),
    code(5, "proposed why", why_words),
    text(6, "sentence shown", 300),
    tuple(7, "reckoned", reckoned_parts),
};

std::string stock_rule(const Record& record) {
  const auto why = static_cast<StockWhy>(*rules::number(record, 3));
  if (why == StockWhy::counted && *rules::number(record, 2) < 0)
    return "fewer than none were counted";
  return {};
}

}  // namespace

constexpr KindInfo stock_moved_kind{.kind = 55,
                                    .name = "stock moved",
                                    .subject = "depot",
                                    .feed = FeedOf::organisation,
                                    .fields = fields(stock_fields),
                                    .rule = stock_rule};
constexpr KindInfo report_issued_kind{
    .kind = 56, .name = "report issued", .subject = "site", .fields = fields(report_fields)};
constexpr KindInfo next_visit_agreed_kind{
    .kind = 57, .name = "next visit agreed", .subject = "site", .fields = fields(agreed_fields)};

}  // namespace kneerail
