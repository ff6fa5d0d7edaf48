// The numbers of a gauge that types: to the slot that waits, else they wait for a touch. Those that
// wait are remembered by this device: a power cut loses none.

#include <QPointer>
#include <string>
#include <utility>

#include "mobile/models/walk_model.h"
#include "schema/store/settings.h"

namespace {

constexpr std::int64_t nobodys_ms = 2000;  // after the fifth a number belongs to no part yet

constexpr const char* waiting_name = "walk_waiting";
constexpr int tenths = 10;

std::string waiting_at(std::int64_t place) {
  return std::string(waiting_name) + "_" + std::to_string(place);
}

}  // namespace

void WalkModel::listen_to_check() {
  connect(&check_, &GaugeCheck::changed, this, &WalkModel::undoChanged);
  connect(&check_, &GaugeCheck::changed, this, &WalkModel::messageChanged);
  connect(&check_, &GaugeCheck::readingKept, this, [this] {
    emit felt(QStringLiteral("kept"));
    emit titleChanged();
  });
  connect(&check_, &GaugeCheck::notInOrder, this, [this] {
    say(tr("That is kept as not in order. Zero it again, or take another gauge."));
  });
}

void WalkModel::listen_to_wall() {
  connect(&wall_, &WallCheck::changed, this, &WalkModel::undoChanged);
  connect(&wall_, &WallCheck::changed, this, &WalkModel::messageChanged);
  connect(&wall_, &WallCheck::readingKept, this,
          [this](bool far) { emit felt(far ? QStringLiteral("far") : QStringLiteral("kept")); });
  connect(&wall_, &WallCheck::full, this, [this] {
    emit felt(QStringLiteral("partDone"));
    nextPart();
  });
}

void WalkModel::typed(const QString& number) {
  if (!writable()) return say(tr("Read only: %1 is not kept.").arg(number));
  if (shown_ && check_.typed(number)) return;
  if (shown_ && pad_ == WallPad && wall_.typed(number)) return;
  if (!CoatingSet::tenth_um_of(number))
    return say(tr("%1 µm cannot be kept: a coating is 0 to 2,000 µm.").arg(number));
  const bool nobodys = check_.what() != GaugeCheck::Nothing ||
                       (was_full_ && pen_.monotonic_ms() - full_at_ms_ < nobodys_ms);
  if (!nobodys && shown_ && pad_ == CoatingPad && coating_.typed(number)) return;
  waiting_.append(number);
  keep_waiting();
  say(tr("%1 µm came while no slot waited. It waits at the top until it is touched.").arg(number));
  emit titleChanged();
}

void WalkModel::takeWaiting() {
  if (waiting_.isEmpty()) return;
  if (!part_chosen()) return say(tr("First touch the part it was read on."));
  openPad(CoatingPad);
  if (!coating_.typed(waiting_.front())) return;
  waiting_.removeFirst();
  keep_waiting();
  if (waiting_.isEmpty()) say({});
  emit titleChanged();
}

void WalkModel::throwAwayWaiting() {
  if (waiting_.isEmpty()) return;
  const QString number = waiting_.front();
  const QString words = tr("%1 µm").arg(number);
  const auto put_back = [this, number] {
    waiting_.prepend(number);
    keep_waiting();
    emit titleChanged();
  };
  throw_away(number);
  pen_.remember({&waiting_, words, {}, put_back, [this, number] { throw_away(number); }});
  emit thrownAway(words);
}

void WalkModel::throw_away(const QString& number) {
  waiting_.removeOne(number);
  keep_waiting();
  if (waiting_.isEmpty()) say({});
  emit titleChanged();
}

void WalkModel::keep_waiting() {
  kneerail::Settings settings{{waiting_name, waiting_.size()}};
  std::int64_t place = 0;
  for (const QString& number : waiting_)
    settings.emplace_back(waiting_at(place++), CoatingSet::tenth_um_of(number).value_or(0));
  store_.keep_settings(std::move(settings),
                       [self = QPointer<WalkModel>(this)](const kneerail::Result<>& kept) {
                         if (self && !kept)
                           self->say(tr("Not kept: %1 The number waits here.")
                                         .arg(QString::fromStdString(kept.error().message)));
                       });
}

void WalkModel::find_waiting() {
  const auto read = [this](const std::string& name) {
    const auto found = kneerail::setting(store_.reader().tables(), name);
    return found ? found->value_or(0) : 0;
  };
  const std::int64_t count = read(waiting_name);
  for (std::int64_t place = 0; place < count; ++place) {
    const std::int64_t tenth_um = read(waiting_at(place));
    waiting_.append(
        QString::number(static_cast<double>(tenth_um) / tenths, 'f', tenth_um % tenths ? 1 : 0));
  }
}
