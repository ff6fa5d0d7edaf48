#include "mobile/screens/rooms.h"

#include <QCoreApplication>
#include <QQmlApplicationEngine>
#include <QVariantMap>
#include <utility>

#include "schema/digest.h"
#include "schema/machine.h"

namespace kneerail {

Result<std::unique_ptr<Rooms>> Rooms::open(const Register::Options& options) {
  auto store = StoreLink::open(options);
  if (!store) return fail(store.error());
  return std::unique_ptr<Rooms>(new Rooms(options, std::move(*store)));
}

Rooms::Rooms(const Register::Options& options, std::unique_ptr<StoreLink> store)
    : own_clock_(std::make_unique<MachineClock>()),
      own_random_(std::make_unique<SecureRandom>()),
      store_(std::move(store)) {
  if (words_.load(QStringLiteral(":/i18n/kneerail_en.qm")))
    QCoreApplication::installTranslator(&words_);
  Clock& clock = options.clock != nullptr ? *options.clock : *own_clock_;
  Random& random = options.random != nullptr ? *options.random : *own_random_;
  walk_ = std::make_unique<WalkModel>(*store_, clock, random);
  place_ = std::make_unique<WalkPlace>(*store_, *walk_);
  QObject::connect(&gauge_, &TypingGauge::typed, walk_.get(), &WalkModel::typed);
}

Rooms::~Rooms() {
  look_.reset();
  walk_->leave();
  place_->keep();
  store_->settle();
}

void Rooms::show(QQmlApplicationEngine& engine) {
  place_->restore();
  engine.addImportPath(QStringLiteral("qrc:/qt/qml"));
  if (auto* tokens = engine.singletonInstance<Tokens*>(qmlTypeId("Kneerail.Ui", 1, 0, "Tokens")))
    look_ = std::make_unique<LookKept>(*store_, *tokens);
  engine.setInitialProperties({{QStringLiteral("walk"), QVariant::fromValue(walk_.get())}});
  engine.load(QUrl(QStringLiteral("qrc:/qt/qml/Kneerail/Ui/screens/Main.qml")));
}

}  // namespace kneerail
