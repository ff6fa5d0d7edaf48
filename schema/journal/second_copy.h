#pragma once

// The second copy: what this device has written and the hub has not yet said it has, in one plain
// file beside the register (unsent.copy). Each group of frames is on disk before the register's own
// commit, so a damaged or silently shortened register gets its records back from here.
//
//   file   = "kneerail unsent " device[16] crc[4] zero[12] { frame } zero ...
//   frame  = length[4] crc[4] payload        length and crc (CRC-32C) are of the payload
//   payload = type[1] more[1] feed[16] seq[8] bytes
//
// Numbers are little-endian. `more` = 1: the next frame belongs to the same transaction, and counts
// only with it. The file is allocated beforehand in steps of 4 MiB, because a growing file costs a
// second write at every sync; behind the last frame stand at least eight zero bytes.

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <span>
#include <vector>

#include "core/base/id.h"
#include "core/base/result.h"
#include "core/records/cbor.h"
#include "schema/journal/files.h"

namespace kneerail {

struct CopyFrame {
  enum class Type : std::uint8_t { record = 1, draft = 2, draft_ended = 3 };
  Type type = Type::record;
  Uuid feed;
  std::int64_t seq = 0;  ///< place in the chain; 0 for drafts
  cbor::Bytes bytes;     ///< the record, or the draft (schema/journal/draft.h)
};

class SecondCopy {
 public:
  static constexpr std::int64_t step_bytes = std::int64_t{4} << 20;

  struct Reading {
    std::int64_t frames = 0;
    std::int64_t damaged = 0;  ///< frames, or a rest of the file, that could not be read
  };
  /// Called with the frames of one transaction, oldest transaction first; false stops the reading.
  using Visit = std::function<bool(std::span<const CopyFrame>)>;

  /// Opens the file and finds its end; makes it where there is none. Errors: io; corrupt (its head
  /// is damaged or names another device; the file is left as it is).
  static Result<SecondCopy> open(Files& files, const std::filesystem::path& path,
                                 const Uuid& device);
  /// The same of a file that is there, to look at only: nothing is made or written, and append()
  /// and its neighbours are refused. Errors: not_found, io, corrupt.
  static Result<SecondCopy> open_reading(Files& files, const std::filesystem::path& path,
                                         const Uuid& device);
  /// The device a second copy belongs to. Errors: not_found, io, corrupt.
  static Result<Uuid> device_of(Files& files, const std::filesystem::path& path);

  /// Reads what can be read, past single damaged frames. Errors: io.
  Result<Reading> read(const Visit& visit);

  /// Adds frames that belong together. On disk when it returns. Errors: io; nothing was added then.
  Result<> append(std::span<const CopyFrame> group);
  /// The same, but they are on disk only after sync(); the way there has begun. Errors: io; nothing
  /// was added then.
  Result<> start_append(std::span<const CopyFrame> group);
  /// Errors: io; take_back() has to follow then.
  Result<> sync();
  /// The end goes back to where it was before the last append: its transaction was refused.
  void take_back();
  /// Forgets all frames: everything in them is acknowledged, or about to be written again.
  Result<> start_anew();

  [[nodiscard]] bool is_empty() const;

 private:
  SecondCopy(std::unique_ptr<File> file, std::int64_t capacity)
      : file_(std::move(file)), capacity_(capacity) {}
  Result<> make_room(std::int64_t bytes);

  std::unique_ptr<File> file_;
  std::int64_t capacity_;        ///< bytes allocated
  std::int64_t end_ = 0;         ///< where the next frame goes
  std::int64_t end_before_ = 0;  ///< where the last append began
};

}  // namespace kneerail
