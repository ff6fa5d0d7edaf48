#pragma once

// The Prepare room: a day at one site. Its tasks are found once, on another thread; the time there
// is chooses as many of them as fit, at every step of a drag. What was chosen is kept on the disk
// and marked on the walk.

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <algorithm>
#include <filesystem>
#include <memory>
#include <optional>

#include "core/base/world.h"
#include "mobile/models/day_found.h"
#include "mobile/models/forecast_worker.h"
#include "mobile/models/prepare_rows.h"
#include "mobile/models/reading_thread.h"
#include "mobile/models/site_runs_model.h"
#include "mobile/models/store_link.h"

class PrepareModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  Q_PROPERTY(bool known READ known NOTIFY found)
  Q_PROPERTY(QString trouble READ trouble NOTIFY found)  ///< why the day could not be found
  Q_PROPERTY(QString siteName READ site_name NOTIFY found)
  Q_PROPERTY(QString dayWords READ day_words NOTIFY found)        ///< "Tue 13 May 2031"
  Q_PROPERTY(QString accessWords READ access_words NOTIFY found)  ///< empty: no hours are set
  Q_PROPERTY(QString takeWords READ take_words NOTIFY found)
  Q_PROPERTY(SiteRunsModel* runs READ runs CONSTANT)
  Q_PROPERTY(PrepareRows* lines READ lines CONSTANT)
  Q_PROPERTY(PrepareRows* instruments READ instruments CONSTANT)
  Q_PROPERTY(PrepareRows* carried READ carried CONSTANT)
  // By the time there is.
  Q_PROPERTY(int minutes READ minutes WRITE set_minutes NOTIFY chosenChanged)
  Q_PROPERTY(int mostMinutes READ most_minutes NOTIFY found)
  Q_PROPERTY(QString timeWords READ time_words NOTIFY chosenChanged)    ///< "5 h 30 min"
  Q_PROPERTY(QString postsWords READ posts_words NOTIFY chosenChanged)  ///< "92 of 214 in full"
  Q_PROPERTY(QString leftOutWords READ left_out_words NOTIFY chosenChanged)
  Q_PROPERTY(QString chosenWords READ chosen_words NOTIFY chosenChanged)  ///< "26 to measure"
  Q_PROPERTY(QString carryWords READ carry_words NOTIFY carryChanged)     ///< "59 MB"
  Q_PROPERTY(QString message READ message NOTIFY messageChanged)

 public:
  static constexpr int step_minutes = 5;

  /// All outlive this.
  PrepareModel(std::filesystem::path folder, StoreLink& store, ForecastWorker& worker,
               kneerail::Clock& clock, QObject* parent = nullptr);
  ~PrepareModel() override;

  [[nodiscard]] bool known() const { return known_; }
  [[nodiscard]] bool busy() const { return reading_.busy(); }
  [[nodiscard]] QString trouble() const { return trouble_; }
  [[nodiscard]] QString site_name() const;
  [[nodiscard]] QString day_words() const;
  [[nodiscard]] QString access_words() const;
  [[nodiscard]] QString take_words() const;
  [[nodiscard]] SiteRunsModel* runs() { return &runs_; }
  [[nodiscard]] PrepareRows* lines() { return &lines_; }
  [[nodiscard]] PrepareRows* instruments() { return &instruments_; }
  [[nodiscard]] PrepareRows* carried() { return &carried_; }
  [[nodiscard]] int minutes() const { return std::max(minutes_, 0); }
  void set_minutes(int minutes);
  [[nodiscard]] int most_minutes() const;
  [[nodiscard]] QString time_words() const;
  [[nodiscard]] QString posts_words() const;
  [[nodiscard]] QString left_out_words() const;
  [[nodiscard]] QString chosen_words() const;
  [[nodiscard]] QString carry_words() const;
  [[nodiscard]] QString message() const { return message_; }
  /// What is chosen in the time there is.
  [[nodiscard]] kneerail::PreparedDay chosen() const;
  [[nodiscard]] const kneerail::DayFound& day() const { return day_; }

  /// Another site, or the same as it stands now.
  void prepare(const kneerail::Uuid& site);
  Q_INVOKABLE void refresh();
  /// The part behind a line, or the first place of it.
  Q_INVOKABLE void openLine(int line);
  Q_INVOKABLE void openRun(int run);
  Q_INVOKABLE void carry(int site);
  /// Keeps what is chosen, and leads to the first of it once it is on the disk.
  Q_INVOKABLE void walkIt();
  Q_INVOKABLE void putAway();

 signals:
  void found();
  void chosenChanged();
  void carryChanged();
  void messageChanged();
  void kept(const kneerail::PreparedDay& day);
  void walkWanted(kneerail::Uuid run, kneerail::Uuid subject);

 private:
  void take(kneerail::DayFound found);
  [[nodiscard]] int usual() const;
  void choose();
  void mark_runs() const;
  void show_lines();
  void show_beside();
  void lead_to(std::size_t task);
  [[nodiscard]] PrepareRows::Row row_of(std::size_t line,
                                        const kneerail::forecast::LineDone& done) const;
  [[nodiscard]] std::int64_t carried_bytes() const;
  void say(const QString& message);

  std::filesystem::path folder_;
  StoreLink& store_;
  ForecastWorker& worker_;
  kneerail::Clock& clock_;
  kneerail::Uuid site_;
  kneerail::DayFound day_;
  int minutes_ = 0;       ///< under 0: as many as the day asks for, once it is found
  std::size_t done_ = 0;  ///< tasks that fit
  std::vector<kneerail::Uuid> carries_;
  bool known_ = false;
  QString trouble_;
  QString message_;
  SiteRunsModel runs_;
  PrepareRows lines_;
  PrepareRows instruments_;
  PrepareRows carried_;
  ReadingThread reading_;  ///< last: what it brings finds everything else there
};
