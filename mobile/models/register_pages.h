#pragma once

// The register's pages in the Sites room: a site's sheet, a run laid out by rule, and a run that is
// changed; which leads to which.

#include <QtQml/qqmlregistration.h>
#include <QObject>

#include "mobile/models/changed_run.h"
#include "mobile/models/run_sentence.h"
#include "mobile/models/site_sentence.h"

class RegisterPages : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  Q_PROPERTY(SiteSentence* site READ site CONSTANT)
  Q_PROPERTY(RunSentence* run READ run CONSTANT)
  Q_PROPERTY(ChangedRun* change READ change CONSTANT)

 public:
  /// All outlive this. `who` says who has the tablet, zero: nobody said.
  RegisterPages(StoreLink& store, kneerail::Clock& clock, kneerail::Random& random,
                const std::function<kneerail::Uuid()>& who, QObject* parent = nullptr);

  [[nodiscard]] SiteSentence* site() { return &site_; }
  [[nodiscard]] RunSentence* run() { return &run_; }
  [[nodiscard]] ChangedRun* change() { return &change_; }
  [[nodiscard]] bool busy() const { return site_.busy() || run_.busy() || change_.busy(); }

  void open_site(const kneerail::Uuid& site) { site_.show_site(site); }

 signals:
  void kept();  ///< something came into the register
  void runWanted(const kneerail::Uuid& run);
  /// It stands otherwise now: who shows it reads it again.
  void runChanged(const kneerail::Uuid& run);

 private:
  SiteSentence site_;
  RunSentence run_;
  ChangedRun change_;
};
