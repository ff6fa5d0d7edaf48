#include "mobile/picture/device_pictures.h"

#include <QDateTime>
#include <QDirIterator>
#include <QLocale>
#include <QMetaObject>
#include <QStandardPaths>
#include <algorithm>
#include <utility>

DevicePictures::DevicePictures(QObject* parent)
    : QAbstractListModel(parent),
      folder_(QStandardPaths::writableLocation(QStandardPaths::PicturesLocation)) {
  pool_.setMaxThreadCount(1);
  pool_.setThreadPriority(QThread::LowPriority);
}

DevicePictures::~DevicePictures() {
  pool_.clear();
  pool_.waitForDone();
}

int DevicePictures::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(found_.size());
}

QVariant DevicePictures::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const Found& picture = found_[static_cast<std::size_t>(index.row())];
  switch (role) {
    case SourceRole:
      return QUrl::fromLocalFile(picture.path);
    case NameRole:
      return QFileInfo(picture.path).fileName();
    case WhenRole:
      return QLocale().toString(QDateTime::fromMSecsSinceEpoch(picture.changed_ms),
                                tr("d MMM HH:mm"));
    default:
      return {};
  }
}

QHash<int, QByteArray> DevicePictures::roleNames() const {
  return {{SourceRole, "source"}, {NameRole, "name"}, {WhenRole, "when"}};
}

void DevicePictures::set_folder(const QString& folder) {
  if (folder == folder_) return;
  folder_ = folder;
  refresh();
}

std::vector<DevicePictures::Found> DevicePictures::newest_in(const QString& folder) {
  constexpr int looked_at_most = 50'000;
  std::vector<Found> found;
  if (folder.isEmpty()) return found;
  const QStringList kinds{"*.jpg", "*.jpeg", "*.png", "*.webp", "*.JPG", "*.JPEG", "*.PNG"};
  QDirIterator files(folder, kinds, QDir::Files | QDir::Readable, QDirIterator::Subdirectories);
  for (int i = 0; i < looked_at_most && files.hasNext(); ++i) {
    files.next();
    const QFileInfo info = files.fileInfo();
    found.push_back({info.absoluteFilePath(), info.lastModified().toMSecsSinceEpoch()});
  }
  std::sort(found.begin(), found.end(), [](const Found& one, const Found& other) {
    return std::pair(other.changed_ms, other.path) < std::pair(one.changed_ms, one.path);
  });
  if (found.size() > most) found.resize(most);
  return found;
}

void DevicePictures::refresh() {
  ++asked_;
  pool_.start([this, folder = folder_] {
    auto found = newest_in(folder);
    QMetaObject::invokeMethod(
        this, [this, found = std::move(found)]() mutable { show(std::move(found)); },
        Qt::QueuedConnection);
  });
}

void DevicePictures::show(std::vector<Found> found) {
  --asked_;
  if (found != found_) {
    beginResetModel();
    found_ = std::move(found);
    endResetModel();
  }
  emit listed();
}
