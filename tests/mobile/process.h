#pragma once

// Runs build/bin/kneerail as a person would, and a folder that is gone when the test is.

#include <filesystem>
#include <string>
#include <vector>

namespace kneerail::test {

struct Ended {
  int code = -1;  ///< exit code; -1 when it was ended by a signal
  std::string out;
  std::string err;
};

/// Runs the program with these words, standard output and error into files.
Ended run_kneerail(const std::vector<std::string>& words);

class Folder {
 public:
  Folder();
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder();

  [[nodiscard]] const std::filesystem::path& path() const { return path_; }
  [[nodiscard]] std::string operator/(const std::string& name) const {
    return (path_ / name).string();
  }
  void write(const std::string& name, const std::string& text) const;

 private:
  std::filesystem::path path_;
};

std::string file_text(const std::filesystem::path& path);
std::vector<std::string> lines_of(const std::string& text);
/// The cells of one line of CSV, quotes undone (RFC 4180).
std::vector<std::string> cells_of(const std::string& line);

}  // namespace kneerail::test
