#pragma once

// The drawing of a run in the scene graph: stretches under one transform, so that panning and
// pinching change one matrix. Lives on the render thread, between two synchronisations.

#include <QQuickWindow>
#include <QRectF>
#include <QString>
#include <memory>
#include <optional>

#include "mobile/elevation/run_chunks.h"
#include "mobile/elevation/run_view.h"

class QSGNode;

namespace kneerail::elevation {

struct SceneWanted {
  std::shared_ptr<const RunSheet> sheet;
  RunDrawing drawing;
  RunView view;
  ShapeList over;                    ///< in the item's pixels: brackets
  std::optional<RunView> lens_view;  ///< a joint drawn larger
  QRectF lens_rect;
  QString family;
};

class RunScene {
 public:
  RunScene();
  ~RunScene();
  RunScene(const RunScene&) = delete;
  RunScene& operator=(const RunScene&) = delete;

  /// The node to return from updatePaintNode; `old` is the one it returned before, or null. True in
  /// `more` when another update would make what comes into view next.
  QSGNode* update(QSGNode* old, QQuickWindow& window, const SceneWanted& wanted, bool& more);

  [[nodiscard]] std::uint64_t chunks_made() const { return main_.made() + lens_.made(); }

 private:
  struct Nodes;
  QSGNode* update_nodes(QSGNode* old, QQuickWindow& window, const SceneWanted& wanted);
  QSGNode* update_painted(QSGNode* old, QQuickWindow& window, const SceneWanted& wanted);

  RunChunks main_;
  RunChunks lens_;
};

}  // namespace kneerail::elevation
