#pragma once

// What every command that reckons asks on its command line, reads from the register and writes to.

#include <functional>
#include <ostream>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/forecast/portfolio.h"
#include "mobile/commands/console.h"
#include "schema/database.h"
#include "schema/store/organisation_days.h"
#include "schema/store/place_store.h"

namespace CLI {
class App;
}

namespace kneerail::commands {

struct AskedForecast {
  std::string folder;
  std::string as_of;
  std::string csv;
  std::string json;
  std::string site;
  int threads = 0;
  bool readings = true;              ///< false: parts, visits and works alone
  std::vector<std::string> written;  ///< other files that will be written
};

/// The register's folder and the day.
void add_input_options(CLI::App& command, AskedForecast& asked);
/// --csv and --json; `rows` says what a row is. add_output_options() adds --site.
void add_file_options(CLI::App& command, AskedForecast& asked, const std::string& rows);
void add_output_options(CLI::App& command, AskedForecast& asked, const std::string& rows);
/// Why a text is no day, for an option's check; empty when it is one.
std::string why_no_date(const std::string& text);
void add_threads_option(CLI::App& command, AskedForecast& asked);

/// The site people mean by a name or an identifier (Part::site), of names by identifier; empty for
/// all. Errors: not_found, with the names there are.
Result<std::string> site_of(const std::string& asked,
                            const std::map<std::string, std::string>& sites);

struct ForecastInput {
  forecast::Portfolio portfolio;
  Places places;
  std::string site;  ///< Part::site; empty: all
  OrganisationDays days;
};

/// Reads the same moment of the register; `also` may read more of it, as it is known on the day.
/// Errors: those of the register; not_found (no such site, with the names there are);
/// invalid_input (outputs that cannot be made).
using ReadAlso = std::function<Result<>(Database& tables, const ForecastInput& input)>;
Result<ForecastInput> read_forecast_input(const AskedForecast& asked, Console& console,
                                          const ReadAlso& also = {});

/// Errors: those of where it comes from; a stream that fails is found by who writes.
using PrintTo = std::function<Result<>(std::ostream&)>;

/// That what is written goes outside the register's folder. Errors: invalid_input.
Result<> check_outputs(const AskedForecast& asked);

/// As CSV and JSON where they were asked for, else as text.
Exit write_outputs(const AskedForecast& asked, Console& console, const PrintTo& text,
                   const PrintTo& csv, const PrintTo& json);

}  // namespace kneerail::commands
