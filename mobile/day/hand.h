#pragma once

// A finger on the window and an eye on it: touches what has a name, waits until the screen stands
// still, and takes pictures lying and standing.

#include <QPointF>
#include <QQuickItem>
#include <QQuickWindow>
#include <QString>
#include <filesystem>
#include <functional>
#include <vector>

#include "core/base/result.h"
#include "mobile/screens/rooms.h"

namespace kneerail::day {

class Hand {
 public:
  /// All outlive this. `pictures` is a folder that is there.
  Hand(QQuickWindow& window, Rooms& rooms, std::filesystem::path pictures);

  /// The first item on the screen, in drawing order, for which this holds; null for none.
  using Holds = std::function<bool(const QQuickItem&)>;
  [[nodiscard]] QQuickItem* find(const Holds& holds) const;
  [[nodiscard]] QQuickItem* named(const QString& name) const;

  /// A short touch on the middle of what has that name. Errors: not_found (it is not on the
  /// screen).
  Result<> touch(const QString& name);
  /// A short touch on a place of an item, px.
  void touch_at(const QQuickItem& item, QPointF place_px);
  /// A finger that goes along places of an item, px. It lets go at the last.
  void drag(const QQuickItem& item, const std::vector<QPointF>& places_px);
  /// What was entered is on the disk, what was asked is reckoned, and the picture follows.
  void settle();
  /// Saves NAME-1280x800.png and NAME-800x1280.png; the window lies again afterwards. Errors: io.
  Result<> picture(const std::string& name);
  [[nodiscard]] int pictures() const { return pictures_; }

 private:
  QQuickWindow& window_;
  Rooms& rooms_;
  std::filesystem::path folder_;
  QPointingDevice* screen_;
  int pictures_ = 0;
};

}  // namespace kneerail::day
