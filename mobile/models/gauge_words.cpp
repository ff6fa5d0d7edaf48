// What is said of the gauge in the hand: in its cell of the title block, in full, and in its check.

#include <QLocale>
#include <QStringList>
#include <cmath>

#include "mobile/models/forecast_words.h"
#include "mobile/models/gauge_check.h"
#include "mobile/models/walk_model.h"

using kneerail::KnownInstrument;

namespace {

constexpr std::int64_t minute_ms = 60'000;
constexpr std::int64_t hour_ms = 60 * minute_ms;
constexpr std::int64_t shown_hours = 14;  // older than this is another day

QString um_words(double tenth_um, int decimals) {
  return QLocale().toString(tenth_um / 10, 'f', decimals);
}

}  // namespace

std::int64_t GaugeCheck::good_for_hours() const {
  const auto rule = pen_.rules().check_good_for_hours.value_or(shown_hours);
  return gauge() == nullptr ? rule : gauge()->zero_good_for_hours.value_or(rule);
}

bool GaugeCheck::old() const {
  if (gauge() == nullptr) return false;
  if (!gauge()->zeroed) return true;
  const std::int64_t age = pen_.now().ms - gauge()->zeroed->ms;
  return age < 0 || age > good_for_hours() * hour_ms;
}

QString GaugeCheck::age_words(kneerail::Instant since) const {
  const std::int64_t age = pen_.now().ms - since.ms;
  if (age < 0 || age > good_for_hours() * hour_ms)
    return tr("on %1").arg(kneerail::whole_day(pen_.put_right().zone.day(since)));
  const auto hours = static_cast<int>(age / hour_ms);
  const auto minutes = static_cast<int>(age % hour_ms / minute_ms);
  return hours > 0 ? tr("%1 h %2 min ago").arg(hours).arg(minutes) : tr("%1 min ago").arg(minutes);
}

QString GaugeCheck::caption() const {
  if (gauge() == nullptr) return tr("No coating gauge");
  const QString serial = QString::fromStdString(gauge()->serial);
  return old() ? tr("Gauge %1").arg(serial) : tr("Gauge %1 · zeroed").arg(serial);
}

QString GaugeCheck::cell_words() const {
  if (gauge() == nullptr) return {};
  return old() ? tr("zero it soon") : age_words(*gauge()->zeroed);
}

QString GaugeCheck::title() const {
  if (gauge() == nullptr) return tr("No coating gauge");
  const QString name = tr("Gauge %1").arg(QString::fromStdString(gauge()->serial));
  if (what_ == Nothing) return name;
  return tr("%1 · %2").arg(name, what_ == Zero ? tr("zero") : tr("check foil"));
}

QString GaugeCheck::facts() const {
  if (gauge() == nullptr) return tr("No coating gauge is in service in this register.");
  const KnownInstrument& known = *gauge();
  QStringList said;
  if (!known.zeroed)
    said << tr("No zero of it is on record: zero it soon.");
  else if (old())
    said << tr("Last zeroed or checked %1. A zero is good for %n hour(s): zero it soon.", nullptr,
               static_cast<int>(good_for_hours()))
                .arg(age_words(*known.zeroed));
  else
    said << tr("Zeroed or checked %1. Good for %n hour(s).", nullptr,
               static_cast<int>(good_for_hours()))
                .arg(age_words(*known.zeroed));
  if (known.foil)
    said << tr("Check foil of %1 µm read %2, %3.")
                .arg(um_words(static_cast<double>(known.foil->reference), 1),
                     um_words(known.foil->mean_read, 1), age_words(known.foil->at));
  if (known.stated_error)
    said << tr("Stated error %1 µm.").arg(um_words(static_cast<double>(*known.stated_error), 1));
  return said.join(QLatin1Char(' '));
}

QString GaugeCheck::asks() const {
  if (what_ == Zero) return tr("Zero it on the bare plate. What does it read there?");
  if (what_ == Foil && !reference())
    return tr("What does the foil say? With its tenth: 50.0 is 5 0 0.");
  return what_ == Foil ? tr("Lay the foil on the bare plate and read it.") : QString();
}

QString GaugeCheck::foil_words() const {
  if (gauge() == nullptr || !gauge()->foil) return {};
  return tr("foil of %1 µm").arg(um_words(static_cast<double>(gauge()->foil->reference), 1));
}

QString GaugeCheck::summary() const {
  const auto off = off_tenth_um();
  if (!off) return {};
  const double should = static_cast<double>(reference().value_or(0));
  const QString mean = tr("mean %1 µm").arg(um_words(*off + should, 1));
  if (!gauge()->stated_error) return mean;
  const QString error = um_words(static_cast<double>(*gauge()->stated_error), 1);
  return judged() ? tr("%1 · within its %2").arg(mean, error)
                  : tr("%1 · more than its %2 off").arg(mean, error);
}

QString GaugeCheck::text(std::optional<std::int64_t> tenth_um, std::size_t slot) const {
  if (!tenth_um) return {};
  const bool whole = step(slot) % 10 == 0 && *tenth_um % 10 == 0;
  return um_words(static_cast<double>(*tenth_um), whole ? 0 : 1);
}

QVariant GaugeCheck::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const auto place = static_cast<std::size_t>(index.row());
  const Slot& slot = slots_[place];
  const bool typing = !slot.digits.isEmpty();
  const QString shown = typing            ? text(typed_value(slot, place), place)
                        : slot.under_zero ? QStringLiteral("-")
                                          : text(slot.tenth_um, place);
  const QString name =
      what_ == Foil && place == 0 ? tr("foil") : tr("read %1").arg(place + 1 - first_reading());
  switch (role) {
    case TextRole:
      return shown;
    case GhostRole:
      return name;
    case SpokenRole:
      return tr("%1, %2").arg(name, shown.isEmpty() ? tr("empty") : shown);
    case CurrentRole:
      return index.row() == current_;
    case KeptRole:
      return slot.kept && !typing;
    case NotKeptRole:
      return slot.not_kept;
    default:
      return {};
  }
}
