// The application that the tests of drawings need, without a screen; made when tests run, not when
// they are listed.

#define CATCH_CONFIG_EXTERNAL_INTERFACES
#include <QGuiApplication>
#include <catch2/catch.hpp>
#include <memory>

#include "mobile/theme/language.h"

namespace {

class OffscreenApp : public Catch::TestEventListenerBase {
 public:
  using TestEventListenerBase::TestEventListenerBase;

  void testRunStarting(const Catch::TestRunInfo& /*info*/) override {
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    app_ = std::make_unique<QGuiApplication>(argc_, argv_);
    kneerail::install_language(*app_, kneerail::Language::english);
  }

  void testRunEnded(const Catch::TestRunStats& /*stats*/) override { app_.reset(); }

 private:
  int argc_ = 1;
  char name_[16] = "elevation_tests";
  char* argv_[2] = {name_, nullptr};
  std::unique_ptr<QGuiApplication> app_;
};

CATCH_REGISTER_LISTENER(OffscreenApp)

}  // namespace
