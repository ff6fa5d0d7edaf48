#include "mobile/day/day.h"

#include <QVariant>
#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

#include "core/fold/rules.h"
#include "core/records/made_safe.h"
#include "mobile/elevation/elevation_item.h"
#include "mobile/elevation/run_line_item.h"
#include "mobile/models/finding_pen.h"

namespace kneerail::day {

namespace {

constexpr const char* run_walked = "Sea wall west";
constexpr const char* post_walked = "118";
constexpr const char* skipped_from = "120";
constexpr const char* skipped_to = "126";
constexpr const char* posts_near[] = {"116", "117", "119", "115", "114", "113", "112", "111"};
constexpr std::int64_t grade_given = 3;
constexpr std::int64_t coating_um[] = {64, 61, 66, 63, 65};
constexpr std::int64_t wall_tenth_mm[] = {37, 38, 36};
constexpr double air_up_mm = 425;  // between its two lower rails
constexpr std::int64_t bay_height_mm = 1104;
constexpr std::size_t before_it_goes_off = 3;  // readings

/// Light and dark, lying and standing.
Result<> picture(const Screen& screen, const std::string& name) {
  if (auto done = screen.hand.picture(name); !done) return done;
  screen.tokens.set_dark(true);
  auto done = screen.hand.picture(name + "-dark");
  screen.tokens.set_dark(false);
  return done;
}

/// The cautions, and which hand is on the keys.
Result<> start_first(const Screen& screen) {
  if (screen.rooms.tablet().cautions_read()) return Done{};
  if (auto done = picture(screen, "first-start"); !done) return done;
  return screen.hand.touch(QStringLiteral("firstRight"));
}

/// What the tablet says of itself, and how its screen looks.
Result<> look_at_tablet(const Screen& screen) {
  for (const char* name : {"sitesTag", "tabletCell"})
    if (auto done = screen.hand.touch(QLatin1String(name)); !done) return done;
  if (auto done = picture(screen, "tablet"); !done) return done;
  return screen.hand.touch(QStringLiteral("leaveTablet"));
}

Result<> open_run(const Screen& screen) {
  Hand& hand = screen.hand;
  if (auto done = hand.touch(QStringLiteral("sitesTag")); !done) return done;
  if (auto done = picture(screen, "sites"); !done) return done;
  if (auto done = hand.touch(QStringLiteral("prepareDay0")); !done) return done;
  if (auto done = picture(screen, "prepare"); !done) return done;
  if (auto done = hand.touch(QStringLiteral("sitesTag")); !done) return done;
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

/// A place of the run line, as a thumb would.
Result<> touch_post(const Screen& screen, int post) {
  const auto* line = qobject_cast<const RunLineItem*>(screen.hand.named(QStringLiteral("runLine")));
  if (line == nullptr) return fail(Fault::not_found, "The run line is not on the screen.");
  screen.hand.touch_at(*line, QPointF(line->xOfPost(post), line->height() / 2));
  return Done{};
}

Result<> go_to_post(const Screen& screen, const std::string& label) {
  WalkModel& walk = screen.rooms.walk();
  const bool there = walk.post_label() == QString::fromStdString(label) && !walk.part_chosen() &&
                     walk.run()->bay() < 0;
  if (there) return Done{};
  for (int post = 0; post < walk.run()->posts(); ++post)
    if (walk.postLabelAt(post) == QString::fromStdString(label)) return touch_post(screen, post);
  return fail(Fault::not_found, "The run line does not show post " + label + ".");
}

/// Notes a reading of the part that is chosen now.
Result<> note(const Screen& screen, int kind, std::vector<std::int64_t> values,
              std::vector<Entered>& entered) {
  WalkModel& walk = screen.rooms.walk();
  const RunPicture& run = *walk.run();
  if (run.part() < 0) return fail(Fault::not_found, "No part of the post is chosen.");
  const SheetPart& part = run.sheet()->parts[static_cast<std::size_t>(run.part())];
  entered.push_back({kind, part.id, walk.part_title().toStdString(), std::move(values)});
  return Done{};
}

Result<> type(Hand& hand, std::int64_t number) {
  for (const char digit : std::to_string(number)) {
    if (auto done = hand.touch(QStringLiteral("digit") + QLatin1Char(digit)); !done) return done;
  }
  return hand.touch(QStringLiteral("nextSlot"));
}

/// The bay that nobody may pass, where there is one.
Result<> look_at_board(const Screen& screen) {
  const auto sheet = screen.rooms.walk().run()->sheet();
  const auto bay = std::find_if(sheet->bays.begin(), sheet->bays.end(),
                                [](const SheetBay& one) { return one.closed_off; });
  if (bay == sheet->bays.end()) return Done{};
  if (auto done = touch_post(screen, bay->from); !done) return done;
  return picture(screen, "walk-closed");
}

/// A post near the one that is measured, as last time by one touch.
Result<> push_post(const Screen& screen, std::vector<Entered>& entered) {
  WalkModel& walk = screen.rooms.walk();
  for (const char* label : posts_near) {
    if (auto done = go_to_post(screen, label); !done) return done;
    if (!walk.as_last_time_offered()) continue;
    if (auto done = picture(screen, "walk-pushed"); !done) return done;
    const auto sheet = walk.run()->sheet();
    const auto& post = sheet->posts[static_cast<std::size_t>(walk.run()->post())];
    for (int i = post.first_part; i < post.first_part + post.parts; ++i) {
      const SheetPart& part = sheet->parts[static_cast<std::size_t>(i)];
      if (part.struck || !part.last || part.bay >= 0 || part.up_mm != post.height_mm) continue;
      entered.push_back({fold::kind::grade,
                         part.id,
                         "Post " + post.label + " as last time",
                         {std::int64_t{part.last->grade}}});
    }
    return screen.hand.touch(QStringLiteral("pushed"));
  }
  return Done{};
}

Result<> enter_grade(const Screen& screen, std::vector<Entered>& entered) {
  if (auto done = screen.hand.touch(QStringLiteral("gradePad")); !done) return done;
  if (auto done = picture(screen, "walk-grade"); !done) return done;
  if (auto done = note(screen, fold::kind::grade, {grade_given}, entered); !done) return done;
  return screen.hand.touch(QStringLiteral("grade%1").arg(grade_given));
}

/// Before the first set of the day: the gauge on the bare plate.
Result<> zero_gauge(const Screen& screen, std::vector<Entered>& entered) {
  Hand& hand = screen.hand;
  if (auto done = hand.touch(QStringLiteral("gaugeCell")); !done) return done;
  if (auto done = picture(screen, "walk-gauge"); !done) return done;
  for (const char* name : {"zeroGauge", "digit0"})
    if (auto done = hand.touch(QLatin1String(name)); !done) return done;
  if (auto done = picture(screen, "walk-zero"); !done) return done;
  const auto* gauge = screen.rooms.walk().pen().instrument(InstrumentKind::coating_gauge);
  if (gauge == nullptr) return fail(Fault::not_found, "This register has no coating gauge.");
  entered.push_back({fold::kind::instrument_check, gauge->id, "Gauge " + gauge->serial, {0}});
  return hand.touch(QStringLiteral("mainAct"));
}

Result<> begin_coating(const Screen& screen) {
  if (auto done = screen.hand.touch(QStringLiteral("coatingPad")); !done) return done;
  for (std::size_t i = 0; i < before_it_goes_off; ++i)
    if (auto done = type(screen.hand, coating_um[i]); !done) return done;
  if (auto done = picture(screen, "walk-coating"); !done) return done;
  screen.tokens.set_left_handed(true);
  auto done = screen.hand.picture("walk-left");
  screen.tokens.set_left_handed(false);
  screen.hand.settle();
  return done;
}

/// What was read before the machine went off stands in its slots, at the same part.
Result<> find_half_done_set(const Screen& screen) {
  for (std::size_t i = 0; i < before_it_goes_off; ++i) {
    const QString name = QStringLiteral("slot%1").arg(i);
    const QQuickItem* slot = screen.hand.named(name);
    const QString number = QString::number(coating_um[i]);
    if (slot != nullptr && slot->property("text").toString() == number) continue;
    return fail(Fault::not_found,
                "After the machine went off, " + number.toStdString() + " is not in its slot.");
  }
  if (auto done = screen.hand.picture("walk-after-power-cut"); !done) return done;
  return screen.hand.touch(QStringLiteral("putAway"));
}

/// The set goes on at its first empty slot. What was read before is a record of its own.
Result<> enter_coating(const Screen& screen, std::vector<Entered>& entered) {
  const std::vector<std::int64_t> all(std::begin(coating_um), std::end(coating_um));
  const auto cut = all.begin() + static_cast<std::ptrdiff_t>(before_it_goes_off);
  for (auto values : {std::vector(all.begin(), cut), std::vector(cut, all.end())})
    if (auto done = note(screen, fold::kind::coating, std::move(values), entered); !done)
      return done;
  for (auto number = cut; number != all.end(); ++number)
    if (auto done = type(screen.hand, *number); !done) return done;
  return Done{};
}

/// One screw moved, the next one held.
Result<> enter_torque(const Screen& screen, std::vector<Entered>& entered) {
  Hand& hand = screen.hand;
  if (auto done = hand.touch(QStringLiteral("torquePad")); !done) return done;
  if (hand.named(QStringLiteral("wrenchSet")) != nullptr) {
    if (auto done = hand.touch(QStringLiteral("wrenchSet")); !done) return done;
  }
  if (auto done = picture(screen, "walk-torque"); !done) return done;
  for (const char* name : {"moved", "torqueScale"})
    if (auto done = hand.touch(QLatin1String(name)); !done) return done;
  if (auto done = picture(screen, "walk-moved"); !done) return done;
  if (auto done = hand.touch(QStringLiteral("mainAct")); !done) return done;
  if (auto done = note(screen, fold::kind::torque, {}, entered); !done) return done;
  return hand.touch(QStringLiteral("held"));
}

/// The tube of the post, at three hours of the clock.
Result<> enter_walls(const Screen& screen, std::vector<Entered>& entered) {
  if (auto done = screen.hand.touch(QStringLiteral("wallPad")); !done) return done;
  const auto* gauge = screen.rooms.walk().pen().instrument(InstrumentKind::wall_gauge);
  if (gauge == nullptr) return fail(Fault::not_found, "This register has no wall gauge.");
  for (const std::int64_t wall : wall_tenth_mm) {
    if (auto done = note(screen, fold::kind::wall, {wall}, entered); !done) return done;
    if (auto done = type(screen.hand, wall * 10 / gauge->resolution); !done) return done;
  }
  return picture(screen, "walk-wall");
}

/// The bay after the post, touched in the air between: firm, and how high it is.
Result<> enter_bay(const Screen& screen, std::vector<Entered>& entered) {
  Hand& hand = screen.hand;
  WalkModel& walk = screen.rooms.walk();
  const auto* drawing = qobject_cast<const ElevationItem*>(hand.named(QStringLiteral("elevation")));
  if (drawing == nullptr) return fail(Fault::not_found, "The drawing is not on the screen.");
  const auto sheet = walk.run()->sheet();
  const auto bays = bays_after(*sheet, walk.run()->post());
  if (bays.empty()) return fail(Fault::not_found, "No bay begins at the post.");
  const auto chainage = [&](int post) {
    return static_cast<double>(sheet->posts[static_cast<std::size_t>(post)].chainage_mm);
  };
  const auto& view = drawing->view();
  hand.touch_at(*drawing, {view.x_px((chainage(bays[0].from) + chainage(bays[0].to)) / 2),
                           view.y_px(air_up_mm)});
  if (auto done = hand.touch(QStringLiteral("felt1")); !done) return done;
  entered.push_back({fold::kind::hand_load, bays[0].id, walk.part_title().toStdString(), {1}});
  if (auto done = hand.touch(QStringLiteral("measure0Key")); !done) return done;
  if (auto done = type(hand, bay_height_mm); !done) return done;
  if (auto done = hand.touch(QStringLiteral("toPush")); !done) return done;
  return picture(screen, "walk-bay");
}

/// A split on the post: it cannot wait, and the bay is closed off.
Result<> enter_finding(const Screen& screen, std::vector<Entered>& entered) {
  Hand& hand = screen.hand;
  if (auto done = hand.touch(QStringLiteral("findingPad")); !done) return done;
  const auto split = static_cast<int>(FindingKind::split);
  if (auto done = hand.touch(QStringLiteral("kind%1").arg(split)); !done) return done;
  const auto closed_off = static_cast<int>(Measure::closed_off);
  if (auto done = hand.touch(QStringLiteral("measure%1").arg(closed_off)); !done) return done;
  if (auto done = picture(screen, "walk-finding"); !done) return done;
  const FindingPen& finding = *screen.rooms.walk().finding();
  entered.push_back({fold::kind::finding, finding.about(), finding.title().toStdString(), {}});
  return hand.touch(QStringLiteral("keepFinding"));
}

/// The line that nobody is told stands until somebody is.
Result<> tell_somebody(const Screen& screen) {
  for (const char* name : {"untoldCell", "tell0"})
    if (auto done = screen.hand.touch(QLatin1String(name)); !done) return done;
  if (auto done = picture(screen, "told"); !done) return done;
  return screen.hand.touch(QStringLiteral("closeTelling"));
}

/// All that was found on the run, and the first of it.
Result<> show_findings(const Screen& screen) {
  if (auto done = screen.hand.touch(QStringLiteral("findingsTag")); !done) return done;
  if (auto done = picture(screen, "findings"); !done) return done;
  if (auto done = screen.hand.touch(QStringLiteral("finding0")); !done) return done;
  if (auto done = picture(screen, "finding-open"); !done) return done;
  return screen.hand.touch(QStringLiteral("closeFinding"));
}

/// Looked over, signed with a finger and sealed with a slide.
Result<> close_visit(const Screen& screen, std::vector<Entered>& entered) {
  Hand& hand = screen.hand;
  for (const char* name : {"walkTag", "runCell", "closeVisitKey"})
    if (auto done = hand.touch(QLatin1String(name)); !done) return done;
  if (auto done = picture(screen, "close-visit"); !done) return done;
  const QQuickItem* sheet = hand.named(QStringLiteral("signature"));
  const QQuickItem* sleeve = hand.named(QStringLiteral("sealSleeve"));
  if (sheet == nullptr || sleeve == nullptr)
    return fail(Fault::not_found, "There is nothing to sign and seal on the screen.");
  std::vector<QPointF> name;
  for (int i = 0; i <= 60; ++i)
    name.emplace_back(sheet->width() * (0.15 + 0.011 * i),
                      sheet->height() * (0.55 - (0.30 - 0.003 * i) * std::sin(0.55 * i)));
  hand.drag(*sheet, name);
  entered.push_back({fold::kind::sealed, screen.rooms.walk().pen().visit(), "Visit", {}});
  std::vector<QPointF> slide;
  for (int i = 0; i <= 20; ++i)
    slide.emplace_back(sleeve->width() / 2 + sleeve->parentItem()->width() * i / 20.0,
                       sleeve->height() / 2);
  hand.drag(*sleeve, slide);
  return picture(screen, "close-sealed");
}

/// A stretch that was not reached.
Result<> skip_stretch(const Screen& screen) {
  if (auto done = go_to_post(screen, skipped_from); !done) return done;
  if (auto done = screen.hand.touch(QStringLiteral("skip")); !done) return done;
  if (auto done = go_to_post(screen, skipped_to); !done) return done;
  if (auto done = picture(screen, "walk-skip"); !done) return done;
  return screen.hand.touch(QStringLiteral("reason2"));
}

/// The part's years, from its pad; then those of the part that is likely to stop holding first.
Result<> show_forecast(const Screen& screen) {
  for (const char* name : {"coatingPad", "forecastTag"})
    if (auto done = screen.hand.touch(QLatin1String(name)); !done) return done;
  if (auto done = picture(screen, "forecast-part"); !done) return done;
  if (auto done = screen.hand.touch(QStringLiteral("nextWorst")); !done) return done;
  return picture(screen, "forecast-worst");
}

}  // namespace

Result<std::vector<Entered>> forenoon(const Screen& screen) {
  std::vector<Entered> entered;
  if (auto done = start_first(screen); !done) return fail(done.error());
  if (auto done = open_run(screen); !done) return fail(done.error());
  if (auto done = look_at_board(screen); !done) return fail(done.error());
  if (auto done = push_post(screen, entered); !done) return fail(done.error());
  if (auto done = go_to_post(screen, post_walked); !done) return fail(done.error());
  if (auto done = picture(screen, "walk-post"); !done) return fail(done.error());
  if (auto done = enter_grade(screen, entered); !done) return fail(done.error());
  if (auto done = zero_gauge(screen, entered); !done) return fail(done.error());
  if (auto done = begin_coating(screen); !done) return fail(done.error());
  return entered;
}

Result<std::vector<Entered>> afternoon(const Screen& screen) {
  std::vector<Entered> entered;
  if (auto done = find_half_done_set(screen); !done) return fail(done.error());
  if (auto done = enter_coating(screen, entered); !done) return fail(done.error());
  if (auto done = go_to_post(screen, post_walked); !done) return fail(done.error());
  if (auto done = enter_torque(screen, entered); !done) return fail(done.error());
  if (auto done = go_to_post(screen, post_walked); !done) return fail(done.error());
  if (auto done = enter_walls(screen, entered); !done) return fail(done.error());
  if (auto done = go_to_post(screen, post_walked); !done) return fail(done.error());
  if (auto done = enter_bay(screen, entered); !done) return fail(done.error());
  if (auto done = go_to_post(screen, post_walked); !done) return fail(done.error());
  if (auto done = enter_finding(screen, entered); !done) return fail(done.error());
  if (auto done = tell_somebody(screen); !done) return fail(done.error());
  if (auto done = show_findings(screen); !done) return fail(done.error());
  if (auto done = screen.hand.touch(QStringLiteral("walkTag")); !done) return fail(done.error());
  if (auto done = skip_stretch(screen); !done) return fail(done.error());
  if (auto done = go_to_post(screen, post_walked); !done) return fail(done.error());
  if (auto done = show_forecast(screen); !done) return fail(done.error());
  if (auto done = look_at_tablet(screen); !done) return fail(done.error());
  if (auto done = close_visit(screen, entered); !done) return fail(done.error());
  return entered;
}

}  // namespace kneerail::day
