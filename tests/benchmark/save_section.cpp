#include <iostream>

#include "tests/benchmark/bare_table.h"
#include "tests/benchmark/section.h"
#include "tests/benchmark/small_register.h"

namespace kneerail::benchmark {

namespace {

/// The record's bytes as the register wrote them.
Result<cbor::Bytes> bytes_of(Statement& find, const Uuid& id) {
  find.reset();
  find.bind(1, id);
  auto row = find.step();
  if (!row) return fail(row.error());
  if (!*row) return fail(Fault::not_found, "A record that was just saved is not in the journal.");
  const auto bytes = find.bytes(0);
  cbor::Bytes copy(bytes.begin(), bytes.end());
  find.reset();
  return copy;
}

}  // namespace

Result<> measure_save(const Plan& plan) {
  std::cout << "Save one reading, " << plan.saves << " times, in turn with the peer" << std::endl;
  auto small = SmallRegister::make(plan.folder / "save");
  if (!small) return fail(small.error());
  auto bare = BareTable::open(plan.folder / "save_peer.sqlite");
  if (!bare) return fail(bare.error());
  auto find = small->store().tables().prepare("SELECT bytes FROM journal WHERE id = ?");
  if (!find) return fail(find.error());

  std::vector<double> ours_ms, peer_ms;
  std::size_t bytes_in_all = 0;
  for (int i = 0; i < plan.saves; ++i) {
    const Entry entry = small->next_reading();
    const Stopwatch saving;
    const auto id = small->store().save(entry);
    ours_ms.push_back(1e3 * saving.seconds());
    if (!id) return fail(id.error());
    const auto bytes = bytes_of(*find, *id);
    if (!bytes) return fail(bytes.error());
    bytes_in_all += bytes->size();
    const Stopwatch inserting;
    auto inserted = (*bare)->insert(*bytes);
    peer_ms.push_back(1e3 * inserting.seconds());
    if (!inserted) return fail(inserted.error());
  }
  std::cout << "  " << bytes_in_all / static_cast<std::size_t>(plan.saves) << " bytes a record\n";
  constexpr std::string_view peer = "bare SQLite insert of the same bytes";
  print({"p50", share_below(ours_ms, 0.5), peer, share_below(peer_ms, 0.5), "ms"});
  print({"p99", share_below(ours_ms, 0.99), peer, share_below(peer_ms, 0.99), "ms"});
  return Done{};
}

}  // namespace kneerail::benchmark
