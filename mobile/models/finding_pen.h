#pragma once

// The Finding pad: what is wrong with the chosen part, bay or post, how bad it is, and what was
// done where it cannot wait. The kind proposes the grade. Every touch is on the disk as a draft;
// Keep, or going on to something else, makes records of it.

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QStringList>
#include <QUrl>
#include <optional>
#include <vector>

#include "core/records/finding.h"
#include "core/records/photograph.h"
#include "mobile/models/walk_pen.h"
#include "mobile/picture/device_pictures.h"
#include "mobile/picture/picture_intake.h"
#include "schema/store/run_store.h"

namespace kneerail {
enum class Measure;
struct MadeSafe;
}  // namespace kneerail

class FindingPen : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by WalkModel")
  Q_PROPERTY(QString title READ title NOTIFY changed)  ///< "F-3 · post 118, mid-rail cross"
  Q_PROPERTY(int kind READ kind NOTIFY changed)        ///< by the records' codes; 0: not chosen
  Q_PROPERTY(int grade READ grade NOTIFY changed)      ///< 0: not chosen
  Q_PROPERTY(bool cannotWait READ cannot_wait NOTIFY changed)           ///< what was done is asked
  Q_PROPERTY(QString whyItCanWait READ why_it_can_wait NOTIFY changed)  ///< empty: it cannot
  Q_PROPERTY(bool writesWhy READ writes_why NOTIFY changed)             ///< it is being written
  Q_PROPERTY(QString typedWhy READ typed_why NOTIFY changed)
  Q_PROPERTY(int whyMost READ why_most CONSTANT)         ///< characters that sentence may have
  Q_PROPERTY(QString writer READ writer NOTIFY changed)  ///< initials
  Q_PROPERTY(QList<int> measures READ measures NOTIFY changed)  ///< by the records' codes
  Q_PROPERTY(bool safe READ safe NOTIFY changed)                ///< somebody is held back
  Q_PROPERTY(QString safeWords READ safe_words NOTIFY changed)  ///< "Made safe 10:51. The bay ..."
  Q_PROPERTY(QString lookAgainWords READ look_again_words NOTIFY changed)
  // Photographs. What is said of a picture stays until the next one is taken.
  Q_PROPERTY(DevicePictures* pictures READ pictures CONSTANT)
  Q_PROPERTY(int photographs READ photographs NOTIFY changed)
  Q_PROPERTY(int photograph READ photograph NOTIFY changed)  ///< the one that is shown; -1: none
  Q_PROPERTY(QUrl photographSource READ photograph_source NOTIFY changed)
  Q_PROPERTY(QString marks READ marks NOTIFY changed)  ///< on it, as PictureMarks takes them
  Q_PROPERTY(QString photographCaption READ photograph_caption NOTIFY changed)  ///< "Photo 1 of 2"
  Q_PROPERTY(QString photographWords READ photograph_words NOTIFY changed)      ///< "whole, 3.1 MB"
  Q_PROPERTY(bool readsPicture READ reads_picture NOTIFY changed)
  Q_PROPERTY(QString pictureTrouble READ picture_trouble NOTIFY changed)
  Q_PROPERTY(bool begun READ begun NOTIFY changed)  ///< something was said that Keep would keep

 public:
  explicit FindingPen(WalkPen& pen, QObject* parent = nullptr);

  /// What is chosen on the drawing now: the first of part, bay and post that is not -1.
  void show(const kneerail::RunSheet& sheet, int part, int bay, int post);
  /// The pad comes up: the finding gets its number.
  void open();
  /// What was begun becomes records.
  void close();

  /// Begins with a kind that something else says, and with a grade where its kind's is too low.
  /// Nothing, where another is begun.
  void begin_with(kneerail::FindingKind what, int grade_least = 0);
  /// What was begun so is not so after all; what more was said stays.
  void give_up(kneerail::FindingKind what);
  /// A finding that follows from a measure or a push, with this person's next number and the grade
  /// of its kind: for the act that writes it.
  [[nodiscard]] kneerail::Finding following(kneerail::FindingKind what);

  [[nodiscard]] kneerail::Uuid about() const { return about_ ? about_->id : kneerail::Uuid{}; }
  [[nodiscard]] QString title() const;
  [[nodiscard]] int kind() const { return said_.kind; }
  [[nodiscard]] int grade() const { return said_.grade; }
  [[nodiscard]] bool cannot_wait() const;
  [[nodiscard]] QString why_it_can_wait() const { return said_.why_it_can_wait; }
  [[nodiscard]] bool writes_why() const { return typed_why_.has_value(); }
  [[nodiscard]] QString typed_why() const { return typed_why_.value_or(QString()); }
  [[nodiscard]] int why_most() const;
  [[nodiscard]] QString writer() const;
  [[nodiscard]] QList<int> measures() const;
  [[nodiscard]] bool safe() const;
  [[nodiscard]] QString safe_words() const;
  [[nodiscard]] QString look_again_words() const;
  [[nodiscard]] bool begun() const { return is_finding(said_) || photographs() > 0; }
  [[nodiscard]] DevicePictures* pictures() { return &pictures_; }
  [[nodiscard]] int photographs() const { return static_cast<int>(said_.photographs.size()); }
  [[nodiscard]] int photograph() const;
  [[nodiscard]] QUrl photograph_source() const;
  [[nodiscard]] QString marks() const;
  [[nodiscard]] QString photograph_caption() const;
  [[nodiscard]] QString photograph_words() const;
  [[nodiscard]] bool reads_picture() const { return keeping_ > 0 || intake_.busy(); }
  [[nodiscard]] QString picture_trouble() const { return picture_trouble_; }
  /// Something of it is on the screen alone.
  [[nodiscard]] bool has_not_kept() const;
  /// Waits for the pictures that are being made ready: before everything ends.
  void finish_pictures() { intake_.finish(); }

  Q_INVOKABLE void chooseKind(int kind);
  Q_INVOKABLE void chooseGrade(int grade);
  /// Done, or not done after all.
  Q_INVOKABLE void touchMeasure(int measure);
  /// The sentence why it can is begun, or goes on.
  Q_INVOKABLE void writeWhy();
  /// So far. It is on the disk with what cannot wait, until it is said.
  Q_INVOKABLE void typeWhy(const QString& why);
  Q_INVOKABLE void leaveWhy();  ///< what was typed goes; what was said before stays
  /// The sentence why; empty: it cannot. What was typed when the finding is kept is said too.
  Q_INVOKABLE void itCanWait(const QString& why);
  /// A picture of a file: it is made ready away from the screens, and then one more photograph of
  /// what is found now, wherever the walk is by then.
  Q_INVOKABLE void takePicture(const QUrl& file);
  Q_INVOKABLE void mark(const QString& mark);  ///< one more, on the photograph that is shown
  Q_INVOKABLE void showPhotograph(int place);
  /// Keeps what was said, and when the disk has it the walk goes on.
  Q_INVOKABLE void keep();

 signals:
  void changed();
  /// The finding is on the disk.
  void kept(const kneerail::Uuid& about, bool cannotWait);
  /// A picture that was chosen before could not be made one, and the pad is not there to say it.
  void pictureLost(const QString& words);

 private:
  struct Photo {
    kneerail::Uuid id;
    int place = 0;  ///< of its draft
    kneerail::Photograph fields;
    std::vector<kneerail::Mark> marks;
    bool operator==(const Photo&) const = default;
  };
  /// What was said so far, as Undo takes it back and Redo puts it back.
  struct Said {
    int kind = 0;
    int grade = 0;
    bool grade_by_hand = false;
    QString why_it_can_wait;
    std::vector<kneerail::Measure> measures;
    std::optional<kneerail::Instant> safe_at;  ///< when the first of them was touched
    std::vector<Photo> photographs;
    bool operator==(const Said&) const = default;
  };
  /// What a picture was chosen for, however late it is ready.
  struct Wanted {
    kneerail::Uuid finding;
    kneerail::Uuid about;
    QString words;  ///< "post 118, mid-rail cross"
    WalkPen::Hand hand;
  };
  /// What the finding is about.
  struct About {
    kneerail::Uuid id;
    std::optional<kneerail::Uuid> life;  ///< of a part
    int grade = 0;                       ///< of a part as it stands; 0: none
    bool graded_now = false;             ///< in this visit, by a look of its own
    QString words;                       ///< "post 118, mid-rail cross"
  };

  void begin();
  void say(Said said, const QString& words);
  void set(Said said);
  void type(std::optional<QString> why);
  void put_drafts(const std::vector<kneerail::Draft>& before);
  void put_draft(kneerail::Draft draft, bool wanted);
  void keep_picture(const Wanted& wanted, kneerail::PreparedPicture made);
  void add_photograph(const Wanted& wanted, kneerail::Photograph fields);
  void picture_failed(const Wanted& wanted, const QString& words);
  void picture_done();
  void say_of_picture(const QString& words);
  /// It is still the one on the pad, in the same hand.
  [[nodiscard]] bool is_here(const Wanted& wanted) const;
  [[nodiscard]] bool did(kneerail::Measure measure) const;
  [[nodiscard]] int proposed_grade(int kind) const;
  [[nodiscard]] kneerail::Finding finding(const Said& said) const;
  [[nodiscard]] kneerail::MadeSafe made_safe(const Said& said) const;
  [[nodiscard]] kneerail::Draft finding_draft(const Said& said) const;
  [[nodiscard]] kneerail::Draft safe_draft(const Said& said) const;
  [[nodiscard]] kneerail::Draft photograph_draft(const Said& said, const Photo& photo) const;
  [[nodiscard]] std::vector<kneerail::Draft> drafts_of(const Said& said) const;
  [[nodiscard]] WalkPen::Act act() const;
  void add_finding(WalkPen::Act& act) const;
  [[nodiscard]] static bool is_finding(const Said& said) { return said.kind > 0 || said.grade > 0; }
  [[nodiscard]] static bool asks(const Said& said);
  [[nodiscard]] bool writes() const { return about_.has_value() && pen_.writable(); }
  int next_number();
  void took_number(int number);

  WalkPen& pen_;
  std::optional<About> about_;
  Said said_;
  kneerail::Uuid id_;              ///< the finding's, from its first touch
  kneerail::Uuid safe_id_;         ///< of its made-safe record
  int number_ = 0;                 ///< 0: not asked for yet
  kneerail::Uuid last_number_of_;  ///< who took it
  kneerail::Uuid last_number_at_;  ///< at which site
  int last_number_ = 0;
  std::optional<QString> typed_why_;  ///< while it is being written
  bool open_ = false;                 ///< the pad is up
  std::vector<kneerail::Uuid> kept_;  ///< went to the disk while pictures of them are under way
  int shown_ = 0;                     ///< place of the photograph that is shown
  int keeping_ = 0;                   ///< pictures on their way to the disk
  QString picture_trouble_;
  DevicePictures pictures_;
  PictureIntake intake_;
};
