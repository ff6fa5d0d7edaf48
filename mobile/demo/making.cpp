#include "mobile/demo/making.h"

#include "core/base/result.h"
#include "core/records/kinds.h"
#include "core/records/particulars.h"
#include "core/records/photograph.h"

namespace kneerail::demo {

namespace {

/// Where the records keep the words of a column of the tables of Skerrymouth.
struct WordsOf {
  std::string_view column;
  int entity_type;
  int field;
};

constexpr WordsOf words_of[] = {
    {"category", 3, 2},     {"exposure", 3, 3}, {"behind", 4, 11},    {"below", 4, 12},
    {"consequence", 4, 15}, {"base", 5, 7},     {"role", 7, 1},       {"face", 7, 10},
    {"what", 8, 1},         {"material", 8, 2}, {"protection", 8, 3}, {"system", 8, 12},
    {"instrument", 9, 1},
};
constexpr int kind_role_given = 60;

const FieldInfo* field_of(std::string_view column) {
  if (column == "person") return kind_info(kind_role_given)->fields.find(1);
  for (const WordsOf& one : words_of) {
    if (one.column == column) return entity_info(one.entity_type)->fields.find(one.field);
  }
  return nullptr;
}

}  // namespace

std::int64_t code(std::string_view column, std::string_view word) {
  const FieldInfo* field = field_of(column);
  check(field != nullptr, "a column of Skerrymouth has no words in the records");
  const Words& words = field->shape == Shape::list ? field->parts.begin()->words : field->words;
  const auto found = words.code(word);
  check(found.has_value(), "a table of Skerrymouth uses a word that is in no code list");
  return *found;
}

cbor::Map create_body(int type, const Uuid& parent, cbor::Map fields, const Origin& origin) {
  cbor::Map body{{1, type}, {3, std::move(fields)}, {5, static_cast<int>(origin.made_by)}};
  if (!parent.is_zero()) body.set(2, parent);
  if (!origin.reference.empty()) body.set(4, origin.reference);
  return body;
}

Making::Making(const Hands& hands, const std::function<bool(std::int64_t)>& progress)
    : plan(skerrymouth_plan()),
      weather(plan, hands.seed),
      register_(hands.reg),
      clock_(hands.clock),
      progress_(progress),
      draw_(hands.draw),
      picture_chance_(hands.seed ^ 0x0B5C0DAULL),
      people_chance_(hands.seed ^ 0x9EC0DEULL) {}

Uuid Making::write(int kind, const Uuid& feed, const Uuid& subject, cbor::Map body) {
  const Uuid id = mint();
  write_as(id, kind, feed, subject, std::move(body));
  return id;
}

void Making::write_as(const Uuid& id, int kind, const Uuid& feed, const Uuid& subject,
                      cbor::Map body) {
  Entry entry;
  entry.feed = feed;
  entry.kind = kind;
  entry.subject = subject;
  if (!writer_.empty()) entry.who = people.at(writer_);
  entry.body = std::move(body);
  entry.id = id;
  gathered_.push_back(std::move(entry));
}

void Making::save() {
  if (!error_ && !gathered_.empty()) {
    if (auto saved = register_.save(gathered_); !saved) {
      error_ = fail(saved.error(), "Skerrymouth, " + to_text(clock_.now()) + ": ");
    } else {
      records_ += static_cast<std::int64_t>(gathered_.size());
    }
  }
  gathered_.clear();
  if (!error_ && progress_ && !progress_(records_)) {
    error_ = fail(Fault::cancelled,
                  "Stopped; the register holds the first part of the story only. Remove the folder "
                  "and run demo again for the whole of it.");
  }
}

void Making::seal(int site, const Uuid& visit, std::string_view initials) {
  save();
  if (error_) return;
  const auto sealed = register_.seal({.site = plan.sites[static_cast<std::size_t>(site)].id,
                                      .visit = visit,
                                      .person = people.at(std::string(initials))});
  if (!sealed) {
    error_ = fail(sealed.error(), "Skerrymouth, " + to_text(clock_.now()) + ": ");
    return;
  }
  ++records_;
}

DrawnPhotograph Making::draw(PhotoScene scene) {
  scene.seed = picture_chance_.next();
  return draw_(scene);
}

std::optional<std::array<std::uint8_t, 32>> Making::keep(const cbor::Bytes& bytes) {
  if (error_) return std::nullopt;
  const auto kept = register_.keep_object(bytes);
  if (kept) return *kept;
  error_ = fail(kept.error(), "Skerrymouth, " + to_text(clock_.now()) + ": ");
  return std::nullopt;
}

std::optional<std::array<std::uint8_t, 32>> Making::keep_particulars(const std::string& name,
                                                                     const std::string& telephone) {
  Particulars particulars{name, telephone, {}};
  people_chance_.fill(particulars.chance);
  return keep(to_bytes(particulars));
}

void Making::write_photograph(const Uuid& feed, const Uuid& subject, cbor::Map body) {
  if (error_) return;
  std::array<std::uint8_t, 10> random{};
  picture_chance_.fill(random);
  write_as(uuid7(clock_.now().ms, random), Photograph::kind, feed, subject, std::move(body));
  ++photographs_;
}

void Making::written_by(std::string_view initials) {
  writer_ = initials;
}

void Making::move_to(Date day, std::int64_t minutes_after_midnight) {
  constexpr std::int64_t minute_ms = 60'000;
  const std::int64_t midnight_ms = noon_utc(day).ms - 12 * 60 * minute_ms;
  clock_.move_to(Instant{midnight_ms + minutes_after_midnight * minute_ms});
}

std::int64_t Making::next_finding_number(int site) {
  return ++finding_numbers_[{writer_, site}];
}

const Uuid& Making::feed_of_run(int run) const {
  return plan.sites[static_cast<std::size_t>(plan.runs[static_cast<std::size_t>(run)].site)].id;
}

const Uuid& Making::feed_of_part(int part) const {
  return feed_of_run(plan.parts[static_cast<std::size_t>(part)].run);
}

}  // namespace kneerail::demo
