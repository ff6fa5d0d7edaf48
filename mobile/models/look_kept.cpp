#include "mobile/models/look_kept.h"

namespace {

constexpr const char* dark_name = "screen_dark";
constexpr const char* left_name = "screen_left_handed";

bool remembered(StoreLink& store, const char* name) {
  const auto value = kneerail::setting(store.reader().tables(), name);
  return value && value->value_or(0) != 0;
}

}  // namespace

LookKept::LookKept(StoreLink& store, Tokens& tokens, QObject* parent)
    : QObject(parent), store_(store), tokens_(tokens) {
  tokens_.set_dark(remembered(store, dark_name));
  tokens_.set_left_handed(remembered(store, left_name));
  connect(&tokens, &Tokens::themeChanged, this, &LookKept::keep);
  connect(&tokens, &Tokens::handChanged, this, &LookKept::keep);
}

void LookKept::keep() {
  if (!store_.writable()) return;
  store_.keep_settings(
      {{dark_name, tokens_.dark() ? 1 : 0}, {left_name, tokens_.left_handed() ? 1 : 0}},
      [](const kneerail::Result<>&) {});
}
