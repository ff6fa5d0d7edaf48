#include "core/forecast/screws/tightenings.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <set>
#include <string_view>
#include <tuple>

#include "core/forecast/coating_readings.h"
#include "core/forecast/screws/constants.h"

namespace kneerail::forecast {

namespace {

constexpr int most_screws = 16;

std::optional<double> positive(const std::optional<double>& torque_nm) {
  return torque_nm && std::isfinite(*torque_nm) && *torque_nm > 0 ? torque_nm : std::nullopt;
}

/// Something that is no number has a place in the order too.
double sortable(double value) {
  return std::isfinite(value) ? value : -1;
}

TorqueFound found_as(Censoring censoring) {
  switch (censoring) {
    case Censoring::at_least:
      return TorqueFound::clicked;
    case Censoring::at_most:
      return TorqueFound::free;
    case Censoring::exact:
    case Censoring::about:
      return TorqueFound::moved;
  }
  return TorqueFound::moved;
}

bool restarts(const Work& work) {
  switch (work.action) {
    case Action::retorque:
    case Action::re_erect:
    case Action::replace:
      return true;
    case Action::regalvanise:
      return positive(work.as_left_nm).has_value();
    case Action::touch_up:
      return false;
  }
  return false;
}

/// One day's restart of one screw, whatever works of the day say it.
struct Restart {
  Date day;
  std::optional<double> as_left_nm;
  bool struck = false;
  bool new_part = false;
};

/// What the portfolio says of one part, in an order of its own.
struct PartRecord {
  std::vector<std::pair<const Reading*, Date>> readings;
  std::vector<const Work*> works;
};

std::vector<PartRecord> records_by_part(const Portfolio& portfolio) {
  std::vector<PartRecord> records(portfolio.parts.size());
  for (const Reading& reading : portfolio.readings)
    if (reading.quantity == Quantity::torque_nm)
      records[static_cast<std::size_t>(reading.part)].readings.emplace_back(
          &reading, day_of(portfolio, reading));
  for (const Work& work : portfolio.works)
    if (restarts(work) && work.day <= portfolio.as_of)
      records[static_cast<std::size_t>(work.part)].works.push_back(&work);
  for (PartRecord& record : records) {
    std::sort(record.readings.begin(), record.readings.end(), [](const auto& a, const auto& b) {
      const auto key = [](const auto& r) {
        return std::tuple(r.second, r.first->spot, r.first->censoring, sortable(r.first->value),
                          positive(r.first->wrench_set_nm), std::string_view(r.first->id));
      };
      return key(a) < key(b);
    });
    std::sort(record.works.begin(), record.works.end(), [](const Work* a, const Work* b) {
      return std::tuple(a->day, a->action, a->screw, positive(a->as_left_nm)) <
             std::tuple(b->day, b->action, b->screw, positive(b->as_left_nm));
    });
  }
  return records;
}

/// Gathers one part: its screws, their restarts, the readings between them.
class FittingBuilder {
 public:
  FittingBuilder(const Portfolio& portfolio, const InstalledDates& installed,
                 const PartRecord& record, std::int32_t place, ScrewData& data)
      : part_(portfolio.parts[static_cast<std::size_t>(place)]),
        record_(record),
        installed_(installed),
        put_up_(put_up(part_, portfolio.as_of)),
        data_(data) {
    fitting_.place = place;
    fitting_.target_nm = positive(part_.torque_target_nm);
  }

  Fitting build() {
    std::set<std::int16_t> numbers;
    for (const auto& [reading, day] : record_.readings) numbers.insert(reading->spot);
    for (const Work* work : record_.works)
      if (work->screw != 0) numbers.insert(work->screw);
    // Screws the register counts and nobody has touched; not where readings do not say which.
    if (numbers.count(0) == 0)
      for (int number = 1; number <= std::min(part_.screws, most_screws); ++number)
        numbers.insert(static_cast<std::int16_t>(number));
    if (numbers.empty()) numbers.insert(0);
    for (const std::int16_t number : numbers) add_screw(number);
    return std::move(fitting_);
  }

 private:
  [[nodiscard]] const char* unusable(const Reading& reading, Date day) const {
    if (!std::isfinite(reading.value) || reading.value < 0) return "no_torque";
    if (day > data_.as_of) return "after_as_of";
    if (put_up_ && day < *put_up_) return "before_installed";
    return nullptr;
  }

  void leave_out(const Reading& reading, const char* reason) {
    data_.left_out.push_back({reading.id, part_.id, reason});
  }

  [[nodiscard]] std::vector<Restart> restarts_of(std::int16_t number) const {
    std::vector<Restart> restarts;
    for (const Work* work : record_.works) {
      if (work->screw != 0 && work->screw != number) continue;
      if (put_up_ && work->day < *put_up_) continue;
      if (restarts.empty() || restarts.back().day != work->day)
        restarts.push_back({work->day, {}, false, false});
      Restart& day = restarts.back();
      if (const auto as_left = positive(work->as_left_nm)) day.as_left_nm = as_left;
      day.struck = day.struck || work->action == Action::re_erect;
      day.new_part = day.new_part || work->action == Action::replace;
    }
    return restarts;
  }

  [[nodiscard]] Tightening first_tightening() const {
    Tightening first;
    first.as_left_nm = fitting_.target_nm.value_or(0);
    first.started = put_up_.has_value();
    if (first.started) {
      first.starts = {*put_up_};
    } else {
      const Date seen = record_.readings.empty() ? data_.as_of : record_.readings.front().second;
      first.starts = installed_.likely_starts(part_.site, std::min(seen, data_.as_of));
    }
    return first;
  }

  [[nodiscard]] Tightening tightening_after(const Restart& restart, int strikes) const {
    Tightening next;
    next.as_left_nm = restart.as_left_nm.value_or(fitting_.target_nm.value_or(0));
    next.starts = {restart.day};
    next.strikes = restart.new_part ? 0 : strikes + (restart.struck ? 1 : 0);
    return next;
  }

  void add_screw(std::int16_t number) {
    Screw screw;
    screw.number = number;
    screw.tightenings.push_back(first_tightening());
    for (const Restart& restart : restarts_of(number))
      screw.tightenings.push_back(tightening_after(restart, screw.tightenings.back().strikes));
    std::size_t current = 0;
    for (const auto& [reading, day] : record_.readings) {
      if (reading->spot != number) continue;
      while (current + 1 < screw.tightenings.size() &&
             screw.tightenings[current + 1].starts.front() < day)
        ++current;
      add_reading(*reading, day, screw.tightenings[current]);
    }
    fitting_.screws.push_back(std::move(screw));
  }

  void add_reading(const Reading& reading, Date day, Tightening& tightening) {
    if (const char* reason = unusable(reading, day)) return leave_out(reading, reason);
    if (day.days - tightening.starts.back().days < screw_constant::least_days)
      return leave_out(reading, "day_of_restart");
    if (tightening.as_left_nm <= 0) return leave_out(reading, "no_torque_target");
    FoundTorque found{day, found_as(reading.censoring), reading.value,
                      positive(reading.wrench_set_nm)};
    if (found.found == TorqueFound::moved && !found.wrench_set_nm) ++data_.without_setting;
    tightening.readings.push_back(found);
    ++fitting_.readings;
    ++data_.readings;
  }

  const Part& part_;
  const PartRecord& record_;
  const InstalledDates& installed_;
  const std::optional<Date> put_up_;
  ScrewData& data_;
  Fitting fitting_;
};

/// Parts with set screws in the order of site, then id.
std::vector<std::int32_t> places_with_screws(const Portfolio& portfolio,
                                             const std::vector<PartRecord>& records) {
  std::vector<std::int32_t> places;
  for (std::size_t i = 0; i < portfolio.parts.size(); ++i) {
    const Part& part = portfolio.parts[i];
    if (has_set_screws(part) ||
        (part.kind <= PartKind::base_fixing && !records[i].readings.empty()))
      places.push_back(static_cast<std::int32_t>(i));
  }
  std::sort(places.begin(), places.end(), [&](std::int32_t a, std::int32_t b) {
    const Part& one = portfolio.parts[static_cast<std::size_t>(a)];
    const Part& other = portfolio.parts[static_cast<std::size_t>(b)];
    return std::tie(one.site, one.id) < std::tie(other.site, other.id);
  });
  return places;
}

/// Zones and runs of a site numbered in the order of their names.
void number_places(const Portfolio& portfolio, ScrewSite& site, std::vector<Fitting>& fittings) {
  std::map<std::string, std::int32_t> zones;
  std::map<std::string, std::int32_t> runs;
  const auto each = [&](const auto& use) {
    for (std::int32_t i = site.first_fitting; i < site.first_fitting + site.fittings; ++i) {
      Fitting& fitting = fittings[static_cast<std::size_t>(i)];
      use(fitting, portfolio.parts[static_cast<std::size_t>(fitting.place)]);
    }
  };
  each([&](const Fitting&, const Part& part) {
    zones.emplace(part.zone, 0);
    runs.emplace(part.run, 0);
  });
  for (auto* names : {&zones, &runs}) {
    std::int32_t next = 0;
    for (auto& [name, number] : *names) number = next++;
  }
  for (const auto& [name, number] : zones) site.zones.push_back(name);
  for (const auto& [name, number] : runs) site.runs.push_back(name);
  site.zone_measured.assign(site.zones.size(), 0);
  each([&](Fitting& fitting, const Part& part) {
    fitting.zone = zones.at(part.zone);
    fitting.run = runs.at(part.run);
    for (const Screw& screw : fitting.screws)
      for (const Tightening& tightening : screw.tightenings)
        for (const FoundTorque& reading : tightening.readings)
          if (reading.found == TorqueFound::moved)
            site.zone_measured[static_cast<std::size_t>(fitting.zone)] = 1;
  });
}

void find_usual_settings(ScrewData& data) {
  data.usual_settings.clear();
  std::map<double, int> clicks;
  for (const Fitting& fitting : data.fittings)
    for (const Screw& screw : fitting.screws)
      for (const Tightening& tightening : screw.tightenings)
        for (const FoundTorque& reading : tightening.readings)
          if (reading.found == TorqueFound::clicked) ++clicks[reading.torque_nm];
  std::vector<std::pair<double, int>> common(clicks.begin(), clicks.end());
  std::stable_sort(common.begin(), common.end(),
                   [](const auto& a, const auto& b) { return a.second > b.second; });
  common.resize(std::min(common.size(), screw_constant::usual_settings));
  double sum = 0;
  for (const auto& [torque_nm, count] : common) sum += count;
  for (const auto& [torque_nm, count] : common)
    data.usual_settings.push_back({torque_nm, count / sum});
}

/// What is told by all sites together.
void finish(ScrewData& data) {
  find_usual_settings(data);
  std::sort(data.left_out.begin(), data.left_out.end(), [](const LeftOut& a, const LeftOut& b) {
    return std::tie(a.part, a.reading, a.reason) < std::tie(b.part, b.reading, b.reason);
  });
}

}  // namespace

bool has_set_screws(const Part& part) {
  if (part.kind == PartKind::fitting) return true;
  return part.kind <= PartKind::base_fixing &&
         (positive(part.torque_target_nm) || positive(part.torque_minimum_nm));
}

ScrewData gather_tightenings(const Portfolio& portfolio) {
  return gather_tightenings(portfolio, InstalledDates(portfolio));
}

ScrewData gather_tightenings(const Portfolio& portfolio, const InstalledDates& installed) {
  ScrewData data;
  data.as_of = portfolio.as_of;
  const auto records = records_by_part(portfolio);
  for (const std::int32_t place : places_with_screws(portfolio, records)) {
    const Part& part = portfolio.parts[static_cast<std::size_t>(place)];
    if (data.sites.empty() || data.sites.back().name != part.site) {
      ScrewSite& site = data.sites.emplace_back();
      site.name = part.site;
      site.first_fitting = static_cast<std::int32_t>(data.fittings.size());
    }
    ++data.sites.back().fittings;
    data.fittings.push_back(
        FittingBuilder(portfolio, installed, records[static_cast<std::size_t>(place)], place, data)
            .build());
  }
  for (ScrewSite& site : data.sites) number_places(portfolio, site, data.fittings);
  finish(data);
  return data;
}

ScrewData joined(std::vector<ScrewData> pieces) {
  std::ranges::sort(pieces, {}, [](const ScrewData& piece) {
    return piece.sites.empty() ? std::string() : piece.sites.front().name;
  });
  ScrewData all;
  std::size_t fittings = 0;
  for (const ScrewData& piece : pieces) fittings += piece.fittings.size();
  all.fittings.reserve(fittings);
  for (ScrewData& piece : pieces) {
    all.as_of = piece.as_of;
    for (ScrewSite& site : piece.sites) {
      site.first_fitting += static_cast<std::int32_t>(all.fittings.size());
      all.sites.push_back(std::move(site));
    }
    std::ranges::move(piece.fittings, std::back_inserter(all.fittings));
    std::ranges::move(piece.left_out, std::back_inserter(all.left_out));
    all.readings += piece.readings;
    all.without_setting += piece.without_setting;
    piece = {};
  }
  finish(all);
  return all;
}

}  // namespace kneerail::forecast
