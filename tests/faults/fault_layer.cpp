// SQLite's file layer over a disk in memory. Connections of one process share a file as its log
// asks: each holds the shared lock while it is open, and only who is alone gets the exclusive one,
// so the last to leave brings the log home. Locks inside the log's index always succeed: at most
// one connection writes, and nobody reads while it brings the log home. The index is plain memory
// that vanishes with the last connection, as it does with a machine.

#include <sqlite3.h>

#include <algorithm>
#include <cstring>
#include <mutex>

#include "tests/faults/fault_disk.h"

namespace kneerail::faults {
namespace {

struct Held {
  FaultDisk* disk = nullptr;
  std::string path;
  std::shared_ptr<Content> content;
  std::shared_ptr<Content::Index> index;
  bool goes_on_close = false;
  int lock = SQLITE_LOCK_NONE;
};

struct LayerFile {
  sqlite3_file base;
  Held* held;
};

Held& held_of(sqlite3_file* file) {
  return *reinterpret_cast<LayerFile*>(file)->held;
}
FaultDisk& disk_of(sqlite3_vfs* vfs) {
  return *static_cast<FaultDisk*>(vfs->pAppData);
}

int code_of(Outcome outcome, int off) {
  switch (outcome) {
    case Outcome::done:
      return SQLITE_OK;
    case Outcome::off:
      return off;
    case Outcome::full:
      return SQLITE_FULL;
    case Outcome::read_only:
      return SQLITE_READONLY;
  }
  return SQLITE_IOERR;
}

int close_file(sqlite3_file* file) {
  auto* layer_file = reinterpret_cast<LayerFile*>(file);
  const std::scoped_lock lock(layer_file->held->disk->mutex());
  if (layer_file->held->lock > SQLITE_LOCK_NONE) --layer_file->held->content->sharing;
  if (layer_file->held->goes_on_close) layer_file->held->disk->remove(layer_file->held->path);
  delete layer_file->held;
  layer_file->held = nullptr;
  return SQLITE_OK;
}

int read_file(sqlite3_file* file, void* into, int count, sqlite3_int64 offset) {
  Held& held = held_of(file);
  const std::scoped_lock lock(held.disk->mutex());
  if (held.disk->is_off()) return SQLITE_IOERR_READ;
  const Bytes& seen = held.content->seen;
  const auto from = std::min<std::int64_t>(offset, std::ssize(seen));
  const auto there = std::min<std::int64_t>(count, std::ssize(seen) - from);
  std::copy_n(seen.begin() + from, there, static_cast<std::uint8_t*>(into));
  if (there == count) return SQLITE_OK;
  std::memset(static_cast<std::uint8_t*>(into) + there, 0, static_cast<std::size_t>(count - there));
  return SQLITE_IOERR_SHORT_READ;
}

int write_file(sqlite3_file* file, const void* bytes, int count, sqlite3_int64 offset) {
  Held& held = held_of(file);
  return code_of(held.disk->write(*held.content, offset, static_cast<const std::uint8_t*>(bytes),
                                  static_cast<std::size_t>(count)),
                 SQLITE_IOERR_WRITE);
}

int truncate_file(sqlite3_file* file, sqlite3_int64 size) {
  Held& held = held_of(file);
  return code_of(held.disk->set_size(*held.content, size), SQLITE_IOERR_TRUNCATE);
}

int sync_file(sqlite3_file* file, int) {
  Held& held = held_of(file);
  return code_of(held.disk->sync(*held.content), SQLITE_IOERR_FSYNC);
}

int file_size(sqlite3_file* file, sqlite3_int64* size) {
  const std::scoped_lock lock(held_of(file).disk->mutex());
  *size = std::ssize(held_of(file).content->seen);
  return SQLITE_OK;
}

int lock_file(sqlite3_file* file, int level) {
  Held& held = held_of(file);
  const std::scoped_lock lock(held.disk->mutex());
  if (level <= held.lock) return SQLITE_OK;
  const int others = held.content->sharing - (held.lock > SQLITE_LOCK_NONE ? 1 : 0);
  if (level == SQLITE_LOCK_EXCLUSIVE && others > 0) return SQLITE_BUSY;
  if (held.lock == SQLITE_LOCK_NONE) ++held.content->sharing;
  held.lock = level;
  return SQLITE_OK;
}

int unlock_file(sqlite3_file* file, int level) {
  Held& held = held_of(file);
  const std::scoped_lock lock(held.disk->mutex());
  if (level >= held.lock) return SQLITE_OK;
  if (level == SQLITE_LOCK_NONE) --held.content->sharing;
  held.lock = level;
  return SQLITE_OK;
}

int check_reserved(sqlite3_file*, int* found) {
  *found = 0;
  return SQLITE_OK;
}

int control_file(sqlite3_file*, int, void*) {
  return SQLITE_NOTFOUND;
}
int sector_size(sqlite3_file*) {
  return 512;
}
// A torn write leaves its neighbours alone: that is how survive() tears.
int characteristics(sqlite3_file*) {
  return SQLITE_IOCAP_POWERSAFE_OVERWRITE;
}

int map_index(sqlite3_file* file, int region, int size, int extend, void volatile** out) {
  Held& held = held_of(file);
  const std::scoped_lock lock(held.disk->mutex());
  *out = nullptr;
  if (held.index == nullptr) held.index = held.content->index.lock();
  if (held.index == nullptr) {
    if (extend == 0) return SQLITE_OK;
    held.index = std::make_shared<Content::Index>();
    held.content->index = held.index;
  }
  while (std::ssize(*held.index) <= region) {
    if (extend == 0) return SQLITE_OK;
    held.index->push_back(std::make_unique<std::uint8_t[]>(static_cast<std::size_t>(size)));
  }
  *out = (*held.index)[static_cast<std::size_t>(region)].get();
  return SQLITE_OK;
}

int lock_index(sqlite3_file*, int, int, int) {
  return SQLITE_OK;
}
void index_barrier(sqlite3_file* file) {
  const std::scoped_lock lock(held_of(file).disk->mutex());
}

int unmap_index(sqlite3_file* file, int) {
  held_of(file).index.reset();
  return SQLITE_OK;
}

const sqlite3_io_methods methods = {2,
                                    close_file,
                                    read_file,
                                    write_file,
                                    truncate_file,
                                    sync_file,
                                    file_size,
                                    lock_file,
                                    unlock_file,
                                    check_reserved,
                                    control_file,
                                    sector_size,
                                    characteristics,
                                    map_index,
                                    lock_index,
                                    index_barrier,
                                    unmap_index,
                                    nullptr,
                                    nullptr};

int open_file(sqlite3_vfs* vfs, const char* name, sqlite3_file* file, int flags, int* out_flags) {
  static int unnamed = 0;
  FaultDisk& disk = disk_of(vfs);
  file->pMethods = nullptr;
  const std::string path = name == nullptr ? "unnamed-" + std::to_string(++unnamed) : name;
  const bool creates = (flags & SQLITE_OPEN_CREATE) != 0;
  if (disk.is_off()) return SQLITE_CANTOPEN;
  if (creates && !disk.exists(path) && disk.may_write() != Outcome::done) return SQLITE_CANTOPEN;
  auto content = creates ? disk.find_or_make(path) : disk.find(path);
  if (content == nullptr) return SQLITE_CANTOPEN;
  reinterpret_cast<LayerFile*>(file)->held =
      new Held{&disk, path, std::move(content), {}, (flags & SQLITE_OPEN_DELETEONCLOSE) != 0};
  file->pMethods = &methods;
  if (out_flags != nullptr) *out_flags = flags;
  return SQLITE_OK;
}

int delete_file(sqlite3_vfs* vfs, const char* name, int) {
  return code_of(disk_of(vfs).remove(name), SQLITE_IOERR_DELETE);
}

int access_file(sqlite3_vfs* vfs, const char* name, int, int* found) {
  *found = disk_of(vfs).exists(name) ? 1 : 0;
  return SQLITE_OK;
}

int full_path(sqlite3_vfs*, const char* name, int size, char* out) {
  sqlite3_snprintf(size, out, "%s", name);
  return SQLITE_OK;
}

int random_bytes(sqlite3_vfs*, int count, char* out) {
  std::memset(out, 7, static_cast<std::size_t>(count));
  return count;
}

int no_sleep(sqlite3_vfs*, int microseconds) {
  return microseconds;
}

int no_time(sqlite3_vfs*, sqlite3_int64* out) {
  *out = 0;
  return SQLITE_OK;
}

}  // namespace

std::unique_ptr<sqlite3_vfs> make_layer(FaultDisk& disk, const std::string& name) {
  auto vfs = std::make_unique<sqlite3_vfs>();
  vfs->iVersion = 2;
  vfs->szOsFile = sizeof(LayerFile);
  vfs->mxPathname = 512;
  vfs->zName = name.c_str();
  vfs->pAppData = &disk;
  vfs->xOpen = open_file;
  vfs->xDelete = delete_file;
  vfs->xAccess = access_file;
  vfs->xFullPathname = full_path;
  vfs->xRandomness = random_bytes;
  vfs->xSleep = no_sleep;
  vfs->xCurrentTimeInt64 = no_time;
  sqlite3_vfs_register(vfs.get(), 0);
  return vfs;
}

void forget_layer(sqlite3_vfs& vfs) {
  sqlite3_vfs_unregister(&vfs);
}

}  // namespace kneerail::faults
