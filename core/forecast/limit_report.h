#pragma once

// One part's row for each limit: quantiles, chances by date, and the reason in words.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/forecast/coating_model.h"
#include "core/forecast/parallel.h"

namespace kneerail::forecast {

/// What rows of many parts share.
struct ReportContext {
  const Portfolio* portfolio;
  const CoatingModel* model;
  const std::vector<SessionReport>* sessions;
  std::optional<Date> on = {};  ///< a date to give the chance for
};

struct PartView;

/// A part the model serves with its current segment, its posterior stretched by the scale of the
/// back-dated forecast; `index` is its place in CoatingData::parts.
PartView view_of(const ReportContext& context, int index);

/// Two rows (coating exhausted, first maintenance) of a part the model serves; `index` is its place
/// in CoatingData::parts. A row that cannot be answered keeps its words.
std::vector<LimitForecast> limit_rows(const ReportContext& context, int index);

/// Rows of all parts of the context's portfolio, in the order of their identifiers; a part the
/// model does not serve has its one row. Not all of them when the workers were stopped.
std::vector<LimitForecast> all_limit_rows(const ReportContext& context, const Workers& workers);

/// The chance the owner set for parts of that consequence (1 high, 2 medium, 3 low), over 0 and
/// under 1; nothing where none is set or the consequence is not said. By consequence; [0] unused.
std::optional<double> owners_chance(const std::array<std::optional<double>, 4>& set,
                                    int consequence);

/// A limit the owner set, um; nothing where none is set or what is set is no thickness.
std::optional<double> set_limit_um(std::optional<double> given);

/// The coating at which a part of that site counts as gone, um: the owner's, else 0.
double zinc_gone_um(const Portfolio& portfolio, const std::string& site);

/// The one row, without an answer, of a part the model does not serve.
LimitForecast unserved_row(const Portfolio& portfolio, std::int32_t place);

}  // namespace kneerail::forecast
