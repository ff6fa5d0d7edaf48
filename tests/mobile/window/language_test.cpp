// The same window in other languages: its words, plurals, numbers, and room for longer words.

#include <QLocale>
#include <functional>
#include <map>

#include "mobile/theme/language.h"
#include "tests/mobile/window/shown_window.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

/// English again when the test is over.
class Speaking {
 public:
  Speaking(ShownWindow& shown, Language language) : shown_(shown) { change(language); }
  Speaking(const Speaking&) = delete;
  Speaking& operator=(const Speaking&) = delete;
  ~Speaking() { install_language(*QCoreApplication::instance(), Language::english); }

  void change(Language language) {
    shown_.rooms().tablet().chooseLanguage(static_cast<int>(language) - 1);
    shown_.settle();
    shown_.switch_off();
    shown_.switch_on();
    shown_.settle();
  }

 private:
  ShownWindow& shown_;
};

}  // namespace

TEST_CASE("a language that is chosen is spoken from then on", "[mobile][window]") {
  ShownWindow shown(4);
  bool made_again = false;
  QObject::connect(&shown.rooms().tablet(), &ThisTablet::languageChosen, &shown.window(),
                   [&] { made_again = true; });
  CHECK(shown.touch("sitesTag"));
  CHECK(shown.touch("tabletCell"));
  CHECK(shown.text_of("language1") == "Deutsch");
  CHECK(shown.text_of("language2") == QStringLiteral("Fran\u00e7ais"));
  CHECK(shown.touch("language1"));
  shown.settle();
  CHECK(made_again);
  const Speaking german(shown, Language::german);
  CHECK(shown.text_of("findingsTag") == "Befunde");
  CHECK(QLocale().decimalPoint() == ",");
  CHECK(shown.rooms().tablet().language() == 1);
  shown.cut_power(1);
  CHECK(shown.text_of("findingsTag") == "Befunde");
}

TEST_CASE("a language changed in the middle of a set loses no reading", "[mobile][window]") {
  ShownWindow shown(4);
  shown.touch_drawing(0, 1100);
  CHECK(shown.touch("coatingPad"));
  for (const char* reading : {"74", "71"}) shown.type(reading);
  shown.settle();
  Speaking speaking(shown, Language::french);
  CHECK(shown.text_of("slot0") == "74");
  CHECK(shown.text_of("slot1") == "71");
  CHECK(shown.text_of("findingsTag") == "Constats");
  shown.type("76");
  shown.settle();
  speaking.change(Language::english);
  CHECK(shown.text_of("slot2") == "76");
  CHECK(shown.text_of("findingsTag") == "Findings");
}

TEST_CASE("one and many have their own words in every language", "[mobile][window]") {
  ShownWindow shown(4);
  shown.touch_drawing(0, 1100);
  CHECK(shown.touch("grade1"));
  const Speaking speaking(shown, Language::german);
  const QString one = shown.walk().kept_words();
  shown.touch_drawing(0, 550);
  CHECK(shown.touch("grade1"));
  shown.settle();
  const QString two = shown.walk().kept_words();
  CHECK(one.startsWith("1 "));
  CHECK(two.startsWith("2 "));
  CHECK(one.mid(2) != two.mid(2));
}

TEST_CASE("longer words stand on their keys", "[mobile][window]") {
  const Language language = GENERATE(Language::german, Language::french);
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  ShownWindow shown(6);
  const Speaking speaking(shown, language);
  shown.resize(size);
  CHECK(shown.labels_on_keys_fit() >= 8);
  for (const char* pad : {"gradePad", "coatingPad", "torquePad", "findingPad"}) {
    CHECK(shown.touch(pad));
    CHECK(shown.labels_on_keys_fit() > 4);
  }
}
