#include "core/records/condition_grade.h"

#include "core/records/rules.h"

namespace kneerail {
namespace {

using namespace field;

constexpr std::string_view how_words[] = {"pushed and looked", "looked near", "looked from afar",
                                          "from a picture"};
constexpr FieldInfo grade_fields[] = {
    must(id(1, "visit")),    must(count(2, "grade", 1, 5)), count(3, "degree of rusting", 0, 5),
    count(4, "spot", 1, 16), code(5, "how", how_words),
};

// Grades are tied to rust: 2 has no red rust, 4 is what Ri 3 and more deserves.
void ask(const Record& record, std::vector<std::string>& questions) {
  const auto grade = rules::number(record, 2);
  const auto rust = rules::number(record, 3);
  if (!grade || !rust) return;
  const std::string both =
      "Grade " + std::to_string(*grade) + " with Ri " + std::to_string(*rust) + ": ";
  if (*grade <= 2 && *rust >= 1) questions.push_back(both + "red rust is grade 3 or worse. Keep?");
  if (*grade == 3 && *rust >= 3) questions.push_back(both + "Ri 3 or more is grade 4. Keep?");
}

}  // namespace

constexpr KindInfo condition_grade_kind{.kind = 20,
                                        .name = "condition grade",
                                        .subject = "component, post or bay",
                                        .fields = fields(grade_fields),
                                        .time_key = key_seen_at,
                                        .reading = true,
                                        .ask = ask};

}  // namespace kneerail
