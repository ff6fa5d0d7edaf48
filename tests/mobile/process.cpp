#include "tests/mobile/process.h"

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>
#include <fstream>
#include <sstream>

namespace kneerail::test {

namespace {

[[noreturn]] void become(std::vector<char*>& words, const std::string& out,
                         const std::string& err) {
  const int out_file = ::open(out.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
  const int err_file = ::open(err.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
  if (out_file >= 0 && err_file >= 0) {
    ::dup2(out_file, STDOUT_FILENO);
    ::dup2(err_file, STDERR_FILENO);
    ::execv(words[0], words.data());
  }
  ::_exit(127);
}

}  // namespace

Ended run_kneerail(const std::vector<std::string>& words) {
  const Folder folder;
  const std::string out = folder / "out";
  const std::string err = folder / "err";
  std::string program = std::string(KNEERAIL_BIN_DIR) + "/kneerail";
  std::vector<std::string> copies = words;
  std::vector<char*> pointers{program.data()};
  for (std::string& word : copies) pointers.push_back(word.data());
  pointers.push_back(nullptr);
  Ended ended;
  const pid_t child = ::fork();
  if (child == 0) become(pointers, out, err);
  int status = 0;
  if (child > 0 && ::waitpid(child, &status, 0) == child && WIFEXITED(status)) {
    ended.code = WEXITSTATUS(status);
  }
  ended.out = file_text(out);
  ended.err = file_text(err);
  return ended;
}

std::string file_text(const std::filesystem::path& path) {
  std::ostringstream text;
  text << std::ifstream(path, std::ios::binary).rdbuf();
  return text.str();
}

std::vector<std::string> lines_of(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> cells(1);
  bool quoted = false;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (quoted && line[i] == '"' && i + 1 < line.size() && line[i + 1] == '"') {
      cells.back() += '"';
      ++i;
    } else if (line[i] == '"') {
      quoted = !quoted;
    } else if (line[i] == ',' && !quoted) {
      cells.emplace_back();
    } else {
      cells.back() += line[i];
    }
  }
  return cells;
}

}  // namespace kneerail::test
