#pragma once

// A change in a run that stands: a post or a gate comes in between two posts, a post is moved or
// taken out. It is said as a sentence first; keep() writes it, and what goes keeps its history.

#include <QtQml/qqmlregistration.h>
#include <functional>
#include <optional>
#include <vector>

#include "core/base/world.h"
#include "mobile/models/run_picture.h"
#include "mobile/models/said_sentence.h"
#include "mobile/models/store_link.h"
#include "schema/store/standing_run.h"

class ChangedRun : public SaidSentence {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  Q_PROPERTY(bool open READ is_open NOTIFY changed)
  Q_PROPERTY(bool writable READ writable NOTIFY changed)
  Q_PROPERTY(RunPicture* run READ run CONSTANT)
  Q_PROPERTY(QString runName READ run_name NOTIFY changed)
  Q_PROPERTY(QString sentence READ sentence NOTIFY changed)  ///< what would be kept
  Q_PROPERTY(QString means READ means NOTIFY changed)        ///< what becomes of what was there
  Q_PROPERTY(bool canKeep READ can_keep NOTIFY changed)

 public:
  /// All outlive this. `who` says who has the tablet, zero: nobody said.
  ChangedRun(StoreLink& store, kneerail::Clock& clock, kneerail::Random& random,
             std::function<kneerail::Uuid()> who, QObject* parent = nullptr);

  void begin(const kneerail::Uuid& run);

  [[nodiscard]] bool is_open() const { return open_; }
  [[nodiscard]] bool writable() const { return store_.writable(); }
  [[nodiscard]] RunPicture* run() { return &run_; }
  [[nodiscard]] QString run_name() const;
  [[nodiscard]] QString sentence() const;
  [[nodiscard]] QString means() const;
  [[nodiscard]] bool can_keep() const { return change_.has_value() && writable(); }
  [[nodiscard]] bool busy() const { return keeping_; }

  [[nodiscard]] bool asks() const override { return pad_; }
  [[nodiscard]] QString ask_title() const override;
  [[nodiscard]] bool asks_number() const override {
    return act_ == Act::insert || act_ == Act::move;
  }
  [[nodiscard]] QString number_caption() const override;
  void choosePiece(int piece) override { Q_UNUSED(piece) }
  void choose(int group, int option) override;
  void digit(int digit) override;
  void erase() override;
  void nextPiece() override;
  void closePad() override;
  void keep() override;
  Q_INVOKABLE void choosePart(int part);
  Q_INVOKABLE void choosePost(int post);
  Q_INVOKABLE void chooseBay(int bay);
  Q_INVOKABLE void stepPost(int direction);
  /// Takes back what is said and not kept.
  Q_INVOKABLE void takeBack();
  Q_INVOKABLE void leave();

 signals:
  void kept(const kneerail::Uuid& run);

 private:
  enum class Act { nothing, insert, gate, rails, mesh, gap, move, retire };

  [[nodiscard]] bool read();
  void say();
  void show();
  void answered(const kneerail::Result<>& saved);
  [[nodiscard]] std::int64_t typed_mm() const;
  [[nodiscard]] kneerail::Result<kneerail::layout::RunChange> change_now() const;
  [[nodiscard]] QString label(int post) const;
  [[nodiscard]] int changed_from() const;  ///< the post, or that before the bay
  [[nodiscard]] int changed_to() const;
  [[nodiscard]] kneerail::Uuid mint();

  StoreLink& store_;
  kneerail::Clock& clock_;
  kneerail::Random& random_;
  std::function<kneerail::Uuid()> who_;
  bool open_ = false;
  kneerail::Uuid run_id_;
  kneerail::StandingSheet sheet_;
  RunPicture run_;
  bool pad_ = false;
  int bay_ = -1;  ///< chosen, place in sheet_
  int post_ = -1;
  Act act_ = Act::nothing;
  std::vector<Act> offered_;
  QString typed_;
  std::optional<kneerail::layout::RunChange> change_;
  bool keeping_ = false;
};
