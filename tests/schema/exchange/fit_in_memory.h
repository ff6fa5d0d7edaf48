#pragma once

// The fit of a portfolio in memory as a source of part files, beside those that read a register or
// a file. What is handed over outlives it.

#include <cstdint>
#include <string>
#include <vector>

#include "schema/exchange/forecast_files.h"
#include "tests/support/site_split.h"

namespace kneerail::test {

class FitInMemory final : public FitSource {
 public:
  FitInMemory(const forecast::PortfolioFit& fit, const forecast::Portfolio& portfolio,
              std::int64_t records = 0)
      : fit_(fit),
        as_of_(portfolio.as_of),
        split_(portfolio),
        sites_(site_inputs(portfolio)),
        key_(forecast_key(portfolio, sites_)),
        head_(forecast::head_of(fit)),
        records_(records) {}

  [[nodiscard]] Date as_of() const override { return as_of_; }
  [[nodiscard]] const Digest& key() const override { return key_; }
  [[nodiscard]] const std::vector<SiteInput>& sites() const override { return sites_; }
  [[nodiscard]] const forecast::ForecastHead& head() const override { return head_; }
  [[nodiscard]] std::int64_t records() const override { return records_; }
  Result<forecast::PortfolioFit> fit_of(const std::string& site) override {
    return split_.fit_of(fit_, site);
  }

 private:
  const forecast::PortfolioFit& fit_;
  Date as_of_;
  forecast::SiteSplit split_;
  std::vector<SiteInput> sites_;
  Digest key_;
  forecast::ForecastHead head_;
  std::int64_t records_;
};

}  // namespace kneerail::test
