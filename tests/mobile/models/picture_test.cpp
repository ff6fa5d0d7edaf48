// Pictures as they come into the register: upright, whole, and with nothing beside the picture.

#include <sys/mman.h>
#include <unistd.h>

#include <QBuffer>
#include <QImage>
#include <QTemporaryDir>
#include <algorithm>
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

/// Bytes whose end is the end of what may be read: one further and the system ends the test.
class AtTheEdge {
 public:
  explicit AtTheEdge(const QByteArray& bytes) : size_(static_cast<std::size_t>(bytes.size())) {
    const std::size_t page = static_cast<std::size_t>(sysconf(_SC_PAGESIZE));
    held_ = (size_ + page - 1) / page * page;
    place_ =
        mmap(nullptr, held_ + page, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);
    REQUIRE(place_ != MAP_FAILED);
    mapped_ = held_ + page;
    auto* first = static_cast<std::uint8_t*>(place_);
    REQUIRE(mprotect(first + held_, page, PROT_NONE) == 0);
    first_ = first + held_ - size_;
    std::copy(bytes.begin(), bytes.end(), first_);
  }
  ~AtTheEdge() { munmap(place_, mapped_); }
  AtTheEdge(const AtTheEdge&) = delete;
  AtTheEdge& operator=(const AtTheEdge&) = delete;

  [[nodiscard]] std::span<const std::uint8_t> bytes() const { return {first_, size_}; }

 private:
  std::size_t size_;
  std::size_t held_ = 0;
  std::size_t mapped_ = 0;
  void* place_ = nullptr;
  std::uint8_t* first_ = nullptr;
};

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
  int refused = 0, stripped_all = 0;
  for (qsizetype at = 2; at < 400; ++at) {
    for (const int flip : {0xff, 0x01, 0x80}) {
      QByteArray damaged = whole;
      damaged[at] = static_cast<char>(damaged[at] ^ flip);
      const AtTheEdge edge(damaged);
      (void)moment_in_jpeg(edge.bytes());
      const auto stripped = jpeg_without_metadata(edge.bytes());
      refused += stripped ? 0 : 1;
      stripped_all += stripped && !array_of(*stripped).contains("2031:05:14") ? 1 : 0;
    }
  }
  CHECK(refused > 0);
  CHECK(stripped_all > 0);
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
