#include "schema/journal/joiner.h"

#include <utility>

namespace kneerail {
namespace {

constexpr std::int64_t commit_every = 2000;

bool follows(const Digest& before, const JournalRow& row) {
  return chain_next(before, row.bytes) == row.digest;
}

}  // namespace

Joiner::Chain& Joiner::chain_of(const ChainName& name) {
  Chain& chain = chains_[name];
  if (!chain.begun) chain.head.digest = chain.old.digest = chain_start(name.first, name.second);
  chain.begun = true;
  return chain;
}

void Joiner::take(const Uuid& feed, const Uuid& device, const JournalRow& row) {
  const ChainName name(feed, device);
  Chain& chain = chain_of(name);
  if (row.seq <= chain.old.seq) return;
  if (join_through_copy(name, chain, row) || join_through_pending(name, chain, row)) {
    chain.pending.reset();
  } else {
    chain.pending = row;
  }
}

/// The row follows what is joined, or what the second copy holds between the two.
bool Joiner::join_through_copy(const ChainName& name, Chain& chain, const JournalRow& row) {
  Digest digest = chain.old.digest;
  for (std::int64_t seq = chain.old.seq + 1; seq < row.seq; ++seq) {
    const auto found = copied_.find({name.first, seq});
    if (name.second != journal_.device() || found == copied_.end()) return false;
    digest = chain_next(digest, found->second);
  }
  if (!follows(digest, row)) return false;
  for (std::int64_t seq = chain.old.seq + 1; seq < row.seq; ++seq) fill(name, chain, seq);
  accept(name, chain, row);
  return true;
}

/// The row follows the one before it, which by itself could not be proved.
bool Joiner::join_through_pending(const ChainName& name, Chain& chain, const JournalRow& row) {
  if (!chain.pending || row.seq != chain.pending->seq + 1) return false;
  const JournalRow before = *chain.pending;
  const Digest with = chain_next(chain.old.digest, before.bytes);
  if (before.seq == chain.old.seq + 1 && follows(with, row)) {
    accept(name, chain, before);  // only its digest was damaged
    accept(name, chain, row);
    return true;
  }
  const bool may_number_anew = name.second == journal_.device() && !row.stamp;
  if (!may_number_anew || !follows(before.digest, row)) return false;
  for (std::int64_t seq = chain.old.seq + 1; seq < row.seq; ++seq) fill(name, chain, seq);
  chain.old = {before.seq, before.digest};
  accept(name, chain, row);
  return true;
}

void Joiner::finish() {
  for (const auto& [place, bytes] : copied_) {
    const ChainName name(place.first, journal_.device());
    Chain& chain = chain_of(name);
    if (place.second > chain.old.seq) fill(name, chain, place.second);
  }
  if (transaction_ && !error) {
    if (auto done = transaction_->commit(); !done) error = done.error();
  }
  transaction_.reset();
}

std::map<ChainName, std::int64_t> Joiner::ends() const {
  std::map<ChainName, std::int64_t> ends;
  for (const auto& [name, chain] : chains_) ends[name] = chain.old.seq;
  return ends;
}

/// That record of this device's chain from the second copy.
bool Joiner::fill(const ChainName& name, Chain& chain, std::int64_t seq) {
  const auto found = copied_.find({name.first, seq});
  if (found == copied_.end() || !decode_record(found->second)) return false;
  JournalRow row;
  row.bytes = found->second;
  chain.old = {seq, chain_next(chain.old.digest, row.bytes)};
  append(name, chain, std::move(row));
  ++from_copy;
  return true;
}

void Joiner::accept(const ChainName& name, Chain& chain, const JournalRow& row) {
  chain.old = {row.seq, chain_next(chain.old.digest, row.bytes)};
  append(name, chain, row);
  ++from_journal;
}

void Joiner::append(const ChainName& name, Chain& chain, JournalRow row) {
  if (error) return;
  const auto note = [&](const auto& result) {
    if (!result && !error) error = result.error();
    return result.has_value();
  };
  if (!transaction_) {
    auto begun = Transaction::begin(database_);
    if (!note(begun)) return;
    transaction_.emplace(std::move(*begun));
  }
  auto feed_number = journal_.feed_number(name.first);
  auto device_number = journal_.device_number(name.second);
  if (!note(feed_number) || !note(device_number)) return;
  if (auto record = decode_record(row.bytes)) row.id = record->id;  // its column may be damaged
  row.feed = *feed_number;
  row.dev = *device_number;
  row.seq = chain.head.seq + 1;
  row.digest = chain_next(chain.head.digest, row.bytes);
  renumbered = renumbered || row.seq != chain.old.seq;
  chain.head = {row.seq, row.digest};
  if (!note(journal_.append(row))) return;
  if (++appended_ % commit_every != 0) return;
  if (note(transaction_->commit())) transaction_.reset();
}

}  // namespace kneerail
