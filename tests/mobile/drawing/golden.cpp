#include "tests/mobile/drawing/golden.h"

#include <QPainter>
#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <vector>

#include "mobile/elevation/shape_painter.h"

namespace kneerail::tests {

namespace {

QString path(const char* folder, const std::string& name, const char* end) {
  return QString::fromLocal8Bit(folder) + QLatin1Char('/') + QString::fromStdString(name) +
         QString::fromLatin1(end);
}

int furthest(QRgb a, QRgb b) {
  return std::max({std::abs(qRed(a) - qRed(b)), std::abs(qGreen(a) - qGreen(b)),
                   std::abs(qBlue(a) - qBlue(b))});
}

}  // namespace

QImage drawn(const elevation::ShapeList& list, QSize size, elevation::Point origin,
             const QColor& ground) {
  elevation::ShapeList shapes = list;
  shapes.labels.clear();
  QImage image(size, QImage::Format_RGB32);
  image.fill(ground);
  QPainter painter(&image);
  painter.translate(static_cast<double>(origin.x), static_cast<double>(origin.y));
  elevation::paint(painter, shapes, {});
  return image;
}

bool Comparison::alike() const {
  return share <= most_differing_share && worst_share <= most_differing_in_tile;
}

Comparison compare(const QImage& golden, const QImage& seen) {
  Comparison result;
  if (golden.size() != seen.size()) return result;
  constexpr int a_tenth = 26;
  const int tiles_across = golden.width() / tile_px + 1;
  std::vector<int> in_tile(static_cast<std::size_t>(tiles_across) *
                           static_cast<std::size_t>(golden.height() / tile_px + 1));
  result.difference = QImage(golden.size(), QImage::Format_RGB32);
  for (int y = 0; y < golden.height(); ++y) {
    for (int x = 0; x < golden.width(); ++x) {
      const QRgb was = golden.pixel(x, y);
      const int grey = 160 + qGray(was) * 95 / 255;
      const bool differs = furthest(was, seen.pixel(x, y)) > a_tenth;
      result.difference.setPixel(x, y, differs ? qRgb(200, 0, 0) : qRgb(grey, grey, grey));
      if (!differs) continue;
      ++result.differing;
      ++in_tile[static_cast<std::size_t>(y / tile_px * tiles_across + x / tile_px)];
    }
  }
  result.share = static_cast<double>(result.differing) / (golden.width() * golden.height());
  result.worst_share =
      static_cast<double>(*std::max_element(in_tile.begin(), in_tile.end())) / (tile_px * tile_px);
  return result;
}

void check_golden(const std::string& name, const QImage& seen) {
  const QString golden_path = path(KNEERAIL_GOLDEN_FOLDER, name, ".png");
  if (std::getenv("KNEERAIL_RENEW_GOLDEN") != nullptr) {
    REQUIRE(seen.save(golden_path));
    return;
  }
  const QImage golden(golden_path);
  INFO("golden picture " << golden_path.toStdString());
  REQUIRE_FALSE(golden.isNull());
  const Comparison result = compare(golden, seen);
  if (result.alike()) {
    SUCCEED();
    return;
  }
  const QString seen_path = path(KNEERAIL_SEEN_FOLDER, name, ".seen.png");
  const QString difference_path = path(KNEERAIL_SEEN_FOLDER, name, ".difference.png");
  CHECK(seen.save(seen_path));
  if (!result.difference.isNull()) CHECK(result.difference.save(difference_path));
  FAIL(result.differing << " pixels differ, " << 100 * result.share << " % of the picture. Now: "
                        << seen_path.toStdString() << ". Where: " << difference_path.toStdString());
}

}  // namespace kneerail::tests
