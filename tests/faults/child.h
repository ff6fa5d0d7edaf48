#pragma once

// A program of ours in a process of its own, its lines read one by one.

#include <signal.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <optional>
#include <string>
#include <vector>

extern char** environ;

namespace kneerail::faults {

class Child {
 public:
  explicit Child(std::vector<std::string> words) {
    int to_child[2];
    int from_child[2];
    REQUIRE(::pipe(to_child) == 0);
    REQUIRE(::pipe(from_child) == 0);
    posix_spawn_file_actions_t actions;
    ::posix_spawn_file_actions_init(&actions);
    ::posix_spawn_file_actions_adddup2(&actions, to_child[0], 0);
    ::posix_spawn_file_actions_adddup2(&actions, from_child[1], 1);
    for (const int end : {to_child[0], to_child[1], from_child[0], from_child[1]}) {
      ::posix_spawn_file_actions_addclose(&actions, end);
    }
    std::vector<char*> arguments;
    for (auto& word : words) arguments.push_back(word.data());
    arguments.push_back(nullptr);
    const int code = ::posix_spawn(&process_, words.front().c_str(), &actions, nullptr,
                                   arguments.data(), environ);
    ::posix_spawn_file_actions_destroy(&actions);
    ::close(to_child[0]);
    ::close(from_child[1]);
    input_ = to_child[1];
    output_ = from_child[0];
    REQUIRE(code == 0);
  }
  Child(const Child&) = delete;
  Child& operator=(const Child&) = delete;
  ~Child() {
    kill();
    ::close(input_);
    ::close(output_);
  }

  /// The next whole line; nothing at the end of its output. A line cut short is none.
  std::optional<std::string> line() {
    for (;;) {
      if (const auto end = read_.find('\n'); end != std::string::npos) {
        std::string line = read_.substr(0, end);
        read_.erase(0, end + 1);
        return line;
      }
      char part[4096];
      const auto count = ::read(output_, part, sizeof part);
      if (count <= 0) return std::nullopt;
      read_.append(part, static_cast<std::size_t>(count));
    }
  }

  void kill() {
    if (process_ <= 0) return;
    ::kill(process_, SIGKILL);
    int status = 0;
    ::waitpid(process_, &status, 0);
    process_ = 0;
  }

 private:
  pid_t process_ = 0;
  int input_ = -1;
  int output_ = -1;
  std::string read_;
};

}  // namespace kneerail::faults
