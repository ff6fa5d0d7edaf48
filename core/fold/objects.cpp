#include "core/fold/objects.h"

#include <algorithm>

#include "core/fold/rules.h"

namespace kneerail::fold {
namespace {

constexpr std::size_t sha_bytes = 32;

class Names {
 public:
  void take(const cbor::Value* value, std::optional<std::int64_t> size_bytes = {}) {
    if (value == nullptr || value->bytes() == nullptr) return;
    const cbor::Bytes& sha = *value->bytes();
    const auto same = [&sha](const NamedObject& one) { return one.sha == sha; };
    if (sha.size() != sha_bytes || std::any_of(names.begin(), names.end(), same)) return;
    names.push_back({sha, size_bytes});
  }
  void take_all(const cbor::Value* list) {
    if (list == nullptr || list->array() == nullptr) return;
    for (const cbor::Value& one : *list->array()) take(&one);
  }
  /// Fields and keys whose meaning hangs on what is named: there, 32 bytes are always a digest.
  void take_values(const cbor::Value* map) {
    if (map == nullptr || map->map() == nullptr) return;
    for (const auto& [key, value] : map->map()->pairs()) take(&value);
  }
  void take_edits(const cbor::Value* edits) {
    if (edits == nullptr || edits->array() == nullptr) return;
    for (const cbor::Value& edit : *edits->array()) take_all(&edit);
  }

  std::vector<NamedObject> names;
};

/// The body keys of a kind that hold one object each.
std::vector<std::int64_t> object_keys(int kind) {
  switch (kind) {
    case kind::object_erased:
      return {1};
    case kind::calibration:
    case kind::competence:
      return {4};
    case kind::sealed:
      return {6};
    case kind::told:
      return {7};
    case kind::report:
      return {3, 5};
    default:
      return {};
  }
}

}  // namespace

std::vector<NamedObject> objects_of(const Record& record) {
  const cbor::Map& body = record.body;
  Names found;
  switch (record.kind) {
    case kind::photograph:
      found.take(body.find(2), number_in(body, 3));
      found.take(body.find(7), number_in(body, 8));
      break;
    case kind::work:
      found.take_all(body.find(18));
      break;
    case kind::create:
      found.take_values(body.find(3));
      break;
    case kind::correction:
      found.take_values(body.find(1));
      break;
    case kind::set:
      found.take_edits(body.find(1));
      break;
    default:
      for (const std::int64_t key : object_keys(record.kind)) found.take(body.find(key));
  }
  return std::move(found.names);
}

}  // namespace kneerail::fold
