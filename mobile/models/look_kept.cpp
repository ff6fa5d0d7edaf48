#include "mobile/models/look_kept.h"

namespace {

constexpr const char* dark_name = "screen_dark";
constexpr const char* left_name = "screen_left_handed";
constexpr const char* still_name = "screen_less_motion";
constexpr const char* silent_name = "screen_silent";

bool remembered(StoreLink& store, const char* name) {
  const auto value = kneerail::setting(store.reader().tables(), name);
  return value && value->value_or(0) != 0;
}

}  // namespace

LookKept::LookKept(StoreLink& store, Tokens& tokens, QObject* parent)
    : QObject(parent), store_(store), tokens_(tokens) {
  tokens_.set_dark(remembered(store, dark_name));
  tokens_.set_left_handed(remembered(store, left_name));
  tokens_.set_less_motion(remembered(store, still_name));
  tokens_.set_sounds(!remembered(store, silent_name));
  connect(&tokens, &Tokens::motionChanged, this, &LookKept::keep);
  connect(&tokens, &Tokens::soundsChanged, this, &LookKept::keep);
  connect(&tokens, &Tokens::themeChanged, this, &LookKept::keep);
  connect(&tokens, &Tokens::handChanged, this, &LookKept::keep);
}

void LookKept::keep() {
  if (!store_.writable()) return;
  store_.keep_settings({{dark_name, tokens_.dark() ? 1 : 0},
                        {left_name, tokens_.left_handed() ? 1 : 0},
                        {still_name, tokens_.less_motion() ? 1 : 0},
                        {silent_name, tokens_.sounds() ? 0 : 1}},
                       [](const kneerail::Result<>&) {});
}
