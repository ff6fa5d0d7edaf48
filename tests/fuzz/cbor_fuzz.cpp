// Any bytes at all: read as a record and as a value they are refused, or written again they are the
// same bytes. What reads as a record is also put to its limits and questions, which must answer.

#include <cstddef>
#include <cstdint>
#include <span>

#include "core/records/cbor.h"
#include "core/records/record.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace kneerail;
  const std::span bytes(data, size);
  const cbor::Bytes same(bytes.begin(), bytes.end());
  if (const auto value = cbor::decode(bytes))
    check(cbor::encode(*value) == same, "a value is written as it was read");
  if (const auto record = decode_record(bytes)) {
    check(encode(*record) == same, "a record is written as it was read");
    const auto limits = check_limits(*record);
    check(limits.has_value() || !limits.error().message.empty(), "a refusal has a sentence");
    static_cast<void>(questions(*record));
  }
  return 0;
}
