#pragma once

// Small questions that the rules of kinds ask about a body whose fields are each within limits.

#include <optional>
#include <string>

#include "core/records/record.h"

namespace kneerail::rules {

/// The whole number under a key; nothing when absent.
std::optional<std::int64_t> number(const Record& record, int key);
/// Empty unless both keys are there and the later one is less than the earlier; then the sentence.
std::string not_before(const Record& record, int later, int earlier, std::string_view sentence);
/// Empty unless the id under a key is the record's own subject.
std::string not_itself(const Record& record, int key, std::string_view sentence);
/// Whether there is text that is more than blanks under a key.
bool has_words(const Record& record, int key);

}  // namespace kneerail::rules
