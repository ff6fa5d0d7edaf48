#pragma once

// The few things that the second copy and the identity ask of a disk, behind an interface, so that
// a test can cut the power, fill the disk or forbid writing between any two of them. The other half
// of the register's files goes through SQLite's own layer of that kind, named by sqlite_layer().

#include <cstdint>
#include <filesystem>
#include <memory>
#include <span>
#include <string>

#include "core/base/result.h"

namespace kneerail {

/// An open file. Errors of every call: io, with a sentence that names the file.
class File {
 public:
  virtual ~File() = default;
  virtual Result<std::int64_t> size() = 0;
  /// Fills from `offset`; fewer bytes than asked for only at the end of the file.
  virtual Result<std::size_t> read(std::int64_t offset, std::span<std::uint8_t> into) = 0;
  virtual Result<> write(std::int64_t offset, std::span<const std::uint8_t> bytes) = 0;
  /// Sends what was written there on its way to the disk and does not wait for it, so that the next
  /// sync() has less to wait for. No promise: a file layer may leave it out.
  virtual void start_sync(std::int64_t /*offset*/, std::int64_t /*bytes*/) {}
  /// What was written is on disk when it returns.
  virtual Result<> sync() = 0;
  virtual Result<> set_size(std::int64_t bytes) = 0;
  /// Takes room on the disk for so many bytes.
  virtual Result<> allocate(std::int64_t bytes) = 0;
};

/// Held until it is destroyed or the process ends, however it ends.
class FolderLock {
 public:
  virtual ~FolderLock() = default;
};

class Files {
 public:
  enum class Access { read, write, create };

  virtual ~Files() = default;
  /// Errors: not_found (read and write only), io.
  virtual Result<std::unique_ptr<File>> open(const std::filesystem::path& path, Access access) = 0;
  virtual bool exists(const std::filesystem::path& path) = 0;
  /// Whether this process may write the file or folder.
  virtual bool writable(const std::filesystem::path& path) = 0;
  /// With the folders it stands in; on disk when it returns.
  virtual Result<> make_folder(const std::filesystem::path& path) = 0;
  /// Replaces what is there; the new name is on disk when it returns.
  virtual Result<> rename(const std::filesystem::path& from, const std::filesystem::path& to) = 0;
  virtual Result<> remove(const std::filesystem::path& path) = 0;
  /// Room left on the disk of that folder, bytes.
  virtual std::int64_t free_bytes(const std::filesystem::path& folder) = 0;
  /// Errors: conflict (another holder), io.
  virtual Result<std::unique_ptr<FolderLock>> lock(const std::filesystem::path& path) = 0;
  /// The name of the SQLite file layer over the same disk; empty: the machine's own.
  [[nodiscard]] virtual std::string sqlite_layer() const { return {}; }
};

/// The machine's disk (POSIX calls).
std::unique_ptr<Files> machine_files();

}  // namespace kneerail
