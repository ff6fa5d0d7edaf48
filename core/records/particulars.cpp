#include "core/records/particulars.h"

#include <algorithm>

#include "core/records/plain_text.h"

namespace kneerail {
namespace {

enum Key : std::int64_t { key_name = 1, key_telephone, key_chance };
constexpr std::size_t name_most = 120, telephone_most = 40;

}  // namespace

cbor::Bytes to_bytes(const Particulars& particulars) {
  cbor::Map map{{key_name, particulars.name},
                {key_chance, cbor::Bytes(particulars.chance.begin(), particulars.chance.end())}};
  if (!particulars.telephone.empty()) map.set(key_telephone, particulars.telephone);
  return cbor::encode(cbor::Value(std::move(map)));
}

Result<Particulars> particulars_from(const cbor::Bytes& bytes) {
  const auto wrong = [] {
    return fail(Fault::corrupt,
                "What is kept of a person cannot be read: it is shown by initials.");
  };
  const auto value = cbor::decode(bytes);
  if (!value || value->map() == nullptr) return wrong();
  const auto* name = value->map()->find(key_name);
  const auto* telephone = value->map()->find(key_telephone);
  const auto* chance = value->map()->find(key_chance);
  Particulars particulars;
  if (name == nullptr || name->text() == nullptr || name->text()->size() > name_most)
    return wrong();
  particulars.name = *name->text();
  if (telephone != nullptr) {
    if (telephone->text() == nullptr || telephone->text()->size() > telephone_most) return wrong();
    particulars.telephone = *telephone->text();
  }
  if (chance == nullptr || chance->bytes() == nullptr ||
      chance->bytes()->size() != particulars.chance.size())
    return wrong();
  std::copy(chance->bytes()->begin(), chance->bytes()->end(), particulars.chance.begin());
  return particulars;
}

}  // namespace kneerail
