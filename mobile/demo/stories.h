#pragma once

// What happens to single parts in eight years: hazards made safe and ended, fittings replaced, a
// run dipped again, a swap that nobody wrote down, what others told, slips of the pen.

#include <map>
#include <string_view>

#include "mobile/demo/making.h"
#include "mobile/demo/walk.h"

namespace kneerail::demo {

class Stories {
 public:
  explicit Stories(Making& making) : making_(making) {}

  /// What is found or mistyped at this post on this visit, if anything.
  void at_post(const Visit& visit, int post);

  /// Replaces the most worn fitting of a run, with a record.
  void replace_worst_fitting(std::string_view run, Date day);
  /// The same without one: only the readings will tell.
  void swap_unrecorded(std::string_view run, Date day);
  void regalvanise_run(std::string_view run, Date from, Date until);
  void touch_up(std::string_view run, int count, Date day);
  void repaint_run(std::string_view run, Date day);
  void cut_out_section(std::string_view run, Date day);
  void rename_run(std::string_view run, std::string_view name, Date day);

  /// Mends what hazards are open at that site since before the day, and ends them.
  void end_hazards(std::string_view site, Date day);
  void look_at_hazards(std::string_view site, Date day);
  /// A finding that could wait cannot any more.
  void raise_hazard_later(std::string_view run, Date found, Date raised, Date ended);

  void storm(Date day);
  void told(std::string_view site, int post, Date day, std::string_view text, int answer);
  void calibrate(Date day);
  /// What lies on the depot's shelf is counted.
  void count_the_shelf(Date day);
  /// The gauges are zeroed at the van, and the day begins.
  void begin_day(std::string_view site, Date day);
  void agree_next_visit(int site, Date day, Date next);

 private:
  /// A finding that cannot wait, until it is ended.
  struct Hazard {
    Uuid finding;
    int site = 0;
    int part = 0;        ///< what is mended
    int action = 0;      ///< by which work (kind 40)
    int how = 0;         ///< how the finding ends (kind 34)
    bool stays = false;  ///< not mended before the story ends
  };
  struct Found {
    Uuid subject;
    int what = 0;  ///< kind of finding
    int grade = 5;
    const char* text = "";
    cbor::Array measures;  ///< how it is made safe at once
  };

  Uuid raise(const Visit& visit, int part, const Found& found);
  void make_safe(const Visit& visit, const Uuid& finding, int part, cbor::Array measures,
                 std::int64_t minute);
  void split_cross(const Visit& visit, int post);
  void loose_bay(const Visit& visit, int post, bool stays);
  void gate_will_not_close(const Visit& visit, int post);
  void raised_by_mistake(const Visit& visit, int post);
  enum class ThenWhat { corrected, void_it, nothing };
  void mistyped(const Visit& visit, int post, ThenWhat then);
  void measured_aluminium(const Visit& visit, int post);
  void two_grades(const Visit& visit, int post);

  int worst_fitting(std::string_view run, Date day, bool measured_each_time) const;
  Uuid replace(int part, Date day, const Uuid& finding);
  /// Work on one part (kind 40), as the maintenance lead writes it down.
  Uuid work(int part, int action, Date day, const Uuid& finding);

  Making& making_;
  std::vector<Hazard> hazards_;
  std::vector<int> renewed_;  ///< parts that were replaced, with a record or without
};

}  // namespace kneerail::demo
