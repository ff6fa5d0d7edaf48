// Saves readings and drafts without end and prints each id once it was kept: the test beside it
// kills this program at random and looks whether what was printed is there.
//
//   save-loop FOLDER SEED   saves until it is killed
//   save-loop FOLDER hold   opens the register, prints "open" and waits for its input to end

#include <unistd.h>

#include <cstdio>
#include <string>

#include "core/base/text.h"
#include "schema/store/register.h"
#include "tests/faults/loop_entries.h"

using namespace kneerail;

namespace {

void print(const std::string& line) {
  const std::string whole = line + "\n";
  if (::write(1, whole.data(), whole.size()) != static_cast<ssize_t>(whole.size())) ::_exit(4);
}

int refuse(const Error& error) {
  std::fprintf(stderr, "%s\n", error.message.c_str());
  return 3;
}

int hold(Register& opened) {
  (void)opened;
  print("open");
  char byte = 0;
  while (::read(0, &byte, 1) > 0) {
  }
  return 0;
}

int save_without_end(Register& opened, std::uint64_t seed) {
  SplitMix64 random(seed);
  for (std::int64_t number = 1;; ++number) {
    if (random.between(0, 2) == 0) {
      if (auto done = opened.save_draft(faults::loop_draft(number)); !done) {
        return refuse(done.error());
      }
      print("draft " + std::to_string(number));
      if (random.between(0, 1) == 0) continue;
      auto closed = opened.close_draft(faults::loop_draft(number));
      if (!closed) return refuse(closed.error());
      print("record " + to_text(*closed));
      continue;
    }
    auto saved = opened.save(faults::loop_reading(number));
    if (!saved) return refuse(saved.error());
    print("record " + to_text(*saved));
  }
}

}  // namespace

int main(int count, char** words) {
  if (count != 3) {
    std::fputs("usage: save-loop FOLDER SEED | save-loop FOLDER hold\n", stderr);
    return 2;
  }
  Register::Options options;
  options.folder = words[1];
  options.mode = Mode::create;
  auto opened = Register::open(options);
  if (!opened) return refuse(opened.error());
  if (std::string(words[2]) == "hold") return hold(**opened);
  const auto seed = int_from_text(words[2]);
  return save_without_end(**opened, static_cast<std::uint64_t>(seed.value_or(1)));
}
