#pragma once

// The newest pictures in the tablet's own picture folder, the newest first. The folder is read away
// from the screens.

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <QThreadPool>
#include <QUrl>
#include <vector>

class DevicePictures : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by FindingPen")
  Q_PROPERTY(int count READ count NOTIFY listed)
  Q_PROPERTY(QString folder READ folder WRITE set_folder NOTIFY listed)

 public:
  enum Role { SourceRole = Qt::UserRole + 1, NameRole, WhenRole };
  static constexpr int most = 24;

  explicit DevicePictures(QObject* parent = nullptr);
  ~DevicePictures() override;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;
  [[nodiscard]] int count() const { return rowCount(); }
  [[nodiscard]] const QString& folder() const { return folder_; }
  /// Tests name another than the machine's.
  void set_folder(const QString& folder);
  [[nodiscard]] bool busy() const { return asked_ > 0; }

  /// Reads the folder again.
  Q_INVOKABLE void refresh();

 signals:
  void listed();

 private:
  struct Found {
    QString path;
    qint64 changed_ms = 0;
    bool operator==(const Found&) const = default;
  };
  static std::vector<Found> newest_in(const QString& folder);
  void show(std::vector<Found> found);

  QString folder_;
  std::vector<Found> found_;
  QThreadPool pool_;
  int asked_ = 0;
};
