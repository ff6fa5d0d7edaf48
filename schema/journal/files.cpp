#include "schema/journal/files.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <sys/statvfs.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <utility>
#include <vector>

namespace kneerail {
namespace {

Error os_error(const std::filesystem::path& path, const char* doing, int code) {
  const std::string where = path.string() + ": ";
  if (code == ENOSPC || code == EDQUOT) {
    return fail(Fault::io, where + "The disk is full. Make room and try again.");
  }
  if (code == EROFS || code == EACCES || code == EPERM) {
    return fail(Fault::io, where + "It cannot be written: the file or folder is read-only.");
  }
  if (code == ENOENT) return fail(Fault::not_found, where + "There is no such file.");
  return fail(Fault::io, where + "It could not be " + doing + " (" + std::strerror(code) + ").");
}

class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  Descriptor(Descriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}
  Descriptor& operator=(Descriptor&&) = delete;
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }
  [[nodiscard]] int number() const { return number_; }

 private:
  int number_;
};

class DiskFile final : public File {
 public:
  DiskFile(std::filesystem::path path, Descriptor descriptor)
      : path_(std::move(path)), descriptor_(std::move(descriptor)) {}

  Result<std::int64_t> size() override {
    struct stat found {};
    if (::fstat(descriptor_.number(), &found) != 0) return os_error(path_, "read", errno);
    return std::int64_t{found.st_size};
  }

  Result<std::size_t> read(std::int64_t offset, std::span<std::uint8_t> into) override {
    std::size_t done = 0;
    while (done < into.size()) {
      const auto part = ::pread(descriptor_.number(), into.data() + done, into.size() - done,
                                offset + static_cast<std::int64_t>(done));
      if (part < 0 && errno == EINTR) continue;
      if (part < 0) return os_error(path_, "read", errno);
      if (part == 0) break;
      done += static_cast<std::size_t>(part);
    }
    return done;
  }

  Result<> write(std::int64_t offset, std::span<const std::uint8_t> bytes) override {
    std::size_t done = 0;
    while (done < bytes.size()) {
      const auto part = ::pwrite(descriptor_.number(), bytes.data() + done, bytes.size() - done,
                                 offset + static_cast<std::int64_t>(done));
      if (part < 0 && errno == EINTR) continue;
      if (part < 0) return os_error(path_, "written", errno);
      done += static_cast<std::size_t>(part);
    }
    return Done{};
  }

  void start_sync([[maybe_unused]] std::int64_t offset,
                  [[maybe_unused]] std::int64_t bytes) override {
#ifdef SYNC_FILE_RANGE_WRITE
    // An error of the write shows at the next sync.
    (void)::sync_file_range(descriptor_.number(), offset, bytes, SYNC_FILE_RANGE_WRITE);
#endif
  }

  Result<> sync() override {
    if (::fdatasync(descriptor_.number()) != 0) return os_error(path_, "written", errno);
    return Done{};
  }

  Result<> set_size(std::int64_t bytes) override {
    if (::ftruncate(descriptor_.number(), bytes) != 0) return os_error(path_, "cut", errno);
    return Done{};
  }

  Result<> allocate(std::int64_t bytes) override {
    const int code = ::posix_fallocate(descriptor_.number(), 0, bytes);
    if (code != 0) return os_error(path_, "written", code);
    return Done{};
  }

 private:
  std::filesystem::path path_;
  Descriptor descriptor_;
};

class DiskLock final : public FolderLock {
 public:
  explicit DiskLock(Descriptor descriptor) : descriptor_(std::move(descriptor)) {}

 private:
  Descriptor descriptor_;
};

Result<> sync_folder(const std::filesystem::path& folder) {
  const Descriptor opened(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (opened.number() < 0) return os_error(folder, "opened", errno);
  if (::fsync(opened.number()) != 0) return os_error(folder, "written", errno);
  return Done{};
}

class MachineFiles final : public Files {
 public:
  Result<std::unique_ptr<File>> open(const std::filesystem::path& path, Access access) override {
    const int flags = access == Access::read    ? O_RDONLY
                      : access == Access::write ? O_RDWR
                                                : O_RDWR | O_CREAT;
    Descriptor opened(::open(path.c_str(), flags | O_CLOEXEC, 0600));
    if (opened.number() < 0) return os_error(path, "opened", errno);
    return std::unique_ptr<File>(std::make_unique<DiskFile>(path, std::move(opened)));
  }

  bool exists(const std::filesystem::path& path) override {
    return ::access(path.c_str(), F_OK) == 0;
  }

  bool writable(const std::filesystem::path& path) override {
    return ::access(path.c_str(), W_OK) == 0;
  }

  Result<> make_folder(const std::filesystem::path& path) override {
    std::vector<std::filesystem::path> missing;
    for (auto one = path; !one.empty() && !exists(one); one = one.parent_path())
      missing.push_back(one);
    std::error_code code;
    std::filesystem::create_directories(path, code);
    if (code) return os_error(path, "made", code.value());
    for (const auto& one : missing) {
      const auto parent = one.parent_path();
      if (auto done = sync_folder(parent.empty() ? "." : parent); !done) return done;
    }
    return Done{};
  }

  Result<> rename(const std::filesystem::path& from, const std::filesystem::path& to) override {
    if (::rename(from.c_str(), to.c_str()) != 0) return os_error(from, "renamed", errno);
    return sync_folder(to.parent_path());
  }

  Result<> remove(const std::filesystem::path& path) override {
    if (::unlink(path.c_str()) != 0) return os_error(path, "removed", errno);
    return Done{};
  }

  std::int64_t free_bytes(const std::filesystem::path& folder) override {
    struct statvfs found {};
    if (::statvfs(folder.c_str(), &found) != 0) return 0;
    return static_cast<std::int64_t>(found.f_bavail) * static_cast<std::int64_t>(found.f_frsize);
  }

  Result<std::unique_ptr<FolderLock>> lock(const std::filesystem::path& path) override {
    Descriptor opened(::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600));
    if (opened.number() < 0) return os_error(path, "opened", errno);
    if (::flock(opened.number(), LOCK_EX | LOCK_NB) != 0) {
      if (errno != EWOULDBLOCK) return os_error(path, "locked", errno);
      return fail(Fault::conflict, "another Kneerail has it open");
    }
    return std::unique_ptr<FolderLock>(std::make_unique<DiskLock>(std::move(opened)));
  }
};

}  // namespace

std::unique_ptr<Files> machine_files() {
  return std::make_unique<MachineFiles>();
}

}  // namespace kneerail
