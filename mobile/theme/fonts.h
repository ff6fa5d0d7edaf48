#pragma once

// The fonts of the screens and drawings, looked up once by their Debian package.

#include <QString>

namespace kneerail::theme {

struct Fonts {
  QString text;             ///< family of everything, and of all digits
  QString digest;           ///< family of digests
  QString missing_package;  ///< Debian package to install; empty when both families are here
};

/// The families to name in a QFont, or the system's own in their place. Needs a QGuiApplication.
/// Never name B612 itself: the package's mono faces list B612 as their second family, and Qt takes
/// the upright one for the regular face. The proportional faces are therefore read from their files
/// under a family name of their own.
const Fonts& fonts();

}  // namespace kneerail::theme
