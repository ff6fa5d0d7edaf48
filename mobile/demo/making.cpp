#include "mobile/demo/making.h"

#include <algorithm>
#include <array>

#include "core/base/result.h"

namespace kneerail::demo {

namespace {

struct CodeList {
  std::string_view name;
  std::vector<std::string_view> words;
};

// The code lists of the register's tables (assets/skerrymouth), in the order of the records.
const std::vector<CodeList>& code_lists() {
  static const std::vector<CodeList> lists = {
      {"what",
       {"three-way tee", "corner tee", "cross", "elbow", "adjustable swivel", "sleeve coupling",
        "base flange", "wall flange", "end cap", "clip-on for infill", "tube", "plate", "weld",
        "welded section", "set screw", "bolt"}},
      {"material", {"steel", "cast iron", "aluminium", "stainless steel"}},
      {"protection", {"hot-dip zinc", "zinc plus paint", "paint on steel", "anodised", "bare"}},
      {"system", {"slip-on", "welded"}},
      {"category", {"C1", "C2", "C3", "C4", "C5", "CX"}},
      {"exposure", {"open", "sheltered", "spray", "immersed at times", "de-icing salt"}},
      {"role",
       {"post tube", "rail tube", "top rail", "mid-rail", "fitting", "weld", "base fixing",
        "toe board", "infill", "gate", "cut edge", "welded section"}},
      {"person", {"inspector", "lead", "duty holder", "administrator"}},
      {"instrument", {"coating gauge", "torque wrench", "wall gauge", "load gauge", "rule"}},
      {"behind", {"walkers", "children", "crowd", "staff", "cyclists"}},
      {"below", {"ground", "water", "road", "machinery"}},
      {"consequence", {"high", "medium", "low"}},
      {"face", {"seaward", "landward", "up", "down", "inside", "all round"}},
      {"base", {"base flange", "wall flange", "welded plate", "cast in", "socket"}}};
  return lists;
}

}  // namespace

std::int64_t code(std::string_view list, std::string_view word) {
  for (const CodeList& one : code_lists()) {
    if (one.name != list) continue;
    const auto found = std::find(one.words.begin(), one.words.end(), word);
    if (found != one.words.end()) return found - one.words.begin() + 1;
  }
  check(false, "a table of Skerrymouth uses a word that is in no code list");
  return 0;
}

cbor::Map create_body(int type, const Uuid& parent, cbor::Map fields, const Origin& origin) {
  cbor::Map body{{1, type}, {3, std::move(fields)}, {5, static_cast<int>(origin.made_by)}};
  if (!parent.is_zero()) body.set(2, parent);
  if (!origin.reference.empty()) body.set(4, origin.reference);
  return body;
}

Making::Making(Register& reg, DemoClock& clock, std::uint64_t seed,
               const std::function<bool(std::int64_t)>& progress)
    : plan(skerrymouth_plan()),
      weather(plan, seed),
      register_(reg),
      clock_(clock),
      progress_(progress) {}

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
