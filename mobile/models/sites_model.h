#pragma once

// The Sites room: one band for each site, the one that is due first on top, with its runs to one
// scale, when somebody is to come and why. Everything is read on another thread; a site's drawings
// are read when its band comes into view.

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <QFont>
#include <filesystem>
#include <memory>
#include <set>
#include <string>
#include <vector>

#include "core/base/world.h"
#include "mobile/models/forecast_worker.h"
#include "mobile/models/reading_thread.h"
#include "mobile/models/site_runs_model.h"
#include "mobile/models/site_words.h"

class SitesModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  Q_PROPERTY(bool known READ known NOTIFY changed)         ///< the register was read
  Q_PROPERTY(bool empty READ empty NOTIFY changed)         ///< and no site is in it
  Q_PROPERTY(QString trouble READ trouble NOTIFY changed)  ///< why it could not be read
  Q_PROPERTY(QString ownerName READ owner_name NOTIFY changed)
  Q_PROPERTY(QString countWords READ count_words NOTIFY changed)  ///< "4 sites · 620 posts"
  Q_PROPERTY(QString keptWords READ kept_words NOTIFY changed)    ///< "214 entries"

 public:
  enum Role {
    NameRole = Qt::UserRole,
    AirRole,
    CountsRole,
    LastVisitRole,
    SentenceRole,
    TagCaptionRole,
    TagDayRole,
    TagSoonRole,
    SpokenRole,
    RunsRole
  };

  /// The forecast's worker and the clock outlive this.
  SitesModel(std::filesystem::path folder, ForecastWorker& worker, kneerail::Clock& clock,
             QObject* parent = nullptr);
  ~SitesModel() override;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

  [[nodiscard]] bool known() const { return known_; }
  [[nodiscard]] bool empty() const { return known_ && bands_.empty(); }
  [[nodiscard]] QString trouble() const { return trouble_; }
  [[nodiscard]] QString owner_name() const { return owner_name_; }
  [[nodiscard]] QString count_words() const;
  [[nodiscard]] QString kept_words() const;
  /// Something was asked of the register and has not come back.
  [[nodiscard]] bool busy() const { return reading_.busy(); }

  /// Somebody wrote, or the room is entered: reads again, and has reckoned again what was entered
  /// since.
  Q_INVOKABLE void refresh();

  /// The band is in view: its drawings are wanted.
  Q_INVOKABLE void inView(int site);
  Q_INVOKABLE void openRun(int site, int run);
  Q_INVOKABLE void prepareDay(int site);
  Q_INVOKABLE void openSite(int site);
  /// One scale for all runs, px for a metre: the site with the longest row fits `width_px` in one
  /// row with `beside_px` beside each drawing and each name, but never under `least` nor over
  /// `most`, and the longest run always fits. `names` is the font of the runs' names.
  Q_INVOKABLE qreal pixelsPerMetre(qreal width_px, qreal beside_px, qreal least, qreal most,
                                   const QFont& names) const;
  /// The longest round length (1, 2 or 5 times a power of ten, m) that is no wider than that.
  Q_INVOKABLE static int roundMetres(qreal width_px, qreal pixels_per_metre);

 signals:
  void changed();
  void runOpened(kneerail::Uuid run);
  void dayWanted(kneerail::Uuid site);
  void siteOpened(kneerail::Uuid site);

 private:
  /// What one reading brings.
  struct Found {
    std::string owner;
    std::int64_t entries = 0;
    kneerail::TimeZone zone;
    std::vector<kneerail::SiteBand> bands;
    std::vector<kneerail::SiteDue> dues;                             ///< by place in bands
    std::vector<std::vector<kneerail::forecast::RunComing>> coming;  ///< likewise
  };
  /// What was reckoned by then: nothing, coatings, or all.
  struct Known {
    std::shared_ptr<const kneerail::Reckoning> coatings;
    std::shared_ptr<const kneerail::OtherReckoning> others;
  };
  static kneerail::Result<Found> find(kneerail::Database& tables, const Known& known,
                                      kneerail::Instant now);
  static kneerail::Result<> find_dues(kneerail::Database& tables, const Known& known,
                                      kneerail::Date today, Found& found);

  void read();
  void take(Found found, const Known& known);
  void read_drawings(int site);
  [[nodiscard]] kneerail::SiteForecast forecast_of(std::size_t site) const;
  [[nodiscard]] QString sentence_of(std::size_t site) const;
  [[nodiscard]] QString spoken(std::size_t site) const;

  ForecastWorker& worker_;
  kneerail::Clock& clock_;
  std::vector<kneerail::SiteBand> bands_;
  std::vector<kneerail::SiteDue> dues_;
  kneerail::TimeZone zone_;  ///< the organisation's
  std::vector<std::vector<kneerail::forecast::RunComing>> coming_;
  std::vector<std::unique_ptr<SiteRunsModel>> runs_;
  std::set<int> drawn_;  ///< sites of which the drawings were asked for
  Known reckoned_;       ///< what dues_ and coming_ were made from
  QString owner_name_;
  QString trouble_;
  std::int64_t entries_ = 0;
  bool known_ = false;
  ReadingThread reading_;  ///< last: what it brings finds everything else there
};
