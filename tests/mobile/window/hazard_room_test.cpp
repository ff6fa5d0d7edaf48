// What cannot wait until a person ends it: somebody is told, somebody reads it, the day to mend it
// moves with a reason, and an end takes the board off.

#include "core/records/particulars.h"
#include "mobile/models/finding_pen.h"
#include "tests/mobile/window/shown_window.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

constexpr int posts = 4;
constexpr double cross_mm = 550;
constexpr std::int64_t minute_ms = 60'000;
constexpr const char* somebody_told = "SELECT count(*) FROM finding WHERE told_first_t IS NOT NULL";

/// A split cross, kept, with what was done.
void find_split(ShownWindow& shown, int post, bool closed_off = true) {
  CHECK(shown.touch("walkTag"));
  shown.touch_drawing(post * 1500.0, cross_mm);
  CHECK(shown.touch("findingPad"));
  CHECK(shown.touch("kind1"));
  if (closed_off) CHECK(shown.touch("measure1"));
  CHECK(shown.touch("keepFinding"));
}

void save(ShownWindow& shown, std::vector<Entry> entries) {
  shown.rooms().store().save(std::move(entries), {}, [](const Result<>& saved) { REQUIRE(saved); });
  shown.settle();
}

/// A lead with a number in the site's register.
Uuid with_a_lead(ShownWindow& shown) {
  const WalkedSite& site = shown.site();
  const Uuid lead = id_of(10, 9);
  Digest sha{};
  shown.rooms().store().keep_objects(
      {to_bytes(Particulars{"R. Hale", "01632 960106", {1, 2, 3}})},
      [&](const Result<std::vector<Digest>>& kept) { sha = kept->front(); });
  shown.settle();
  save(shown, {created(site.organisation, lead, 10, site.organisation,
                       {{1, cbor::Bytes(sha.begin(), sha.end())}, {2, "RH"}}),
               {site.organisation, 60, lead, {}, {{1, 2}}, id_of(60, 9)},
               {site.organisation,
                2,
                site.site,
                {},
                {{1, cbor::Array{cbor::Array{10, cbor::Array{lead}, cbor::Array{}}}}},
                {}}});
  return lead;
}

}  // namespace

TEST_CASE("nobody told is said from the minute it is kept, and wakes nothing up otherwise",
          "[mobile][window][finding]") {
  const Folder folder;
  ShownWindow shown(posts, folder.path() / "register");
  HazardLine& line = shown.rooms().hazards();
  CHECK_FALSE(line.ticks());
  find_split(shown, 0);
  CHECK(line.words() == "F-1: nobody told");
  CHECK(line.ticks());
  shown.clock().move_on(40 * minute_ms + 100);
  line.read_the_clock();
  CHECK(line.words() == "F-1: nobody told, 40 min");
  CHECK(shown.text_of("untoldCell") == "F-1: nobody told, 40 min");
  find_split(shown, 2);
  CHECK(line.words() == "F-1 and 1 more: nobody told, 40 min");
  shown.clock().move_on(100 * minute_ms);
  line.read_the_clock();
  CHECK(line.words() == "F-1 and 1 more: nobody told, 2 h 20 min");
  for (const char* tag : {"sitesTag", "findingsTag", "forecastTag", "walkTag"}) {
    CHECK(shown.touch(tag));
    CHECK(shown.find("untoldCell") != nullptr);
  }
  for (int i = 0; i < 2; ++i) {
    CHECK(shown.touch("untoldCell"));
    CHECK(shown.touch("office1"));
    CHECK(shown.touch("closeTelling"));
  }
  CHECK(shown.count(somebody_told) == 2);
  CHECK(line.words().isEmpty());
  CHECK_FALSE(line.ticks());
  CHECK(shown.find("untoldCell") == nullptr);
}

TEST_CASE("the people to tell stand with their numbers, and one touch keeps who and when",
          "[mobile][window][finding]") {
  const Folder folder;
  ShownWindow shown(posts, folder.path() / "register");
  const Uuid lead = with_a_lead(shown);
  find_split(shown, 0, false);
  CHECK(shown.touch("untoldCell"));
  CHECK(shown.text_of("tellTitle") == "F-1 · split · Ferry Slip · post 118, mid-rail cross");
  CHECK(shown.text_of("tell0") == "R. Hale");
  CHECK(shown.find("tell0")->property("secondLine").toString() == "01632 960106");
  shown.clock().move_on(4 * minute_ms);
  CHECK(shown.touch("tell0"));
  CHECK(shown.count(somebody_told) == 1);
  CHECK(shown.text_of("tell0").startsWith("R. Hale · told "));
  const KeptFinding& finding = shown.rooms().findings().standing().front();
  REQUIRE(finding.told.size() == 1);
  CHECK(finding.told.front().person == lead);
  CHECK(finding.told.front().at == shown.clock().now());
  CHECK(finding.hazard == HazardState::open);  // to tell holds nobody back
  CHECK(shown.touch("undoTelling"));
  CHECK(shown.count(somebody_told) == 0);
  CHECK(shown.text_of("tell0") == "R. Hale");
  CHECK(shown.rooms().hazards().words() == "F-1: nobody told, 4 min");
  CHECK(shown.touch("openTold"));
  CHECK(shown.text_of("openTitle").startsWith("F-1 · post 118"));
  CHECK(shown.find("tellTitle") == nullptr);
}

TEST_CASE("only an end takes the board off, and a mending starts the part's history again",
          "[mobile][window][finding]") {
  const QSize size = GENERATE(QSize(1280, 800), QSize(800, 1280));
  const Folder folder;
  ShownWindow shown(posts, folder.path() / "register");
  shown.resize(size);
  find_split(shown, 0);
  CHECK(shown.touch("findingsTag"));
  CHECK(shown.touch("finding0"));
  CHECK(shown.touch("ask3"));
  CHECK(shown.text_of("endSays") == "Say what ended it.");
  shown.touch("endIt");
  CHECK(shown.count("SELECT count(*) FROM finding WHERE hazard_state = 3") == 0);
  CHECK(shown.touch("work2"));  // replaced
  CHECK(shown.text_of("endSays") == "Say on what it is ended.");
  CHECK(shown.touch("by1"));
  CHECK(shown.touch("on0"));
  CHECK(shown.text_of("endSays") == "replaced by own crew, pushed and looked after the work");
  CHECK(shown.touch("endIt"));
  CHECK(shown.count("SELECT count(*) FROM finding WHERE hazard_state = 3 AND ended_how = 2 AND "
                    "ended_on = 1") == 1);
  CHECK(shown.count("SELECT count(*) FROM work WHERE action = 3 AND done_by = 'own crew' AND "
                    "finding = (SELECT record FROM finding) AND day IS NOT NULL") == 1);
  const std::string lives =
      "SELECT count(*) FROM life WHERE component = (SELECT subject FROM work)";
  CHECK(shown.count(lives) == 2);
  CHECK(shown.rooms().findings().standing().empty());
  CHECK(shown.walk().run()->sheet()->findings.empty());
  CHECK(shown.touch("walkTag"));
  CHECK(shown.touch("undo"));
  CHECK(shown.count("SELECT count(*) FROM finding WHERE hazard_state = 2") == 1);
  CHECK(shown.count(lives) == 1);
}

TEST_CASE("a lead says I have read this, and the day to mend moves later only with a reason",
          "[mobile][window][finding]") {
  const Folder folder;
  ShownWindow shown(posts, folder.path() / "register");
  const Uuid lead = with_a_lead(shown);
  find_split(shown, 0);
  CHECK(shown.touch("findingsTag"));
  CHECK(shown.touch("finding0"));
  CHECK(shown.find("readIt") == nullptr);  // an inspector does not answer for it
  CHECK(shown.touch("ask2"));
  CHECK(shown.touch("next2"));  // in a week
  CHECK(shown.touch("next3"));  // in a month: later
  CHECK(shown.count("SELECT count(*) FROM fact WHERE kind = 35") == 1);
  CHECK(shown.touch("later1"));  // for want of a part
  CHECK(shown.count("SELECT count(*) FROM finding WHERE put_off = 2") == 1);
  FindingsModel& findings = shown.rooms().findings();
  CHECK(findings.next_words().contains("put off from "));
  CHECK(findings.next_words().contains(": part"));
  CHECK(shown.touch("next2"));  // sooner asks nothing
  CHECK(shown.count("SELECT count(*) FROM fact WHERE kind = 35") == 3);

  shown.switch_off();
  shown.switch_on();
  const auto& people = shown.walk().pen().people();
  const auto at = std::find_if(people.begin(), people.end(),
                               [&](const KnownPerson& one) { return one.id == lead; });
  REQUIRE(at != people.end());
  shown.walk().choosePerson(static_cast<int>(at - people.begin()));
  CHECK(shown.touch("findingsTag"));
  CHECK(shown.touch("finding0"));
  CHECK(shown.touch("readIt"));
  CHECK(shown.count("SELECT count(*) FROM read_by") == 1);
  CHECK(shown.find("readIt") == nullptr);
  CHECK(shown.rooms().findings().read_words().startsWith("read by RH "));
  FindingsModel& again = shown.rooms().findings();
  CHECK(again.data(again.index(0), FindingsModel::NextRole).toString().contains("read by RH "));
}
