#pragma once

// The sheet of a site as a sentence of keys: its name, zones with their air, depot, rule set and
// the people to tell. A new site is said in the same words. Nothing of it is in the register until
// keep().

#include <QtQml/qqmlregistration.h>
#include <QStringList>
#include <functional>
#include <optional>
#include <vector>

#include "core/base/world.h"
#include "core/records/particulars.h"
#include "mobile/models/said_sentence.h"
#include "mobile/models/store_link.h"
#include "schema/store/site_sheet.h"

class SiteSentence : public SaidSentence {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  Q_PROPERTY(bool open READ is_open NOTIFY changed)
  Q_PROPERTY(bool writable READ writable NOTIFY changed)
  Q_PROPERTY(bool isNew READ is_new NOTIFY changed)  ///< the site is not in the register yet
  Q_PROPERTY(QString name READ name NOTIFY changed)
  Q_PROPERTY(bool differs READ differs NOTIFY changed)  ///< something was said and not kept
  // What the register has, in lines.
  Q_PROPERTY(QStringList zoneLines READ zone_lines NOTIFY changed)  ///< air and rate of each
  Q_PROPERTY(QStringList runNames READ run_names NOTIFY changed)
  Q_PROPERTY(QStringList runLines READ run_lines NOTIFY changed)        ///< under each name
  Q_PROPERTY(QStringList peopleLines READ people_lines NOTIFY changed)  ///< with their numbers
  Q_PROPERTY(QString ruleLine READ rule_line NOTIFY changed)

 public:
  /// All outlive this. `who` says who has the tablet, zero: nobody said.
  SiteSentence(StoreLink& store, kneerail::Clock& clock, kneerail::Random& random,
               std::function<kneerail::Uuid()> who, QObject* parent = nullptr);

  /// The sheet of a site that is there.
  void show_site(const kneerail::Uuid& site);
  /// A new one.
  Q_INVOKABLE void begin();

  [[nodiscard]] bool is_open() const { return open_; }
  [[nodiscard]] bool writable() const { return store_.writable(); }
  [[nodiscard]] bool is_new() const { return !facts_.there; }
  [[nodiscard]] QString name() const { return QString::fromStdString(said_.name); }
  [[nodiscard]] bool differs() const { return differs_; }
  [[nodiscard]] QStringList zone_lines() const;
  [[nodiscard]] QStringList run_names() const;
  [[nodiscard]] QStringList run_lines() const;
  [[nodiscard]] QStringList people_lines() const;
  [[nodiscard]] QString rule_line() const;
  [[nodiscard]] bool busy() const { return keeping_; }
  [[nodiscard]] const kneerail::SaidSite& said() const { return said_; }

  [[nodiscard]] bool asks() const override { return ask_.what != What::nothing; }
  [[nodiscard]] QString ask_title() const override;
  [[nodiscard]] bool asks_words() const override;
  [[nodiscard]] QString words() const override;
  void choosePiece(int piece) override;
  void choose(int group, int option) override;
  void say(const QString& words) override;
  void closePad() override;
  void keep() override;
  /// Back to the sites; what was said waits until the program ends.
  Q_INVOKABLE void leave();
  Q_INVOKABLE void walkRun(int run);
  Q_INVOKABLE void changeRun(int run);
  Q_INVOKABLE void layOut();

 signals:
  void kept(const kneerail::Uuid& site);
  void runWanted(const kneerail::Uuid& run);
  void changeWanted(const kneerail::Uuid& run);
  void layOutWanted(const kneerail::Uuid& site);

 private:
  enum class What {
    nothing,
    owner,
    name,
    zone,
    zone_name,
    new_zone,
    depot,
    new_depot,
    rule_set,
    person,
    new_person,
    somebody_else
  };
  struct Ask {
    What what = What::nothing;
    kneerail::Uuid id;  ///< of the zone or person
    bool operator==(const Ask&) const = default;
  };
  struct Option {
    QString words;
    bool now = false;
    std::function<void()> act = {};
  };
  struct Choices {
    QString caption;
    std::vector<Option> options;
  };
  struct Piece {
    Ask ask;
    SentencePieces::Piece words;
  };

  void open(kneerail::SiteFacts facts);
  void ask(const Ask& ask);
  void show();
  [[nodiscard]] std::vector<Piece> pieces_now() const;
  [[nodiscard]] std::vector<Choices> choices_now();
  [[nodiscard]] std::vector<Choices> zone_choices();
  [[nodiscard]] std::vector<Choices> depot_choices();
  [[nodiscard]] std::vector<Choices> rule_choices();
  [[nodiscard]] std::vector<Choices> people_choices();
  [[nodiscard]] kneerail::SiteZone* zone(const kneerail::Uuid& id);
  [[nodiscard]] QString name_of(const kneerail::Uuid& person) const;
  [[nodiscard]] QString number_of(const kneerail::Uuid& person) const;
  [[nodiscard]] std::optional<kneerail::Particulars> particulars(
      const kneerail::Uuid& person) const;
  void say_somebody(const QString& words);
  void changed_by_hand();
  kneerail::Result<std::vector<kneerail::Entry>> entries();
  void save(const kneerail::Result<std::vector<kneerail::Digest>>& kept_objects);
  void answered(const kneerail::Result<>& saved);
  [[nodiscard]] kneerail::Uuid mint();

  StoreLink& store_;
  kneerail::Clock& clock_;
  kneerail::Random& random_;
  std::function<kneerail::Uuid()> who_;
  bool open_ = false;
  kneerail::SiteFacts facts_;
  kneerail::SaidSite said_;
  /// Of people who are new: what their object will hold, by their place in said_.new_people.
  std::vector<kneerail::Particulars> new_particulars_;
  Ask ask_;
  std::vector<Ask> asked_by_;  ///< by piece
  std::vector<Choices> offered_;
  bool differs_ = false;
  bool keeping_ = false;
};
