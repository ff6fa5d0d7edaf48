#include "mobile/picture/metadata.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace kneerail {

namespace {

using Span = std::span<const std::uint8_t>;

Error broken() {
  return fail(Fault::corrupt, "The picture breaks off before its end.");
}

bool begins_with(Span bytes, std::string_view words) {
  return bytes.size() >= words.size() &&
         std::equal(words.begin(), words.end(), bytes.begin(), [](char letter, std::uint8_t byte) {
           return static_cast<std::uint8_t>(letter) == byte;
         });
}

// JPEG --------------------------------------------------------------------------------------------

constexpr std::uint8_t start_of_image = 0xD8, end_of_image = 0xD9, start_of_scan = 0xDA;
constexpr std::uint8_t app_0 = 0xE0, app_1 = 0xE1, app_2 = 0xE2, app_14 = 0xEE, app_15 = 0xEF;
constexpr std::uint8_t comment = 0xFE, first_restart = 0xD0, last_restart = 0xD7;

/// One marker with what belongs to it, its length not counted.
struct Segment {
  std::uint8_t marker = 0;
  Span payload;
};

/// Goes through a JPEG file from marker to marker.
class Segments {
 public:
  explicit Segments(Span bytes) : bytes_(bytes) {}

  [[nodiscard]] bool begins() const {
    return bytes_.size() > 4 && bytes_[0] == 0xFF && bytes_[1] == start_of_image;
  }

  /// The next one; nothing where the file breaks off.
  std::optional<Segment> next() {
    while (at_ < bytes_.size() && bytes_[at_] != 0xFF) ++at_;  // what some writers pad with
    while (at_ < bytes_.size() && bytes_[at_] == 0xFF) ++at_;
    if (at_ >= bytes_.size()) return {};
    const std::uint8_t marker = bytes_[at_++];
    if (marker == end_of_image) return Segment{marker, {}};
    if (at_ + 2 > bytes_.size()) return {};
    const std::size_t length = static_cast<std::size_t>(bytes_[at_] << 8 | bytes_[at_ + 1]);
    if (length < 2 || at_ + length > bytes_.size()) return {};
    const Segment segment{marker, bytes_.subspan(at_ + 2, length - 2)};
    at_ += length;
    return segment;
  }

  /// The coded picture after a start of scan, up to the next marker.
  Span scan() {
    const std::size_t from = at_;
    while (at_ + 1 < bytes_.size()) {
      const std::uint8_t after = bytes_[at_ + 1];
      const bool inside = after == 0 || (after >= first_restart && after <= last_restart);
      if (bytes_[at_] == 0xFF && !inside && after != 0xFF) break;
      ++at_;
    }
    return bytes_.subspan(from, at_ - from);
  }

 private:
  Span bytes_;
  std::size_t at_ = 2;
};

void append(cbor::Bytes& out, Span bytes) {
  out.insert(out.end(), bytes.begin(), bytes.end());
}

void append(cbor::Bytes& out, std::uint8_t marker, Span payload) {
  const std::size_t length = payload.size() + 2;
  const std::array<std::uint8_t, 4> head = {0xFF, marker, static_cast<std::uint8_t>(length >> 8),
                                            static_cast<std::uint8_t>(length & 0xFF)};
  append(out, head);
  append(out, payload);
}

/// The colours' own description stays; the small picture in a JFIF head goes.
void append_application(cbor::Bytes& out, const Segment& segment) {
  constexpr std::size_t jfif_bytes = 12;  // up to the size of its small picture
  if (segment.marker == app_2 && begins_with(segment.payload, "ICC_PROFILE"))
    append(out, segment.marker, segment.payload);
  if (segment.marker == app_14 && begins_with(segment.payload, "Adobe"))
    append(out, segment.marker, segment.payload);
  if (segment.marker != app_0 || !begins_with(segment.payload, "JFIF")) return;
  if (segment.payload.size() < jfif_bytes) return;
  cbor::Bytes head(segment.payload.begin(), segment.payload.begin() + jfif_bytes);
  head.resize(jfif_bytes + 2, 0);
  append(out, segment.marker, head);
}

// EXIF --------------------------------------------------------------------------------------------

/// A TIFF directory inside an EXIF segment. Nothing in it is trusted.
class Tiff {
 public:
  explicit Tiff(Span bytes) : bytes_(bytes), little_(begins_with(bytes, "II")) {}

  [[nodiscard]] bool begins() const { return little_ || begins_with(bytes_, "MM"); }
  [[nodiscard]] std::uint32_t first() const { return number(4, 4); }

  /// Where the entry's value stands, for the directory at `at`.
  [[nodiscard]] std::optional<std::size_t> entry(std::uint32_t at, std::uint32_t tag) const {
    const std::uint32_t count = number(at, 2);
    for (std::uint32_t i = 0; i < count; ++i) {
      const std::size_t place = std::size_t{at} + 2 + std::size_t{i} * 12;
      if (place + 12 > bytes_.size()) return {};
      if (number(place, 2) == tag) return place + 8;
    }
    return {};
  }

  [[nodiscard]] std::uint32_t number(std::size_t at, int size) const {
    std::uint32_t value = 0;
    if (at + static_cast<std::size_t>(size) > bytes_.size()) return 0;
    for (int i = 0; i < size; ++i) {
      const auto place = at + static_cast<std::size_t>(little_ ? size - 1 - i : i);
      value = value << 8 | bytes_[place];
    }
    return value;
  }

  [[nodiscard]] std::optional<std::string> text(std::size_t at, std::size_t length) const {
    if (at > bytes_.size() || length > bytes_.size() - at) return {};
    const Span found = bytes_.subspan(at, length);
    return std::string(found.begin(), found.end());
  }

 private:
  Span bytes_;
  bool little_;
};

std::optional<std::string> moment_in(Span exif) {
  constexpr std::uint32_t exif_directory = 0x8769, taken = 0x9003;
  constexpr std::size_t moment_bytes = 19;
  const Tiff tiff(exif);
  if (!tiff.begins()) return {};
  const auto directory = tiff.entry(tiff.first(), exif_directory);
  if (!directory) return {};
  const auto moment = tiff.entry(tiff.number(*directory, 4), taken);
  if (!moment) return {};
  return tiff.text(tiff.number(*moment, 4), moment_bytes);
}

// PNG ---------------------------------------------------------------------------------------------

constexpr std::array<std::uint8_t, 8> png_head = {0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
constexpr std::string_view drawn_chunks[] = {"IHDR", "PLTE", "tRNS", "gAMA", "cHRM", "sRGB",
                                             "iCCP", "sBIT", "bKGD", "pHYs", "IDAT", "IEND"};

}  // namespace

std::optional<std::string> moment_in_jpeg(Span bytes) {
  constexpr std::size_t exif_head = 6;  // "Exif", two zeros
  Segments segments(bytes);
  if (!segments.begins()) return {};
  for (auto segment = segments.next(); segment; segment = segments.next()) {
    if (segment->marker == start_of_scan || segment->marker == end_of_image) return {};
    if (segment->marker == app_1 && begins_with(segment->payload, "Exif"))
      return segment->payload.size() > exif_head ? moment_in(segment->payload.subspan(exif_head))
                                                 : std::nullopt;
  }
  return {};
}

Result<cbor::Bytes> jpeg_without_metadata(Span bytes) {
  Segments segments(bytes);
  if (!segments.begins()) return broken();
  cbor::Bytes out = {0xFF, start_of_image};
  out.reserve(bytes.size());
  while (const auto segment = segments.next()) {
    if (segment->marker == end_of_image) {
      append(out, std::array<std::uint8_t, 2>{0xFF, end_of_image});
      return out;
    }
    if (segment->marker == comment) continue;
    if (segment->marker >= app_0 && segment->marker <= app_15) {
      append_application(out, *segment);
      continue;
    }
    append(out, segment->marker, segment->payload);
    if (segment->marker == start_of_scan) append(out, segments.scan());
  }
  return broken();
}

Result<cbor::Bytes> png_without_metadata(Span bytes) {
  constexpr std::size_t around = 12;  // length, name and check of a chunk
  if (bytes.size() < png_head.size() ||
      !std::equal(png_head.begin(), png_head.end(), bytes.begin()))
    return broken();
  cbor::Bytes out(png_head.begin(), png_head.end());
  out.reserve(bytes.size());
  std::size_t at = png_head.size();
  while (at + around <= bytes.size()) {
    std::size_t length = 0;
    for (std::size_t i = 0; i < 4; ++i) length = length << 8 | bytes[at + i];
    if (length > bytes.size() - at - around) return broken();
    const Span chunk = bytes.subspan(at, length + around);
    const auto is_drawn = [&](std::string_view name) {
      return begins_with(chunk.subspan(4), name);
    };
    if (std::any_of(std::begin(drawn_chunks), std::end(drawn_chunks), is_drawn)) append(out, chunk);
    if (is_drawn("IEND")) return out;
    at += chunk.size();
  }
  return broken();
}

}  // namespace kneerail
