#include <algorithm>
#include <iostream>

#include "core/base/text.h"
#include "tests/benchmark/bare_table.h"
#include "tests/benchmark/section.h"
#include "tests/benchmark/small_register.h"

namespace kneerail::benchmark {

namespace {

Result<> fill(SmallRegister& small, int readings) {
  constexpr int at_once = 1'000;
  for (int done = 0; done < readings; done += at_once) {
    std::vector<Entry> entries;
    for (int i = done; i < std::min(readings, done + at_once); ++i) {
      entries.push_back(small.next_reading());
    }
    if (auto saved = small.store().save(entries); !saved) return fail(saved.error());
  }
  return Done{};
}

/// Seconds to read every record of the journal and put its bytes in a bare table.
Result<double> copy_seconds(Register& store, const std::filesystem::path& file) {
  auto bare = BareTable::open(file);
  if (!bare) return fail(bare.error());
  auto all = store.tables().prepare("SELECT bytes FROM journal ORDER BY lid");
  if (!all) return fail(all.error());
  const Stopwatch copying;
  if (auto begun = (*bare)->begin(); !begun) return fail(begun.error());
  while (true) {
    auto row = all->step();
    if (!row) return fail(row.error());
    if (!*row) break;
    if (auto put = (*bare)->insert(all->bytes(0)); !put) return fail(put.error());
  }
  if (auto done = (*bare)->commit(); !done) return fail(done.error());
  return copying.seconds();
}

}  // namespace

Result<> measure_fold(const Plan& plan) {
  std::cout << "Fold the journal again, " << plan.folded << " readings" << std::endl;
  auto small = SmallRegister::make(plan.folder / "fold");
  if (!small) return fail(small.error());
  if (auto filled = fill(*small, plan.folded); !filled) return fail(filled.error());
  const auto before = small->store().table_digest();
  if (!before) return fail(before.error());

  const Stopwatch folding;
  const ProcessorWatch working;
  const auto records = small->store().rebuild();
  const double seconds = folding.seconds();
  const double worked_seconds = working.seconds();
  if (!records) return fail(records.error());
  const auto after = small->store().table_digest();
  if (!after) return fail(after.error());
  const auto copied = copy_seconds(small->store(), plan.folder / "fold_peer.sqlite");
  if (!copied) return fail(copied.error());

  const auto count = static_cast<double>(*records);
  print({"fold", count / seconds, "bare copy of the same bytes, one transaction", count / *copied,
         "records/s"});
  std::cout << "  by processor time: " << fixed(count / worked_seconds, 0) << " records/s\n";
  std::cout << "  tables before and after: "
            << (*before == *after ? "the same digest" : "DIFFERENT") << "\n";
  if (*before != *after) return fail(Fault::corrupt, "The fold gave other tables the second time.");
  return Done{};
}

}  // namespace kneerail::benchmark
