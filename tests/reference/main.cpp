// reference-checks: evaluates every row of a file of published and computed numbers with the
// program's own functions.

#include <CLI/CLI.hpp>
#include <cmath>
#include <filesystem>
#include <iostream>
#include <set>
#include <string>

#include "core/base/text.h"
#include "tests/reference/registry.h"

namespace {

using namespace kneerail;
using namespace kneerail::reference;

enum class Verdict { pass, fail, unknown };

struct Columns {
  std::size_t id, quantity, inputs, expected, unit, tolerance;
};

std::optional<Columns> columns_of(const Table& table) {
  const auto id = table.column("id");
  const auto quantity = table.column("quantity");
  const auto inputs = table.column("inputs");
  const auto expected = table.column("expected");
  const auto unit = table.column("unit");
  const auto tolerance = table.column("tolerance");
  if (!id || !quantity || !inputs || !expected || !unit || !tolerance) return std::nullopt;
  return Columns{*id, *quantity, *inputs, *expected, *unit, *tolerance};
}

/// An empty tolerance, "-" and 0 ask for the very number or text.
Verdict compare(const Answer& answer, const std::string& expected, const std::string& tolerance) {
  if (const auto* text = std::get_if<std::string>(&answer)) {
    return *text == expected ? Verdict::pass : Verdict::fail;
  }
  const auto* got = std::get_if<double>(&answer);
  if (!got) return Verdict::unknown;
  const auto wanted = double_from_text(trimmed(expected));
  if (!wanted) return Verdict::fail;
  const auto allowed = tolerance.empty() || tolerance == "-" ? std::optional<double>(0)
                                                             : double_from_text(trimmed(tolerance));
  if (!allowed) return Verdict::fail;
  return std::abs(*got - *wanted) <= *allowed ? Verdict::pass : Verdict::fail;
}

std::string shown(const Answer& answer) {
  if (const auto* text = std::get_if<std::string>(&answer)) return *text;
  if (const auto* number = std::get_if<double>(&answer)) return shortest(*number);
  return "(" + std::get<Unknown>(answer).why + ")";
}

struct Count {
  int pass = 0;
  int fail = 0;
  int unknown = 0;
  std::set<std::string> unreadable;  ///< sentences about data sets that are there
};

/// A data set that is there and cannot be read is no unknown quantity.
void check_data_set(const Question& question, Count& count) {
  const auto name = question.inputs.text("dataset");
  if (!name || name->find_first_of("/\\.") != std::string::npos) return;
  const auto path = question.data / (*name + ".csv");
  std::error_code unseen;
  if (!std::filesystem::exists(path, unseen)) return;
  if (const auto table = read_table(path); !table) count.unreadable.insert(table.error().message);
}

Count run(const Table& table, const Columns& columns, const std::filesystem::path& data) {
  const Registry registry = everything();
  Count count;
  for (const auto& row : table.rows) {
    const Question question{
        Inputs(row[columns.inputs]), row[columns.unit], data, {}, row[columns.id]};
    check_data_set(question, count);
    const Answer answer = registry.answer(row[columns.quantity], question);
    const Verdict verdict = compare(answer, row[columns.expected], row[columns.tolerance]);
    ++(verdict == Verdict::pass   ? count.pass
       : verdict == Verdict::fail ? count.fail
                                  : count.unknown);
    std::cout << row[columns.id] << "  expected " << row[columns.expected] << "  got "
              << shown(answer) << "  tolerance "
              << (row[columns.tolerance].empty() ? "-" : row[columns.tolerance]) << "  "
              << (verdict == Verdict::pass   ? "pass"
                  : verdict == Verdict::fail ? "fail"
                                             : "unknown")
              << "\n";
  }
  return count;
}

void list() {
  for (const auto& name : everything().names()) std::cout << name << "\n";
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app{
      "Evaluates each row of a file of checks with the program's own functions.\n"
      "Exit: 0 all pass or unknown, 1 any fail, 2 misuse, 3 a data set cannot be read."};
  std::string checks;
  std::string data = ".";
  bool names = false;
  bool strict = false;
  app.add_option("--checks", checks,
                 "CSV: id, quantity, inputs, expected, unit, tolerance, source, provenance");
  app.add_option("--data", data, "folder of the data sets that rows name");
  app.add_flag("--list", names, "names every quantity that is known, and stops");
  app.add_flag("--strict", strict, "counts unknown as fail");
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? 0 : 2;
  }
  if (names) {
    list();
    return 0;
  }
  if (checks.empty()) {
    std::cerr << "reference-checks: --checks names the file. See --help.\n";
    return 2;
  }
  const auto table = read_table(checks);
  if (!table) {
    std::cerr << table.error().message << "\n";
    return 2;
  }
  const auto columns = columns_of(*table);
  if (!columns) {
    std::cerr << checks
              << ": the header lacks id, quantity, inputs, expected, unit or tolerance.\n";
    return 2;
  }
  const Count count = run(*table, *columns, data);
  std::cout << count.pass << " pass, " << count.fail << " fail, " << count.unknown << " unknown of "
            << table->rows.size() << "\n";
  for (const auto& sentence : count.unreadable)
    std::cerr << "A data set could not be read: " << sentence << "\n";
  if (!count.unreadable.empty()) return 3;
  return count.fail > 0 || (strict && count.unknown > 0) ? 1 : 0;
}
