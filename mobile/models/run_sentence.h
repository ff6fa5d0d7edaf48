#pragma once

// A run that is laid out as a sentence: its pieces are keys, the drawing follows each touch, and
// one part of it can be made different from the rule. Nothing is in the register until keep(); what
// was said is remembered by this device from touch to touch.

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <functional>
#include <optional>
#include <vector>

#include "core/base/time_zone.h"
#include "core/base/world.h"
#include "mobile/models/laid_sheet.h"
#include "mobile/models/run_choices.h"
#include "mobile/models/run_picture.h"
#include "mobile/models/said_sentence.h"
#include "mobile/models/store_link.h"
#include "schema/store/new_run.h"

class RunSentence : public SaidSentence {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  Q_PROPERTY(bool open READ is_open NOTIFY changed)  ///< a run is being laid out
  Q_PROPERTY(bool writable READ writable NOTIFY changed)
  Q_PROPERTY(QString siteName READ site_name NOTIFY changed)
  Q_PROPERTY(RunPicture* run READ run CONSTANT)
  Q_PROPERTY(QString countWords READ count_words NOTIFY changed)    ///< of the run as it is drawn
  Q_PROPERTY(QString lengthWords READ length_words NOTIFY changed)  ///< "Whole run, 34.50 m"
  Q_PROPERTY(bool canUndo READ can_undo NOTIFY changed)

 public:
  /// All outlive this. `random` makes identifiers; `who` says who has the tablet, zero: nobody
  /// said.
  RunSentence(StoreLink& store, kneerail::Clock& clock, kneerail::Random& random,
              std::function<kneerail::Uuid()> who, QObject* parent = nullptr);

  /// A new run of that site, or the one that was left there.
  void begin(const kneerail::Uuid& site);

  [[nodiscard]] bool is_open() const { return open_; }
  [[nodiscard]] bool writable() const { return store_.writable(); }
  [[nodiscard]] QString site_name() const;
  [[nodiscard]] bool asks() const override { return ask_.what != kneerail::RunAsk::What::nothing; }
  [[nodiscard]] QString ask_title() const override;
  [[nodiscard]] bool asks_number() const override { return number_.has_value(); }
  [[nodiscard]] bool signs() const override { return number_ && number_->signs; }
  [[nodiscard]] QString number_caption() const override {
    return number_ ? number_->caption : QString();
  }
  [[nodiscard]] bool asks_words() const override {
    return kneerail::words_of(ask_, said_).has_value();
  }
  [[nodiscard]] int words_most() const override { return kneerail::words_most(ask_); }
  [[nodiscard]] QString words() const override {
    return kneerail::words_of(ask_, said_).value_or(QString());
  }
  [[nodiscard]] RunPicture* run() { return &run_; }
  [[nodiscard]] QString count_words() const;
  [[nodiscard]] QString length_words() const;
  [[nodiscard]] bool can_undo() const { return !history_.empty(); }
  [[nodiscard]] bool busy() const { return keeping_; }
  /// What is said so far.
  [[nodiscard]] const kneerail::NewRun& said() const { return said_; }

  void choosePiece(int piece) override;
  void digit(int digit) override;
  void sign() override;
  void erase() override;
  void nextPiece() override;
  void choose(int group, int option) override;
  void say(const QString& words) override;
  Q_INVOKABLE void choosePart(int part);
  Q_INVOKABLE void choosePost(int post);
  Q_INVOKABLE void chooseBay(int bay);
  Q_INVOKABLE void stepPost(int direction);
  void closePad() override;
  Q_INVOKABLE void undo();
  /// Back to the sites; what was said stays.
  Q_INVOKABLE void leave();
  void keep() override;
  /// The largest scale, 20 for 1:20, at which the rail is no higher than that on the glass.
  Q_INVOKABLE [[nodiscard]] qreal scaleFor(qreal room_mm) const;
  /// Where so much of the run is seen from a little before its first post, mm.
  Q_INVOKABLE [[nodiscard]] qreal centreFor(qreal seen_mm) const;

 signals:
  void drawn();  ///< another run stands on the drawing
  void kept(const kneerail::Uuid& site, const kneerail::Uuid& run);

 private:
  void ask(const kneerail::RunAsk& ask);
  void take_typed();
  void edit(const std::function<void(kneerail::NewRun&)>& change);
  void set_said(kneerail::NewRun said);
  void draw();
  void show();
  void remember();
  void answered(const kneerail::Result<>& saved);
  void drop_typed();
  void forget_typed();
  void note_for_undo();
  [[nodiscard]] kneerail::Date today() const;
  [[nodiscard]] kneerail::Uuid mint();

  StoreLink& store_;
  kneerail::Clock& clock_;
  kneerail::Random& random_;
  std::function<kneerail::Uuid()> who_;
  bool open_ = false;
  kneerail::RunSurroundings around_;
  kneerail::TimeZone zone_;
  kneerail::NewRun said_;
  kneerail::layout::LaidRun laid_;
  std::vector<int> places_;  ///< of each part of the drawing its place in laid_
  RunPicture run_;
  kneerail::RunAsk ask_;
  std::vector<kneerail::RunChoices> offered_;
  std::optional<kneerail::RunNumber> number_;
  QString typed_;
  bool fresh_ = true;   ///< the next digit begins a new number
  bool noted_ = false;  ///< what stood before that number can be undone to
  bool odd_ = false;    ///< what is typed is not in the sentence
  std::vector<kneerail::NewRun> history_;
  bool keeping_ = false;
};
