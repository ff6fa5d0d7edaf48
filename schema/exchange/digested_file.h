#pragma once

// Files that a digest keeps whole: a line of text that says what they are, blocks of bytes each
// with its length before it, and at the end the SHA-256 of all before. For files that can be made
// again.

#include <cstdint>
#include <filesystem>
#include <fstream>
#include <memory>
#include <string>
#include <string_view>

#include "core/base/result.h"
#include "schema/digest.h"
#include "schema/journal/files.h"

namespace kneerail {

/// A length as the eight bytes before a block.
std::string length_bytes(std::uint64_t length);
std::uint64_t length_of(std::string_view eight_bytes);

/// "FILE is cut short or damaged ...".
Error damaged_file(const std::filesystem::path& file);
/// "FILE is no file of the kind LINE ..."; where it is one of another program, "FILE was written by
/// another version ...", with its own line.
Error other_file(const std::filesystem::path& file, std::string_view line, std::string_view found);

/// Writes beside the name, under a name of this process, and takes the name when all is on disk.
/// What is not finished is removed when the writer goes.
class DigestedWriter {
 public:
  /// Errors of all calls: io, with a sentence.
  static Result<DigestedWriter> create(const std::filesystem::path& file, std::string_view line,
                                       std::shared_ptr<Files> files = machine_files());
  DigestedWriter(DigestedWriter&&) noexcept;
  DigestedWriter& operator=(DigestedWriter&&) = delete;
  ~DigestedWriter();

  Result<> block(std::string_view bytes);
  /// The file has its name, and both are on disk, when it returns.
  Result<> finish();
  /// Bytes written so far: where the next block begins.
  [[nodiscard]] std::uint64_t position() const;

 private:
  struct Inside;
  explicit DigestedWriter(std::unique_ptr<Inside> inside);
  Result<> write(std::string_view bytes);

  std::unique_ptr<Inside> inside_;
};

/// Reads the blocks in order. What was read before at_end() said yes and whole() too is not yet
/// known to be what was written.
class DigestedReader {
 public:
  /// Errors: not_found; corrupt where the line is another one.
  static Result<DigestedReader> open(const std::filesystem::path& file, std::string_view line);
  /// Errors: corrupt.
  Result<std::string> block();
  [[nodiscard]] bool at_end() const { return left_ == 0; }
  /// Where in the file the next block begins.
  [[nodiscard]] std::uint64_t position() const { return position_; }
  /// Checks the digest, when all blocks have been read. Errors: corrupt.
  Result<> whole();

 private:
  [[nodiscard]] Error damaged() const { return damaged_file(file_); }

  std::filesystem::path file_;
  std::ifstream in_;
  std::uint64_t left_ = 0;  ///< bytes before the digest
  std::uint64_t position_ = 0;
  Sha256 digest_;
};

}  // namespace kneerail
