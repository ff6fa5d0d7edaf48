#pragma once

// What the things of a register are called in files, and which thing a name in a file means.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>

#include "core/base/id.h"
#include "core/base/result.h"
#include "schema/database.h"

namespace kneerail::exchange {

class RegisterNames {
 public:
  struct Named {
    int type = 0;
    Uuid feed;  ///< of what stands in it
    std::string reference;
  };

  static Result<RegisterNames> load(Database& tables);

  void add(const Uuid& id, Named named);
  [[nodiscard]] const Named* find(const Uuid& id) const;
  /// The thing of that type and reference; type 0: of any type that has just one of it.
  [[nodiscard]] std::optional<Uuid> thing(int type, std::string_view reference) const;
  /// The reference where it leads back to this thing, else the identifier.
  [[nodiscard]] std::string reference(const Uuid& id) const;

 private:
  std::unordered_map<Uuid, Named> things_;
  std::map<std::pair<int, std::string>, Uuid, std::less<>> by_reference_;
};

}  // namespace kneerail::exchange
