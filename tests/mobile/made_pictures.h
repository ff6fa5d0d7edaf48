#pragma once

// Picture files as a camera leaves them, made for tests: a JPEG with or without what cameras write
// beside the picture.

#include <QByteArray>
#include <QSize>
#include <QString>

namespace kneerail::tests {

/// A picture of that size, its left half dark.
QByteArray made_jpeg(QSize size);
/// The same with an EXIF segment (held so, at 10:51:07 on 14 May 2031, at a place), a comment, and
/// something after its end. `orientation`: 1 upright, 6 held on its right side.
QByteArray camera_jpeg(QSize size, int orientation);
/// Puts bytes into a file of a folder; its path.
QString put_file(const QString& folder, const QString& name, const QByteArray& bytes);

}  // namespace kneerail::tests
