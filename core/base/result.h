#pragma once

// Errors as values. What the outside world can do to us (files, typed text, received bytes) comes
// back as an Error with a sentence for a person; our own bugs stop the program through check(),
// because every write is already on disk.

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>

namespace kneerail {

enum class Fault {
  invalid_input,
  not_found,
  conflict,
  corrupt,
  io,
  network,
  not_estimable,
  cancelled
};

struct Error {
  Fault fault = Fault::invalid_input;
  std::string
      message;  ///< a sentence for the person: what, where, what became of the data, what to do
};

struct Done {};

/// A value or an Error, with the member names of std::expected so that it can become one.
template <class T = Done>
class [[nodiscard]] Result {
 public:
  Result(T value) : state_(std::move(value)) {}      // NOLINT: conversion is the point
  Result(Error error) : state_(std::move(error)) {}  // NOLINT

  [[nodiscard]] bool has_value() const { return state_.index() == 0; }
  explicit operator bool() const { return has_value(); }

  T& operator*() & { return std::get<0>(state_); }
  const T& operator*() const& { return std::get<0>(state_); }
  T&& operator*() && { return std::get<0>(std::move(state_)); }
  T* operator->() { return &std::get<0>(state_); }
  const T* operator->() const { return &std::get<0>(state_); }

  [[nodiscard]] const Error& error() const& { return std::get<1>(state_); }
  [[nodiscard]] Error&& error() && { return std::get<1>(std::move(state_)); }

 private:
  std::variant<T, Error> state_;
};

inline Error fail(Fault fault, std::string message) {
  return Error{fault, std::move(message)};
}

/// The same error, with what the caller was doing put in front: "Import: " + message.
inline Error fail(const Error& error, std::string_view doing = {}) {
  return Error{error.fault, std::string(doing) + error.message};
}

/// Stops the program on a bug of our own, in release builds too. Never on data from outside.
void check(bool condition, const char* what);

}  // namespace kneerail
