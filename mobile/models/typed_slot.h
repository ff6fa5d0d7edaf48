#pragma once

// A slot for a number that is typed digit by digit and is then a record of its own: digits while it
// is typed, then its value on the way to the disk, kept, or not kept.

#include <QString>
#include <cstdint>
#include <optional>

struct TypedSlot {
  enum class State { empty, on_its_way, kept, not_kept };
  /// What its record can hold, and what a digit is worth.
  struct Numbers {
    std::int64_t step = 1;
    std::int64_t most = 0;
  };

  std::int64_t value = 0;  ///< in the unit of its record
  State state = State::empty;
  QString digits;  ///< still typed

  [[nodiscard]] bool typing() const { return !digits.isEmpty(); }
  /// A value stands there, and no other is typed over it.
  [[nodiscard]] bool filled() const { return state != State::empty && !typing(); }
  /// Nothing is on its way from here, so another number may be typed.
  [[nodiscard]] bool takes() const { return state == State::empty || state == State::kept; }
  /// False: the number would be none that a record holds.
  bool add(int digit, const Numbers& numbers);
  /// What is typed now, in the unit of its record.
  [[nodiscard]] std::int64_t typed(std::int64_t step) const { return digits.toLongLong() * step; }
  /// The digits are done with; none: they were no number over 0.
  std::optional<std::int64_t> take(std::int64_t step);
  void send(std::int64_t number);
  /// What became of that number; false: the slot has another by now.
  bool answered(std::int64_t number, bool on_disk);
};
