#include "schema/journal/draft.h"

#include <utility>

namespace kneerail {
namespace {

Result<cbor::Map> map_of(std::span<const std::uint8_t> bytes) {
  auto value = cbor::decode(bytes);
  if (!value) return fail(value.error());
  if (value->map() == nullptr) return fail(Fault::corrupt, "A draft is damaged.");
  return *value->map();
}

}  // namespace

cbor::Bytes encode(const Draft& draft) {
  return cbor::encode(
      cbor::Array{draft.feed, draft.kind, draft.subject, draft.place, draft.who, draft.body});
}

Result<Draft> decode_draft(std::span<const std::uint8_t> bytes) {
  const Error damaged = fail(Fault::corrupt, "A draft is damaged.");
  auto value = cbor::decode(bytes);
  if (!value) return damaged;
  const auto* array = value->array();
  if (array == nullptr || array->size() != 6) return damaged;
  const auto feed = (*array)[0].uuid();
  const auto* kind = (*array)[1].number();
  const auto subject = (*array)[2].uuid();
  const auto* place = (*array)[3].number();
  const auto who = (*array)[4].uuid();
  const auto* body = (*array)[5].map();
  if (!feed || kind == nullptr || !subject || place == nullptr || !who || body == nullptr) {
    return damaged;
  }
  return Draft{*feed, static_cast<int>(*kind), *subject, *place, *who, *body};
}

bool same_place(const Draft& one, const Draft& other) {
  return one.feed == other.feed && one.kind == other.kind && one.subject == other.subject &&
         one.place == other.place;
}

Result<> put_draft(Database& database, const Draft& draft) {
  auto statement = database.prepare(
      "INSERT OR REPLACE INTO draft (feed, kind, subject, place, who, body) "
      "VALUES (?, ?, ?, ?, ?, ?)");
  if (!statement) return fail(statement.error());
  const cbor::Bytes body = cbor::encode(draft.body);
  statement->bind(1, draft.feed)
      .bind(2, std::int64_t{draft.kind})
      .bind(3, draft.subject)
      .bind(4, draft.place)
      .bind(5, draft.who)
      .bind(6, std::span<const std::uint8_t>(body));
  return statement->run();
}

Result<> erase_draft(Database& database, const Draft& draft) {
  auto statement = database.prepare(
      "DELETE FROM draft WHERE feed = ? AND kind = ? AND subject = ? AND place = ?");
  if (!statement) return fail(statement.error());
  statement->bind(1, draft.feed)
      .bind(2, std::int64_t{draft.kind})
      .bind(3, draft.subject)
      .bind(4, draft.place);
  return statement->run();
}

Result<std::vector<Draft>> read_drafts(Database& database) {
  auto statement = database.prepare(
      "SELECT feed, kind, subject, place, who, body FROM draft ORDER BY feed, kind, subject, "
      "place");
  if (!statement) return fail(statement.error());
  std::vector<Draft> drafts;
  for (;;) {
    auto more = statement->step();
    if (!more) return fail(more.error());
    if (!*more) return drafts;
    auto body = map_of(statement->bytes(5));
    if (!body) return fail(body.error());
    drafts.push_back({statement->uuid(0), static_cast<int>(statement->number(1)),
                      statement->uuid(2), statement->number(3), statement->uuid(4),
                      std::move(*body)});
  }
}

}  // namespace kneerail
