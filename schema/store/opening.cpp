#include "schema/store/opening.h"

#include <algorithm>
#include <string>
#include <utility>

#include "core/fold/fold.h"
#include "schema/journal/draft.h"
#include "schema/journal/rescue.h"
#include "schema/journal/start_checks.h"
#include "schema/store/rebuild.h"
#include "schema/store/saving.h"

namespace kneerail {
namespace {

constexpr std::int64_t spare_bytes = std::int64_t{32} << 20;
constexpr std::int64_t room_warning_bytes = std::int64_t{500} << 20;

std::string at(const RegisterState& state) {
  return state.places.folder.string() + ": ";
}

Error no_register(const RegisterState& state) {
  return fail(Fault::not_found, at(state) + "There is no register here.");
}

Error not_a_register(const RegisterState& state) {
  return fail(Fault::invalid_input,
              state.places.records().string() +
                  ": This file is not a Kneerail register. It was left as it is.");
}

Uuid new_device(RegisterState& state) {
  return mint_id(state);
}

void new_secret(RegisterState& state) {
  state.random->fill(state.identity.signing_secret);
}

/// What stands in the file's head: whose it is and how new. Changes nothing.
Result<> check_marks(const RegisterState& state, Database& database) {
  auto application = database.number("PRAGMA application_id");
  if (!application) return fail(application.error());
  if (*application != register_application_id) return not_a_register(state);
  auto newer = has_newer_steps(database);
  if (!newer) return fail(newer.error());
  auto version = database.number("PRAGMA user_version");
  if (!version) return fail(version.error());
  if (*newer || *version > fold::fold_version) {
    return fail(Fault::invalid_input,
                at(state) +
                    "This register was written by a newer Kneerail. Update this program "
                    "to open it; nothing was changed.");
  }
  return Done{};
}

/// What a register leaves beside its file: with it the file was one, whatever stands there now.
bool has_trace(const RegisterState& state) {
  return state.files->exists(state.places.identity()) || state.files->exists(state.places.copy());
}

Error damaged(const RegisterState& state, const char* how) {
  return fail(Fault::corrupt, at(state) + "The register's file is " + how +
                                  ". `kneerail rebuild` sets it aside and brings back what it and "
                                  "the second copy hold.");
}

Error missing(const RegisterState& state) {
  return fail(Fault::corrupt, at(state) +
                                  "The register's file is missing. `kneerail rebuild` makes "
                                  "it again from what the second copy holds.");
}

// Reading only ------------------------------------------------------------------------------------

/// A folder that nobody can write needs no log's index, and SQLite could not make one there. On a
/// full disk the index is kept in memory.
Result<Database> open_unchanging(const RegisterState& state) {
  std::filesystem::path log = state.places.records();
  log += "-wal";
  const Database::Options plain{.path = state.places.records().string(),
                                .access = Database::Access::read,
                                .vfs = state.files->sqlite_layer(),
                                .cache_kib = state.cache_kib};
  auto opened = Database::open(plain);
  if (!opened && opened.error().fault == Fault::io && state.files->writable(state.places.folder)) {
    auto by_itself = plain;
    by_itself.alone = true;
    if (auto alone = Database::open(by_itself)) return alone;
  }
  if (opened || state.files->writable(state.places.folder) || state.files->exists(log)) {
    return opened;
  }
  auto unchanging = plain;
  unchanging.path = "file:" + plain.path + "?immutable=1";
  return Database::open(unchanging);
}

Result<> open_reading(RegisterState& state) {
  if (!state.files->exists(state.places.records())) {
    return has_trace(state) ? missing(state) : no_register(state);
  }
  auto opened = open_unchanging(state);
  if (!opened) {
    if (opened.error().fault != Fault::corrupt) return opened.error();
    return has_trace(state) ? damaged(state, "damaged") : not_a_register(state);
  }
  state.database = std::make_unique<Database>(std::move(*opened));
  const auto things = state.database->number("SELECT count(*) FROM sqlite_schema");
  if (things && *things == 0 && has_trace(state)) return damaged(state, "empty");
  if (auto ok = check_marks(state, *state.database); !ok) {
    const bool torn = ok.error().fault == Fault::corrupt && has_trace(state);
    return torn ? damaged(state, "damaged") : ok.error();
  }
  auto version = state.database->number("PRAGMA user_version");
  if (!version) return fail(version.error());
  if (*version != fold::fold_version) {
    return fail(Fault::conflict, at(state) +
                                     "This register was last written by an older Kneerail. "
                                     "Open it once for writing, so that its tables are made "
                                     "again; nothing was changed.");
  }
  auto journal = Journal::open(*state.database);
  if (!journal) {
    const bool torn = journal.error().fault == Fault::corrupt;
    return torn ? damaged(state, "damaged") : fail(journal.error());
  }
  state.journal = std::move(*journal);
  state.identity.device = state.journal->device();
  state.attach_tables();
  return Done{};
}

// Making ------------------------------------------------------------------------------------------

Result<> make_register(RegisterState& state) {
  state.identity.device = new_device(state);
  new_secret(state);
  auto written = write_identity(*state.files, state.places.identity(), state.identity);
  if (!written) return written;
  if (auto done = open_copy(state); !done) return done;
  auto made = make_database(*state.files, state.places.records(), state.identity.device);
  if (!made) return fail(made.error());
  made->reset();
  return attach_database(state, Database::Access::write);
}

// Writing -----------------------------------------------------------------------------------------

enum class Found { nothing, damaged, whole };

/// Opens what lies there far enough to know what it is. Errors: invalid_input (not a register, a
/// newer one), io.
Result<Found> look(RegisterState& state, bool is_ours) {
  if (!state.files->exists(state.places.records())) return Found::nothing;
  auto opened = attach_database(state, Database::Access::write);
  if (state.database != nullptr) {
    auto marks = check_marks(state, *state.database);
    const bool empty = state.database->number("SELECT count(*) FROM sqlite_schema").has_value() &&
                       *state.database->number("SELECT count(*) FROM sqlite_schema") == 0;
    if (empty && is_ours) return Found::damaged;
    if (!marks && marks.error().fault != Fault::corrupt) return fail(marks.error());
    if (!marks) return is_ours ? Result<Found>(Found::damaged) : not_a_register(state);
  }
  if (opened) return Found::whole;
  if (opened.error().fault != Fault::corrupt && state.database == nullptr) {
    return fail(opened.error());
  }
  return is_ours ? Result<Found>(Found::damaged) : not_a_register(state);
}

/// The identity, or what of it can be known from its neighbours. False: there is none.
Result<bool> find_identity(RegisterState& state) {
  auto identity = read_identity(*state.files, state.places.identity());
  if (identity) {
    state.identity = std::move(*identity);
    return true;
  }
  if (identity.error().fault == Fault::io) return fail(identity.error());
  const bool damaged = identity.error().fault == Fault::corrupt;
  auto of_copy = SecondCopy::device_of(*state.files, state.places.copy());
  if (of_copy) state.identity.device = *of_copy;
  if (!of_copy && state.files->exists(state.places.records())) {
    auto database = Database::open(
        {state.places.records().string(), Database::Access::read, state.files->sqlite_layer()});
    if (database && check_marks(state, *database)) {
      if (auto journal = Journal::open(*database)) state.identity.device = journal->device();
    }
  }
  if (state.identity.device.is_zero()) return false;
  if (damaged) {
    const auto aside = free_name_beside(*state.files, state.places.identity());
    if (auto done = state.files->rename(state.places.identity(), aside); !done) {
      return fail(done.error());
    }
  }
  new_secret(state);
  auto written = write_identity(*state.files, state.places.identity(), state.identity);
  if (!written) return fail(written.error());
  state.note(std::string("The identity file was ") + (damaged ? "damaged" : "missing") +
             "; it was made again from what lies beside it, with a new key for seals.");
  return true;
}

/// Nobody waits for the opening any more. What mends is never begun then; what has begun to mend
/// runs to its end.
Result<> still_wanted(const RegisterState& state) {
  if (state.stop == nullptr || !state.stop->load()) return Done{};
  return fail(Fault::cancelled,
              at(state) +
                  "The checks were left off. Nothing was changed; the next opening "
                  "begins them again.");
}

/// Why the register's file cannot be trusted, as a sentence for who rescues it; empty: it can.
/// Errors: cancelled, where it was left off.
Result<std::string> damage_of(RegisterState& state) {
  Watch watch{.stop = state.stop};
  state.database->watch(&watch);
  std::string damage;
  if (auto found = damage_of_file(*state.database)) {
    damage = "The register's file was damaged (" + *found + ").";
  } else if (auto unsent = damage_of_unsent(*state.database, *state.journal)) {
    damage = "The journal was damaged (" + *unsent + ").";
  }
  state.database->watch(nullptr);
  // A check that was left off says nothing of the file.
  if (auto wanted = still_wanted(state); !wanted) return fail(wanted.error());
  return damage;
}

Result<> mend_database(RegisterState& state) {
  auto found = look(state, true);
  if (!found) return fail(found.error());
  if (*found == Found::nothing) return rescue(state, "The register's file was missing.");
  if (*found == Found::damaged) return rescue(state, "The register's file was damaged.");
  if (state.journal->device() != state.identity.device) {
    return fail(Fault::invalid_input,
                at(state) + "The identity file belongs to another register. Nothing was changed.");
  }
  const auto damage = damage_of(state);
  if (!damage) return fail(damage.error());
  return damage->empty() ? Result<>(Done{}) : rescue(state, damage->c_str());
}

Result<> bring_up_to_date(RegisterState& state) {
  {
    auto transaction = Transaction::begin(*state.database);
    if (!transaction) return fail(transaction.error());
    if (auto done = apply_steps(*state.database); !done) return done;
    if (auto done = transaction->commit(); !done) return done;
  }
  auto version = state.database->number("PRAGMA user_version");
  if (!version) return fail(version.error());
  if (*version == fold::fold_version) return Done{};
  auto folded = rebuild_tables(state, {});
  if (!folded) return fail(folded.error());
  state.note("The tables were made again from " + std::to_string(folded->records) +
             " records: this program folds them in a new way.");
  return Done{};
}

Result<> close_drafts(RegisterState& state) {
  auto drafts = read_drafts(*state.database);
  if (!drafts) return fail(drafts.error());
  std::int64_t left = 0;
  for (const auto& draft : *drafts) {
    auto entries = entries_of(state, draft, Closing::at_start);
    if (!entries) return fail(entries.error());
    auto saved = save_entries(state, *entries, &draft);
    if (saved) {
      ++state.opening.drafts_closed;
    } else if (saved.error().fault == Fault::invalid_input) {
      ++left;  // too little to be a record; it stays a draft
    } else {
      return fail(saved.error());
    }
  }
  if (left > 0) {
    state.note(std::to_string(left) + (left == 1 ? " entry was" : " entries were") +
               " not finished; it can be gone on with.");
  }
  return Done{};
}

void keep_spare(RegisterState& state) {
  const std::int64_t room = state.files->free_bytes(state.places.folder);
  if (room < room_warning_bytes) {
    state.note("Only " + std::to_string(room >> 20) + " MB are free on this disk.");
  } else if (!state.files->exists(state.places.spare())) {
    auto spare = state.files->open(state.places.spare(), Files::Access::create);
    // Without it a full disk is told all the same, only with less grace.
    if (spare) (void)(*spare)->allocate(spare_bytes);
  }
}

Result<> start(RegisterState& state) {
  if (auto done = complete_rescue(state); !done) return done;
  if (auto done = open_copy(state); !done) return done;
  if (auto done = mend_database(state); !done) return done;
  if (auto done = bring_up_to_date(state); !done) return done;
  if (auto done = compare_with_copy(state); !done) return done;
  return mend_copy(state);
}

Result<> open_writing(RegisterState& state, Mode mode) {
  auto lock = state.files->lock(state.places.lock());
  if (!lock) {
    if (lock.error().fault != Fault::conflict) return fail(lock.error());
    return fail(Fault::conflict, at(state) +
                                     "Another Kneerail has this register open. Close it "
                                     "there, or open it here for reading only.");
  }
  state.lock = std::move(*lock);
  auto known = find_identity(state);
  if (!known) return fail(known.error());
  if (*known) {
    if (auto done = start(state); !done) return done;
  } else {
    auto found = look(state, false);
    if (!found) return fail(found.error());
    if (*found != Found::nothing) return not_a_register(state);
    if (mode != Mode::create) return no_register(state);
    if (auto done = make_register(state); !done) return done;
  }
  auto segment = ClockSegment::read(*state.database, *state.clock);
  if (!segment) return fail(segment.error());
  state.segment = *segment;
  state.opening.writable = true;
  keep_spare(state);
  return close_drafts(state);
}

}  // namespace

Result<> open_register(RegisterState& state, Mode mode) {
  if (mode == Mode::read) return open_reading(state);
  const bool has_file = state.files->exists(state.places.records());
  if (mode == Mode::create && !state.files->exists(state.places.folder)) {
    if (auto made = state.files->make_folder(state.places.folder); !made) return made;
  }
  if (!state.files->exists(state.places.folder)) return no_register(state);
  if (mode != Mode::create && !has_file && !has_trace(state)) {
    return no_register(state);  // leaves the folder as it is
  }
  const bool writable = state.files->writable(state.places.folder) &&
                        (!has_file || state.files->writable(state.places.records()));
  if (writable) return open_writing(state, mode);
  if (!has_file) {
    return fail(Fault::io, at(state) + "The folder is read-only. Nothing was made.");
  }
  if (auto done = open_reading(state); !done) return done;
  state.note(at(state) +
             "The register is read-only here. It can be looked at; nothing can be "
             "entered.");
  return Done{};
}

}  // namespace kneerail
