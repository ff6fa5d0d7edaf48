#include "schema/exchange/digested_file.h"

#include <unistd.h>

#include <catch2/catch.hpp>
#include <vector>

#include "tests/support/folder.h"

using namespace kneerail;
using kneerail::test::Folder;

namespace {

/// What was asked of the disk, in order; its writes fail from the n-th on.
struct Log {
  std::vector<std::string> calls;
  int writes_that_succeed = 1000;
};

class LoggedFile final : public File {
 public:
  LoggedFile(std::unique_ptr<File> on, Log& log) : on_(std::move(on)), log_(log) {}
  Result<std::int64_t> size() override { return on_->size(); }
  Result<std::size_t> read(std::int64_t offset, std::span<std::uint8_t> into) override {
    return on_->read(offset, into);
  }
  Result<> write(std::int64_t offset, std::span<const std::uint8_t> bytes) override {
    log_.calls.emplace_back("write");
    if (log_.writes_that_succeed-- <= 0) return fail(Fault::io, "The disk is full.");
    return on_->write(offset, bytes);
  }
  Result<> sync() override {
    log_.calls.emplace_back("sync");
    return on_->sync();
  }
  Result<> set_size(std::int64_t bytes) override { return on_->set_size(bytes); }
  Result<> allocate(std::int64_t bytes) override { return on_->allocate(bytes); }

 private:
  std::unique_ptr<File> on_;
  Log& log_;
};

class LoggedFiles final : public Files {
 public:
  explicit LoggedFiles(Log& log) : log_(log) {}
  Result<std::unique_ptr<File>> open(const std::filesystem::path& path, Access access) override {
    auto opened = disk_->open(path, access);
    if (!opened) return fail(opened.error());
    return std::unique_ptr<File>(std::make_unique<LoggedFile>(std::move(*opened), log_));
  }
  bool exists(const std::filesystem::path& path) override { return disk_->exists(path); }
  bool writable(const std::filesystem::path& path) override { return disk_->writable(path); }
  Result<> make_folder(const std::filesystem::path& path) override {
    return disk_->make_folder(path);
  }
  Result<> rename(const std::filesystem::path& from, const std::filesystem::path& to) override {
    log_.calls.push_back("rename " + from.filename().string());
    return disk_->rename(from, to);
  }
  Result<> remove(const std::filesystem::path& path) override { return disk_->remove(path); }
  std::int64_t free_bytes(const std::filesystem::path& folder) override {
    return disk_->free_bytes(folder);
  }
  Result<std::unique_ptr<FolderLock>> lock(const std::filesystem::path& path) override {
    return disk_->lock(path);
  }

 private:
  std::unique_ptr<Files> disk_ = machine_files();
  Log& log_;
};

std::size_t files_in(const Folder& folder) {
  std::size_t count = 0;
  for (const auto& one : std::filesystem::directory_iterator(folder.path()))
    count += one.exists() ? 1 : 0;
  return count;
}

Error refusal(const std::filesystem::path& file, std::string_view line) {
  const auto reader = DigestedReader::open(file, line);
  REQUIRE_FALSE(reader);
  INFO(reader.error().message);
  CHECK(reader.error().fault == Fault::corrupt);
  CHECK(reader.error().message.find("register is as it was") != std::string::npos);
  return reader.error();
}

}  // namespace

TEST_CASE("a digested file is on disk before it has its name", "[schema]") {
  const Folder folder;
  Log log;
  auto writer =
      DigestedWriter::create(folder / "file", "a kind 1", std::make_shared<LoggedFiles>(log));
  REQUIRE(writer);
  REQUIRE(writer->block("bytes"));
  CHECK_FALSE(std::filesystem::exists(folder / "file"));
  REQUIRE(writer->finish());
  CHECK(std::filesystem::exists(folder / "file"));
  CHECK(files_in(folder) == 1);
  REQUIRE(log.calls.size() > 2);
  CHECK(log.calls[log.calls.size() - 2] == "sync");
  // Two processes that make the same file write beside each other.
  CHECK(log.calls.back() == "rename file." + std::to_string(::getpid()) + ".unfinished");
  auto reader = DigestedReader::open(folder / "file", "a kind 1");
  REQUIRE(reader);
  const auto bytes = reader->block();
  REQUIRE(bytes);
  CHECK(*bytes == "bytes");
  CHECK(reader->at_end());
  CHECK(reader->whole());
}

TEST_CASE("nothing stays of a digested file that was not finished", "[schema]") {
  const Folder folder;
  folder.write("file", "what stood there before");
  Log log;
  SECTION("the disk is full at its line, its block or its digest") {
    for (const int writes : {0, 1, 2, 3}) {
      INFO(writes);
      log.writes_that_succeed = writes;
      auto writer =
          DigestedWriter::create(folder / "file", "a kind 1", std::make_shared<LoggedFiles>(log));
      const bool done = writer && writer->block("bytes") && writer->finish();
      CHECK_FALSE(done);
    }
  }
  SECTION("who wrote it gave up") {
    auto writer =
        DigestedWriter::create(folder / "file", "a kind 1", std::make_shared<LoggedFiles>(log));
    REQUIRE(writer);
    CHECK(files_in(folder) == 2);
  }
  CHECK(files_in(folder) == 1);
  CHECK(std::filesystem::file_size(folder / "file") == 23);
}

TEST_CASE("a digested file of another program is said to be that", "[schema]") {
  const Folder folder;
  auto writer = DigestedWriter::create(folder / "file", "a kind 1 of models 7");
  REQUIRE(writer);
  REQUIRE(writer->block("bytes"));
  REQUIRE(writer->finish());
  const Error other = refusal(folder / "file", "a kind 1 of models 8");
  CHECK(other.message.find("written by another version of this program") != std::string::npos);
  CHECK(other.message.find("a kind 1 of models 7") != std::string::npos);
  CHECK(refusal(folder / "file", "another kind 1").message.find("another kind of file") !=
        std::string::npos);
  folder.write("empty", "");
  CHECK(refusal(folder / "empty", "a kind 1").message.find("another kind of file") !=
        std::string::npos);
}
