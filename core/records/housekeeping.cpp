#include "core/records/housekeeping.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view erased_words[] = {"person asked", "retention ended", "wrong picture"};
constexpr std::string_view held_words[] = {"accident", "claim", "order of an authority", "other"};

constexpr FieldInfo erased_fields[] = {must(digest(1, "SHA-256")),
                                       must(code(2, "why", erased_words)), text(3, "note", 500)};
constexpr FieldInfo hold_fields[] = {must(code(1, "why", held_words)), text(2, "note", 500)};
constexpr FieldInfo ended_fields[] = {must(text(1, "why", 300))};

}  // namespace

constexpr KindInfo object_erased_kind{.kind = 85,
                                      .name = "object erased",
                                      .subject = "organisation or site",
                                      .feed = FeedOf::either,
                                      .fields = fields(erased_fields)};
constexpr KindInfo hold_kind{.kind = 86,
                             .name = "hold",
                             .subject = "site, run, post or component",
                             .fields = fields(hold_fields)};
constexpr KindInfo hold_ended_kind{
    .kind = 87, .name = "hold ended", .subject = "hold", .fields = fields(ended_fields)};

}  // namespace kneerail
