#include "core/records/record.h"

#include "core/records/cbor_reader.h"

namespace kneerail {
namespace {

constexpr std::int64_t two_to_53 = std::int64_t{1} << 53;

cbor::Bytes encode_body(const Record& record) {
  return cbor::encode(cbor::Value(cbor::Array{record.kind, record.id, record.l, record.c, record.w,
                                              record.g, record.who, record.subject, record.body}));
}

bool read_small(cbor::Reader& reader, int& out, int least, int greatest) {
  std::int64_t number = 0;
  if (!reader.number(number, least, greatest)) return false;
  out = static_cast<int>(number);
  return true;
}

bool read_envelope(cbor::Reader& reader, Record& out) {
  return reader.array_of(9) && read_small(reader, out.kind, 1, 999) && reader.id(out.id) &&
         reader.number(out.l, 0, two_to_53 - 1) && read_small(reader, out.c, 0, 65'535) &&
         reader.number(out.w, -two_to_53, two_to_53) && read_small(reader, out.g, 0, 65'535) &&
         reader.id(out.who) && reader.id(out.subject);
}

// The body's keys are whole numbers from 0 up; they are in order, so the last one tells.
bool keys_are_numbers(const cbor::Map& body) {
  if (body.empty()) return true;
  const auto* last = body.pairs().back().first.number();
  return last != nullptr && *last >= 0;
}

}  // namespace

cbor::Bytes encode(const Record& record) {
  return encode_body(record);
}

Result<Record> decode_record(std::span<const std::uint8_t> bytes) {
  if (bytes.size() > record_bytes_max)
    return fail(Fault::corrupt, "A record of " + std::to_string(bytes.size()) +
                                    " bytes; at most 65,536 are read. Nothing was saved.");
  cbor::Reader reader(bytes);
  Record record;
  if (!read_envelope(reader, record) || !reader.map(record.body, 1) || !reader.end())
    return fail(reader.error(), "A record that cannot be read. ");
  if (!keys_are_numbers(record.body))
    return fail(Fault::corrupt, "A record that cannot be read: a body key is no whole number.");
  return record;
}

}  // namespace kneerail
