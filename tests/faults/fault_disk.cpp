#include "tests/faults/fault_disk.h"

#include <sqlite3.h>

#include <algorithm>

namespace kneerail::faults {
namespace {

constexpr std::size_t sector = 512;

void put(Bytes& into, std::int64_t offset, const std::uint8_t* bytes, std::size_t count) {
  const auto start = static_cast<std::size_t>(offset);
  if (into.size() < start + count) into.resize(start + count);
  std::copy_n(bytes, count, into.begin() + offset);
}

/// Some of the sectors that a write touches.
void put_torn(Bytes& into, const Content::Change& change, SplitMix64& random) {
  const auto start = static_cast<std::size_t>(change.offset);
  for (std::size_t at = 0; at < change.bytes.size();) {
    const std::size_t end =
        std::min((start + at) / sector * sector + sector - start, change.bytes.size());
    if (random.between(0, 1) == 1) {
      put(into, change.offset + static_cast<std::int64_t>(at), change.bytes.data() + at, end - at);
    }
    at = end;
  }
}

void survive(Content& content, SplitMix64& random) {
  for (const auto& change : content.waiting) {
    const auto fate = random.between(0, 2);
    if (fate == 0) continue;
    if (change.bytes.empty()) {
      content.durable.resize(static_cast<std::size_t>(change.offset));
    } else if (fate == 1) {
      put(content.durable, change.offset, change.bytes.data(), change.bytes.size());
    } else {
      put_torn(content.durable, change, random);
    }
  }
  content.waiting.clear();
  content.seen = content.durable;
  content.is_locked = false;
}

}  // namespace

FaultDisk::FaultDisk() {
  static int made = 0;  // SQLite knows its file layers by name
  layer_ = "fault-disk-" + std::to_string(++made);
  vfs_ = make_layer(*this, layer_);
  files_ = make_files(*this);
}

FaultDisk::~FaultDisk() {
  forget_layer(*vfs_);
}

Outcome FaultDisk::may_write() const {
  const std::scoped_lock lock(mutex_);
  if (is_off()) return Outcome::off;
  return read_only_ ? Outcome::read_only : Outcome::done;
}

Outcome FaultDisk::count() {
  if (auto may = may_write(); may != Outcome::done) return may;
  ++operations_;
  if (left_ > 0) --left_;
  return Outcome::done;
}

Outcome FaultDisk::write(Content& content, std::int64_t offset, const std::uint8_t* bytes,
                         std::size_t count_of_bytes) {
  const std::scoped_lock lock(mutex_);
  if (auto counted = count(); counted != Outcome::done) return counted;
  const auto end = static_cast<std::size_t>(offset) + count_of_bytes;
  if (end > content.seen.size() && room_ >= 0) {
    const auto more = static_cast<std::int64_t>(end - content.seen.size());
    if (more > room_) return Outcome::full;
    room_ -= more;
  }
  put(content.seen, offset, bytes, count_of_bytes);
  content.waiting.push_back({offset, Bytes(bytes, bytes + count_of_bytes)});
  return is_off() ? Outcome::off : Outcome::done;  // handed over, and nobody will say so
}

Outcome FaultDisk::set_size(Content& content, std::int64_t size) {
  const std::scoped_lock lock(mutex_);
  if (auto counted = count(); counted != Outcome::done) return counted;
  if (room_ >= 0) room_ += std::max<std::int64_t>(0, std::ssize(content.seen) - size);
  content.seen.resize(static_cast<std::size_t>(size));
  content.waiting.push_back({size, {}});
  return is_off() ? Outcome::off : Outcome::done;
}

Outcome FaultDisk::sync(Content& content) {
  const std::scoped_lock lock(mutex_);
  if (auto counted = count(); counted != Outcome::done) return counted;
  if (is_off()) return Outcome::off;  // cut before it had its effect
  for (const auto& change : content.waiting) {
    if (change.bytes.empty()) {
      content.durable.resize(static_cast<std::size_t>(change.offset));
    } else {
      put(content.durable, change.offset, change.bytes.data(), change.bytes.size());
    }
  }
  content.waiting.clear();
  return Outcome::done;
}

Outcome FaultDisk::rename(const std::string& from, const std::string& to) {
  const std::scoped_lock lock(mutex_);
  if (auto counted = count(); counted != Outcome::done) return counted;
  const auto found = contents_.find(from);
  if (found != contents_.end()) {
    contents_[to] = found->second;
    contents_.erase(from);
  }
  return is_off() ? Outcome::off : Outcome::done;
}

Outcome FaultDisk::remove(const std::string& path) {
  const std::scoped_lock lock(mutex_);
  if (auto counted = count(); counted != Outcome::done) return counted;
  if (const auto found = contents_.find(path); found != contents_.end()) {
    if (room_ >= 0) room_ += std::ssize(found->second->seen);
    contents_.erase(found);
  }
  return is_off() ? Outcome::off : Outcome::done;
}

void FaultDisk::restore_power(std::uint64_t seed) {
  const std::scoped_lock lock(mutex_);
  SplitMix64 random(seed);
  for (auto& [path, content] : contents_) survive(*content, random);
  left_ = -1;
}

std::shared_ptr<Content> FaultDisk::find(const std::string& path) {
  const std::scoped_lock lock(mutex_);
  const auto found = contents_.find(path);
  return found == contents_.end() ? nullptr : found->second;
}

std::shared_ptr<Content> FaultDisk::find_or_make(const std::string& path) {
  const std::scoped_lock lock(mutex_);
  auto& content = contents_[path];
  if (content == nullptr) content = std::make_shared<Content>();
  return content;
}

Bytes FaultDisk::bytes(const std::string& path) {
  const std::scoped_lock lock(mutex_);
  const auto content = find(path);
  return content == nullptr ? Bytes{} : content->seen;
}

void FaultDisk::set_bytes(const std::string& path, Bytes bytes) {
  const std::scoped_lock lock(mutex_);
  auto content = find_or_make(path);
  content->seen = content->durable = std::move(bytes);
  content->waiting.clear();
}

std::vector<std::string> FaultDisk::names() const {
  const std::scoped_lock lock(mutex_);
  std::vector<std::string> names;
  for (const auto& [path, content] : contents_) names.push_back(path);
  return names;
}

// The register's own files ------------------------------------------------------------------------

namespace {

Result<> told(Outcome outcome, const std::string& path) {
  switch (outcome) {
    case Outcome::done:
      return Done{};
    case Outcome::off:
      return fail(Fault::io, path + ": The power is off.");
    case Outcome::full:
      return fail(Fault::io, path + ": The disk is full. Make room and try again.");
    case Outcome::read_only:
      return fail(Fault::io, path + ": It cannot be written: the file or folder is read-only.");
  }
  return Done{};
}

class OpenFile final : public File {
 public:
  OpenFile(FaultDisk& disk, std::string path, std::shared_ptr<Content> content)
      : disk_(disk), path_(std::move(path)), content_(std::move(content)) {}

  Result<std::int64_t> size() override {
    const std::scoped_lock lock(disk_.mutex());
    return std::int64_t{std::ssize(content_->seen)};
  }
  Result<std::size_t> read(std::int64_t offset, std::span<std::uint8_t> into) override {
    const std::scoped_lock lock(disk_.mutex());
    if (disk_.is_off()) return fail(Fault::io, path_ + ": The power is off.");
    const auto from =
        std::min<std::size_t>(static_cast<std::size_t>(offset), content_->seen.size());
    const auto count = std::min(into.size(), content_->seen.size() - from);
    std::copy_n(content_->seen.begin() + static_cast<std::ptrdiff_t>(from), count, into.begin());
    return count;
  }
  Result<> write(std::int64_t offset, std::span<const std::uint8_t> bytes) override {
    return told(disk_.write(*content_, offset, bytes.data(), bytes.size()), path_);
  }
  Result<> sync() override { return told(disk_.sync(*content_), path_); }
  Result<> set_size(std::int64_t bytes) override {
    return told(disk_.set_size(*content_, bytes), path_);
  }
  Result<> allocate(std::int64_t bytes) override {
    const Bytes zeros(static_cast<std::size_t>(bytes));
    return told(disk_.write(*content_, 0, zeros.data(), zeros.size()), path_);
  }

 private:
  FaultDisk& disk_;
  std::string path_;
  std::shared_ptr<Content> content_;
};

class HeldLock final : public FolderLock {
 public:
  explicit HeldLock(std::shared_ptr<Content> content) : content_(std::move(content)) {
    content_->is_locked = true;
  }
  HeldLock(const HeldLock&) = delete;
  HeldLock& operator=(const HeldLock&) = delete;
  ~HeldLock() override { content_->is_locked = false; }

 private:
  std::shared_ptr<Content> content_;
};

class DiskFiles final : public Files {
 public:
  explicit DiskFiles(FaultDisk& disk) : disk_(disk) {}

  Result<std::unique_ptr<File>> open(const std::filesystem::path& path, Access access) override {
    const std::string name = path.string();
    if (access != Access::read) {
      if (auto may = told(disk_.may_write(), name); !may) return fail(may.error());
    }
    auto content = access == Access::create ? disk_.find_or_make(name) : disk_.find(name);
    if (content == nullptr) return fail(Fault::not_found, name + ": There is no such file.");
    return std::unique_ptr<File>(std::make_unique<OpenFile>(disk_, name, std::move(content)));
  }
  bool exists(const std::filesystem::path& path) override {
    return path == "/register" || disk_.exists(path.string());
  }
  bool writable(const std::filesystem::path&) override {
    return disk_.may_write() == Outcome::done;
  }
  Result<> make_folder(const std::filesystem::path&) override { return Done{}; }
  Result<> rename(const std::filesystem::path& from, const std::filesystem::path& to) override {
    return told(disk_.rename(from.string(), to.string()), from.string());
  }
  Result<> remove(const std::filesystem::path& path) override {
    return told(disk_.remove(path.string()), path.string());
  }
  std::int64_t free_bytes(const std::filesystem::path&) override {
    // Not enough for the ballast, unless a test says how much there is.
    return disk_.room() >= 0 ? disk_.room() : std::int64_t{1} << 30;
  }
  Result<std::unique_ptr<FolderLock>> lock(const std::filesystem::path& path) override {
    auto content = disk_.find_or_make(path.string());
    if (content->is_locked) return fail(Fault::conflict, "another Kneerail has it open");
    return std::unique_ptr<FolderLock>(std::make_unique<HeldLock>(std::move(content)));
  }
  [[nodiscard]] std::string sqlite_layer() const override { return disk_.layer(); }

 private:
  FaultDisk& disk_;
};

}  // namespace

std::unique_ptr<Files> make_files(FaultDisk& disk) {
  return std::make_unique<DiskFiles>(disk);
}

}  // namespace kneerail::faults
