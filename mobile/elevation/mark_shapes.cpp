#include "mobile/elevation/mark_shapes.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <array>

#include "mobile/elevation/sign_shapes.h"
#include "mobile/models/part_words.h"

namespace kneerail::elevation {

namespace {

class Marks {
  Q_DECLARE_TR_FUNCTIONS(Marks)
};

constexpr double ground_drawn = 36;
constexpr double tag_gap_drawn =
    18;  // from the top rail's fitting to the tag's foot, with its line

/// As many whole words as have room.
QString elided(const QString& text) {
  constexpr qsizetype most_letters = 22;
  QString line;
  for (const QString& word : text.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
    if (line.size() + 1 + word.size() > most_letters && !line.isEmpty()) {
      return line + QStringLiteral(" …");
    }
    line += line.isEmpty() ? word : QLatin1Char(' ') + word;
  }
  return line;
}

/// What is written beside a ring: number and kind, and the beginning of what the finder wrote.
QStringList finding_lines(const SheetFinding& finding, bool number_only) {
  const QString number = QString::fromStdString(finding.number).trimmed();
  if (number_only) return {number};
  QStringList lines{(number + QLatin1Char(' ') + finding_word(finding.what)).trimmed()};
  const QString text = elided(QString::fromStdString(finding.text));
  if (!text.isEmpty()) lines.push_back(text);
  return lines;
}

}  // namespace

void add_ground(ShapeList& list, const RunPen& pen, float left, float right) {
  const float depth = pen.px(ground_drawn);
  const auto& color = pen.color();
  list.rect({left, 0}, {right - left, depth}, color.concrete);
  const float every = pen.px(16);
  const Stroke hatch{.width_px = pen.px(1)};
  for (float x = left; x < right; x += every) {
    const float end = std::min(x + depth * 0.8F, right);
    const float share = (end - x) / (depth * 0.8F);
    list.line(Point{x, depth}, Point{end, depth * (1 - share)}, color.concrete_line, hatch);
  }
  list.line(Point{left, depth}, Point{right, depth}, color.concrete_line, hatch);
  list.line(Point{left, 0}, Point{right, 0}, color.edge, {.width_px = pen.px(2)});
}

void add_tag(ShapeList& list, const RunPen& pen, const SheetPost& post, Point top, bool chosen) {
  const auto& color = pen.color();
  const bool small = pen.far();
  const float half = pen.px(small ? 24 : 29);
  const float height = pen.px(small ? 26 : 34);
  const float foot = top.y - pen.px(small ? tag_gap_drawn : tag_gap_drawn + 40);
  const float head = foot - height;
  const float cut = pen.px(9);
  const bool absent = post.state == PostState::skipped || post.state == PostState::struck;
  const bool dark = chosen || post.state == PostState::seen;
  const QColor ground = chosen ? color.chalk : (dark ? color.ink : color.sheet);
  const QColor ink = dark ? color.sheet : (absent ? pen.ink2() : color.ink);
  list.line(Point{top.x, foot}, Point{top.x, top.y - pen.px(18)}, color.edge,
            {.width_px = pen.px(1.2)});
  const std::array plate = {Point{top.x - half, foot},       Point{top.x - half, head + cut},
                            Point{top.x - half + cut, head}, Point{top.x + half - cut, head},
                            Point{top.x + half, head + cut}, Point{top.x + half, foot}};
  list.fill(plate, ground);
  Stroke edge{.width_px = pen.px(2), .closed = true};
  if (absent && !chosen) {
    edge.on_px = pen.px(5);
    edge.off_px = pen.px(4);
  }
  list.line(plate, chosen ? color.chalk : (dark ? color.ink : color.edge), edge);
  const Point hole{top.x, head + pen.px(5.4)};
  if (!small && dark) list.disc(hole, pen.px(2.2), ink);
  if (!small && !dark) list.circle(hole, pen.px(2.2), ink, {.width_px = pen.px(1.2)});
  list.label({.text = QString::fromStdString(post.label),
              .at = {top.x, foot - pen.px(small ? 6 : 7)},
              .size_px = pen.text_px(small ? 16 : 19),
              .color = ink.rgba(),
              .bold = true});
  if (post.state != PostState::skipped || small) return;
  list.label({.text = QString::fromStdString(post.skipped_because),
              .at = {top.x, head - pen.px(6)},
              .size_px = pen.text_px(16),
              .color = pen.ink2().rgba(),
              .halo = color.paper.rgba()});
}

void add_ring(ShapeList& list, const RunPen& pen, const SheetFinding& finding, Point middle,
              int place_in_stack) {
  constexpr double radius_drawn = 48;
  const float radius =
      pen.px((pen.far() ? 22 : radius_drawn) + 7 * static_cast<double>(place_in_stack));
  const QColor chalk = pen.color().chalk;
  add_chalk_ring(list, {middle, radius, pen.px(4), finding.record}, chalk);
  if (pen.far()) return;
  const QStringList lines = finding_lines(finding, pen.crowded());
  const float line_px = pen.text_px(21);
  const float right = middle.x - radius - pen.px(30);
  const float top = middle.y + pen.px(28) + static_cast<float>(3 * place_in_stack) * line_px;
  const Point from{middle.x - radius * 0.92F, middle.y + radius * 0.38F};
  list.line(from, Point{right + pen.px(5), top}, chalk, {.width_px = pen.px(1.8)});
  for (qsizetype i = 0; i < lines.size(); ++i) {
    list.label({.text = lines[i],
                .at = {right, top + pen.px(6) + static_cast<float>(i) * line_px},
                .size_px = pen.text_px(18),
                .color = chalk.rgba(),
                .bold = true,
                .align = Qt::AlignRight,
                .halo = pen.color().paper.rgba()});
  }
}

void add_board(ShapeList& list, const RunPen& pen, Point left, float right_x) {
  const float half = pen.px(pen.far() ? 7 : 14);
  const float inset = pen.px(pen.far() ? 8 : 40);
  const float from = left.x + inset;
  const float to = right_x - inset;
  if (to - from < 2 * half) return;
  const float top = left.y - half;
  for (const float x : {from, to}) {
    list.line(Point{x, top - half}, Point{x, top + 3.2F * half}, pen.color().edge,
              {.width_px = pen.px(pen.far() ? 2 : 3.5)});
  }
  add_barrier_board(list, {{from, top}, {to - from, 2 * half}, pen.px(1.6)}, pen.color());
  if (pen.far()) return;
  list.label({.text = Marks::tr("closed off"),
              .at = {(from + to) / 2, top - half - pen.px(3)},
              .size_px = pen.text_px(16),
              .color = pen.color().ink.rgba(),
              .bold = true,
              .halo = pen.color().paper.rgba()});
}

void add_dimension(ShapeList& list, const RunPen& pen, float left, float right, double length_mm,
                   bool last) {
  if (pen.far() || right - left < pen.px(90)) return;
  const QColor color = pen.ink2();
  const float y = pen.px(78);
  const Stroke hair{.width_px = pen.px(1.2)};
  const float gap = pen.px(36);
  const float middle = (left + right) / 2;
  for (const float x : {left, right}) {
    // The line beside a post belongs to the bay after it, or two would lie on one another.
    if (x == left || last) list.line(Point{x, pen.px(46)}, Point{x, pen.px(86)}, color, hair);
    const float inward = x == left ? pen.px(10) : -pen.px(10);
    list.fill(
        std::array{Point{x, y}, Point{x + inward, y - pen.px(4)}, Point{x + inward, y + pen.px(4)}},
        color);
  }
  list.line(Point{left, y}, Point{middle - gap, y}, color, hair);
  list.line(Point{middle + gap, y}, Point{right, y}, color, hair);
  list.label({.text = QStringLiteral("%1 m").arg(QLocale().toString(length_mm / 1000, 'f', 2)),
              .at = {middle, y + pen.px(6)},
              .size_px = pen.text_px(16),
              .color = color.rgba()});
}

}  // namespace kneerail::elevation
