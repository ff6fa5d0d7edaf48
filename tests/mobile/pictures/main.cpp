// pictures FILE.qml OUT.png WIDTH HEIGHT [dark] [left] [text=1.4]
// Draws the item of a QML file without a display and saves what is seen.

#include <QGuiApplication>
#include <QQmlEngine>
#include <QQuickItem>
#include <QQuickView>
#include <QTimer>
#include <iostream>

#include "mobile/theme/language.h"
#include "mobile/theme/tokens.h"

namespace {

void apply(const QStringList& words, Tokens& tokens) {
  tokens.set_dark(words.contains(QStringLiteral("dark")));
  tokens.set_left_handed(words.contains(QStringLiteral("left")));
  for (const QString& word : words) {
    if (word.startsWith(QStringLiteral("text="))) tokens.set_text_scale(word.mid(5).toDouble());
  }
}

}  // namespace

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  QGuiApplication app(argc, argv);
  kneerail::install_language(app, kneerail::Language::english);
  const QStringList words = QGuiApplication::arguments();
  if (words.size() < 5) {
    std::cerr << "usage: pictures FILE.qml OUT.png WIDTH HEIGHT [dark] [left] [text=1.4]\n";
    return 2;
  }
  QQuickView view;
  view.engine()->addImportPath(QStringLiteral("qrc:/qt/qml"));
  auto* tokens =
      view.engine()->singletonInstance<Tokens*>(qmlTypeId("Kneerail.Ui", 1, 0, "Tokens"));
  if (tokens != nullptr) apply(words.mid(5), *tokens);
  view.setResizeMode(QQuickView::SizeRootObjectToView);
  view.resize(words[3].toInt(), words[4].toInt());
  view.setSource(QUrl::fromLocalFile(words[1]));
  if (view.status() != QQuickView::Ready) return 1;
  view.show();
  bool saved = false;
  QTimer::singleShot(400, &view, [&] {
    saved = view.grabWindow().save(words[2]);
    QGuiApplication::quit();
  });
  QGuiApplication::exec();
  return saved ? 0 : 1;
}
