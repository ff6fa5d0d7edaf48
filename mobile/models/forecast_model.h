#pragma once

// The Forecast room: one part's readings, path and limits, with the reason in words. It reads; what
// it shows is reckoned by the worker. A part that got new readings is drawn hollow until it is
// reckoned again.

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <memory>
#include <vector>

#include "mobile/models/forecast_worker.h"
#include "mobile/models/run_picture.h"
#include "mobile/models/time_left_model.h"
#include "mobile/models/trend_picture.h"
#include "schema/store/register_things.h"

class ForecastModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  Q_PROPERTY(RunPicture* run READ run CONSTANT)
  Q_PROPERTY(TimeLeftModel* timeLeft READ time_left CONSTANT)
  Q_PROPERTY(QString siteName READ site_name NOTIFY shown)
  Q_PROPERTY(QString runName READ run_name NOTIFY shown)
  Q_PROPERTY(QString postLabel READ post_label NOTIFY shown)
  Q_PROPERTY(QString partName READ part_name NOTIFY shown)
  Q_PROPERTY(QString reckonedOn READ reckoned_on NOTIFY shown)  ///< "14 May 2031"; empty before
  Q_PROPERTY(QString headline READ headline NOTIFY shown)
  Q_PROPERTY(QString reason READ reason NOTIFY shown)
  Q_PROPERTY(
      QString message READ message NOTIFY shown)  ///< in place of a drawing: why there is none
  Q_PROPERTY(bool drawn READ drawn NOTIFY shown)  ///< there is a trend to draw
  Q_PROPERTY(bool stale READ stale NOTIFY shown)
  Q_PROPERTY(bool busy READ busy NOTIFY busyChanged)
  Q_PROPERTY(QString worstWords READ worst_words NOTIFY shown)  ///< "2 of 1,930"; empty: none

 public:
  /// The register is opened for reading, the worker reckons; both outlive this.
  ForecastModel(kneerail::Register& reader, ForecastWorker& worker, QObject* parent = nullptr);

  [[nodiscard]] RunPicture* run() { return &run_; }
  [[nodiscard]] TimeLeftModel* time_left() { return &time_left_; }
  [[nodiscard]] QString site_name() const;
  [[nodiscard]] QString run_name() const;
  [[nodiscard]] QString post_label() const;
  [[nodiscard]] QString part_name() const;
  [[nodiscard]] QString reckoned_on() const;
  [[nodiscard]] QString headline() const { return headline_; }
  [[nodiscard]] QString reason() const { return reason_; }
  [[nodiscard]] QString message() const { return message_; }
  [[nodiscard]] bool drawn() const { return drawn_; }
  [[nodiscard]] bool stale() const { return stale_; }
  [[nodiscard]] bool busy() const { return worker_.busy(); }
  [[nodiscard]] QString worst_words() const;
  [[nodiscard]] const kneerail::TrendPicture& trend() const { return trend_; }

  /// The visit that goes on: the grades given in it stand on the drawing.
  void walked_in(const kneerail::Uuid& visit) { visit_ = visit; }
  /// The part of another room: its run and itself. The run is read again.
  void show(const kneerail::Uuid& run, const kneerail::Uuid& component);
  /// Something was entered about this part: hollow until it is reckoned again.
  void entered(const kneerail::Uuid& component);

  /// A part of the run that is shown, by its place.
  Q_INVOKABLE void choosePart(int part);
  /// The part at the same place of the next post (1) or the one before (-1).
  Q_INVOKABLE void nextPost(int step);
  /// The next in the register by what is likely to stop holding first; begins with the worst.
  Q_INVOKABLE void nextWorst();
  /// Asks for the Walk room at this part.
  Q_INVOKABLE void walkHere();

 signals:
  void shown();
  void busyChanged();
  void trendChanged();
  void walkWanted(kneerail::Uuid run, kneerail::Uuid component);

 private:
  [[nodiscard]] const kneerail::SheetPart* part() const;
  void show_run(const kneerail::Uuid& run);
  void show_part();
  void ask_again();
  void take(const kneerail::PartTold& told);
  void draw(const kneerail::forecast::PartStory& story);
  void say(const QString& message);
  void on_reckoned();
  void fill_time_left(const kneerail::PartTold& told);
  [[nodiscard]] const std::vector<kneerail::Uuid>& worst_first() const;
  [[nodiscard]] QString gauge_name(const std::string& text) const;

  kneerail::Register& reader_;
  ForecastWorker& worker_;
  kneerail::Uuid visit_;  ///< zero: none
  RunPicture run_;
  TimeLeftModel time_left_;
  kneerail::Things instruments_;
  kneerail::TrendPicture trend_;
  QString headline_;
  QString reason_;
  QString message_;
  bool drawn_ = false;
  bool stale_ = false;
  std::size_t worst_ = 0;  ///< place after the one shown by nextWorst()
};
