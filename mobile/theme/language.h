#pragma once

// The language of the screens: English, with the forms of its plurals.

class QCoreApplication;

namespace kneerail {

/// From now on every word on the screens is of that language. Before anything is shown. False: the
/// words are not in this program, and numbers stand beside "post(s)".
bool install_language(QCoreApplication& app);

}  // namespace kneerail
