#pragma once

// What lies under a touch. Joints (fittings, welds, fixings) are chosen by the nearest within 11 mm
// on the glass, so that their cells meet halfway; tubes by a band along them; then the open air
// between two posts is the bay, the sky above the top rail is the post and the ground below is the
// base fixing. Where two joints stand closer than 20 mm on the glass and the touch is not clearly
// on one of them, the answer is "which of these": the joint is then drawn at 1:10 and touched once
// more.
//
// Everything is kept in the run's own millimetres, so one index serves every scale. Targets are
// sorted by where they begin, with the furthest end so far beside them; a touch looks only at those
// within its reach.

#include <cstdint>
#include <vector>

#include "mobile/elevation/part_place.h"
#include "schema/store/run_store.h"

namespace kneerail::elevation {

inline constexpr double reach_mm = 11;        ///< of a joint, on the glass
inline constexpr double tube_reach_mm = 5.5;  ///< half of the band along a tube
inline constexpr double crowd_mm = 20;        ///< joints closer than this may be mistaken
inline constexpr double sure_mm = 5;          ///< a touch this far from the halfway line is not

struct Pick {
  enum class What { nothing, part, post, bay, crowd };
  What what = What::nothing;
  int place = -1;   ///< in the sheet's parts, posts or bays; of a crowd: the nearest part
  RunPoint middle;  ///< of a crowd: what to draw larger
  bool operator==(const Pick& other) const { return what == other.what && place == other.place; }
};

enum class Crowds { ask, choose_nearest };

class PickIndex {
 public:
  PickIndex() = default;
  explicit PickIndex(const RunSheet& sheet);

  /// What a touch at `touch` chooses when the drawing stands at 1:denominator.
  [[nodiscard]] Pick pick(RunPoint touch, double denominator, Crowds crowds = Crowds::ask) const;

 private:
  struct Target {
    double from_mm = 0;  ///< along
    double to_mm = 0;
    double low_mm = 0;  ///< up
    double high_mm = 0;
    int part = -1;
  };
  struct Layer {
    void sort();
    std::vector<Target> targets;      ///< by from_mm
    std::vector<double> furthest_mm;  ///< greatest to_mm up to here
  };
  struct Near {
    int part = -1;
    double distance_mm = 0;
    RunPoint at;
  };
  struct Post {
    double along_mm = 0;
    double height_mm = 0;
    int place = -1;
    int base = -1;           ///< its lowest base fixing, or -1
    double lowest_mm = 1e9;  ///< its lowest joint that is no base fixing
  };
  struct Bay {
    double from_mm = 0;
    double to_mm = 0;
    double furthest_mm = 0;
    int place = -1;
  };

  void add_part(const RunSheet& sheet, int place);
  void add_joint(const RunSheet& sheet, int place);
  void add_fixings(const RunSheet& sheet);
  void add_tube(const RunSheet& sheet, int place, double up_mm);
  void add_section(const RunSheet& sheet, int place);
  static Near nearest(const Layer& layer, RunPoint touch, double reach, int but_not = -1);
  [[nodiscard]] Pick joint(RunPoint touch, double denominator, Crowds crowds) const;
  [[nodiscard]] const Post* nearest_post(double along_mm) const;
  [[nodiscard]] Pick open_air(RunPoint touch, const Post& post, double denominator) const;

  Layer joints_;
  Layer tubes_;
  std::vector<Post> posts_;  ///< by along_mm
  std::vector<Bay> bays_;    ///< by from_mm
};

}  // namespace kneerail::elevation
