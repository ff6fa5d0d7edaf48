// The real program: it opens a register on the screen, is killed, and stands there again.

#include <fcntl.h>
#include <poll.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <cstdlib>

#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

class Program {
 public:
  explicit Program(const std::filesystem::path& folder) {
    int ends[2];
    REQUIRE(::pipe(ends) == 0);
    child_ = ::fork();
    REQUIRE(child_ >= 0);
    if (child_ == 0) become(folder, ends);
    ::close(ends[1]);
    from_ = ends[0];
  }
  Program(const Program&) = delete;
  Program& operator=(const Program&) = delete;
  ~Program() {
    ::kill(child_, SIGKILL);
    ::waitpid(child_, nullptr, 0);
    ::close(from_);
  }

  /// Its next line; empty when it ended, or said nothing for a minute.
  std::string line() {
    std::string text;
    char one = 0;
    pollfd there{from_, POLLIN, 0};
    while (::poll(&there, 1, 60'000) == 1 && ::read(from_, &one, 1) == 1 && one != '\n')
      text += one;
    return text;
  }

 private:
  [[noreturn]] static void become(const std::filesystem::path& folder, const int* ends) {
    ::dup2(ends[1], STDOUT_FILENO);
    ::close(ends[0]);
    ::close(ends[1]);
    ::setenv("QT_QPA_PLATFORM", "offscreen", 1);
    ::execl(KNEERAIL_BIN_DIR "/kneerail", "kneerail", "open", "--data", folder.c_str(), nullptr);
    ::_exit(127);
  }

  pid_t child_ = -1;
  int from_ = -1;
};

}  // namespace

TEST_CASE("the program opens a register, and after a kill again", "[mobile][window]") {
  SiteFolder folder(true);
  for (int start = 0; start < 2; ++start) {
    Program program(folder.path());
    CHECK(program.line() == "Open: North Mole, Ferry Slip, post 118");
  }
  auto opened = taken(Register::open(folder.options()));
  CHECK(taken(opened->verify()).problems.empty());
}

TEST_CASE("a register in use elsewhere is shown by the program, to read only", "[mobile][window]") {
  SiteFolder folder(true);
  const auto elsewhere = taken(Register::open(folder.options()));
  Program program(folder.path());
  // Shown before the lock was asked for, or after.
  std::string said = program.line();
  if (said.starts_with("Open:")) said = program.line();
  CHECK(said == "Open to read only: North Mole, Ferry Slip, post 118");
}
