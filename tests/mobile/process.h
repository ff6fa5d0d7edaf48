#pragma once

// Runs build/bin/kneerail as a person would, and reads what it wrote.

#include <filesystem>
#include <string>
#include <vector>

#include "tests/support/folder.h"

namespace kneerail::test {

struct Ended {
  int code = -1;  ///< exit code; -1 when it was ended by a signal
  std::string out;
  std::string err;
};

/// Runs the program with these words, standard output and error into files.
Ended run_kneerail(const std::vector<std::string>& words);

std::string file_text(const std::filesystem::path& path);
std::vector<std::string> lines_of(const std::string& text);
/// The cells of one line of CSV, quotes undone (RFC 4180).
std::vector<std::string> cells_of(const std::string& line);

}  // namespace kneerail::test
