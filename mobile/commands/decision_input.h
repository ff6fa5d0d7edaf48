#pragma once

// What the commands that decide have in common: the register's input, the models fitted to it, and
// the owner's figures.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/forecast/all_limits.h"
#include "core/forecast/decisions/next_visit.h"
#include "core/forecast/decisions/owner_figures.h"
#include "core/forecast/decisions/replacement.h"
#include "mobile/commands/forecast_input.h"

namespace kneerail::commands {

struct DecisionInput {
  ForecastInput read;
  forecast::OwnerFigures figures;
  std::vector<forecast::SiteVisits> visits;
  forecast::FittedCoating coating;
  std::optional<forecast::OtherModels> others;  ///< where every limit was asked for
  std::optional<forecast::GradeModel> grades;   ///< where replacements alone were
  bool graded = false;                          ///< somebody graded a part
  bool walls_read = false;                      ///< somebody read a wall

  [[nodiscard]] const forecast::CoatingModel* coating_model() const {
    return coating.model ? &*coating.model : nullptr;
  }
  /// Grades that nobody gave say only what was assumed, and decide nothing.
  [[nodiscard]] forecast::Replacements replacements() const {
    return {read.portfolio, coating_model(), graded && grades ? &*grades : nullptr};
  }
  /// "Tube 48.3 x 4.0 galvanized (tube, 48.3 × 4.0 mm)", else what the portfolio calls it.
  [[nodiscard]] std::string type_words(const std::string& type) const;
  [[nodiscard]] std::string site_name(const std::string& site) const;
};

/// Set screws are tightened, not replaced: what counts replacements fits none.
enum class ModelsFor { replacements, every_limit };

/// Reads and fits. `figures_file`: what the register has no record of (figures_file.h); empty:
/// none. Errors: those of the register, the file and the fits.
Result<std::unique_ptr<DecisionInput>> decision_input(const AskedForecast& asked,
                                                      const std::string& figures_file,
                                                      ModelsFor what, Console& console);

/// --figures FILE.
void add_figures_option(CLI::App& command, std::string& file);

/// "12,300": three digits that count.
std::string money_words(double amount, const std::string& currency);

}  // namespace kneerail::commands
