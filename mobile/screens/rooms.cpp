#include "mobile/screens/rooms.h"

#include <QGuiApplication>
#include <QQmlApplicationEngine>
#include <QQmlComponent>
#include <QQuickWindow>
#include <QScreen>
#include <QVariantMap>
#include <utility>

#include "mobile/theme/language.h"
#include "schema/digest.h"
#include "schema/machine.h"

namespace kneerail {

namespace {

QUrl file_of(const char* room) {
  return QUrl(QStringLiteral("qrc:/qt/qml/Kneerail/Ui/screens/") + QLatin1String(room));
}

}  // namespace

Result<std::unique_ptr<Rooms>> Rooms::open(const Register::Options& options,
                                           StoreLink::Checks checks,
                                           std::future<StoreLink::Ahead> ahead) {
  auto store = StoreLink::open(options, checks, std::move(ahead));
  if (!store) return fail(store.error());
  return std::unique_ptr<Rooms>(new Rooms(options, std::move(*store)));
}

Rooms::Rooms(const Register::Options& options, std::unique_ptr<StoreLink> store)
    : own_clock_(std::make_unique<MachineClock>()),
      own_random_(std::make_unique<SecureRandom>()),
      store_(std::move(store)) {
  Clock& clock = options.clock != nullptr ? *options.clock : *own_clock_;
  Random& random = options.random != nullptr ? *options.random : *own_random_;
  // Models say some of their words when they are made.
  const Language language = ThisTablet::chosen_language(store_->reader().tables());
  if (language != Language::of_machine) install_language(*QCoreApplication::instance(), language);
  tablet_ = std::make_unique<ThisTablet>(options.folder, *store_);
  walk_ = std::make_unique<WalkModel>(*store_, clock, random);
  place_ = std::make_unique<WalkPlace>(*store_, *walk_);
  close_ = std::make_unique<VisitClose>(options.folder, *walk_, clock);
  QObject::connect(&gauge_, &TypingGauge::typed, walk_.get(), &WalkModel::typed);
  worker_ = std::make_unique<ForecastWorker>(options.folder, clock);
  sites_ = std::make_unique<SitesModel>(options.folder, *worker_, clock);
  pages_ = std::make_unique<RegisterPages>(*store_, clock, random, [this] {
    const KnownPerson* person = walk_->pen().person();
    return person == nullptr ? Uuid() : person->id;
  });
  findings_ = std::make_unique<FindingsModel>(options.folder, *store_, *walk_);
  hazards_ = std::make_unique<HazardLine>(*store_, *walk_, *findings_);
  forecast_ = std::make_unique<ForecastModel>(store_->reader(), *worker_);
  prepare_ = std::make_unique<PrepareModel>(options.folder, *store_, *worker_, clock);
  lead_from_room_to_room();
}

/// What one room asks of another. The window changes the room after it.
void Rooms::lead_from_room_to_room() {
  QObject::connect(sites_.get(), &SitesModel::runOpened, walk_.get(),
                   [this](const Uuid& run) { walk_->open(run); });
  QObject::connect(sites_.get(), &SitesModel::dayWanted, prepare_.get(), &PrepareModel::prepare);
  QObject::connect(prepare_.get(), &PrepareModel::kept, walk_.get(), &WalkModel::prepare);
  QObject::connect(prepare_.get(), &PrepareModel::walkWanted, walk_.get(),
                   [this](const Uuid& run, const Uuid& subject) { walk_->open(run, subject); });
  QObject::connect(sites_.get(), &SitesModel::siteOpened, pages_.get(), &RegisterPages::open_site);
  QObject::connect(pages_.get(), &RegisterPages::kept, sites_.get(), &SitesModel::refresh);
  QObject::connect(pages_.get(), &RegisterPages::runChanged, walk_.get(), [this](const Uuid& run) {
    if (walk_->run()->sheet()->id == run) walk_->open(run);
  });
  QObject::connect(pages_.get(), &RegisterPages::runWanted, sites_.get(), &SitesModel::runOpened);
  QObject::connect(walk_.get(), &WalkModel::forecastWanted, forecast_.get(),
                   [this](const Uuid& run, const Uuid& component) {
                     forecast_->walked_in(walk_->pen().visit());
                     forecast_->show(run, component);
                   });
  QObject::connect(findings_.get(), &FindingsModel::walkWanted, walk_.get(),
                   [this](const Uuid& run, const Uuid& subject) { walk_->open(run, subject); });
  QObject::connect(walk_.get(), &WalkModel::entered, forecast_.get(), &ForecastModel::entered);
  QObject::connect(forecast_.get(), &ForecastModel::walkWanted, walk_.get(),
                   [this](const Uuid& run, const Uuid& component) { walk_->open(run, component); });
}

Rooms::~Rooms() {
  look_.reset();
  feel_.reset();
  walk_->end();
  place_->keep();
  store_->close();
}

void Rooms::load_ahead(QQmlApplicationEngine& engine) {
  engine.addImportPath(QStringLiteral("qrc:/qt/qml"));
  for (const char* room : {"Main.qml", "Walk.qml"})
    new QQmlComponent(&engine, file_of(room), QQmlComponent::Asynchronous, &engine);
}

void Rooms::show(QQmlApplicationEngine& engine, std::future<void> graphics) {
  const bool walked = place_->was_walked();
  place_->restore();
  engine.addImportPath(QStringLiteral("qrc:/qt/qml"));
  QQmlComponent first(&engine, file_of(walked ? "Walk.qml" : "Main.qml"));
  // The module that knows the tokens is there only when a file of it was loaded.
  auto* tokens = engine.singletonInstance<Tokens*>(qmlTypeId("Kneerail.Ui", 1, 0, "Tokens"));
  if (tokens != nullptr) look_ = std::make_unique<LookKept>(*store_, *tokens);
  std::unique_ptr<QObject> room;
  if (walked && tokens != nullptr) room.reset(made_ahead(first, *tokens));
  if (graphics.valid()) graphics.wait();
  engine.setInitialProperties({{QStringLiteral("walk"), QVariant::fromValue(walk_.get())},
                               {QStringLiteral("close"), QVariant::fromValue(close_.get())},
                               {QStringLiteral("sites"), QVariant::fromValue(sites_.get())},
                               {QStringLiteral("pages"), QVariant::fromValue(pages_.get())},
                               {QStringLiteral("findings"), QVariant::fromValue(findings_.get())},
                               {QStringLiteral("hazards"), QVariant::fromValue(hazards_.get())},
                               {QStringLiteral("forecast"), QVariant::fromValue(forecast_.get())},
                               {QStringLiteral("tablet"), QVariant::fromValue(tablet_.get())},
                               {QStringLiteral("prepare"), QVariant::fromValue(prepare_.get())},
                               {QStringLiteral("walkAhead"), QVariant::fromValue(room.get())},
                               {QStringLiteral("walked"), walked}});
  engine.load(file_of("Main.qml"));
  auto* window = qobject_cast<QQuickWindow*>(engine.rootObjects().value(0));
  if (window == nullptr) return;
  if (room != nullptr) room.release()->setParent(window);
  to_begin_ = true;
  first_room_ = std::make_unique<FirstRoom>(*window);
  QObject::connect(first_room_.get(), &FirstRoom::drawn, sites_.get(), [this] { begin(); });
  if (tokens == nullptr) return;
  QObject::connect(first_room_.get(), &FirstRoom::drawn, tokens,
                   [this, tokens] { let_hear(*tokens); });
}

void Rooms::take_down(QQmlApplicationEngine& engine) {
  const QList<QObject*> windows = engine.rootObjects();
  qDeleteAll(windows);
  QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
}

/// The room of the walk, as large as it will be in a window that takes the whole screen. Null: the
/// window makes it.
QObject* Rooms::made_ahead(QQmlComponent& room, const Tokens& tokens) {
  if (QGuiApplication::primaryScreen() == nullptr) return nullptr;
  const QSize screen = QGuiApplication::primaryScreen()->size();
  const bool portrait = screen.height() > screen.width();
  const qreal above = tokens.rail_height() + (portrait ? tokens.site_line_height() : 0);
  return room.createWithInitialProperties(
      {{QStringLiteral("objectName"), QStringLiteral("walkRoom")},
       {QStringLiteral("width"), screen.width()},
       {QStringLiteral("height"), screen.height() - above},
       {QStringLiteral("portrait"), portrait},
       {QStringLiteral("walk"), QVariant::fromValue(walk_.get())},
       {QStringLiteral("close"), QVariant::fromValue(close_.get())}});
}

/// Behind the room: a loudspeaker takes its time to open.
void Rooms::let_hear(Tokens& tokens) {
  tokens.set_sound_is_there(feel::sound_is_there());
  feel_ = std::make_unique<feel::Feel>(feel::device_of_machine(), tokens);
  QObject::connect(walk_.get(), &WalkModel::felt, feel_.get(), &feel::Feel::felt);
}

void Rooms::begin() {
  to_begin_ = false;
  sites_->refresh();
  findings_->refresh();
  worker_->reckon();
  store_->check();
}

}  // namespace kneerail
