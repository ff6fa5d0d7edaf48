#pragma once

// A model as words ("Reaction~Days+(Days|Subject)") over the columns of a data set.

#include <string>
#include <vector>

#include "core/statistics/least_squares.h"
#include "core/statistics/mixed_model.h"
#include "tests/reference/question.h"

namespace kneerail::reference {

/// y ~ constant + fixed columns + (constant + random columns | group).
struct ModelText {
  std::string response;
  std::vector<std::string> fixed;
  std::vector<std::string> random;
  std::string group;  ///< empty: no groups
};

/// Reads "y~x", "y~1+(1|g)", "y~x+(x|g)". Errors: invalid_input for words it cannot read.
Result<ModelText> model_from_text(std::string_view words);

/// The data set a question names, and its model: the one in words, or where none is given the first
/// column upon all others, and with three columns first ~ second + (second | third).
struct Asked {
  Table table;
  ModelText model;
};
Result<Asked> asked_model(const Question& question);

Result<statistics::LeastSquares> least_squares_of(const Asked& asked);

struct GroupedFit {
  statistics::MixedFit fit;
  std::vector<std::string> group_names;
};
Result<GroupedFit> mixed_fit_of(const Asked& asked, statistics::Criterion criterion);

}  // namespace kneerail::reference
