// Pictures as they come into the register: upright, whole, and with nothing beside the picture.

#include <QBuffer>
#include <QImage>
#include <QTemporaryDir>
#include <catch2/catch.hpp>

#include "mobile/picture/metadata.h"
#include "mobile/picture/prepared_picture.h"
#include "tests/mobile/made_pictures.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

QByteArray array_of(const cbor::Bytes& bytes) {
  return {reinterpret_cast<const char*>(bytes.data()), static_cast<qsizetype>(bytes.size())};
}

/// Nothing that a camera writes beside a picture is in it.
void check_stripped(const cbor::Bytes& bytes) {
  const QByteArray all = array_of(bytes);
  for (const char* word : {"Exif", "GPS", "Orrin", "2031:05:14", "another picture"})
    CHECK_FALSE(all.contains(word));
}

}  // namespace

TEST_CASE("an upright picture keeps every byte that is drawn", "[mobile][picture]") {
  const QTemporaryDir folder;
  const QString path = put_file(folder.path(), "a.jpg", camera_jpeg({640, 480}, 1));
  const auto made = prepare_picture(path);
  REQUIRE(made);
  check_stripped(made->bytes);
  CHECK(made->width_pixels == 640);
  CHECK(made->height_pixels == 480);
  CHECK(made->taken == QDateTime({2031, 5, 14}, {10, 51, 7}));
  CHECK(made->megapixels_before == 0);
  CHECK(QImage::fromData(array_of(made->bytes)) == QImage::fromData(made_jpeg({640, 480})));
  const QImage preview = QImage::fromData(array_of(made->preview));
  CHECK(preview.size() == QSize(320, 240));
}

TEST_CASE("a picture that was held on its side is turned upright", "[mobile][picture]") {
  const QTemporaryDir folder;
  const QString path = put_file(folder.path(), "a.jpg", camera_jpeg({640, 480}, 6));
  const auto made = prepare_picture(path);
  REQUIRE(made);
  check_stripped(made->bytes);
  check_stripped(made->preview);
  const QImage image = QImage::fromData(array_of(made->bytes));
  CHECK(image.size() == QSize(480, 640));
  CHECK(made->width_pixels == 480);
  CHECK(image.pixelColor(240, 100).lightness() < 100);  // what was left is above
  CHECK(image.pixelColor(240, 540).lightness() > 150);
}

TEST_CASE("a file that breaks off anywhere is said to be no whole picture", "[mobile][picture]") {
  const QTemporaryDir folder;
  const QByteArray whole = camera_jpeg({64, 48}, GENERATE(1, 6));
  const qsizetype drawn = whole.indexOf("another picture");
  for (qsizetype length = 0; length < drawn; length += 7) {
    INFO("length " << length);
    const auto made = prepare_picture(put_file(folder.path(), "a.jpg", whole.left(length)));
    REQUIRE_FALSE(made);
    CHECK(made.error().message.find("a.jpg") != std::string::npos);
  }
  CHECK(prepare_picture(put_file(folder.path(), "a.jpg", whole.left(drawn))));
  CHECK_FALSE(prepare_picture(put_file(folder.path(), "b.jpg", "no picture at all")));
  CHECK_FALSE(prepare_picture(folder.filePath("gone.jpg")));
}

TEST_CASE("damaged bytes are never read beyond their end", "[mobile][picture]") {
  const QByteArray whole = camera_jpeg({64, 48}, 6);
  for (qsizetype at = 2; at < 200; ++at) {
    QByteArray damaged = whole;
    damaged[at] = static_cast<char>(~damaged[at]);
    const std::span bytes(reinterpret_cast<const std::uint8_t*>(damaged.constData()),
                          static_cast<std::size_t>(damaged.size()));
    (void)moment_in_jpeg(bytes);
    const auto stripped = jpeg_without_metadata(bytes);
    if (stripped) CHECK(stripped->size() <= bytes.size());
  }
}

TEST_CASE("a picture with text in it loses the text alone", "[mobile][picture]") {
  const QTemporaryDir folder;
  QImage image(400, 300, QImage::Format_RGB32);
  image.fill(Qt::darkCyan);
  image.setText("Author", "M. Orrin");
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  REQUIRE(image.save(&buffer, "PNG"));
  REQUIRE(bytes.contains("Orrin"));
  const auto made = prepare_picture(put_file(folder.path(), "a.png", bytes));
  REQUIRE(made);
  CHECK(made->media_type == MediaType::png);
  check_stripped(made->bytes);
  QImage again = QImage::fromData(array_of(made->bytes));
  CHECK(again.convertToFormat(QImage::Format_RGB32).pixelColor(9, 9) == image.pixelColor(9, 9));
  CHECK(made->preview.size() <= made->bytes.size());
}

TEST_CASE("of a hundred megapixels a smaller picture is kept, and said", "[mobile][picture]") {
  const QTemporaryDir folder;
  QImage image(10'000, 10'000, QImage::Format_Grayscale8);
  image.fill(120);
  const QString path = folder.filePath("large.jpg");
  REQUIRE(image.save(path, "JPEG"));
  image = {};
  const auto made = prepare_picture(path);
  REQUIRE(made);
  CHECK(made->megapixels_before == 100);
  CHECK(qint64{made->width_pixels} * made->height_pixels <= 24'000'000);
  CHECK(QImage::fromData(array_of(made->preview)).width() == 320);
}
