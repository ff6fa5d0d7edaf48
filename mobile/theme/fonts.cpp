#include "mobile/theme/fonts.h"

#include <QByteArray>
#include <QFile>
#include <QFontDatabase>
#include <QStandardPaths>

namespace kneerail::theme {

namespace {

// Four letters like the name they stand for, so that no length in the font changes.
constexpr char16_t named[] = u"B612";
constexpr char16_t own_name[] = u"Deck";

/// As a font's table of names writes it: two bytes a letter, the high one first.
QByteArray in_name_table(const char16_t* name) {
  QByteArray bytes;
  for (; *name != 0; ++name) {
    bytes.append(static_cast<char>(*name >> 8));
    bytes.append(static_cast<char>(*name & 0xFF));
  }
  return bytes;
}

bool add_face(const QString& file_name) {
  const QString path = QStandardPaths::locate(QStandardPaths::GenericDataLocation,
                                              QStringLiteral("fonts/opentype/b612/") + file_name);
  QFile file(path);
  if (path.isEmpty() || !file.open(QIODevice::ReadOnly)) return false;
  QByteArray face = file.readAll();
  face.replace(in_name_table(named), in_name_table(own_name));
  return QFontDatabase::addApplicationFontFromData(face) >= 0;
}

QString family_or_system(const QString& family, QString& missing_package) {
  if (QFontDatabase::hasFamily(family)) return family;
  missing_package = QStringLiteral("fonts-b612");
  return QFontDatabase::systemFont(QFontDatabase::GeneralFont).family();
}

Fonts find_fonts() {
  Fonts found;
  found.digest = family_or_system(QStringLiteral("B612 Mono"), found.missing_package);
  const bool regular = add_face(QStringLiteral("B612-Regular.otf"));
  const bool bold = add_face(QStringLiteral("B612-Bold.otf"));
  const QString family = QString::fromUtf16(regular && bold ? own_name : named);
  found.text = family_or_system(family, found.missing_package);
  return found;
}

}  // namespace

const Fonts& fonts() {
  static const Fonts found = find_fonts();
  return found;
}

}  // namespace kneerail::theme
