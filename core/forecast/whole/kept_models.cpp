#include "core/forecast/whole/kept_models.h"

#include <memory>

#include "core/forecast/whole/kept_bounds.h"
#include "core/forecast/whole/kept_fit.h"

namespace kneerail::forecast {

namespace {

Error not_readable() {
  return fail(Fault::corrupt, "these bytes are not what this program keeps");
}

template <class T>
Result<T> read(std::string_view bytes) {
  ByteSource source(bytes);
  T value;
  source(value);
  if (!source.ok() || !source.at_end()) return not_readable();
  return value;
}

}  // namespace

template <class Archive, OrConst<ForecastHead> T>
void fields(Archive& archive, T& head) {
  archive(head.sessions, head.track_record, head.notes, head.screw_notes, head.grade_notes,
          head.inspectors, head.largest_move);
}

template <class Archive, OrConst<ForecastRows> T>
void fields(Archive& archive, T& rows) {
  archive(rows.limits, rows.left_out);
}

std::string bytes_of(const ForecastHead& head) {
  return archived(head);
}
Result<ForecastHead> head_from_bytes(std::string_view bytes) {
  return read<ForecastHead>(bytes);
}
std::string bytes_of(const ForecastRows& rows) {
  return archived(rows);
}
Result<ForecastRows> rows_from_bytes(std::string_view bytes) {
  return read<ForecastRows>(bytes);
}

std::string bytes_of(const PortfolioFit& fit) {
  std::string bytes;
  ByteSink sink(bytes);
  sink(fit.coating.model.has_value(), fit.coating.why_none, fit.sessions);
  if (const auto& model = fit.coating.model)
    sink(model->data.path.exponent(), model->data, model->effects, model->back_dated);
  const GradeModel& grades = fit.others.grades;
  const ScrewModel& screws = fit.others.screws;
  sink(grades.installed, grades.data, grades.layout, grades.settings, grades.fit,
       grades.pooled_errors, grades.errors, grades.counts);
  sink(screws.data, screws.layout, screws.settings, screws.fit);
  return bytes;
}

Result<PortfolioFit> fit_from_bytes(std::string_view bytes) {
  ByteSource source(bytes);
  PortfolioFit fit;
  bool coating = false;
  source(coating, fit.coating.why_none, fit.sessions);
  if (coating) {
    double exponent = 1;
    CoatingModel& model = fit.coating.model.emplace();
    source(exponent, model.data, model.effects, model.back_dated);
    if (!(exponent > 0 && exponent <= 1)) return not_readable();
    model.data.path = corrosion::AttackPath(exponent);
  }
  GradeModel& grades = fit.others.grades;
  ScrewModel& screws = fit.others.screws;
  source(grades.installed, grades.data, grades.layout, grades.settings, grades.fit,
         grades.pooled_errors, grades.errors, grades.counts);
  source(screws.data, screws.layout, screws.settings, screws.fit);
  if (!source.ok() || !source.at_end() || !fits_together(fit)) return not_readable();
  screws.installed = grades.installed;
  grades.table.emplace(relative_rates(grades.fit.own));
  screws.likelihood = std::make_unique<ScrewLikelihood>(screws.data);
  screws.likelihood->begin_pass(screws.fit.own);
  return fit;
}

}  // namespace kneerail::forecast
