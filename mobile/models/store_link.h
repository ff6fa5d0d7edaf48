#pragma once

// The screens' link to the register: one writer with its thread, one reader for the screens. What
// is asked is done in the order it was asked; the answer comes back on the screens' thread.

#include <QObject>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "schema/journal/writer.h"
#include "schema/store/register.h"
#include "schema/store/settings.h"

class StoreLink : public QObject {
  Q_OBJECT

 public:
  using Told = std::function<void(const kneerail::Result<>&)>;

  /// Opens the register for writing where it can be, else for reading only: then every entry is
  /// refused with the reason. Errors: those of Register::open, when it cannot even be read.
  static kneerail::Result<std::unique_ptr<StoreLink>> open(
      const kneerail::Register::Options& options);

  [[nodiscard]] bool writable() const { return writer_ != nullptr; }
  /// Why not, as a sentence; empty when it is.
  [[nodiscard]] const std::string& why_read_only() const { return why_read_only_; }
  /// What was found and mended on opening.
  [[nodiscard]] const kneerail::Opening& opening() const { return opening_; }
  /// Only reads, only on the screens' thread.
  [[nodiscard]] kneerail::Register& reader() { return *reader_; }

  void save(std::vector<kneerail::Entry> entries, std::optional<kneerail::Draft> ended, Told told);
  void save_draft(kneerail::Draft draft, Told told);
  void drop_draft(kneerail::Draft draft, Told told);
  /// What this device remembers for its screens; behind the entries.
  void keep_settings(kneerail::Settings settings, Told told);
  /// Waits until everything that was asked is on the disk. The answers come after it, as always.
  void settle();

 private:
  StoreLink() = default;
  void ask(std::function<kneerail::Result<>(kneerail::Register&)> work, Told told);

  std::unique_ptr<kneerail::Register> reader_;
  std::unique_ptr<kneerail::Writer> writer_;
  kneerail::Opening opening_;
  std::string why_read_only_;
};
