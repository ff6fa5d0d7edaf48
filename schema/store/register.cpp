#include "schema/store/register.h"

#include <algorithm>
#include <utility>

#include "core/fold/columns.h"
#include "schema/journal/draft.h"
#include "schema/store/object_folder.h"
#include "schema/store/opening.h"
#include "schema/store/rebuild.h"
#include "schema/store/saving.h"
#include "schema/store/sealing.h"
#include "schema/store/state.h"
#include "schema/store/verify.h"

namespace kneerail {

struct Register::Inside : RegisterState {
  using RegisterState::RegisterState;
};

Register::Register(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Register::~Register() = default;

Result<std::unique_ptr<Register>> Register::open(const Options& options) {
  auto inside = std::make_unique<Inside>(options.folder);
  if (options.files == nullptr) inside->own_files = machine_files();
  inside->files = options.files == nullptr ? inside->own_files.get() : options.files;
  inside->clock = options.clock == nullptr ? &inside->own_clock : options.clock;
  inside->cache_kib = options.cache_kib;
  inside->stop = options.stop;
  inside->random = options.random == nullptr ? &inside->own_random : options.random;
  if (auto done = open_register(*inside, options.mode); !done) return fail(done.error());
  return std::unique_ptr<Register>(new Register(std::move(inside)));
}

const Opening& Register::opening() const {
  return inside_->opening;
}

Uuid Register::device() const {
  return inside_->journal->device();
}

Uuid Register::organisation() const {
  auto statement = inside_->database->prepare("SELECT id FROM entity WHERE type = 1 ORDER BY id");
  if (!statement) return {};
  auto row = statement->step();
  return row && *row ? statement->uuid(0) : Uuid{};
}

Result<std::vector<Uuid>> Register::save(std::span<const Entry> entries) {
  return save_entries(*inside_, entries, nullptr);
}

Result<Uuid> Register::save(const Entry& entry) {
  auto ids = save_entries(*inside_, std::span(&entry, 1), nullptr);
  if (!ids) return fail(ids.error());
  return ids->front();
}

Result<std::vector<Uuid>> Register::save(std::span<const Entry> entries, const Draft& ended) {
  return save_entries(*inside_, entries, &ended);
}

Result<Uuid> Register::seal(const VisitSeal& seal) {
  auto entry = seal_entry(*inside_, seal);
  if (!entry) return fail(entry.error());
  return save(*entry);
}

Result<> Register::save_draft(const Draft& draft) {
  return save_draft_touch(*inside_, draft);
}

Result<> Register::drop_draft(const Draft& draft) {
  auto done = save_entries(*inside_, {}, &draft);
  if (!done) return fail(done.error());
  return Done{};
}

Result<std::vector<Draft>> Register::drafts() {
  return read_drafts(*inside_->database);
}

Result<Uuid> Register::close_draft(const Draft& draft) {
  auto entries = entries_of(*inside_, draft, Closing::by_person);
  if (!entries) return fail(entries.error());
  auto ids = save_entries(*inside_, *entries, &draft);
  if (!ids) return fail(ids.error());
  return ids->front();
}

Result<Digest> Register::keep_object(std::span<const std::uint8_t> bytes) {
  if (!inside_->opening.writable) {
    return fail(Fault::conflict, inside_->places.folder.string() +
                                     ": The register was opened for reading only. Nothing was "
                                     "kept.");
  }
  return ObjectFolder(*inside_->files, inside_->places.objects()).put(bytes);
}

Result<cbor::Bytes> Register::object(const Digest& sha) {
  return ObjectFolder(*inside_->files, inside_->places.objects()).read(sha);
}

Uuid Register::mint() {
  return mint_id(*inside_);
}

Result<std::int64_t> Register::rebuild(
    const std::function<bool(std::int64_t, std::int64_t)>& progress) {
  if (!inside_->opening.writable) {
    return fail(Fault::conflict,
                "The register was opened for reading only. Its tables stay as "
                "they were.");
  }
  if (auto done = inside_->database->run("REINDEX journal"); !done) return fail(done.error());
  auto folded = rebuild_tables(*inside_, progress);
  if (!folded) return fail(folded.error());
  if (folded->unreadable > 0) {
    return fail(Fault::corrupt, std::to_string(folded->unreadable) +
                                    " records of the journal cannot be read and were left out. "
                                    "The others were folded; kneerail verify says which.");
  }
  return folded->records;
}

Result<VerifyReport> Register::verify(
    const std::function<bool(std::int64_t, std::int64_t)>& progress) {
  return verify_register(*inside_, progress);
}

Result<std::string> Register::table_digest() {
  return digest_of_tables(*inside_->database);
}

Database& Register::tables() {
  return *inside_->database;
}

}  // namespace kneerail
