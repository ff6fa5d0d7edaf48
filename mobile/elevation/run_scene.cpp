#include "mobile/elevation/run_scene.h"

#include <QPainter>
#include <QSGClipNode>
#include <QSGTransformNode>
#include <cmath>
#include <map>
#include <utility>

#include "mobile/elevation/shape_nodes.h"
#include "mobile/elevation/shape_painter.h"

namespace kneerail::elevation {

namespace {

QMatrix4x4 moved(double x_px, double y_px, double scale = 1) {
  QMatrix4x4 matrix;
  matrix.translate(static_cast<float>(x_px), static_cast<float>(y_px));
  matrix.scale(static_cast<float>(scale), static_cast<float>(scale));
  return matrix;
}

/// How much larger the glass shows shapes that were made for another scale, while a pinch lasts.
double stretch_of(const RunView& view, const RunDrawing& drawing) {
  return drawing.denominator / view.denominator;
}

/// The stretches of a run, bodies below and marks above, under one moving transform.
class RunNode : public QSGTransformNode {
 public:
  RunNode() {
    appendChildNode(&bodies_);
    appendChildNode(&marks_);
    bodies_.setFlag(OwnedByParent, false);
    marks_.setFlag(OwnedByParent, false);
  }

  void update(const RunChunks& chunks, const RunView& view, const RunDrawing& drawing,
              QQuickWindow& window, const QString& family) {
    const double scale = drawing.pixels_per_mm / drawing.denominator;
    if (std::abs(view.x_px(origin_mm_)) > furthest_px) drop_all();
    if (kept_.empty()) origin_mm_ = view.centre_mm;
    for (std::size_t i = 0; i < chunks.chunks().size(); ++i) {
      const RunChunks::Chunk& chunk = chunks.chunks()[i];
      const auto kept = kept_.find(i);
      const bool current = kept != kept_.end() && kept->second.serial == chunk.serial;
      if (current) continue;
      if (kept != kept_.end()) drop(kept);
      if (chunk.serial != 0) keep(i, chunk, scale, window, family);
    }
    while (!kept_.empty() && kept_.rbegin()->first >= chunks.chunks().size()) {
      drop(std::prev(kept_.end()));
    }
    const double stretch = stretch_of(view, drawing);
    double x_px = view.x_px(origin_mm_);
    double y_px = view.deck_px;
    if (stretch == 1) {  // letters and lines stay sharp
      const double ratio = window.effectiveDevicePixelRatio();
      x_px = std::round(x_px * ratio) / ratio;
      y_px = std::round(y_px * ratio) / ratio;
    }
    const QMatrix4x4 matrix = moved(x_px, y_px, stretch);
    if (matrix != this->matrix()) setMatrix(matrix);
  }

 private:
  struct Kept {
    std::uint64_t serial = 0;
    QSGNode* body = nullptr;
    QSGNode* marks = nullptr;
  };
  using Place = std::map<std::size_t, Kept>::iterator;

  static constexpr double furthest_px = 50000;  // single precision still tells half pixels apart

  void keep(std::size_t place, const RunChunks::Chunk& chunk, double scale, QQuickWindow& window,
            const QString& family) {
    const auto at = [&](const ShapeList& list) {
      auto* node = new QSGTransformNode;
      node->setMatrix(moved((chunk.stretch.origin_mm - origin_mm_) * scale, 0));
      node->appendChildNode(shape_node(list, window, family).release());
      return node;
    };
    const Kept kept{chunk.serial, at(chunk.piece.body), at(chunk.piece.marks)};
    // From left to right, so that the rails of a bay end under the fittings of the next post.
    const auto after = kept_.upper_bound(place);
    if (after == kept_.end()) {
      bodies_.appendChildNode(kept.body);
      marks_.appendChildNode(kept.marks);
    } else {
      bodies_.insertChildNodeBefore(kept.body, after->second.body);
      marks_.insertChildNodeBefore(kept.marks, after->second.marks);
    }
    kept_[place] = kept;
  }

  void drop(Place place) {
    bodies_.removeChildNode(place->second.body);
    marks_.removeChildNode(place->second.marks);
    delete place->second.body;
    delete place->second.marks;
    kept_.erase(place);
  }

  void drop_all() {
    while (!kept_.empty()) drop(kept_.begin());
  }

  QSGNode bodies_;
  QSGNode marks_;
  std::map<std::size_t, Kept> kept_;
  double origin_mm_ = 0;
};

ShapeList ground_of_lens(const SceneWanted& wanted) {
  ShapeList list;
  const QRectF& rect = wanted.lens_rect;
  list.rect({static_cast<float>(rect.x()), static_cast<float>(rect.y())},
            {static_cast<float>(rect.width()), static_cast<float>(rect.height())},
            theme::palette(wanted.drawing.theme).paper);
  return list;
}

ShapeList frame_of_lens(const SceneWanted& wanted) {
  ShapeList list;
  const QRectF& rect = wanted.lens_rect;
  const auto width_px = static_cast<float>(0.5 * wanted.drawing.pixels_per_mm);
  list.rect_outline({static_cast<float>(rect.x()), static_cast<float>(rect.y())},
                    {static_cast<float>(rect.width()), static_cast<float>(rect.height())},
                    theme::palette(wanted.drawing.theme).chalk, {.width_px = width_px});
  return list;
}

RunDrawing lens_drawing(const SceneWanted& wanted) {
  RunDrawing drawing = wanted.drawing;
  if (wanted.lens_view) drawing.denominator = wanted.lens_view->denominator;
  return drawing;
}

/// The root that updatePaintNode returns.
class SceneNode : public QSGNode {
 public:
  SceneNode() {
    run_ = new RunNode;
    over_group_ = new QSGNode;
    lens_group_ = new QSGNode;
    for (QSGNode* child : {static_cast<QSGNode*>(run_), over_group_, lens_group_}) {
      appendChildNode(child);
    }
  }

  RunNode& run() { return *run_; }

  void over(const ShapeList& list) {
    replace(*over_group_, over_, list.empty() ? nullptr : geometry_node(list).release());
  }

  void lens(const RunChunks& chunks, const SceneWanted& wanted, QQuickWindow& window) {
    if (!wanted.lens_view) {
      if (lens_ != nullptr) replace(*lens_group_, lens_, nullptr);
      return;
    }
    if (lens_ != nullptr && rect_ == wanted.lens_rect) return;
    rect_ = wanted.lens_rect;
    auto* clip = new QSGClipNode;
    auto* corners = new QSGGeometry(QSGGeometry::defaultAttributes_Point2D(), 4);
    QSGGeometry::updateRectGeometry(corners, rect_);
    clip->setGeometry(corners);
    clip->setFlag(OwnsGeometry);
    clip->setIsRectangular(true);
    clip->setClipRect(rect_);
    clip->appendChildNode(geometry_node(ground_of_lens(wanted)).release());
    auto* place = new QSGTransformNode;
    place->setMatrix(moved(rect_.x(), rect_.y()));
    auto* run = new RunNode;
    run->update(chunks, *wanted.lens_view, lens_drawing(wanted), window, wanted.family);
    place->appendChildNode(run);
    clip->appendChildNode(place);
    auto* all = new QSGNode;
    all->appendChildNode(clip);
    all->appendChildNode(geometry_node(frame_of_lens(wanted)).release());
    replace(*lens_group_, lens_, all);
  }

 private:
  static void replace(QSGNode& group, QSGNode*& slot, QSGNode* with) {
    if (slot != nullptr) {
      group.removeChildNode(slot);
      delete slot;
    }
    slot = with;
    if (with != nullptr) group.appendChildNode(with);
  }

  RunNode* run_ = nullptr;
  QSGNode* over_group_ = nullptr;
  QSGNode* lens_group_ = nullptr;
  QSGNode* over_ = nullptr;
  QSGNode* lens_ = nullptr;
  QRectF rect_;
};

/// What the painter draws in one frame; copied, so that nothing is shared with the next.
struct PaintedRun {
  RunView view;
  RunDrawing drawing;
  const RunChunks* chunks = nullptr;
};

void paint_run(QPainter& painter, const PaintedRun& run, const QString& family) {
  const double stretch = stretch_of(run.view, run.drawing);
  for (const bool marks : {false, true}) {
    for (const RunChunks::Chunk& chunk : run.chunks->chunks()) {
      if (!run.chunks->in_view(chunk, run.view)) continue;
      painter.save();
      double x_px = run.view.x_px(chunk.stretch.origin_mm);
      if (stretch == 1) x_px = std::round(x_px);
      painter.translate(x_px, std::round(run.view.deck_px));
      painter.scale(stretch, stretch);
      paint(painter, marks ? chunk.piece.marks : chunk.piece.body, family);
      painter.restore();
    }
  }
}

}  // namespace

RunScene::RunScene() = default;
RunScene::~RunScene() = default;

QSGNode* RunScene::update(QSGNode* old, QQuickWindow& window, const SceneWanted& wanted,
                          bool& more) {
  main_.show(wanted.sheet, wanted.drawing);
  more = main_.make_for(wanted.view);
  if (wanted.lens_view) {
    lens_.show(wanted.sheet, lens_drawing(wanted));
    lens_.make_for(*wanted.lens_view);
  }
  return is_painted(window) ? update_painted(old, window, wanted)
                            : update_nodes(old, window, wanted);
}

QSGNode* RunScene::update_nodes(QSGNode* old, QQuickWindow& window, const SceneWanted& wanted) {
  auto* scene = old == nullptr ? new SceneNode : static_cast<SceneNode*>(old);
  scene->run().update(main_, wanted.view, wanted.drawing, window, wanted.family);
  scene->over(wanted.over);
  scene->lens(lens_, wanted, window);
  return scene;
}

QSGNode* RunScene::update_painted(QSGNode* old, QQuickWindow& window, const SceneWanted& wanted) {
  auto* node = old == nullptr ? new PaintedNode(window) : static_cast<PaintedNode*>(old);
  node->show({0, 0, wanted.view.width_px, wanted.view.height_px},
             [this, wanted](QPainter& painter) {
               paint_run(painter, {wanted.view, wanted.drawing, &main_}, wanted.family);
               paint(painter, wanted.over, wanted.family);
               if (!wanted.lens_view) return;
               paint(painter, ground_of_lens(wanted), wanted.family);
               painter.save();
               painter.setClipRect(wanted.lens_rect, Qt::IntersectClip);
               painter.translate(wanted.lens_rect.topLeft());
               paint_run(painter, {*wanted.lens_view, lens_drawing(wanted), &lens_}, wanted.family);
               painter.restore();
               paint(painter, frame_of_lens(wanted), wanted.family);
             });
  return node;
}

}  // namespace kneerail::elevation
