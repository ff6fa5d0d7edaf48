#include "mobile/day/day.h"

#include <QVariant>
#include <utility>

#include "core/fold/rules.h"
#include "mobile/elevation/run_line_item.h"

namespace kneerail::day {

namespace {

constexpr const char* run_walked = "Sea wall west";
constexpr const char* post_walked = "118";
constexpr std::int64_t grade_given = 3;
constexpr std::int64_t coating_um[] = {74, 71, 76, 73, 75};

Result<> open_run(Hand& hand) {
  if (auto done = hand.touch(QStringLiteral("sitesTag")); !done) return done;
  if (auto done = hand.picture("sites"); !done) return done;
  const QQuickItem* drawing = hand.find([](const QQuickItem& item) {
    return item.property("name").toString() == QLatin1String(run_walked);
  });
  if (drawing == nullptr) {
    return fail(Fault::not_found, "This register has no run named " + std::string(run_walked) +
                                      ". `kneerail demo` makes one that has.");
  }
  hand.touch_at(*drawing, QPointF(drawing->width() / 2, drawing->height() / 2));
  return Done{};
}

/// Along the run line, as a thumb would.
Result<> go_to_post(Rooms& rooms, Hand& hand) {
  const auto* line = qobject_cast<const RunLineItem*>(hand.named(QStringLiteral("runLine")));
  for (int post = 0; line != nullptr && post < rooms.walk().run()->posts(); ++post) {
    if (rooms.walk().postLabelAt(post) != QLatin1String(post_walked)) continue;
    hand.touch_at(*line, QPointF(line->xOfPost(post), line->height() / 2));
    return hand.picture("walk-post");
  }
  return fail(Fault::not_found,
              "The run line does not show post " + std::string(post_walked) + ".");
}

/// Notes a reading of the part that is chosen now.
Result<> note(Rooms& rooms, int kind, std::vector<std::int64_t> values,
              std::vector<Entered>& entered) {
  const RunPicture& run = *rooms.walk().run();
  if (run.part() < 0) return fail(Fault::not_found, "No part of the post is chosen.");
  const SheetPart& part = run.sheet()->parts[static_cast<std::size_t>(run.part())];
  entered.push_back({kind, part.id, rooms.walk().part_title().toStdString(), std::move(values)});
  return Done{};
}

Result<> type(Hand& hand, std::int64_t number) {
  for (const char digit : std::to_string(number)) {
    if (auto done = hand.touch(QStringLiteral("digit") + QLatin1Char(digit)); !done) return done;
  }
  return hand.touch(QStringLiteral("nextSlot"));
}

Result<> enter_grade(Rooms& rooms, Hand& hand, std::vector<Entered>& entered) {
  if (auto done = hand.touch(QStringLiteral("gradePad")); !done) return done;
  if (auto done = hand.picture("walk-grade"); !done) return done;
  if (auto done = note(rooms, fold::kind::grade, {grade_given}, entered); !done) return done;
  return hand.touch(QStringLiteral("grade%1").arg(grade_given));
}

Result<> picture_both(Hand& hand, Tokens& tokens, const std::string& name) {
  if (auto done = hand.picture(name); !done) return done;
  tokens.set_dark(true);
  auto done = hand.picture(name + "-dark");
  tokens.set_dark(false);
  return done;
}

Result<> enter_coating(Rooms& rooms, Hand& hand, Tokens& tokens, std::vector<Entered>& entered) {
  if (auto done = hand.touch(QStringLiteral("coatingPad")); !done) return done;
  if (auto done = note(rooms, fold::kind::coating, {}, entered); !done) return done;
  for (const std::int64_t number : coating_um) {
    if (auto done = type(hand, number); !done) return done;
    entered.back().values.push_back(number);
    if (entered.back().values.size() != 3) continue;
    if (auto done = picture_both(hand, tokens, "walk-coating"); !done) return done;
  }
  return Done{};
}

Result<> enter_torque(Rooms& rooms, Hand& hand, std::vector<Entered>& entered) {
  if (auto done = hand.touch(QStringLiteral("torquePad")); !done) return done;
  if (hand.named(QStringLiteral("wrenchSet")) != nullptr) {
    if (auto done = hand.touch(QStringLiteral("wrenchSet")); !done) return done;
  }
  if (auto done = hand.picture("walk-torque"); !done) return done;
  if (auto done = note(rooms, fold::kind::torque, {}, entered); !done) return done;
  return hand.touch(QStringLiteral("held"));
}

Result<> show_forecast(Hand& hand, Tokens& tokens) {
  if (auto done = hand.touch(QStringLiteral("forecastTag")); !done) return done;
  return picture_both(hand, tokens, "forecast-part");
}

}  // namespace

Result<std::vector<Entered>> walk(Rooms& rooms, Hand& hand, Tokens& tokens) {
  std::vector<Entered> entered;
  if (auto done = open_run(hand); !done) return fail(done.error());
  if (auto done = go_to_post(rooms, hand); !done) return fail(done.error());
  if (auto done = enter_coating(rooms, hand, tokens, entered); !done) return fail(done.error());
  if (auto done = enter_torque(rooms, hand, entered); !done) return fail(done.error());
  if (auto done = enter_grade(rooms, hand, entered); !done) return fail(done.error());
  if (auto done = show_forecast(hand, tokens); !done) return fail(done.error());
  return entered;
}

}  // namespace kneerail::day
