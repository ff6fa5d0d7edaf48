#pragma once

// Portfolio rows as the entries a person would have typed: the things of the register, visits,
// readings and works. Which column becomes which field is said at each function. What a file does
// not say is left out, never 0.
//
// A torque's censoring becomes a method: at least is a click without movement (1) of a wrench set
// to that value; at most a click that moved (2), set likewise; about a click that moved where the
// file names the setting, else a value read (3), for a click without its setting would say more
// than is known; exact a value read (3).

#include <string>
#include <unordered_map>
#include <vector>

#include "core/base/time_zone.h"
#include "schema/exchange/checked_portfolio.h"
#include "schema/exchange/portfolio_layout.h"
#include "schema/store/register.h"

namespace kneerail::exchange {

/// What the component type of a row is called: "fitting zinc_coated_steel target 39 lowest 27".
/// Rows of equal values share one.
std::string type_reference(const ComponentRow& row);

class PortfolioEntries {
 public:
  /// The portfolio outlives this. `zone`: which day a reading with a time of its own is of.
  PortfolioEntries(const CheckedPortfolio& portfolio, Uuid organisation, TimeZone zone);

  /// The organisation itself, for a register that has none.
  static Entry organisation(const Uuid& id, std::string_view name);

  // Organisation feed.
  std::vector<Entry> rule_sets() const;
  std::vector<Entry> component_types() const;
  std::vector<Entry> people() const;
  std::vector<Entry> instruments() const;
  std::vector<Entry> sites() const;

  // Site feeds.
  std::vector<Entry> zones() const;
  std::vector<Entry> runs() const;
  /// Posts, then bays of one run.
  std::vector<Entry> posts_and_bays(std::size_t run) const;
  Entry component(std::size_t place) const;

  /// The visit, its link to an earlier visit of the same site and day, and its check foil.
  std::vector<Entry> visit(std::size_t place) const;
  /// One record of readings that share visit, part, quantity and spot, in order of replicate.
  Entry reading(const std::vector<StagedReading>& set) const;
  Entry work(const CheckedWork& work) const;

 private:
  template <class Body>
  [[nodiscard]] Entry of_visit(std::size_t place, const Uuid& subject, const Body& body) const;
  template <class Body>
  [[nodiscard]] Entry of_reading(const StagedReading& first, Body body) const;
  [[nodiscard]] Entry opened(std::size_t place) const;
  [[nodiscard]] Entry joined(std::size_t place) const;
  [[nodiscard]] Entry foil(std::size_t place) const;
  [[nodiscard]] Uuid site_id(std::string_view reference) const;
  [[nodiscard]] Uuid run_id(std::size_t run) const;
  [[nodiscard]] Uuid site_of_run(std::size_t run) const;
  [[nodiscard]] Uuid post_id(std::size_t run, std::size_t post) const;
  [[nodiscard]] Uuid bay_id(std::size_t run, std::size_t bay) const;
  [[nodiscard]] Uuid visit_id(std::size_t place) const;
  [[nodiscard]] Uuid life_on(std::int32_t component, Date day) const;
  [[nodiscard]] std::string rule_set_reference(const SiteRow& site) const;
  [[nodiscard]] Uuid instrument_of(const StagedReading& reading) const;
  [[nodiscard]] Uuid reading_id(const StagedReading& first) const;

  const CheckedPortfolio& portfolio_;
  Uuid organisation_;
  TimeZone zone_;
  Layout layout_;
  std::unordered_map<std::string, std::size_t> zone_places_;
  std::vector<Uuid> component_ids_;
  std::vector<std::size_t> first_visit_of_day_;  ///< of the same site; by visit
  std::vector<std::size_t> first_row_of_visit_;  ///< rows that name one record are one visit
  std::vector<std::size_t> works_from_;          ///< first work of each part; one more at the end
};

}  // namespace kneerail::exchange
