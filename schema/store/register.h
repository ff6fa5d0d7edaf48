#pragma once

// A register folder: the records with their journal, second copy and drafts, and the tables made
// from them. One process writes at a time; within it one thread.

#include <array>
#include <atomic>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/base/world.h"
#include "core/records/record.h"
#include "schema/database.h"

namespace kneerail {

class Files;

/// What a person entered, before it has an id, a clock and a place in the chain.
struct Entry {
  Uuid feed;
  int kind = 0;
  Uuid subject;  ///< zero for a create: its own id
  Uuid who;      ///< person; zero: the device itself
  cbor::Map body;
  std::optional<Uuid>
      id;  ///< given where the same entry must get the same id again (import); else minted
};

/// An entry that is still being typed.
struct Draft {
  Uuid feed;
  int kind = 0;
  Uuid subject;
  std::int64_t place = 0;  ///< spot or screw; with subject and kind the draft's key
  Uuid who;
  cbor::Map body;
};

/// In a draft's body beside the keys of its kind: the id that its record gets, where other drafts
/// name that record already.
inline constexpr int draft_key_id = -1;

/// One person's part of a visit on this device, to be closed.
struct VisitSeal {
  Uuid site;
  Uuid visit;
  Uuid person;
  std::optional<std::array<std::uint8_t, 32>> signature_picture{};  ///< SHA-256 of an object
  std::optional<std::string> note{};
};

enum class Mode {
  create,  ///< make the register if there is none
  write,   ///< must exist; exclusive
  read     ///< must exist; nothing is written, a writer may be at work
};

/// What was found and done on opening, in sentences; empty when there is nothing to tell.
struct Opening {
  bool writable = false;
  std::vector<std::string> notes;
  std::int64_t records_recovered = 0;  ///< appended again from the second copy
  std::int64_t records_missing = 0;    ///< a damaged file held them and nothing brings them back
  std::int64_t drafts_closed = 0;
};

struct VerifyReport {
  std::int64_t records = 0;
  std::int64_t chains = 0;
  std::int64_t objects = 0;           ///< here and whole
  std::vector<std::string> problems;  ///< empty: whole
};

class Register {
 public:
  struct Options {
    std::filesystem::path folder;
    Mode mode = Mode::write;
    Clock* clock = nullptr;    ///< owned by the caller, outlives the register; null: the machine's
    Random* random = nullptr;  ///< likewise
    Files* files = nullptr;    ///< likewise; the disk, which a test may break
    int cache_kib = Database::usual_cache_kib;  ///< of the file's pages, held in memory at most
    /// Set from any thread, opening to write is left off at the next check: nothing is mended and
    /// nothing is lost, the next opening checks again. None: it cannot be left off.
    const std::atomic<bool>* stop = nullptr;
  };

  /// Errors: not_found (no register there), invalid_input (not a register, or one of a newer
  /// program), conflict (in use by another process), io (folder not writable, disk full), corrupt
  /// (damage that could not be mended; what was set aside is named), cancelled (it was stopped).
  static Result<std::unique_ptr<Register>> open(const Options& options);
  ~Register();

  [[nodiscard]] const Opening& opening() const;
  [[nodiscard]] Uuid device() const;
  /// The organisation of this register; zero while none has been created.
  [[nodiscard]] Uuid organisation() const;

  /// Saves entries together or not at all: second copy synced, then one transaction of journal and
  /// rows. On disk when it returns. An id already in the journal is that record, and is left alone.
  /// Returns the ids, in order. Errors: invalid_input (outside the limits of its kind), io,
  /// conflict (opened read-only).
  Result<std::vector<Uuid>> save(std::span<const Entry> entries);
  Result<Uuid> save(const Entry& entry);

  /// The same, and the draft they come from ends with them.
  Result<std::vector<Uuid>> save(std::span<const Entry> entries, const Draft& ended);

  /// Closes that person's part of the visit with a signed seal (kind 13) over all this device has
  /// written at the site so far. What is added to the visit later is shown as added after it.
  /// Errors: not_found (the person has no part in the visit here), and those of save().
  Result<Uuid> seal(const VisitSeal& seal);

  Result<> save_draft(const Draft& draft);
  Result<std::vector<Draft>> drafts();
  /// The entry was taken back before it was whole: no record comes of it.
  Result<> drop_draft(const Draft& draft);
  /// Makes the draft a record.
  Result<Uuid> close_draft(const Draft& draft);

  /// Keeps bytes beside the records, under their SHA-256. On disk when it returns; a record that
  /// names them is saved after. Errors: io, conflict (opened read-only).
  Result<std::array<std::uint8_t, 32>> keep_object(std::span<const std::uint8_t> bytes);
  /// Errors: not_found, corrupt (not the bytes of that name: never shown), io.
  Result<cbor::Bytes> object(const std::array<std::uint8_t, 32>& sha);

  /// A new version 7 identifier from this register's clock and random source.
  Uuid mint();

  /// Drops the tables and folds the journal again; makes the journal's indexes again too.
  /// `progress(done, all)` returns false to stop: the old tables then stay.
  Result<std::int64_t> rebuild(
      const std::function<bool(std::int64_t, std::int64_t)>& progress = {});
  /// Checks file, chains, seals, second copy, tables against a fresh fold, and objects. Damage
  /// found is in the report, not an error.
  Result<VerifyReport> verify(const std::function<bool(std::int64_t, std::int64_t)>& progress = {});
  /// SHA-256 over all rows of all folded tables in key order, in hexadecimal: equal for equal
  /// records and stamps.
  Result<std::string> table_digest();

  /// For reading the tables. Not for writing.
  Database& tables();

 private:
  struct Inside;
  explicit Register(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

}  // namespace kneerail
