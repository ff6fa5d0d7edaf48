#include "schema/store/behind_tables.h"

#include <utility>

namespace kneerail {

using fold::Cell;
using fold::Row;

namespace {

constexpr std::size_t writes_at_once = 256;

}  // namespace

BehindTables::BehindTables(fold::TableStore& below)
    : below_(below), error_(below.error()), thread_([this] { work(); }) {}

BehindTables::~BehindTables() {
  {
    const std::scoped_lock lock(mutex_);
    ends_ = true;
  }
  changed_.notify_all();
  thread_.join();
}

void BehindTables::work() {
  std::unique_lock lock(mutex_);
  for (;;) {
    changed_.wait(lock, [this] { return ends_ || !first_.empty() || !sent_.empty(); });
    if (ends_) return;
    busy_ = true;
    if (!first_.empty()) {
      const auto task = std::move(first_.front());
      first_.pop_front();
      lock.unlock();
      task();
      lock.lock();
    } else {
      Writes writes = std::move(sent_.front());
      sent_.pop_front();
      lock.unlock();
      write(writes);
      auto error = below_.error();
      lock.lock();
      error_ = std::move(error);
    }
    busy_ = false;
    changed_.notify_all();
  }
}

void BehindTables::write(Writes& writes) {
  for (Write& one : writes) {
    if (one.there) {
      below_.put(one.table, std::move(one.row));
    } else {
      below_.erase(one.table, one.row);
    }
  }
}

void BehindTables::send() {
  if (gathered_.empty()) return;
  {
    const std::scoped_lock lock(mutex_);
    sent_.push_back(std::exchange(gathered_, {}));
  }
  changed_.notify_all();
}

void BehindTables::add(Write write) {
  gathered_.push_back(std::move(write));
  if (gathered_.size() >= writes_at_once) send();
}

void BehindTables::wait() {
  send();
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [this] { return first_.empty() && sent_.empty() && !busy_; });
}

void BehindTables::run_first(std::function<void()> task) {
  {
    const std::scoped_lock lock(mutex_);
    first_.push_back(std::move(task));
  }
  changed_.notify_all();
}

std::optional<Row> BehindTables::row(int table, std::span<const Cell> key) {
  wait();
  return below_.row(table, key);
}

void BehindTables::put(int table, Row row) {
  add({table, true, std::move(row)});
}

void BehindTables::erase(int table, std::span<const Cell> key) {
  add({table, false, {key.begin(), key.end()}});
}

std::vector<Row> BehindTables::rows(int table, int index, std::span<const Cell> values) {
  wait();
  return below_.rows(table, index, values);
}

std::vector<Row> BehindTables::rows_of_key(int table, std::span<const Cell> key_start) {
  wait();
  return below_.rows_of_key(table, key_start);
}

std::optional<Error> BehindTables::error() const {
  const std::scoped_lock lock(mutex_);
  return error_;
}

}  // namespace kneerail
