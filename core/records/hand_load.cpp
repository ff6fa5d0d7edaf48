#include "core/records/hand_load.h"

#include "core/records/rules.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view felt_words[] = {"firm", "gives", "moves", "not pushed"};
constexpr FieldInfo load_fields[] = {
    must(id(1, "visit")),
    must(code(2, "felt", felt_words)),
    load(3, "load"),
    deflection(4, "deflection"),
    deflection(5, "left over after unloading"),
    number(6, "height above deck", Unit::mm, 0, 10'000),
    id(7, "instrument"),
};

std::string rule(const Record& record) {
  const bool measured = record.body.has(3) || record.body.has(4) || record.body.has(5);
  if (static_cast<Felt>(*rules::number(record, 2)) == Felt::not_pushed && measured)
    return "what was not pushed has no load and no deflection";
  return {};
}

void ask(const Record& record, std::vector<std::string>& questions) {
  const auto bent = rules::number(record, 4);
  const auto left = rules::number(record, 5);
  if (bent && left && *left > *bent)
    questions.push_back("More is left over after unloading (" +
                        quantity_text(*left, Unit::tenth_mm) + ") than it bent under load (" +
                        quantity_text(*bent, Unit::tenth_mm) + "). Keep?");
}

}  // namespace

constexpr KindInfo hand_load_kind{.kind = 24,
                                  .name = "hand load",
                                  .subject = "bay or post",
                                  .fields = fields(load_fields),
                                  .time_key = key_seen_at,
                                  .reading = true,
                                  .rule = rule,
                                  .ask = ask};

}  // namespace kneerail
