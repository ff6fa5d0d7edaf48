#include "schema/store/run_state.h"

#include <algorithm>

#include "core/records/visit.h"
#include "schema/store/run_layout.h"

namespace kneerail {

namespace {

constexpr std::int64_t not_pushed = 4;  // 1 firm, 2 gives, 3 moves

SheetGrade grade_of(const Statement& row) {
  SheetGrade grade;
  grade.grade = static_cast<int>(row.number(1));
  grade.record = row.uuid(2);
  grade.visit = row.uuid(3);
  grade.who = row.uuid(4);
  grade.t_ms = row.number(5);
  grade.carried = row.number(6) != 0;
  if (!row.is_null(7)) grade.how = static_cast<HowLooked>(row.number(7));
  return grade;
}

}  // namespace

void set_grade(SheetPart& part, const Statement& row, const Uuid& visit) {
  const SheetGrade grade = grade_of(row);
  (grade.visit == visit && !visit.is_zero() ? part.now : part.last) = grade;
}

Result<> EarlierGrades::ask(const SheetPart& part) {
  if (!statement_) {
    auto made = tables_.prepare("SELECT " + std::string(columns_of_grade) +
                                " FROM reading AS r WHERE r.subject = ?1 AND r.kind = 20 AND "
                                "r.voided_by IS NULL AND r.held = 0 AND r.visit IS NOT ?2 "
                                "ORDER BY r.t DESC, r.record DESC LIMIT 16");
    if (!made) return fail(made.error());
    statement_.emplace(std::move(*made));
  }
  statement_->bind(1, part.id).bind(2, visit_);
  return Done{};
}

Result<> EarlierGrades::read(SheetPart& part) {
  if (!part.now && !(part.last && part.last->carried)) return Done{};
  if (auto asked = ask(part); !asked) return asked;
  bool counting = true;
  std::optional<Uuid> counted;
  for (;;) {
    const auto row = statement_->step();
    if (!row) return fail(row.error());
    if (!*row) return Done{};
    const SheetGrade grade = grade_of(*statement_);
    if (!part.last) part.last = grade;
    counting = counting && grade.carried;
    if (counting && counted != grade.visit) {
      ++part.carried_in_a_row;
      counted = grade.visit;
    }
  }
}

void add_look(SheetBay& bay, const Statement& row) {
  bay.looked = true;
  if (!row.is_null(1) && row.number(1) < not_pushed) bay.pushed = true;
}

void add_skip(SheetPost& post, const Statement& row) {
  const std::int64_t reason = row.is_null(1) ? 0 : row.number(1);
  const bool known = reason >= 1 && reason <= std::ssize(not_reached_words);
  post.skipped_because = not_reached_words[known ? reason - 1 : 6];
}

std::span<const SheetBay> bays_after(const RunSheet& sheet, int post) {
  const auto [first, last] =
      std::equal_range(sheet.bays.begin(), sheet.bays.end(), SheetBay{.id = {}, .from = post},
                       [](const SheetBay& a, const SheetBay& b) { return a.from < b.from; });
  return {first, last};
}

void set_post_state(RunSheet& sheet, int place) {
  SheetPost& post = sheet.posts[static_cast<std::size_t>(place)];
  bool seen = post.parts > 0;
  bool struck = post.parts > 0;
  for (int i = post.first_part; i < post.first_part + post.parts; ++i) {
    const SheetPart& part = sheet.parts[static_cast<std::size_t>(i)];
    seen = seen && (part.now || part.struck || part.found);
    struck = struck && (part.struck || part.bay >= 0);
  }
  for (const SheetBay& bay : bays_after(sheet, place)) seen = seen && (bay.looked || bay.struck);
  post.state = PostState::open;
  if (struck)
    post.state = PostState::struck;
  else if (seen)
    post.state = PostState::seen;
  else if (!post.skipped_because.empty())
    post.state = PostState::skipped;
}

}  // namespace kneerail
