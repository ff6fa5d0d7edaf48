#pragma once

// Closing a visit: all runs with what is missing and why, counts, what is asked before the seal,
// and the seal itself, signed by hand. Read away from the screens; nothing that is asked forbids
// the seal.

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <QStringList>
#include <filesystem>
#include <memory>
#include <vector>

#include "core/base/time_zone.h"
#include "mobile/models/reading_thread.h"
#include "mobile/models/run_picture.h"
#include "mobile/models/walk_model.h"
#include "schema/store/closing_store.h"

/// Rows: the runs of the site, in its order.
class VisitClose : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  Q_PROPERTY(bool known READ known NOTIFY changed)
  Q_PROPERTY(bool sealed READ sealed NOTIFY changed)
  Q_PROPERTY(QString message READ message NOTIFY changed)  ///< why not; empty: nothing to say
  Q_PROPERTY(QString title READ title NOTIFY changed)  ///< "Visit 9 · North Mole · Wed 14 May 2031"
  Q_PROPERTY(QString about READ about NOTIFY changed)  ///< "MO · A2, T3 · 09:04 to 15:37"
  Q_PROPERTY(QString cellWords READ cell_words NOTIFY changed)  ///< "Close visit 9"
  Q_PROPERTY(int mostPosts READ most_posts NOTIFY changed)      ///< of the longest run
  // Four figures that count, and the words under them.
  Q_PROPERTY(QStringList figures READ figures NOTIFY changed)
  Q_PROPERTY(QStringList figureWords READ figure_words NOTIFY changed)
  Q_PROPERTY(QList<int> grades READ grades NOTIFY changed)  ///< parts of today at grades 1 to 5
  // What is asked before sealing: the worst first.
  Q_PROPERTY(QStringList asks READ asks NOTIFY changed)
  Q_PROPERTY(QList<int> askSigns READ ask_signs NOTIFY changed)  ///< Sign of each
  Q_PROPERTY(QString sealWords READ seal_words NOTIFY changed)   ///< what the seal does
  Q_PROPERTY(QString digest READ digest NOTIFY changed)          ///< "3f9a 71c2 · 0be4 d816"
  Q_PROPERTY(QString signedBy READ signed_by NOTIFY changed)     ///< "MO · 15:41"

 public:
  enum Sign { NoSign, Board, Hollow };
  Q_ENUM(Sign)
  enum Role {
    NameRole = Qt::UserRole,
    PictureRole,
    FromRole,
    ToRole,
    WhyRole,
    WhyLinesRole,
    SpokenRole
  };

  /// The walk and the clock outlive this.
  VisitClose(std::filesystem::path folder, WalkModel& walk, kneerail::Clock& clock,
             QObject* parent = nullptr);
  ~VisitClose() override;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  /// name; picture (RunPicture); of its skipped stretches from and to, places of posts, and why,
  /// "105 to 106 blocked"; the same as lines; spoken.
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

  /// Reads the visit that goes on; what was typed becomes a record before.
  Q_INVOKABLE void open();
  /// Signed with that picture, PNG. Told by `changed`: sealed, or a message.
  Q_INVOKABLE void seal(const QByteArray& signature);

  [[nodiscard]] bool known() const { return known_; }
  [[nodiscard]] bool sealed() const { return sealed_; }
  [[nodiscard]] bool busy() const { return reading_.busy(); }
  [[nodiscard]] QString message() const { return message_; }
  [[nodiscard]] QString title() const;
  [[nodiscard]] QString about() const;
  [[nodiscard]] QString cell_words() const;
  [[nodiscard]] int most_posts() const;
  [[nodiscard]] QStringList figures() const;
  [[nodiscard]] QStringList figure_words() const;
  [[nodiscard]] QList<int> grades() const;
  [[nodiscard]] QStringList asks() const;
  [[nodiscard]] QList<int> ask_signs() const;
  [[nodiscard]] QString seal_words() const;
  [[nodiscard]] QString digest() const;
  [[nodiscard]] QString signed_by() const;

 signals:
  void changed();

 private:
  struct Found {
    kneerail::VisitClosing closing;
    kneerail::TimeZone zone;
  };
  struct Ask {
    Sign sign = NoSign;
    QString words;
  };

  void take(Found found);
  void reckon_asks();
  void ask_hazards();
  void ask_posts();
  void ask_readings();
  void add(Sign sign, const QString& words) { asks_.push_back({sign, words}); }
  [[nodiscard]] QString posts_words(const kneerail::PostStretch& stretch) const;
  [[nodiscard]] QString time_of(kneerail::Instant at) const;

  WalkModel& walk_;
  kneerail::Clock& clock_;
  kneerail::VisitClosing closing_;
  kneerail::TimeZone zone_;  ///< the organisation's
  std::vector<std::unique_ptr<RunPicture>> pictures_;
  std::vector<Ask> asks_;
  QString message_;
  QString person_;
  std::int64_t entries_ = 0;  ///< when it was sealed
  bool known_ = false;
  bool sealed_ = false;
  bool sealing_ = false;
  kneerail::Instant sealed_at_;
  ReadingThread reading_;  ///< last: what it brings finds everything else there
};
