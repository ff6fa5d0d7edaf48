#include "schema/store/sealing.h"

#include <algorithm>
#include <utility>

#include "core/fold/rules.h"
#include "core/records/visit.h"

namespace kneerail {
namespace {

SigningKey own_key(const RegisterState& state) {
  return signing_key(state.identity.signing_secret);
}

/// Sequence of the record with which a person's part of a visit began here; nothing: no part.
Result<std::optional<std::int64_t>> first_seq(RegisterState& state, const VisitSeal& seal) {
  auto row = state.database->prepare(
      "SELECT j.seq FROM visit_part AS p JOIN journal AS j ON j.id = p.opened AND j.dev = 1 "
      "WHERE p.visit = ?1 AND p.person = ?2 AND p.dev = ?3 AND p.feed = ?4");
  if (!row) return fail(row.error());
  row->bind(1, seal.visit).bind(2, seal.person).bind(3, state.journal->device());
  row->bind(4, seal.site);
  auto found = row->step();
  if (!found) return fail(found.error());
  return *found ? std::optional(row->number(0)) : std::nullopt;
}

/// Counts what the person wrote of the visit, from the sealed record's first to its last sequence.
Result<> count_records(RegisterState& state, std::int64_t feed, const VisitSeal& seal,
                       Sealed& sealed) {
  auto rows = state.database->prepare(
      "SELECT bytes FROM journal WHERE feed = ?1 AND dev = 1 AND seq BETWEEN ?2 AND ?3");
  if (!rows) return fail(rows.error());
  rows->bind(1, feed).bind(2, sealed.first_seq).bind(3, sealed.last_seq);
  for (;;) {
    auto more = rows->step();
    if (!more) return fail(more.error());
    if (!*more) return Done{};
    auto record = decode_record(rows->bytes(0));
    if (!record) return fail(record.error());
    if (record->who != seal.person || fold::visit_of(*record) != seal.visit) continue;
    ++sealed.count_by_kind[record->kind];
    if (record->kind == NotReached::kind) ++sealed.not_reached_count;
  }
}

struct FoundSeal {
  Record record;
  Sealed body;
  std::int64_t feed = 0;
  std::int64_t dev = 0;
};

Result<std::vector<FoundSeal>> seals_of(Database& database) {
  // A record is an array of nine, 0x89, and its first member is the kind, here 13.
  auto rows =
      database.prepare("SELECT bytes, feed, dev FROM journal WHERE substr(bytes, 1, 2) = x'890D'");
  if (!rows) return fail(rows.error());
  std::vector<FoundSeal> seals;
  for (;;) {
    auto more = rows->step();
    if (!more) return fail(more.error());
    if (!*more) return seals;
    auto record = decode_record(rows->bytes(0));
    if (!record) continue;  // the chain's check and the fold say so
    auto body = from_body<Sealed>(record->body);
    if (!body) continue;
    seals.push_back({std::move(*record), std::move(*body), rows->number(1), rows->number(2)});
  }
}

Result<std::optional<Digest>> digest_at(Database& database, const FoundSeal& seal) {
  auto row =
      database.prepare("SELECT digest FROM journal WHERE feed = ?1 AND dev = ?2 AND seq = ?3");
  if (!row) return fail(row.error());
  row->bind(1, seal.feed).bind(2, seal.dev).bind(3, seal.body.last_seq);
  auto found = row->step();
  if (!found) return fail(found.error());
  Digest digest{};
  if (!*found || row->bytes(0).size() != digest.size()) return std::optional<Digest>();
  std::ranges::copy(row->bytes(0), digest.begin());
  return std::optional(digest);
}

}  // namespace

std::vector<std::uint8_t> bytes_to_sign(const SealedText& text) {
  constexpr std::string_view title = "kneerail seal 1";
  std::vector<std::uint8_t> bytes(title.begin(), title.end());
  for (const Uuid& id : {text.feed, text.device, text.visit})
    bytes.insert(bytes.end(), id.bytes.begin(), id.bytes.end());
  for (int shift = 56; shift >= 0; shift -= 8)
    bytes.push_back(static_cast<std::uint8_t>(static_cast<std::uint64_t>(text.last_seq) >> shift));
  bytes.insert(bytes.end(), text.chain_digest.begin(), text.chain_digest.end());
  return bytes;
}

std::array<std::uint8_t, 8> key_id_of(const SigningKey& key) {
  const Digest digest = sha256(key.shown);
  std::array<std::uint8_t, 8> id{};
  std::copy_n(digest.begin(), id.size(), id.begin());
  return id;
}

Result<Entry> seal_entry(RegisterState& state, const VisitSeal& seal) {
  auto first = first_seq(state, seal);
  if (!first) return fail(first.error());
  if (!*first) {
    return fail(Fault::not_found,
                "This person has no part in that visit on this device. Nothing was sealed.");
  }
  auto feed = state.journal->feed_state(seal.site);
  if (!feed) return fail(feed.error());
  Sealed sealed;
  sealed.first_seq = **first;
  sealed.last_seq = feed->own.seq;
  sealed.chain_digest = feed->own.digest;
  sealed.signature_picture = seal.signature_picture;
  sealed.note = seal.note;
  if (auto done = count_records(state, feed->n, seal, sealed); !done) return fail(done.error());
  const SigningKey key = own_key(state);
  sealed.signature = sign(key, bytes_to_sign({seal.site, state.journal->device(), seal.visit,
                                              sealed.last_seq, sealed.chain_digest}));
  sealed.key_id = key_id_of(key);
  return Entry{seal.site, Sealed::kind, seal.visit, seal.person, to_body(sealed), {}};
}

Result<> check_seals(RegisterState& state, std::vector<std::string>& problems) {
  auto seals = seals_of(*state.database);
  if (!seals) return fail(seals.error());
  const SigningKey key = own_key(state);
  for (const FoundSeal& seal : *seals) {
    const std::string which =
        "The seal " + to_text(seal.record.id) + " of visit " + to_text(seal.record.subject);
    auto digest = digest_at(*state.database, seal);
    if (!digest) return fail(digest.error());
    if (*digest != seal.body.chain_digest) {
      problems.push_back(which +
                         " does not fit the records it closes: one of them was changed "
                         "or is missing.");
    }
    const auto feed = state.journal->feeds().find(seal.feed);
    if (seal.body.key_id != key_id_of(key) || feed == state.journal->feeds().end()) continue;
    const SealedText text{feed->second, state.journal->devices().at(seal.dev), seal.record.subject,
                          seal.body.last_seq, seal.body.chain_digest};
    if (!is_signed(key.shown, bytes_to_sign(text), seal.body.signature))
      problems.push_back(which + " bears a signature that is not this device's.");
  }
  return Done{};
}

}  // namespace kneerail
