// A site is said in keys and kept at once; a sheet that is there is changed the same way.

#include <QSignalSpy>

#include "mobile/models/site_sentence.h"
#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

class Sheet {
 public:
  explicit Sheet(bool fresh)
      : site_(walking_.store(), walking_.clock(), chance_,
              [this] { return walking_.site().person; }) {
    if (fresh)
      site_.begin();
    else
      site_.show_site(walking_.site().site);
  }
  SiteSentence* operator->() { return &site_; }
  Walking& walking() { return walking_; }

  QStringList pieces(int role = SentencePieces::TextRole) {
    QStringList words;
    for (int i = 0; i < site_.pieces()->rowCount(); ++i)
      words << site_.pieces()->data(site_.pieces()->index(i), role).toString();
    return words;
  }
  bool touch(const QString& text) {
    const auto at = pieces().indexOf(text);
    if (at < 0) return false;
    site_.choosePiece(static_cast<int>(at));
    return true;
  }
  bool choose(const QString& words) {
    const auto* choices = site_.choices();
    for (int group = 0; group < choices->rowCount(); ++group) {
      const auto names =
          choices->data(choices->index(group), SentenceChoices::NamesRole).toStringList();
      if (!names.contains(words)) continue;
      site_.choose(group, static_cast<int>(names.indexOf(words)));
      return true;
    }
    return false;
  }
  void keep() {
    site_.keep();
    walking_.settle();
  }

 private:
  Walking walking_;
  SplitMix64 chance_{5};
  SiteSentence site_;
};

}  // namespace

TEST_CASE("a site is registered with its zone, air, depot and somebody to tell",
          "[site-sentence]") {
  Sheet sheet(true);
  const auto sites = sheet.walking().count("SELECT count(*) FROM entity WHERE type = 2");
  CHECK(sheet->is_new());
  REQUIRE(sheet.touch("a name"));
  sheet->say("Lock Island");
  REQUIRE(sheet.touch("a zone"));
  sheet->say("Deck");
  CHECK(sheet->ask_title() == "Zone Deck");
  REQUIRE(sheet.choose("C3"));
  REQUIRE(sheet.choose("sheltered"));
  CHECK(sheet.pieces(SentencePieces::UnderRole).contains("C3, sheltered"));
  REQUIRE(sheet.touch("no depot"));
  REQUIRE(sheet.choose("another depot"));
  sheet->say("Fish Quay");
  REQUIRE(sheet.touch("nobody"));
  REQUIRE(sheet.choose("somebody else"));
  sheet->say("Rhona Hale +44 1632 960106");
  CHECK(sheet.pieces().contains("Rhona Hale"));
  CHECK(sheet.pieces(SentencePieces::UnderRole).contains("told, +44 1632 960106"));
  CHECK(sheet.walking().count("SELECT count(*) FROM entity WHERE type = 2") == sites);
  const QSignalSpy kept(sheet.operator->(), &SiteSentence::kept);
  sheet.keep();
  CHECK(kept.count() == 1);
  CHECK_FALSE(sheet->is_new());
  CHECK_FALSE(sheet->differs());
  CHECK(sheet.walking().count("SELECT count(*) FROM entity WHERE type = 2") == sites + 1);
  CHECK(sheet->people_lines() == QStringList{"Rhona Hale, +44 1632 960106"});
  CHECK(sheet->zone_lines().front().startsWith("Deck: C3, sheltered."));
}

TEST_CASE("what is missing is asked for before anything is written", "[site-sentence]") {
  Sheet sheet(true);
  REQUIRE(sheet.touch("a name"));
  sheet->say("Lock Island");
  sheet.keep();
  CHECK(sheet->message().contains("no zone yet"));
  CHECK(sheet->is_new());
  sheet->leave();
  sheet->begin();  // it waits
  CHECK(sheet->name() == "Lock Island");
}

TEST_CASE("a sheet that is there is changed and says what was kept", "[site-sentence]") {
  Sheet sheet(false);
  REQUIRE_FALSE(sheet->is_new());
  const QString zone = QString::fromStdString(sheet->said().zones.front().name);
  REQUIRE(sheet.touch(zone));
  REQUIRE(sheet.choose("another name"));
  sheet->say("Weather side");
  REQUIRE(sheet.choose("CX"));
  CHECK(sheet->differs());
  sheet.keep();
  CHECK_FALSE(sheet->differs());
  CHECK(sheet->zone_lines().front().startsWith("Weather side: CX"));
  CHECK(sheet.walking().count("SELECT count(*) FROM disagreement") == 0);
}

TEST_CASE("a site that the disk does not take stays said", "[site-sentence]") {
  Sheet sheet(false);
  REQUIRE(sheet.touch(sheet->name()));
  sheet->say("Long Quay");
  sheet.walking().disk().set_read_only(true);
  sheet.keep();
  CHECK(sheet->not_kept());
  CHECK(sheet->differs());
  CHECK(sheet->name() == "Long Quay");
  sheet.walking().disk().set_read_only(false);
  sheet.keep();
  CHECK_FALSE(sheet->differs());
  CHECK(sheet->message().isEmpty());
}
