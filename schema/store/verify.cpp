#include "schema/store/verify.h"

#include <map>
#include <utility>

#include "schema/journal/rescue.h"
#include "schema/journal/start_checks.h"
#include "schema/store/object_folder.h"
#include "schema/store/sealing.h"

namespace kneerail {
namespace {

constexpr std::size_t problems_max = 50;

void add_problem(std::vector<std::string>& problems, std::string sentence) {
  if (problems.size() < problems_max) problems.push_back(std::move(sentence));
}

std::string counted(std::int64_t count, const char* one, const char* many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

void put_length(std::size_t length, cbor::Bytes& out) {
  for (int shift = 0; shift < 32; shift += 8) {
    out.push_back(static_cast<std::uint8_t>(length >> shift));
  }
}

/// A cell so that no two different rows give the same bytes: type, length, content.
void put_cell(const Statement& statement, int column, fold::Type type, cbor::Bytes& out) {
  if (statement.is_null(column)) return out.push_back(0);
  out.push_back(static_cast<std::uint8_t>(1 + static_cast<int>(type)));
  if (type == fold::Type::number) {
    const auto number = static_cast<std::uint64_t>(statement.number(column));
    for (int shift = 0; shift < 64; shift += 8) {
      out.push_back(static_cast<std::uint8_t>(number >> shift));
    }
    return;
  }
  const auto bytes = statement.bytes(column);
  put_length(bytes.size(), out);
  out.insert(out.end(), bytes.begin(), bytes.end());
}

Result<TableSum> table_sum(Database& database, const fold::Table& table) {
  std::string key;
  for (int place = 0; place < table.key_columns; ++place) {
    key += place == 0 ? "" : ", ";
    key += table.columns[static_cast<std::size_t>(place)].name;
  }
  auto statement = database.prepare("SELECT " + column_list(table) + " FROM " +
                                    std::string(table.name) + " ORDER BY " + key);
  if (!statement) return fail(statement.error());
  TableSum sum;
  Sha256 digest;
  digest.add(table.name);
  cbor::Bytes row;
  for (;;) {
    auto more = statement->step();
    if (!more) return fail(more.error());
    if (!*more) break;
    row.clear();
    for (int column = 0; column < std::ssize(table.columns); ++column) {
      put_cell(*statement, column, table.columns[static_cast<std::size_t>(column)].type, row);
    }
    digest.add(row);
    ++sum.rows;
  }
  sum.digest = digest.finish();
  return sum;
}

Result<> check_file(Database& database, std::vector<std::string>& problems) {
  auto statement = database.prepare("PRAGMA integrity_check(20)");
  if (!statement) return fail(statement.error());
  for (;;) {
    auto more = statement->step();
    if (!more) {
      add_problem(problems, "The file is damaged: " + more.error().message);
      return Done{};
    }
    if (!*more) return Done{};
    if (statement->text(0) != "ok") {
      add_problem(problems, "The file is damaged: " + std::string(statement->text(0)));
    }
  }
}

/// Whether a program holds the register for writing: this one, or another.
bool writer_at_work(RegisterState& state) {
  if (state.lock) return true;
  if (!state.files->exists(state.places.lock())) return false;
  auto lock = state.files->lock(state.places.lock());
  return !lock && lock.error().fault == Fault::conflict;
}

/// As check_copy(), against the records as they stand now. A writer's frames come before its
/// records: what is behind the journal's end counts only where nobody writes.
Result<CopyCheck> look_at_copy(RegisterState& state, SecondCopy& copy) {
  auto check = check_copy(copy, *state.database, *state.journal);
  if (!check || (check->damaged == 0 && check->beyond == 0)) return check;
  const bool writer = writer_at_work(state);
  auto now = Database::open(
      {state.places.records().string(), Database::Access::read, state.files->sqlite_layer()});
  if (!now) return fail(now.error());
  auto journal = Journal::open(*now);
  if (!journal) return fail(journal.error());
  auto again = check_copy(copy, *now, *journal);
  if (again && writer) again->beyond = 0;
  return again;
}

void check_second_copy(RegisterState& state, std::vector<std::string>& problems) {
  const std::string mended = " It is written again when the register is next opened for writing.";
  auto copy = SecondCopy::open_reading(*state.files, state.places.copy(), state.journal->device());
  if (!copy && copy.error().fault == Fault::not_found) {
    return add_problem(problems, "The second copy of unsent records (" +
                                     state.places.copy().filename().string() + ") is missing." +
                                     mended);
  }
  if (!copy) return add_problem(problems, copy.error().message + mended);
  auto check = look_at_copy(state, *copy);
  if (!check) {
    return add_problem(problems, "The second copy could not be compared: " + check.error().message);
  }
  if (check->damaged > 0) {
    add_problem(problems, "The second copy is damaged in " +
                              counted(check->damaged, "place", "places") + "." + mended);
  }
  if (check->lacking > 0) {
    add_problem(problems, "The second copy lacks " +
                              counted(check->lacking, "unsent record", "unsent records") + "." +
                              mended);
  }
  if (check->beyond > 0) {
    add_problem(problems, "The second copy holds " +
                              counted(check->beyond, "record that is", "records that are") +
                              " missing in the register. `kneerail rebuild` brings them back.");
  }
}

void tell_missing(Database& database, std::vector<std::string>& problems) {
  const auto missing = read_setting(database, records_missing_setting);
  if (!missing || missing->value_or(0) == 0) return;
  add_problem(problems, counted(**missing, "record was", "records were") +
                            " lost when a damaged file was replaced: the register is not complete. "
                            "The damaged file was set aside beside it (records.db.damaged-1 and "
                            "on).");
}

Result<> check_tables(RegisterState& state, const Progress& progress,
                      std::vector<std::string>& problems) {
  auto fresh = Database::open({"", Database::Access::create, state.files->sqlite_layer()});
  if (!fresh) return fail(fresh.error());
  if (auto done = fresh->run("PRAGMA journal_mode=OFF; PRAGMA synchronous=OFF; BEGIN"); !done) {
    return done;
  }
  if (auto done = create_tables(*fresh, Indexes::later); !done) return done;
  SqlTables tables(*fresh, Indexes::later);
  auto folded = fold_journal(*state.journal, tables, progress);
  if (!folded) return fail(folded.error());
  if (folded->unreadable > 0) {
    add_problem(problems, counted(folded->unreadable, "record", "records") + " cannot be read.");
  }
  auto wanted = table_sums(*fresh);
  if (!wanted) return fail(wanted.error());
  auto found = table_sums(*state.database);
  if (!found) {
    add_problem(problems, "The tables cannot be read: " + found.error().message);
    return Done{};
  }
  for (std::size_t table = 0; table < wanted->size(); ++table) {
    if ((*wanted)[table].digest == (*found)[table].digest) continue;
    add_problem(problems, "The table " + std::string(fold::tables()[table].name) +
                              " is not what the records say (" +
                              counted((*found)[table].rows, "row", "rows") + "; " +
                              counted((*wanted)[table].rows, "row", "rows") +
                              " from the records). Make the tables again: kneerail rebuild.");
  }
  return Done{};
}

}  // namespace

Result<std::vector<TableSum>> table_sums(Database& database) {
  std::vector<TableSum> sums;
  for (const auto& table : fold::tables()) {
    auto sum = table_sum(database, table);
    if (!sum) return fail(sum.error());
    sums.push_back(*sum);
  }
  return sums;
}

Result<std::string> digest_of_tables(Database& database) {
  auto sums = table_sums(database);
  if (!sums) return fail(sums.error());
  Sha256 digest;
  for (const auto& sum : *sums) digest.add(sum.digest);
  return to_hex(digest.finish());
}

Result<std::int64_t> check_chains(Database& database, const Journal& journal,
                                  const Progress& progress, std::vector<std::string>& problems) {
  auto statement =
      database.prepare(std::string("SELECT ") + journal_columns + " FROM journal ORDER BY lid");
  if (!statement) return fail(statement.error());
  std::map<std::pair<std::int64_t, std::int64_t>, ChainHead> heads;
  for (std::int64_t done = 0;; ++done) {
    if (progress && done % 2000 == 0 && !progress(done, 0)) {
      return fail(Fault::cancelled, "Stopped before the end.");
    }
    auto more = statement->step();
    if (!more) {
      add_problem(problems, "The journal cannot be read: " + more.error().message);
      break;
    }
    if (!*more) break;
    const JournalRow row = journal_row(*statement);
    if (!journal.feeds().contains(row.feed) || !journal.devices().contains(row.dev)) {
      add_problem(problems, "A record names a feed or device that is not there.");
      continue;
    }
    auto [head, is_new] = heads.try_emplace({row.feed, row.dev});
    if (is_new) {
      head->second.digest =
          chain_start(journal.feeds().at(row.feed), journal.devices().at(row.dev));
    }
    const std::string which = "record " + std::to_string(row.seq) + " of device " +
                              to_text(journal.devices().at(row.dev)) + " in feed " +
                              to_text(journal.feeds().at(row.feed));
    if (row.seq != head->second.seq + 1) {
      add_problem(problems, "The chain has a gap: " + which + " follows record " +
                                std::to_string(head->second.seq) + ".");
    } else if (chain_next(head->second.digest, row.bytes) != row.digest) {
      add_problem(problems, "The digest of " + which + " does not fit: it was changed or damaged.");
    }
    head->second = {row.seq, row.digest};
  }
  return std::ssize(heads);
}

Result<VerifyReport> verify_register(RegisterState& state, const Progress& progress) {
  VerifyReport report;
  auto snapshot = Snapshot::begin(*state.database);
  if (!snapshot) return fail(snapshot.error());
  if (auto done = state.journal->reload(); !done) return fail(done.error());
  if (auto done = check_file(*state.database, report.problems); !done) return fail(done.error());
  auto records = state.journal->count();
  if (!records) {
    add_problem(report.problems, "The journal cannot be read: " + records.error().message);
    return report;
  }
  report.records = *records;
  const auto from = [&](std::int64_t before) {
    return [&progress, before, all = 2 * report.records](std::int64_t done, std::int64_t) {
      return !progress || progress(before + done, all);
    };
  };
  auto chains = check_chains(*state.database, *state.journal, from(0), report.problems);
  if (!chains) return fail(chains.error());
  report.chains = *chains;
  if (auto done = check_seals(state, report.problems); !done) return fail(done.error());
  check_second_copy(state, report.problems);
  tell_missing(*state.database, report.problems);
  if (auto done = check_tables(state, from(report.records), report.problems); !done) {
    return fail(done.error());
  }
  auto objects = check_objects(*state.database, state.journal->device(),
                               ObjectFolder(*state.files, state.places.objects()));
  if (!objects) return fail(objects.error());
  report.objects = objects->whole;
  for (std::string& problem : objects->problems) add_problem(report.problems, std::move(problem));
  return report;
}

}  // namespace kneerail
