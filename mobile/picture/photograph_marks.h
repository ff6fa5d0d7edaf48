#pragma once

// Marks as the screens carry them: a line for each, its word and then its places in 1/10,000 of the
// picture's width and height, "circle 4200 5000 5200 5000".

#include <QString>
#include <optional>
#include <vector>

#include "core/records/photograph.h"

namespace kneerail {

QString marks_text(const std::vector<Mark>& marks);
/// Nothing for what is none.
std::optional<Mark> mark_of_text(const QString& line);

}  // namespace kneerail
