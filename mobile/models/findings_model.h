#pragma once

// The Findings room: the findings of the run that is walked, or of its site, hung in the order of
// what cannot wait and what comes due; one of them open, with what is next and whether what was
// done still stands. Read on another thread. What is entered goes by the walk's pen.

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <QUrl>
#include <filesystem>
#include <map>
#include <memory>
#include <vector>

#include "core/base/world.h"
#include "mobile/models/finding_ending.h"
#include "mobile/models/reading_thread.h"
#include "mobile/models/run_picture.h"
#include "mobile/models/walk_model.h"
#include "schema/store/finding_store.h"
#include "schema/store/run_store.h"

class FindingsModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  Q_PROPERTY(bool known READ known NOTIFY changed)
  Q_PROPERTY(int count READ count NOTIFY changed)
  Q_PROPERTY(QString trouble READ trouble NOTIFY changed)  ///< why they could not be read
  Q_PROPERTY(QString siteName READ site_name NOTIFY changed)
  Q_PROPERTY(QString countWords READ count_words NOTIFY changed)  ///< "7 open, 1 cannot wait"
  Q_PROPERTY(QString emptyWords READ empty_words NOTIFY changed)  ///< "Nothing found on this run."
  Q_PROPERTY(QString lastLook READ last_look NOTIFY changed)      ///< "Last look 9 May 2030"
  Q_PROPERTY(bool runOnly READ run_only WRITE set_run_only NOTIFY changed)
  Q_PROPERTY(bool endedToo READ ended_too WRITE set_ended_too NOTIFY changed)
  Q_PROPERTY(QString endedWords READ ended_words NOTIFY changed)    ///< "12 at this site"
  Q_PROPERTY(bool shown READ shown WRITE set_shown NOTIFY changed)  ///< the room is open
  // What holds nobody back, anywhere in the register: said in every room.
  Q_PROPERTY(QString notSafeWords READ not_safe_words NOTIFY changed)  ///< empty: nothing
  Q_PROPERTY(QString notSafeCount READ not_safe_count NOTIFY changed)
  // The one that is open; -1: none.
  Q_PROPERTY(int opened READ opened NOTIFY openedChanged)
  Q_PROPERTY(RunPicture* place READ place CONSTANT)
  Q_PROPERTY(QString title READ title NOTIFY openedChanged)
  Q_PROPERTY(QString kindWords READ kind_words NOTIFY openedChanged)
  Q_PROPERTY(int grade READ grade NOTIFY openedChanged)
  Q_PROPERTY(bool boarded READ boarded NOTIFY openedChanged)   ///< it cannot wait
  Q_PROPERTY(bool notHeld READ not_held NOTIFY openedChanged)  ///< nothing holds people back
  Q_PROPERTY(QString doneWords READ done_words NOTIFY openedChanged)
  Q_PROPERTY(QString nextWords READ next_words NOTIFY openedChanged)
  Q_PROPERTY(QString saidWords READ said_words NOTIFY openedChanged)
  Q_PROPERTY(QUrl photograph READ photograph NOTIFY openedChanged)
  Q_PROPERTY(QString marks READ marks NOTIFY openedChanged)
  Q_PROPERTY(int nextStep READ next_step NOTIFY openedChanged)  ///< by the records' codes; 0: none
  Q_PROPERTY(QList<int> measures READ measures NOTIFY openedChanged)
  Q_PROPERTY(bool asksWhetherItStands READ asks_whether_it_stands NOTIFY openedChanged)
  Q_PROPERTY(bool writes READ writes NOTIFY openedChanged)
  Q_PROPERTY(QString standsWords READ stands_words NOTIFY openedChanged)  ///< done, told, next
  Q_PROPERTY(QString readWords READ read_words NOTIFY openedChanged)  ///< "read by RH 14 May 11:20"
  Q_PROPERTY(
      bool asksToRead READ asks_to_read NOTIFY openedChanged)  ///< a lead has not read it yet
  Q_PROPERTY(
      bool asksWhyLater READ asks_why_later NOTIFY openedChanged)  ///< the mend-by moves later
  Q_PROPERTY(bool ended READ ended NOTIFY openedChanged)
  Q_PROPERTY(FindingEnding* ending READ ending CONSTANT)

 public:
  enum Role {
    NumberRole = Qt::UserRole + 1,
    PartRole,
    KindRole,
    GradeRole,
    BoardedRole,
    PictureRole,
    PreviewRole,
    MarksRole,
    DoneRole,
    NextRole,
    SpokenRole
  };

  /// All outlive this.
  FindingsModel(std::filesystem::path folder, StoreLink& store, WalkModel& walk,
                QObject* parent = nullptr);
  ~FindingsModel() override;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

  [[nodiscard]] bool known() const { return known_; }
  [[nodiscard]] int count() const { return rowCount(); }
  [[nodiscard]] QString trouble() const { return trouble_; }
  [[nodiscard]] QString site_name() const;
  [[nodiscard]] QString count_words() const;
  [[nodiscard]] QString empty_words() const;
  [[nodiscard]] QString last_look() const;
  [[nodiscard]] bool run_only() const { return run_only_; }
  void set_run_only(bool only);
  [[nodiscard]] bool ended_too() const { return ended_too_; }
  void set_ended_too(bool too);
  [[nodiscard]] QString ended_words() const;
  [[nodiscard]] bool shown() const { return shown_; }
  void set_shown(bool shown);
  [[nodiscard]] QString not_safe_words() const;
  [[nodiscard]] QString not_safe_count() const;
  [[nodiscard]] bool busy() const { return reading_.busy(); }
  /// What cannot wait and is not ended, anywhere, the oldest first.
  [[nodiscard]] const std::vector<kneerail::KeptFinding>& standing() const {
    return found_.standing;
  }

  [[nodiscard]] int opened() const;
  [[nodiscard]] RunPicture* place() { return &place_; }
  [[nodiscard]] QString title() const;
  [[nodiscard]] QString kind_words() const;
  [[nodiscard]] int grade() const;
  [[nodiscard]] bool boarded() const;
  [[nodiscard]] bool not_held() const;
  [[nodiscard]] QString done_words() const;
  [[nodiscard]] QString done_words(const kneerail::KeptFinding& finding) const;
  [[nodiscard]] QString next_words() const;
  [[nodiscard]] QString said_words() const;
  [[nodiscard]] QUrl photograph() const;
  [[nodiscard]] QString marks() const;
  [[nodiscard]] int next_step() const;
  [[nodiscard]] QList<int> measures() const;
  [[nodiscard]] bool asks_whether_it_stands() const;
  [[nodiscard]] QString stands_words() const;
  [[nodiscard]] QString read_words() const;
  [[nodiscard]] bool asks_to_read() const;
  [[nodiscard]] bool asks_why_later() const { return open_() != nullptr && later_.has_value(); }
  [[nodiscard]] bool ended() const;
  [[nodiscard]] FindingEnding* ending() { return &ending_; }
  [[nodiscard]] bool writes() const { return open_() != nullptr && walk_.writable(); }

  /// The room is entered, or something was entered that bears on findings.
  Q_INVOKABLE void refresh();
  Q_INVOKABLE void open(int place);
  Q_INVOKABLE void close();
  /// What is next, by the records' codes; a mending by a day so many days from today. A day later
  /// than the one that stands waits for putOff().
  Q_INVOKABLE void setNext(int step, int days = 0);
  /// Why the day moves later, by the records' codes; 0: it stays.
  Q_INVOKABLE void putOff(int why);
  /// Who answers for the rails has read what is shown of it.
  Q_INVOKABLE void readIt();
  /// One more thing was done that holds people back or warns them.
  Q_INVOKABLE void addMeasure(int measure);
  /// How what was done stands: by the records' codes 1 in place, 2 put back, 3 gone.
  Q_INVOKABLE void looked(int how);
  Q_INVOKABLE void walkThere();
  /// What cannot wait and holds nobody back: the first of them, at its own run.
  Q_INVOKABLE void openNotSafe();
  void open_at_its_run(const kneerail::KeptFinding& finding);

 signals:
  void changed();
  void openedChanged();
  void openedFinding();  ///< another one is open
  void standingChanged();
  void walkWanted(kneerail::Uuid run, kneerail::Uuid subject);

 private:
  using Sheets = std::map<kneerail::Uuid, std::shared_ptr<const kneerail::RunSheet>>;
  struct Found {
    std::vector<kneerail::KeptFinding> findings;
    std::vector<kneerail::KeptFinding> standing;  ///< of the whole register
    Sheets sheets;
    std::int64_t ended = 0;
    bool answers = false;  ///< who walks is a lead or duty holder of the site
    std::optional<kneerail::Instant> last_look;
  };
  struct Asked {
    kneerail::Uuid site;
    kneerail::Uuid run;
    bool run_only = true;
    bool ended_too = false;
    Sheets sheets;  ///< at hand
    kneerail::Uuid who;
    kneerail::Date today;
    bool only_standing = false;  ///< nothing but what is said in every room
  };
  static kneerail::Result<Found> find(kneerail::Database& tables, Asked asked);

  void take(kneerail::Result<Found> found);
  void take_standing(kneerail::Result<Found> found);
  void after(const std::vector<kneerail::Entry>& entries);
  [[nodiscard]] const kneerail::KeptFinding* open_() const;
  [[nodiscard]] std::vector<const kneerail::KeptFinding*> not_safe() const;
  [[nodiscard]] const kneerail::RunSheet* sheet_of(const kneerail::KeptFinding& finding) const;
  [[nodiscard]] QString place_words(const kneerail::KeptFinding& finding) const;
  [[nodiscard]] QString what_words(const kneerail::KeptFinding& finding) const;
  [[nodiscard]] QString next_words(const kneerail::KeptFinding& finding) const;
  [[nodiscard]] QString mend_words(const kneerail::KeptFinding& finding) const;
  [[nodiscard]] QString read_words(const kneerail::KeptFinding& finding) const;
  void show_ending();
  [[nodiscard]] QString day_and_time(kneerail::Instant at) const;
  [[nodiscard]] RunPicture* picture_of(std::size_t place) const;
  void choose_in(RunPicture& picture, const kneerail::KeptFinding& finding) const;
  [[nodiscard]] QUrl object(const kneerail::Digest& sha) const;
  template <class Fields>
  void write(const QString& words, const Fields& fields);

  StoreLink& store_;
  WalkModel& walk_;
  Found found_;
  mutable std::map<std::size_t, std::unique_ptr<RunPicture>> pictures_;  ///< of rows in view
  RunPicture place_;
  FindingEnding ending_;
  std::optional<kneerail::Date> later_;  ///< to be mended by, once it is said why
  kneerail::Uuid opened_;                ///< zero: none
  QString trouble_;
  bool known_ = false;
  bool shown_ = false;
  bool run_only_ = true;
  bool ended_too_ = false;
  std::shared_ptr<ReadingThread::Stop> asked_;
  ReadingThread reading_;  ///< last: what it brings finds everything else there
};
