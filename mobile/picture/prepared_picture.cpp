#include "mobile/picture/prepared_picture.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QFile>
#include <QFileInfo>
#include <QImageReader>
#include <QImageWriter>
#include <cmath>

#include "mobile/picture/metadata.h"

namespace kneerail {

namespace {

class PictureWords {
  Q_DECLARE_TR_FUNCTIONS(PictureWords)
};

constexpr qint64 file_bytes_most = 64LL * 1024 * 1024;
constexpr qint64 pixels_most = 50'000'000;
constexpr qint64 pixels_made = 24'000'000;
constexpr qint64 megapixel = 1'000'000;
constexpr int preview_pixels = 320;
constexpr int picture_quality = 92;
constexpr int preview_quality = 80;

std::span<const std::uint8_t> bytes_of(const QByteArray& array) {
  return {reinterpret_cast<const std::uint8_t*>(array.constData()),
          static_cast<std::size_t>(array.size())};
}

Error refused(Fault fault, const QString& path, const QString& why) {
  const QString sentence =
      PictureWords::tr("%1: %2 The file stays where it is.").arg(QFileInfo(path).fileName(), why);
  return fail(fault, sentence.toStdString());
}

Error no_picture(const QString& path) {
  return refused(Fault::corrupt, path,
                 PictureWords::tr("This is no whole picture, so it was not added."));
}

Result<QByteArray> read_file(const QString& path) {
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly))
    return refused(Fault::io, path, PictureWords::tr("It cannot be read."));
  if (file.size() > file_bytes_most)
    return refused(Fault::invalid_input, path,
                   PictureWords::tr("It is larger than the 64 MB that are kept."));
  return file.readAll();
}

Result<cbor::Bytes> jpeg_of(const QImage& image, int quality) {
  QByteArray coded;
  QBuffer buffer(&coded);
  buffer.open(QIODevice::WriteOnly);
  QImageWriter writer(&buffer, "jpeg");
  writer.setQuality(quality);
  if (!writer.write(image)) return fail(Fault::invalid_input, "The picture cannot be coded.");
  return jpeg_without_metadata(bytes_of(coded));
}

/// Larger pictures are read smaller at once: all of their pixels are never in memory.
QSize size_to_read(const QSize& size) {
  const qint64 pixels = qint64{size.width()} * size.height();
  if (pixels <= pixels_most) return size;
  const double smaller = std::sqrt(static_cast<double>(pixels_made) / static_cast<double>(pixels));
  return {static_cast<int>(size.width() * smaller), static_cast<int>(size.height() * smaller)};
}

Result<> add_preview(PreparedPicture& made) {
  QByteArray kept(reinterpret_cast<const char*>(made.bytes.data()),
                  static_cast<qsizetype>(made.bytes.size()));
  QBuffer buffer(&kept);
  buffer.open(QIODevice::ReadOnly);
  QImageReader reader(&buffer);
  const QSize size = reader.size();
  if (size.width() > preview_pixels)
    reader.setScaledSize(size.scaled(preview_pixels, size.height(), Qt::KeepAspectRatio));
  const QImage small = reader.read();
  if (small.isNull()) return fail(Fault::corrupt, "");
  auto preview = jpeg_of(small, preview_quality);
  if (!preview) return fail(preview.error());
  made.preview = preview->size() < made.bytes.size() ? std::move(*preview) : made.bytes;
  return Done{};
}

/// As it is, or coded anew where it has to be turned, made smaller, or is of another kind.
Result<PreparedPicture> made_of(const QByteArray& file, QImageReader& reader) {
  PreparedPicture made;
  const QSize size = reader.size();
  const QSize wanted = size_to_read(size);
  const bool jpeg = reader.format() == "jpeg";
  const bool png = reader.format() == "png";
  if (wanted != size)
    made.megapixels_before = static_cast<int>(qint64{size.width()} * size.height() / megapixel);
  const bool upright = reader.transformation() == QImageIOHandler::TransformationNone;
  if (upright && wanted == size && (jpeg || png)) {
    auto bytes =
        jpeg ? jpeg_without_metadata(bytes_of(file)) : png_without_metadata(bytes_of(file));
    if (!bytes) return fail(bytes.error());
    made.bytes = std::move(*bytes);
    made.media_type = jpeg ? MediaType::jpeg : MediaType::png;
    made.width_pixels = size.width();
    made.height_pixels = size.height();
    return made;
  }
  if (jpeg)
    if (auto whole = jpeg_without_metadata(bytes_of(file)); !whole) return fail(whole.error());
  if (wanted != size) reader.setScaledSize(wanted);
  reader.setAutoTransform(true);
  const QImage image = reader.read();
  if (image.isNull()) return fail(Fault::corrupt, "");
  auto bytes = jpeg_of(image, picture_quality);
  if (!bytes) return fail(bytes.error());
  made.bytes = std::move(*bytes);
  made.width_pixels = image.width();
  made.height_pixels = image.height();
  return made;
}

}  // namespace

Result<PreparedPicture> prepare_picture(const QString& path) {
  auto file = read_file(path);
  if (!file) return fail(file.error());
  QBuffer buffer(&*file);
  buffer.open(QIODevice::ReadOnly);
  QImageReader reader(&buffer);
  const QByteArray format = reader.format();
  if (format != "jpeg" && format != "png" && format != "webp")
    return refused(Fault::invalid_input, path,
                   PictureWords::tr("Pictures are kept as JPEG, PNG or WebP; this is none."));
  if (reader.size().isEmpty()) return no_picture(path);
  auto made = made_of(*file, reader);
  if (made && add_preview(*made)) {
    if (format == "jpeg")
      if (const auto moment = moment_in_jpeg(bytes_of(*file)))
        made->taken = QDateTime::fromString(QString::fromStdString(*moment),
                                            QStringLiteral("yyyy:MM:dd HH:mm:ss"));
    return made;
  }
  return no_picture(path);
}

}  // namespace kneerail
