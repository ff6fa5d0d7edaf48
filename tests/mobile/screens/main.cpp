#include <QQmlEngine>
#include <QtQuickTest>

#include "mobile/theme/language.h"

class Setup : public QObject {
  Q_OBJECT

 public slots:
  void applicationAvailable() {
    kneerail::install_language(*QCoreApplication::instance(), kneerail::Language::english);
  }
  void qmlEngineAvailable(QQmlEngine* engine) {
    engine->addImportPath(QStringLiteral("qrc:/qt/qml"));
  }
};

QUICK_TEST_MAIN_WITH_SETUP(screen_tests, Setup)

#include "main.moc"
