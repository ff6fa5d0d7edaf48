#pragma once

// A register's tables as the rows of a portfolio: parts, visits as they are derived (one a person
// and set of instruments), works; and its readings one after another, so that a million of them
// need not be held. The forecast's input and the export of a portfolio folder are both made from
// this.
//
// The day of a reading is that of its corrected time in the organisation's time zone; a time of
// exactly noon UTC stands for a day of which no hour is known, wherever that is. Values are as they
// were read: what calibrations and doubts say of them is for who asks.

#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <unordered_map>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/forecast/portfolio.h"
#include "schema/store/organisation_days.h"
#include "schema/store/register_things.h"

namespace kneerail {

struct PortfolioQuestion {
  std::optional<Date> as_of;  ///< what is later is not known; none: everything
  std::vector<Uuid> sites;    ///< none: all
  forecast::Settings settings;
  bool readings = true;  ///< false: parts, visits and works alone
};

/// One record of readings, with its place in the portfolio.
struct ReadingFact {
  Uuid record;
  std::int32_t part = 0;
  std::int32_t visit = 0;
  Uuid instrument;  ///< zero: none named
  forecast::Quantity quantity = forecast::Quantity::grade;
  std::int16_t spot = 0;  ///< as in forecast::Reading
  forecast::Censoring censoring = forecast::Censoring::exact;
  forecast::Surface surface = forecast::Surface::not_said;
  forecast::How how = forecast::How::not_said;
  bool carried = false;
  std::optional<std::int64_t> wrench_set_tenth_nm;
  std::vector<std::int64_t> values;  ///< 0.1 µm, 0.01 mm, 0.1 N·m or the grade
  Instant at;
  Date day;
  std::optional<Date> seen;  ///< its day, where it is not the visit's
  std::optional<std::int64_t> layer;
  bool is_as_stated = false;  ///< seen earlier than it was typed: its time is the person's word
  bool is_void = false;
  bool is_held = false;
};

/// Which gauge a visit's check foil was read with, and when.
struct FoilFact {
  std::int32_t visit = 0;
  Uuid gauge;
  Instant at;
};

class PortfolioTables {
 public:
  static Result<std::unique_ptr<PortfolioTables>> open(Database& tables,
                                                       PortfolioQuestion question);
  /// What all sites share, visits among it; parts, works and readings are those of no site yet.
  static Result<std::unique_ptr<PortfolioTables>> open_for_sites(Database& tables,
                                                                 PortfolioQuestion question);
  /// After open_for_sites(): from now on it is as opened for that site alone, of whose parts these
  /// are the identifiers.
  Result<> turn_to(const Uuid& site, const std::vector<Uuid>& components);
  [[nodiscard]] const Things& sites() const { return sites_; }
  /// Of the parts among those components, ascending.
  Result<std::vector<std::string>> part_ids(const std::vector<Uuid>& components) const;

  [[nodiscard]] const std::vector<forecast::Part>& parts() const { return parts_; }
  /// Ascending by id; what readings of a site ask for that were kept under another, behind them.
  [[nodiscard]] const std::vector<forecast::Visit>& visits() const { return visits_; }
  [[nodiscard]] const std::vector<forecast::SiteLimits>& limits() const { return limits_; }
  [[nodiscard]] const std::vector<FoilFact>& foils() const { return foils_; }
  /// By part, day, action and screw.
  Result<std::vector<forecast::Work>> works();
  /// Reports issued of the sites of the question, by site, then day.
  Result<std::vector<forecast::IssuedReport>> reports();
  /// Readings of parts and visits of the question, ascending by record. Errors: io, corrupt, and
  /// whatever `each` returns.
  Result<> each_reading(const std::function<Result<>(const ReadingFact&)>& each);

 private:
  /// What one person did on one visit; as many rows of a portfolio as that person had instruments
  /// of one kind.
  struct VisitPart {
    Uuid visit;
    Uuid who;
    Uuid site;
    Date day;
    bool asked = false;                ///< also where only one of its sites is
    bool of_several = false;           ///< its visit has more rows than one
    std::size_t rows_before = 0;       ///< of its visit
    std::vector<Uuid> coating_gauges;  ///< by name, as the other two
    std::vector<Uuid> wall_gauges;
    std::vector<Uuid> wrenches;
    struct Foil {
      double true_um = 0;
      double read_um = 0;
      std::int64_t t = 0;
    };
    std::map<Uuid, Foil> foils;      ///< by gauge
    std::set<Uuid> not_in_order;     ///< gauges
    std::vector<std::int32_t> rows;  ///< places in visits_

    /// The row that holds an instrument of that list; the first where it is in none.
    [[nodiscard]] std::int32_t row_of(const std::vector<Uuid>& list, const Uuid& instrument) const {
      for (std::size_t i = 0; i < list.size(); ++i)
        if (list[i] == instrument) return rows[i];
      return rows.front();
    }
  };

  PortfolioTables(Database& tables, PortfolioQuestion question);
  Result<> load_things_of_all();
  Result<> load_things_of_parts();
  Result<> load_things_of_site(const std::vector<Uuid>& components);
  Result<std::vector<Thing>> with_references(Result<std::vector<Thing>> things) const;
  Result<> load_parts();
  Result<> load_visits();
  Result<> load_visit_parts();
  Result<> load_instruments_of_visits();
  Result<> load_check_foils();
  Result<> load_failed_checks();
  std::vector<std::size_t> order_by_name();
  void number_visits();
  void make_visits();
  [[nodiscard]] forecast::Visit row_of_visit(const VisitPart& part, std::size_t row) const;
  void place_row(VisitPart& part, std::size_t row, forecast::Visit visit);
  /// Site by site: a reading of the site's part was kept under another site.
  void ask_late(VisitPart& part);
  /// Rows of a table by subject, of the site turned to or of all.
  Result<Statement> prepare_of_subjects(std::string_view columns, std::string_view table,
                                        std::string_view that);
  Result<> add_works(std::vector<forecast::Work>& works);
  Result<> add_strike_steps(std::vector<forecast::Work>& works);
  Result<> add_retorques(std::vector<forecast::Work>& works);
  void add_work(const Uuid& subject, const forecast::Work& work,
                std::vector<forecast::Work>& works) const;
  void set_place(const Thing& component, forecast::Part& part) const;
  void set_zone(const Thing& zone, forecast::Part& part) const;
  void set_type(const Thing& component, forecast::Part& part) const;
  void set_rules(const Thing& site, forecast::Part& part) const;
  void find_post_spacings();
  /// Of a post the wider of the bays beside it; of a rail its bay.
  [[nodiscard]] std::optional<std::int64_t> spacing_mm(const Thing& component) const;
  [[nodiscard]] std::optional<double> line_load_kn_per_m(const Thing& site,
                                                         std::int64_t use_class) const;
  /// Fills what a tube carries; or says what of it nobody set.
  std::string load_of(const Thing& site, const Thing& component, structure::LoadedTube& tube) const;
  void set_load(const Thing& site, const Thing& component, forecast::Part& part) const;
  Result<> mark_out_of_shape();
  [[nodiscard]] bool is_out_of_shape(const Thing& component) const;
  const cbor::Value* rule_value(const Thing& site, int limit) const;  ///< null: not set
  std::optional<std::int64_t> rule(const Thing& site, int limit) const;
  forecast::SiteLimits limits_of(const Thing& site) const;
  bool reading_fact(const Statement& row, ReadingFact& fact);
  VisitPart* visit_part(const Uuid& visit, const Uuid& who);
  bool is_asked(const Uuid& site) const;
  bool is_known_on(Date day) const { return !question_.as_of || day <= *question_.as_of; }

  Database& tables_;
  PortfolioQuestion question_;
  std::set<Uuid> sites_asked_;
  TimeZone zone_;
  Things sites_, zones_, runs_, posts_, bays_, types_, instruments_, people_, rule_sets_, depots_;
  Things components_;
  std::unordered_map<Uuid, std::int64_t> spacing_of_post_mm_;
  std::set<Uuid> bent_;  ///< parts, posts and bays that a finding says are out of shape
  std::vector<forecast::Part> parts_;
  std::vector<forecast::Visit> visits_;
  std::vector<forecast::SiteLimits> limits_;
  std::vector<FoilFact> foils_;
  std::unordered_map<Uuid, std::int32_t> part_places_;
  std::unordered_map<Uuid, std::vector<std::int32_t>> parts_of_run_;
  std::vector<VisitPart> visit_parts_;
  std::unordered_map<Uuid, std::vector<std::size_t>> parts_of_visit_;
  std::unordered_map<Uuid, std::vector<std::size_t>> visits_of_site_;  ///< places in visit_parts_

  bool site_by_site_ = false;
  bool read_for_all_ = false;           ///< site by site: visits and findings of all
  std::set<Uuid> without_reference_;    ///< site by site: another bears theirs
  std::vector<std::uint8_t> subjects_;  ///< site by site: what its works and readings are of
  std::vector<VisitPart*> asked_late_;
};

}  // namespace kneerail
