#include "mobile/models/this_tablet.h"

namespace {

constexpr const char* cautions_name = "cautions_read";
constexpr const char* language_name = "screen_language";

}  // namespace

ThisTablet::ThisTablet(std::filesystem::path folder, StoreLink& store, QObject* parent)
    : QObject(parent), folder_(std::move(folder)), store_(store) {
  const auto read = kneerail::setting(store.reader().tables(), cautions_name);
  cautions_read_ = read && read->value_or(0) != 0;
}

QList<QString> ThisTablet::cautions() {
  return {tr("A guard-rail holds people back from a fall."),
          tr("Kneerail supports a competent person; it does not certify."),
          tr("Projections are estimates with stated uncertainty; structural results are screening "
             "checks; loads, heights, torque values and intervals follow local codes, the fitting "
             "maker's instructions and a licensed engineer's judgement."),
          tr("Never wait for a projection to close off a rail that moves."),
          tr("Torque values are the register's, set by the owner; the demo's are invented.")};
}

QString ThisTablet::caution_words() {
  return cautions().join(QLatin1Char(' '));
}

QList<QString> ThisTablet::about() const {
  return {tr("Kneerail %1, Apache License 2.0").arg(QStringLiteral(KNEERAIL_VERSION)),
          tr("The register is in %1").arg(QString::fromStdString(folder_.string())),
          store_.writable() ? tr("What is entered is kept there at once.")
                            : tr("It can only be read here: nothing that is entered is kept.")};
}

void ThisTablet::readCautions() {
  if (cautions_read_) return;
  cautions_read_ = true;
  if (store_.writable())
    store_.keep_settings({{cautions_name, 1}}, [](const kneerail::Result<>&) {});
  emit cautionsReadChanged();
}

kneerail::Language ThisTablet::chosen_language(kneerail::Database& tables) {
  const auto kept = kneerail::setting(tables, language_name);
  const std::int64_t number = kept ? kept->value_or(0) : 0;
  const bool known = number >= 1 && number <= languages().size();
  return static_cast<kneerail::Language>(known ? number : 0);
}

int ThisTablet::language() const {
  const auto chosen = chosen_language(store_.reader().tables());
  const auto said =
      chosen == kneerail::Language::of_machine ? kneerail::language_of_machine() : chosen;
  return static_cast<int>(said) - 1;
}

void ThisTablet::chooseLanguage(int language) {
  if (language < 0 || language >= languages().size() || language == this->language()) return;
  if (!store_.writable()) return;
  store_.keep_settings({{language_name, language + 1}}, [this](const kneerail::Result<>& kept) {
    if (kept) emit languageChosen();
  });
}
