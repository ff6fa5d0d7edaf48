#pragma once

// What a wet glove meant. Fed with the points on the glass and the time of each event, it answers
// with gestures; it knows no Qt and reads no clock. One finger that stays is a touch or a hold, one
// that moves drags, and a quick drag is a swipe; two fingers pan and pinch. Rain and palms (three
// points or more, or one wider than 30 mm) count for nothing, and neither does what touches the
// glass in the 400 ms after them.

#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace kneerail::elevation {

struct TouchPoint {
  int id = 0;
  double x_px = 0;
  double y_px = 0;
  double width_px = 0;  ///< the longer side of what touches; 0: the glass does not say
};

/// A mouse does not drip: its click has no shortest time.
enum class Pointer { finger, mouse };

struct Gesture {
  enum class What {
    touch,   ///< down and up in one cell; where it went down
    hold,    ///< longer than a touch; where it went down
    swipe,   ///< direction +1: the finger went left, to the next post; -1: the one before
    pan,     ///< by dx, dy since the last one
    pinch,   ///< by factor about x, y, and by dx, dy since the last one
    settle,  ///< the fingers of a pinch are gone
    palm     ///< rain or a palm has begun: whatever was touched counts for nothing
  };
  What what = What::touch;
  double x_px = 0;
  double y_px = 0;
  double dx_px = 0;
  double dy_px = 0;
  double factor = 1;
  int direction = 0;
};

class TouchFilter {
 public:
  /// Names the cell under a point: any number that differs between cells.
  using CellAt = std::function<std::int64_t(double x_px, double y_px)>;

  static constexpr double move_limit_mm = 4;
  static constexpr std::int64_t shortest_touch_ms = 40;
  static constexpr std::int64_t longest_touch_ms = 1500;
  static constexpr double palm_mm = 30;
  static constexpr std::size_t palm_points = 3;
  static constexpr std::int64_t rest_ms = 400;
  static constexpr double swipe_mm = 8;                  ///< way of the finger, at least
  static constexpr double swipe_speed_mm_per_ms = 0.12;  ///< when it leaves the glass, at least
  static constexpr std::int64_t swipe_window_ms = 100;   ///< over which the speed is taken

  explicit TouchFilter(CellAt cell_at) : cell_at_(std::move(cell_at)) {}

  void set_pixels_per_mm(double pixels) { pixels_per_mm_ = pixels; }

  /// All points that are on the glass now; none when the last has left. Feed a point that leaves
  /// once more with its last place before leaving it out. Times in ms, never going back.
  std::vector<Gesture> points(std::span<const TouchPoint> down, std::int64_t t_ms,
                              Pointer pointer = Pointer::finger);

  /// Only time has passed: a finger that still stays becomes a hold.
  std::vector<Gesture> time(std::int64_t t_ms);
  /// When `time` has something to say, if nothing moves until then.
  [[nodiscard]] std::optional<std::int64_t> next_time_ms() const;

  /// What touches now counts for nothing until it has left (the window turned, the touch was taken
  /// away).
  void cancel();
  /// Nothing touches any more, without having left the glass: another took the touch over. A rest
  /// that has begun goes on.
  void taken_away() { state_ = State::idle; }
  [[nodiscard]] bool resting(std::int64_t t_ms) const { return t_ms < rest_until_ms_; }

 private:
  enum class State { idle, one, drag, two, spent, palm };
  struct Sample {
    std::int64_t t_ms = 0;
    double x_px = 0;
  };

  bool is_palm(std::span<const TouchPoint> down) const;
  void begin(const TouchPoint& point, std::int64_t t_ms);
  void move_one(const TouchPoint& point, std::int64_t t_ms, std::vector<Gesture>& said);
  void move_two(std::span<const TouchPoint> down, std::vector<Gesture>& said);
  void end_one(std::int64_t t_ms, Pointer pointer, std::vector<Gesture>& said) const;
  void end_drag(std::int64_t t_ms, std::vector<Gesture>& said) const;
  [[nodiscard]] Gesture at_start(Gesture::What what) const;

  CellAt cell_at_;
  double pixels_per_mm_ = 5.88;
  State state_ = State::idle;
  std::int64_t rest_until_ms_ = 0;
  TouchPoint first_;       ///< where the finger went down
  TouchPoint last_;        ///< where it is
  TouchPoint pair_[2];     ///< the two fingers of a pinch
  std::int64_t cell_ = 0;  ///< under the place where it went down, when it did
  std::int64_t down_ms_ = 0;
  std::vector<Sample> way_;  ///< of the drag, the last swipe_window_ms
};

}  // namespace kneerail::elevation
