#include "mobile/commands/console.h"

#include <algorithm>

namespace kneerail::commands {

Exit report(const Error& error, Console& console) {
  console.err << error.message << "\n";
  switch (error.fault) {
    case Fault::invalid_input:
    case Fault::not_found:
      return Exit::misuse;
    case Fault::not_estimable:
    case Fault::cancelled:
      return Exit::findings;
    case Fault::conflict:
    case Fault::corrupt:
    case Fault::io:
    case Fault::network:
      break;
  }
  return Exit::machine;
}

std::string with_commas(std::int64_t count) {
  std::string text = std::to_string(count);
  const std::size_t first = text.starts_with('-') ? 1 : 0;
  for (std::size_t i = text.size(); i > first + 3;) {
    i -= 3;
    text.insert(i, ",");
  }
  return text;
}

std::string counted(std::int64_t count, std::string_view one, std::string_view many) {
  return with_commas(count) + " " + std::string(count == 1 ? one : many);
}

bool Progress::operator()(std::int64_t done, std::int64_t all) {
  const std::int64_t step = std::max<std::int64_t>(1, all / 200);
  const bool worth_it = shown_ < 0 || done - shown_ >= step || done == all;
  if (console_.err_is_terminal && worth_it) {
    std::string line = doing_ + " " + with_commas(done);
    if (all > 0) line += " of " + with_commas(all);
    console_.err << "\r" << line
                 << std::string(width_ > line.size() ? width_ - line.size() : 0, ' ') << std::flush;
    width_ = line.size();
    shown_ = done;
  }
  return !console_.stopped();
}

void Progress::clear() {
  if (width_ > 0) console_.err << "\r" << std::string(width_, ' ') << "\r" << std::flush;
  width_ = 0;
}

}  // namespace kneerail::commands
