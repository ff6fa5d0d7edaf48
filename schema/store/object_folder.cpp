#include "schema/store/object_folder.h"

#include <algorithm>

namespace kneerail {
namespace {

Result<cbor::Bytes> all_of(Files& files, const std::filesystem::path& path) {
  auto file = files.open(path, Files::Access::read);
  if (!file) return fail(file.error());
  auto size = (*file)->size();
  if (!size) return fail(size.error());
  cbor::Bytes bytes(static_cast<std::size_t>(*size));
  auto count = (*file)->read(0, bytes);
  if (!count) return fail(count.error());
  bytes.resize(*count);
  return bytes;
}

Result<> write_whole(Files& files, const std::filesystem::path& path,
                     std::span<const std::uint8_t> bytes) {
  auto file = files.open(path, Files::Access::create);
  if (!file) return fail(file.error());
  if (auto done = (*file)->set_size(0); !done) return done;
  if (auto done = (*file)->write(0, bytes); !done) return done;
  return (*file)->sync();
}

}  // namespace

std::filesystem::path objects_of(const std::filesystem::path& register_folder) {
  return register_folder / "objects";
}

std::filesystem::path object_place(const std::filesystem::path& objects, const Digest& sha) {
  const std::string name = to_hex(sha);
  return objects / name.substr(0, 2) / name.substr(2, 2) / name;
}

std::filesystem::path ObjectFolder::place(const Digest& sha) const {
  return object_place(folder_, sha);
}

Result<Digest> ObjectFolder::put(std::span<const std::uint8_t> bytes) {
  const Digest sha = sha256(bytes);
  const auto path = place(sha);
  if (files_->exists(path) && read(sha)) return sha;
  if (auto made = files_->make_folder(path.parent_path()); !made) return fail(made.error());
  auto beside = path;
  beside += ".new";
  if (auto done = write_whole(*files_, beside, bytes); !done) return fail(done.error());
  if (auto done = files_->rename(beside, path); !done) return fail(done.error());
  return sha;
}

Result<cbor::Bytes> ObjectFolder::read(const Digest& sha) const {
  auto bytes = all_of(*files_, place(sha));
  if (!bytes) return bytes;
  if (sha256(*bytes) != sha) {
    return fail(Fault::corrupt, place(sha).string() +
                                    ": The bytes are not those of the name. The file is damaged; "
                                    "it is not shown.");
  }
  return bytes;
}

Result<ObjectCheck> check_objects(Database& tables, const Uuid& device,
                                  const ObjectFolder& objects) {
  auto rows = tables.prepare(
      "SELECT s.sha, EXISTS (SELECT 1 FROM object_use AS u JOIN fact AS f ON f.record = u.record "
      "WHERE u.sha = s.sha AND f.kind <> 85 AND f.dev = ?1 AND f.hseq IS NULL) "
      "FROM object_state AS s WHERE s.kind IS NOT NULL AND (s.erased_by IS NULL OR s.kept_by IS "
      "NOT NULL) ORDER BY s.sha");
  if (!rows) return fail(rows.error());
  rows->bind(1, device);
  ObjectCheck check;
  for (;;) {
    auto more = rows->step();
    if (!more) return fail(more.error());
    if (!*more) return check;
    Digest sha{};
    if (rows->bytes(0).size() != sha.size()) continue;
    std::ranges::copy(rows->bytes(0), sha.begin());
    const bool must_be_here = rows->number(1) != 0;
    if (!objects.holds(sha)) {
      if (must_be_here) {
        check.problems.push_back(objects.place(sha).string() +
                                 ": A record of this device names it, and it is not there.");
      }
      continue;
    }
    if (auto bytes = objects.read(sha); !bytes) {
      check.problems.push_back(bytes.error().message);
    } else {
      ++check.whole;
    }
  }
}

}  // namespace kneerail
