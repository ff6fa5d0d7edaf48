#include "mobile/photograph/drawn_photograph.h"

#include <QBuffer>
#include <QImage>
#include <QImageWriter>
#include <algorithm>
#include <vector>

#include "core/base/result.h"
#include "core/base/world.h"
#include "mobile/photograph/surface.h"

namespace kneerail::photograph {
namespace {

constexpr int width = 800;
constexpr int height = 600;
constexpr int blur_pixels = 4;  ///< what lies behind is out of focus
constexpr int preview_width = 320;
constexpr int quality = 82;

struct Seen {
  Vec3 light;
  int solid = -1;  ///< what it is of; -1: the background
};

class Camera {
 public:
  explicit Camera(const Scene& scene) : scene_(scene) {
    for (int y = 0; y < far_rows; ++y)
      for (int x = 0; x < far_columns; ++x)
        far_.push_back(background(scene, through(x * blur_pixels, y * blur_pixels).to));
  }

  [[nodiscard]] Seen at(double x, double y) const {
    const Ray ray = through(x, y);
    const auto hit = scene_.solids.nearest(ray);
    if (!hit) return {behind(x / blur_pixels, y / blur_pixels), -1};
    return {lit(*hit, ray), hit->solid};
  }

 private:
  static constexpr int far_columns = width / blur_pixels + 2;
  static constexpr int far_rows = height / blur_pixels + 2;

  [[nodiscard]] Ray through(double x, double y) const {
    const double across = 2 * x / width - 1;
    const double up = (1 - 2 * y / height) * height / width;
    return {scene_.eye, unit(scene_.forwards * focal + scene_.right * across + scene_.up * up)};
  }
  /// The background between four of its points.
  [[nodiscard]] Vec3 behind(double column, double row) const {
    const int x = static_cast<int>(column);
    const int y = static_cast<int>(row);
    const auto far = [&](int dx, int dy) {
      return far_[static_cast<std::size_t>((y + dy) * far_columns + x + dx)];
    };
    const double part = column - x;
    return mix(mix(far(0, 0), far(1, 0), part), mix(far(0, 1), far(1, 1), part), row - y);
  }
  [[nodiscard]] Vec3 lit(const Hit& hit, const Ray& ray) const {
    const Surface surface = surface_at(scene_, hit);
    const Vec3 out = surface.outwards;
    const double clear = 1 - 0.75 * scene_.overcast;
    double sun = std::max(0.0, dot(out, scene_.sun));
    if (sun > 0 && scene_.solids.shaded({hit.place + hit.outwards * 0.05, scene_.sun})) sun = 0;
    const double sky = 0.5 + 0.5 * out.y;
    const Vec3 around =
        mix(Vec3{0.24, 0.23, 0.21}, Vec3{0.62, 0.68, 0.76}, sky) * (0.85 + 0.55 * scene_.overcast);
    const Vec3 half = unit(scene_.sun - ray.to);
    const double shine = sun > 0 ? std::pow(std::max(0.0, dot(out, half)), surface.sharpness) : 0;
    const double rim = std::pow(1 - std::abs(dot(out, ray.to)), 3);
    return surface.colour * (around + Vec3{1.55, 1.46, 1.32} * (sun * clear)) +
           Vec3{1.5, 1.45, 1.35} * (surface.gloss * shine * clear) +
           Vec3{0.5, 0.55, 0.6} * (surface.gloss * rim * 0.5);
  }

  const Scene& scene_;
  std::vector<Vec3> far_;
};

/// One look a pixel, four where it sees another thing than its neighbours.
std::vector<Vec3> exposed(const Scene& scene) {
  const Camera camera(scene);
  std::vector<Seen> seen;
  seen.reserve(static_cast<std::size_t>(width * height));
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) seen.push_back(camera.at(x + 0.5, y + 0.5));
  const auto solid = [&](int x, int y) {
    return seen[static_cast<std::size_t>(std::clamp(y, 0, height - 1) * width +
                                         std::clamp(x, 0, width - 1))]
        .solid;
  };
  std::vector<Vec3> light;
  light.reserve(seen.size());
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      const Seen& one = seen[static_cast<std::size_t>(y * width + x)];
      const bool fine = one.solid >= 0 && one.solid != 1'000 && solid(x - 1, y) == one.solid &&
                        solid(x + 1, y) == one.solid && solid(x, y - 1) == one.solid &&
                        solid(x, y + 1) == one.solid;
      if (fine || (one.solid < 0 && solid(x - 1, y) < 0 && solid(x + 1, y) < 0 &&
                   solid(x, y - 1) < 0 && solid(x, y + 1) < 0)) {
        light.push_back(one.light);
        continue;
      }
      Vec3 sum{};
      for (const double dy : {0.25, 0.75})
        for (const double dx : {0.25, 0.75}) sum = sum + camera.at(x + dx, y + dy).light;
      light.push_back(sum * 0.25);
    }
  }
  return light;
}

/// As a sensor gives it: curve, dark corners, grain.
QImage developed(const std::vector<Vec3>& light, std::uint64_t seed) {
  QImage image(width, height, QImage::Format_RGB32);
  SplitMix64 chance(seed ^ 0x6C1AULL);
  for (int y = 0; y < height; ++y) {
    auto* line = reinterpret_cast<QRgb*>(image.scanLine(y));
    for (int x = 0; x < width; ++x) {
      const double across = 2.0 * x / width - 1;
      const double down = 2.0 * y / height - 1;
      const double corner = 1 - 0.16 * (across * across + down * down) / 2;
      const double grain = (chance.uniform() + chance.uniform() - 1) * 0.022;
      const auto value = [&](double part) {
        const double bright = 1.05 * part * corner;
        const double soft = bright / (1 + 0.22 * bright);  // the highlights roll off
        const double shown = std::pow(std::max(0.0, soft), 1 / 2.2) + grain;
        return static_cast<int>(std::clamp(shown * 255 + 0.5, 0.0, 255.0));
      };
      const Vec3& one = light[static_cast<std::size_t>(y * width + x)];
      line[x] = qRgb(value(one.x), value(one.y), value(one.z));
    }
  }
  return image;
}

cbor::Bytes coded(const QImage& image) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QImageWriter writer(&buffer, "jpeg");
  writer.setQuality(quality);
  check(writer.write(image), "a drawn photograph could not be coded");
  return {bytes.begin(), bytes.end()};
}

int ten_thousandths(double part) {
  return static_cast<int>(std::clamp(part * 10'000 + 0.5, 0.0, 10'000.0));
}

}  // namespace

demo::DrawnPhotograph drawn(const demo::PhotoScene& of) {
  const Scene scene = made_scene(of);
  const QImage image = developed(exposed(scene), of.seed);
  demo::DrawnPhotograph photograph;
  photograph.picture = coded(image);
  photograph.width_pixels = width;
  photograph.height_pixels = height;
  photograph.preview = coded(image.scaledToWidth(preview_width, Qt::SmoothTransformation));
  const Vec3 to_spot = scene.spot - scene.eye;
  const double deep = dot(to_spot, scene.forwards) / focal;
  const double up = dot(to_spot, scene.up) / deep * width / height;
  photograph.spot_x = ten_thousandths((1 + dot(to_spot, scene.right) / deep) / 2);
  photograph.spot_y = ten_thousandths((1 - up) / 2);
  return photograph;
}

}  // namespace kneerail::photograph
