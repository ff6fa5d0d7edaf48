#pragma once

// What the air of Skerrymouth really does, which no register knows: each part has its own start and
// its own rate, each gauge its offset of the day, each screw its own slackening. Readings are made
// from this truth with the errors that real ones have. One seed, one truth.

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/world.h"
#include "mobile/demo/plan.h"

namespace kneerail::demo {

/// Draws with a shape, from one stream of SplitMix64.
class Chance {
 public:
  explicit Chance(std::uint64_t seed) : stream_(seed) {}
  double uniform() { return stream_.uniform(); }
  std::int64_t between(std::int64_t low, std::int64_t high) { return stream_.between(low, high); }
  bool happens(double chance) { return uniform() < chance; }
  /// Standard normal, by Box and Muller (1958).
  double normal();

 private:
  SplitMix64 stream_;
};

class Weather {
 public:
  Weather(const Plan& plan, std::uint64_t seed);

  /// The coating that is there on a day, in um; 0 when it is gone.
  [[nodiscard]] double coating_um(int part, Date day) const;
  /// Condition grade 1 to 4 that a sound eye would give for it.
  [[nodiscard]] int grade(int part, Date day) const;

  /// Another part in the same place, or the same part dipped again: a new start of its own.
  void replace(int part, Date day);
  void regalvanise(int part, Date day);
  void touch_up(int part, Date day);

  /// Three readings of one reference area, 0.1 um. `gauge` is a code of instruments.csv.
  std::vector<std::int64_t> read_coating(int part, int spot, const std::string& gauge, Date day);
  /// A check on a foil of 50 um, 0.1 um.
  std::vector<std::int64_t> read_foil(const std::string& gauge, int site, Date day);
  /// Three readings of the wall of a post tube near its foot, 0.01 mm.
  std::vector<std::int64_t> read_wall(int part, Date day);

  /// The torque that would just move the screw, 0.1 N m.
  double torque_tenth_nm(int part, int screw, Date day);
  void tighten(int part, int screw, Date day, double to_tenth_nm);

  Chance& chance() { return chance_; }

 private:
  struct Coat {
    Date since;
    double start_um = 0;
    double rate_um_per_year = 0;  ///< mean of the first 20 years
  };
  struct Screw {
    Date since;
    double torque_tenth_nm = 0;
    double slackening = 0;
  };
  struct Offset {
    double bias_um = 0;
    double gain = 0;
  };

  double group_rate(int part) const;
  double fresh_start(int part);
  const Offset& offset(const std::string& gauge, int site, Date day);
  Screw& screw(int part, int number);

  const Plan& plan_;
  Chance chance_;
  std::vector<double> batch_;   ///< by run
  std::vector<Coat> coats_;     ///< by part
  std::vector<double> inside_;  ///< by part: loss of wall, mm a year
  std::map<std::string, Offset> offsets_;
  std::map<std::pair<int, int>, Screw> screws_;
};

/// The season in which gauge B drifted.
inline constexpr int drift_year = 2022;

}  // namespace kneerail::demo
