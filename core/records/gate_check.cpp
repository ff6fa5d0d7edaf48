#include "core/records/gate_check.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view closes_words[] = {"yes", "no", "not meant to"};
constexpr std::string_view yes_no_words[] = {"yes", "no"};
constexpr FieldInfo gate_fields[] = {
    must(id(1, "visit")),
    must(code(2, "closes by itself", closes_words)),
    must(code(3, "latches", yes_no_words)),
    must(code(4, "opens away from the drop", yes_no_words)),
};

}  // namespace

constexpr KindInfo gate_check_kind{.kind = 26,
                                   .name = "gate check",
                                   .subject = "bay or gate",
                                   .fields = fields(gate_fields),
                                   .time_key = key_seen_at,
                                   .reading = true};

}  // namespace kneerail
