#pragma once

// Where a command writes, how it ends, and how it is stopped. Commands get a Console handed in, so
// that a test may look at what a person would see.

#include <cstdint>
#include <functional>
#include <ostream>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace kneerail::commands {

/// How a command ended; the number is the program's exit code.
enum class Exit {
  done = 0,
  findings = 1,  ///< done, but rows were kept out, a check failed or there was nothing to answer
  misuse = 2,    ///< not understood, or nothing there to work on
  machine = 3    ///< disk, permission, damage, another process
};

struct Console {
  std::ostream& out;
  std::ostream& err;
  bool err_is_terminal = false;  ///< counts of long work are shown only on a terminal
  std::function<bool()> stopped = [] { return false; };  ///< a person pressed Ctrl-C
};

/// Prints the sentence of an error and says how the command ends.
Exit report(const Error& error, Console& console);

/// "43,360": with commas between thousands.
std::string with_commas(std::int64_t count);
/// "1 record", "2 records".
std::string counted(std::int64_t count, std::string_view one, std::string_view many);

/// A line of counts that is written over itself, on a terminal only.
class Progress {
 public:
  Progress(Console& console, std::string_view doing) : console_(console), doing_(doing) {}
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;
  ~Progress() { clear(); }

  /// Returns false when the work is to stop. `all` 0: not known.
  bool operator()(std::int64_t done, std::int64_t all);
  void clear();

 private:
  Console& console_;
  std::string doing_;
  std::int64_t shown_ = -1;
  std::size_t width_ = 0;
};

}  // namespace kneerail::commands
