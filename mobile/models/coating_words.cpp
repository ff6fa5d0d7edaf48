// The words of the Coating pad: what is said of the set, and what is far from last time.

#include <QLocale>
#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/records/coating_reading.h"
#include "mobile/models/coating_set.h"

namespace {

constexpr double tenths = 10;
constexpr double far_under = 0.4;  // of last visit's mean
constexpr double far_over = 2.5;

double mean_um(const std::vector<std::int64_t>& values) {
  const auto sum = std::accumulate(values.begin(), values.end(), std::int64_t{0});
  return static_cast<double>(sum) / tenths / static_cast<double>(values.size());
}

QString one_decimal(double um) {
  return QLocale().toString(um, 'f', 1);
}

QList<qreal> in_um(const std::vector<std::int64_t>& values) {
  QList<qreal> list;
  for (const std::int64_t value : values) list << static_cast<double>(value) / tenths;
  return list;
}

}  // namespace

bool CoatingSet::is_far(std::int64_t tenth_um) const {
  const auto* gauge = pen_.instrument(kneerail::InstrumentKind::coating_gauge);
  if (gauge != nullptr && gauge->low && tenth_um < *gauge->low) return true;
  if (gauge != nullptr && gauge->high && tenth_um > *gauge->high) return true;
  if (last_.empty()) return false;
  const double um = mean_um(put_right({tenth_um}));
  return um < far_under * mean_um(last_) || um > far_over * mean_um(last_);
}

QString CoatingSet::text_of(std::int64_t tenth_um) const {
  const bool whole = tenth_um % 10 == 0 && resolution() % 10 == 0;
  return QLocale().toString(static_cast<double>(tenth_um) / tenths, 'f', whole ? 0 : 1);
}

QString CoatingSet::under_probe_words() const {
  if (under_probe_ != static_cast<int>(kneerail::UnderProbe::rust)) return {};
  return tr("A gauge on rust reads rust: counted as at most this");
}

QString CoatingSet::spot_words() const {
  if (!part_) return {};
  switch (part_->spots[static_cast<std::size_t>(spot_ - 1)]) {
    case kneerail::Face::seaward:
      return tr("seaward face");
    case kneerail::Face::landward:
      return tr("landward face");
    case kneerail::Face::up:
      return tr("upper face");
    case kneerail::Face::down:
      return tr("lower face");
    case kneerail::Face::inside:
      return tr("inside");
    default:
      return tr("all round");
  }
}

QString CoatingSet::summary() const {
  const auto now = values();
  if (now.empty())
    return last_.empty() ? QString() : tr("last visit %1 µm").arg(one_decimal(mean_um(last_)));
  const double mean = mean_um(put_right(now));
  if (last_.empty()) return tr("mean %1 µm · first reading here").arg(one_decimal(mean));
  const double change = mean - mean_um(last_);
  const QString size = one_decimal(std::abs(change));
  return tr("mean %1 µm · last visit %2 · %3")
      .arg(one_decimal(mean), one_decimal(mean_um(last_)),
           change < 0 ? tr("%1 less").arg(size) : tr("%1 more").arg(size));
}

QString CoatingSet::far_words() const {
  const bool far = std::any_of(slots_.begin(), slots_.end(), [this](const Slot& slot) {
    return slot.tenth_um && is_far(*slot.tenth_um);
  });
  return far ? tr("Far from last time. Read it once more?") : QString();
}

QList<qreal> CoatingSet::today() const {
  return in_um(put_right(values()));
}
QList<qreal> CoatingSet::last() const {
  return in_um(last_);
}

qreal CoatingSet::limit() const {
  const auto& limit = pen_.rules().first_maintenance_tenth_um;
  return limit ? static_cast<double>(*limit) / tenths : 0;
}

QString CoatingSet::strip_spoken() const {
  const auto now = values();
  return now.empty()
             ? tr("No reading yet")
             : tr("%n reading(s) today, %1", nullptr, static_cast<int>(now.size())).arg(summary());
}
