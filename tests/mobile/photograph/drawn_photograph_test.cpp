#include "mobile/photograph/drawn_photograph.h"

#include <QImage>
#include <catch2/catch.hpp>
#include <set>

using namespace kneerail;
using demo::Backdrop;
using demo::Damage;
using demo::Shown;

namespace {

demo::PhotoScene split(std::uint64_t seed) {
  return {.seed = seed, .shown = Shown::cross, .damage = Damage::split, .grade = 5};
}

/// The markers of a JPEG file's segments up to its first scan (ITU T.81, B.1).
std::set<int> segments(const cbor::Bytes& jpeg) {
  std::set<int> markers;
  REQUIRE(jpeg.size() > 4);
  REQUIRE(jpeg[0] == 0xFF);
  REQUIRE(jpeg[1] == 0xD8);
  for (std::size_t at = 2; at + 4 <= jpeg.size();) {
    REQUIRE(jpeg[at] == 0xFF);
    const int marker = jpeg[at + 1];
    markers.insert(marker);
    if (marker == 0xDA) break;
    at += 2 + static_cast<std::size_t>(jpeg[at + 2] << 8 | jpeg[at + 3]);
  }
  return markers;
}

QImage decoded(const cbor::Bytes& jpeg) {
  return QImage::fromData(jpeg.data(), static_cast<int>(jpeg.size()), "jpeg");
}

/// Share of the pixels that are rust: clearly more red than green and more green than blue.
double rusty(const QImage& image) {
  int count = 0;
  for (int y = 0; y < image.height(); ++y) {
    for (int x = 0; x < image.width(); ++x) {
      const QRgb one = image.pixel(x, y);
      if (qRed(one) > qGreen(one) + 25 && qGreen(one) > qBlue(one) + 8) ++count;
    }
  }
  return double(count) / (image.width() * image.height());
}

}  // namespace

TEST_CASE("one scene gives the same bytes, another seed others", "[mobile]") {
  const auto first = demo::DrawnPhotograph(photograph::drawn(split(11)));
  const auto again = photograph::drawn(split(11));
  CHECK(first.picture == again.picture);
  CHECK(first.preview == again.preview);
  CHECK(first.picture != photograph::drawn(split(12)).picture);
  demo::PhotoScene rust = split(11);
  rust.damage = Damage::rust;
  CHECK(first.picture != photograph::drawn(rust).picture);
}

TEST_CASE("a drawn photograph says nothing but what it shows", "[mobile]") {
  const auto drawn = photograph::drawn(split(11));
  for (const cbor::Bytes* bytes : {&drawn.picture, &drawn.preview}) {
    const auto markers = segments(*bytes);
    CHECK(markers.contains(0xC0));  // a baseline frame: the list was read to its end
    CHECK(markers.contains(0xDA));
    for (int application = 0xE1; application <= 0xEF; ++application)  // EXIF and its kin
      CHECK_FALSE(markers.contains(application));
    CHECK_FALSE(markers.contains(0xFE));  // comments
  }
  const QImage picture = decoded(drawn.picture);
  CHECK(picture.width() == drawn.width_pixels);
  CHECK(picture.height() == drawn.height_pixels);
  CHECK(decoded(drawn.preview).width() == 320);
  CHECK(drawn.preview.size() < 40'000);
}

TEST_CASE("every part can be photographed: rust is seen, and the spot is in the picture",
          "[mobile]") {
  for (int shown = 0; shown <= static_cast<int>(Shown::gate); ++shown) {
    INFO("part " << shown);
    const auto drawn = photograph::drawn({.seed = 40U + static_cast<unsigned>(shown),
                                          .shown = static_cast<Shown>(shown),
                                          .backdrop = static_cast<Backdrop>(shown % 4)});
    CHECK(rusty(decoded(drawn.picture)) > 0.02);
    CHECK(drawn.spot_x > 1'000);
    CHECK(drawn.spot_x < 9'000);
    CHECK(drawn.spot_y > 1'000);
    CHECK(drawn.spot_y < 9'000);
  }
}
