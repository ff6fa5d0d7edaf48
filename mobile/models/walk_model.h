#pragma once

// The Walk room: where the walk is, the part that is chosen, its grade, and what a post gets as a
// whole. Coating, torque and wall have their own pads (coating, torque, wall); the pen puts
// everything on the disk. QML shows and asks; every number and word comes from here.

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QStringList>
#include <map>
#include <memory>
#include <optional>

#include "mobile/models/bay_check.h"
#include "mobile/models/coating_set.h"
#include "mobile/models/gauge_check.h"
#include "mobile/models/prepared_kept.h"
#include "mobile/models/run_picture.h"
#include "mobile/models/store_link.h"
#include "mobile/models/torque_check.h"
#include "mobile/models/walk_pen.h"
#include "mobile/models/wall_check.h"

class FindingPen;

class WalkModel : public QObject {
  Q_OBJECT
  Q_MOC_INCLUDE("mobile/models/finding_pen.h")
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  // Where the walk is.
  Q_PROPERTY(RunPicture* run READ run CONSTANT)
  Q_PROPERTY(CoatingSet* coating READ coating CONSTANT)
  Q_PROPERTY(TorqueCheck* torque READ torque CONSTANT)
  Q_PROPERTY(WallCheck* wall READ wall CONSTANT)
  Q_PROPERTY(BayCheck* bay READ bay CONSTANT)
  Q_PROPERTY(GaugeCheck* check READ check CONSTANT)
  Q_PROPERTY(FindingPen* finding READ finding CONSTANT)
  Q_PROPERTY(bool opened READ opened NOTIFY whereChanged)
  Q_PROPERTY(QString siteName READ site_name NOTIFY whereChanged)
  Q_PROPERTY(QString runName READ run_name NOTIFY whereChanged)
  Q_PROPERTY(QString postLabel READ post_label NOTIFY whereChanged)
  Q_PROPERTY(bool partChosen READ part_chosen NOTIFY whereChanged)
  Q_PROPERTY(QString partTitle READ part_title NOTIFY
                 whereChanged)  ///< "118 · top-rail tee"; of a post "118 · ladder 3"
  Q_PROPERTY(QString nextWords READ next_words NOTIFY
                 whereChanged)  ///< "mid-rail cross", "post 119"; empty at the end
  Q_PROPERTY(QString nextPostLabel READ next_post_label NOTIFY
                 whereChanged)  ///< empty at the end of the run
  Q_PROPERTY(
      QString backPostLabel READ back_post_label NOTIFY whereChanged)  ///< empty at its beginning
  Q_PROPERTY(QString nextBayWords READ next_bay_words NOTIFY
                 whereChanged)  ///< "119 to 120"; empty at the end of the run
  Q_PROPERTY(QString postAbout READ post_about NOTIFY
                 whereChanged)  ///< "5 parts, all grade 1 or 2 last time"
  Q_PROPERTY(
      QString runCounts READ run_counts NOTIFY whereChanged)  ///< "116 seen · 2 skipped · 33 open"
  // Of the last visit at the chosen post; empty while a part or a bay is chosen.
  Q_PROPERTY(QList<int> postLastGrades READ post_last_grades NOTIFY
                 whereChanged)  ///< of its joints, from the top down
  Q_PROPERTY(
      QString postLastVisit READ post_last_visit NOTIFY whereChanged)  ///< "last visit, 9 May 2030"
  Q_PROPERTY(QString postLastReadings READ post_last_readings NOTIFY
                 whereChanged)  ///< "thinnest 88 µm · 24 N·m", the least of each
  Q_PROPERTY(QString pushedMeans READ pushed_means NOTIFY
                 whereChanged)  ///< "bay 118 to 119 firm too · on to 119"
  // Title block.
  Q_PROPERTY(QString gaugeCaption READ gauge_caption NOTIFY
                 titleChanged)  ///< "Gauge CG-0417 · zeroed"; old: "Gauge CG-0417"
  Q_PROPERTY(QString gaugeWords READ gauge_words NOTIFY
                 titleChanged)  ///< "2 h 10 min ago", "zero it soon"
  Q_PROPERTY(bool gaugeOld READ gauge_old NOTIFY titleChanged)  ///< zero it soon
  Q_PROPERTY(
      QString keptCaption READ kept_caption NOTIFY titleChanged)  ///< "Saved 10:42:07", "Kept here"
  Q_PROPERTY(QString keptWords READ kept_words NOTIFY titleChanged)  ///< "214 entries"
  Q_PROPERTY(QString waitingWords READ waiting_words NOTIFY
                 titleChanged)  ///< "76 µm waiting"; empty: none
  // Who walks, and with what. Places in the lists; -1: none.
  Q_PROPERTY(QList<QString> people READ people NOTIFY titleChanged)   ///< initials
  Q_PROPERTY(bool visitOpened READ visit_opened NOTIFY titleChanged)  ///< it has an entry
  Q_PROPERTY(int personNow READ person_now NOTIFY titleChanged)
  Q_PROPERTY(QString personWords READ person_words NOTIFY titleChanged)
  Q_PROPERTY(QList<QString> gauges READ gauges NOTIFY titleChanged)  ///< serial numbers
  Q_PROPERTY(int gaugeNow READ gauge_now NOTIFY titleChanged)
  Q_PROPERTY(QList<QString> wrenches READ wrenches NOTIFY titleChanged)
  Q_PROPERTY(int wrenchNow READ wrench_now NOTIFY titleChanged)
  Q_PROPERTY(QList<QString> wallGauges READ wall_gauges NOTIFY titleChanged)
  Q_PROPERTY(int wallGaugeNow READ wall_gauge_now NOTIFY titleChanged)
  // What is said; what could not be written waits for tryAgain().
  Q_PROPERTY(QString message READ message NOTIFY messageChanged)
  Q_PROPERTY(bool notKept READ not_kept NOTIFY messageChanged)
  /// False as soon as it is found out; what is typed then stays where it is.
  Q_PROPERTY(bool writable READ writable NOTIFY writableChanged)
  // Undo says what it takes back; empty: nothing.
  Q_PROPERTY(QString undoWords READ undo_words NOTIFY undoChanged)
  Q_PROPERTY(QString redoWords READ redo_words NOTIFY undoChanged)
  // Pads.
  Q_PROPERTY(bool shown READ shown WRITE set_shown NOTIFY padChanged)  ///< the room is open
  Q_PROPERTY(Pad pad READ pad NOTIFY padChanged)
  Q_PROPERTY(bool coatingOffered READ coating_offered NOTIFY whereChanged)
  Q_PROPERTY(bool torqueOffered READ torque_offered NOTIFY whereChanged)
  Q_PROPERTY(bool wallOffered READ wall_offered NOTIFY whereChanged)
  Q_PROPERTY(QList<QString> gradeNames READ grade_names NOTIFY
                 whereChanged)  ///< of grades 1 to 5 on that material: "Rust begins"
  Q_PROPERTY(
      QList<QString> gradeTests READ grade_tests NOTIFY whereChanged)  ///< "or coating under half"
  Q_PROPERTY(int lastGrade READ last_grade NOTIFY whereChanged)        ///< 0: none
  Q_PROPERTY(int gradeNow READ grade_now NOTIFY whereChanged)
  Q_PROPERTY(bool asLastTimeOffered READ as_last_time_offered NOTIFY whereChanged)
  Q_PROPERTY(QString lookAgainPart READ look_again_part NOTIFY whereChanged)
  Q_PROPERTY(QString whyNotAsLastTime READ why_not_as_last_time NOTIFY
                 whereChanged)  ///< "Look again: grade 3 last time"

 public:
  enum Pad { PostPad, GradePad, CoatingPad, TorquePad, WallPad, FindingPad, BayPad };
  Q_ENUM(Pad)
  /// By the records' codes.
  enum SkipReason { Locked = 1, Water, Blocked, Unsafe, NoTime, Struck, Other };
  Q_ENUM(SkipReason)

  /// All outlive this.
  WalkModel(StoreLink& store, kneerail::Clock& clock, kneerail::Random& random,
            QObject* parent = nullptr);
  ~WalkModel() override;

  [[nodiscard]] RunPicture* run() { return &run_; }
  [[nodiscard]] CoatingSet* coating() { return &coating_; }
  [[nodiscard]] TorqueCheck* torque() { return &torque_; }
  [[nodiscard]] WallCheck* wall() { return &wall_; }
  [[nodiscard]] BayCheck* bay() { return &bay_; }
  [[nodiscard]] GaugeCheck* check() { return &check_; }
  [[nodiscard]] FindingPen* finding() { return finding_.get(); }
  [[nodiscard]] WalkPen& pen() { return pen_; }
  [[nodiscard]] bool opened() const { return run_.posts() > 0; }
  [[nodiscard]] QString site_name() const;
  [[nodiscard]] QString run_name() const;
  [[nodiscard]] QString post_label() const;
  [[nodiscard]] bool part_chosen() const { return run_.part() >= 0; }
  [[nodiscard]] QString part_title() const;
  [[nodiscard]] QString next_words() const;
  [[nodiscard]] QString next_post_label() const;
  [[nodiscard]] QString back_post_label() const;
  [[nodiscard]] QString next_bay_words() const;
  [[nodiscard]] QString post_about() const;
  [[nodiscard]] QString run_counts() const;
  [[nodiscard]] QList<int> post_last_grades() const;
  [[nodiscard]] QString post_last_visit() const;
  [[nodiscard]] QString post_last_readings() const;
  [[nodiscard]] QString pushed_means() const;
  [[nodiscard]] QString gauge_caption() const;
  [[nodiscard]] QString gauge_words() const;
  [[nodiscard]] bool gauge_old() const;
  [[nodiscard]] QString kept_caption() const;
  [[nodiscard]] QString kept_words() const;
  [[nodiscard]] QString waiting_words() const;
  [[nodiscard]] QList<QString> people() const;
  [[nodiscard]] bool visit_opened() const { return pen_.visit_opened(); }
  [[nodiscard]] int person_now() const;
  [[nodiscard]] QString person_words() const;
  [[nodiscard]] QList<QString> gauges() const;
  [[nodiscard]] int gauge_now() const;
  [[nodiscard]] QList<QString> wrenches() const;
  [[nodiscard]] int wrench_now() const;
  [[nodiscard]] QList<QString> wall_gauges() const;
  [[nodiscard]] int wall_gauge_now() const;
  [[nodiscard]] QString message() const;
  [[nodiscard]] bool not_kept() const;
  [[nodiscard]] bool writable() const { return store_.writable(); }
  /// Something typed is on the screen alone: unkept, or digits and a slide that are not finished.
  [[nodiscard]] bool holds_typed() const;
  [[nodiscard]] QString undo_words() const;
  [[nodiscard]] QString redo_words() const { return pen_.redo_words(); }
  [[nodiscard]] bool shown() const { return shown_; }
  void set_shown(bool shown);
  [[nodiscard]] Pad pad() const { return pad_; }
  void set_pad(Pad pad);
  /// On the chosen part; of a post, on one of its parts at least.
  [[nodiscard]] bool coating_offered() const;
  [[nodiscard]] bool torque_offered() const;
  [[nodiscard]] bool wall_offered() const;
  [[nodiscard]] QList<QString> grade_names() const;
  [[nodiscard]] QList<QString> grade_tests() const;
  [[nodiscard]] int last_grade() const;
  [[nodiscard]] int grade_now() const;
  [[nodiscard]] bool as_last_time_offered() const { return why_not_as_last_time().isEmpty(); }
  [[nodiscard]] QString why_not_as_last_time() const;
  [[nodiscard]] QString look_again_part() const;

  /// Opens a run; `component`, a part or a post of it, is chosen where it is given, else the first
  /// open post.
  /// The parts that were chosen to be measured are marked until something was read of them.
  void prepare(const kneerail::PreparedDay& day);
  void open(const kneerail::Uuid& run, const kneerail::Uuid& component = {});
  /// A number that a gauge typed, "76" or "76.4": to the slot that waits, else to the title block.
  void typed(const QString& number);
  /// A sentence for who walks.
  void tell(const QString& message) { say(message); }
  /// Whether this device remembers where the walk is: said in the title block where it does not.
  void set_place_kept(bool kept);
  /// Everything that was typed becomes a record: another room, another run, the end.
  Q_INVOKABLE void leave();
  /// The same before everything ends: pictures that were chosen are waited for.
  void end();

  Q_INVOKABLE void choosePart(int part);
  Q_INVOKABLE void choosePost(int post);
  Q_INVOKABLE void chooseBay(int bay);
  /// The same, where the finger came down: chainage, and up from the deck.
  Q_INVOKABLE void touchBay(int bay, qreal alongMm, qreal upMm);
  Q_INVOKABLE void chooseBayAfter();  ///< the one that begins at the chosen post
  Q_INVOKABLE void nextBay();         ///< at the last, its far post
  /// A pad for the chosen part; of a post, for its first part that has such a pad. One that is not
  /// offered there stays away.
  Q_INVOKABLE void openPad(Pad pad);
  Q_INVOKABLE void leaveFinding();  ///< nothing was said there: the pad before it
  Q_INVOKABLE void nextPart();
  Q_INVOKABLE void stepPart(int step);  ///< arrow keys, along the parts of the post
  Q_INVOKABLE void stepPost(int step);  ///< swipe, Page Up and Down
  Q_INVOKABLE void askForecast();  ///< the Forecast room at the chosen part, else the post's first

  Q_INVOKABLE QString postLabelAt(int post) const;  ///< of any post of the run; empty: none
  Q_INVOKABLE int postOfPart(int part) const;

  Q_INVOKABLE void chooseGrade(int grade);
  /// Every part of the post and the bay after it as last time. Pushed: the bay was firm too.
  Q_INVOKABLE void asLastTime(bool pushed);
  /// The Grade pad on the part of this post that forbids "as last time".
  Q_INVOKABLE void lookAgain();
  /// From the chosen post to `toPost`, both included. What was seen there stays seen, and what is
  /// struck has nothing to be reached.
  Q_INVOKABLE void skip(SkipReason reason, int toPost);

  /// Another person has the tablet: what was typed is theirs who typed it, and becomes a record.
  Q_INVOKABLE void choosePerson(int place);
  /// What was typed becomes a record, and is on the disk: before a visit is looked over.
  void settle();
  /// The visit was sealed: what is entered from now on is of another one.
  void sealed() { another_hand(); }
  Q_INVOKABLE void chooseGauge(int place);
  Q_INVOKABLE void chooseWrench(int place);
  Q_INVOKABLE void chooseWallGauge(int place);

  Q_INVOKABLE void undo();
  Q_INVOKABLE void redo();
  Q_INVOKABLE void tryAgain();
  Q_INVOKABLE void dismissMessage();    ///< a sentence was read; what is not kept stays said
  Q_INVOKABLE void takeWaiting();       ///< the number that waits, to the slot that waits now
  Q_INVOKABLE void throwAwayWaiting();  ///< it was nobody's; Undo puts it back

 signals:
  void whereChanged();
  void titleChanged();
  void messageChanged();
  void undoChanged();
  void padChanged();
  void writableChanged();
  /// What a hand feels and an ear hears: "kept", "far", "partDone", "postDone", "notKept",
  /// "undone".
  void felt(const QString& what);
  /// Undo took this back. In the log: a record, so that both stay there.
  void takenBack(const QString& words, bool inLog);
  /// A number that waited is gone; nothing of it is in the log.
  void thrownAway(const QString& words);
  void forecastWanted(kneerail::Uuid run, kneerail::Uuid component);
  /// A record about this part is on the disk.
  void entered(kneerail::Uuid component);

 private:
  [[nodiscard]] const kneerail::RunSheet& sheet() const { return *run_.sheet(); }
  [[nodiscard]] const kneerail::SheetPart* part() const;
  [[nodiscard]] QString grade_test(int grade) const;
  [[nodiscard]] std::vector<int> parts_in_order(int post) const;
  [[nodiscard]] std::vector<const kneerail::SheetPart*> parts_of_post_alone() const;
  [[nodiscard]] int next_part_place() const;
  [[nodiscard]] int part_to_look_at() const;
  [[nodiscard]] QString opening_words() const;
  kneerail::Result<kneerail::RunSheet> run_now(const kneerail::Uuid& run);
  bool read_sheet(const kneerail::Uuid& run);
  void read_again_after(const std::vector<kneerail::Entry>& entries);
  void show_sheet(kneerail::Result<kneerail::RunSheet> read);
  void mark_chosen();
  void chosen();
  void show_on_pads();
  void choose_instrument(kneerail::InstrumentKind kind, int place);
  void another_hand();
  void listen_to_check();
  void listen_to_wall();
  void listen_to_finding();
  void listen_to_bay();
  [[nodiscard]] int next_bay_place() const;
  /// Where nothing else is asked: of a part its grade, of a bay its push, else the post.
  [[nodiscard]] Pad plain_pad() const;
  void walk_on_from(const kneerail::Uuid& about);
  void checks_done();
  void keep_waiting();
  void find_waiting();
  void throw_away(const QString& number);
  [[nodiscard]] bool offers(Pad pad) const;
  [[nodiscard]] int first_part_with(Pad pad) const;
  void go_to(const kneerail::Uuid& component);
  void write_and_go_on(WalkPen::Act act, int post);
  void on_kept(const kneerail::Uuid& component, const std::vector<kneerail::Entry>& entries);
  void say(const QString& message);
  [[nodiscard]] int first_open_post() const;

  StoreLink& store_;
  kneerail::PreparedDay prepared_;
  RunPicture run_;
  WalkPen pen_;
  CoatingSet coating_;
  TorqueCheck torque_;
  WallCheck wall_;
  GaugeCheck check_;
  std::unique_ptr<FindingPen> finding_;
  BayCheck bay_;
  Pad pad_ = PostPad;
  bool shown_ = true;
  std::map<kneerail::Role, Pad> pads_used_;  ///< the pad used last on that kind of part
  QString message_;
  QStringList waiting_;            ///< numbers no slot took, the oldest first
  kneerail::Uuid grade_asked_of_;  ///< a grade that is on its way to the disk
  int grade_asked_ = 0;
  int post_asked_ = -1;  ///< a post that is on its way to the disk as a whole
  bool opening_told_ = false;
  bool place_kept_ = true;
  bool sheet_behind_ = false;    ///< something on the disk could not be read for it
  std::int64_t full_at_ms_ = 0;  ///< when the last set became full, monotonic
  bool was_full_ = false;
};
