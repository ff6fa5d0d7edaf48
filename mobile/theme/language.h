#pragma once

// The language of the screens: its words, the forms of its plurals, its numbers and days.

#include <QList>
#include <QString>

class QCoreApplication;

namespace kneerail {

enum class Language { of_machine = 0, english = 1, german = 2, french = 3 };

/// The languages there are, each by its own name, from english on.
QList<QString> language_names();

/// The machine's, where the screens have it; else English.
Language language_of_machine();

/// From now on every word that is made for the screens is of that language; what was made before
/// stays. False: the words are not in this program, and what stands on the screen is what the
/// source says.
bool install_language(QCoreApplication& app, Language chosen);

}  // namespace kneerail
