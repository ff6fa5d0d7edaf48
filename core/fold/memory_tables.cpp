#include "core/fold/memory_tables.h"

#include <algorithm>

namespace kneerail::fold {

namespace {

std::size_t place(int number) {
  return static_cast<std::size_t>(number);
}

bool begins_with(const std::vector<Cell>& whole, std::span<const Cell> start) {
  return whole.size() >= start.size() && std::equal(start.begin(), start.end(), whole.begin());
}

std::string text_of(const Cell& cell) {
  if (const auto* number = std::get_if<std::int64_t>(&cell)) return std::to_string(*number);
  if (const auto* id = std::get_if<Uuid>(&cell)) return to_text(*id).substr(24);
  if (const auto* text = std::get_if<std::string>(&cell)) return '"' + *text + '"';
  if (const auto* bytes = std::get_if<cbor::Bytes>(&cell)) {
    std::string hex = "x";
    for (const std::uint8_t byte : *bytes) {
      hex += "0123456789abcdef"[byte >> 4];
      hex += "0123456789abcdef"[byte & 15];
    }
    return hex;
  }
  return "-";
}

std::string text_of(const Table& table, const Row& row) {
  std::string text;
  for (std::size_t i = 0; i < row.size(); ++i) {
    if (std::holds_alternative<std::monostate>(row[i])) continue;
    text += ' ' + std::string(table.columns[i].name) + '=' + text_of(row[i]);
  }
  return text;
}

}  // namespace

MemoryTableStore::MemoryTableStore() {
  for (const Table& table : tables()) {
    Held held;
    held.indexes.resize(table.indexes.size());
    tables_.push_back(std::move(held));
  }
}

std::optional<Row> MemoryTableStore::row(int table, std::span<const Cell> key) {
  const Rows& rows = tables_[place(table)].rows;
  const auto found = rows.find(Key(key.begin(), key.end()));
  if (found == rows.end()) return std::nullopt;
  return found->second;
}

MemoryTableStore::Key MemoryTableStore::index_key(int table, std::size_t index,
                                                  const Row& row) const {
  const Table& layout = tables()[place(table)];
  Key key;
  for (const int column : layout.indexes[index].columns) key.push_back(row[place(column)]);
  key.insert(key.end(), row.begin(), row.begin() + layout.key_columns);
  return key;
}

void MemoryTableStore::forget(int table, const Row& row) {
  Held& held = tables_[place(table)];
  for (std::size_t i = 0; i < held.indexes.size(); ++i) {
    held.indexes[i].erase(index_key(table, i, row));
  }
}

void MemoryTableStore::put(int table, Row row) {
  const Table& layout = tables()[place(table)];
  check(row.size() == layout.columns.size(), "a folded row has every column of its table");
  Held& held = tables_[place(table)];
  const auto [entry, fresh] =
      held.rows.try_emplace(Key(row.begin(), row.begin() + layout.key_columns));
  if (!fresh) forget(table, entry->second);
  entry->second = std::move(row);
  for (std::size_t i = 0; i < held.indexes.size(); ++i) {
    held.indexes[i].insert(index_key(table, i, entry->second));
  }
}

void MemoryTableStore::erase(int table, std::span<const Cell> key) {
  Held& held = tables_[place(table)];
  const auto found = held.rows.find(Key(key.begin(), key.end()));
  if (found == held.rows.end()) return;
  forget(table, found->second);
  held.rows.erase(found);
}

std::vector<Row> MemoryTableStore::rows(int table, int index, std::span<const Cell> values) {
  const Held& held = tables_[place(table)];
  const Table& layout = tables()[place(table)];
  const std::set<Key>& keys = held.indexes[place(index)];
  const Key start(values.begin(), values.end());
  std::vector<Row> found;
  for (auto at = keys.lower_bound(start); at != keys.end() && begins_with(*at, values); ++at) {
    found.push_back(held.rows.at(Key(at->end() - layout.key_columns, at->end())));
  }
  std::sort(found.begin(), found.end(), [&layout](const Row& a, const Row& b) {
    return std::lexicographical_compare(a.begin(), a.begin() + layout.key_columns, b.begin(),
                                        b.begin() + layout.key_columns);
  });
  return found;
}

std::vector<Row> MemoryTableStore::rows_of_key(int table, std::span<const Cell> key_start) {
  const Rows& rows = tables_[place(table)].rows;
  const Key start(key_start.begin(), key_start.end());
  std::vector<Row> found;
  for (auto at = rows.lower_bound(start); at != rows.end() && begins_with(at->first, key_start);
       ++at) {
    found.push_back(at->second);
  }
  return found;
}

const MemoryTableStore::Rows& MemoryTableStore::all(int table) const {
  return tables_[place(table)].rows;
}

bool MemoryTableStore::operator==(const MemoryTableStore& other) const {
  return std::equal(tables_.begin(), tables_.end(), other.tables_.begin(), other.tables_.end(),
                    [](const Held& a, const Held& b) { return a.rows == b.rows; });
}

std::string difference(const MemoryTableStore& left, const MemoryTableStore& right) {
  std::string text;
  for (std::size_t i = 0; i < tables().size(); ++i) {
    const Table& table = tables()[i];
    const MemoryTableStore::Rows& a = left.all(static_cast<int>(i));
    const MemoryTableStore::Rows& b = right.all(static_cast<int>(i));
    const auto name = '\n' + std::string(table.name);
    for (const auto& [key, row] : a) {
      const auto other = b.find(key);
      if (other != b.end() && other->second == row) continue;
      text += name + " left: " + text_of(table, row);
      if (other != b.end()) text += name + " right:" + text_of(table, other->second);
    }
    for (const auto& [key, row] : b) {
      if (!a.contains(key)) text += name + " right only:" + text_of(table, row);
    }
  }
  return text;
}

}  // namespace kneerail::fold
