// The words of the Bay pad.

#include <QLocale>
#include <algorithm>

#include "mobile/models/bay_check.h"

using kneerail::BayKind;
using kneerail::Felt;
using kneerail::WhatIsBelow;

namespace {

constexpr std::int64_t low_mm = 500;  // no rail that holds a person back is lower, or higher than
constexpr std::int64_t high_mm = 2'000;

QString kind_word(BayKind kind) {
  switch (kind) {
    case BayKind::rails:
      return BayCheck::tr("rails");
    case BayKind::mesh_infill:
      return BayCheck::tr("mesh infill");
    case BayKind::gate:
      return BayCheck::tr("gate");
    case BayKind::open_gap:
      return BayCheck::tr("open gap");
  }
  return {};
}

QString below_word(WhatIsBelow below) {
  switch (below) {
    case WhatIsBelow::ground:
      return BayCheck::tr("ground");
    case WhatIsBelow::water:
      return BayCheck::tr("water");
    case WhatIsBelow::road:
      return BayCheck::tr("a road");
    case WhatIsBelow::machinery:
      return BayCheck::tr("machinery");
  }
  return {};
}

QString felt_word(Felt felt) {
  switch (felt) {
    case Felt::firm:
      return BayCheck::tr("firm");
    case Felt::gives:
      return BayCheck::tr("gives");
    case Felt::moves:
      return BayCheck::tr("moves");
    case Felt::not_pushed:
      return BayCheck::tr("not pushed");
  }
  return {};
}

QString measure_word(int row) {
  switch (row) {
    case BayCheck::Height:
      return BayCheck::tr("height");
    case BayCheck::Gap:
      return BayCheck::tr("gap");
    default:
      return BayCheck::tr("gap below");
  }
}

QString millimetres(std::int64_t mm) {
  return BayCheck::tr("%1 mm").arg(QLocale().toString(static_cast<qlonglong>(mm)));
}

bool is_unlikely(int row, std::int64_t mm) {
  return row == BayCheck::Height && (mm < low_mm || mm > high_mm);
}

}  // namespace

QHash<int, QByteArray> BayCheck::roleNames() const {
  return {{NameRole, "name"},       {TextRole, "text"},       {LimitRole, "limit"},
          {GhostRole, "ghost"},     {CurrentRole, "current"}, {KeptRole, "kept"},
          {OutsideRole, "outside"}, {NotKeptRole, "notKept"}, {SpokenRole, "spoken"}};
}

QVariant BayCheck::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= measure_count) return {};
  const auto row = static_cast<std::size_t>(index.row());
  const TypedSlot& slot = slots_[row];
  const auto last = [&] {
    constexpr kneerail::Measured of_row[] = {kneerail::Measured::rail_height,
                                             kneerail::Measured::gap_between,
                                             kneerail::Measured::gap_below};
    const auto read = last_.measured_mm.find(of_row[row]);
    return read == last_.measured_mm.end() ? QString() : millimetres(read->second);
  };
  const auto text = [&] {
    if (slot.typing()) return slot.digits;
    return slot.filled() ? millimetres(slot.value) : QString();
  };
  switch (role) {
    case NameRole:
      return measure_word(index.row());
    case TextRole:
      return text();
    case LimitRole:
      return limit_text(row);
    case GhostRole:
      return last();
    case CurrentRole:
      return index.row() == measuring_;
    case KeptRole:
      return slot.filled() && slot.state == State::kept;
    case OutsideRole:
      return slot.filled() && (is_outside(row, slot.value) || is_unlikely(index.row(), slot.value));
    case NotKeptRole:
      return slot.state == State::not_kept;
    case SpokenRole:
      return tr("%1, %2, %3")
          .arg(measure_word(index.row()), text().isEmpty() ? tr("empty") : text(), limit_text(row));
    default:
      return {};
  }
}

QString BayCheck::title() const {
  if (!bay_) return {};
  QStringList words{name_, kind_word(bay_->kind)};
  if (rules_.drop_mm && *rules_.drop_mm > 0) {
    constexpr double mm_in_m = 1000;
    const QString drop =
        tr("drop %1 m")
            .arg(QLocale().toString(static_cast<double>(*rules_.drop_mm) / mm_in_m, 'f', 1));
    words << (rules_.below ? tr("%1 to %2").arg(drop, below_word(*rules_.below)) : drop);
  }
  return words.join(QStringLiteral(" · "));
}

QString BayCheck::rule_words() const {
  return rules_.name.empty() ? tr("no rule is chosen")
                             : tr("rule: %1").arg(QString::fromStdString(rules_.name));
}

QString BayCheck::limit_text(std::size_t row) const {
  const Limit limit = limit_of(row);
  if (!limit.mm) return tr("no limit set");
  const QString mm = QLocale().toString(static_cast<qlonglong>(*limit.mm));
  return limit.least ? tr("at least %1").arg(mm) : tr("at most %1").arg(mm);
}

QString BayCheck::outside_words(std::size_t row, std::int64_t mm) const {
  QString what = measure_word(static_cast<int>(row));
  what[0] = what[0].toUpper();
  return tr("%1 %2. The chosen rule says %3").arg(what, millimetres(mm), limit_text(row));
}

QString BayCheck::felt_words() const {
  return push_.state == State::empty ? QString() : felt_word(static_cast<Felt>(push_.value));
}

QString BayCheck::last_felt_words() const {
  return last_.felt ? felt_word(*last_.felt) : QString();
}

QString BayCheck::asks() const {
  if (!bay_) return {};
  if (given_ && given_->bay == bay_->id)
    return screwed_.empty() ? tr("Gives: loose, grade 4, once you go on")
                            : tr("Gives: tighten its screws, push again");
  for (std::size_t row = 0; row < slots_.size(); ++row)
    if (slots_[row].filled() && is_outside(row, slots_[row].value))
      return outside_words(row, slots_[row].value);
  for (int row = 0; row < measure_count; ++row) {
    const TypedSlot& slot = slots_[static_cast<std::size_t>(row)];
    if (slot.filled() && is_unlikely(row, slot.value)) return tr("Unlikely for a rail. Once more?");
  }
  return {};
}
