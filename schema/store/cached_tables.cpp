#include "schema/store/cached_tables.h"

#include <algorithm>
#include <utility>

namespace kneerail {
namespace {

using fold::Cell;
using fold::Row;
using fold::Table;

void append_ordered(std::int64_t number, std::string& out) {
  const auto bits = static_cast<std::uint64_t>(number) ^ (std::uint64_t{1} << 63);
  for (int shift = 56; shift >= 0; shift -= 8) out += static_cast<char>((bits >> shift) & 0xff);
}

/// Text and bytes end with 0 0; a zero inside is written 0 255.
template <class Bytes>
void append_ended(const Bytes& bytes, std::string& out) {
  for (const auto byte : bytes) {
    out += static_cast<char>(byte);
    if (byte == 0) out += static_cast<char>(0xff);
  }
  out.append(2, '\0');
}

/// Bytes that compare as SQLite compares cells of one type, the absent first, so that the bytes of
/// the first cells are a beginning of the bytes of all.
void append(const Cell& cell, std::string& out) {
  out += static_cast<char>(cell.index() == 0 ? 0 : 1);
  if (const auto* number = std::get_if<std::int64_t>(&cell)) {
    append_ordered(*number, out);
  } else if (const auto* id = std::get_if<Uuid>(&cell)) {
    out.append(reinterpret_cast<const char*>(id->bytes.data()), id->bytes.size());
  } else if (const auto* text = std::get_if<std::string>(&cell)) {
    append_ended(*text, out);
  } else if (const auto* bytes = std::get_if<cbor::Bytes>(&cell)) {
    append_ended(*bytes, out);
  }
}

std::string joined(std::span<const Cell> cells) {
  std::string out;
  out.reserve(cells.size() * 18);
  for (const Cell& cell : cells) append(cell, out);
  return out;
}

std::string key_of(const Table& table, const Row& row) {
  return joined(std::span(row).first(static_cast<std::size_t>(table.key_columns)));
}

const Table& shape_of(int table) {
  return fold::tables()[static_cast<std::size_t>(table)];
}

/// Place of a row in an order: the index's cells, then the key.
std::string place_of(const Table& table, int order, const Row& row, const std::string& key) {
  if (order == 0) return key;
  std::string place;
  const auto& index = table.indexes[static_cast<std::size_t>(order - 1)];
  for (const int column : index.columns) append(row[static_cast<std::size_t>(column)], place);
  return place + key;
}

/// Whether these cells or some first of them are a beginning that is all here.
bool is_complete(const std::unordered_set<std::string>& complete, std::span<const Cell> cells) {
  if (complete.empty()) return false;
  std::string start;
  if (complete.contains(start)) return true;
  for (const Cell& cell : cells) {
    append(cell, start);
    if (complete.contains(start)) return true;
  }
  return false;
}

}  // namespace

CachedTables::CachedTables(fold::TableStore& below, Below state)
    : below_(below), all_came_from_here_(state == Below::is_empty), held_(fold::tables().size()) {
  for (std::size_t table = 0; table < held_.size(); ++table) {
    held_[table].orders.resize(1 + fold::tables()[table].indexes.size());
    if (state == Below::has_rows) continue;
    for (Order& order : held_[table].orders) order.complete.insert("");
  }
}

void CachedTables::place_in_orders(int table, Slots::value_type& slot) {
  auto& orders = held_[static_cast<std::size_t>(table)].orders;
  for (int order = 0; order < std::ssize(orders); ++order) {
    Order& one = orders[static_cast<std::size_t>(order)];
    if (!one.kept || !slot.second.there) continue;
    one.slots[place_of(shape_of(table), order, slot.second.row, slot.first)] = &slot;
  }
}

void CachedTables::take_from_orders(int table, Slots::value_type& slot) {
  auto& orders = held_[static_cast<std::size_t>(table)].orders;
  for (int order = 0; order < std::ssize(orders); ++order) {
    Order& one = orders[static_cast<std::size_t>(order)];
    if (!one.kept || !slot.second.there) continue;
    one.slots.erase(place_of(shape_of(table), order, slot.second.row, slot.first));
  }
}

void CachedTables::change(int table, Slots::value_type& slot, Row row, bool there) {
  if (!slot.second.changed) held_[static_cast<std::size_t>(table)].changed.push_back(&slot);
  slot.second = {std::move(row), there, true};
}

std::optional<Row> CachedTables::row(int table, std::span<const Cell> key) {
  Held& held = held_[static_cast<std::size_t>(table)];
  if (held.slots.empty() && held.orders[0].complete.contains("")) return std::nullopt;
  const std::string place = joined(key);
  if (auto found = held.slots.find(place); found != held.slots.end()) {
    if (!found->second.there) return std::nullopt;
    return found->second.row;
  }
  if (is_complete(held.orders[0].complete, key)) return std::nullopt;
  if (held.forgotten && !held.forgotten->may_hold(place)) return std::nullopt;
  auto below = below_.row(table, key);
  auto& slot = *held.slots.try_emplace(place).first;
  if (below) slot.second = {*below, true, false};
  place_in_orders(table, slot);
  return below;
}

void CachedTables::put(int table, Row row) {
  auto [found, made] =
      held_[static_cast<std::size_t>(table)].slots.try_emplace(key_of(shape_of(table), row));
  if (!made) take_from_orders(table, *found);
  change(table, *found, std::move(row), true);
  place_in_orders(table, *found);
}

void CachedTables::erase(int table, std::span<const Cell> key) {
  auto [found, made] = held_[static_cast<std::size_t>(table)].slots.try_emplace(joined(key));
  if (!made) take_from_orders(table, *found);
  change(table, *found, Row(key.begin(), key.end()), false);
}

void CachedTables::keep_order(int table, int order) {
  Held& held = held_[static_cast<std::size_t>(table)];
  Order& one = held.orders[static_cast<std::size_t>(order)];
  if (one.kept) return;
  one.kept = true;
  for (auto& slot : held.slots) {
    if (!slot.second.there) continue;
    one.slots[place_of(shape_of(table), order, slot.second.row, slot.first)] = &slot;
  }
}

void CachedTables::load(int table, int order, std::span<const Cell> values) {
  auto below =
      order == 0 ? below_.rows_of_key(table, values) : below_.rows(table, order - 1, values);
  for (Row& row : below) {
    auto [found, made] =
        held_[static_cast<std::size_t>(table)].slots.try_emplace(key_of(shape_of(table), row));
    if (!made) continue;  // what is held here is newer
    found->second = {std::move(row), true, false};
    place_in_orders(table, *found);
  }
}

std::vector<Row> CachedTables::begins_with(int table, int order, std::span<const Cell> values) {
  keep_order(table, order);
  Order& one = held_[static_cast<std::size_t>(table)].orders[static_cast<std::size_t>(order)];
  const std::string start = joined(values);
  if (!is_complete(one.complete, values)) {
    load(table, order, values);
    one.complete.insert(start);
  }
  std::vector<const Slots::value_type*> found;
  for (auto at = one.slots.lower_bound(start);
       at != one.slots.end() && at->first.starts_with(start); ++at) {
    found.push_back(at->second);
  }
  if (order != 0) {
    std::ranges::sort(found, {},
                      [](const auto* slot) -> const std::string& { return slot->first; });
  }
  std::vector<Row> rows;
  rows.reserve(found.size());
  for (const auto* slot : found) rows.push_back(slot->second.row);
  return rows;
}

std::vector<Row> CachedTables::rows(int table, int index, std::span<const Cell> values) {
  return begins_with(table, index + 1, values);
}

std::vector<Row> CachedTables::rows_of_key(int table, std::span<const Cell> key_start) {
  return begins_with(table, 0, key_start);
}

/// In key order.
std::vector<CachedTables::Slots::value_type*> CachedTables::take_changed(int table) {
  auto changed = std::exchange(held_[static_cast<std::size_t>(table)].changed, {});
  std::ranges::sort(changed, {},
                    [](const auto* slot) -> const std::string& { return slot->first; });
  return changed;
}

void CachedTables::flush(int table) {
  for (auto* slot : take_changed(table)) {
    if (slot->second.there) {
      below_.put(table, slot->second.row);
    } else {
      below_.erase(table, slot->second.row);
    }
    slot->second.changed = false;
  }
}

/// Changed rows go down, and all are forgotten here.
void CachedTables::move_down(int table) {
  Held& held = held_[static_cast<std::size_t>(table)];
  for (auto* slot : take_changed(table)) {
    if (slot->second.there) {
      below_.put(table, std::move(slot->second.row));
    } else {
      below_.erase(table, slot->second.row);
    }
  }
  if (all_came_from_here_) {
    if (!held.forgotten) held.forgotten.emplace();
    for (const auto& [key, slot] : held.slots) {
      if (slot.there) held.forgotten->add(key);
    }
  }
  forget(table);
}

void CachedTables::flush() {
  for (int table = 0; table < std::ssize(held_); ++table) flush(table);
}

void CachedTables::forget(int table) {
  Held& held = held_[static_cast<std::size_t>(table)];
  held.changed.clear();
  held.slots.clear();
  for (Order& order : held.orders) order = {};
}

std::size_t CachedTables::cells_of(std::size_t table) const {
  std::size_t beginnings = 0;
  for (const Order& order : held_[table].orders) beginnings += order.complete.size();
  return held_[table].slots.size() * fold::tables()[table].columns.size() + beginnings;
}

void CachedTables::make_room(std::size_t cells_max) {
  std::size_t cells = 0;
  for (std::size_t table = 0; table < held_.size(); ++table) cells += cells_of(table);
  if (cells <= cells_max) return;
  for (const std::size_t least : {cells_max / 8, std::size_t{0}}) {
    for (std::size_t table = 0; table < held_.size(); ++table) {
      const auto own = cells_of(table);
      if (own <= least) continue;
      move_down(static_cast<int>(table));
      cells -= own;
    }
    if (cells <= cells_max) return;
  }
}

void CachedTables::forget() {
  all_came_from_here_ = false;  // what had gone down may have been taken back
  for (int table = 0; table < std::ssize(held_); ++table) {
    forget(table);
    held_[static_cast<std::size_t>(table)].forgotten.reset();
  }
}

}  // namespace kneerail
