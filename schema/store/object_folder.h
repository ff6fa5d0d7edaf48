#pragma once

// The bytes beside the records: photographs, drawings, reports. Each is a file named by its
// SHA-256, objects/ab/cd/<64 digits>, so that the name says whether the bytes are the right ones.
// They never change; whatever names them is written after they are on disk.

#include <filesystem>
#include <span>
#include <string>
#include <vector>

#include "core/records/cbor.h"
#include "schema/database.h"
#include "schema/digest.h"
#include "schema/journal/files.h"

namespace kneerail {

/// Where a register keeps its objects, and the file of one among them.
std::filesystem::path objects_of(const std::filesystem::path& register_folder);
std::filesystem::path object_place(const std::filesystem::path& objects, const Digest& sha);

class ObjectFolder {
 public:
  /// `files` outlives it. `folder` is made when the first object comes.
  ObjectFolder(Files& files, std::filesystem::path folder)
      : files_(&files), folder_(std::move(folder)) {}

  [[nodiscard]] std::filesystem::path place(const Digest& sha) const;
  [[nodiscard]] bool holds(const Digest& sha) const { return files_->exists(place(sha)); }
  /// On disk under its name when it returns: another name first, synced, then renamed. One that is
  /// there and whole is left alone. Errors: io.
  Result<Digest> put(std::span<const std::uint8_t> bytes);
  /// Errors: not_found, corrupt (the bytes are not those of the name), io.
  Result<cbor::Bytes> read(const Digest& sha) const;

 private:
  Files* files_;
  std::filesystem::path folder_;
};

struct ObjectCheck {
  std::int64_t whole = 0;
  std::vector<std::string> problems;
};
/// Every object that a record names and that is not erased: the file's bytes against its name. One
/// that is not here is a problem only where a record of this device that the hub has not yet names
/// it: others may not have been fetched. Errors: io, corrupt.
Result<ObjectCheck> check_objects(Database& tables, const Uuid& device,
                                  const ObjectFolder& objects);

}  // namespace kneerail
