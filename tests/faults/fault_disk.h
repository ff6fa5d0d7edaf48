#pragma once

// A disk in memory whose power can be cut. What was written and not yet synced is kept apart; at a
// cut each such write is lost, kept or torn at 512 bytes, by a seed. Names of files are on disk at
// once, as on a file system with a journal of its own whose folder is synced after each change.
//
// The same disk serves the register's own files (Files) and SQLite (a file layer registered under
// this disk's name), and counts the operations of both: a cut can fall between any two of them.

#include <cstdint>
#include <deque>
#include <map>
#include <memory>
#include <mutex>
#include <set>
#include <string>
#include <vector>

#include "core/base/world.h"
#include "schema/journal/files.h"

struct sqlite3_vfs;

namespace kneerail::faults {

using Bytes = std::vector<std::uint8_t>;

/// One file: as programs see it, as it stands on the platter, and what lies between.
struct Content {
  struct Change {
    std::int64_t offset = 0;
    Bytes bytes;  ///< empty: the size changed to `offset`
  };
  Bytes seen;
  Bytes durable;
  std::vector<Change> waiting;
  bool is_locked = false;
  int sharing = 0;  ///< SQLite connections that hold the file's shared lock
  /// The log's index: plain memory of all connections, gone with the last.
  using Index = std::deque<std::unique_ptr<std::uint8_t[]>>;
  std::weak_ptr<Index> index;
};

enum class Outcome { done, off, full, read_only };

class FaultDisk {
 public:
  FaultDisk();
  ~FaultDisk();
  FaultDisk(const FaultDisk&) = delete;
  FaultDisk& operator=(const FaultDisk&) = delete;

  Files& files() { return *files_; }
  [[nodiscard]] const std::string& layer() const { return layer_; }

  /// The power goes at the so many-th writing operation from now.
  void cut_after(std::int64_t operations) {
    const std::scoped_lock lock(mutex_);
    left_ = operations;
  }
  [[nodiscard]] bool is_off() const {
    const std::scoped_lock lock(mutex_);
    return left_ == 0;
  }
  /// What survived is what the files hold now. Every file must be closed.
  void restore_power(std::uint64_t seed);
  [[nodiscard]] std::int64_t operations() const {
    const std::scoped_lock lock(mutex_);
    return operations_;
  }

  void set_read_only(bool read_only) {
    const std::scoped_lock lock(mutex_);
    read_only_ = read_only;
  }
  /// Bytes that still fit; negative: no end.
  void set_room(std::int64_t bytes) {
    const std::scoped_lock lock(mutex_);
    room_ = bytes;
  }

  [[nodiscard]] bool exists(const std::string& path) const {
    const std::scoped_lock lock(mutex_);
    return contents_.contains(path);
  }
  /// The bytes of a file, to damage them: what is changed here is on the platter.
  Bytes bytes(const std::string& path);
  void set_bytes(const std::string& path, Bytes bytes);
  [[nodiscard]] std::vector<std::string> names() const;

  // For the two file layers.
  std::recursive_mutex& mutex() const { return mutex_; }
  std::shared_ptr<Content> find(const std::string& path);
  std::shared_ptr<Content> find_or_make(const std::string& path);
  Outcome write(Content& content, std::int64_t offset, const std::uint8_t* bytes,
                std::size_t count);
  Outcome set_size(Content& content, std::int64_t size);
  Outcome sync(Content& content);
  Outcome rename(const std::string& from, const std::string& to);
  Outcome remove(const std::string& path);
  [[nodiscard]] Outcome may_write() const;
  [[nodiscard]] std::int64_t room() const {
    const std::scoped_lock lock(mutex_);
    return room_;
  }

 private:
  Outcome count();

  mutable std::recursive_mutex mutex_;
  std::map<std::string, std::shared_ptr<Content>> contents_;
  std::string layer_;
  std::unique_ptr<sqlite3_vfs> vfs_;
  std::unique_ptr<Files> files_;
  std::int64_t left_ = -1;  ///< negative: no cut is due; zero: the power is off
  std::int64_t operations_ = 0;
  std::int64_t room_ = -1;
  bool read_only_ = false;
};

/// The SQLite file layer over a disk.
std::unique_ptr<sqlite3_vfs> make_layer(FaultDisk& disk, const std::string& name);
void forget_layer(sqlite3_vfs& vfs);
/// The register's own files on a disk.
std::unique_ptr<Files> make_files(FaultDisk& disk);

}  // namespace kneerail::faults
