// A run laid out as a sentence: what each key does to the drawing, what is kept and what is not.

#include <QCoreApplication>
#include <QSet>
#include <QSignalSpy>

#include "mobile/models/part_words.h"
#include "mobile/models/run_sentence.h"
#include "tests/mobile/walking.h"

using namespace kneerail;
using namespace kneerail::tests;

namespace {

class Sentence {
 public:
  Sentence() { make(); }

  void make() {
    sentence_ = std::make_unique<RunSentence>(walking_.store(), walking_.clock(), chance_,
                                              [this] { return walking_.site().person; });
    sentence_->begin(walking_.site().site);
  }
  /// The program is closed and opened again.
  void again() {
    walking_.settle();
    sentence_.reset();
    walking_.switch_off();
    walking_.switch_on();
    make();
  }

  RunSentence* operator->() { return sentence_.get(); }
  Walking& walking() { return walking_; }

  void piece(RunPiece piece) { sentence_->choosePiece(static_cast<int>(piece)); }
  void type(RunPiece which, const QString& digits) {
    piece(which);
    for (const QChar digit : digits) sentence_->digit(digit.digitValue());
    piece(which);
  }
  void name(const QString& words) {
    piece(RunPiece::name);
    sentence_->say(words);
  }
  /// The key of an open choice that says that. False: there is none.
  bool choose(const QString& words) {
    const auto* choices = sentence_->choices();
    for (int group = 0; group < choices->rowCount(); ++group) {
      const QStringList names =
          choices->data(choices->index(group), SentenceChoices::NamesRole).toStringList();
      const auto at = names.indexOf(words);
      if (at < 0) continue;
      sentence_->choose(group, static_cast<int>(at));
      return true;
    }
    return false;
  }
  QString says(RunPiece piece) {
    const auto* pieces = sentence_->pieces();
    const auto at = pieces->index(static_cast<int>(piece));
    return pieces->data(at, SentencePieces::TextRole).toString() + " " +
           pieces->data(at, SentencePieces::UnderRole).toString();
  }
  std::int64_t runs() { return walking_.count("SELECT count(*) FROM entity WHERE type = 4"); }
  int part(int post, const QString& words) {
    const RunSheet& sheet = *sentence_->run()->sheet();
    for (std::size_t i = 0; i < sheet.parts.size(); ++i)
      if (sheet.parts[i].post == post && part_name(sheet, static_cast<int>(i)) == words)
        return static_cast<int>(i);
    FAIL("no " << words.toStdString() << " at that post");
    return -1;
  }

 private:
  Walking walking_;
  SplitMix64 chance_{7};
  std::unique_ptr<RunSentence> sentence_;
};

}  // namespace

TEST_CASE("a sentence begins as a usual run, with the site's next number and its one zone",
          "[run-sentence]") {
  Sentence sentence;
  CHECK(sentence->is_open());
  CHECK(sentence.says(RunPiece::posts) == "24 posts");
  CHECK(sentence.says(RunPiece::spacing) == "at 1.50 m post to post");
  CHECK(sentence.says(RunPiece::tube) == "48.3 × 3.2 mm tube");
  CHECK(sentence.says(RunPiece::joint) == "three-way tee and cross");
  CHECK(sentence.says(RunPiece::end) == "elbow at both ends");
  CHECK(sentence->count_words() == "24 posts · 23 bays · 72 fittings · 69.0 m of rail");
  CHECK(sentence->said().zone == sentence.walking().site().zone);
  CHECK(sentence->said().rule.first_number > 1);  // the site has posts
  CHECK(sentence->run()->posts() == 24);
}

TEST_CASE("the drawing follows each digit, and a number that makes no run waits for the next",
          "[run-sentence]") {
  Sentence sentence;
  sentence.piece(RunPiece::posts);
  REQUIRE(sentence->asks_number());
  sentence->digit(1);
  CHECK(sentence->run()->posts() == 24);
  CHECK(sentence.says(RunPiece::posts) == "1 posts");
  CHECK(sentence->message().contains("2 to 999 posts"));
  sentence->digit(2);
  CHECK(sentence->run()->posts() == 12);
  CHECK(sentence->message().isEmpty());
  sentence->erase();
  CHECK(sentence->run()->posts() == 12);
  sentence->closePad();
  CHECK(sentence->message().startsWith("1 was typed and does not fit"));
  CHECK(sentence.says(RunPiece::posts) == "12 posts");
  sentence.type(RunPiece::spacing, "200");
  CHECK(sentence.says(RunPiece::spacing) == "at 2.00 m post to post");
  CHECK(sentence->length_words() == "Whole run, 22.00 m");
}

TEST_CASE("undo goes back number by number and choice by choice", "[run-sentence]") {
  Sentence sentence;
  sentence.type(RunPiece::posts, "12");
  sentence.piece(RunPiece::made);
  REQUIRE(sentence.choose("slip-on, aluminium, anodised"));
  CHECK(sentence->run()
            ->sheet()
            ->parts[static_cast<std::size_t>(sentence.part(0, "post tube"))]
            .finish == Finish::aluminium);
  sentence->undo();
  CHECK(sentence->run()
            ->sheet()
            ->parts[static_cast<std::size_t>(sentence.part(0, "post tube"))]
            .finish == Finish::zinc);
  CHECK(sentence->run()->posts() == 12);
  sentence->undo();
  CHECK(sentence->run()->posts() == 24);
  CHECK_FALSE(sentence->can_undo());
}

TEST_CASE("every choice of every piece lays out a run", "[run-sentence]") {
  Sentence sentence;
  for (int piece = 0; piece < run_pieces; ++piece) {
    sentence->closePad();
    sentence->choosePiece(piece);
    const int groups = sentence->choices()->rowCount();
    for (int group = 0; group < groups; ++group) {
      const auto at = sentence->choices()->index(group);
      const auto names = sentence->choices()->data(at, SentenceChoices::NamesRole).toStringList();
      CHECK(QSet<QString>(names.begin(), names.end()).size() == names.size());
      for (int option = 0; option < names.size(); ++option) {
        sentence->choose(group, option);
        INFO(piece << ": " << names[option].toStdString());
        CHECK(sentence->choices()->data(at, SentenceChoices::NowRole).toInt() == option);
        CHECK(sentence->message().isEmpty());
      }
    }
  }
  CHECK(sentence->run()->posts() == 24);
}

TEST_CASE("one joint, one post and one bay are made different from the rule", "[run-sentence]") {
  Sentence sentence;
  sentence->choosePart(sentence.part(11, "mid-rail cross"));
  CHECK(sentence->ask_title().endsWith("mid-rail cross"));
  REQUIRE(sentence.choose("adjustable swivel"));
  CHECK(sentence->ask_title().endsWith("mid-rail swivel"));
  REQUIRE(sentence.choose("as the rule"));
  CHECK(sentence->ask_title().endsWith("mid-rail cross"));
  sentence->chooseBay(4);
  REQUIRE(sentence.choose("a gate"));
  CHECK(sentence->run()->sheet()->bays[4].kind == BayKind::gate);
  CHECK(sentence->run()->sheet()->bays[5].kind == BayKind::rails);
  sentence->choosePost(9);
  REQUIRE(sentence.choose("90° left"));
  REQUIRE(sentence.choose("socket"));
  REQUIRE(sentence.choose("what stands here"));
  sentence->say("lamp 12");
  CHECK(sentence->run()->sheet()->posts[9].landmark == "lamp 12");
  CHECK(sentence->run()->sheet()->posts[9].base == BaseKind::socket);
  CHECK(sentence.part(9, "top-rail corner tee") >= 0);
}

TEST_CASE("a bay has its own length and slope, typed in centimetres", "[run-sentence]") {
  Sentence sentence;
  sentence->chooseBay(2);
  REQUIRE(sentence.choose("1.50 m long"));
  for (const int digit : {9, 0}) sentence->digit(digit);
  CHECK(sentence->run()->sheet()->posts[3].chainage_mm == 3900);
  sentence->chooseBay(2);
  REQUIRE(sentence.choose("level"));
  REQUIRE(sentence->signs());
  sentence->digit(3);
  sentence->digit(0);
  sentence->sign();
  CHECK(sentence->said().rule.bay_changes.at(2).rise_mm == -300);
  sentence->chooseBay(2);
  CHECK(sentence.choose("falling 0.30 m"));
}

TEST_CASE("nothing is in the register until the run is kept, then all of it is", "[run-sentence]") {
  Sentence sentence;
  const std::int64_t runs = sentence.runs();
  sentence.type(RunPiece::posts, "6");
  sentence->keep();
  CHECK(sentence->message().contains("no name yet"));
  sentence.name("Footbridge");
  sentence.walking().settle();
  CHECK(sentence.runs() == runs);
  const Uuid run = sentence->said().run;
  const QSignalSpy kept(sentence.operator->(), &RunSentence::kept);
  sentence->keep();
  sentence.walking().settle();
  CHECK(kept.count() == 1);
  CHECK_FALSE(sentence->is_open());
  CHECK(sentence.runs() == runs + 1);
  const RunSheet sheet = taken(read_run(sentence.walking().store().reader().tables(), run));
  CHECK(sheet.posts.size() == 6);
  CHECK(sheet.parts.size() == sentence->run()->sheet()->parts.size());
  sentence->begin(sentence.walking().site().site);
  CHECK(sentence->said().run != run);  // a new sentence
  CHECK(sentence->said().name.empty());
}

TEST_CASE("a sentence that is not kept is there after the program was closed", "[run-sentence]") {
  Sentence sentence;
  sentence.type(RunPiece::posts, "9");
  sentence.name("Upper gate");
  sentence->chooseBay(3);
  REQUIRE(sentence.choose("open gap"));
  const NewRun said = sentence->said();
  sentence.again();
  CHECK(sentence->said() == said);
  CHECK(sentence.says(RunPiece::name).startsWith("Upper gate"));
  CHECK(sentence->run()->sheet()->bays[3].kind == BayKind::open_gap);
}

TEST_CASE("a disk that takes nothing leaves the sentence, and takes it later", "[run-sentence]") {
  Sentence sentence;
  const std::int64_t runs = sentence.runs();
  sentence.type(RunPiece::posts, "8");
  sentence.name("Footbridge");
  sentence.walking().settle();
  sentence.walking().disk().set_read_only(true);
  sentence->keep();
  sentence.walking().settle();
  CHECK(sentence->not_kept());
  CHECK(sentence->message().startsWith("Not kept: "));
  CHECK(sentence->is_open());
  CHECK(sentence->run()->posts() == 8);
  CHECK(sentence.runs() == runs);
  sentence.walking().disk().set_read_only(false);
  sentence->keep();
  sentence.walking().settle();
  CHECK_FALSE(sentence->is_open());
  CHECK(sentence.runs() == runs + 1);
}
