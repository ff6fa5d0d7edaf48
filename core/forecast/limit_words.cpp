#include "core/forecast/limit_words.h"

#include <cmath>

#include "core/base/text.h"
#include "core/forecast/preparation.h"
#include "core/forecast/words.h"

namespace kneerail::forecast {

namespace {

const VisitMean& mean_at(const ReportContext& context, const Segment& segment, int i) {
  return context.model->data.means[static_cast<std::size_t>(segment.first + i)];
}

/// The first day on which the segment read bare metal, where its latest visit does.
std::optional<Date> gone_since(const ReportContext& context, const Segment& segment) {
  if (segment.count == 0 || !mean_at(context, segment, segment.count - 1).gone) return std::nullopt;
  for (int i = 0; i < segment.count; ++i)
    if (mean_at(context, segment, i).gone) return mean_at(context, segment, i).day;
  return std::nullopt;
}

std::string founded_on(const ReportContext& context, const PartView& view) {
  if (!view.posterior) return "no reading and no installation date";
  if (const auto day = gone_since(context, *view.segment))
    return concat({"coating gone by ", to_text(*day)});
  switch (view.segment->count) {
    case 0:
      return "not measured; judged by its zone and age";
    case 1:
      return view.segment->start_kind == StartKind::unknown
                 ? "one reading, age unknown; rate from its zone"
                 : "one reading; rate from its zone";
    case 2:
      return "two readings; rate partly from its zone";
    default:
      return "own readings and zone";
  }
}

/// Lost its weight in the fit; or reads bare metal on a day when, the other readings say, there was
/// almost surely zinc.
bool does_not_fit(const PartView& view, const VisitMean& mean, bool on_rust) {
  if (on_rust) return false;
  if (!mean.gone) return mean.weight < constant::odd_reading_weight;
  return view.posterior && chance_at(*view.posterior, view.clock, constant::gone_below_um,
                                     mean.effective_age) < constant::odd_gone_chance;
}

bool owner_set_gone(const Portfolio& portfolio, const std::string& site) {
  for (const SiteLimits& limits : portfolio.limits)
    if (limits.site == site) return set_limit_um(limits.zinc_gone_um).has_value();
  return false;
}

std::string reached(const PartView& view, const LimitForecast& row, double limit_um) {
  if (row.limit == Limit::coating_first_maintenance)
    return concat({"First maintenance (", fixed(limit_um, 0), " um)"});
  if (limit_um > 0) return concat({"Coating down to ", fixed(limit_um, 0), " um"});
  return view.part->painted ? "Bare steel under the paint" : "Bare steel";
}

}  // namespace

std::string words_of(const ReportContext& context, const PartView& view, Limit limit) {
  if (limit == Limit::coating_first_maintenance && !view.part->first_maintenance_um)
    return "no first-maintenance limit is set";
  if (limit == Limit::coating_first_maintenance && !set_limit_um(view.part->first_maintenance_um))
    return "the first-maintenance limit that is set is no thickness";
  std::string words = founded_on(context, view);
  if (!view.posterior) return words;
  const CoatingSite& site = context.model->data.sites[static_cast<std::size_t>(view.own->site)];
  const int sessions = site.zone_sessions[static_cast<std::size_t>(view.own->zone)];
  if (sessions <= 1)
    words += concat({"; this zone has ", sessions == 1 ? "one visit" : "no visit",
                     "; its rate leans on the class"});
  if (view.part->painted) words += "; reckoned as bare zinc, on the safe side";
  if (limit == Limit::coating_exhausted && !owner_set_gone(*context.portfolio, view.part->site))
    words += "; no owner's limit; reckoned to bare steel";
  return words;
}

std::vector<std::string> flags_of(const ReportContext& context, const PartView& view) {
  std::vector<std::string> flags;
  const Segment& segment = *view.segment;
  const CoatingData& data = context.model->data;
  if (const auto words = put_up_later_words(*view.part, context.portfolio->as_of))
    flags.push_back(*words);
  if (segment.after_swap && segment.count > 0)
    flags.push_back(concat({"coating rose between ",
                            to_text(data.means[static_cast<std::size_t>(segment.first - 1)].day),
                            " and ", to_text(mean_at(context, segment, 0).day),
                            ": replaced without a record? confirm"}));
  for (int i = 0; i < segment.count; ++i) {
    const VisitMean& mean = mean_at(context, segment, i);
    const bool on_rust = !mean.gone && read_on_rust(segment, segment.first + i);
    if (on_rust)
      flags.push_back(
          concat({"the reading of ", to_text(mean.day), " (", fixed(mean.thickness_um, 0),
                  " um) was likely taken on rust: counted as under ",
                  fixed(constant::rust_below_um, 0), " um of zinc, not as a number"}));
    if (does_not_fit(view, mean, on_rust))
      flags.push_back(concat({"the reading of ", to_text(mean.day), " (",
                              fixed(mean.thickness_um, 0), " um) does not fit; check"}));
    const SessionReport& session = (*context.sessions)[static_cast<std::size_t>(mean.session)];
    if (!mean.gone && !on_rust && !session.words.empty()) flags.push_back(session.words);
    if (!session.check_words.empty()) flags.push_back(session.check_words);
  }
  return flags;
}

std::string sentence_of(const PartView& view, const LimitForecast& row, double limit_um) {
  std::string sentence = concat({reached(view, row, limit_um), " ", life_with_band(row.years),
                                 ". Loses about ", two_digits(row.rate_um_per_year[1]),
                                 " um a year (80 %: ", two_digits(row.rate_um_per_year[0]), " to ",
                                 two_digits(row.rate_um_per_year[2]), "), "});
  const std::string usual = two_digits(std::exp(view.own->ln_prior));
  if (view.part->category && (view.part->prior_is_category || !taken_rate(*view.part)))
    sentence += concat({"class ", to_text(*view.part->category), " says ", usual, ". "});
  else
    sentence += concat({"its zone is said to lose ", usual, ". "});
  sentence += own_share_words(row.readings_used, row.own_share);
  for (const std::string& flag : row.flags) sentence += concat({" Note: ", flag, "."});
  if (std::abs(row.session_correction_um) >= 0.5)
    sentence += concat({" The last reading was corrected by ", fixed(row.session_correction_um, 1),
                        " um for its gauge."});
  if (view.segment->after_swap) sentence += " Age counted from the middle of that gap.";
  return sentence;
}

}  // namespace kneerail::forecast
