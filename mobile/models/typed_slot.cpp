#include "mobile/models/typed_slot.h"

bool TypedSlot::add(int digit, const Numbers& numbers) {
  const QString longer = digits + QChar('0' + digit);
  if (longer.toLongLong() * numbers.step > numbers.most) return false;
  digits = longer.size() > 1 && longer.startsWith('0') ? longer.mid(1) : longer;
  return true;
}

std::optional<std::int64_t> TypedSlot::take(std::int64_t step) {
  const std::int64_t number = typed(step);
  digits.clear();
  return number > 0 ? std::optional(number) : std::nullopt;
}

void TypedSlot::send(std::int64_t number) {
  value = number;
  state = State::on_its_way;
}

bool TypedSlot::answered(std::int64_t number, bool on_disk) {
  if (value != number) return false;
  state = on_disk ? State::kept : State::not_kept;
  return true;
}
