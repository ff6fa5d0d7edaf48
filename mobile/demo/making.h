#pragma once

// The pen of the demo: who writes, on which day, into which feed. Entries are gathered and saved
// together; the clock is the demo's own and only moves when it is told to.

#include <array>
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/world.h"
#include "mobile/demo/photographs.h"
#include "mobile/demo/plan.h"
#include "mobile/demo/weather.h"
#include "schema/store/register.h"

namespace kneerail::demo {

class DemoClock final : public Clock {
 public:
  explicit DemoClock(Instant start) : start_(start), now_(start) {}
  Instant now() override { return now_; }
  std::int64_t monotonic_ms() override { return now_.ms - start_.ms; }
  /// Never goes back.
  void move_to(Instant instant) {
    if (instant > now_) now_ = instant;
  }

 private:
  Instant start_;
  Instant now_;
};

class Making {
 public:
  struct Hands {
    Register& reg;
    DemoClock& clock;
    std::uint64_t seed = 0;
    DrawPhotograph draw;  ///< empty: no photographs
  };
  Making(const Hands& hands, const std::function<bool(std::int64_t)>& progress);

  Plan plan;
  Weather weather;
  Uuid organisation;
  Uuid rule_set;
  Uuid depot;
  std::map<std::string, Uuid> people;       ///< by initials
  std::map<std::string, Uuid> instruments;  ///< by code
  std::vector<Uuid> lives;                  ///< by part: the life it is in
  std::vector<int> last_grades;             ///< by part: the last grade given; 0: none yet
  std::vector<bool> read_thin;              ///< by part: a gauge showed under half of its nominal
  std::vector<int> carried;                 ///< by part: "as last time", so often in a row
  std::int64_t visits = 0;

  /// Gathers one entry; returns the id it will have.
  Uuid write(int kind, const Uuid& feed, const Uuid& subject, cbor::Map body);
  /// The next identifier, for a thing that is named before it is written.
  Uuid mint() { return register_.mint(); }
  /// As write(), with an identifier that was minted before. A create's subject is its own id.
  void write_as(const Uuid& id, int kind, const Uuid& feed, const Uuid& subject, cbor::Map body);
  /// Saves what was gathered, together. After a failure nothing more is written.
  void save();

  /// Closes that person's part of a visit, after what was gathered is saved.
  void seal(int site, const Uuid& visit, std::string_view initials);

  /// Photographs have chance and identifiers of their own, so that the rest of the story is the
  /// same with and without them.
  [[nodiscard]] bool draws() const { return static_cast<bool>(draw_); }
  DrawnPhotograph draw(PhotoScene scene);
  /// Keeps bytes beside the records; absent after a failure.
  std::optional<std::array<std::uint8_t, 32>> keep(const cbor::Bytes& bytes);
  /// What is kept of a person; absent after a failure.
  std::optional<std::array<std::uint8_t, 32>> keep_particulars(const std::string& name,
                                                               const std::string& telephone);
  void write_photograph(const Uuid& feed, const Uuid& subject, cbor::Map body);
  [[nodiscard]] std::int64_t photographs() const { return photographs_; }
  [[nodiscard]] Instant now() { return clock_.now(); }

  /// Whoever writes from here on; empty: the device.
  void written_by(std::string_view initials);
  [[nodiscard]] const std::string& writer() const { return writer_; }
  void move_to(Date day, std::int64_t minutes_after_midnight);

  /// This writer's next finding number at a site.
  std::int64_t next_finding_number(int site);

  [[nodiscard]] const Uuid& feed_of_run(int run) const;
  [[nodiscard]] const Uuid& feed_of_part(int part) const;
  [[nodiscard]] std::int64_t records() const { return records_; }
  [[nodiscard]] const std::optional<Error>& error() const { return error_; }

 private:
  Register& register_;
  DemoClock& clock_;
  std::function<bool(std::int64_t)> progress_;
  std::vector<Entry> gathered_;
  std::string writer_;
  std::map<std::pair<std::string, int>, std::int64_t> finding_numbers_;
  DrawPhotograph draw_;
  SplitMix64 picture_chance_;
  SplitMix64 people_chance_;
  std::int64_t photographs_ = 0;
  std::int64_t records_ = 0;
  std::optional<Error> error_;
};

/// The records' code of a word, as a column of the tables of Skerrymouth uses it.
std::int64_t code(std::string_view column, std::string_view word);

/// How a thing came into the register, as the records say it.
enum class MadeBy { rule = 1, import = 2, typing = 3 };

struct Origin {
  MadeBy made_by = MadeBy::typing;
  std::string reference{};  ///< what the list it came from calls it
};

/// One create (kind 1): type, parent (zero: none), fields.
cbor::Map create_body(int type, const Uuid& parent, cbor::Map fields, const Origin& origin = {});

}  // namespace kneerail::demo
