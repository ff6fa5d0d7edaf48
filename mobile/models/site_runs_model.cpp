#include "mobile/models/site_runs_model.h"

#include <QQmlEngine>
#include <utility>

using kneerail::SiteRun;
using kneerail::Uuid;

SiteRunsModel::SiteRunsModel(QObject* parent) : QAbstractListModel(parent) {}
SiteRunsModel::~SiteRunsModel() = default;

int SiteRunsModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(runs_.size());
}

QVariant SiteRunsModel::data(const QModelIndex& index, int role) const {
  const auto row = static_cast<std::size_t>(index.row());
  if (!index.isValid() || row >= runs_.size()) return {};
  switch (role) {
    case NameRole:
      return QString::fromStdString(runs_[row].name);
    case SpokenRole:
      return tr("%1, %n post(s)", nullptr, runs_[row].posts)
          .arg(QString::fromStdString(runs_[row].name));
    case PictureRole:
      return QVariant::fromValue(pictures_[row].get());
    case TroubleRole:
      return troubles_[row];
    default:
      return {};
  }
}

QHash<int, QByteArray> SiteRunsModel::roleNames() const {
  return {{NameRole, "name"},
          {SpokenRole, "spoken"},
          {PictureRole, "picture"},
          {TroubleRole, "trouble"}};
}

bool SiteRunsModel::same_runs(const std::vector<SiteRun>& runs) const {
  return std::equal(runs.begin(), runs.end(), runs_.begin(), runs_.end(),
                    [](const SiteRun& a, const SiteRun& b) { return a.id == b.id; });
}

void SiteRunsModel::show(const std::vector<SiteRun>& runs) {
  if (same_runs(runs)) {
    runs_ = runs;
    if (!runs_.empty())
      emit dataChanged(index(0), index(static_cast<int>(runs_.size()) - 1), {NameRole, SpokenRole});
    return;
  }
  beginResetModel();
  runs_ = runs;
  pictures_.clear();
  troubles_.assign(runs_.size(), {});
  for (std::size_t i = 0; i < runs_.size(); ++i) {
    pictures_.push_back(std::make_unique<RunPicture>());
    QQmlEngine::setObjectOwnership(pictures_.back().get(), QQmlEngine::CppOwnership);
  }
  endResetModel();
}

void SiteRunsModel::show_drawing(const Uuid& run, kneerail::RunSheet sheet) {
  for (std::size_t i = 0; i < runs_.size(); ++i) {
    if (runs_[i].id != run) continue;
    pictures_[i]->show(std::make_shared<const kneerail::RunSheet>(std::move(sheet)));
    return cannot_draw(run, {});
  }
}

void SiteRunsModel::cannot_draw(const Uuid& run, const QString& why) {
  for (std::size_t i = 0; i < runs_.size(); ++i) {
    if (runs_[i].id != run || troubles_[i] == why) continue;
    troubles_[i] = why;
    const QModelIndex at = index(static_cast<int>(i));
    emit dataChanged(at, at, {TroubleRole});
  }
}
