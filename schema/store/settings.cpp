#include "schema/store/settings.h"

#include "schema/journal/journal.h"

namespace kneerail {

Result<std::optional<std::int64_t>> setting(Database& tables, std::string_view name) {
  return read_setting(tables, name);
}

Result<> keep_settings(Register& opened, const Settings& settings) {
  if (!opened.opening().writable)
    return fail(Fault::conflict, "This register is open for reading; the setting was not kept.");
  auto transaction = Transaction::begin(opened.tables());
  if (!transaction) return fail(transaction.error());
  for (const auto& [name, value] : settings)
    if (auto kept = write_setting(opened.tables(), name, value); !kept) return kept;
  return transaction->commit();
}

}  // namespace kneerail
