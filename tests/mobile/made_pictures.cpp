#include "tests/mobile/made_pictures.h"

#include <QBuffer>
#include <QDir>
#include <QFile>
#include <QImage>
#include <QImageWriter>
#include <QPainter>

#include <catch2/catch.hpp>

namespace kneerail::tests {

namespace {

void add16(QByteArray& out, int value) {
  out.append(static_cast<char>(value >> 8)).append(static_cast<char>(value & 0xFF));
}

void add32(QByteArray& out, int value) {
  add16(out, value >> 16);
  add16(out, value & 0xFFFF);
}

void add_entry(QByteArray& out, int tag, int type, int count, int value) {
  add16(out, tag);
  add16(out, type);
  add32(out, count);
  if (type == 3) {
    add16(out, value);
    add16(out, 0);
  } else {
    add32(out, value);
  }
}

/// Big-endian TIFF: how it was held, and in the EXIF directory when.
QByteArray exif(int orientation) {
  constexpr int shorts = 3, longs = 4, text = 2;
  QByteArray tiff("MM\0*", 4);
  add32(tiff, 8);
  add16(tiff, 2);
  add_entry(tiff, 0x0112, shorts, 1, orientation);
  add_entry(tiff, 0x8769, longs, 1, 38);
  add32(tiff, 0);
  add16(tiff, 1);
  add_entry(tiff, 0x9003, text, 20, 56);
  add32(tiff, 0);
  tiff.append("2031:05:14 10:51:07", 20);
  tiff.append("GPSLatitude 51.5");
  return QByteArray("Exif\0\0", 6) + tiff;
}

QByteArray segment(char marker, const QByteArray& payload) {
  QByteArray out("\xFF");
  out.append(marker);
  add16(out, static_cast<int>(payload.size()) + 2);
  return out + payload;
}

}  // namespace

QByteArray made_jpeg(QSize size) {
  QImage image(size, QImage::Format_RGB32);
  image.fill(QColor(200, 205, 210));
  QPainter painter(&image);
  painter.fillRect(0, 0, size.width() / 2, size.height(), QColor(60, 70, 80));
  painter.end();
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  REQUIRE(QImageWriter(&buffer, "jpeg").write(image));
  return bytes;
}

QByteArray camera_jpeg(QSize size, int orientation) {
  const QByteArray plain = made_jpeg(size);
  return plain.left(2) + segment('\xE1', exif(orientation)) +
         segment('\xFE', "camera of M. Orrin") + plain.mid(2) + "another picture behind it";
}

QString put_file(const QString& folder, const QString& name, const QByteArray& bytes) {
  REQUIRE(QDir().mkpath(folder));
  QFile file(folder + '/' + name);
  REQUIRE(file.open(QIODevice::WriteOnly));
  REQUIRE(file.write(bytes) == bytes.size());
  return file.fileName();
}

}  // namespace kneerail::tests
