#pragma once

// The runs of one site for its band: name, length, and the drawing once it is read.

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <memory>
#include <vector>

#include "mobile/models/run_picture.h"
#include "schema/store/site_store.h"

class SiteRunsModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by SitesModel")

 public:
  enum Role { NameRole = Qt::UserRole, SpokenRole, PictureRole, TroubleRole };

  explicit SiteRunsModel(QObject* parent = nullptr);
  ~SiteRunsModel() override;
  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

  /// Other runs, or the same ones as they stand now: their drawings stay until they are read again.
  void show(const std::vector<kneerail::SiteRun>& runs);
  void show_drawing(const kneerail::Uuid& run, kneerail::RunSheet sheet);
  /// Why a run is not drawn, or not as it stands now.
  void cannot_draw(const kneerail::Uuid& run, const QString& why);
  [[nodiscard]] const std::vector<kneerail::SiteRun>& runs() const { return runs_; }
  [[nodiscard]] RunPicture& picture(std::size_t run) const { return *pictures_.at(run); }

 private:
  [[nodiscard]] bool same_runs(const std::vector<kneerail::SiteRun>& runs) const;

  std::vector<kneerail::SiteRun> runs_;
  std::vector<std::unique_ptr<RunPicture>> pictures_;
  std::vector<QString> troubles_;  ///< empty: it is drawn as it stands
};
