#include "mobile/day/power_cut.h"

#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdlib>
#include <iostream>
#include <sstream>
#include <string>

namespace kneerail::day {

namespace {

/// A reading a line: kind, part, how many values, the values, and the title to the line's end.
std::string written(const std::vector<Entered>& all) {
  std::ostringstream text;
  for (const Entered& one : all) {
    text << one.kind << ' ' << to_text(one.part) << ' ' << one.values.size();
    for (const std::int64_t value : one.values) text << ' ' << value;
    text << ' ' << one.title << '\n';
  }
  return text.str();
}

std::vector<Entered> read(const std::string& text) {
  std::vector<Entered> all;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    std::istringstream words(line);
    Entered one;
    std::string part;
    std::size_t values = 0;
    words >> one.kind >> part >> values;
    one.part = uuid_from_text(part).value_or(Uuid{});
    for (std::int64_t value = 0; values > 0 && words >> value; --values)
      one.values.push_back(value);
    std::getline(words >> std::ws, one.title);
    all.push_back(std::move(one));
  }
  return all;
}

[[noreturn]] void end(const Result<std::vector<Entered>>& entered, int to) {
  const std::string text = entered ? written(*entered) : entered.error().message;
  std::cout.flush();
  for (std::size_t done = 0; done < text.size();) {
    const auto count = ::write(to, text.data() + done, text.size() - done);
    if (count <= 0) std::_Exit(EXIT_FAILURE);
    done += static_cast<std::size_t>(count);
  }
  std::_Exit(entered ? EXIT_SUCCESS : EXIT_FAILURE);
}

}  // namespace

Result<std::vector<Entered>> until_power_cut(const std::function<void(const Ends&)>& part) {
  std::array<int, 2> ends{};
  std::cout.flush();
  const pid_t child = ::pipe(ends.data()) == 0 ? ::fork() : -1;
  if (child < 0) {
    return fail(Fault::io, "No process could be started for the forenoon. Nothing was entered.");
  }
  if (child == 0) {
    ::close(ends[0]);
    part([to = ends[1]](const auto& entered) { end(entered, to); });
    std::_Exit(EXIT_FAILURE);
  }
  ::close(ends[1]);
  std::string text;
  std::array<char, 4096> some{};
  for (ssize_t count = 1; count > 0;) {
    count = ::read(ends[0], some.data(), some.size());
    if (count > 0) text.append(some.data(), static_cast<std::size_t>(count));
  }
  ::close(ends[0]);
  int status = 0;
  ::waitpid(child, &status, 0);
  if (WIFEXITED(status) && WEXITSTATUS(status) == EXIT_SUCCESS) return read(text);
  return fail(Fault::not_found, text.empty() ? "The forenoon ended early." : text);
}

}  // namespace kneerail::day
