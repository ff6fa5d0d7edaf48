#pragma once

// Where each part stands, in the words people use: for lists and reports.

#include <map>
#include <string>

#include "core/base/result.h"
#include "schema/database.h"

namespace kneerail {

struct PartPlace {
  std::string site;  ///< name
  std::string run;   ///< name
  std::string post;  ///< label of its post, or of the post before its bay
  std::string part;  ///< role, and what its type does: "fitting, cross"
  double chainage_m = 0;
};

struct Places {
  std::map<std::string, PartPlace> parts;    ///< by import reference, else identifier in text
  std::map<std::string, std::string> sites;  ///< name, by the same
  std::map<std::string, std::string> names;  ///< of whatever has a name, by identifier in text
};

/// All parts and sites of the register. A thing of which the feed has not arrived has empty words.
/// Errors: io, corrupt.
Result<Places> read_places(Database& tables);

}  // namespace kneerail
