#pragma once

// The screens' link to the register: one writer with its thread, one reader for the screens. What
// is asked is done in the order it was asked; the answer comes back on the screens' thread.

#include <QObject>
#include <atomic>
#include <functional>
#include <future>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "schema/journal/writer.h"
#include "schema/store/register.h"
#include "schema/store/run_store.h"
#include "schema/store/settings.h"

class StoreLink : public QObject {
  Q_OBJECT

 public:
  using Told = std::function<void(const kneerail::Result<>&)>;
  /// Told the SHA-256 of each, in order.
  using Kept = std::function<void(const kneerail::Result<std::vector<kneerail::Digest>>&)>;
  /// When file, journal and second copy are checked: before anything is read, or behind what is
  /// shown already.
  enum class Checks { before, behind };
  /// Of the register's pages in memory, for each of the few connections the screens have: writer,
  /// reader, and those of the reading threads. More makes nothing on them quicker that is felt.
  static constexpr int cache_kib = 4 * 1024;
  using Opened = kneerail::Result<std::unique_ptr<kneerail::Register>>;
  struct Ahead {
    Opened opened;
    std::optional<kneerail::RunSheet> walked_last = std::nullopt;
  };

  /// Opens the register to read on a thread of its own, and reads what every room needs once, so
  /// that it is in memory, and the run that was walked last: for open(), with the same options.
  /// Makes the machine's random source ready before it.
  static std::future<Ahead> read_ahead(const kneerail::Register::Options& options);

  /// Opens the register for writing where it can be, else for reading only: then every entry is
  /// refused with the reason. With the checks behind, they begin with check() or with the first
  /// that is asked, which waits for them; where drafts wait to be closed they come before all the
  /// same. Errors: those of Register::open, when it cannot even be read.
  static kneerail::Result<std::unique_ptr<StoreLink>> open(
      const kneerail::Register::Options& options, Checks checks = Checks::before,
      std::future<Ahead> ahead = {});

  /// Leaves off checks that are under way.
  ~StoreLink() override;

  [[nodiscard]] bool writable() const { return writer_ != nullptr || unchecked(); }
  /// Why not, as a sentence; empty when it is.
  [[nodiscard]] const std::string& why_read_only() const { return why_read_only_; }
  /// Begins the checks behind, where they have not begun: best when the first frame is drawn, for
  /// they take a core and the disk.
  void check();
  /// What was found and mended on opening.
  [[nodiscard]] const kneerail::Opening& opening() const { return opening_; }
  /// Only reads, only on the screens' thread.
  [[nodiscard]] kneerail::Register& reader() { return *reader_; }
  /// The run as reading ahead found it, where it did. Only the first who asks is answered: what is
  /// entered later is not in it.
  std::optional<kneerail::RunSheet> take_walked_last() {
    return std::exchange(walked_last_, std::nullopt);
  }

  void save(std::vector<kneerail::Entry> entries, std::optional<kneerail::Draft> ended, Told told);
  void save_draft(kneerail::Draft draft, Told told);
  void drop_draft(kneerail::Draft draft, Told told);
  /// Closes that person's part of a visit; a picture of the signature, PNG, is kept beside the
  /// records before it where there is one.
  void seal(kneerail::VisitSeal seal, std::vector<std::uint8_t> signature, Told told);
  /// The file of an object of that SHA-256, whether it is here or not.
  [[nodiscard]] std::string object_place(const kneerail::Digest& sha) const;
  /// Bytes beside the records; what names them is asked after they are kept.
  void keep_objects(std::vector<kneerail::cbor::Bytes> objects, Kept told);
  /// What this device remembers for its screens; behind the entries.
  void keep_settings(kneerail::Settings settings, Told told);
  /// Waits until everything that was asked is on the disk. The answers come after it, as always.
  void settle();
  /// The same before everything ends. Where nothing waits for the checks but what this device
  /// remembers for its screens, they are left off, and that with them.
  void close();

 signals:
  /// The checks behind are done. Not as read: something was mended, or nothing can be written; what
  /// is shown has to be read anew from a link that is opened again.
  void checked(bool as_read);

 private:
  struct Asked {
    std::function<kneerail::Result<>(kneerail::Register&)> work;
    Told told;
    bool may_be_left = false;  ///< not worth waiting for when everything ends
  };

  StoreLink() = default;
  kneerail::Result<> read(Opened opened);
  /// Whether what is read may be shown before the checks.
  bool may_be_shown();
  [[nodiscard]] bool unchecked() const { return to_check_.has_value() || checking_.valid(); }
  void end_checks();
  void take_writer(Opened opened);
  void ask(Asked asked);

  std::unique_ptr<kneerail::Register> reader_;
  std::unique_ptr<kneerail::Writer> writer_;
  std::optional<kneerail::Register::Options> to_check_;  ///< behind, not yet begun
  std::shared_ptr<std::atomic<bool>> stop_ = std::make_shared<std::atomic<bool>>(false);
  std::future<Opened> checking_;
  std::vector<Asked> waiting_;  ///< for the checks
  std::optional<kneerail::RunSheet> walked_last_;
  std::filesystem::path folder_;
  kneerail::Opening opening_;
  std::string why_read_only_;
};
