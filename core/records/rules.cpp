#include "core/records/rules.h"

#include "core/base/text.h"

namespace kneerail::rules {

std::optional<std::int64_t> number(const Record& record, int key) {
  const cbor::Value* value = record.body.find(key);
  if (value == nullptr || value->number() == nullptr) return std::nullopt;
  return *value->number();
}

std::string not_before(const Record& record, int later, int earlier, std::string_view sentence) {
  const auto end = number(record, later);
  const auto start = number(record, earlier);
  return end && start && *end < *start ? std::string(sentence) : std::string();
}

std::string not_itself(const Record& record, int key, std::string_view sentence) {
  const cbor::Value* value = record.body.find(key);
  if (value == nullptr) return {};
  return value->uuid() == record.subject ? std::string(sentence) : std::string();
}

bool has_words(const Record& record, int key) {
  const cbor::Value* value = record.body.find(key);
  return value != nullptr && value->text() != nullptr && !trimmed(*value->text()).empty();
}

}  // namespace kneerail::rules
