#include "mobile/theme/language.h"

#include <QCoreApplication>
#include <QTranslator>

namespace kneerail {

bool install_language(QCoreApplication& app) {
  auto* words = new QTranslator(&app);
  return words->load(QStringLiteral(":/i18n/kneerail_en.qm")) &&
         QCoreApplication::installTranslator(words);
}

}  // namespace kneerail
