#include "mobile/theme/language.h"

#include <QCoreApplication>
#include <QLocale>
#include <QPointer>
#include <QTranslator>
#include <array>

namespace kneerail {

namespace {

struct Spoken {
  QLocale::Language language;
  QLocale::Territory territory;  ///< where the machine says none that speaks it
  const char* words;
};
constexpr std::array<Spoken, 3> spoken{
    Spoken{QLocale::English, QLocale::UnitedKingdom, ":/i18n/kneerail_en.qm"},
    Spoken{QLocale::German, QLocale::Germany, ":/i18n/kneerail_de.qm"},
    Spoken{QLocale::French, QLocale::France, ":/i18n/kneerail_fr.qm"}};

const Spoken& spoken_of(Language language) {
  return spoken[static_cast<std::size_t>(language) - 1];
}

/// Numbers and days as the machine wants them, where it speaks the language; a machine without any
/// is taken to be content with English.
QLocale locale_of(Language language) {
  const QLocale machine = QLocale::system();
  const Spoken& own = spoken_of(language);
  const bool says = machine.language() == own.language ||
                    (language == Language::english && machine.language() == QLocale::C);
  return says ? machine : QLocale(own.language, own.territory);
}

}  // namespace

QList<QString> language_names() {
  QList<QString> names;
  for (const Spoken& one : spoken) {
    QString name = QLocale(one.language, one.territory).nativeLanguageName();
    if (one.language == QLocale::English)
      name = QStringLiteral("English");  // not "British English"
    names << name.left(1).toUpper() + name.mid(1);
  }
  return names;
}

Language language_of_machine() {
  for (const Language language : {Language::german, Language::french})
    if (QLocale::system().language() == spoken_of(language).language) return language;
  return Language::english;
}

bool install_language(QCoreApplication& app, Language chosen) {
  static QPointer<QTranslator> installed;
  if (installed != nullptr) {
    QCoreApplication::removeTranslator(installed);
    delete installed;
  }
  const Language language = chosen == Language::of_machine ? language_of_machine() : chosen;
  QLocale::setDefault(locale_of(language));
  installed = new QTranslator(&app);
  return installed->load(QString::fromLatin1(spoken_of(language).words)) &&
         QCoreApplication::installTranslator(installed);
}

}  // namespace kneerail
