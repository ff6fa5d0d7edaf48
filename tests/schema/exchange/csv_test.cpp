#include "schema/exchange/csv.h"

#include <catch2/catch.hpp>
#include <sstream>

#include "core/base/world.h"
#include "tests/support/seeds.h"

using namespace kneerail;
using Table = std::vector<std::vector<std::string>>;

namespace {

std::vector<csv::Row> rows_of(const std::string& text, csv::Limits limits = {}) {
  std::istringstream in(text);
  csv::Reader reader(in, limits);
  std::vector<csv::Row> rows;
  csv::Row row;
  while (true) {
    auto more = reader.next(row);
    REQUIRE(more);
    if (!*more) return rows;
    rows.push_back(row);
  }
}

Table fields_of(const std::string& text) {
  Table table;
  for (const auto& row : rows_of(text)) {
    CHECK(row.problem == "");
    table.push_back(row.fields);
  }
  return table;
}

}  // namespace

TEST_CASE("quoted fields may hold commas, quotes and line breaks", "[schema][exchange]") {
  CHECK(fields_of("a,\"b,c\",\"say \"\"no\"\"\"\n\"two\nlines\",,x\n") ==
        Table{{"a", "b,c", "say \"no\""}, {"two\nlines", "", "x"}});
}

TEST_CASE("line ends and a byte order mark do not change what is read", "[schema][exchange]") {
  const Table wanted{{"id", "name"}, {"1", "mole"}, {"2", ""}};
  CHECK(fields_of("id,name\n1,mole\n2,\n") == wanted);
  CHECK(fields_of("id,name\r\n1,mole\r\n2,\r\n") == wanted);
  CHECK(fields_of("\xEF\xBB\xBFid,name\r\n1,mole\n2,") == wanted);
  CHECK(fields_of("id,name\n\n1,mole\r\n\r\n2,\n\n") == wanted);
}

TEST_CASE("line numbers stay true across quoted line breaks", "[schema][exchange]") {
  const auto rows = rows_of("h\n\"a\nb\r\nc\"\nnext\n\nlast\n");
  REQUIRE(rows.size() == 4);
  CHECK(rows[1].line == 2);
  CHECK(rows[2].line == 5);
  CHECK(rows[3].line == 7);
}

TEST_CASE("a row that cannot be read is named by its line and the next is read",
          "[schema][exchange]") {
  const auto rows = rows_of("a,b\nbad \xFF,1\ngood,2\nx\"y,3\n\"q\"z,4\nend,5\n");
  REQUIRE(rows.size() == 6);
  CHECK(rows[1].line == 2);
  CHECK(rows[1].problem == "the text is not UTF-8; save the file again as CSV UTF-8");
  CHECK(rows[1].fields.empty());
  CHECK(rows[2].fields == std::vector<std::string>{"good", "2"});
  CHECK(rows[3].problem == "a quote stands inside a field that is not quoted");
  CHECK(rows[4].problem == "text follows a closing quote; a quote inside a field is written twice");
  CHECK(rows[5].fields == std::vector<std::string>{"end", "5"});
}

TEST_CASE("a quote that is never closed is told, not swallowed", "[schema][exchange]") {
  const auto rows = rows_of("a\n\"never closed\nand on");
  REQUIRE(rows.size() == 2);
  CHECK(rows[1].line == 2);
  CHECK(rows[1].problem == "the quote opened here is never closed");
}

TEST_CASE("a field or a row past its limit is refused without being held", "[schema][exchange]") {
  const csv::Limits limits{.field_bytes = 10, .row_bytes = 25};
  const auto rows = rows_of("12345678901,x\n1234567890,1234567890,1234567890\nok,1\n", limits);
  REQUIRE(rows.size() == 3);
  CHECK(rows[0].problem == "a field is longer than 10 bytes");
  CHECK(rows[1].problem == "the row is longer than 25 bytes");
  CHECK(rows[2].fields == std::vector<std::string>{"ok", "1"});
}

TEST_CASE("what is written is read again as it was", "[schema][exchange][property]") {
  const auto seed = GENERATE(test::each_seed(1, 200));
  INFO(test::reproduce(seed));
  SplitMix64 random(seed);
  const std::vector<std::string> letters{"a", ",", "\"", "\n", "\r", "=", "'", "+",
                                         "-", "@", "\t", " ",  "é",  "µ", "1"};
  Table table;
  for (int r = 0; r < 8; ++r) {
    std::vector<std::string> fields;
    for (int f = 0; f < 4; ++f) {
      std::string text;
      for (auto n = random.between(0, 6); n > 0; --n)
        text += letters[static_cast<std::size_t>(random.between(0, 14))];
      fields.push_back(text);
    }
    fields.push_back("end");
    table.push_back(fields);
  }
  std::ostringstream out;
  csv::Writer writer(out);
  for (const auto& fields : table) {
    for (const auto& field : fields) writer.free_text(field);
    writer.end_row();
  }
  Table again;
  for (auto& fields : fields_of(out.str())) {
    for (auto& field : fields) field = csv::unguarded(field);
    again.push_back(fields);
  }
  CHECK(again == table);
}

TEST_CASE("a text that a spreadsheet would run is written behind an apostrophe",
          "[schema][exchange]") {
  CHECK(csv::guarded("=1+1") == "'=1+1");
  CHECK(csv::guarded("-5") == "'-5");
  CHECK(csv::guarded("@x") == "'@x");
  CHECK(csv::guarded("post 4") == "post 4");
  CHECK(csv::unguarded("'=1+1") == "=1+1");
  CHECK(csv::unguarded("'tis") == "'tis");
  for (const std::string text : {"'", "''", "'=x", "'tis", "=", "+", "", "a'"})
    CHECK(csv::unguarded(csv::guarded(text)) == text);
}
